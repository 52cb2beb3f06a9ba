"""Cards of words: title, materials, gauge, cautions; a sheet with the ink corner at its upper left."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing import svg
from loopwright.filming.cards.card import EDGE_PX, SIDES, TOP_PX, Shape, bottom_px, line
from loopwright.filming.cards.letters import SMALLEST_PX, WORKED, width_px, wrapped

HEAD_PX, BIG_PX, WORDS_PX, LINE = 44.0, 84.0, 38.0, 1.3
Box = tuple[float, float, float, float]


def panel(head: str, lines: Sequence[str], shape: Shape, *, big: bool = False) -> tuple[list[str], Box, bool]:
    """A heading and lines below it, as large as they have room: the drawing, its box, whether all had room."""
    room = SIDES[shape][0] - 2 * EDGE_PX - 72
    head_px = BIG_PX if big else HEAD_PX
    heads = [head]
    if width_px(head, head_px, WORKED, 700) > room:
        head_px = max(HEAD_PX, head_px * room / width_px(head, head_px, WORKED, 700))
        heads = _broken(head, head_px, room)
    space = bottom_px(shape) - TOP_PX - 70 - 1.2 * head_px * len(heads)
    size, set_lines, whole = _fitting(lines, room, space)
    wide = max([width_px(x, head_px, WORKED, 700) for x in heads] + [width_px(x, size) for x in set_lines]) + 72
    high = 46 + 1.2 * head_px * len(heads) + LINE * size * len(set_lines)
    drawn = [
        svg.rect("sheet", (EDGE_PX, TOP_PX), (wide, high)), svg.rect("ink", (EDGE_PX, TOP_PX), (wide, 6)),
        svg.rect("ink", (EDGE_PX, TOP_PX), (5, high)),
    ]
    y = TOP_PX + 18.0
    for x in heads:
        y += 1.2 * head_px
        drawn.append(line("count", (EDGE_PX + 34, y - 0.25 * head_px), x, head_px))
    y += 8
    for x in set_lines:
        y += LINE * size
        drawn.append(line("words", (EDGE_PX + 34, y - 0.3 * size), x, size))
    return drawn, (EDGE_PX, TOP_PX, EDGE_PX + wide, TOP_PX + high), whole


def _fitting(lines: Sequence[str], room: float, space: float) -> tuple[float, list[str], bool]:
    for size in (WORDS_PX, SMALLEST_PX):
        done = [wrapped(x, size, room, 12) for x in lines]
        found = [x for part, _ in done for x in part]
        if LINE * size * len(found) <= space and all(whole for _, whole in done):
            return size, found, True
    most = max(1, int(space / (LINE * SMALLEST_PX)))
    return SMALLEST_PX, [*found[: most - 1], f"{found[most - 1]} …"] if found else [], False


def _broken(head: str, size: float, room: float) -> list[str]:
    lines: list[str] = []
    for word in head.split():
        if lines and width_px(f"{lines[-1]} {word}", size, WORKED, 700) <= room:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines
