""" "Repeat Rows 2 and 3 until 12 sts remain": the rows are worked one by one until the number is there."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from loopwright.model.tree import Chain, Evenly, Mark, Node, Num
from loopwright.working.explanations import Explanation
from loopwright.working.steps import EVEN, Step
from loopwright.working.tally import agrees

if TYPE_CHECKING:
    from loopwright.working.rows import Made
    from loopwright.working.search import Decoder

MOST = 200  # rows asked for in this way


def rows_until(decoder: Decoder, old: Explanation, step: Step, steps: list[Step], at: int, target: int) -> Explanation | None:
    """The rows up to the first that comes out at `target` stitches; None where none does, or where no row of the kind can be worked.

    Where several rows are repeated in turn, only all of them together need to come nearer.
    """
    turn = step.turn or _change(old, step)
    here, first = old, old.state.view.stitches
    if step.order is not None and step.order.kind == "block" and old.outcome is not None and old.outcome.made is not None:
        first = _counted(step, old.outcome.made)
    before = first
    number = old.step.number + 1 if old.step is not None and old.step.number else None  # no row with a number begins a piece
    for i in range(MOST if turn and target != first else 0):
        part = replace(step, body=turn[i % len(turn)], order=None, printed=(), part=step.part + i, last_of_item=False, number=step.number or (number and number + i))
        found = decoder.known(here.state, here.rows, part, steps, at)
        state, rows, outcome = min(found.outcomes, key=lambda f: f[2].cost)
        done = 0 if rows is None else here.rows + rows
        made = _counted(step, outcome.made) if outcome.made is not None else None
        if made is None:
            return None
        if made == target:
            verdict = agrees(outcome.made, step.printed) if step.printed and outcome.made is not None else None
            last = replace(outcome.of(replace(part, printed=step.printed, last_of_item=True)), agrees=verdict)
            return Explanation(state, here.cost + outcome.cost, last, here, None, done)
        if (i + 1) % len(turn) == 0:
            if abs(target - made) >= abs(target - before) or (made > target) == (target > first):
                return None
            before = made
        here = Explanation(state, here.cost + outcome.cost, outcome, here, part, done)
    return None


def _counted(step: Step, made: Made) -> int:
    """What the target counts: stitches, or the blocks of a piece worked from corner to corner."""
    blocks = step.order is not None and step.order.kind == "block"
    return made.made.get("block", made.count) if blocks else made.count


def _change(old: Explanation, step: Step) -> tuple[tuple[Node, ...], ...]:
    """What each of the rows does that go on with a change told before."""
    order = step.order
    delta = order.delta.at(0) if order is not None and order.delta is not None else old.state.last_change
    if not delta:
        return ()
    lead = tuple(n for n in step.body if isinstance(n, (Chain, Mark)))
    kind = (order.delta_kind or order.kind) if order is not None else None
    change = (*lead, Evenly("dec" if delta < 0 else "inc", Num((abs(delta),)), kind=kind))
    if order is not None and order.alternate:
        return (change, EVEN) if order.at_once else (EVEN, change)
    return (change,)
