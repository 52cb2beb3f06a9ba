"""The instructions of rows as they are put together and cut."""

from __future__ import annotations

from loopwright.model.moved import moved
from loopwright.model.tree import Chain, Mark, Node


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
