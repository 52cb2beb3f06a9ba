"""The table beside a drawing: letter, what is measured, its value in every size; and what the signs mean."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing import svg
from loopwright.drawing.lettering import width_px, wrapped
from loopwright.drawing.schematic.book import Book
from loopwright.drawing.schematic.drawn import SchematicOptions
from loopwright.drawing.schematic.look import LINE_PX, TEXT_PX
from loopwright.drawing.schematic.words import named, values
from loopwright.record import record

_LETTER_PX = 30.0
_PAD_PX = 6.0


@record
class Row:
    """One measurement: its letter ("" for one that is told without a line), its name, and its lines of values."""

    letter: str
    name: str
    lines: tuple[str, ...]


def rows_of(book: Book, told: Sequence[int], options: SchematicOptions) -> list[Row]:
    """Lettered ones in the order of their letters, then the others."""
    lettered = sorted(book.letters, key=lambda i: list(book.letters).index(i))
    others = [i for i in told if i not in book.letters]
    entries = book.entries
    return [
        Row(book.letters.get(i, ""), named(entries[i], options.said), tuple(values(entries[i], options))) for i in (*lettered, *others)
    ]


def natural_px(rows: Sequence[Row]) -> float:
    """How wide the table would be with every row on one line."""
    return 1.0 + _LETTER_PX + _names_px(rows) + 16 + max((width_px(line, TEXT_PX) for r in rows for line in r.lines), default=0.0)


def _names_px(rows: Sequence[Row]) -> float:
    return max((width_px(r.name, TEXT_PX) for r in rows), default=0.0)


def table(rows: Sequence[Row], left_px: float, top_px: float, wide_px: float) -> tuple[list[str], float]:
    """The table as elements, and how high it is, px. Values stand beside the names where they fit, else below them."""
    names = _names_px(rows)
    room = wide_px - _LETTER_PX - names - 16
    beside = all(width_px(line, TEXT_PX) <= room for r in rows for line in r.lines)
    x_values = left_px + _LETTER_PX + (names + 16 if beside else 0)
    room = left_px + wide_px - x_values
    inside, y = [], top_px
    for row in rows:
        inside.append(svg.path("rule", [(left_px, y), (left_px + wide_px, y)]))
        y += _PAD_PX + TEXT_PX
        if row.letter:
            inside.append(svg.text("letter", (left_px, y), row.letter))
        inside.append(svg.text("text", (left_px + _LETTER_PX, y), row.name))
        lines = [part for line in row.lines for part in wrapped(line, TEXT_PX, room)]
        for i, line in enumerate(lines):
            y += LINE_PX if i or not beside else 0
            inside.append(svg.text("text", (x_values, y), line))
        y += _PAD_PX
    return inside, y - top_px
