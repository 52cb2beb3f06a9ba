"""A repeat told for the sides, and what is worked instead in the corners: "*ch 1, 3 dc in next sp; rep from * around, working (3 dc, ch 2, 3 dc) in each corner"."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, Chain, Group, Make, Node, Place, Repeat, Thing

_SPACES = ("sp", "loop", "gap")


def with_corners(before: Sequence[Node], sides: Repeat, corner: Group) -> Repeat | None:
    """Sides and corners in turn; None where the repeat does not go from space to space.

    What leads to a space leads to a corner too ("ch 1"); what follows a space in a round follows a corner where it was told
    before the repeat as well ("3 sc in corner, sc in next 3 dc, *sc in next sp, sc in next 3 dc; …").
    """
    at = next((i for i, n in enumerate(sides.nodes) if isinstance(n, (Make, Group)) and n.place is not None and n.place.thing.kind in _SPACES), -1)
    if at < 0 or sides.mode != "end" or sides.ending or sides.upto is not None or sides.left is not None or corner.place is None:
        return None
    lead, tail = sides.nodes[:at], sides.nodes[at + 1 :]
    if not all(isinstance(n, Chain) for n in lead):
        return None
    if not tail or [_told(n) for n in before[-len(tail) :]] != [_told(n) for n in tail]:
        tail = ()
    there = replace(corner, place=replace(corner.place, quant="next", n=ONE, thing=Thing("corner")))
    return replace(sides, nodes=(replace(sides, upto=Thing("corner")), *lead, there, *tail), span=sides.span.cover(corner.span))


def _told(node: Node) -> object:
    """What a stitch or chain says, wherever it stands; the node itself for others."""
    if isinstance(node, Chain):
        return "ch", node.n.values
    if isinstance(node, Make):
        where: Place | None = node.place
        return node.kind, node.n.values, where and (where.quant, where.n and where.n.values, where.thing)
    return node
