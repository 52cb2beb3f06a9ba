"""Figures of pieces that are put together: a yoke with raglan lines opened flat, and rows worked from part of a circle's edge."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.schematic.book import Book
from loopwright.drawing.schematic.figure import Figure, Word, circle
from loopwright.drawing.schematic.flats import name_of
from loopwright.measuring.corners import Corner, corners
from loopwright.measuring.parts import Part
from loopwright.model.fabric import Fabric

RAGLAN = 4  # lines of a yoke
_SLEEVES_SECOND = ("front", "sleeve", "back", "sleeve", "front")
FULL = 2 * math.pi


def yoke(fabric: Fabric, part: Part, book: Book) -> Figure | None:
    """A yoke of rows that grows along lines, opened flat: a panel between every two lines, cut apart along them; None for another piece.

    Each panel is as wide at the neck and at its last row as the corners say, so that the panels side by side measure the last row.
    """
    first, last = corners(fabric, part.courses[0]), part.corners
    if len(last) < 2 or len(first) != len(last):
        return None
    top, low = part.courses[0].top_mm, part.courses[-1].top_mm
    deep = part.height_mm
    figure = Figure(name_of(part), how="yoke")
    names = _SLEEVES_SECOND if len(last) == RAGLAN else ("",) * (len(last) + 1)
    upper, lower = cuts(first), cuts(last)
    for i, name in enumerate(names):
        a, b = lower[i] * low - low / 2, lower[i + 1] * low - low / 2
        neck = (upper[i + 1] - upper[i]) * top
        lean = 0.0 if 0 < i < len(names) - 1 else (1.0 if i else -1.0)  # the fronts are straight along their edge
        middle = (a + b) / 2 if not lean else (a + neck / 2 if lean < 0 else b - neck / 2)
        panel = [(a, deep), (b, deep), (middle + neck / 2, 0.0), (middle - neck / 2, 0.0)]
        figure.stroke("outline", panel, closed=True)
        if name:
            figure.words.append(Word(name, ((a + b) / 2, 0.82 * deep), (0.75 * (b - a), 0.4 * deep)))
        if i:
            figure.stroke("join", [_in(panel[0], panel[3], deep), _in(panel[3], panel[0], deep)])
    figure.span(book.find(part, "width"), (-low / 2, deep), (low / 2, deep), "below")
    figure.span(book.find(part, "depth"), (low / 2, 0.0), (low / 2, deep), "right")
    figure.stroke("work", [(0.0, 0.12 * deep), (0.0, 0.5 * deep)])
    return figure


def _in(a: tuple[float, float], b: tuple[float, float], deep: float) -> tuple[float, float]:
    """A place a little within the corner `a`, on the way to `b`, inside the panel that begins there."""
    return a[0] + 0.1 * (b[0] - a[0]) + 0.035 * deep, a[1] + 0.1 * (b[1] - a[1])


def cuts(found: Sequence[Corner]) -> list[float]:
    """Where a row is cut at its corners, both ends among them, as shares of its length."""
    return [0.0, *(c.at for c in found), 1.0]


def from_part_of_a_rim(disc: Figure, front: Figure, part: Part, rows: Part, book: Book) -> None:
    """Marks on a circle and on the rows that stand on it where the one is worked from the other; the gap stays at the bottom."""
    used = rows.courses[0].uses / max(1, part.courses[-1].places)
    across = book.find(part, "across")
    radius = 0.94 * (book.value_mm(across) / 2 if across is not None else part.radius_mm)
    half = FULL * min(1.0, used) / 2
    disc.stroke("join", circle((0, 0), radius, start=-math.pi / 2 - half, end=-math.pi / 2 + half))
    x0, _, x1, _ = front.box
    front.stroke("join", [(x0 + 0.03 * radius, -0.06 * radius), (x1 - 0.03 * radius, -0.06 * radius)])
