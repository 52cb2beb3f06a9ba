"""What rows begin on: a foundation chain, or stitches of another chart; and the wave of a ripple."""

from __future__ import annotations

import math
from collections import Counter
from itertools import pairwise

from loopwright.drawing.chart.along import PITCH
from loopwright.drawing.chart.columns import ARCH, ARCH_STEP, Column, columns
from loopwright.drawing.chart.drawn import Mark, Point
from loopwright.drawing.chart.edging import end_height, stack_of
from loopwright.drawing.chart.laying import Laying
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.model.fabric import Fabric

STEP, RING = 13.0, 9.0  # of a chain; least radius of a ring
STANDS = 3  # chains at the end of a foundation that stand up as a first stitch
SWAY = 1.5  # stitches that must change sides for rows to ripple
STEEPEST = 0.8
MOST_ROOM = 2.0
NEAR = 4.0
EDGING, IN = 4, 3.2  # rows that an edging has at most; how far below its edge chains lie
Bars = list[tuple[Point, Point]]


def begin(fabric: Fabric, section: Section, laying: Laying, way: int, pitch: float) -> tuple[list[Mark], Bars, list[Mark]]:
    """Lays what the first row is worked into: marks of its chain; bars for stitches of another chart, or those themselves below an edging.

    `way`: of the first row.
    """
    if section.base >= 0:
        laying.level = AIR + 3.0
        return _chain(fabric, section, laying, way, pitch), [], []
    below = _borrowed(fabric, section, laying, way)
    laying.level = AIR if below else 0.0
    piece = _piece(fabric, section, laying) if below else []
    return [], [] if piece else below, piece


def _piece(fabric: Fabric, section: Section, laying: Laying) -> list[Mark]:
    """The stitches of one straight row that an edging is worked into, as they stand; nothing for what is no edging."""
    rows = {fabric.row[s] for s in laying.tops}
    straight = not section.closed and section.of <= EDGING and len(rows) == 1
    if not straight or any(fabric.part_of(s) == "assumed" for s in laying.tops):
        return []
    marks = []
    for s, (u, _) in laying.tops.items():
        kind = fabric.name(s)
        stack = stack_of(fabric, s) if s in fabric.counts_as else range(s, s + 1)
        tall = end_height(fabric, s) / len(stack)
        for k, one in enumerate(reversed(stack)):
            lies = kind == "ch" and s not in fabric.counts_as
            foot, top = ((u - 6.0, -IN), (u + 6.0, -IN)) if lies else ((u, -tall * (k + 1)), (u, -tall * k))
            marks.append(Mark(one, kind, (laying.plane.point(*foot),), laying.plane.point(*top), "none", fabric.row[s]))
    return marks


def _lay(laying: Laying, stitch: int, x: float, top: float) -> None:
    laying.tops[stitch] = laying.undersides[stitch] = (x, top)
    laying.sky.raise_to(x, top, 6.0)


def _flat(laying: Laying, stitch: int, x: float, y: float, row: int) -> Mark:
    one, two = laying.plane.point(x - 6.0, y), laying.plane.point(x + 6.0, y)
    return Mark(stitch, "ch", (one,), two, "none", row)


def _chain(fabric: Fabric, section: Section, laying: Laying, way: int, pitch: float) -> list[Mark]:
    row = fabric.rows[section.base]
    base = list(range(row.start, row.end))
    if _is_ring(fabric, section):
        return _ring(laying, base, section.base)
    onward = _onward(fabric, section, way)
    lying, standing, over = _foundation(fabric, section, base)
    marks = []
    for k, s in enumerate(s for s in lying if s not in laying.left):
        x = laying.hints.get(s, onward * k * pitch)
        marks.append(_flat(laying, s, x, 0.0, section.base))
        _lay(laying, s, x, 3.2)
    laying.end = lying[-1] if over and not standing else -1
    laying.lead = _lead(fabric, section, standing, over)
    return marks


def _is_ring(fabric: Fabric, section: Section) -> bool:
    """Whether rows, not rounds, begin in the ring that the chain was joined into."""
    row = fabric.rows[section.rows[0]]
    return not section.closed and any(fabric.where(s) == "ring" for s in range(row.start, row.end))


def _ring(laying: Laying, base: list[int], row: int) -> list[Mark]:
    """The chains of a ring, below the middle of the first row."""
    radius = max(len(base) * STEP / (2 * math.pi), RING)
    half = min(6.0, math.pi * radius / len(base) - 0.4)
    marks = []
    for k, s in enumerate(base):
        angle = 2 * math.pi * (k + 0.5) / len(base)
        x, y = radius * math.cos(angle), radius * (math.sin(angle) - 1.0)
        dx, dy = -math.sin(angle) * half, math.cos(angle) * half
        marks.append(Mark(s, "ch", (laying.plane.point(x - dx, y - dy),), laying.plane.point(x + dx, y + dy), "none", row))
        laying.tops[s] = (laying.hints.get(s, 0.0), 3.2)
    laying.sky.raise_to(0.0, 3.2, 6.0)
    return marks


def _foundation(fabric: Fabric, section: Section, base: list[int]) -> tuple[list[int], list[int], list[int]]:
    """A foundation chain taken apart: what lies, what stands up at the end as the first stitch or to turn, what follows over the top."""
    row = fabric.rows[section.rows[0]]
    used = {p for s in range(row.start, row.end) for p in fabric.parents(s)} & set(base)
    if not used or max(used) == base[-1] or section.closed:
        return base, [], []
    top = max(row.borrowed, default=base[-1])
    after = [s for s in base if s > max(used)]
    stand = [s for s in after if s <= top][-(STANDS if row.borrowed else len(after)) :]
    under = 0 if row.borrowed else _under_loop(fabric, section, len(after))
    if under:
        return [s for s in base if s < after[under]], [], after[under:]
    if not stand:
        return base, [], []
    return [s for s in base if s < stand[0]], stand, [s for s in after if s > top]


def _under_loop(fabric: Fabric, section: Section, skipped: int) -> int:
    """Of the chains before a row of loops, how many lie below the first loop and under its end; 0 where the row is no such row."""
    row = fabric.rows[section.rows[0]]
    feet = [fabric.into[s] for s in range(row.start, row.end) if fabric.name(s) != "ch" and fabric.into[s] >= 0]
    loop = next((k for k, s in enumerate(range(row.start + 1, row.end)) if fabric.name(s) != "ch"), 0)
    under = abs(feet[1] - feet[0]) if len(feet) > 1 else 0
    return under if loop >= ARCH and 1 < under < skipped and abs(skipped - under - loop) <= 1 else 0


def _lead(fabric: Fabric, section: Section, standing: list[int], over: list[int]) -> list[Column]:
    """The chains at the end of a foundation that stand up in the first row, and those that lead on from their top."""
    if not standing:
        return [Column("chain", [s], "ch", wide=ARCH_STEP) for s in over]
    row = fabric.rows[section.rows[0]]
    kinds = [fabric.name(s) for s in range(row.start, row.end) if fabric.name(s) not in ("ch", "sl st")]
    turning = not (row.borrowed and kinds)
    found = Column("stack", standing, "ch", wide=9.0 if turning else 15.5, turning=turning, counts_as="" if turning else kinds[0])
    return [found, *(Column("chain", [s], "ch", wide=STEP) for s in over)]


def _onward(fabric: Fabric, section: Section, way: int) -> int:
    """Which way the chain was made, so that the row worked back over it goes `way`."""
    row = fabric.rows[section.rows[0]]
    into = [fabric.into[s] for s in range(row.start, row.end) if fabric.into[s] >= 0 and fabric.part_of(s) != "join"]
    return way if len(into) > 1 and into[-1] >= into[0] else -way


def _borrowed(fabric: Fabric, section: Section, laying: Laying, way: int) -> Bars:
    """Stitches of another chart, under those that stand on them."""
    row = fabric.rows[section.rows[0]]
    at, last, places = 0.0, 0.0, dict[int, list[float]]()
    needs = [sum(c.wide for c in columns(fabric, fabric.rows[i], tab=False, left=laying.left) if not c.turning) for i in section.rows[:8]]
    room = min(MOST_ROOM, max(1.0, max(needs) / max(needs[0], 1.0)))
    for c in columns(fabric, row, tab=False, left=laying.left):
        outer = [p for p in c.parents if not row.start <= p < row.end] if c.what != "join" else []
        wide = room * max(c.wide, PITCH * len(outer) if c.place not in ("space", "ring") else c.wide)
        at += (last + wide) / 2
        last = wide
        for k, p in enumerate(outer):
            aside = 0.0 if c.place in ("space", "ring") else (k - (len(outer) - 1) / 2) * PITCH
            known = places.setdefault(p, [])
            if not known or at + aside - known[-1] < NEAR * wide:  # the last of a round may go where the first went
                known.append(at + aside)
    below: Bars = []
    shown = set[float]()
    for p, xs in places.items():
        x = laying.hints.get(p, way * sum(xs) / len(xs))
        laying.tops[p] = laying.undersides[p] = (x, 0.0)
        if round(x) not in shown:
            shown.add(round(x))
            below.append((laying.plane.point(x - 6.0, 0.0), laying.plane.point(x + 6.0, 0.0)))
    return below


def wave(fabric: Fabric, section: Section, pitch: float) -> tuple[Point, ...]:
    """How far rows lie up or down along them where they ripple, (x, up); nothing where they lie straight.

    A row with as many increases as decreases moves its stitches from the peaks to the valleys. A stitch stands upright on its row where
    the row slopes by that way over its height; the wave is the sum of those slopes.
    """
    if section.base < 0 or section.closed or len(section.rows) < 2:
        return ()
    row, under = fabric.rows[section.rows[1]], fabric.rows[section.rows[0]]
    feet = [s for s in (*under.borrowed, *range(under.start, under.end)) if fabric.part_of(s) in ("edge", "counts") or s in under.borrowed]
    tops = [s for s in range(row.start, row.end) if fabric.part_of(s) in ("edge", "counts")]
    if len(feet) != len(tops) or any(fabric.name(s) == "ch" and fabric.part_of(s) == "edge" for s in tops):
        return ()
    order = {s: len(feet) - 1 - k for k, s in enumerate(feet)}
    places = [[order[p] for p in fabric.parents(s) if p in order] for s in tops]
    if not all(places) or any(min(b) < min(a) for a, b in pairwise(places)):
        return ()  # stitches that cross others stand on a straight row
    plain = Counter(p for foot in places for p in foot)
    if 2 * sum(len(foot) == 1 and plain[foot[0]] == 1 for foot in places) < len(places):
        return ()  # groups in one place are shells, whose rows lie straight
    sway = [k - sum(p) / len(p) for k, p in enumerate(places)]
    middle = sum(sway) / len(sway)
    if max(sway) - min(sway) < SWAY or abs(sway[0] - sway[-1]) > SWAY:
        return ()
    tall = max(height(fabric.name(s)) for s in tops) + AIR
    way = -1 if row.right_side else 1
    up, found = 0.0, []
    for one in sway:
        found.append(up)
        up -= max(-STEEPEST, min(STEEPEST, (one - middle) * pitch / tall)) * pitch
    drift = (found[-1] - found[0]) / max(1, len(found) - 1)
    left = [f - drift * k for k, f in enumerate(found)]
    onward = _onward(fabric, section, -way)  # the second row runs as the chain does, from where it began
    places_x = [onward * pitch * k for k in range(len(left))]
    return tuple(sorted((x, v - min(left)) for x, v in zip(places_x, left, strict=True)))
