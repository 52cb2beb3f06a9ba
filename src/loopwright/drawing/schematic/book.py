"""The measurements of all sizes by what they measure, and the letters that the drawing gives them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from loopwright.measuring.parts import Part
from loopwright.model.measures import Dimension
from loopwright.record import record

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"  # without I and O, which look like figures (common practice, no source)
SAME = 0.02  # lengths that differ by less are one measurement in a drawing


@record
class Entry:
    """One measurement: of which section, what, its value in every size (None where a size has none), the rows it is taken from.

    `told`: its name where others of the section have the same.
    """

    section: str | None
    name: str
    piece: int
    rows: tuple[int, int]
    value_mm: float
    values_mm: tuple[float | None, ...]
    told: str = ""


@dataclass(slots=True)
class Book:
    """The entries, and the letters of those that were drawn, in the order of drawing."""

    entries: list[Entry]
    letters: dict[int, str] = field(default_factory=dict)

    def find(self, part: Part, name: str) -> int | None:
        """The measurement of a part by its name."""
        low, high = part.rows
        own = [i for i, e in enumerate(self.entries) if e.piece == part.piece and e.name == name and low <= e.rows[0] and e.rows[1] <= high]
        return next((i for i in own if self.entries[i].section == part.section), own[0] if own else None)

    def whole(self, own: Sequence[Part], name: str) -> int | None:
        """The measurement of a piece altogether."""
        rows = min(p.rows[0] for p in own), max(p.rows[1] for p in own)
        found = (i for i, e in enumerate(self.entries) if e.piece == own[0].piece and e.name == name)
        return next((i for i in found if self.entries[i].rows[0] <= rows[0] and rows[1] <= self.entries[i].rows[1]), None)

    def told(self, number: int | None, name: str) -> int | None:
        """A measurement by the name that it has as it is drawn: a strip that lies on its side is long, not deep."""
        if number is not None:
            self.entries[number] = replace(self.entries[number], told=name)
        return number

    def value_mm(self, number: int) -> float:
        """Of the size that is drawn."""
        return self.entries[number].value_mm

    def letter(self, number: int) -> str:
        """Its letter; the next free one where it had none."""
        if number not in self.letters:
            turn, place = divmod(len(self.letters), len(LETTERS))
            self.letters[number] = LETTERS[place] + (str(turn + 1) if turn else "")
        return self.letters[number]

    def of_parts(self, own: Sequence[Part]) -> list[int]:
        """All measurements of some parts, in order."""
        within = [p.rows for p in own]
        return [
            i for i, e in enumerate(self.entries)
            if e.piece == own[0].piece and any(a <= e.rows[0] and e.rows[1] <= b for a, b in within)
        ]


def book_of(per_size: Sequence[Sequence[Dimension]], drawn: int) -> Book:
    """The measurements of the drawn size, each with its value in every size. Measures of the body and of the relaxed shape are left out."""
    by_key = [_keyed(dimensions) for dimensions in per_size]
    entries = []
    for key, d in by_key[drawn].items():
        values = tuple(found[key].value_mm if key in found else None for found in by_key)
        first = by_key[drawn][*key[:3], 0]
        within = d.rows[0] <= first.rows[0] and first.rows[1] <= d.rows[1]
        told = f"{d.name}{' in all' if within else f' ({key[3] + 1})'}" if key[3] else d.name
        entries.append(Entry(d.section, d.name, d.piece, d.rows, d.value_mm, values, told))
    return Book(entries)


def _keyed(dimensions: Sequence[Dimension]) -> dict[tuple[str | None, str, int, int], Dimension]:
    """By section, name, piece, and which of that name it is."""
    found: dict[tuple[str | None, str, int, int], Dimension] = {}
    for d in dimensions:
        if d.worn or d.relaxed:
            continue
        times = 0
        while (d.section, d.name, d.piece, times) in found:
            times += 1
        found[d.section, d.name, d.piece, times] = d
    return found
