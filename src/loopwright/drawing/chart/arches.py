"""Chains: in arches between two stitches, standing up at the start of a row, in a knob on the edge."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from itertools import pairwise

from loopwright.drawing.chart.columns import ARCH, Column, knob_radius
from loopwright.drawing.chart.drawn import Mark, Point
from loopwright.drawing.chart.planes import Plane, Ring
from loopwright.drawing.chart.skyline import CLEAR, Skyline
from loopwright.drawing.chart.symbols import height
from loopwright.model.fabric import Fabric

LONG = 12.0  # of a chain's oval
STEP = 12.6  # of one chain in an arch
HALF_BAR, BESIDE = 9.0, 4.0  # from a stitch's middle to an arch beside its bar; to a loop that rises from it
LEAST_BOW = 0.1  # of its way, that an arch of a round bows out
STEEP = 0.42  # of what an arch is longer than its way, that a narrow one bows at least
Placed = tuple[float, float, float, Point, Point]


def arch(plane: Plane, sky: Skyline, us: Sequence[float], ends: Sequence[tuple[float, float]], *, held: bool) -> list[Placed]:
    """Where chains lie: u and v of the middle, how high it reaches, the two ends of the oval.

    `us`: where the row would have them; `ends`: tops of the stitches beside them, `held` where there is one at either end. An arch bows
    as far as its chains are longer than the way.
    """
    count = len(us)
    first, last = ends[0], ends[-1]
    v0, v1 = first[1], last[1]
    level = (v0 + v1) / 2
    if held:
        a, b = plane.length(first[0], level) + HALF_BAR, plane.length(last[0], level) - HALF_BAR
    else:
        a, b = plane.length(us[0], level), plane.length(us[-1], level)
        step = (b - a) / (count - 1) if count > 1 else STEP
        a, b = a - step / 2, b + step / 2
    chord = max(math.hypot(b - a, v1 - v0), 1.0)
    surplus = count * STEP - chord
    bow = min(max(math.sqrt(3 * chord * surplus / 8), STEEP * surplus), count * 5.0) if surplus > 0 and held else 0.0
    if held and isinstance(plane, Ring) and count >= ARCH:
        bow = max(bow, LEAST_BOW * chord)
    for _ in range(12):
        short = 0.0
        for k in range(2 * count - 1):
            t = (k + 1) / (2 * count)
            u = plane.place(a + (b - a) * t, level)
            short = max(short, sky.at(u) + CLEAR + 3.0 - (v0 + (v1 - v0) * t + 4 * bow * t * (1 - t)))
        if short <= 0:
            break
        if held and count > 1:
            bow += short
        else:
            v0, v1 = v0 + short, v1 + short
    cut = _even(a, b, v0, v1, bow, count)
    return [_oval(plane, level, p, q) for p, q in pairwise(cut)]


def loop_beside(start: Point, end: Point, way: int, count: int) -> list[Point]:
    """Count + 1 places along a loop that rises beside a row: from the end of the row below, out on the side of `way`, to a stitch's top."""
    (x0, y0), (x1, y1) = (start[0] + way * BESIDE, start[1] + 4.0), (end[0] + way * HALF_BAR, end[1] - 2.0)
    fine, out = 8 * count, 0.0
    while True:
        bend = x0 + way * out, y1 + out
        dots = [_between((x0, y0), bend, (x1, y1), k / fine) for k in range(fine + 1)]
        far = [0.0]
        for p, q in pairwise(dots):
            far.append(far[-1] + math.dist(p, q))
        if far[-1] >= count * STEP or out > count * STEP:
            break
        out += 2.0
    return [dots[min(fine, bisect_left(far, far[-1] * k / count))] for k in range(count + 1)]


def _between(a: Point, b: Point, c: Point, t: float) -> Point:
    """A place on the curve from `a` to `c` that `b` draws aside (a parabola)."""
    return tuple((1 - t) ** 2 * p + 2 * t * (1 - t) * q + t * t * r for p, q, r in zip(a, b, c, strict=True))  # type: ignore[return-value]


def _even(a: float, b: float, v0: float, v1: float, bow: float, count: int) -> list[tuple[float, float]]:
    """Count + 1 places along the arch, the same way from one to the next."""
    fine = 8 * count
    dots = [(a + (b - a) * k / fine, v0 + (v1 - v0) * k / fine + 4 * bow * k / fine * (1 - k / fine)) for k in range(fine + 1)]
    far = [0.0]
    for p, q in pairwise(dots):
        far.append(far[-1] + math.dist(p, q))
    found, at = [], 0
    for k in range(count + 1):
        want = far[-1] * k / count
        while at < fine and far[at + 1] < want:
            at += 1
        at = min(at, fine - 1)
        share = (want - far[at]) / ((far[at + 1] - far[at]) or 1.0)
        found.append((dots[at][0] + (dots[at + 1][0] - dots[at][0]) * share, dots[at][1] + (dots[at + 1][1] - dots[at][1]) * share))
    return found


def _oval(plane: Plane, level: float, p: tuple[float, float], q: tuple[float, float]) -> Placed:
    """The oval in the middle of a piece of an arch."""
    mid = ((p[0] + q[0]) / 2, (p[1] + q[1]) / 2)
    u = plane.place(mid[0], level)
    one, two = (plane.point(plane.place(s, level), v) for s, v in (p, q))
    return u, mid[1], max(mid[1] + 3.0, p[1] + 1.0, q[1] + 1.0), *cut_to(one, two)


def cut_to(one: Point, two: Point) -> tuple[Point, Point]:
    """The ends of an oval in the middle of a line, no longer than an oval, with a little air to the next."""
    far = math.dist(one, two) or 1.0
    half = min(LONG, max(far - 0.8, 3.0)) / 2
    x, y = (one[0] + two[0]) / 2, (one[1] + two[1]) / 2
    dx, dy = (two[0] - one[0]) / far * half, (two[1] - one[1]) / far * half
    return (x - dx, y - dy), (x + dx, y + dy)


def stacked(fabric: Fabric, column: Column) -> float:
    """How tall chains that stand up are: as tall as the stitch that they count as, else as they are, never shorter than is legible."""
    count = len(column.stitches)
    last = column.stitches[-1]
    if column.turning:
        return count * LONG
    if column.counts_as:
        return max(count * 8.0, height(column.counts_as))
    return max(count * 8.0, height(fabric.kinds[fabric.counts_as.get(last, fabric.kind[last])]))


def knob(
    fabric: Fabric, plane: Plane, stitches: Sequence[int], top: tuple[float, float], row: int, marks: list[Mark]
) -> tuple[float, float, float]:
    """Draws a picot on a stitch's top; gives how high and wide it reaches."""
    chains = [s for s in stitches if fabric.name(s) == "ch"]
    radius = knob_radius(max(1, len(chains)))
    x, y = plane.point(*top)
    over = plane.point(top[0], top[1] + 10.0)
    far = math.dist((x, y), over) or 1.0
    ux, uy = (over[0] - x) / far, (over[1] - y) / far
    cx, cy = x + ux * (radius + 11.0), y + uy * (radius + 11.0)
    turn = 2 * math.pi / (len(chains) + 1)
    start = math.atan2(-uy, -ux)
    for k, s in enumerate(chains):
        angle = start + (k + 1) * turn
        mx, my = cx + radius * math.cos(angle), cy + radius * math.sin(angle)
        half = min(4.5, radius * math.sin(turn / 2) - 0.6)
        dx, dy = -math.sin(angle) * half, math.cos(angle) * half
        marks.append(Mark(s, "ch", ((mx - dx, my - dy),), (mx + dx, my + dy), "none", row))
    for k, s in enumerate(s for s in stitches if fabric.name(s) != "ch"):
        foot = 4.0 + 6.0 * k
        end = (x + ux * (foot + 5.0), y + uy * (foot + 5.0))
        marks.append(Mark(s, fabric.name(s), ((x + ux * foot, y + uy * foot),), end, "none", row))
    reach = radius * 2 + 15.0
    half_u = plane.place(plane.length(top[0], max(top[1], 1.0)) + radius + 5.0, max(top[1], 1.0)) - top[0]
    return top[0], top[1] + reach, half_u
