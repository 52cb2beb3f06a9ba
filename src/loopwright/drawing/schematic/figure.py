"""A figure: outlines, folds, joins, arrows and measured spans of one piece, in millimetres, x to the right and y downward."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Literal

from loopwright.record import record

Point = tuple[float, float]
Line = Literal["outline", "fold", "join", "round", "work"]
Side = Literal["left", "right", "above", "below", "within"]

_TURNED: dict[Side, Side] = {"left": "above", "above": "left", "right": "below", "below": "right", "within": "within"}
_MIRRORED: dict[Side, Side] = {"left": "right", "right": "left"}
_CIRCLE = 72


@record
class Stroke:
    """One line of a figure.

    "outline": the edge of a piece; "fold": where it is folded or a section begins; "join": where it is joined to another; "round": a round
    or row within; "work": the direction of work, with an arrow at its end.
    """

    line: Line
    points: tuple[Point, ...]
    closed: bool = False


@record
class Span:
    """A measured length, from point to point.

    `entry`: number of its measurement in the book. `share`: of it that is drawn; a tube laid flat shows half of what goes around. `side`,
    `level`: where its line stands, and how far out. `label`: where along a line within the figure the letter stands, as a share.
    """

    entry: int
    start: Point
    end: Point
    side: Side
    level: int = 0
    share: float = 1.0
    label: float = 0.5

    @property
    def length_mm(self) -> float:
        """As drawn."""
        return math.dist(self.start, self.end)


@record
class Word:
    """A name that stands in the figure, its middle at a place. `room_mm`: width and height; it is left out where it does not fit."""

    text: str
    at: Point
    room_mm: tuple[float, float] = (math.inf, math.inf)


@dataclass(slots=True)
class Figure:
    """What is drawn of a piece, or of some of its sections.

    `how`: it is made, a key of what drawings say ("rows" of "made-rows"); `copies`: what is said of a piece that is made more than once.
    `levels`: y of the end of each of its rounds, where others may be joined to one of them.
    """

    name: str
    strokes: list[Stroke] = field(default_factory=list)
    spans: list[Span] = field(default_factory=list)
    words: list[Word] = field(default_factory=list)
    how: str = ""
    copies: str = ""
    levels: list[float] = field(default_factory=list)

    def span(
        self, entry: int | None, start: Point, end: Point, side: Side, level: int = 0, *, share: float = 1.0, label: float = 0.5,
    ) -> bool:
        """Adds a measured length where there is a measurement; whether it did."""
        if entry is not None and math.dist(start, end) > 0:
            self.spans.append(Span(entry, start, end, side, level, share, label))
            return True
        return False

    def stroke(self, line: Line, points: Iterable[Point], *, closed: bool = False) -> None:
        """Adds a line."""
        found = tuple(points)
        if len(found) > 1:
            self.strokes.append(Stroke(line, found, closed))

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Least x and y, largest x and y of its strokes, mm."""
        points = [p for s in self.strokes for p in s.points]
        xs, ys = [p[0] for p in points] or [0.0], [p[1] for p in points] or [0.0]
        return min(xs), min(ys), max(xs), max(ys)

    def turned(self) -> Figure:
        """Lying on its side: what went upward goes to the right."""
        strokes = [replace(s, points=tuple(map(_turn, s.points))) for s in self.strokes]
        spans = [replace(s, start=_turn(s.start), end=_turn(s.end), side=_TURNED[s.side]) for s in self.spans]
        return Figure(self.name, strokes, spans, [replace(w, at=_turn(w.at)) for w in self.words], self.how, self.copies)


    def mirrored(self) -> Figure:
        """As who works with the left hand has it."""
        strokes = [replace(s, points=tuple((-x, y) for x, y in s.points)) for s in self.strokes]
        spans = [
            replace(s, start=(-s.start[0], s.start[1]), end=(-s.end[0], s.end[1]), side=_MIRRORED.get(s.side, s.side)) for s in self.spans
        ]
        words = [replace(w, at=(-w.at[0], w.at[1])) for w in self.words]
        return Figure(self.name, strokes, spans, words, self.how, self.copies, self.levels)


def _turn(p: Point) -> Point:
    return -p[1], p[0]


def circle(centre: Point, radius_mm: float, *, start: float = 0.0, end: float = 2 * math.pi) -> list[Point]:
    """Points of a circle or an arc, angles in radians from the right, clockwise on the page."""
    steps = max(8, round(_CIRCLE * abs(end - start) / (2 * math.pi)))
    angles = (start + (end - start) * i / steps for i in range(steps + 1))
    return [(centre[0] + radius_mm * math.cos(a), centre[1] + radius_mm * math.sin(a)) for a in angles]


def polygon(sides: int, across_mm: float) -> list[Point]:
    """A regular polygon around nought, one side below and level; `across_mm`: twice the way from its centre to a side."""
    out = across_mm / 2 / math.cos(math.pi / sides)
    first = math.pi / 2 - math.pi / sides
    return [(out * math.cos(first + 2 * math.pi * i / sides), out * math.sin(first + 2 * math.pi * i / sides)) for i in range(sides)]


def stadium(base_mm: float, radius_mm: float) -> list[Point]:
    """Around a straight line of `base_mm` in the middle, `radius_mm` away from it everywhere."""
    right = circle((base_mm / 2, 0), radius_mm, start=-math.pi / 2, end=math.pi / 2)
    left = circle((-base_mm / 2, 0), radius_mm, start=math.pi / 2, end=3 * math.pi / 2)
    return [*right, *left]


def rounded(halves: Sequence[tuple[float, float]], soft_mm: float) -> list[Point]:
    """A closed outline from half its width and y at each step, alike on both sides, its corners as soft as filling makes them.

    As wide and as high as before. `soft_mm`: how far along the outline a corner is spread, the deviation of a bell curve.
    """
    outline = both_sides(halves)
    long = sum(math.dist(a, b) for a, b in pairwise([*outline, outline[0]]))
    steps = max(4 * _CIRCLE, 2)
    even = _evenly([*outline, outline[0]], steps, long)
    reach = round(3 * soft_mm / long * steps)
    weights = [math.exp(-0.5 * (k * long / steps / soft_mm) ** 2) for k in range(-reach, reach + 1)]
    total = sum(weights)
    soft = [
        tuple(sum(w * even[(i + k) % steps][axis] for k, w in enumerate(weights, -reach)) / total for axis in (0, 1)) for i in range(steps)
    ]
    wide, low, high = max(w for w, _ in halves), min(y for _, y in halves), max(y for _, y in halves)
    new_wide, new_low, new_high = max(p[0] for p in soft), min(p[1] for p in soft), max(p[1] for p in soft)
    across, down = wide / max(new_wide, 1e-9), (high - low) / max(new_high - new_low, 1e-9)
    return [(x * across, low + (y - new_low) * down) for x, y in soft]


def _evenly(line: Sequence[Point], steps: int, long: float) -> list[Point]:
    """So many places along a line, each as far from the next."""
    found: list[Point] = []
    walked = 0.0
    for a, b in pairwise(line):
        own = math.dist(a, b)
        while len(found) < steps and len(found) * long / steps <= walked + own:
            share = (len(found) * long / steps - walked) / own if own else 0.0
            found.append((a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
        walked += own
    return found + [line[-1]] * (steps - len(found))


def both_sides(halves: Sequence[tuple[float, float]]) -> list[Point]:
    """An outline that is alike on both sides, from half its width and y at each step."""
    return [*((w, y) for w, y in halves), *((-w, y) for w, y in reversed(halves) if w > 0)]
