"""The list of abbreviations against the rows: used and not listed, listed and not used, one stitch spelled two ways."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence
from collections.abc import Set as AbstractSet
from functools import lru_cache

from loopwright.checks.abbreviation_list import Entry, Uses, key, listed, long_form, parts, usual
from loopwright.checks.pattern import Pattern, Told, beginning
from loopwright.findings import Edit, Finding, Fix
from loopwright.source import Span
from loopwright.terms import dialect

_LETTERS = frozenset({"sl st", "sc", "hdc", "dc", "tr", "dtr", "trtr"})


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Whole patterns only: lists where there is one, and spellings."""
    if not pattern.whole:
        return
    uses, found = Uses(pattern), listed(pattern)
    if found is not None and uses.times:
        told, entries = found
        yield from _undefined(pattern, told, entries, uses)
        yield from _unused(pattern, told, entries, {key(text) for text in uses.times})
    yield from _spellings(pattern, uses)


def _undefined(pattern: Pattern, told: Told, entries: Sequence[Entry], uses: Uses) -> Iterator[Finding]:
    defined = {key(form) for e in entries for form in e.forms}
    defined |= {name for t in pattern.lines("special stitches") for name in [key(re.split(r"[=:]", t.value)[0].strip())]}
    seen: set[str] = set()
    used = {key(text) for text in uses.times}
    if {"ch", "st"} <= used - defined:  # a list of the unusual ones: nobody is told what a chain is
        seen |= usual()
    for text in uses.times:
        name = key(text)
        if name in seen or name in defined:
            continue
        inner = parts(text)
        if inner and all(p in defined for p in inner):
            continue
        seen.add(name)
        shown = text if text.isupper() and len(name) == 2 else name
        long = long_form(name, pattern.document.terms)
        yield Finding("C008", next(uses.spans(text)), {"abbreviation": shown, "long": long or "…"}, fix=_define(told, shown, long))


def _define(told: Told, name: str, long: str | None) -> Fix | None:
    if long is None or "\n" in told.value:
        return None
    end = told.value_span.start + len(told.value.rstrip(" .,;\t"))
    return Fix(f"add {name} to the abbreviations", (Edit(Span(end, end), f", {name} = {long}"),))


def _unused(pattern: Pattern, told: Told, entries: Sequence[Entry], used_names: AbstractSet[str]) -> Iterator[Finding]:
    text = pattern.document.text
    elsewhere = text[: told.span.start] + "\n" + text[told.span.end :]
    for at, entry in enumerate(entries):
        if any(key(form) in used_names or _stands(form, elsewhere) for form in entry.forms) or _told_in_words(entry, elsewhere):
            continue
        span = Span(entry.span.start, entry.span.start + len(text[entry.span.start : entry.span.end].rstrip(",; \n")))
        yield Finding("C009", span, {"abbreviation": entry.forms[0]}, fix=_leave_out(told, entries, at))


def _stands(form: str, text: str) -> bool:
    """An abbreviation stands in the text, also with a number or as a part of a composed one (fpdc, 3tog)."""
    plain = form.strip(" .")
    return next(beginning(_standing(plain), text, plain.lower()), None) is not None


@lru_cache(maxsize=512)
def _standing(form: str) -> re.Pattern[str]:
    plain = re.escape(form)
    return re.compile(rf"(?<![A-Za-z]){plain}s?(?![A-Za-z])|(?<=[a-z\d]){plain}\b|\b{plain}(?=\d?tog|dc|tr|sc|hdc)", re.IGNORECASE)


def _told_in_words(entry: Entry, text: str) -> bool:
    """A decrease may be asked for in words only ("decreasing 8 sts evenly"), and the list says how it is made."""
    return any(f.endswith("tog") for f in entry.forms) and re.search(r"\bdecreas\w+|\bdec\b", text, re.IGNORECASE) is not None


def _leave_out(told: Told, entries: Sequence[Entry], at: int) -> Fix | None:
    if len(entries) <= 3 or "\n" in told.value:  # a shorter list would no longer be taken for one
        return None
    last = at == len(entries) - 1
    start = entries[at - 1].span.end - 1 if last and at else entries[at].span.start
    end = entries[at + 1].span.start if not last else entries[at].span.end
    return Fix(f"leave {entries[at].forms[0]} out of the abbreviations", (Edit(Span(start, end), ""),))


def _spellings(pattern: Pattern, uses: Uses) -> Iterator[Finding]:
    """Two abbreviations of one stitch in the rows: the rarer one is the slip."""
    which = dialect(pattern.document.terms)
    ways: dict[str, Counter[str]] = {}
    for text, times in uses.times.items():
        kind = which.kind_of(text)
        if kind in _LETTERS:
            ways.setdefault(kind, Counter())[key(text)] += times
    for counted in ways.values():
        if len(counted) < 2:
            continue
        main = counted.most_common(1)[0][0]
        for other in counted:
            if other != main:
                written = [text for text in uses.times if key(text) == other]
                wrong = sorted(((span, text) for text in written for span in uses.spans(text)), key=lambda use: use[0].start)
                edits = tuple(Edit(span, main + ("s" if text.lower() != other else "")) for span, text in wrong)
                facts = {"one": main, "other": other, "times": len(wrong)}
                yield Finding("C010", wrong[0][0], facts, fix=Fix(f"write {main} throughout", edits))
