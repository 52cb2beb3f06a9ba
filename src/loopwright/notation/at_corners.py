"""Corners: a repeat told for the sides with what is worked instead in the corners, and a corner asked for by its name.

"*ch 1, 3 dc in next sp; rep from * around, working (3 dc, ch 2, 3 dc) in each corner"; "*corner, ch 1, 3 dc in next sp; rep from * around".
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from loopwright.model.tree import ONE, Chain, Group, Make, Node, Place, Repeat, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.from_start import takes_to_a_space
from loopwright.notation.places import place

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


def named_corner(cur: Cursor, before: Sequence[Node]) -> Make | None:
    """ "*corner, ch 1, 3 dc in next sp", "work corner in next sp": the group of a corner, which an earlier one tells; None where it is only a place."""
    start = cur.at
    asked = cur.low(-2 if cur.low(-1) in ("first", "next", "another") else -1) in ("work", "make") if start else False
    if not (not start or asked or cur.kind(-1) in ("star", "sep") or cur.kind(-1) == "open" and cur.kind(1) != "close"):
        return None
    if not (cur.kind(1) in ("sep", "star", "close") and cur.low(1) != ":" or cur.low(1) in ("in", "into")):
        return None
    cur.at += 1
    where = place(cur) if cur.low() in ("in", "into") else None
    there = len(before) == 1 and takes_to_a_space(before[0])
    return Make("corner", ONE, where or Place("same" if there else "next", ONE, Thing("corner")), span=cur.span_from(start))
