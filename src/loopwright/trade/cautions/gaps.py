"""How wide the holes under chains are in mesh and lace, estimated from the fabric and the gauge.

A hole is bounded by the chain above it, the stitches at both sides and what was skipped below. What goes through it is the largest circle
inside: of a trapezoid where the chain is no longer than what it bridges, or bridges nothing; it touches the long side and both slanting
ones, or is as high as the hole. A chain longer than what it bridges bows up instead: by sqrt(3/8 · chord · (arc - chord)), the rise of a
shallow parabola, and by half the chain at most; there the circle is no wider than the hole, no higher, and no larger than four times its
area over its edge. Plain geometry, no source; crocheted fabric gives, so it is an estimate and is said to be one.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Protocol

from loopwright.model.fabric import ROLES, Fabric, FabricRow
from loopwright.record import record

MOST_STITCHES = 100_000  # looked at; lace repeats itself long before
LACE_SHARE = 6  # a row of lace has at least one chain to so many stitches; fewer are thumb holes, buttonholes and corners
LEAST_RUNS = 3  # and at least so many chains over a gap
_EDGE, _COUNTS, _ASSUMED = (ROLES.index(r) for r in ("edge", "counts", "assumed"))


class StitchMm(Protocol):
    """Widths and heights of stitches by kind (US keys), in mm."""

    def width(self, kind: str) -> float:
        """How wide a stitch of that kind is."""
        ...

    def height(self, kind: str) -> float:
        """How tall a row of that kind is."""
        ...


@record
class Opening:
    """Holes of one kind in one row: `mm` across, under `chains` chains over `skipped` stitches, `many` of them.

    `row`: index of the fabric's row. `first`: the first of their chains.
    """

    mm: float
    chains: int
    skipped: int
    many: int
    row: int
    first: int


def openings_mm(fabric: Fabric, sizes: StitchMm) -> tuple[Opening, ...]:
    """The holes under chains, one entry for each kind of hole in each row of lace; none for thumb holes, buttonholes and corners."""
    if "ch" not in fabric.kinds:
        return ()
    held: tuple[StitchMm, tuple[Opening, ...]] | None = fabric.known.get("openings")
    if held is None or held[0] != sizes:
        held = fabric.known["openings"] = sizes, _openings_mm(fabric, sizes)
    return held[1]


def _openings_mm(fabric: Fabric, sizes: StitchMm) -> tuple[Opening, ...]:
    found: list[Opening] = []
    chain = fabric.kinds.index("ch")
    tall: dict[int, float] = {}

    def height(stitch: int) -> float:
        kind = fabric.counts_as.get(stitch, fabric.kind[stitch])
        known = tall.get(kind)
        if known is None:
            known = tall[kind] = sizes.height(fabric.kinds[kind])
        return known

    for index, row in enumerate(fabric.rows):
        if row.end > MOST_STITCHES:
            break
        most = fabric.kind.count(chain, row.start, row.end)  # some of them may make no hole
        if most < LEAST_RUNS or most * LACE_SHARE < row.end - row.start - most:
            continue
        holes = list(_holes(fabric, row, chain))
        chains = sum(last - first for first, last in holes)
        if len(holes) < LEAST_RUNS or chains * LACE_SHARE < row.end - row.start - chains:
            continue
        alike: dict[tuple[int, int, float], list[int]] = {}
        for first, last in holes:
            post = min(height(first - 1), height(last))
            alike.setdefault((last - first, _skipped(fabric, first - 1, last), post), []).append(first)
        for (many, skipped, post), at in alike.items():
            across = opening(many * sizes.width("ch"), skipped * sizes.width("ch"), post)
            if math.isfinite(across):
                found.append(Opening(across, many, skipped, len(at), index, at[0]))
    return tuple(found)


def opening(chain_mm: float, below_mm: float, post_mm: float) -> float:
    """What goes through a hole: the chain's length, what lies under it, and the height of the stitches beside it, all in mm."""
    if chain_mm <= 0 or post_mm <= 0:
        return 0.0
    rise = min(math.sqrt(0.375 * below_mm * (chain_mm - below_mm)), chain_mm / 2) if 0 < below_mm < chain_mm else 0.0
    if rise:
        area, edge = below_mm * post_mm + 2 / 3 * below_mm * rise, chain_mm + below_mm + 2 * post_mm
        return min(max(below_mm, (chain_mm + below_mm) / math.pi), post_mm + rise, 4 * area / edge)
    wide, narrow = max(chain_mm, below_mm), min(chain_mm, below_mm)
    if wide - narrow < 1e-9 * wide:
        return min(wide, post_mm)
    tall = post_mm * wide / (wide - narrow)  # where the sides would meet
    return min(post_mm, 2 * wide * tall / (wide + 2 * math.hypot(tall, wide / 2)))


def _holes(fabric: Fabric, row: FabricRow, chain: int) -> Iterator[tuple[int, int]]:
    """Runs of chains between two stitches of the row's top: the first chain, and the stitch behind the last."""
    start = -1
    before = False
    for s in range(row.start, row.end):
        role = fabric.role[s]
        if role == _EDGE and fabric.kind[s] == chain:
            start = s if start < 0 and before else start
            continue
        if role in (_EDGE, _COUNTS, _ASSUMED):
            if start >= 0:
                yield start, s
            before = True
        else:
            before = False
        start = -1


def _skipped(fabric: Fabric, left: int, right: int) -> int:
    """How many stitches of the row below lie between those that the two are worked into; 0 where they share one."""
    one, other = fabric.parents(left), fabric.parents(right)
    if not one or not other:
        return 0
    return max(0, min(other) - max(one) - 1, min(one) - max(other) - 1) if not set(one) & set(other) else 0
