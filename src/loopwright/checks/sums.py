"""Sums written out in the text that do not come to what stands behind the equals sign: "4 x 8 = 28"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.source import Span

LONGEST = 40  # characters before and behind an equals sign that are looked at
_LEFT = r"(?<![\w.,/(-])(?<![+−×*]\s)(?<![+−×*])(?P<a>\d{1,4})\s*(?P<op>[x×*+−-])\s*(?P<b>\d{1,4})"
_EQUAL = re.compile(r"=\s*\d")
_SUM = re.compile(
    _LEFT + r"\s*=\s*(?P<c>\d{1,6})(?P<rest>\s*(?:\+\s*(?P<d>\d{1,4})\s*=\s*(?P<e>\d{1,6}))?)"
    r"(?!\s*(?:[\d.,]*\d|cm|mm|in\b|ins\b|inch|\"|″|%|[x×*/+]))"
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Plain whole numbers only; what is measured ("15 x 20 = 10 cm") is a gauge, not a sum."""
    text = pattern.document.text
    near = {m.start(): m for e in _EQUAL.finditer(text) for m in _SUM.finditer(text, max(0, e.start() - LONGEST), e.end() + LONGEST)}
    for m in near.values():
        a, b, c = int(m["a"]), int(m["b"]), int(m["c"])
        right = a * b if m["op"] in "x×*" else a + b if m["op"] == "+" else a - b
        if right != c:
            yield _finding(m, "c", right)
        elif m["d"] and c + int(m["d"]) != int(m["e"]):
            yield _finding(m, "e", c + int(m["d"]))


def _finding(m: re.Match[str], which: str, right: int) -> Finding:
    span = Span(m.start(), m.end())
    # a longer sum may go on with the wrong figure, so only the last one of a chain is mended
    alone = which == "e" or not m["d"]
    fix = Fix(f"write {right}", (Edit(Span(*m.span(which)), str(right)),), safe=False) if alone else None
    return Finding("C034", span, {"sum": m.group().strip(), "right": right, "wrong": m[which]}, fix=fix)
