"""How many stitches of the row below instructions take, where that follows from the words alone; for multiples.

Not the worker: instructions that go into spaces, along edges or nowhere in particular give None, and no multiple follows from them.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Chain, Either, Group, Join, Make, Mark, Node, Repeat, Skip

_STITCHY = ("st", "ch")


def taken(nodes: tuple[Node, ...]) -> int | None:
    """Stitches of the row below that the nodes take, in order; None where the words alone do not tell."""
    total = 0
    for node in nodes:
        n = _one(node)
        if n is None:
            return None
        total += n
    return total


def _one(node: Node) -> int | None:
    if isinstance(node, Make):
        return _make(node)
    if isinstance(node, Group):
        return _place_count(node)
    if isinstance(node, Skip):
        return node.n.at(0) if node.thing.kind in _STITCHY or node.thing.length is None else None
    if isinstance(node, Repeat):
        inner, times = taken(node.nodes), node.times.at(0) if node.times else 1
        more = 1 if node.mode == "more" else 0
        return None if inner is None or times is None or node.mode in ("end", "left") else inner * (times + more)
    if isinstance(node, Either):
        return taken(node.readings[0][1])
    return 0 if isinstance(node, (Chain, Mark, Join)) else None


def legs(kind: str) -> int:
    """Stitches that one stitch of a kind takes: dc3tog takes 3, dec 2, all others 1."""
    together = re.search(r"(\d+)tog$", kind)
    return int(together[1]) if together else 2 if kind == "dec" else 1


def _make(node: Make) -> int | None:
    each = node.taking or node.parts or legs(node.kind)
    if node.place is None:
        return (node.n.at(0) or 1) * each
    places = _place_count(node)
    if places is None:
        return None
    return places if each > 1 and places >= each else places * each


def _place_count(node: Make | Group) -> int | None:
    place = node.place
    if place is None:
        return 1
    if place.quant == "same":
        return 0
    if place.thing.kind in ("sp", "row-end", "underside", "ring", "corner", "join"):
        return None
    if place.quant in ("next", "first", "last"):
        return place.n.at(0) if place.n else None
    return None


def multiple_of_row(nodes: tuple[Node, ...]) -> int | None:
    """What the repeat of a row takes; 1 where nothing repeats or each stitch stands alone; None where the words do not tell."""
    repeats = [n for n in nodes if isinstance(n, Repeat) and n.mode != "once"]
    found = 1
    for r in repeats:
        n = taken(r.nodes)
        if not n:
            return None
        found = found * n // _gcd(found, n)
    return found


def _gcd(a: int, b: int) -> int:
    while b:
        a, b = b, a % b
    return a
