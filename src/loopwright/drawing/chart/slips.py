"""Slip stitches that carry the yarn to where the next stitch stands: dots on what they were worked into, below the row."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loopwright.drawing.chart.columns import GAP
from loopwright.drawing.chart.drawn import Mark
from loopwright.drawing.chart.stood import Stood
from loopwright.drawing.chart.symbols import AIR, height, width

if TYPE_CHECKING:
    from loopwright.drawing.chart.laying import Laying

BEFORE = 9.0  # that it lies before the foot of what rises from the same place
UNDER = 3.5  # that it begins below the feet of the row
Slip = tuple[Stood, Stood | None]


def take_slips(stood: list[Stood]) -> list[Slip]:
    """Takes them out of the columns of a row, each with what stands next; where nothing else stands, they stay and stand themselves."""
    found: list[Slip] = []
    others = any(s.column.what in ("stitch", "stack") and s.known for s in stood)
    after: Stood | None = None
    for k in range(len(stood) - 1, -1, -1):
        s = stood[k]
        if s.column.what == "slip" and (not others or not s.known):
            s.column.what, s.column.wide, s.tall = "stitch", width("sl st") + GAP, height("sl st")
        if s.column.what == "slip":
            found.append((stood.pop(k), after))
        else:
            after = s
    return found


def lay_slips(laying: Laying, slips: list[Slip], index: int, way: int) -> None:
    """Draws them; `way`: 1 where the row goes towards larger u."""
    for s, after in slips:
        s.u = sum(s.aims) / len(s.aims)
        if after is not None and after.column.parents == s.column.parents and after.known:
            s.u = laying.foot(after)[0] - way * laying.half(after, BEFORE)
        s.low -= UNDER
        s.high = s.low + height("sl st")
        stitch = s.column.stitches[0]
        laying.marks.append(Mark(stitch, "sl st", (laying.point(s.u, s.low),), laying.point(s.u, s.high), "none", index))
        laying.tops[stitch] = (s.u, s.high + AIR - UNDER)
        laying.sky.raise_to(s.u, s.high, laying.half(s, width("sl st") / 2))
