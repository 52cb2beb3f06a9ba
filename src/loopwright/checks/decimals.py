"""Numbers with a point that cannot be meant: ".025 in" for .25, "24.5 sts", a hook of 35 or 0.35 mm."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.kept import of_short
from loopwright.source import Span

_TINY = re.compile(r"(?<![\d.])(?P<n>0?\.0\d+)\s*(?:cm|in\b|ins\b|inch(?:es)?|\"|″)", re.IGNORECASE)
_PART = re.compile(
    r"(?<![\d.,/-])(?P<n>\d+\.\d+)\s+(?:sts?|stitches|sc|hdc|dc|tr|htr|dtr|chs?|chains?|times)\b(?!\s*(?:per|to|=|in|over|and|x|×|/))",
    re.IGNORECASE,
)
_PART_OF_LIST = re.compile(
    r"\d\s?[(\[][^()\[\]\n]{0,80}?(?P<n>\d+\.\d+)[^()\[\]\n]{0,80}[)\]]\s*(?:sts?|stitches|sc|hdc|dc|tr|htr|dtr|chs?|chains?|times)\b",
    re.IGNORECASE,
)
_PRINTED = re.compile(  # at the end of a row, whatever it counts
    r"[(\[]\s*(?P<n>\d+\.\d+)(?:\s*[(\[][\d,.\s]+[)\]])?(?!\s*(?:cm|mm|m|in|ins|inch|inches|g|oz|yds?)\b|\s*[\"″”%])[^()\[\]\n]{0,40}[)\]]\s*[.;]?\s*$",
    re.IGNORECASE,
)
_POINT = re.compile(r"\d\.\d")
_MM = re.compile(r"(?<![\d.,])(?P<n>\d+(?:\.\d+)?)\s*mm\b", re.IGNORECASE)
_HOOK = re.compile(
    r"(?<![\d.,])(?P<n>\d+(?:\.\d+)?)\s*mm\b(?=[^.;\n]{0,20}\bhook)|\bhook[^.;\n\d]{0,15}(?P<m>\d+(?:\.\d+)?)\s*mm\b", re.IGNORECASE
)
THINNEST_MM, THICKEST_MM = 0.4, 25.0  # steel 14 is 0.6 mm or less, the thickest sold is 25 mm; common practice, no source


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Lengths in the whole text, stitches in the rows only, hooks in the heading."""
    text = pattern.document.text
    for m in _TINY.finditer(text) if ".0" in text else ():
        yield _finding(Span(m.start("n"), m.end("n")), m["n"], "a length", m["n"].replace(".0", ".", 1))
    for _, row in pattern.rows() if _POINT.search(text, pattern.body_start()) else ():
        if _POINT.search(text, row.span.start, row.span.end) is None:
            continue
        places = {m.span("n") for ways in (_PART, _PART_OF_LIST, _PRINTED) for m in ways.finditer(text, row.span.start, row.span.end)}
        for start, end in sorted(places):
            yield _finding(Span(start, end), text[start:end], "a number of stitches", None)
    hooks = {*_hooks(text[: pattern.body_start()])}
    hooks |= {m.span("n") for told in pattern.lines("hook") for m in _MM.finditer(text, told.value_span.start, told.value_span.end)}
    for start, end in sorted(hooks):
        mm = float(text[start:end])
        if not THINNEST_MM <= mm <= THICKEST_MM:
            meant = mm / 10 if mm > THICKEST_MM else mm * 10
            better = f"{meant:g}" if THINNEST_MM <= meant <= THICKEST_MM else None
            yield _finding(Span(start, end), text[start:end], "a hook in mm", better)


@of_short(16)
def _hooks(head: str) -> tuple[tuple[int, int], ...]:
    """Where a heading tells a hook in mm; kept, as rows are written more often than headings."""
    return tuple(m.span("n" if m["n"] else "m") for m in _HOOK.finditer(head))


def _finding(span: Span, number: str, what: str, better: str | None) -> Finding:
    fix = Fix(f"write {better}", (Edit(span, better),), safe=False) if better else None
    return Finding("C030", span, {"number": number, "what": what}, fix=fix)
