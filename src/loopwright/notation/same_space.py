"""A corner told without words for its space: "2 dc in next sp, ch 3, 2 dc in sp" are all in one.

Common practice, no source: the form was met in printed leaflets.
"""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import Chain, Make, Node
from loopwright.notation.cursor import Cursor

_SPACES = frozenset(("sp", "space"))


def same_space(cur: Cursor, before: list[Node], found: Node) -> Node:
    """The stitches just read, in the space of those before the chain where they are as many of a kind and only "in sp" is said."""
    if not before or not isinstance(found, Make) or found.place is None or found.place.thing.kind != "sp" or cur.low(-1) not in _SPACES or cur.low(-2) not in ("in", "into"):
        return found
    first = before[-2] if len(before) > 1 and isinstance(before[-1], Chain) else None
    alike = isinstance(first, Make) and first.kind == found.kind and first.n.values == found.n.values and (found.n.at(0) or 0) > 1
    into = first.place.thing.kind if alike and isinstance(first, Make) and first.place is not None else ""
    return replace(found, place=replace(found.place, quant="same")) if into == "sp" else found
