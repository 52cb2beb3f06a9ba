"""A measured value with the range that the gauge's own uncertainty leaves it."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.grading.gauge.sizes import WIDE
from loopwright.measuring.courses import Course
from loopwright.measuring.parts import Part
from loopwright.model.measures import Dimension

# A stitch that was not swatched is as tall as the table says to within a twentieth (spread of the published gauges in the table).
BY_TABLE = 0.05


def spread(sizes: StitchSizes, run: Sequence[Course], *, along: bool) -> float:
    """Half the range as a share: of a length along rows, or up them (then more where kinds were not swatched)."""
    share = sizes.width_share if along else sizes.height_share
    if not along and any(plain_kind(k) != sizes.kind and plain_kind(k) not in sizes.own for c in run for k in c.kinds if k != "ch"):
        share = math.hypot(share, BY_TABLE)
    return WIDE * share


def dimension(
    part: Part, name: str, value_mm: float, how: str, sizes: StitchSizes, *, along: bool, run: Sequence[Course] | None = None,
) -> Dimension:
    """A dimension of a part with its range."""
    used = run or part.courses
    off = spread(sizes, used, along=along)
    rows = used[0].index, used[-1].index
    return Dimension(part.section, name, value_mm, value_mm * (1 - off), value_mm * (1 + off), rows, how, part.piece)


def width_mm(c: Course) -> float:
    """How wide a row lies: chains count for no more than the stitches they stand over."""
    if not c.chains or c.way == "chain" or not c.stitches:
        return c.top_mm
    chain_mm = c.top_mm / c.places
    return c.top_mm - chain_mm * max(0, c.chains - max(c.skipped, 0)) if c.way == "row" and c.skipped else c.top_mm


def sts(c: Course) -> str:
    """How many stitches and chains a course has, in words."""
    chains = f" and {c.chains} ch" if c.chains else ""
    return f"{c.stitches} st{'s' if c.stitches != 1 else ''}{chains}" if c.stitches else f"{c.chains} ch"
