""" "Repeat the last round until 12 sts remain": the rows are worked one by one until the number is there."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from loopwright.model.tree import Chain, Evenly, Mark, Node, Num
from loopwright.working.explanations import Explanation
from loopwright.working.steps import Step
from loopwright.working.tally import agrees

if TYPE_CHECKING:
    from loopwright.working.search import Decoder

MOST = 200  # rows asked for in this way


def rows_until(decoder: Decoder, old: Explanation, step: Step, steps: list[Step], at: int, target: int) -> Explanation | None:
    """The rows that come out at `target` stitches; None where they do not come out, or where no row of the kind can be worked."""
    body = _row(old, step)
    if not body:
        return None
    here, rows = old, 0
    first = old.state.view.stitches
    while rows < MOST:
        count = here.state.view.stitches
        part = replace(step, body=body, order=None, printed=(), part=step.part + rows, last_of_item=False)
        found, _ = decoder._known(here.state, part, steps, at)
        state, outcome = min(found, key=lambda f: f[1].cost)
        made = outcome.made.count if outcome.made is not None else None
        if made is None or made == count or (made > count) != (target > first) or (made > target) == (target > first) and made != target:
            return None
        rows += 1
        if made == target:
            verdict = agrees(outcome.made, step.printed) if step.printed and outcome.made is not None else None
            last = replace(outcome.of(replace(part, printed=step.printed, last_of_item=True)), agrees=verdict)
            return Explanation(state, here.cost + outcome.cost, last, here)
        here = Explanation(state, here.cost + outcome.cost, outcome.of(part), here)
    return None


def _row(old: Explanation, step: Step) -> tuple[Node, ...]:
    """What each of the rows does: the row that is repeated, or the change that is gone on with."""
    order = step.order
    if order is not None and order.what == "repeat" and step.body:
        return step.body
    delta = order.delta.at(0) if order is not None and order.delta is not None else old.state.last_change
    if not delta:
        return ()
    lead = tuple(n for n in step.body if isinstance(n, (Chain, Mark)))
    kind = (order.delta_kind or order.kind) if order is not None else None
    return (*lead, Evenly("dec" if delta < 0 else "inc", Num((abs(delta),)), kind=kind))
