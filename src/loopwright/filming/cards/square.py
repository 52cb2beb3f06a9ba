"""The card of a row or measure: corner with label and count, words on the across arm, progress on the down arm, other sizes below."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing import svg
from loopwright.filming.cards.card import EDGE_PX, TOP_PX, Shape, bottom_px, boxes, line
from loopwright.filming.cards.letters import SMALLEST_PX, WORKED, fitted_px, width_px, wrapped
from loopwright.record import record

LABEL_PX, COUNT_PX, WORDS_PX, LINE = 44.0, 150.0, 38.0, 1.28
CORNER_PX, ARM_PX = 300.0, 104.0
_HEAVY_PX, _SIDE_PX, _CORNER_HIGH_PX = 6.0, 5.0, 214.0
_MOST_LINES, _MOST_TICKS, _MOST_SIZES = 3, 36, 10

Box = tuple[float, float, float, float]


@record
class Square:
    """What stands on a card. `figure`: the count, or a measure; `unit`: beside it, "". `nth` of `of`: progress, 0 for none.

    `below`: lines under the corner, or pairs of a size and its number.
    """

    label: str
    figure: str
    unit: str
    words: str
    nth: int
    of: int
    below: tuple[str, ...] = ()
    table: tuple[tuple[str, str], ...] = ()
    picture: str = ""


def square(it: Square, shape: Shape) -> tuple[list[str], Box, bool]:
    """The drawing, its box, and whether all of its words had room."""
    drawn, places = _corner(it)
    whole = True
    if it.words and shape == "16x9":
        arm, place, whole = _across(it.words)
        drawn += arm
        places.append(place)
    if it.of > 0:
        arm, place = _down(it.nth, it.of, min(bottom_px(shape) - 24, TOP_PX + 484))
        drawn += arm
        places.append(place)
    top = max(TOP_PX + 226, *(p[3] + 8 for p in places[1:2] if it.words and shape == "16x9"), TOP_PX + 226)
    left = EDGE_PX + (ARM_PX + 28 if it.of > 0 else 0)
    if it.table:
        more, place = _table(it.table, (left, top), shape)
    elif it.below:
        more, place = _lines(it.below, (left, top), shape)
    else:
        return drawn, boxes(places), whole
    return drawn + more, boxes([*places, place]), whole


def _corner(it: Square) -> tuple[list[str], list[Box]]:
    """Label and figure, flush right, under a heavy line."""
    right = EDGE_PX + CORNER_PX
    room = CORNER_PX - 26 - 18
    label_px = fitted_px(it.label, LABEL_PX, room, weight=600)
    label = wrapped(it.label, label_px, room, 1, 600)[0][0] if it.label else ""
    unit_px = width_px(f" {it.unit}", LABEL_PX, weight=600) if it.unit else 0.0
    figure_px = fitted_px(it.figure, COUNT_PX, room - unit_px, WORKED, 700) if it.figure else 0.0
    drawn = [
        svg.rect("tape", (EDGE_PX, TOP_PX), (CORNER_PX, _CORNER_HIGH_PX + _HEAVY_PX)),
        svg.rect("ink", (EDGE_PX, TOP_PX), (CORNER_PX, _HEAVY_PX)),
        svg.rect("ink", (EDGE_PX, TOP_PX), (_SIDE_PX, _CORNER_HIGH_PX + _HEAVY_PX)),
        line("label", (right - 26, TOP_PX + 62), label, label_px, end=True),
    ]
    if it.figure:
        base = TOP_PX + 62 + 40 + 0.36 * COUNT_PX + 0.36 * figure_px
        drawn.append(line("count", (right - 26 - unit_px, base), it.figure, figure_px, end=True))
        if it.unit:
            drawn.append(line("label", (right - 26, base), it.unit, LABEL_PX, end=True))
    return drawn, [(EDGE_PX, TOP_PX, right, TOP_PX + _CORNER_HIGH_PX + _HEAVY_PX)]


def _across(words: str) -> tuple[list[str], Box, bool]:
    """The words: one line where they have room, else up to three in the smallest type."""
    left, room = EDGE_PX + CORNER_PX, 1280 - 2 * EDGE_PX - CORNER_PX - 56
    lines, whole = wrapped(words, WORDS_PX, room, 1)
    size = WORDS_PX
    if len(lines) > 1 or not whole or lines[-1].endswith("…"):
        size = SMALLEST_PX
        lines, whole = wrapped(words, size, room, _MOST_LINES)
        narrower = [wrapped(words, size, room * share / 20, _MOST_LINES) for share in range(10, 20)]
        lines = next((x for x, all_of_it in narrower if whole and all_of_it and len(x) == len(lines)), lines)
    wide = min(room, max(width_px(x, size) for x in lines)) + 56
    high = 32 + LINE * size * len(lines)
    drawn = [svg.rect("sheet", (left, TOP_PX), (wide, high)), svg.rect("ink", (left, TOP_PX), (wide, _HEAVY_PX))]
    drawn += [line("words", (left + 26, TOP_PX + 20 + LINE * size * (i + 0.78)), x, size) for i, x in enumerate(lines)]
    return drawn, (left, TOP_PX, left + wide, TOP_PX + high), whole


def _down(nth: int, of: int, bottom: float) -> tuple[list[str], Box]:
    """Progress: done long, now red and longer, to come short; where there are many rows, one tick for several."""
    top = TOP_PX + _CORNER_HIGH_PX + _HEAVY_PX
    ticks = min(of, _MOST_TICKS)
    now = min(ticks, -(-nth * ticks // of))
    drawn = [svg.rect("tape", (EDGE_PX, top), (ARM_PX, bottom - top)), svg.rect("ink", (EDGE_PX, top), (_SIDE_PX, bottom - top))]
    gap = (bottom - top - 20) / ticks
    for i in range(1, ticks + 1):
        y, right = top + 10 + gap * (i - 0.5), EDGE_PX + ARM_PX
        wide, high, name = (82.0, min(8.0, gap), "now") if i == now else (44.0, 3.0, "ink") if i < now else (26.0, 3.0, "left")
        drawn.append(svg.rect(name, (right - wide, y - high / 2), (wide, high)))
    return drawn, (EDGE_PX, top, EDGE_PX + ARM_PX, bottom)


def _lines(words: Sequence[str], at: tuple[float, float], shape: Shape) -> tuple[list[str], Box]:
    room = (1280 if shape == "16x9" else 720) - at[0] - EDGE_PX - 40
    lines = [x for w in words for x in wrapped(w, SMALLEST_PX, room, 2)[0]]
    wide, high = max(width_px(x, SMALLEST_PX) for x in lines) + 40, 20 + LINE * SMALLEST_PX * len(lines)
    drawn = [svg.rect("sheet", at, (wide, high))]
    drawn += [line("words", (at[0] + 20, at[1] + 10 + LINE * SMALLEST_PX * (i + 0.78)), x, SMALLEST_PX) for i, x in enumerate(lines)]
    return drawn, (at[0], at[1], at[0] + wide, at[1] + high)


def _table(pairs: Sequence[tuple[str, str]], at: tuple[float, float], shape: Shape) -> tuple[list[str], Box]:
    """Sizes and their numbers, at most ten, in columns of what has room."""
    shown = list(pairs[:_MOST_SIZES])
    step = LINE * SMALLEST_PX
    rows = max(1, min(len(shown), 5, int((bottom_px(shape) - at[1] - 28) / step))) if shape == "16x9" else min(10, len(shown))
    drawn: list[str] = []
    x = at[0] + 20
    for start in range(0, len(shown), rows):
        part = shown[start : start + rows]
        named = max(width_px(n, SMALLEST_PX) for n, _ in part)
        numbered = max(width_px(v, SMALLEST_PX, WORKED, 500) for _, v in part)
        for i, (n, v) in enumerate(part):
            y = at[1] + 10 + step * (i + 0.78)
            drawn += [line("words", (x, y), n, SMALLEST_PX), line("figure", (x + named + 24 + numbered, y), v, SMALLEST_PX, end=True)]
        x += named + 24 + numbered + 44
    wide, high = x - 24 - at[0], 20 + step * min(rows, len(shown))
    return [svg.rect("sheet", at, (wide, high)), *drawn], (at[0], at[1], at[0] + wide, at[1] + high)
