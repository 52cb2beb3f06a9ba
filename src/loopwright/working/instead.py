"""A row worked as another one was, with some of its numbers otherwise: "as 7th row, having 6 instead of 7 in brackets"."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

from loopwright.model.otherwise import Instead
from loopwright.model.tree import Chain, Either, Group, InTurn, Make, Mark, Node, Num, Repeat, Skip
from loopwright.record import changed
from loopwright.working.seeking import SPACES

UNTOLD = 5  # unknown words that stand for what was not understood
Change = Callable[[Node], Node]


def rows_otherwise(rows: list[Any], base: Any, told: tuple[Instead, ...]) -> tuple[list[Any], Any]:
    """Rows with what is otherwise in them; and the row that asks for them, in doubt where that was not understood."""
    if not told:
        return rows, base
    bodies = [otherwise(row.body, told) for row in rows]
    base = changed(base, doubt=base.doubt + UNTOLD) if None in bodies else base
    return [row if body is None else changed(row, body=body) for row, body in zip(rows, bodies, strict=True)], base


def otherwise(body: tuple[Node, ...], told: tuple[Instead, ...]) -> tuple[Node, ...] | None:
    """The row with what is told of it; None where nothing, or more than one thing, in it can be meant."""
    for one in told:
        ways = _ways(one) if one.new > 0 else ()
        changed = next((made for way in ways if (made := _through(body, way)) != body), None)
        if changed is None or one.old is None and len(_numbers(body, one.kind)) != 1:
            return None
        body = changed
    return body


def without_chain(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """A row that ends with no chain for the next: "rep 2nd row twice, omitting ch 3 at end of last row"."""
    end = len(body)
    while end and isinstance(body[end - 1], (Chain, Mark)) and getattr(body[end - 1], "what", "turn") == "turn":
        end -= 1
    return (*body[:end], *(n for n in body[end:] if isinstance(n, Mark)))


def _ways(told: Instead) -> tuple[Change, ...]:
    """What may be meant, the likeliest first."""
    new, old = Num((told.new,)), (told.old,)

    def times(node: Node) -> Node:
        return replace(node, times=new) if isinstance(node, Repeat) and node.times is not None and node.times.values == old else node

    def chains(node: Node) -> Node:
        return replace(node, n=new) if isinstance(node, Chain) and node.n.values == old else node

    def stitches(node: Node) -> Node:
        if not isinstance(node, Make) or told.kind not in (None, node.kind):
            return node
        return replace(node, n=new) if node.n.values == old or told.old is None and (node.n.at(0) or 0) > 1 else node

    def places(node: Node) -> Node:
        if not isinstance(node, Make) or node.place is None or told.kind not in (None, node.kind, node.place.thing.kind):
            return node
        return replace(node, place=replace(node.place, n=new)) if node.place.n is not None and node.place.n.values == old else node

    def skips(node: Node) -> Node:
        return replace(node, n=new) if isinstance(node, Skip) and node.n.values == old else node

    if told.kind == "ch":
        return (chains,)
    if told.kind is not None:
        return (stitches,) if told.old is None else (stitches, places)
    return (times, stitches, places, chains, skips)


def loops_fewer(body: tuple[Node, ...], rows: int | None, until: Num | None) -> list[tuple[Node, ...]]:
    """A row of loops again and again, with one loop less each time: so many rows, or until so many are left. None where nobody knows which loops."""
    counted = _loops(body)
    first = counted[0] if len(set(counted)) == 1 else 0
    last = (until.at(0) or 1) if until is not None else 1
    many = first - last if rows is None else rows
    if not 0 < many < first:
        return []

    def left(n: int) -> Change:
        return lambda node: replace(node, times=Num((n,))) if isinstance(node, Repeat) and _of_loops(node) else node

    return [_through(body, left(first - i)) for i in range(1, many + 1)]


def _of_loops(node: Repeat) -> bool:
    """ "(3 ch, 1 dc into next loop) 6 times"."""
    placed = [n.place.thing.kind for n in node.nodes if isinstance(n, Make) and n.place is not None]
    return node.mode in ("times", "star-times") and len(placed) == 1 and placed[0] in SPACES and isinstance(node.nodes[0], Chain)


def _loops(body: tuple[Node, ...]) -> list[int]:
    found: list[int] = []

    def look(node: Node) -> Node:
        if isinstance(node, Repeat) and _of_loops(node) and node.times is not None:
            found.append(node.times.at(0) or 0)
        return node

    _through(body, look)
    return found


def _numbers(body: tuple[Node, ...], kind: str | None) -> set[tuple[int | None, ...]]:
    """The numbers above one that stitches of a kind have in a row."""
    found: set[tuple[int | None, ...]] = set()

    def look(node: Node) -> Node:
        if isinstance(node, Make) and node.kind == kind and (node.n.at(0) or 0) > 1:
            found.add(node.n.values)
        return node

    _through(body, look)
    return found


def _through(nodes: tuple[Node, ...], change: Change) -> tuple[Node, ...]:
    """Nodes with what a change makes of each of them, those within others too."""
    return tuple(_within(change(n), change) for n in nodes)


def _within(node: Node, change: Change) -> Node:
    if isinstance(node, Group):
        return replace(node, nodes=_through(node.nodes, change))
    if isinstance(node, Repeat):
        return replace(node, nodes=_through(node.nodes, change), ending=_through(node.ending, change))
    if isinstance(node, InTurn):
        return replace(node, parts=_through(node.parts, change))
    if isinstance(node, Either):
        return replace(node, readings=tuple((cost, _through(one, change)) for cost, one in node.readings))
    return node
