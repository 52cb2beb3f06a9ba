"""Whether the chain at the start of a row counts as a stitch: told two ways, or never told."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.openings import Opening, openings
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.kept import of_short
from loopwright.source import Span

TALLEST = 6  # a longer chain is a loop or a foundation
_TOLD = re.compile(
    r"\bcounts?\b[^.;\n]{0,20}\b(?:as|toward|for)\b|\b(?:not|never)\s+count|\bcounts?\b[^.;\n]{0,12}\bnot\b|\bcounted\b|\bstands?\s+for\b|\bas\s+(?:the\s+)?first\b"
    r"|\bfor\s+(?:the\s+)?(?:first|1st)\b|"
    r"\(\s*(?:a|1st|first|no|one|not a)\s+(?:st|stitch|tr|dc|hdc|htr)\b|\b(?:3rd|4th|5th)\s+(?:st|ch|chain)\s+of\b",
    re.IGNORECASE,
)
_LENGTH = re.compile(r"\bch(?:ain)?\.?[ -]{0,2}(?P<after>\d)\b|\b(?P<before>\d)[ -]{0,2}ch(?:ain)?\b", re.IGNORECASE)
_NOTE = re.compile(
    r"(?<![^.;\n])[^.;\n]*\b(?:start|beginning|begin|turning|throughout)\b[^.;\n]{0,60}"
    r"\b(?:does not count|do not count|not counted|counts?)\b[^.;\n]*",
    re.IGNORECASE,
)
_ASSUMED = re.compile(r"ch (?P<n>\d) at the start of a row(?: before \w+)? (?:(?P<no>does not count)|counts) as a stitch")
_SAID = re.compile(r"\b(?:(?P<no>does not count|do not count|not counted)|counts?)\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Contradictions everywhere; "never told" only in whole patterns, and only of chains long enough to be a stitch (2 or more)."""
    opened = list(openings(pattern))
    yield from _two_ways(pattern, opened)
    if not pattern.whole or _TOLD.search(pattern.document.text):
        return
    tall = [o for o in opened if 2 <= o.length <= TALLEST]
    if tall:
        span = _span(tall[0])
        yield Finding("C005", span, {"length": tall[0].length, "rows": len(tall)})


def _two_ways(pattern: Pattern, opened: Sequence[Opening]) -> Iterator[Finding]:
    said = dict(_heading(pattern))
    yield from _worked_otherwise(pattern, said)
    for o in opened:
        if o.chain.counts not in ("yes", "no"):
            continue
        counts = o.chain.counts == "yes"
        before = said.setdefault(o.length, counts)
        if before != counts:
            words = ("counts as a stitch", "does not count") if counts else ("does not count", "counts as a stitch")
            yield Finding("C004", _span(o), {"length": o.length, "here": words[0], "before": words[1]})


def _worked_otherwise(pattern: Pattern, said: dict[int, bool]) -> Iterator[Finding]:
    """The heading says one thing, and the counts of the rows come out with the other: by what the worker had to assume."""
    told = pattern.value("turning chain")
    for a in pattern.report.assumptions:
        m = _ASSUMED.match(a.message)
        if m is None or told is None or said.get(int(m["n"])) in (None, m["no"] is None):
            continue
        words = ("counts as a stitch", "does not count") if m["no"] is None else ("does not count", "counts as a stitch")
        yield Finding("C004", a.span, {"length": int(m["n"]), "here": f"{words[0]}, by the counts of the rows", "before": words[1]})
        return


def _heading(pattern: Pattern) -> Iterator[tuple[int, bool]]:
    """Lengths of which the heading line says whether they count."""
    for told in pattern.lines("turning chain"):
        for clause in re.split(r"[,;.]", told.value):
            length, said = _LENGTH.search(clause), _SAID.search(clause)
            if length and said:
                yield int(length["after"] or length["before"]), said["no"] is None
    yield from _noted(pattern.document.text[: pattern.body_start()])


@of_short(16)
def _noted(head: str) -> tuple[tuple[int, bool], ...]:
    """The same told in notes of a heading; kept, as rows are written more often than headings."""
    told = [(_LENGTH.search(m.group()), _SAID.search(m.group())) for m in _NOTE.finditer(head)]
    return tuple((int(length["after"] or length["before"]), said["no"] is None) for length, said in told if length and said)


def _span(o: Opening) -> Span:
    return o.chain.span if o.chain.span.end else o.row.span
