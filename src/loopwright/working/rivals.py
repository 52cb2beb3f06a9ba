"""Explanations that lay a wrong count at another row: nearly as cheap as the best, with as many counts that disagree.

Where a printed count disagrees with all that can be made, the count before it may be the wrong one: "(14 sts)", read with its turning
chain, makes the 19 of the next row impossible, and 13 without it would make that right.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from loopwright.record import record
from loopwright.working.explanations import Explanation, Outcome
from loopwright.working.remembered import Layer

NEAR = 1.5  # what a rival may cost more than the best: less than a convention that changes from row to row
MOST_RIVALS = 150  # explanations looked at on the search for them


@record
class Rival:
    """Two counts of which one is wrong: of the row at fault in the best explanation, and of one that the best takes as right.

    `row`: that one, as the best explanation makes it. `otherwise`: the same row as it would have to be. `fault`: the row at fault.
    """

    row: Outcome
    otherwise: Outcome
    fault: Outcome


def rivals(best: Explanation, others: Iterable[Explanation], layers: Sequence[Layer]) -> list[Rival]:
    """The rivals of the best explanation: none where all its counts agree, at most one for each of its rows."""
    outcomes = best.outcomes()
    if all(o.agrees is not False for o in outcomes):
        return []
    found: dict[tuple[int, int], Rival] = {}
    whole = list(others)  # looks for them; what was met on the way is in the layers by then
    taken = {id(e) for e, _ in best.chain()}
    met = [(kept, new) for layer in layers for kept, new in layer.alike if id(kept) in taken and new.cost <= kept.cost + NEAR]
    for kept, new in [*((best, e) for e in whole), *met]:
        own = outcomes if kept is best else kept.outcomes()
        rival = _rival(own, new.outcomes())
        if rival is not None:
            found.setdefault((rival.row.step.item, rival.row.step.part), rival)
    return list(found.values())


def _rival(best: Sequence[Outcome], other: Sequence[Outcome]) -> Rival | None:
    """What tells two explanations of the same rows apart, where that is one count taken as right in place of one other."""
    if len(best) != len(other) or any((b.made is None) != (o.made is None) for b, o in zip(best, other, strict=True)):
        return None
    apart = [(b, o) for b, o in zip(best, other, strict=True) if b.agrees is not o.agrees]
    worse = [(b, o) for b, o in apart if o.agrees is False]
    better = [(b, o) for b, o in apart if b.agrees is False]
    if len(apart) != 2 or len(worse) != 1 or len(better) != 1:
        return None
    (row, otherwise), (fault, _) = worse[0], better[0]
    return Rival(row, otherwise, fault) if row.agrees is True and better[0][1].agrees is True else None
