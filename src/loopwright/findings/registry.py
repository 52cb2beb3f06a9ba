"""The words of findings: codes.toml gives each code its name, severity, text and page."""

from __future__ import annotations

import re
from functools import cache

from loopwright.findings.model import Finding, Severity
from loopwright.record import record
from loopwright.shipped import shipped_table

_OPTIONAL = re.compile(r"\[\[(.*?)\]\]")
_FIELD = re.compile(r"\{(\w+)\}")


@record
class Entry:
    """What is said of a code. `text` and `hint` hold {fields} filled from a finding's args; `facts` adds all of them in brackets.

    A part of the text in double brackets, [[…]], is left out where a field in it has no value.

    `means`, `why`, `example` and `better` are the parts of its page; empty where nothing is told yet.
    """

    name: str
    severity: Severity
    text: str
    hint: str = ""
    facts: bool = False
    means: str = ""
    why: str = ""
    example: str = ""
    better: str = ""


class _Facts(dict[str, object]):
    def __missing__(self, key: str) -> str:
        return "?"


@cache
def load() -> dict[str, Entry]:
    """All entries by code. Raises TypeError where an entry has an unknown field or lacks one that is needed."""
    table = shipped_table("loopwright.findings", "codes.toml")
    return {code: Entry(**fields) for code, fields in table.items()}


def title(found: Finding) -> str:
    """The kebab-case name of the finding's code; the code itself when it has no entry."""
    entry = load().get(found.code)
    return entry.name if entry else found.code.lower()


def severity(found: Finding) -> Severity:
    """The finding's own severity, or its code's."""
    entry = load().get(found.code)
    return found.severity or (entry.severity if entry else "warning")


def message(found: Finding) -> str:
    """The finding in words."""
    entry = load().get(found.code)
    if entry is None:
        return found.code
    facts = _in_words(found)
    said = ", ".join(f"{k.replace('_', ' ')} {v}" for k, v in found.args.items() if v not in (None, ""))
    text = _OPTIONAL.sub(lambda m: m[1] if all(facts.get(f) not in (None, "") for f in _FIELD.findall(m[1])) else "", entry.text)
    filled = text.format_map(facts)
    return f"{filled} ({said})" if entry.facts and said else filled


def _in_words(found: Finding) -> _Facts:
    """A finding's args; the thing that a row looks for is put into words, one or several as `wanted` says."""
    facts = _Facts(found.args)
    thing = facts.get("thing")
    if isinstance(thing, str):
        one, several = _things().get(thing, (thing, thing))
        facts["thing"] = one if facts.get("wanted") == 1 else several
    return facts


@cache
def _things() -> dict[str, tuple[str, str]]:
    table = shipped_table("loopwright.findings", "things.toml")
    return {key: (ways[0], ways[1]) for key, ways in table["things"].items()}


def hints(found: Finding) -> tuple[str, ...]:
    """The finding's own hints, or its code's hint."""
    entry = load().get(found.code)
    if found.hints or entry is None or not entry.hint:
        return found.hints
    return (entry.hint.format_map(_in_words(found)),)
