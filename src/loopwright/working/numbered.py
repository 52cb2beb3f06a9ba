"""What the label of a row asks for: numbers of rows, what each of them is called, and which of them a printed count is of."""

from __future__ import annotations

import re
from collections.abc import Collection

from loopwright.model.tree import Count, Num, Row, RowOrder
from loopwright.record import changed

MAX_ROWS = 2000
_NUMBERED = re.compile(r"(\D+)(\d+)")
_LED_BY = re.compile(r"[^\W\d_]{1,12}[.]?\s?")  # what stands before the number of a label


def numbers_of(row: Row) -> tuple[list[int | None], bool]:
    """Row numbers that a label asks for, None each where it has no number; and whether the label names a range."""
    label = row.label
    if label is None:
        return [None], False
    first = label.first.at(0) if label.first else None
    last = label.last.at(0) if label.last else first
    if label.first is not None and first is None or label.last is not None and label.last.values and last is None:
        return [], False
    if first is None:
        many = label.how_many.at(0)
        return [None] * min(1 if many is None else max(many, 0), MAX_ROWS + 1), many != 1
    numbers: list[int | None] = list(range(first, min(last or first, first + MAX_ROWS) + 1))
    numbers.extend(n for n in label.also if n not in numbers)
    return numbers, len(numbers) > 1


def label_of(kind: str, text: str, number: int | None, ranged: bool) -> str:
    """What a row is called: as it is labelled, with its own number where the label names several rows or another number."""
    if number is None:
        return text
    told = None if ranged or text.endswith(f" {number}") else _NUMBERED.fullmatch(text)
    if told is not None and int(told[2]) != number:
        return f"{told[1]}{number}"  # a number that differs from size to size
    if ranged and kind not in ("row", "rnd"):
        return f"{lead[0] if (lead := _LED_BY.match(text)) is not None else ''}{number}"  # "R6-R9", "4-10"
    word = {"row": "Row", "rnd": "Rnd"}.get(kind) if ranged or not text else None
    return f"{word} {number}" if word else text or str(number)


def printed_counts(row: Row) -> tuple[Count, ...]:
    """The counts printed for a row; "Rows 4-21: Rep Rows 2 and 3 until 10 sts remain" prints what its last row comes out at."""
    order, label = row.order, row.label
    if row.printed:
        return row.printed
    ends = order.until_sts if order is not None and order.what == "repeat" and label is not None and label.last is not None else None
    return () if ends is None else (Count(ends, span=row.span),)


def told_of_each(row: Row, rows: int) -> tuple[tuple[Count, ...], ...]:
    """ "Rnds 3-6: …; 58, 56, 54, 52 sts": the count of each of the rows; nothing where not each of them has its own."""
    told = row.printed
    if rows < 2 or len(told) != rows or any(c.scope != "row" or len(c.n.values) != 1 for c in told):
        return ()
    nouns = {c.noun for c in told[:-1]} - {None}
    return tuple((c,) for c in told) if nouns <= {told[-1].noun} else ()


def count_of(row: Row, part: int) -> Count | None:
    """The printed count that is held against one of the rows of an item, the part-th from 0."""
    each = told_of_each(row, len(row.printed)) if len(row.printed) > 1 and len(numbers_of(row)[0]) == len(row.printed) else ()
    return each[part][0] if part < len(each) else next((c for c in printed_counts(row) if c.scope == "row"), None)


def told_of(row: Row, only: tuple[int, ...] | None, before: int) -> bool:
    """Whether the count printed with several rows that come one by one is that of these: of the last, of the first where there is no end."""
    if only is None or row.label is None:
        return True
    return only[-1] == max(row.label.also) if row.label.also else before == 0


def comes_again(row: Row, only: tuple[int, ...]) -> bool:
    """Whether more of the rows that a label names are worked later."""
    return row.label is not None and (bool(row.label.alternate) or bool(row.label.also) and only[-1] < max(row.label.also))


def up_to(order: RowOrder, numbers: list[int | None], done: int) -> RowOrder:
    """ "Continue in this manner until 14th rnd is completed": so many rows more."""
    if order.total_rows is None or numbers != [None]:
        return order
    return changed(order, total_rows=None, times=Num((max(1, (order.total_rows.at(0) or 0) - done),)))


def times_of(order: RowOrder, numbers: list[int | None], ranged: bool) -> list[int | None]:
    """The numbers of the rows that an order asks for with so many times."""
    times = order.times.at(0) if order.times is not None else None
    if ranged or times is None:
        return numbers or [None]
    return [None] * min(max(times, 0), MAX_ROWS + 1) if numbers[:1] in ([None], []) else [(numbers[0] or 0) + i for i in range(min(times, MAX_ROWS + 1))]


def cycle_of(order: RowOrder, numbers: list[int | None], ranged: bool, period: int, done: int) -> list[int | None]:
    """The numbers of the rows that come of repeating `period` rows, `done` of the piece being there."""
    if ranged or (numbers and numbers[0] is not None):
        return numbers
    times = order.times.at(0) if order.times is not None else 1
    total = order.total_rows.at(0) if order.total_rows is not None else None
    if total is not None:
        return [None] * max(1, min(total if order.more or total <= done else total - done, MAX_ROWS))
    return [None] * min(max(1, times or 1) * period, MAX_ROWS + 1)


_FIRST = {"first": "1", "1st": "1", "one": "1", "second": "2", "2nd": "2", "two": "2"}


def known_as(section: str, known: Collection[str]) -> str:
    """The section that is meant: "first leg" is "leg 1", "leg one", where it has no such name itself."""
    words = section.split()
    if section in known or len(words) != 2:
        return section
    name, number = (words[1], words[0]) if words[0] in _FIRST else (words[0], words[1])
    number = _FIRST.get(number, number)
    ways = (w for said, n in (*_FIRST.items(), (number, number)) if n == number for w in (f"{name} {said}", f"{said} {name}"))
    return next((way for way in ways if way in known), section)
