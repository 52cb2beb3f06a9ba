"""Pieces whose rows spread from a point: triangles worked from the top edge's middle, half circles.

A triangle with a right angle at its tip grows by 4 row heights a row (a corner of 90 degrees at the tip, one of 45 at each end of the top
edge): a row of length L lies along two legs of L / 2, so the top edge measures L / sqrt(2), and the tip lies sqrt(2) x rows from it. A half
circle grows by pi row heights a row. Derived from plane geometry.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.parts import Part
from loopwright.measuring.ranges import dimension, sts, width_mm
from loopwright.model.measures import Dimension

FROM_A_POINT = 8  # stitches and chains of a first row that begins in one point
NEAR = 0.2  # how far a growth may lie from that of the shape
MIDDLE = (0.4, 0.6)


def fan(own: Sequence[Part], flat: Sequence[Part], sizes: StitchSizes) -> list[Dimension]:
    """Width of the top edge and depth of a piece that spreads from a point; nothing for another piece."""
    first = flat[0]
    run = first.courses
    if run[0].places > FROM_A_POINT or len(run) < 3 or not first.height_mm:
        return []
    grown = (run[-1].top_mm - run[0].top_mm) / (first.height_mm - run[0].height_mm)
    tips = [c for c in first.corners if MIDDLE[0] <= c.at <= MIDDLE[1]]
    shape = "triangle" if tips and len(first.corners) == 1 else "half circle"
    if abs(grown / (4.0 if tips else math.pi) - 1) > NEAR:
        return []
    deep = max(p.depth_mm for p in own)
    last = run[-1]
    edged = deep / first.depth_mm if first.depth_mm else 1.0
    if tips:
        wide, depth = width_mm(last) * edged / math.sqrt(2), deep * math.sqrt(2)
    else:
        wide, depth = 2 * deep, deep
    return [
        dimension(first, "width", wide, f"the top edge of a {shape}: {sts(last)} in its last plain row", sizes, along=bool(tips)),
        dimension(first, "depth", depth, f"a {shape} of all its rows", sizes, along=False),
    ]
