"""The instructions of rows as they are put together, cut, and changed where a row does otherwise than the one that tells it."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from loopwright.model.moved import moved
from loopwright.model.tree import Chain, Either, Group, InTurn, Make, Mark, Node, Num, Otherwise, Repeat, RowOrder


def without_chain(body: tuple[Node, ...]) -> tuple[Node, ...]:
    """A row that ends with no chain for the next: "rep 2nd row twice, omitting ch 3 at end of last row"."""
    end = len(body)
    while end and isinstance(body[end - 1], (Chain, Mark)) and getattr(body[end - 1], "what", "turn") == "turn":
        end -= 1
    return (*body[:end], *(n for n in body[end:] if isinstance(n, Mark)))


def together(parts: list[tuple[tuple[Node, ...], int]]) -> tuple[tuple[tuple[Node, ...], ...], int]:
    """Bodies of several rows with what is to be added to the spans of each, so that one number is to be added to all of them."""
    at = min((where for nodes, where in parts if nodes), default=0)
    return tuple(moved(nodes, where - at) if nodes else () for nodes, where in parts), at


def for_row(body: tuple[Node, ...], last: bool) -> tuple[Node, ...]:
    """The body without the chain that is for the last of the rows, unless this is it; there it is followed by the turn."""
    at = next((i for i, n in enumerate(body) if isinstance(n, Mark) and n.what == "last-row"), None)
    if at is None or at == 0:
        return body
    return (*body[:at], Mark("turn"), *body[at + 1 :]) if last else (*body[: at - 1], *body[at + 1 :])


def untold(order: RowOrder | None) -> bool:
    """Whether a row told by another one changes something in it of which nobody can tell what it is."""
    return order is not None and order.other is not None and order.other.numbers is None and order.other.kinds is None


def differently(body: tuple[Node, ...], other: Otherwise) -> tuple[Node, ...]:
    """A row's instructions with what the words change; as they are where nobody can tell what that is."""
    return body if other.numbers is None and other.kinds is None else tuple(map(partial(_changed, other), body))


def _changed(other: Otherwise, node: Node) -> Node:
    if isinstance(node, Make):
        return _make(other, node)
    if isinstance(node, Group):
        return replace(node, nodes=tuple(map(partial(_changed, other), node.nodes)))
    if isinstance(node, Repeat):
        times = _number(other, node.times) if other.kind is None else node.times
        return replace(node, nodes=tuple(map(partial(_changed, other), node.nodes)), ending=tuple(map(partial(_changed, other), node.ending)), times=times)
    if isinstance(node, InTurn):
        return replace(node, parts=tuple(map(partial(_changed, other), node.parts)))
    if isinstance(node, Either):
        return replace(node, readings=tuple((cost, tuple(map(partial(_changed, other), nodes))) for cost, nodes in node.readings))
    return replace(node, n=_number(other, node.n) or node.n) if isinstance(node, Chain) and other.kind == "ch" else node


def _make(other: Otherwise, node: Make) -> Make:
    if other.kinds is not None:
        return replace(node, kind=other.kinds[1]) if node.kind == other.kinds[0] else node
    return replace(node, n=_number(other, node.n) or node.n) if other.kind in (None, node.kind) else node


def _number(other: Otherwise, n: Num | None) -> Num | None:
    """The other number in its place; the same where it is another one."""
    if n is None or other.numbers is None:
        return n
    old, new = other.numbers
    return replace(n, values=tuple(new if v == old else v for v in n.values))
