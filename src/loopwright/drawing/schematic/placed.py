"""Figures on a sheet: the scale at which they all fit, each in its place, and the lanes of its dimension lines."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.lettering import width_px
from loopwright.drawing.schematic.figure import Figure, Point, Span
from loopwright.drawing.schematic.look import LETTER_PX, NAME_PX, TEXT_PX
from loopwright.record import record

PX_PER_MM = 96 / 25.4
GAP_PX, LANE_PX, OUT_PX = 22.0, 22.0, 14.0
CAPTION_PX = 26.0
SMALLEST_SCALE = 1e-6
NARROW = 0.8  # a letter wider than this share of its line hides it, and stands beside it
LEAST_SHARE = 0.4  # of the scale that the width allows
FAR_SMALLER = 6.0  # a figure that is so many times smaller than the largest is drawn larger than the rest, and says so
STEP = 0.97
TIMES = (2, 3, 4, 5, 6, 8, 10, 15, 20, 30, 50)


@record
class Laid:
    """A span with the lane its line lies in, and its label."""

    span: Span
    lane: int
    label: str


@record
class Placed:
    """A figure at a place: `origin` of its millimetres on the sheet, px; its own scale, and how many times that of the sheet it is.

    `over_px`: how far letters and names within it reach out at its left and right, so that lines beside it stand beyond them.
    """

    figure: Figure
    spans: tuple[Laid, ...]
    origin: Point
    scale: float
    times: int
    top_px: float
    left_px: float
    wide_px: float
    high_px: float
    over_px: tuple[float, float] = (0.0, 0.0)

    def at(self, p: Point) -> Point:
        """A place of the figure on the sheet."""
        return self.origin[0] + p[0] * self.scale, self.origin[1] + p[1] * self.scale


@record
class Sheet:
    """Placed figures with the box they take, px, and the common scale, px per mm."""

    placed: tuple[Placed, ...]
    wide_px: float
    high_px: float
    scale: float


def lanes(figure: Figure, labels: Sequence[str]) -> tuple[Laid, ...]:
    """Every span in the first lane of its side in which no other lies."""
    taken: dict[tuple[str, int], list[tuple[float, float]]] = {}
    found = []
    for span, label in zip(figure.spans, labels, strict=True):
        axis = 1 if span.side in ("left", "right") else 0
        low, high = sorted((span.start[axis], span.end[axis]))
        lane = span.level
        if span.side != "within":
            while any(low < b - 1e-6 and a < high - 1e-6 for a, b in taken.get((span.side, lane), [])):
                lane += 1
            taken.setdefault((span.side, lane), []).append((low, high))
        found.append(Laid(span, lane, label))
    return tuple(found)


def overhang(figure: Figure, spans: Sequence[Laid], scale: float) -> tuple[float, float]:
    """How far letters beyond the ends of lines within a figure, and the names in it, reach out at its left and right, px."""
    x0, _, x1, _ = figure.box
    left, right = x0 * scale, x1 * scale
    for laid in (s for s in spans if s.span.side == "within"):
        (ax, ay), (bx, by) = laid.span.start, laid.span.end
        wide = width_px(laid.label, LETTER_PX, heavy=True)
        if not 0 <= laid.span.label <= 1:
            end, other = ((bx, ax) if laid.span.label > 1 else (ax, bx))
            middle = end * scale + math.copysign(wide / 2 + 8, end - other) * (abs(bx - ax) > abs(by - ay) / 4)
            left, right = min(left, middle - wide / 2), max(right, middle + wide / 2)
        elif abs(bx - ax) > abs(by - ay) and wide > NARROW * abs(bx - ax) * scale:  # stands beside its line
            right = max(right, max(ax, bx) * scale + 8 + wide)
    for word in figure.words:
        wide, room = width_px(word.text, NAME_PX, heavy=True), word.room_mm[0] * scale
        if wide <= room:
            left, right = min(left, word.at[0] * scale - wide / 2), max(right, word.at[0] * scale + wide / 2)
    return x0 * scale - left, right - x1 * scale


def margins(spans: Sequence[Laid], over: tuple[float, float] = (0.0, 0.0)) -> dict[str, float]:
    """Room that the dimension lines and their labels take on each side, px; `over`: what letters and names within take already."""
    room = {"left": 4.0 + over[0], "right": 4.0 + over[1], "above": 4.0, "below": 4.0}
    for laid in spans:
        side = laid.span.side
        if side == "within":
            continue
        out = OUT_PX + laid.lane * LANE_PX
        if side in ("left", "right"):
            room[side] = max(room[side], over[side == "right"] + out + 8 + width_px(laid.label, LETTER_PX, heavy=True))
        else:
            room[side] = max(room[side], out + 8 + LETTER_PX)
    return room


def sheet(figures: Sequence[tuple[Figure, tuple[Laid, ...]]], wide_px: float, high_px: float, *, captions: bool) -> Sheet:
    """All figures within the width, as large as they fit, at most life size; within the height where that leaves them legible."""
    scale = PX_PER_MM
    while (found := _flow(figures, wide_px, scale, captions=captions)).wide_px > wide_px and scale > SMALLEST_SCALE:
        scale *= STEP
    least = scale * LEAST_SHARE
    while found.high_px > high_px and scale * STEP > least:
        scale *= STEP
        found = _flow(figures, wide_px, scale, captions=captions)
    return found


def _flow(figures: Sequence[tuple[Figure, tuple[Laid, ...]]], room_px: float, scale: float, *, captions: bool) -> Sheet:
    """Side by side, and on to the next line where there is no more room."""
    placed: list[Placed] = []
    x = y = line = widest = 0.0
    longest = max(_long(figure) for figure, _ in figures)
    for figure, spans in figures:
        x0, y0, x1, y1 = figure.box
        times = _times(_long(figure), longest)
        own = scale * times
        over = overhang(figure, spans, own)
        room = margins(spans, over)
        caption = CAPTION_PX * (1 + (times > 1)) if captions else 0.0
        wide = (x1 - x0) * own + room["left"] + room["right"]
        level = [width_px(s.label, LETTER_PX, heavy=True) for s in spans if s.span.side in ("above", "below")]
        wide = max(wide, room["left"] + room["right"] + max(level, default=0.0))
        if captions:
            wide = max(wide, width_px(figure.name, NAME_PX, heavy=True), width_px(_TIMES_TOLD, TEXT_PX) if times > 1 else 0)
        high = (y1 - y0) * own + room["above"] + room["below"] + caption
        if x and x + wide > room_px:
            x, y, line = 0.0, y + line + GAP_PX, 0.0
        slack = (wide - room["left"] - room["right"] - (x1 - x0) * own) / 2
        place = x + room["left"] + max(0.0, slack) - x0 * own, y + caption + room["above"] - y0 * own
        placed.append(Placed(figure, spans, place, own, times, y, x, wide, high, over))
        x, line = x + wide + GAP_PX, max(line, high)
        widest = max(widest, x - GAP_PX)
    return Sheet(tuple(placed), widest, y + line, scale)


_TIMES_TOLD = "drawn 10 times as large"


def _long(figure: Figure) -> float:
    x0, y0, x1, y1 = figure.box
    return max(x1 - x0, y1 - y0)


def _times(long_mm: float, longest_mm: float) -> int:
    """How many times as large as the rest a figure is drawn."""
    if long_mm <= 0 or long_mm * FAR_SMALLER >= longest_mm:
        return 1
    need = longest_mm / FAR_SMALLER / long_mm
    return next((t for t in TIMES if t >= need), math.ceil(need))
