"""The lines of a heading that name photographs: read, one added, changed, taken out. A text comes in, the changed text goes out.

They are found by their number, not by their place in what was read, so that a text in any language keeps every letter of its own.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any

from loopwright.model.tree import Document, HeadLine, Section
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source
from loopwright.studio.routes.given import whole, words
from loopwright.workshop.files import CannotOpen, CannotSave
from loopwright.workshop.original import line_of

COVER = "cover"
LONGEST = 600
MOST = 200
_NAMES = ("photograph", "photographs")
_HEAD = re.compile(r"(?P<head>[^:\n]*:[ \t]*)(?P<value>.*)", re.DOTALL)
_ONE = re.compile(r"(?P<file>[^():]+?)\s*(?:\((?P<where>[^()]*)\))?\s*(?::\s*(?P<alt>.*))?$")


@record
class Named:
    """One photograph as the pattern names it. `where`: "cover", a section, or "" for the first one; `alt`: what it shows, "".

    `line`: from 0; `part`: which of its line, from 0.
    """

    file: str
    where: str
    alt: str
    line: int
    part: int


def listed(_name: str, text: str) -> dict[str, Any]:
    """In the other process: the photographs that a text names, and the sections they can stand with."""
    source = Source.of(text)
    document = read(source)
    sections = dict.fromkeys(_section(i.title) for i in document.items if isinstance(i, Section))
    return {
        "named": [{"file": n.file, "where": n.where, "alt": n.alt} for n in named(source, document)],
        "sections": [s for s in sections if s and s.lower() != COVER],
    }


def changed(_name: str, text: str, given: Mapping[str, Any]) -> tuple[bool, str]:
    """In the other process: the text with one photograph added, changed or taken out; or why that could not be, in words."""
    try:
        make = CHANGES.get(words(given, "do"))
        return (True, make(text, given)) if make is not None else (False, f"a change is one of {', '.join(CHANGES)}")
    except (CannotOpen, CannotSave) as e:
        return False, str(e)


def named(source: Source, document: Document) -> tuple[Named, ...]:
    """The photographs of a text, in its order."""
    return tuple(_named(source, document))


def _named(source: Source, document: Document) -> Iterator[Named]:
    lines = source.text.split("\n")
    for item in document.items:
        if not isinstance(item, HeadLine) or item.name not in _NAMES:
            continue
        number = line_of(document, source)(item.span.start) - 1
        m = _HEAD.match(lines[number])
        for part, said in enumerate(_parts(item.name, m["value"]) if m is not None else ()):
            one = _ONE.match(said.strip())
            if one is not None:
                yield Named(one["file"].strip(), (one["where"] or "").strip(), (one["alt"] or "").strip(), number, part)


def _parts(name: str, value: str) -> list[str]:
    return re.split(r";\s*", value) if name == "photographs" else [value]


def _add(text: str, given: Mapping[str, Any]) -> str:
    source = Source.of(text)
    document = read(source)
    known = named(source, document)
    if len(known) >= MOST:
        raise CannotSave(f"a pattern names at most {MOST} photographs")
    lines = source.text.split("\n")
    line = f"Photograph: {_said(given, plural=False)}"
    heads = [line_of(document, source)(i.span.start) - 1 for i in document.items if isinstance(i, HeadLine)]
    if known or heads:
        at = (known[-1].line if known else heads[-1]) + 1
        return "\n".join([*lines[:at], line, *lines[at:]])
    title = next((n for n, said in enumerate(lines) if said.strip()), 0) if document.title else -1
    rest = lines[title + 1 :]
    return "\n".join([*lines[: title + 1], line, *([] if not rest or not rest[0].strip() else [""]), *rest])


def _set(text: str, given: Mapping[str, Any]) -> str:
    lines, one, plural = _at(text, given)
    now = {name: getattr(one, name) if given.get(name) is None else given[name] for name in ("file", "where", "alt")}
    return "\n".join(_with(lines, one, _said(now, plural=plural), plural=plural))


def _out(text: str, given: Mapping[str, Any]) -> str:
    lines, one, plural = _at(text, given)
    return "\n".join(_with(lines, one, None, plural=plural))


CHANGES = {"add": _add, "set": _set, "out": _out}
"""Every change by its name on the wire."""


def _at(text: str, given: Mapping[str, Any]) -> tuple[list[str], Named, bool]:
    """The lines, the photograph that is meant, and whether its line holds several. Raises CannotOpen where it is no longer there."""
    source = Source.of(text)
    document = read(source)
    known, number = named(source, document), whole(given, "number")
    if not 0 <= number < len(known) or known[number].file != words(given, "was", LONGEST):
        raise CannotOpen("the pattern was changed meanwhile: look at its photographs once more")
    one = known[number]
    back = line_of(document, source)
    heads = (i for i in document.items if isinstance(i, HeadLine) and i.name == "photographs")
    plural = any(back(i.span.start) - 1 == one.line for i in heads)
    return source.text.split("\n"), one, plural


def _with(lines: list[str], one: Named, said: str | None, *, plural: bool) -> list[str]:
    """The lines with one photograph said otherwise, or not at all; a line that names no other goes with it."""
    m = _HEAD.match(lines[one.line])
    assert m is not None  # noqa: S101 - it was found by this
    parts = _parts("photographs" if plural else "photograph", m["value"])
    parts[one.part : one.part + 1] = [] if said is None else [said]
    kept = [f"{m['head']}{'; '.join(p.strip() for p in parts)}"] if any(p.strip() for p in parts) else []
    return [*lines[: one.line], *kept, *lines[one.line + 1 :]]


def _said(given: Mapping[str, Any], *, plural: bool) -> str:
    """ "crown.jpg (Crown): the crown, laid flat". Raises CannotOpen for what a line cannot hold."""
    file, where, alt = (" ".join(words(given, n, LONGEST).split()) for n in ("file", "where", "alt"))
    if not file or re.search(r"[():;/\\]", file):
        raise CannotOpen("a photograph needs a file whose name has no brackets, colons, semicolons or slashes")
    if re.search(r"[()]", where):
        raise CannotOpen("a section with brackets in its name cannot have a photograph")
    alt = alt.replace(";", ",") if plural else alt
    return f"{file}{f' ({where})' if where else ''}{f': {alt}' if alt else ''}"


def _section(title: str) -> str:
    return re.sub(r"\s*\([^()]*\)\s*$", "", title).strip(" :")
