"""A row's columns where it stands in the text."""

from __future__ import annotations

from array import array
from dataclasses import dataclass

from loopwright.working.columns import Columns
from loopwright.working.lanes import shifted
from loopwright.working.rows import OF_BEFORE


@dataclass(slots=True, eq=False)
class Placed:
    """A row's columns where it stands in the text: the words that made each stitch, and from where on which colour."""

    columns: Columns
    origin: array[int]
    end: array[int]
    cuts: list[tuple[int, str]] | None = None


def _further(offsets: array[int], at: int) -> array[int]:
    """Offsets so much further on; the row's first word may stand before its first instruction."""
    if at >= 0 and min(offsets, default=0) >= 0:
        return shifted(offsets, at)
    return array("i", [o + at for o in offsets])


def placed(cols: Columns, at: int, words: tuple[int, int], *, before: bool) -> Placed:
    """The columns of a row whose words stand `at` so many characters further on.

    A chain told by the row before has its own words where that is the same row (`before`), else those of the whole row (`words`).
    """
    origin, end = cols.origin, cols.origin_end
    if max(origin, default=0) >= OF_BEFORE:
        both = [
            (a, b) if a < OF_BEFORE else (a - OF_BEFORE, b - OF_BEFORE) if before else words for a, b in zip(origin, end, strict=True)
        ]
        origin, end = array("i", [a for a, _ in both]), array("i", [b for _, b in both])
    return Placed(cols, _further(origin, at), _further(end, at))
