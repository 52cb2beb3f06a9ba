"""A finished size around that neither the stitches nor the rows of the pattern come to at its gauge."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from loopwright.checks.gauges import MM, NUMBER, gauge
from loopwright.checks.lists import said
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.source import Span

ROOM = 0.25  # ribs, lace and blocking: what is nearer is no matter of a wrong figure. Common practice, no source.
SHARES = (1.0, 0.5)  # a round is all of it, a flat piece half of it or all
_LIST = rf"{NUMBER}(?:\s?[(\[]{NUMBER}(?:\s*[,;]\s*{NUMBER})*[)\]])?"
_UNIT = r"(?P<unit>cm|mm|inch(?:es)?|ins?\b|\"|″)"
_AROUND = re.compile(
    rf"(?<![\d/.,])(?P<list>{_LIST})\s*{_UNIT}\s+(?:around|round|in\s+circumference|circumference|head|chest|bust)\b"
    rf"|\b(?:around|circumference|chest|bust)\s*:?\s+(?:of\s+|about\s+)?(?P<list2>{_LIST})\s*{_UNIT.replace('unit', 'unit2')}",
    re.IGNORECASE,
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only where every row was worked and agrees with its print, and the gauge is told in stitches and rows."""
    told = gauge(pattern)
    if told is None or not told.stitches or not told.rows or not pattern.report.rows:
        return
    if any(not row.read or row.agrees is False for row in pattern.report.rows):
        return
    for line in pattern.lines("finished size"):
        for m in _AROUND.finditer(f"{line.said}: {line.value}"):
            wanted = [float(n) * MM[(m["unit"] or m["unit2"]).lower()] for n in re.findall(NUMBER, m["list"] or m["list2"])]
            sizes = max(1, len(pattern.report.sizes))
            if len(wanted) not in (1, sizes):
                continue
            made = [_lengths_mm(pattern, size, 100 / told.stitches, 100 / told.rows) for size in range(sizes)]
            asked = wanted if len(wanted) == sizes else wanted * sizes
            nearest = [_nearest(lengths, mm) for lengths, mm in zip(made, asked, strict=True)]
            if any(mm and near and abs(near / mm - 1) > ROOM for mm, near in zip(asked, nearest, strict=True)):
                facts = {"told": said([round(w / 10) for w in asked]), "made": said([round(mm / 10) for mm in nearest])}
                yield Finding("C051", Span(line.value_span.start, line.value_span.end), facts)


def _nearest(lengths: set[float], wanted: float) -> float:
    """The length that differs least from the one wanted; 0 where there is none."""
    return min(lengths, key=lambda mm: abs(mm - wanted), default=0.0)


def _lengths_mm(pattern: Pattern, size: int, stitch_mm: float, row_mm: float) -> set[float]:
    """What the rows of a size come to in width, and the rows of each part in height."""
    found: set[float] = set()
    rows: Counter[str | None] = Counter()
    for row in pattern.report.rows:
        number = row.counts[size] if size < len(row.counts) else None
        label = getattr(pattern.document.items[row.item], "label", None)
        if number and label is not None:
            found |= {number * stitch_mm / share for share in ((1.0,) if label.kind == "rnd" else SHARES)}
            rows[row.section] += 1
    return found | {many * row_mm / share for many in rows.values() for share in SHARES}
