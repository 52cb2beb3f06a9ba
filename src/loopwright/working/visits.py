"""In which order the rows of a text are worked: "Rows 2, 4 and 6" and "all WS rows" come in between the rows told one by one."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from loopwright.model.tree import Document, Label, Row, Section

MOST = 2_000


class Visit(NamedTuple):
    """The item of the text at `at`, a row (or a section, which begins), to be worked now: `numbers` of those its label asks for (None: all), `part` of its parts."""

    at: int
    item: Row | Section
    numbers: tuple[int, ...] | None = None
    part: int = 0


def visits(document: Document, size: int) -> Iterator[Visit]:
    """The rows of one size in the order of working."""
    waiting = _Waiting()
    for index, item in enumerate(document.items):
        if isinstance(item, Section):
            yield from waiting.all()
            yield Visit(index, item)
        elif isinstance(item, Row) and (item.sizes is None or size in item.sizes):
            yield from waiting.row(Visit(index, item), size)
    yield from waiting.all()


class _Waiting:
    """Rows that were told and are not due yet. `done`: number of the row worked last."""

    def __init__(self) -> None:
        self.due: dict[int, Visit] = {}
        self.second: Visit | None = None
        self.odd = False
        self.done = 0
        self.parts: dict[int, int] = {}

    def row(self, visit: Visit, size: int) -> Iterator[Visit]:
        assert isinstance(visit.item, Row)
        label = visit.item.label
        first = label.first.at(size) if label is not None and label.first is not None else None
        if label is None or first is None:
            if label is not None and label.alternate and label.alternate != "same":
                self.second, self.odd = visit, label.alternate == "odd"
                return
            if visit.item.body or visit.item.order is not None:
                yield from self.all()
            yield visit
            return
        if first <= self.done:
            yield from self.all()
        yield from self._before(first)
        if label.also:
            self.due.update(dict.fromkeys((*_told(label, first, size), *label.also), visit))
            yield self._take(min(self.due))
            return
        if label.alternate == "same":
            self.second, self.odd = visit, first % 2 == 1
        last = label.last.at(size) if label.last is not None else first
        yield self._of(visit, first) if label.alternate else visit
        self.done = max(first, last or first)

    def all(self) -> Iterator[Visit]:
        """What was told and waits; nothing is told for what comes behind it."""
        for n in sorted(self.due):
            yield self._take(n)
        self.second, self.done = None, 0

    def _before(self, number: int) -> Iterator[Visit]:
        """What waits for its turn before a row."""
        for n in range(self.done + 1, min(number, self.done + MOST)):
            if n in self.due:
                yield self._take(n)
            elif self.second is not None and n % 2 == self.odd and n == self.done + 1 and (n > 1 or self.odd):
                yield self._of(self.second, n)
                self.done = n

    def _take(self, number: int) -> Visit:
        self.done = number
        return self._of(self.due.pop(number), number)

    def _of(self, visit: Visit, number: int) -> Visit:
        part = self.parts.get(visit.at, 0)
        self.parts[visit.at] = part + 1
        return visit._replace(numbers=(number,), part=part)


def _told(label: Label, first: int, size: int) -> Iterable[int]:
    last = label.last.at(size) if label.last is not None else first
    return range(first, min(last or first, first + MOST) + 1)
