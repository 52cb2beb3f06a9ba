"""Rows free of the place they stand at: what they tell, counted from their first instruction, is the same wherever they are moved to.

So what was worked of a row stays true while text is written above it. A memo keeps the row that belongs to each row of the text.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from loopwright.model.moved import first_start, moved, words_of
from loopwright.model.tree import ROW_WORDS, Item, Row
from loopwright.record import changed

_NAME = "still"


@dataclass(slots=True)
class Still:
    """A row without its place. `offset`: what is to be added to the start of the row in the text, so that its spans are true there.

    `sized`, `asked`: what was made of it for each size, and what it asked for when it was last worked, by whoever works it. `like`: of a
    row that says the same, if there is one.
    """

    row: Row
    offset: int
    sized: dict[int, Row] = field(default_factory=dict)
    asked: dict[int, Any] = field(default_factory=dict)
    like: Still | None = None


class Stills:
    """The rows of a text without their places; out of the memo of an earlier text where the same rows stood in it."""

    def __init__(self, memo: dict[Any, Any] | None) -> None:
        self._before: dict[int, tuple[Row, Still]] = memo.get(_NAME, {}) if memo is not None else {}
        self._now: dict[int, tuple[Row, Still]] = {}
        if memo is not None:
            memo[_NAME] = self._now

    def of(self, row: Row) -> Still:
        """The row without its place."""
        held = self._now.get(id(row)) or self._before.get(id(row))
        if held is None:
            same = words_of(row)
            held = row, _still(row) if same is None else _alike(row, self.of(same[0]), same[0].span.start + same[1])
        self._now[id(row)] = held
        return held[1]


def _still(row: Row) -> Still:
    first = first_start(row.body)
    at = (first if first is not None else row.span.start) - 1  # nothing may stand at 0: that is nowhere
    words = {name: moved(getattr(row, name), -at) for name in ROW_WORDS}
    return Still(changed(row, label=moved(row.label, -at), span=moved(row.span, -at), **words), at - row.span.start)


def _alike(row: Row, one: Still, start: int) -> Still:
    """A row without its place that says what another one says; `start`: where that one would begin if its words were these."""
    at = one.offset + start
    again = changed(one.row, label=moved(row.label, -at), side=row.side, sizes=row.sizes, span=moved(row.span, -at))
    return Still(again, at - row.span.start, like=one)


def same_rows(memo: dict[Any, Any], old: Iterable[Item], new: Iterable[Item]) -> None:
    """Tells a memo that rows were moved to another place."""
    table: dict[int, tuple[Row, Still]] | None = memo.get(_NAME)
    if not table:
        return
    for a, b in zip(old, new, strict=True):
        held = table.get(id(a))
        if held is not None and isinstance(b, Row):
            table[id(b)] = b, held[1]
