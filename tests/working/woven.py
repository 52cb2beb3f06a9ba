"""Helpers to ask a fabric what was worked into what, told by rows and by places in a row."""

from __future__ import annotations

from loopwright.model.fabric import Fabric, FabricRow
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def woven(text: str, size: int = 0) -> Fabric:
    """The fabric of a written pattern."""
    fabric = work(read(Source.of(text))).fabrics[size]
    assert fabric is not None
    return fabric


def row(fabric: Fabric, label: str) -> FabricRow:
    """The last row with a label."""
    return [r for r in fabric.rows if r.label == label][-1]


def edge(fabric: Fabric, label: str) -> list[int]:
    """The stitches of a row that the next one can be worked into, in the order of making; chains among them."""
    r = row(fabric, label)
    return [*r.borrowed, *(s for s in range(r.start, r.end) if fabric.part_of(s) in ("edge", "counts"))]


def told(fabric: Fabric, label: str) -> list[tuple[str, tuple[int, ...], str]]:
    """Kind, parents and place of each stitch on a row's edge; the top of a start chain as what it counts as."""
    found = []
    for s in edge(fabric, label):
        kind = fabric.kinds[fabric.counts_as[s]] if s in fabric.counts_as else fabric.name(s)
        found.append((kind, fabric.parents(s), fabric.where(s)))
    return found


def parents(fabric: Fabric, label: str) -> list[tuple[int, ...]]:
    """The parents of each stitch on a row's edge, chains left out."""
    return [fabric.parents(s) for s in edge(fabric, label) if fabric.name(s) != "ch" or s in fabric.counts_as]
