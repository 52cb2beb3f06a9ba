"""What an edging is worked into, place by place along the edge of its piece: sides, the corners between them, what stands on each place.

The order is that of the right side, against the clock; a first row that is worked from the wrong side is read backwards.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from loopwright.drawing.chart.columns import CHAIN_STEP, Column, columns
from loopwright.drawing.chart.symbols import AIR, height, width
from loopwright.measuring.corners import corners
from loopwright.measuring.courses import Course
from loopwright.model.fabric import Fabric

UP, LEFT, DOWN, RIGHT = math.pi / 2, math.pi, 1.5 * math.pi, 0.0
RIGHT_ANGLE, TURN = math.pi / 2, 2 * math.pi
HEADINGS = {"up": UP, "down": DOWN, "under": RIGHT, "top": LEFT}
SKIPPED = 6  # stitches between two that an edging is worked into, that are drawn
GROUP = 3  # stitches in the last place of a side that turn the corner
FEWEST_CORNERS = 3  # of an edge that is closed
BAR = 14.5  # room that a stitch's top takes
BOWED, BOW = 3, 0.6  # so many chains may bow, and need less of their length
FULL = GROUP * BAR - 1.0  # room of so many


@dataclass(slots=True)
class Slot:
    """One place of the edge.

    `lies`: how its stitch lies: "top" (its top is the edge), "up" and "down" (the stitch at the end of a row, along the edge or against
    it), "under" (a chain's free side). `room`: what it takes along the edge. `wide`: what stands on it. `at`: its middle along its side.
    `after`: what chains to the next used place need; `gap`: stitches before it are left out; `split`: a round begins and ends in it.
    """

    stitches: tuple[int, ...]
    lies: str
    room: float
    wide: float = 0.0
    after: float = 0.0
    at: float = 0.0
    gap: bool = False
    split: bool = False


@dataclass(slots=True)
class Side:
    """A straight part of the edge: its heading, its places in order, the place in the corner at its end, how far it turns there.

    A `turn` below nothing is an inner corner, where the piece goes on beyond the edge: the edge is rounded there, `bend` long, so that what
    stands on either side has room. `inner`: it begins after such a corner.
    """

    heading: float
    slots: list[Slot]
    corner: Slot | None = None
    turn: float = 0.0
    long: float = 0.0
    bend: float = 0.0
    inner: bool = False


@dataclass(slots=True)
class Edge:
    """The edge that rows are worked around.

    `first`: the corner place that a closed edge begins at; it is the corner of the last side. `before`: how far before that corner the
    rounds begin, so that what stands in it can spread to both hands. `rows`: those that go around. `left`: stitches that are left out.
    """

    sides: list[Side]
    closed: bool
    first: Slot | None = None
    before: float = 0.0
    rows: tuple[int, ...] = ()
    left: frozenset[int] = frozenset()

    @property
    def slots(self) -> list[Slot]:
        """All places, in order."""
        found = [self.first] if self.first is not None else []
        for side in self.sides:
            found += [*side.slots, *([side.corner] if side.corner is not None and side.corner is not self.first else [])]
        return found


def edge_of(fabric: Fabric, rows: Sequence[int], courses: Sequence[Course]) -> Edge | None:
    """The edge that rows go around; None where they go along one straight row, or around no shape that can be laid flat."""
    row = fabric.rows[rows[0]]
    slots = _used(fabric, rows[0])
    if len(slots) < GROUP or any(fabric.row[s] >= rows[0] for slot in slots for s in slot.stitches):
        return None
    closed = row.joined
    turning = _corner_stitches(fabric, rows[0], slots, courses)
    runs = _runs(fabric, slots)
    if runs is None or all(r[0].lies in ("top", "under") for r in runs) and not turning:
        return None
    sides = _sides(fabric, [_with_skipped(fabric, run) for run in runs], turning, closed=closed)
    if sides is None:
        return None
    if not closed and not any(s.turn for s in sides) and sides[0].slots and sides[0].slots[0].lies in ("top", "under"):
        return None
    first = None
    begins = sides[0].slots[0] if closed and sides[-1].corner is None and sides[0].slots else None
    if begins is not None and (set(begins.stitches) & turning or begins.split and begins.wide > FULL and begins.lies in ("top", "under")):
        first = sides[0].slots.pop(0)
        sides[-1].corner = first
    if closed:
        last = sides[-1]
        bent = [s for s in sides[:-1] if s.turn]
        if all(s.heading == LEFT for s in sides):  # the rim of a motif, or of motifs joined: corners share the turn
            many = len(bent) + 1
            if many < FEWEST_CORNERS:
                return None
            for s in (*bent, last):
                s.turn = TURN / many
        else:
            last.turn = _turn(last.heading, sides[0].heading) or 0.0
            sides[0].inner = last.turn < 0
        if abs(sum(s.turn for s in sides) - TURN) > 1e-6 or first is not None and last.turn < 0:
            return None
    return Edge(sides, closed, first, rows=tuple(rows))


def _used(fabric: Fabric, index: int) -> list[Slot]:
    """The places that a row is worked into, in order, each with the room that stands on it."""
    row = fabric.rows[index]
    found: list[Slot] = []
    chains = 0
    ordered = [c for c in columns(fabric, row, tab=False) if c.what in ("stitch", "chain", "stack") and not c.turning]
    for c in ordered if row.right_side else reversed(ordered):
        if c.what == "chain":
            chains += 1
            continue
        if not c.parents:
            continue
        over = chains * CHAIN_STEP * (BOW if chains >= BOWED else 1.0)
        if found and found[-1].stitches == c.parents and found[-1].lies == _lies(fabric, c):
            found[-1].wide += c.wide + over
        else:
            if found:
                found[-1].after = over
            found.append(Slot(c.parents, _lies(fabric, c), 0.0, c.wide))
        chains = 0
    if len(found) > 1 and (found[0].stitches, found[0].lies) == (found[-1].stitches, found[-1].lies):
        found[0].wide += found.pop().wide
        found[0].split = True
    for slot in found:
        slot.room = _room(fabric, slot)
    return found


def _lies(fabric: Fabric, c: Column) -> str:
    if c.place == "row-end":
        return "end"
    if c.place == "underside" or c.place in ("space", "chain") and _foundation(fabric, c.parents[0]):
        return "under"
    return "top"


def _foundation(fabric: Fabric, stitch: int) -> bool:
    row = fabric.rows[fabric.row[stitch]]
    return all(fabric.name(s) == "ch" for s in range(row.start, row.end)) and fabric.part_of(stitch) != "assumed"


def _room(fabric: Fabric, slot: Slot) -> float:
    first = slot.stitches[0]
    if slot.lies == "end":
        return end_height(fabric, first) + AIR
    if fabric.name(first) == "ch":
        return CHAIN_STEP * len(slot.stitches)
    return max(BAR, width(fabric.name(first)) + 2.0) * len(slot.stitches)


def end_height(fabric: Fabric, stitch: int) -> float:
    """How tall the stitch at the end of a row is."""
    kind = fabric.kinds[fabric.counts_as.get(stitch, fabric.kind[stitch])]
    return height("sc" if kind == "ch" else kind)


def stack_of(fabric: Fabric, stitch: int) -> range:
    """The chains that stand for a stitch, up to their last."""
    first = stitch
    while first - 1 >= fabric.rows[fabric.row[stitch]].start and fabric.part_of(first - 1) in ("stands", "turning"):
        first -= 1
    return range(first, stitch + 1)


def _corner_stitches(fabric: Fabric, index: int, slots: Sequence[Slot], courses: Sequence[Course]) -> set[int]:
    """Stitches below the row at which the edge turns: corners of the rows below, else places where the row itself turns a corner."""
    found: set[int] = set()
    below = {fabric.row[slot.stitches[0]] for slot in slots if slot.lies == "top"}
    for at in below:
        if fabric.part_of(fabric.rows[at].start) != "assumed" and len(below) == 1:
            found |= _at_corners(fabric, courses[at], chained=True)
    if found:
        return found
    own = _at_corners(fabric, courses[index], chained=False)
    for slot in slots:
        if slot.lies == "top" and any(set(_stands_in(fabric, s)) & set(slot.stitches) for s in own):
            found |= set(slot.stitches)
    return found


def _at_corners(fabric: Fabric, course: Course, *, chained: bool) -> set[int]:
    edge = [s for s in range(course.row.start, course.row.end) if fabric.part_of(s) in ("edge", "counts")]
    found = set[int]()
    for corner in corners(fabric, course):
        if corner.chained or not chained:
            at = corner.at * max(1, course.places)
            found |= {edge[min(len(edge) - 1, max(0, n))] for n in (math.floor(at), math.ceil(at))}
    return found


def _stands_in(fabric: Fabric, stitch: int) -> tuple[int, ...]:
    """What a stitch was worked into, or the stitch before a chain."""
    first = fabric.rows[fabric.row[stitch]].start
    while stitch > first and not fabric.parents(stitch):
        stitch -= 1
    return fabric.parents(stitch)


def _runs(fabric: Fabric, slots: Sequence[Slot]) -> list[list[Slot]] | None:
    """Places cut where they go over from one edge of the piece to another; ends of rows get their way."""
    runs: list[list[Slot]] = [[slots[0]]]
    for one, two in pairwise(slots):
        same = one.lies == two.lies and (one.lies != "top" or fabric.row[one.stitches[0]] == fabric.row[two.stitches[0]])
        if same:
            runs[-1].append(two)
        else:
            runs.append([two])
    for run in runs:
        if run[0].lies != "end":
            continue
        rows = [fabric.row[s.stitches[0]] for s in run]
        if all(a < b for a, b in pairwise(rows)) and (len(rows) > 1 or _on_the_right(fabric, run[0].stitches[0])):
            way = "up"
        elif all(a > b for a, b in pairwise(rows)):
            way = "down"
        else:
            return None
        for slot in run:
            slot.lies = way
    return runs


def _on_the_right(fabric: Fabric, stitch: int) -> bool:
    row = fabric.rows[fabric.row[stitch]]
    return (2 * stitch < row.start + row.end) == row.right_side


def _with_skipped(fabric: Fabric, run: list[Slot]) -> list[Slot]:
    """Places with the stitches between them that are skipped."""
    found = [run[0]]
    for one, two in pairwise(run):
        a, b = sorted((one.stitches[-1] if one.stitches[-1] < two.stitches[0] else one.stitches[0], two.stitches[0]))
        between = [s for s in range(a + 1, b) if fabric.part_of(s) in ("edge", "counts", "assumed")] if one.lies in ("top", "under") else []
        between = [s for s in between if s not in two.stitches and s not in one.stitches]
        if len(between) <= SKIPPED and b - a < 4 * SKIPPED:
            skipped = [Slot((s,), one.lies, 0.0) for s in (between if one.stitches[0] < two.stitches[0] else reversed(between))]
            for slot in skipped:
                slot.room = _room(fabric, slot)
            found += skipped
        found.append(two)
    return found


def _sides(fabric: Fabric, runs: Sequence[list[Slot]], turning: set[int], *, closed: bool) -> list[Side] | None:
    sides: list[Side] = []
    if closed and not _stands_beside(fabric, runs[-1], runs[0]):
        return None
    for k, run in enumerate(runs):
        heading = HEADINGS[run[0].lies]
        if k and not _stands_beside(fabric, runs[k - 1], run):
            return None
        if sides:
            turn = _turn(sides[-1].heading, heading)
            if turn is None:
                return None
            if not turn:
                sides[-1].slots += run
                continue
            sides[-1].turn = turn
            sides.append(Side(heading, list(run), inner=turn < 0))
            if turn < 0:
                continue
            for here, at in ((sides[-2].slots, -1), (sides[-1].slots, 0)):
                if sides[-2].corner is None and here and here[at].wide > FULL and here[at].lies in ("top", "under"):
                    sides[-2].corner = here.pop(at)
            continue
        sides.append(Side(heading, list(run)))
    found: list[Side] = []
    for side in sides:
        found += _cut(side, turning, begins=closed and not found)
    return found


def _stands_beside(fabric: Fabric, one: Sequence[Slot], two: Sequence[Slot]) -> bool:
    """Whether rows that meet the free stitches of another row at an inner corner stand above it, as they are drawn there."""
    turn = _turn(HEADINGS[one[0].lies], HEADINGS[two[0].lies])
    tops, ends = (one, two) if one[0].lies == "top" else (two, one)
    if turn is None or turn >= 0 or tops[0].lies != "top" or ends[0].lies not in ("up", "down"):
        return True
    return min(fabric.row[s.stitches[0]] for s in ends) > fabric.row[tops[0].stitches[0]]


def _cut(side: Side, turning: set[int], *, begins: bool) -> list[Side]:
    """A side cut at the corners that lie within it."""
    found = [Side(side.heading, [], inner=side.inner)]
    for k, slot in enumerate(side.slots):
        if set(slot.stitches) & turning and slot.lies == "top" and slot.wide and not (begins and k == 0):
            found[-1].corner, found[-1].turn = slot, RIGHT_ANGLE
            found.append(Side(side.heading, []))
        else:
            found[-1].slots.append(slot)
    found[-1].corner, found[-1].turn = side.corner, side.turn
    return found


def _turn(one: float, two: float) -> float | None:
    """How far the edge turns from one heading to another: nothing, a right angle to either hand; None for back on itself."""
    turn = (two - one + RIGHT_ANGLE) % TURN - RIGHT_ANGLE
    return None if turn > RIGHT_ANGLE + 1e-6 else 0.0 if abs(turn) < 1e-6 else turn
