"""What the words of a row tell of its start chain: how it goes on, how it ends."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.tree import Either, Group, Join, Make, Mark, Node, Repeat
from loopwright.working.kinds import legs, plain


def one_leg_short(following: Sequence[Node]) -> bool:
    """ "ch 3, dc4tog over next 4 sts, *ch 7, dc5tog over next 5 sts": what the row begins with has a leg less than all the others."""
    first = following[0] if following else None
    if not isinstance(first, Make) or (few := _legs(first)) < 2:
        return False
    others = next((n.nodes for n in following if isinstance(n, Repeat)), ())
    return any(_legs(n) == few + 1 for n in others if isinstance(n, Make) and ("tog" in n.kind) == ("tog" in first.kind))


def _legs(node: Make) -> int:
    """Over how many stitches it is worked, where it is one of several legs; 0 where it goes into one place."""
    over = node.place.n.at(0) if node.place is not None and node.place.n is not None and node.place.quant == "next" else None
    many = node.taking or (legs(node.kind) if "tog" in node.kind else 0)
    return many if many > 1 and (node.place is None or over == many) else 0


def into_turning_chain(nodes: Sequence[Node]) -> str:
    """The stitch that a row ends with, where it goes into the turning chain of the row below; "" where it does not."""
    for node in reversed(nodes):
        if isinstance(node, Make):
            return plain(node.kind) if node.place is not None and "tch" in (node.place.thing.kind, node.place.of and node.place.of.kind) else ""
        counted = isinstance(node, Either) and not node.readings[0][1]  # a count, or so many more
        if not counted and not isinstance(node, (Mark, Join)):
            return ""
    return ""


def pair_at_end(nodes: Sequence[Node]) -> bool:
    """Whether a row ends with two of a stitch in its last place."""
    last = next((n for n in reversed(nodes) if isinstance(n, (Make, Group, Repeat))), None)
    if isinstance(last, Repeat):
        return pair_at_end(last.ending)
    place = last.place if isinstance(last, Make) else None
    return isinstance(last, Make) and last.n.at(0) == 2 and place is not None and (place.quant == "last" or place.thing.kind == "tch" or place.of is not None)
