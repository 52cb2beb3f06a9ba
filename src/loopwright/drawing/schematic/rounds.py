"""Figures of what is worked in the round: hats, cuffs and bags laid flat, with thumbs and sleeves; stuffed pieces as they stand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from loopwright.drawing.schematic.book import SAME, Book
from loopwright.drawing.schematic.figure import Figure, Point, Side, Word, rounded
from loopwright.drawing.schematic.flats import name_of, straightened
from loopwright.drawing.ways import is_bottom
from loopwright.measuring.courses import Course
from loopwright.measuring.dimensions import NARROW, stuffed_height_mm
from loopwright.measuring.parts import Part
from loopwright.record import record

_TILT = math.radians(40)  # of a thumb against the hand, by eye
_DOME = 12
CLEAR = 0.6  # of the room beside a line across, that its letter leaves to a name
SOFT_ROUNDS = 2.0  # how soft filling makes corners, in heights of a round, by eye
LAID = 0.5  # what of a round is seen when it is laid flat


@dataclass(slots=True)
class _Laid:
    """A tube laid flat as it is drawn.

    Its figure, the way up (-1) or down (1), the outline so far (half width, y), y where the last part ended, the round measured last.
    """

    figure: Figure
    way: float
    halves: list[tuple[float, float]] = field(default_factory=list)
    y: float = 0.0
    told_mm: float = 0.0
    heel: bool = False

    def line(self, half: float, y: float) -> tuple[Point, Point]:
        """From the left to the right edge of a round: the middles above one another, or the left edges where the heel stays upright."""
        left = -self.halves[0][0] if self.heel else -half
        return (left, y), (left + 2 * half, y)

    def outline(self) -> list[Point]:
        """Right edge, then the left one back."""
        lines = [self.line(w, y) for w, y in straightened(self.halves)]
        return list(dict.fromkeys([*(b for _, b in lines), *(a for a, _ in reversed(lines))]))


@record
class Lay:
    """How rounds are laid flat.

    `up`: worked upward (None: as the kind is usually worn). `heel`: the left edge upright, as a foot is seen from its side.
    """

    up: bool | None = None
    heel: bool = False


def laid_flat(body: Sequence[Part], branches: Sequence[Part], book: Book, lay: Lay | None = None) -> Figure:
    """Rounds laid flat: half of each round's length across, its height along; a flat crown as a dome as high as its radius."""
    first, lay = body[0], lay or Lay()
    from_centre = first.kind == "disc"
    up = lay.up if lay.up is not None else not from_centre or is_bottom(first.section)
    begun = ("bottom-up" if up else "top-down") if from_centre else "lower-up" if up else "upper-down"
    figure = Figure(name_of(first), how=f"rounds-{begun}")
    laid = _Laid(figure, -1.0 if up else 1.0, heel=lay.heel)
    several = len({p.section for p in (*body, *branches)}) > 1
    for part in body:
        before = laid.y
        if part.kind == "disc":
            _crown(laid, part, book)
        elif part.kind == "flat":
            _band(laid, part, book)
        else:
            _tube(laid, part, book)
        right = max(laid.line(w, y)[1][0] for w, y in laid.halves)
        if several and len(body) > 1 and part.kind != "flat":
            figure.span(book.find(part, "depth"), (right, before), (right, laid.y), "right")
        if part is not body[-1] and several:
            figure.stroke("fold", laid.line(laid.halves[-1][0], laid.y))
        if part.section and several:
            _name(laid, part, before)
    _finish(laid, body, branches, book)
    return figure


def _finish(laid: _Laid, body: Sequence[Part], branches: Sequence[Part], book: Book) -> None:
    """The outline, the whole depth, thumbs, and the arrow."""
    figure = laid.figure
    for part in branches:
        _thumb(laid, body, part, book)
    points = laid.outline()
    figure.stroke("outline", points, closed=True)
    left, widest = min(x for x, _ in points), max(w for w, _ in laid.halves)
    whole = book.whole([*body, *branches], "depth")
    if whole is None and len(body) == 1:
        whole = book.find(body[0], "depth")
    if whole is not None and abs(book.value_mm(whole) - abs(laid.y)) <= SAME * abs(laid.y):
        figure.span(whole, (left, 0), (left, laid.y), "left")
    at = left + (0.35 if figure.words else 1.0) * widest
    figure.stroke("work", [(at, 0.42 * laid.y), (at, 0.72 * laid.y)])


def _name(laid: _Laid, part: Part, before: float) -> None:
    if any(w.text == name_of(part) for w in laid.figure.words):
        return
    low, high = sorted((before, laid.y))
    lines = sorted(s.start[1] for s in laid.figure.spans if s.side == "within" and low < s.start[1] < high)
    deep, y = max((b - a, (a + b) / 2) for a, b in pairwise([low, *lines, high]))  # the name stands clear of lines across
    left, right = laid.line(_half_at(laid.halves, y), y)
    laid.figure.words.append(Word(name_of(part), ((left[0] + right[0]) / 2, y), (right[0] - left[0], deep if not lines else CLEAR * deep)))


def _crown(laid: _Laid, part: Part, book: Book) -> None:
    """A flat disc as a dome over half its rim; one that cups by its rounds."""
    last = part.courses[-1]
    if last.top_mm < NARROW * 2 * math.pi * part.radius_mm:
        laid.halves.append((0.0, 0.0))
        _by_rounds(laid, part.courses)
        return
    half, deep = LAID * last.top_mm / 2, part.radius_mm
    for i in range(_DOME + 1):
        angle = math.pi / 2 * i / _DOME
        laid.halves.append((half * math.sin(angle), laid.way * deep * (1 - math.cos(angle))))
    laid.y = laid.way * deep
    across = book.find(part, "across")
    if across is not None and not part.sides:
        laid.figure.span(across, (half, 0), (half, laid.y), "right", share=0.5)


def _by_rounds(laid: _Laid, run: Sequence[Course]) -> None:
    for c in run:
        laid.y += laid.way * c.height_mm
        laid.halves.append((LAID * c.top_mm / 2, laid.y))


def _tube(laid: _Laid, part: Part, book: Book) -> None:
    """Rounds one above the other; measured where they are widest and where they end, if that differs from what was told before."""
    first = part.courses[0]
    if not laid.halves or abs(laid.halves[-1][0] - LAID * first.top_mm / 2) > SAME * laid.halves[-1][0] and not laid.told_mm:
        laid.halves.append((LAID * first.top_mm / 2, laid.y))
    start, before = laid.y, len(laid.halves) > 1
    _by_rounds(laid, part.courses)
    figure = laid.figure
    around = book.find(part, "around")
    widest = max(part.courses, key=lambda c: c.top_mm)
    if around is not None and abs(widest.top_mm - laid.told_mm) > SAME * widest.top_mm:
        outside = not laid.told_mm and (laid.way < 0 or not before)
        y = start if outside else start + laid.way * _middle_mm(part.courses, widest.top_mm)
        side: Side = "within" if not outside else "below" if laid.way < 0 else "above"
        figure.span(around, *laid.line(LAID * widest.top_mm / 2, y), side, share=LAID, label=0.7)
        laid.told_mm = widest.top_mm
    ends = book.find(part, "around at the end")
    if ends is not None:
        line = laid.line(LAID * part.courses[-1].top_mm / 2, laid.y)
        figure.span(ends, *line, "above" if laid.way < 0 else "below", share=LAID)
        laid.told_mm = part.courses[-1].top_mm


def _middle_mm(run: Sequence[Course], widest_mm: float) -> float:
    """How far up the rounds of the largest length lie: three quarters of the way between the first and the last of them."""
    ends, at = [], 0.0
    for c in run:
        at += c.height_mm
        if c.top_mm >= (1 - SAME) * widest_mm:
            ends.append(at)
    return ends[0] + 0.75 * (ends[-1] - ends[0])


def _band(laid: _Laid, part: Part, book: Book) -> None:
    """A strip of rows joined into a ring, worked on along its side: as wide as its length laid flat, as deep as it is wide."""
    half, deep = LAID * part.height_mm / 2, part.courses[0].top_mm
    laid.halves += [(half, laid.y), (half, laid.y + laid.way * deep)]
    around = book.told(book.find(part, "depth"), "around")  # its rows go up along the way around
    laid.figure.span(around, (-half, laid.y), (half, laid.y), "below" if laid.way < 0 else "above", share=LAID)
    laid.figure.span(book.told(book.find(part, "width"), "depth"), (half, laid.y), (half, laid.y + laid.way * deep), "right")
    laid.y += laid.way * deep
    arrow_y = laid.y - laid.way * 0.8 * deep
    laid.figure.stroke("work", [(-0.4 * half, arrow_y), (0.4 * half, arrow_y)])
    laid.told_mm = part.height_mm


def _thumb(laid: _Laid, body: Sequence[Part], part: Part, book: Book) -> None:
    """A branch that leaves the right edge where its opening lies."""
    run = part.courses
    y = 0.0
    for c in (c for p in body for c in p.courses if c.index <= run[0].below):
        y += laid.way * c.height_mm
    half = _half_at(laid.halves, y)
    wide, deep = LAID * run[0].top_mm, part.height_mm
    out = (math.sin(_TILT), laid.way * math.cos(_TILT))
    across = (out[1], -out[0])
    foot = wide / math.sin(_TILT) / 2
    middle = (half, y + laid.way * foot)
    tip: Point = (middle[0] + out[0] * deep, middle[1] + out[1] * deep)
    end = LAID * run[-1].top_mm / 2
    straight = _straight_share(run)
    shoulder = (middle[0] + out[0] * deep * straight, middle[1] + out[1] * deep * straight)
    side = 1 if across[1] * laid.way < 0 else -1

    def beside(at: Point, reach: float) -> Point:
        return at[0] + side * across[0] * reach, at[1] + side * across[1] * reach

    edges = [beside(shoulder, wide / 2), beside(tip, end), beside(tip, -end), beside(shoulder, -wide / 2)]
    laid.figure.stroke("outline", [(half, middle[1] - laid.way * foot), *edges, (half, middle[1] + laid.way * foot)])
    low, top = edges[0], edges[-1]
    laid.figure.span(book.find(part, "around"), top, low, "within", share=LAID, label=2.0)
    laid.figure.span(book.find(part, "depth"), middle, tip, "within")
    laid.figure.words.append(Word(name_of(part), (tip[0], tip[1] + laid.way * wide * 0.5)))


def _straight_share(run: Sequence[Course]) -> float:
    """How far up the tube its rounds stay as long as the first."""
    total = sum(c.height_mm for c in run)
    straight = 0.0
    for c in run:
        if c.top_mm < (1 - SAME) * run[0].top_mm:
            break
        straight += c.height_mm
    return straight / total if total else 1.0


def _half_at(halves: Sequence[tuple[float, float]], y: float) -> float:
    """Half the width at a height."""
    for (w0, y0), (w1, y1) in pairwise(halves):
        if min(y0, y1) <= y <= max(y0, y1) and y0 != y1:
            return w0 + (w1 - w0) * (y - y0) / (y1 - y0)
    return halves[-1][0]


def stuffed(body: Sequence[Part], book: Book) -> Figure | None:
    """As it stands when it is filled: every round a circle of its own length; None for a piece that does not close."""
    tall = book.whole(body, "height")
    across = book.whole(body, "across") or book.find(body[0], "across")
    run = [c for p in body for c in p.courses]
    if tall is None or across is None:
        return None
    figure = Figure(name_of(body[0]), how="filled")
    if math.dist((book.value_mm(across),), (max(c.top_mm for c in run) / math.pi,)) > SAME * book.value_mm(across):
        return None
    halves, z, radius = [(0.0, 0.0)], 0.0, 0.0
    for c in run:
        own = c.top_mm / (2 * math.pi)
        z += max(0.0, c.height_mm**2 - (own - radius) ** 2) ** 0.5
        radius = own
        halves.append((radius, z))
    soft = SOFT_ROUNDS * sum(c.height_mm for c in run) / len(run)
    figure.stroke("outline", rounded([*halves, (0.0, z)], soft), closed=True)
    figure.levels = [y for _, y in halves[1:]]
    wide, at = max(halves)
    figure.span(tall, (wide, 0), (wide, stuffed_height_mm(run)), "right")
    figure.span(across, (-wide, at), (wide, at), "below")
    figure.stroke("work", [(0, 0.3 * z), (0, 0.7 * z)])
    return figure
