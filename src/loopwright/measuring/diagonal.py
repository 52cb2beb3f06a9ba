"""Pieces worked from corner to corner in blocks: their rows lie aslant, so that blocks tell how wide and deep they are, not rows.

A block is a few chains and as tall stitches beside them, joined to the row before by a slip stitch. The work is turned every row, and each
block stands on the side of one below, so that along an edge heights and widths of blocks take turns (derived from plane geometry).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby, pairwise

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import Course
from loopwright.model.fabric import ROLES, Fabric

LEAST = 2  # chains, and stitches beside them, in a block
BEGIN = 3  # rows that begin with one block and gain one each: shells in straight rows do not
_EDGE, _COUNTS = ROLES.index("edge"), ROLES.index("counts")


def blocks(fabric: Fabric, run: Sequence[Course]) -> tuple[int, ...]:
    """How many blocks each row of a piece has; nothing for a piece that is not worked from corner to corner."""
    found = tuple(_in_row(fabric, c) for c in run[:BEGIN])
    if found != tuple(range(1, BEGIN + 1)):
        return ()
    found += tuple(_in_row(fabric, c) for c in run[BEGIN:])
    return found if all(found) else ()


def _in_row(fabric: Fabric, c: Course) -> int:
    """Blocks of a row; 0 where it has anything else along its top."""
    made = [fabric.name(s) for s in range(c.row.start, c.row.end) if fabric.role[s] in (_EDGE, _COUNTS)]
    runs = [(what, len(list(own))) for what, own in groupby(made, key=_what)]
    solid = [n for what, n in runs if what == "stitch"]
    beside = sum(1 for (a, n), (b, m) in pairwise(runs) if (a, b) == ("ch", "stitch") and min(n, m) >= LEAST)
    return len(solid) if beside == len(solid) else 0


def _what(kind: str) -> str:
    return kind if kind in ("ch", "sl st") else "stitch"


def sides_mm(counts: Sequence[int], run: Sequence[Course], sizes: StitchSizes) -> tuple[float, float]:
    """The shorter and the longer side of a piece with so many blocks in its rows.

    Both grow with every row up to the most blocks; a row with no more than the one before makes one side longer, one with fewer neither.
    """
    most = max(counts)
    longer = most + sum(1 for a, b in pairwise(counts) if a == b == most)
    widest = run[list(counts).index(most)]
    solid = {k: n for k, n in widest.kinds.items() if _what(k) == "stitch"}
    many = sum(solid.values())
    wide = sum(n * sizes.width(k) for k, n in solid.items()) / most
    tall = sum(n * sizes.height(k) for k, n in solid.items()) / many
    return most * (wide + tall) / 2, longer * (wide + tall) / 2
