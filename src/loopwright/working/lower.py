"""Rounds worked into one further down: the next layer of a flower, behind its petals ("around post of next sc of Rnd 2")."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from loopwright.model.tree import Either, Group, InTurn, Make, Node, Place, Repeat

if TYPE_CHECKING:
    from loopwright.working.explanations import Explanation, State
    from loopwright.working.steps import Step


def row_named(body: Sequence[Node]) -> int:
    """The number of the row that all of a row is told to be worked into; 0 where it is the row below, or several."""
    told = [p for p in places(body) if p.quant != "same" and p.thing.kind != "ring" and not p.from_hook]
    if not told or not told[0].of_row or told[0].quant == "skipped" and told[0].n is None:
        return 0  # "dc in each skipped st of Rnd 4": they lie under the chains of the row below
    number, thing = told[0].of_row, told[0].thing
    return number if all(p.of_row == number or not p.of_row and p.thing == thing for p in told) else 0


def places(nodes: Sequence[Node]) -> Iterator[Place]:
    """The places that instructions name, in the order of the words; those of slip stitches only where they tell a row."""
    for node in nodes:
        if isinstance(node, (Make, Group)) and node.place is not None:
            if not isinstance(node, Make) or node.kind != "sl st" or node.place.of_row:
                yield node.place
        elif isinstance(node, Group):
            yield from places(node.nodes)
        elif isinstance(node, Repeat):
            yield from places(node.nodes)
            yield from places(node.ending)
        elif isinstance(node, InTurn):
            yield from places(node.parts)
        elif isinstance(node, Either):
            yield from places(node.readings[0][1])


def lower_state(before: Explanation, step: Step, number: int) -> State | None:
    """The state as after the row of that number, for what is worked into it; None where it is the row below, or is not there."""
    at: Explanation | None = before
    while at is not None and at.step is not None and at.outcome is not None:
        told = at.step if at.outcome.made is not None and at.outcome.made.out else None
        if told is not None and told.section != step.section:
            return None
        if told is not None and told.number == number:
            return None if at is before else replace(before.state, view=at.state.view, pending=None, in_rounds=at.state.in_rounds, joined=at.state.joined)
        at = at.before
    return None
