"""Openings that a chain bridges over skipped stitches: thumb holes, armholes, buttonholes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.grading.gauge import StitchSizes
from loopwright.grading.gauge.sizes import WIDE
from loopwright.grading.stitched import opening_mm
from loopwright.measuring.courses import Course
from loopwright.model.fabric import ROLES, Fabric
from loopwright.model.measures import Dimension

LEAST = 3  # chains, and stitches skipped, of what is an opening and no lace
SOLID = 2  # a row of lace has more chains than this share of its stitches
_EDGE = ROLES.index("edge")


def openings(fabric: Fabric, rows: Sequence[Course], sizes: StitchSizes) -> Iterator[Dimension]:
    """One dimension for each row with openings: how far around one of them is, its chain and the stitches under it."""
    for c in rows:
        if c.chains < LEAST or c.skipped < LEAST or c.stitches < SOLID * c.chains or c.way == "chain":
            continue
        runs = [n for n in _chain_runs(fabric, c) if n >= LEAST]
        if not runs or c.skipped < LEAST * len(runs):
            continue
        chain, under = sum(runs) / len(runs), c.skipped / len(runs)
        around = opening_mm(chain, under, sizes)
        off = around * WIDE * sizes.width_share
        many = f", {len(runs)} of them" if len(runs) > 1 else ""
        how = f"{chain:g} ch over {under:g} skipped sts{many}"
        yield Dimension(c.row.section, "opening around", around, around - off, around + off, (c.index, c.index), how, c.row.piece)


def _chain_runs(fabric: Fabric, c: Course) -> Iterator[int]:
    """Lengths of the runs of chains along the top of a row."""
    many = 0
    for s in range(c.row.start, c.row.end):
        if fabric.role[s] != _EDGE:
            continue
        if fabric.kinds[fabric.kind[s]] == "ch":
            many += 1
        elif many:
            yield many
            many = 0
    if many:
        yield many
