"""Rows that are worked as their count says, where their words do not tell how or do not agree with it."""

from __future__ import annotations

from array import array

from loopwright.record import changed
from loopwright.working.explanations import Outcome, State
from loopwright.working.kinds import code
from loopwright.working.openings import printed_total
from loopwright.working.rows import Made, main_kind
from loopwright.working.run import MAX_ITEMS
from loopwright.working.slots import empty
from loopwright.working.steps import Step
from loopwright.working.view import plain_row

UNTOLD = 1.5  # what it costs to take a row's count from its print alone
DOUBTED = 0.8  # and to go on as printed where the row told makes something else


def plain(state: State, step: Step, number: int, kind: str) -> Made:
    """A row of so many equal stitches, made as nobody told."""
    view = plain_row(number, code(kind), joined=state.joined)
    return Made(
        view, view.items, empty(number), array("i", (max(0, step.span.start - step.at),)) * number, number, 0, {kind: number}, 0.0, 0, 0, (), state.conventions, kind,
        state.joined, False, state.in_rounds, None,
    )


def pattern_as_printed(state: State, step: Step) -> list[tuple[State, Outcome]]:
    """A row that only says to go on in pattern: its count is known from its print alone, and so confirms nothing."""
    count = next((c for c in step.printed if c.scope == "row" and c.n.at(0) is not None), None)
    if count is None or (count.n.at(0) or 0) > MAX_ITEMS:
        return []
    kind = count.noun if count.noun not in (None, "st", "sts") else state.kind
    made = plain(state, step, count.n.at(0) or 0, str(kind))
    after = changed(state, view=made.view, pending=None, kind=main_kind(step.body, state.kind))
    how = "as-printed" if step.order is None or not step.order.untold else "otherwise"
    return [(after, Outcome(step, made, UNTOLD, None, assumed=((how, made.count),)))]


def wrong_print(state: State, step: Step, results: list[tuple[State, Outcome]]) -> list[tuple[State, Outcome]]:
    """Where no reading agrees with the printed count: the fabric may go on as printed."""
    number = printed_total(step.printed)
    if number is None or any(o.agrees for _, o in results):
        return []
    s, o = min(results, key=lambda r: r[1].cost)
    if o.made is None or o.made.view.foundation or o.agrees is None:
        return []
    view = plain_row(number, code(s.kind), joined=s.joined)
    return [(changed(s, view=view), changed(o, cost=o.cost + DOUBTED))]
