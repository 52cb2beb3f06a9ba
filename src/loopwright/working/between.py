"""How many rounds more it takes "until there are 13 stitches between the increases": each round has one more of them than the one before."""

from __future__ import annotations

from typing import TYPE_CHECKING

from loopwright.model.tree import Make, Node, Num, Repeat, RowOrder
from loopwright.record import changed

if TYPE_CHECKING:
    from loopwright.working.steps import Step


def rounds_until(order: RowOrder, done: list[Step]) -> RowOrder:
    """The order with its number of rounds, counted from the last round that tells its increases; as it is where none does."""
    wanted = order.between.at(0) if order.between is not None else None
    if wanted is None:
        return order
    for since, step in enumerate(reversed(done)):
        if step.body:
            now = _between(step.body)
            rounds = 0 if now is None else wanted - now - since
            return changed(order, between=None, times=Num((rounds,))) if rounds > 0 else order
    return order


def _between(body: tuple[Node, ...]) -> int | None:
    """The plain stitches between two increases of a round; None where it is not told so."""
    repeat = next((n for n in body if isinstance(n, Repeat)), None)
    made = [n for n in (repeat.nodes if repeat is not None else body) if isinstance(n, Make)]
    twos = [n for n in made if n.kind == "inc" or n.n.at(0) == 2 and n.place is not None and n.place.quant in ("next", "first")]
    if len(twos) != 1 or repeat is not None and len(made) != len(repeat.nodes):
        return None
    plain = 0
    for node in made:
        if node is not twos[0]:
            each = node.place.n if node.place is not None else node.n
            plain += (each.at(0) or 1) if each is not None else 1
    return plain
