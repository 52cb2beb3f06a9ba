"""Placed figures as SVG: outlines, dimension lines with end bars, letters, arrows of the direction of work."""

from __future__ import annotations

import math
from collections.abc import Iterator

from loopwright.drawing import svg
from loopwright.drawing.lettering import plain, width_px
from loopwright.drawing.schematic.book import Book
from loopwright.drawing.schematic.figure import Point, Stroke, Word
from loopwright.drawing.schematic.look import LETTER_PX, NAME_PX
from loopwright.drawing.schematic.placed import CAPTION_PX, LANE_PX, NARROW, OUT_PX, Laid, Placed
from loopwright.drawing.speech import Speech

_BAR_PX, _HEAD_PX = 4.0, 8.0
_LEAST_PX = 16.0  # between the middles of two labels one above the other


def figure(placed: Placed, book: Book, speech: Speech, *, captions: bool) -> str:
    """One figure with its dimension lines."""
    inside: list[str] = []
    if captions:
        middle = placed.left_px + placed.wide_px / 2
        inside.append(svg.text("name", (middle, placed.top_px + NAME_PX), plain(speech.name(placed.figure.name)), anchor="middle"))
        if placed.times > 1:
            told = speech.say("times-as-large", n=placed.times)
            inside.append(svg.text("soft", (middle, placed.top_px + CAPTION_PX + NAME_PX - 6), told, anchor="middle"))
    strokes = sorted(placed.figure.strokes, key=lambda s: s.line != "outline")  # those that are filled lie under the lines within them
    inside += [e for s in strokes for e in _stroke(placed, s)]
    inside += [_word(placed, w, speech) for w in placed.figure.words if _fits(placed, w, speech)]
    for laid, line, label_at, anchor in _lines(placed):
        inside += _span(placed, book, laid, line)
        inside += _label(laid.label, label_at, anchor, clear=laid.span.side == "within" and anchor == "middle")
    return svg.group(inside, svg.data(figure=plain(placed.figure.name), scale=placed.scale))


def _stroke(placed: Placed, stroke: Stroke) -> Iterator[str]:
    points = [placed.at(p) for p in stroke.points]
    yield svg.path(stroke.line, points, closed=stroke.closed)
    if stroke.line == "work":
        yield _head(points[-2], points[-1])


def _head(start: Point, end: Point) -> str:
    """An arrow's head at the end of a line."""
    long = math.dist(start, end) or 1.0
    x, y = (end[0] - start[0]) / long, (end[1] - start[1]) / long
    back = end[0] - _HEAD_PX * x, end[1] - _HEAD_PX * y
    wing = _HEAD_PX * 0.45
    ahead = end[0] + 2 * x, end[1] + 2 * y
    return svg.path("head", [ahead, (back[0] - wing * y, back[1] + wing * x), (back[0] + wing * y, back[1] - wing * x)], closed=True)


def _fits(placed: Placed, word: Word, speech: Speech) -> bool:
    wide, high = word.room_mm
    return width_px(plain(speech.name(word.text)), NAME_PX, heavy=True) <= wide * placed.scale and high * placed.scale >= NAME_PX + 4


def _word(placed: Placed, word: Word, speech: Speech) -> str:
    x, y = placed.at(word.at)
    return svg.text("name", (x, y + NAME_PX / 3), plain(speech.name(word.text)), anchor="middle")


def _lines(placed: Placed) -> list[tuple[Laid, tuple[Point, Point], Point, str]]:
    """Every span with its line, the place of its label and how that is set; labels at the sides pushed apart."""
    x0, y0, x1, y1 = placed.figure.box
    (own_left, top), (own_right, low) = placed.at((x0, y0)), placed.at((x1, y1))
    found: list[tuple[Laid, tuple[Point, Point], Point, str]] = []
    for laid in placed.spans:
        a, b = placed.at(laid.span.start), placed.at(laid.span.end)
        out = OUT_PX + laid.lane * LANE_PX
        left, right = own_left - placed.over_px[0], own_right + placed.over_px[1]
        middle = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
        if laid.span.side == "right":
            found.append((laid, ((right + out, a[1]), (right + out, b[1])), (right + out + 6, middle[1] + 5), "start"))
        elif laid.span.side == "left":
            found.append((laid, ((left - out, a[1]), (left - out, b[1])), (left - out - 6, middle[1] + 5), "end"))
        elif laid.span.side == "above":
            found.append((laid, ((a[0], top - out), (b[0], top - out)), (middle[0], top - out - 6), "middle"))
        elif laid.span.side == "below":
            found.append((laid, ((a[0], low + out), (b[0], low + out)), (middle[0], low + out + LETTER_PX + 1), "middle"))
        else:
            along = laid.span.label
            at = _label_at(a, b, along, laid.label)
            free = not any(s.span.side == "right" for s in placed.spans)
            narrow = abs(b[0] - a[0]) > abs(b[1] - a[1]) and width_px(laid.label, LETTER_PX, heavy=True) > NARROW * abs(b[0] - a[0])
            beside = (max(a[0], b[0]) + 8, at[1])  # a label that would hide the outline stands next to it, where there is room
            found.append((laid, (a, b), beside, "start") if narrow and free else (laid, (a, b), at, "middle"))
    return _apart(found)


def _label_at(a: Point, b: Point, along: float, label: str) -> Point:
    """Where the middle of a label's foot stands: on the line at that share, or clear of the end that it lies beyond."""
    share = min(1.0, max(0.0, along))
    x, y = a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])
    if share != along:
        long = math.dist(a, b) or 1.0
        ux, uy = (b[0] - a[0]) / long, (b[1] - a[1]) / long
        clear = math.copysign(abs(ux) * width_px(label, LETTER_PX, heavy=True) / 2 + abs(uy) * LETTER_PX / 2 + 6, along)
        x, y = x + ux * clear, y + uy * clear
    return x, y + LETTER_PX / 3


def _apart(found: list[tuple[Laid, tuple[Point, Point], Point, str]]) -> list[tuple[Laid, tuple[Point, Point], Point, str]]:
    last: dict[tuple[str, int], float] = {}
    moved = []
    for laid, line, (x, own_y), anchor in sorted(found, key=lambda f: f[2][1]):
        key = laid.span.side, laid.lane
        y = own_y
        if laid.span.side in ("left", "right"):
            y = max(own_y, last.get(key, -math.inf) + _LEAST_PX)
            last[key] = y
        moved.append((laid, line, (x, y), anchor))
    return moved


def _span(placed: Placed, book: Book, laid: Laid, line: tuple[Point, Point]) -> Iterator[str]:
    """The line with its end bars, and hair lines to what it measures."""
    (ax, ay), (bx, by) = line
    span = laid.span
    for p, q in ((span.start, line[0]), (span.end, line[1])):
        if span.side != "within":
            yield svg.path("reach", [placed.at(p), q])
    long = math.dist(*line) or 1.0
    x, y = (by - ay) / long * _BAR_PX, -(bx - ax) / long * _BAR_PX
    more = svg.data(letter=book.letter(span.entry), mm=book.value_mm(span.entry), share=span.share)
    yield svg.path("span", line, more=more)
    yield from (svg.path("span", [(px - x, py - y), (px + x, py + y)]) for px, py in line)


def _label(text: str, at: Point, anchor: str, *, clear: bool) -> Iterator[str]:
    """Its text, on a piece of paper where it stands on lines."""
    if not text:
        return
    if clear:
        wide = width_px(text, LETTER_PX, heavy=True) + 6
        yield svg.rect("label", (at[0] - wide / 2, at[1] - LETTER_PX + 1), (wide, LETTER_PX + 4))
    yield svg.text("letter", at, text, anchor=anchor)
