"""How many stitches of the row below some instructions take and how many they make, where that is plain. Not a rule, not the worker."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.model.tree import Chain, Define, Either, Group, Join, Make, Mark, Node, Place, Repeat, Skip
from loopwright.record import record

_TOG = re.compile(r"(\d+)tog$")
_NO_STITCH = frozenset({"sp", "ring", "corner", "row-end", "underside", "row", "join"})


@record
class Flow:
    """Stitches taken from the row below, stitches made."""

    takes: int
    gives: int

    def __add__(self, other: Flow) -> Flow:
        return Flow(self.takes + other.takes, self.gives + other.gives)

    def times(self, n: int) -> Flow:
        """The same n times over."""
        return Flow(self.takes * n, self.gives * n)


NOTHING = Flow(0, 0)


def flow(nodes: Sequence[Node], size: int = 0) -> Flow | None:
    """The flow of instructions in one size; None where it depends on the fabric or on how the words are meant."""
    total = NOTHING
    for node in nodes:
        one = _flow(node, size)
        if one is None:
            return None
        total += one
    return total


def _flow(node: Node, size: int) -> Flow | None:
    match node:
        case Make():
            return _make(node, size)
        case Chain():
            return Flow(1, 1) if node.counts == "yes" else NOTHING
        case Skip():
            n = node.n.at(size)
            return None if n is None or node.thing.kind in _NO_STITCH else Flow(n, 0)
        case Group():
            return _group(node, size)
        case Repeat():
            return _repeat(node, size)
        case Either():
            readings = [flow(r, size) for _, r in node.readings]
            return readings[0] if readings and all(r == readings[0] for r in readings) else None
        case Join() | Define():
            return NOTHING
        case Mark():
            return None if node.what in ("leave", "attach") else NOTHING
        case _:
            return None


def _repeat(node: Repeat, size: int) -> Flow | None:
    inside = flow(node.nodes, size)
    times = node.times.at(size) if node.times else None
    if inside is None or node.ending:
        return None
    if node.mode == "once":
        return inside
    if node.mode in ("times", "more") and times is not None:
        return inside.times(times + (1 if node.mode == "more" else 0))
    return None


def _make(node: Make, size: int) -> Flow | None:
    n = node.n.at(size)
    if n is None or node.between or node.kind == "sl st":
        return None
    tog = _TOG.search(node.kind)
    legs = node.taking or (int(tog[1]) if tog else node.parts or (2 if node.kind == "dec" else 1))
    made = 2 if node.kind == "inc" else 1
    if node.place is None:
        return Flow(n * legs, n * made)
    places = _places(node.place, size)
    if places is None:
        return None
    if legs > 1:
        return Flow(legs * n, n) if places in (1, legs) else None
    if node.place.from_hook:
        return Flow(places, n)
    return Flow(places, n * made * places) if node.place.quant != "same" else Flow(0, n * made)


def _places(place: Place, size: int) -> int | None:
    """Stitches that a plain place stands for, None for spaces, posts of unknown rows, "each" to the end and the like."""
    if place.thing.kind in _NO_STITCH or place.rows_below or place.left or place.relation == "between" or place.centre:
        return None
    if place.from_hook and place.k:
        return place.k
    if place.quant not in ("next", "first", "last", "same") or place.of is not None:
        return None
    return place.n.at(size) if place.n else None


def _group(node: Group, size: int) -> Flow | None:
    inside = flow(node.nodes, size)
    places = _places(node.place, size) if node.place else None
    if inside is None or places is None or node.place is None or node.place.from_hook:
        return None
    return Flow(0 if node.place.quant == "same" else places, inside.gives * places)
