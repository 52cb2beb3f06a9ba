"""Rows around the edge of a piece, laid out around it: the edge in grey as it is worked into, the rows with their corners outside it."""

from __future__ import annotations

import math
from copy import deepcopy
from dataclasses import replace
from itertools import pairwise

from loopwright.drawing.chart.drawn import Laid, Mark, Point, RowLine
from loopwright.drawing.chart.edge_room import ahead_of, growth, plane_of, spread
from loopwright.drawing.chart.edging import Edge, Side, Slot, end_height, stack_of
from loopwright.drawing.chart.laying import Laying
from loopwright.drawing.chart.leaving import standing_on
from loopwright.drawing.chart.planes import Rim
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.model.fabric import Fabric

IN, SIDEWAYS = 3.2, 7.0  # how far inside the edge its chains lie, and the stitches at the ends of rows
OVAL = 6.0  # half a chain
FOLDED, KEPT, TRIED = 420.0, 120.0, 14  # a longer side is folded; what of it is kept at either end; places tried for the fold
GAP_IN = 16.0  # how far inside the edge the line at a fold begins
ARROW, BEFORE, TAB_OFF, STEP = 14.0, 16.0, 22.0, 25.0  # of open edges: arrow, from the first stitch; number, from the arrow; to the next
OUTSIDE, AHEAD, SHAFT = 16.0, 12.0, 42.0  # of closed edges: arrow, from the last round and from where it begins; its length


def lay_around(fabric: Fabric, section: Section, edge: Edge, hints: dict[int, float] | None = None) -> tuple[Laid, Laying]:
    """Lays rows around their edge, and what holds them. `hints`: u of stitches, where rows are settled together."""
    edge = deepcopy(edge)
    edge.left = frozenset[int]().union(*section.left)
    spread(edge, fabric)
    plane = plane_of(fabric, edge)
    laying = Laying(fabric, plane)
    laying.hints = hints or {}
    laying.left = edge.left
    laying.level = AIR
    laying.grown = growth(fabric, edge) if hints is None else {}
    laying.tight = {s for side in edge.sides for s in (side.corner.stitches if side.corner is not None else ())}
    piece, below = _piece(fabric, edge, plane, laying)
    for index in section.rows:
        laying.row(index, 1 if fabric.rows[index].right_side else -1)
    found = Laid(laying.marks, laying.lines, laying.frames, below)
    found.piece = piece
    found.gaps = _gaps(fabric, section, edge, laying, plane.arc)
    if edge.closed:
        high = max(s.high for row in laying.held for s in row) + OUTSIDE
        begin = plane.length(next((s.u for s in laying.held[-1] if s.column.what == "tab"), 0.0), high)
        way = 1 if fabric.rows[section.rows[-1]].right_side else -1
        found.arrows = [[plane.point(plane.place(begin + way * (AHEAD + SHAFT * k / 6), high), high) for k in range(7)]]
    else:
        found.lines, found.arrows = _beside(laying, plane)
    return found, laying


def _piece(fabric: Fabric, edge: Edge, plane: Rim, laying: Laying) -> tuple[list[Mark], list[tuple[Point, Point]]]:
    """The stitches at the edge as they lie there, and bars for those that could not be drawn without lying on each other."""
    marks: list[Mark] = []
    below: list[tuple[Point, Point]] = []
    drawn: set[int] = set()
    placed = _placed(edge, plane.arc)
    for side, slot, u in sorted(placed, key=lambda p: p[1].lies not in ("up", "down")):
        for k, s in enumerate(slot.stitches):
            aside = (k - (len(slot.stitches) - 1) / 2) * slot.room / len(slot.stitches)
            known = laying.sides if slot.lies in ("up", "down") else laying.undersides if slot.lies == "under" else laying.tops
            known[s] = u + (aside if side is not None else 0.0), 0.0
            if s not in drawn:
                drawn.add(s)
                _drawn(fabric, (side, slot), plane, (s, u + aside), marks, below)
            elif side is not None and slot.lies == "top":  # the end of a row: its stitch is drawn along the side
                below.append((plane.point(u - OVAL, 0.0), plane.point(u + OVAL, 0.0)))
        laying.sky.raise_to(u, 0.0, slot.room / 2)
    return marks, below


def _placed(edge: Edge, arc: float) -> list[tuple[Side | None, Slot, float]]:
    """Every place with its side, none for one in a corner, and its u."""
    found: list[tuple[Side | None, Slot, float]] = []
    at = 0.0
    if edge.first is not None:
        ahead = arc * ahead_of(edge)
        at = edge.before + ahead
        found.append((None, edge.first, 0.0 if edge.first.split else at - ahead / 2))
    for side in edge.sides:
        found += [(side, slot, at + slot.at) for slot in side.slots]
        at += side.long
        if side.corner is not None and side.corner is not edge.first:
            found.append((None, side.corner, at + arc * side.turn / 2))
        at += side.bend + arc * max(0.0, side.turn)
    return found


def _drawn(
    fabric: Fabric, where: tuple[Side | None, Slot], plane: Rim, at: tuple[int, float], marks: list[Mark], below: list[tuple[Point, Point]],
) -> None:
    (side, slot), (s, u) = where, at
    kind, row = fabric.name(s), fabric.row[s]
    if side is None:
        mid = plane.point(u, -IN)
        if kind == "ch" and fabric.part_of(s) in ("edge", "assumed") and slot.lies == "top":
            way = plane.point(u, 0.0)
            across = (mid[1] - way[1]) / IN * OVAL, (way[0] - mid[0]) / IN * OVAL
            marks.append(Mark(s, "ch", ((mid[0] - across[0], mid[1] - across[1]),), (mid[0] + across[0], mid[1] + across[1]), "none", row))
        return
    if slot.lies in ("up", "down"):
        _along(fabric, slot, plane, (s, u), marks)
    elif kind == "ch" or slot.lies == "under":
        marks.append(Mark(s, "ch", (plane.point(u - OVAL, -IN),), plane.point(u + OVAL, -IN), "none", row))
    else:
        deep = height(kind)
        clear = all(abs(slot.at - end) > deep + AIR for end in _ends(side))
        if clear and fabric.part_of(s) != "assumed":
            marks.append(Mark(s, kind, (plane.point(u, -deep),), plane.point(u, 0.0), "none", row))
        else:
            below.append((plane.point(u - OVAL, 0.0), plane.point(u + OVAL, 0.0)))


def _ends(side: Side) -> list[float]:
    """Where a side has outer corners, in which its stitches would lie on those of the next."""
    return [0.0] * (not side.inner) + [side.long] * (side.turn >= 0)


def _along(fabric: Fabric, slot: Slot, plane: Rim, at: tuple[int, float], marks: list[Mark]) -> None:
    """The stitch at the end of a row, or the chains that stand for it, along the edge."""
    s, u = at
    tall, way = end_height(fabric, s), 1 if slot.lies == "up" else -1
    if fabric.name(s) != "ch":
        foot, top = plane.point(u - way * tall / 2, -SIDEWAYS), plane.point(u + way * tall / 2, -SIDEWAYS)
        marks.append(Mark(s, fabric.name(s), (foot,), top, "none", fabric.row[s]))
        return
    stack = stack_of(fabric, s)
    many = len(stack)
    half = min(OVAL, tall / many / 2 - 0.4)
    for k, chain in enumerate(stack):
        mid = u + way * tall * ((k + 0.5) / many - 0.5)
        one, two = plane.point(mid - half, -SIDEWAYS), plane.point(mid + half, -SIDEWAYS)
        marks.append(Mark(chain, "ch", (one,), two, "none", fabric.row[s]))


def _gaps(fabric: Fabric, section: Section, edge: Edge, laying: Laying, arc: float) -> list[list[Point]]:
    """The lines at the folds, from inside the edge to the last row."""
    at = {m.stitch: m for m in laying.marks}
    places = [(slot, u) for side, slot, u in _placed(edge, arc) if side is not None]
    folds = [(one + two) / 2 for (_, one), (slot, two) in pairwise(places) if slot.gap]
    found = []
    for u, band in zip(folds, section.left, strict=True):
        line = [laying.point(u, -GAP_IN), laying.point(u, 2.0)]
        for index in section.rows:
            here = sorted(s for s in band if fabric.row[s] == index)
            a, b = (at.get(here[0] - 1), at.get(here[-1] + 1)) if here else (None, None)
            if a is not None and b is not None:
                line.append(_middle(a.top, b.top))
        found.append(line)
    return found


def _middle(a: Point, b: Point) -> Point:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2


def _end(way: int, laying: Laying) -> float:
    us = [s.u for row in laying.held for s in row if s.column.what != "tab"]
    return min(us) if way > 0 else max(us)


def _beside(laying: Laying, plane: Rim) -> tuple[list[RowLine], list[list[Point]]]:
    """Numbers of an open edge beyond the end where each row starts, and arrows from there into it."""
    lines: list[RowLine] = []
    arrows: list[list[Point]] = []
    many = {1: 0, -1: 0}
    for line, row in zip(laying.lines, laying.held, strict=True):
        way = 1 if laying.fabric.rows[line.row].right_side else -1
        end = _end(way, laying) - way * BEFORE
        v = sum((s.low + s.high) / 2 for s in row) / len(row)
        heading = plane.heading if way > 0 else plane.heading + sum(turn for _, turn in plane.knots)
        out = ARROW + TAB_OFF + STEP * many[way] * abs(math.sin(heading))
        many[way] += 1
        arrows.append([plane.point(end - way * ARROW, v), plane.point(end, v)])
        lines.append(replace(line, tab=plane.point(end - way * out, v), end=plane.point(end, v)))
    return lines, arrows


def fold(fabric: Fabric, section: Section, edge: Edge, *, kept: float = KEPT) -> tuple[Edge, list[frozenset[int]]]:
    """An edge with the middle of its long sides left out, and the stitches that are: those of the edge, and all that stands on them."""
    spread(edge := deepcopy(edge), fabric)
    bands: list[frozenset[int]] = []
    for side in edge.sides:
        if side.long > FOLDED:
            band = _fold(fabric, section, side, kept)
            bands += [band] if band else []
    return edge, bands


def _fold(fabric: Fabric, section: Section, side: Side, kept: float) -> frozenset[int]:
    slots = side.slots
    low = next((k for k, s in enumerate(slots) if s.at >= kept), len(slots))
    high = next((k for k in range(len(slots), 0, -1) if slots[k - 1].at <= side.long - kept), 0)
    pairs = sorted(((i, j) for i in range(TRIED) for j in range(TRIED)), key=sum)
    for i, j in pairs:
        one, two = low + i, high - j
        if two - one < TRIED // 2:
            continue
        band = _band(fabric, section, {s for slot in slots[one:two] for s in slot.stitches})
        if band:
            slots[two].gap = True
            del slots[one:two]
            return frozenset(band)
    return frozenset()


def _band(fabric: Fabric, section: Section, out: set[int]) -> set[int]:
    found = set(out)
    for index in section.rows:
        more = standing_on(fabric, index, found)
        if not more:
            return set()
        found |= more
    return found


def gone(fabric: Fabric, section: Section) -> int:
    """How many symbols are left out of rows around an edge."""
    return sum(fabric.row[s] in section.rows for band in section.left for s in band)
