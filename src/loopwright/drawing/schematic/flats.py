"""Figures of what lies flat by itself: circles, polygons, ovals, and pieces of rows with their borders."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.schematic.book import SAME, Book
from loopwright.drawing.schematic.figure import Figure, Point, both_sides, circle, polygon, stadium
from loopwright.measuring.courses import Course
from loopwright.measuring.parts import Part
from loopwright.measuring.ranges import width_mm

MOST_RINGS, SQUARE = 6, 4
LONG = 4.0  # a strip longer than this many times its width lies on its side
STEPPED, STEP_STITCHES = 0.25, 3  # rows that grow at once by more than this share, and by more than this many stitches, stand as a step


def disc(part: Part, book: Book) -> Figure:
    """A round or cornered motif from above, with its rounds."""
    figure = Figure(name_of(part), how="disc")
    side, across = book.find(part, "side"), book.find(part, "across")
    square = part.sides == SQUARE and across is not None  # its side is how far it is across: one of the two is told
    if part.sides and side is not None:
        wide = book.value_mm(across) if square and across is not None else book.value_mm(side) / math.tan(math.pi / part.sides)
        corners = polygon(part.sides, wide)
        figure.stroke("outline", corners, closed=True)
        for share in shares(part):
            figure.stroke("round", [(x * share, y * share) for x, y in corners], closed=True)
        figure.span(across if square else side, corners[1], corners[0], "below")
        reach = wide / 2
    else:
        reach = book.value_mm(across) / 2 if across is not None else part.radius_mm
        figure.stroke("outline", circle((0, 0), reach), closed=True)
        for share in shares(part):
            figure.stroke("round", circle((0, 0), reach * share), closed=True)
        figure.span(across, (-reach, 0), (reach, 0), "below")
    figure.stroke("work", [(0, 0), (0, -0.8 * reach)])
    return figure


def oval(part: Part, book: Book) -> Figure:
    """A bottom or a sole worked around both sides of a chain, from above."""
    figure = Figure(name_of(part), how="oval")
    base, radius = part.base_mm, part.radius_mm
    figure.stroke("outline", stadium(base, radius), closed=True)
    for share in shares(part):
        figure.stroke("round", stadium(base, radius * share), closed=True)
    figure.stroke("fold", [(-base / 2, 0), (base / 2, 0)])
    figure.span(book.find(part, "length"), (-base / 2 - radius, 0), (base / 2 + radius, 0), "below")
    figure.span(book.find(part, "width"), (0, -radius), (0, radius), "right")
    figure.stroke("work", [(0, 0), (0, -0.85 * radius)])
    return figure


def shares(part: Part) -> list[float]:
    """Where its inner rounds end, as shares of its radius; every second or third where there are many."""
    total = part.height_mm
    if not total:
        return []
    found, at = [], part.radius_mm - total
    for c in part.courses[:-1]:
        at += c.height_mm
        found.append(at / part.radius_mm)
    return found[:: -(-len(part.courses) // MOST_RINGS)]


def name_of(part: Part) -> str:
    """The section's name, without what it says in brackets."""
    return (part.section or "").split(" (", 1)[0]


def outline_of_rows(run: Sequence[Course]) -> list[tuple[float, float]]:
    """Half the width and the y of every row's end, from the lower edge up; what grows step by step slopes, what jumps is a step."""
    last, depth = width_mm(run[0]) / 2, 0.0
    found = [(last, 0.0)]
    for c in run:
        half = width_mm(c) / 2
        if abs(half - last) > max(STEPPED * max(last, half), STEP_STITCHES * c.top_mm / max(1, c.places)):
            found.append((half, -depth))
        depth += c.height_mm
        found.append((half, -depth))
        last = half
    return straightened(found)


def straightened(points: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """Without the points that lie on the line between their neighbours."""
    kept = list(points[:1])
    for i in range(1, len(points) - 1):
        (ax, ay), (bx, by), (cx, cy) = kept[-1], points[i], points[i + 1]
        if abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) > 1e-6 * max(1.0, math.dist((ax, ay), (cx, cy))):
            kept.append(points[i])
    return [*kept, *points[len(points) - 1 :]] if len(points) > 1 else kept


def rows(own: Sequence[Part], run: Sequence[Part], book: Book, waves: Sequence[tuple[float, float]] = ()) -> Figure:
    """Sections of rows one on the other, the first at the bottom, with the border around them and the edge along the right side.

    `waves`: of a ripple, places along its width with how high its edges stand there, mm.
    """
    halves = outline_of_rows([c for p in run for c in p.courses])
    border = max((p.edge_mm for p in own if p.kind == "border"), default=0.0)
    edge = max((p.edge_mm for p in own if p.kind == "edge" and p.courses[0].way == "along" and len(run) == 1), default=0.0)
    figure = Figure(name_of(run[0]), how="rows")
    inner = both_sides(halves)
    wide, high = max(w for w, _ in halves), -halves[-1][1]
    left, right, low, top = -wide - border, wide + border + edge, border, -high - border
    if waves and not border:
        inner = _waved(wide, high, waves)
        y = -waves[-1][1]
        if edge:
            figure.stroke("outline", [(wide, y), (right, y), (right, y - high), (wide, y - high)], closed=True)
        figure.stroke("outline", inner, closed=True)
    elif border or edge:
        figure.stroke("outline", [(left, low), (right, low), (right, top), (left, top)], closed=True)
        figure.stroke("fold", inner, closed=True)
    else:
        figure.stroke("outline", inner, closed=True)
    _widths(figure, run, book, halves)
    y = 0.0
    for part in run:
        if not figure.span(book.find(part, "depth"), (right, y), (right, y - part.height_mm), "right"):
            figure.span(book.whole(own, "depth"), (right, y), (right, y - part.height_mm), "right")
        y -= part.height_mm
        if part is not run[-1]:
            figure.stroke("fold", [(-wide, y), (wide, y)])
    if border or edge:
        figure.span(book.whole(own, "width"), (left, low), (right, low), "below", 1)
        whole = book.whole(own, "depth")
        if whole is not None and border:
            figure.span(whole, (left, low), (left, top), "left")
    figure.stroke("work", [(0.0, -0.35 * high), (0.0, -0.65 * high)])
    return _on_its_side(figure, book) if high > LONG * 2 * (wide + border) else figure


def _on_its_side(figure: Figure, book: Book) -> Figure:
    """A strip, whose depth is its length."""
    for span in figure.spans:
        if book.entries[span.entry].told == "depth":
            book.told(span.entry, "length")
    return figure.turned()


def _waved(wide: float, high: float, waves: Sequence[tuple[float, float]]) -> list[Point]:
    low = [(2 * wide * at - wide, -rise) for at, rise in waves]
    return [*low, *((x, y - high) for x, y in reversed(low))]


def _widths(figure: Figure, run: Sequence[Part], book: Book, halves: Sequence[tuple[float, float]]) -> None:
    """The widest row, and the ends that are narrower."""
    part = max(run, key=lambda p: max(map(width_mm, p.courses)))
    first, last = halves[0], halves[-1]
    most = max(halves, key=lambda h: h[0])
    if most[0] - first[0] <= SAME * most[0]:
        figure.span(book.find(part, "width"), *_line(first), "below")
    else:
        figure.span(book.find(part, "width"), *_line(most), "above", 0 if most[0] - last[0] <= SAME * most[0] else 1)
    figure.span(book.find(run[0], "width at the start"), *_line(first), "below")
    figure.span(book.find(run[-1], "width at the end"), *_line(last), "above")


def _line(half: tuple[float, float]) -> tuple[Point, Point]:
    return (-half[0], half[1]), (half[0], half[1])


def strip(part: Part, book: Book) -> Figure:
    """A tie: a chain with stitches worked back over it, lying on its side."""
    figure = Figure(name_of(part), how="tie")
    entry = book.find(part, "length")
    long = book.value_mm(entry) if entry is not None else part.courses[0].top_mm
    thick = max(part.height_mm, long / 60)
    figure.stroke("outline", [(0, 0), (long, 0), (long, thick), (0, thick)], closed=True)
    figure.span(entry, (0, thick), (long, thick), "below")
    return figure


def triangle(own: Sequence[Part], part: Part, book: Book) -> Figure | None:
    """A shawl that spreads from the middle of its top edge: a triangle or a half circle; None for another piece of rows."""
    wide, deep = book.whole(own, "width"), book.whole(own, "depth")
    rows_deep = book.find(part, "depth")
    if wide is None or deep is None or rows_deep is None or not part.corners:
        return None
    half, tip, body = book.value_mm(wide) / 2, book.value_mm(deep), book.value_mm(rows_deep)
    if abs(tip / half - 1) > 0.1:
        return None
    figure = Figure(name_of(part), how="tip")
    figure.stroke("outline", [(-half, 0), (half, 0), (0, tip)], closed=True)
    figure.span(wide, (-half, 0), (half, 0), "above")
    figure.span(deep, (-half, 0), (-half, tip), "left")
    inner = body * math.sqrt(2)
    if inner < 0.995 * tip:
        figure.stroke("fold", [(-half * inner / tip, 0), (0, inner), (half * inner / tip, 0)])
    for share in (0.25, 0.5, 0.75):
        figure.stroke("round", [(-half * share, 0), (0, tip * share), (half * share, 0)])
    figure.span(rows_deep, (0, 0), (body / math.sqrt(2), body / math.sqrt(2)), "within")
    figure.stroke("work", [(0, 0.1 * tip), (-0.25 * half, 0.1 * tip + 0.25 * half)])
    return figure


def half_circle(own: Sequence[Part], part: Part, book: Book) -> Figure | None:
    """A shawl of rows that spread from the middle of its top edge evenly."""
    wide, deep = book.whole(own, "width"), book.whole(own, "depth")
    if wide is None or deep is None or part.corners or part.courses[0].places > 8:
        return None
    reach = book.value_mm(deep)
    if abs(book.value_mm(wide) / (2 * reach) - 1) > 0.01:
        return None
    figure = Figure(name_of(part), how="half-circle")
    figure.stroke("outline", circle((0, 0), reach, start=0, end=math.pi), closed=True)
    for share in (0.25, 0.5, 0.75):
        figure.stroke("round", circle((0, 0), reach * share, start=0, end=math.pi))
    figure.span(wide, (-reach, 0), (reach, 0), "above")
    figure.span(deep, (reach, 0), (reach, reach), "right")
    figure.stroke("work", [(0, 0.1 * reach), (0, 0.6 * reach)])
    return figure


def laid_out(part: Part, layout: tuple[int, int], book: Book) -> Figure | None:
    """Motifs joined in a rectangle with their border around them, from above; None without measures."""
    wide, long, deep = (book.find(part, name) for name in ("width", "length", "depth"))
    if wide is None or long is None:
        return None
    x, y, rim = book.value_mm(wide) / 2, book.value_mm(long) / 2, part.height_mm
    figure = Figure(name_of(part), how="joined")
    figure.stroke("outline", [(-x, -y), (x, -y), (x, y), (-x, y)], closed=True)
    figure.stroke("fold", [(rim - x, rim - y), (x - rim, rim - y), (x - rim, y - rim), (rim - x, y - rim)], closed=True)
    for k in range(1, layout[0]):
        at = (2 * k / layout[0] - 1) * (x - rim)
        figure.stroke("round", [(at, rim - y), (at, y - rim)])
    for k in range(1, layout[1]):
        at = (2 * k / layout[1] - 1) * (y - rim)
        figure.stroke("round", [(rim - x, at), (x - rim, at)])
    figure.span(wide, (-x, y), (x, y), "below")
    figure.span(long, (-x, -y), (-x, y), "left")
    figure.span(deep, (x, y - rim), (x, y), "right")
    return figure
