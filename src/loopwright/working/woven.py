"""Fabrics that were woven for the text before the last change, and what of the text they depend on.

A fabric is woven again only where other rows were worked, where their words moved, or where words that were looked at have changed;
what was measured of it holds wherever its words stand.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

from loopwright.model.fabric import Fabric, FabricRow
from loopwright.working.colours import Colours
from loopwright.working.explanations import Explanation, Outcome
from loopwright.working.looked import Looked
from loopwright.working.motifs import Joins
from loopwright.working.remembered import Remembered
from loopwright.working.steps import Step
from loopwright.working.view import View
from loopwright.working.weave import Weaver

_NAME = "fabrics"


@dataclass(slots=True)
class _Kept:
    """A fabric, the steps it was woven from, the pieces of the text it depends on. `by`: for each of its rows the number of its step."""

    fabric: Fabric
    steps: list[Step]
    pieces: list[tuple[int, int, str]]
    by: list[int]
    colours: tuple[object, ...]

    def holds(self, steps: Sequence[Step], text: str) -> bool:
        """Whether the pieces still stand where they stood, counted from the starts of the rows."""
        for row, at, piece in self.pieces:
            start = (steps[row].span.start if steps else 0) + at
            if start < 0 or not text.startswith(piece, start):
                return False
        return True

    def told_by(self, steps: Sequence[Step]) -> Fabric:
        """The same fabric with its rows named as those steps name them."""
        if all(a is b or _names(a) == _names(b) for a, b in zip(self.steps, steps, strict=True)):
            return self.fabric
        rows = [_named(row, self.steps[i], steps[i]) for row, i in zip(self.fabric.rows, self.by, strict=True)]
        again = replace(self.fabric, rows=rows)
        again.known = self.fabric.known
        return again


class Woven:
    """The fabrics of the last text and of this one; out of the memo, where there is one."""

    def __init__(self, memo: dict[Any, Any] | None) -> None:
        self._before: dict[Any, _Kept] = memo.get(_NAME, {}) if memo is not None else {}
        self._now: dict[Any, _Kept] = {}
        if memo is not None:
            memo[_NAME] = self._now

    def get(self, key: Any, steps: Sequence[Step], colours: Colours, text: str) -> tuple[Fabric | None, dict[Any, Any] | None]:
        """The fabric of such rows, and what is known of it; None for the one or both where it is to be woven."""
        held = self._before.get(key)
        if held is None or not held.holds(steps, text):
            return None, None
        if held.colours != colours.places() or any((a.span, a.at) != (b.span, b.at) for a, b in zip(held.steps, steps, strict=True)):
            return None, held.fabric.known
        self._now[key] = held
        return held.told_by(steps), held.fabric.known

    def put(self, key: Any, steps: list[Step], colours: Colours, looked: Looked, woven: tuple[Fabric, list[int]]) -> None:
        """Keeps what was woven for the text after this one: the fabric, and for each of its rows the number of its step."""
        self._now[key] = _Kept(woven[0], steps, looked.pieces, woven[1], colours.places())


def fabric_of(best: Explanation, weaver: Weaver, decoder: Remembered, before: Woven) -> Fabric:
    """A fabric, as it was woven for the text before where nothing that it depends on has changed."""
    chain, looked = best.chain(), weaver.looked
    key, steps = _key_of(chain, decoder, weaver.joins), [o.step for _, o in chain]
    fabric, known = before.get(key, steps, weaver.told, looked.text)
    if fabric is None:
        by: list[int] = []
        for i, (e, outcome) in enumerate(chain):
            looked.at_row(i, outcome.step.span.start)
            _weave(weaver, e, outcome if outcome.made is None else outcome.as_made(decoder.cloth(outcome.made).made))
            by += [i] * (len(weaver.fabric.rows) - len(by))
        fabric = weaver.finish()
        if known is not None:
            fabric.known = known
        before.put(key, steps, weaver.told, looked, (fabric, by))
    return fabric


def _weave(weaver: Weaver, e: Explanation, outcome: Outcome) -> None:
    assumed = dict(outcome.assumed)
    below: View | None = e.before.state.view if e.before is not None else None
    if (start := assumed.get("start")) is not None:
        weaver.begins(b"\x02" * int(start), outcome)
        below = None
    if (layout := assumed.get("motifs")) is not None and outcome.made is not None and outcome.made.base is not None:
        weaver.around_motifs(outcome.made.base.items, outcome, layout)
        below = None
    if (number := assumed.get("lower")) is not None and weaver.back_to(outcome.step.section, number):
        below = None
    weaver.row(outcome, below if below is not None and below.items else None)


def _key_of(chain: Sequence[tuple[Explanation, Outcome]], known: Remembered, joins: Joins) -> Any:
    """What tells one fabric from another, but for where its rows stand in the text, what they are called, and colours."""
    lower = any(name == "lower" for _, o in chain for name, _ in o.assumed)  # rows are found by their numbers
    rows = tuple(
        (
            known.cloth(o.made) if o.made is not None else None, known.told(o.step).body, e.before.state.view if e.before is not None else None,
            o.flipped, o.assumed, o.step.side, o.step.kind == "rnd", o.step.number is None,
            (o.step.section, o.step.number) if lower else None,
        )
        for e, o in chain
    )
    return rows, (tuple(joins.ends), tuple(sorted(joins.first)))


def _names(step: Step) -> tuple[Any, ...]:
    return step.label, step.section, step.item, step.part


def _named(row: FabricRow, old: Step, new: Step) -> FabricRow:
    return replace(
        row, label=new.label if row.label == old.label else row.label, section=new.section if row.section == old.section else row.section,
        item=row.item + new.item - old.item, part=new.part if row.part == old.part else row.part,
    )
