"""Marks as SVG: a path for each symbol, in groups by row."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from loopwright.drawing.chart.drawn import Mark, Point
from loopwright.drawing.chart.symbols import Symbol, marks, place_seen, strokes, symbol_of, symbols

MOST_LEGS = 12  # drawn in the key
Turn = Callable[[Point], Point]


def number(value: float) -> str:
    """A coordinate to a tenth, as short as it can be written."""
    text = f"{value:.1f}"
    text = text.removesuffix(".0")
    return "0" if text == "-0" else text


def pair(point: Point) -> str:
    """A point of a path."""
    x, y = number(point[0]), number(point[1])
    return x + y if y.startswith("-") else f"{x} {y}"


def path(steps: Sequence[tuple[str, tuple[Point, ...]]], turn: Turn) -> str:
    """Steps as path data."""
    found: list[str] = []
    for step, points in steps:
        data = step
        for n, p in enumerate(points):
            text = pair(turn(p))
            data += text if n == 0 or text.startswith("-") else " " + text
        found.append(data)
    return "".join(found)


def symbol_path(mark: Mark, turn: Turn, *, hooked: bool = True) -> str:
    """The path data of a stitch's symbol, from its foot; without the mark at its foot if not `hooked`."""
    right = not mark.place.startswith("ws:")
    place = place_seen(mark.place.removeprefix("ws:"), right_side=right)
    if mark.kind in ("ch", "sl st") or not hooked:
        place = "none"
    return path(strokes(mark, place), turn)


def is_filled(kind: str) -> bool:
    """Whether its symbol is drawn solid."""
    found: Symbol | None = symbol_of(kind)
    return found is not None and found.filled


def is_own(kind: str) -> bool:
    """Whether it is a stitch of the pattern's own, drawn with a number."""
    return symbol_of(kind) is None


def sample(kind: str, place: str, at: Point, feet_seen: int = 1) -> Mark:
    """A symbol for the key, upright, its foot at a point; y upwards. `feet_seen`: on how many feet it stands in the chart."""
    found = symbol_of(kind) or symbols()["own"]
    tall = min(found.height, 46.0)
    at = (at[0], at[1] - tall / 2)
    feet: tuple[Point, ...] = (at,)
    if kind == "ch":
        return Mark(-1, kind, ((at[0] - 6, at[1] + tall / 2),), (at[0] + 6, at[1] + tall / 2), "none", -1)
    if kind.endswith("tog") or feet_seen > 1:
        legs = int(re.findall(r"\d+", kind)[-1]) if re.search(r"\d", kind) else max(2, feet_seen)
        step = min(16.0, 36.0 / max(1, legs - 1))
        feet = tuple((at[0] + step * (k - (legs - 1) / 2), at[1]) for k in range(min(legs, MOST_LEGS)))
    return Mark(-1, kind, feet, (at[0], at[1] + tall), place if place in marks() else "none", -1)
