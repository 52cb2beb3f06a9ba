"""How an edging's places are spread along the edge of its piece, so that all its rows have room."""

from __future__ import annotations

import math
from collections import defaultdict
from copy import deepcopy
from itertools import pairwise

from loopwright.drawing.chart.columns import LEFT_OUT, columns
from loopwright.drawing.chart.drawn import Point
from loopwright.drawing.chart.edging import BAR, LEFT, Edge, Side
from loopwright.drawing.chart.planes import Rim
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.model.fabric import Fabric

ROOMIEST, AIRY = 1.6, 1.15  # how much wider than its stitches need a row may stand; room to spare where it must
NEAR_CORNER = 9.0  # of a side's first and last place, but for ends of rows
HALF = BAR / 2
SPARE = 20.0  # room that a round has to spare
PARTS, NONE = 4, 1e-6  # of a side, between two places that are looked at; what is no length
BEND = 8.0  # that an inner corner's middle is from the last row


def spread(edge: Edge, fabric: Fabric) -> None:
    """Sets where every place lies along its side, and how long sides are: opposite sides of a closed edge alike."""
    grown = growth(fabric, edge)[edge.rows[0]]
    radius = reach(fabric, edge) + BEND
    for side in edge.sides:
        at, last = 0.0, None
        for slot in side.slots:
            if last is None:
                at = slot.room / 2 if slot.lies in ("up", "down") else NEAR_CORNER
            else:
                at += (last.room + slot.room) / 2 + (LEFT_OUT if slot.gap else 0.0)
            slot.at = at
            last = slot
        _stretch(side, grown)
        end = side.slots[-1] if side.slots else None
        side.long = 0.0 if end is None else end.at + (end.room / 2 if end.lies in ("up", "down") else NEAR_CORNER)
        side.bend = radius * max(0.0, -side.turn)
    if edge.closed:
        _seam(fabric, edge)
        _even(edge)
        _widen(fabric, edge)
        if any(s.turn < 0 for s in edge.sides):
            _even(edge)


def _seam(fabric: Fabric, edge: Edge) -> None:
    """Makes room where rounds begin and end: for their number, the chains that turn, the slip stitch that joins."""
    first, last, sides = edge.first, edge.sides[-1], edge.sides
    ahead, behind = _at_seam(fabric, edge)
    arc = max(0.0, last.turn) * (AIR + _tallest(fabric, edge.rows[0]))
    if first is not None and not first.split:
        edge.before = ahead + max(0.0, first.wide - arc) / 2
        last.long += edge.before + max(0.0, behind - NEAR_CORNER)
        return
    if first is not None:
        ahead, behind = ahead + first.wide / 2 - arc / 2, behind + first.wide / 2
        arc /= 2
    if sides[0].slots:
        shift = max(0.0, ahead - sides[0].slots[0].at)
        for slot in sides[0].slots:
            slot.at += shift
        sides[0].long += shift
    last.long += max(0.0, behind - arc - (last.long - last.slots[-1].at if last.slots else 0.0))


def _at_seam(fabric: Fabric, edge: Edge) -> tuple[float, float]:
    """Room that rounds need just after their beginning and just before their end, in the order of the edge."""
    starts, ends = [HALF], [HALF]
    for index in edge.rows:
        found = columns(fabric, fabric.rows[index], tab=True, left=edge.left)
        stand = [k for k, c in enumerate(found) if c.what == "stitch" or (c.what == "stack" and not c.turning)]
        if stand:
            starts.append(sum(c.wide for c in found[: stand[0]]) - found[0].wide / 2 + HALF)
            ends.append(sum(c.wide for c in found[stand[-1] + 1 :]) + found[0].wide / 2 + HALF)
    room = max(starts), max(ends)
    return room if fabric.rows[edge.rows[0]].right_side else room[::-1]


def _stretch(side: Side, grown: float) -> None:
    """Moves places apart until what stands on them has room."""
    used = [k for k, s in enumerate(side.slots) if s.wide]
    more = 0.0
    moved = [0.0] * len(side.slots)
    for a, b in pairwise(used):
        one, two = side.slots[a], side.slots[b]
        need = grown * ((one.wide + two.wide) / 2 + one.after) + (LEFT_OUT if any(s.gap for s in side.slots[a + 1 : b + 1]) else 0.0)
        less = max(0.0, need - (two.at - one.at))
        for k in range(a + 1, b + 1):
            moved[k] = more + less * (k - a) / (b - a)
        more += less
    for k in range((used[-1] + 1) if used else 0, len(side.slots)):
        moved[k] = more
    for slot, by in zip(side.slots, moved, strict=True):
        slot.at += by


def _even(edge: Edge) -> None:
    """Makes a closed edge meet: opposite sides of a rectangle as long as each other, all sides of another shape alike."""
    totals: dict[int, list[Side]] = {}
    bends: dict[int, float] = defaultdict(float)
    turned = 0.0
    for side in edge.sides:
        totals.setdefault(way := round(math.degrees(turned)) % 360, []).append(side)
        turned += side.turn
        if side.turn < 0:  # its bend goes as far along this side as along the next
            for one in (way, round(math.degrees(turned)) % 360):
                bends[one] += side.bend / -side.turn
    alike = [(0, 180), (90, 270)] if set(totals) == {0, 90, 180, 270} else [tuple(totals)]
    for group in alike:
        long = max(sum(s.long for s in totals[k]) + bends[k] for k in group)
        for k in group:
            share = (long - bends[k]) / (sum(s.long for s in totals[k]) or 1.0)
            for side in totals[k]:
                side.long *= share
                for slot in side.slots:
                    slot.at *= share


def _widen(fabric: Fabric, edge: Edge) -> None:
    """Lengthens all sides of a closed edge until every round has room."""
    turns, long = sum(s.turn for s in edge.sides), sum(s.long for s in edge.sides)
    high, short = AIR, 0.0
    for index in edge.rows:
        high += _tallest(fabric, index)
        need = sum(c.wide for c in columns(fabric, fabric.rows[index], tab=True, left=edge.left))
        short = max(short, need + SPARE - long - turns * high)
        high += AIR
    share = 1.0 + short / long
    for side in edge.sides:
        side.long *= share
        for slot in side.slots:
            slot.at *= share


def _tallest(fabric: Fabric, index: int) -> float:
    row = fabric.rows[index]
    return max((height(fabric.name(s)) for s in range(row.start, row.end) if fabric.name(s) != "ch"), default=0.0)


def reach(fabric: Fabric, edge: Edge) -> float:
    """How far outside the edge its rows reach."""
    return AIR + sum(_tallest(fabric, index) + AIR for index in edge.rows)


def growth(fabric: Fabric, edge: Edge) -> dict[int, float]:
    """By row, how much more room than its stitches need those above it have, but for what corners give."""
    needs, high = [], AIR
    turns = sum(max(0.0, s.turn) for s in edge.sides)
    for index in edge.rows:
        high += _tallest(fabric, index)
        needs.append(max(1.0, sum(c.wide for c in columns(fabric, fabric.rows[index], tab=False) if not c.turning) - turns * high))
        high += AIR
    wide = [max(needs[k:]) / n for k, n in enumerate(needs)]
    return {index: min(ROOMIEST, w * AIRY if w > 1.0 else 1.0) for index, w in zip(edge.rows, wide, strict=True)}


def plane_of(fabric: Fabric, edge: Edge) -> Rim:
    """The plane around an edge that is spread."""
    knots: list[tuple[float, float]] = []
    last = edge.sides[-1]
    ahead = ahead_of(edge)
    if edge.first is not None:
        knots += [(edge.before, 0.0)] * (edge.before > 0) + [(0.0, ahead)]
    for side in edge.sides:
        begins = side is last and edge.first is not None
        knots.append((side.long - edge.before if begins else side.long, 0.0))
        turn = side.turn - ahead * begins
        if turn:
            knots.append((side.bend, turn))
    heading = edge.sides[0].heading
    if not edge.closed and all(s.heading == LEFT for s in edge.sides):
        heading -= sum(s.turn for s in edge.sides) / 2  # an edge with corners in it lies even on both hands
    return Rim(tuple(knots), heading - ahead, edge.closed, reach(fabric, edge) / 2)


def ahead_of(edge: Edge) -> float:
    """How much of the corner that a closed edge begins at lies after its beginning."""
    if edge.first is None:
        return 0.0
    return edge.sides[-1].turn / 2 if edge.first.split else edge.sides[-1].turn


def is_free(fabric: Fabric, edge: Edge) -> bool:
    """Whether an edge with inner corners can be laid flat: neither it nor the last row on it crosses itself or the other."""
    spread(edge := deepcopy(edge), fabric)
    plane, high = plane_of(fabric, edge), reach(fabric, edge)
    at, us = 0.0, [0.0]
    for long, turn in plane.knots:
        whole = long + plane.arc * max(0.0, turn)
        us += [at + whole * k / PARTS for k in range(1, PARTS + 1)]
        at += whole
    pairs = [pairwise([plane.point(u, v) for u in us]) for v in (0.0, high)]
    ways = [pair for line in pairs for pair in line if math.dist(*pair) > NONE]
    return not any(_cross(one, two) for k, one in enumerate(ways) for two in ways[:k])


def _cross(one: tuple[Point, Point], two: tuple[Point, Point]) -> bool:
    """Whether two lines cross, not at their ends."""

    def side(a: Point, b: Point, p: Point) -> float:
        return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])

    return side(*one, two[0]) * side(*one, two[1]) < -NONE and side(*two, one[0]) * side(*two, one[1]) < -NONE
