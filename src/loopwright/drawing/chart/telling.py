"""What is told beside a row: its number, its count, the sides of its repeat."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from loopwright.drawing.chart.drawn import Frame, Mark, Point, RowLine
from loopwright.drawing.chart.stood import Stood

if TYPE_CHECKING:
    from loopwright.drawing.chart.laying import Laying


def told(laying: Laying, stood: Sequence[Stood], index: int, way: int) -> None:
    """Adds the line of a row and the frame of its repeat."""
    shown = [s for s in stood if s.column.what not in ("tab", "join")]
    if not shown:
        return
    first, last = (shown[0], shown[-1]) if way > 0 else (shown[-1], shown[0])
    tab = next((s for s in stood if s.column.what == "tab"), None)
    low = min(s.low for s in shown if s.column.what != "chain") if any(s.column.what != "chain" for s in shown) else first.high - 6
    if tab is not None:
        v = (low + max(s.high for s in shown)) / 2
        at, end = laying.point(tab.u, v), laying.point(last.u, last.high)
    else:
        middle = (first.low + first.high) / 2 if first.column.what != "chain" else first.high - 3
        at = laying.point(first.u - way * laying.half(first, first.column.wide / 2 + 18), middle)
        far = (last.low + last.high) / 2 if last.column.what != "chain" else last.high - 3
        end = laying.point(last.u + way * laying.half(last, last.column.wide / 2 + 10), far)
    ahead = laying.point(first.u + way * laying.half(first, 4.0), first.high)
    here = laying.point(first.u, first.high)
    long = math.dist(ahead, here) or 1.0
    laying.lines.append(RowLine(index, at, end, ((ahead[0] - here[0]) / long, (ahead[1] - here[1]) / long)))
    _frame(laying, stood, index)


def _frame(laying: Laying, stood: Sequence[Stood], index: int) -> None:
    rounds = [max((laying.fabric.round[n] for n in s.column.stitches), default=0) for s in stood]
    times = max(rounds, default=0)
    inside = [i for i, r in enumerate(rounds) if r == 1]
    if times < 2 or not inside or inside[-1] - inside[0] + 1 != len(inside):
        return
    low = min(s.low for s in stood if s.column.what == "stitch") if any(s.column.what == "stitch" for s in stood) else None
    if low is None:
        return
    sides = tuple(_side(laying, stood, a, b) for a, b in ((inside[0] - 1, inside[0]), (inside[-1], inside[-1] + 1)))
    laying.frames.append(Frame(index, times, (sides[0], sides[1])))


def _side(laying: Laying, stood: Sequence[Stood], a: int, b: int) -> tuple[Point, Point]:
    """The line between two columns that stand side by side, or beside the one at the end."""
    one = stood[a] if a >= 0 else None
    two = stood[b] if b < len(stood) else None
    if one is not None and two is not None:
        low, high = max(one.low, two.low), min(one.high, two.high)
        feet = (laying.foot(one)[-1] + laying.foot(two)[0]) / 2
        return laying.point(feet, low - 1), laying.point((one.u + two.u) / 2, max(high, low + 8))
    s = one if one is not None else stood[b]
    beside = laying.half(s, 10.0) * (1 if one is not None else -1)
    return laying.point(laying.foot(s)[0] + beside, s.low - 1), laying.point(s.u + beside, s.high)


def clear_frames(frames: Sequence[Frame], marks: Sequence[Mark]) -> list[Frame]:
    """Frames whose sides cross no stem: shortened to their upper or lower part where that helps, else left out."""
    stems: dict[int, list[tuple[Point, Point]]] = {}
    for m in marks:
        stems.setdefault(m.row, []).extend((f, m.top) for f in m.feet)
    found = []
    for frame in frames:
        near = [stem for row in (frame.row - 1, frame.row, frame.row + 1) for stem in stems.get(row, [])]
        sides = tuple(_uncrossed(side, near) for side in frame.sides)
        if sides[0] is not None and sides[1] is not None:
            found.append(replace(frame, sides=(sides[0], sides[1])))
    return found


def _uncrossed(side: tuple[Point, Point], stems: Sequence[tuple[Point, Point]]) -> tuple[Point, Point] | None:
    (x0, y0), (x1, y1) = side
    for low, high in ((0.0, 1.0), (0.4, 1.0), (0.0, 0.6), (0.25, 0.75)):
        part = (x0 + (x1 - x0) * low, y0 + (y1 - y0) * low), (x0 + (x1 - x0) * high, y0 + (y1 - y0) * high)
        if not any(_cross(part, stem) for stem in stems):
            return part
    return None


def _cross(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return side(*one, two[0]) * side(*one, two[1]) <= 0 and side(*two, one[0]) * side(*two, one[1]) <= 0
