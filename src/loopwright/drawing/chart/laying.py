"""Rows laid on a plane: each stitch over what it was worked into, each row above everything below it."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from loopwright.drawing.chart.along import PITCH, along
from loopwright.drawing.chart.arches import arch, cut_to, knob, loop_beside, stacked
from loopwright.drawing.chart.columns import ARCH, CHAIN_STEP, Column, columns
from loopwright.drawing.chart.drawn import Frame, Mark, Point, RowLine
from loopwright.drawing.chart.planes import Around, Plane, Rim, Ring, Strip
from loopwright.drawing.chart.rising import rise
from loopwright.drawing.chart.skyline import Skyline
from loopwright.drawing.chart.slips import lay_slips, take_slips
from loopwright.drawing.chart.stood import FAN, Stood, part_ends, runs
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.drawing.chart.telling import told
from loopwright.model.fabric import Fabric

FAR = 400.0
LOOP_FROM = 40.0  # how far behind a row's first stitch the row below may have ended, for a loop to come up from there
BESIDE = 7.0  # a chain that stands in a fan stands so far beside its foot


UNEVEN, OFF_STEM = 20.0, 4.0  # of two stitches in one place: difference in height; that chains keep off the taller
STAND_OUT = ("bobble", "popcorn", "puff")
LEG_REACH = 9.0  # that a chain keeps away from the legs of a decrease


@dataclass(slots=True)
class Laying:
    """What has been laid so far.

    `tops`: u and v of every stitch's top; `undersides`: of the free side of chains; `sides`: of stitches at the ends of rows. `lead`:
    columns of the foundation that belong to the first row. `seam`: u where rounds begin; `sector`: u where a fan begins, and how much
    of a turn it is spread over. `floor`: where the first row's feet stand if they
    stand on nothing. `hints`: u of stitches, where all rows have been settled together; `left`: stitches left out; `grown`: by row, how
    much wider than it needs a stitch stands, for what comes above it, but on `tight` stitches; `held`: the rows laid, in order of u.
    """

    fabric: Fabric
    plane: Plane
    floor: float = 0.0
    tops: dict[int, tuple[float, float]] = field(default_factory=dict)
    undersides: dict[int, tuple[float, float]] = field(default_factory=dict)
    sides: dict[int, tuple[float, float]] = field(default_factory=dict)
    marks: list[Mark] = field(default_factory=list)
    lines: list[RowLine] = field(default_factory=list)
    frames: list[Frame] = field(default_factory=list)
    sky: Skyline = field(init=False)
    level: float = field(init=False)
    line: float = 0.0
    seam: float = 0.0
    sector: tuple[float, float] = (0.0, 2 * math.pi)
    pitch: float = PITCH
    lead: list[Column] = field(default_factory=list)
    left: frozenset[int] = frozenset()
    hints: dict[int, float] = field(default_factory=dict)
    grown: dict[int, float] = field(default_factory=dict)
    tight: set[int] = field(default_factory=set)
    held: list[list[Stood]] = field(default_factory=list)
    ends: set[int] = field(default_factory=set)
    last: set[int] = field(default_factory=set)
    end: int = -1

    def __post_init__(self) -> None:
        whole = self.plane.whole
        self.sky = Skyline(3.0 if math.isinf(whole) else whole / 720, whole)
        self.level = self.floor

    def row(self, index: int, way: int) -> None:
        """Lays a row; `way`: 1 where it goes towards larger u if its feet do not tell."""
        row = self.fabric.rows[index]
        found = columns(self.fabric, row, tab=self.plane.closed, left=self.left)
        for c in found if self.grown.get(index, 1.0) > 1.0 else ():
            c.wide *= self.grown[index] if c.what == "stitch" and not self.tight.intersection(c.parents) else 1.0
        front = 1 if self.plane.closed else 0
        stood = [self._stand(c) for c in (*found[:front], *self.lead, *found[front:])]
        self.lead = []
        _fit(stood)
        if not any(s.column.stitches for s in stood):
            return
        way = self._unwrap(stood, way)
        slips = take_slips(stood)
        if not self.plane.closed:
            part_ends(stood)
        ordered = stood if way > 0 else stood[::-1]
        self._heights(ordered)
        along(self, ordered, way)
        if self.plane.closed:
            self._near(ordered)
        lay_slips(self, slips, index, way)
        rise(self, ordered)
        self.held.append(ordered)
        self._draw(ordered, index)
        told(self, ordered, index, way)
        body = [s for s in stood if s.column.what in ("stitch", "chain", "stack")]
        self.last = {n for s in stood for n in s.column.stitches}
        self.end = body[-1].column.stitches[-1] if body else self.end
        self.ends = {n for s in (*body[:3], *body[-2:]) for n in s.column.stitches}

    def _stand(self, column: Column) -> Stood:
        if column.kind == "spike":
            column.parents = self._deeper(column.parents)
        tops = self.undersides if column.place == "underside" else self.sides if column.place == "row-end" else self.tops
        known = [p for p in column.parents if p in tops or p in self.tops]
        places = [(tops.get(p) or self.tops[p]) for p in known]
        if column.place in ("space", "between") and not self.plane.closed:  # an unrolled round may close between its two ends
            places = [p for p in places if abs(p[0] - places[0][0]) < FAR]
        found = Stood(column, [u for u, _ in places], known=bool(places))
        if column.what == "stack":
            found.tall = stacked(self.fabric, column)
        elif column.what == "stitch":
            found.tall = height(column.kind)
        if places:
            found.low = max(v for _, v in places) + AIR
            if column.counts_as and isinstance(self.plane, Around):  # clear of the feet beside it, which meet in one point
                found.low += AIR
            found.key = (column.parents, column.place) if column.place != "row-end" else (column.stitches[0],)
        return found

    def _deeper(self, parents: tuple[int, ...]) -> tuple[int, ...]:
        """A spike goes down into what the stitch below it was worked into, where the words say no more than that it is one."""
        deeper = tuple(g for p in parents for g in self.fabric.parents(p))
        return deeper if deeper and all(p in self.last for p in parents) and all(g in self.tops for g in deeper) else parents

    def _unwrap(self, stood: Sequence[Stood], way: int) -> int:
        """Brings the feet into one turn after another and says which way the row goes."""
        last: float | None = None
        trend = 0.0
        whole = self.plane.whole if self.plane.closed else 0.0
        for s in stood:
            if not s.aims or s.column.what == "join":
                continue
            for i, u in enumerate(s.aims):
                near = u if last is None else last
                if whole:
                    turns = round((near - u) / whole) if last is not None else -math.floor(u / whole + 0.5)
                    s.aims[i] = u + turns * whole
                trend += s.aims[i] - near
                last = s.aims[i]
            if s.column.place in ("space", "ring", "between"):
                s.aims = [sum(s.aims) / len(s.aims)]
                last = s.aims[0]
        return way if abs(trend) < 1e-6 else (1 if trend > 0 else -1)

    def _near(self, stood: Sequence[Stood]) -> None:
        """Feet in the same turn as their tops."""
        whole = self.plane.whole
        for s in stood:
            turns = whole * round((s.u - s.aims[0]) / whole) if s.aims else 0.0
            if turns:
                s.aims = [u + turns for u in s.aims]
                if isinstance(s.key, tuple) and len(s.key) == 3 and isinstance(s.key[1], float):
                    s.key = (s.key[0] + turns, s.key[1] + turns, s.key[2])

    def _heights(self, stood: Sequence[Stood]) -> None:
        known = sorted(s.low for s in stood if s.known and s.column.what in ("stitch", "stack"))
        usual = known[len(known) // 2] if known else self.level
        sure = [i for i, s in enumerate(stood) if s.known]
        tallest = max((s.tall for s in stood), default=0.0)
        for i, s in enumerate(stood):
            if s.column.what == "chain":
                continue
            if not s.known:
                at = bisect_left(sure, i)
                beside = min(sure[max(0, at - 1) : at + 1], key=lambda j: abs(j - i), default=None)
                s.low = usual if beside is None else stood[beside].low
                if s.column.what == "join":
                    s.low += tallest / 3
                elif s.column.turning and isinstance(self.plane, Around):
                    s.low += 0.75 * tallest  # out of the way of the stitches that fan out at the seam
                if s.column.kind == "sl st" and s.column.what == "stitch":  # into another piece: it lies on the edge
                    s.low += tallest - s.tall
            s.high = s.low + s.tall

    def foot(self, s: Stood) -> list[float]:
        """U of its feet."""
        if isinstance(s.key, tuple) and len(s.key) == 3 and isinstance(s.key[1], float):
            aside = self._beside(s) if s.column.what == "stack" else 0.0
            return [s.key[1] + max(-aside, min(aside, s.u - s.key[1]))]
        return s.aims if s.known and s.aims and s.column.what != "join" else [s.u]

    def _beside(self, s: Stood) -> float:
        """How far beside its foot a chain of a fan stands, in u; at the corner of an edge it is the foot that needs the room."""
        if not isinstance(self.plane, Rim) or not isinstance(s.key, tuple):
            return self.half(s, BESIDE)
        foot = float(s.key[1])
        return abs(self.plane.place(self.plane.length(foot, s.low) + math.copysign(BESIDE, s.u - foot), s.low) - foot)

    def half(self, s: Stood, units: float) -> float:
        """A length as a way in u at its top."""
        at = self.plane.length(s.u, max(s.high, 1.0))
        return self.plane.place(at + units, max(s.high, 1.0)) - s.u

    def point(self, u: float, v: float) -> Point:
        """Where a place lies, units of the drawing."""
        return self.plane.point(u, v)

    def _draw(self, stood: Sequence[Stood], index: int) -> None:
        right = self.fabric.rows[index].right_side
        fresh: list[tuple[float, float, float]] = []
        for s in stood:
            column = s.column
            if column.what in ("tab", "chain"):
                continue
            feet = self.foot(s)
            if column.kind == "sl st" and len(feet) == 1:  # a dot, however far it stands from its foot
                feet = [s.u]
                s.low = s.high - s.tall
            if column.what == "join":
                s.high = s.low + 5.0
            self._standing(s, feet, right=right)
            for stitch in column.stitches:
                self.tops[stitch] = (s.u, s.high)
            half = self.half(s, 6.5 if column.what != "join" else 3.0)
            fresh.append((s.u, s.high, half))
            for f in feet:
                for t in (0.0, 0.2, 0.4, 0.6, 0.8):
                    self.sky.raise_to(f + (s.u - f) * t, s.low + (s.high - s.low) * t, self.half(s, 2.0 if len(feet) == 1 else LEG_REACH))
            if column.knob:
                fresh.append(knob(self.fabric, self.plane, column.knob, (s.u, s.high), index, self.marks))
        first = next((s for s in stood if s.column.what in ("stitch", "stack") and not s.column.turning), None)
        for run, before, beyond in runs(stood):
            after = beyond
            if after is None and before is not None and first is not None and isinstance(self.plane, Ring) and self.plane.closed:
                after = replace(first, u=first.u + self.plane.whole)  # the last arch of a round ends where the round began
            if (before is None or after is None) and self._from_below(run, before or after, index, fresh):
                continue
            self._arch(run, before, after, index, fresh)
        for u, v, half in fresh:
            self.sky.raise_to(u, v, half)
        self.level = max((v for _, v, _ in fresh), default=self.level) + AIR

    def _standing(self, s: Stood, feet: Sequence[float], *, right: bool) -> None:
        column, count = s.column, len(s.column.stitches)
        place = column.place
        for k, stitch in enumerate(column.stitches):
            low, high = s.low + (s.high - s.low) * k / count, s.low + (s.high - s.low) * (k + 1) / count
            at = [f + (s.u - f) * k / count for f in feet]
            to = feet[0] + (s.u - feet[0]) * (k + 1) / count if count > 1 else s.u
            points = tuple(self.point(u, low) for u in at)
            way: tuple[Point, ...] = ()
            if s.bend is not None:
                foot, under, aside = s.bend
                way = (self.point(foot, under), self.point(aside, under + 2.0))
            seen = place if right else "ws:" + place
            self.marks.append(Mark(stitch, self.fabric.name(stitch), points, self.point(to, high), seen, self.fabric.row[stitch], way))

    def _off_the_stem(self, before: Stood | None, after: Stood | None) -> float:
        """How far chains between two stitches in one place keep towards the shorter, away from the stem of the taller."""
        if before is None or after is None or not before.column.parents or before.column.parents != after.column.parents:
            return 0.0
        uneven = before.tall - after.tall
        return math.copysign(OFF_STEM, uneven) if abs(uneven) > UNEVEN else 0.0

    def _from_below(self, run: Sequence[Stood], beside: Stood | None, index: int, fresh: list[tuple[float, float, float]]) -> bool:
        """Draws the loop that a row begins with, from the end of the row below up to its first stitch; whether it is one."""
        own, row, start = {s.column.stitches[0] for s in run}, self.fabric.rows[index], self.tops.get(self.end)
        worked = any(own.intersection(self.fabric.parents(s)) for s in range(row.start, row.end))
        first = min(own) <= row.start and len(run) >= ARCH
        if not isinstance(self.plane, Strip) or self.plane.wave or beside is None or start is None or not first or worked:
            return False
        way = 1 if beside.u < run[0].u else -1
        if way * (start[0] - beside.u) < -LOOP_FROM:  # an unrolled round: the one below ended at the other side
            return False
        dots = loop_beside(start, (beside.u, beside.high), way, len(run))
        for s, (p, q) in zip(run if way < 0 else run[::-1], pairwise(dots), strict=True):
            stitch = s.column.stitches[0]
            s.u, s.high = (p[0] + q[0]) / 2, (p[1] + q[1]) / 2 + 3.0
            self.tops[stitch] = (s.u, s.high)
            a, b = cut_to(p, q)
            self.marks.append(Mark(stitch, "ch", (a,), b, "none", self.fabric.row[stitch]))
            fresh.append((s.u, max(p[1], q[1]) + 1.0, 6.0))
        return True

    def _arch(
        self, run: Sequence[Stood], before: Stood | None, after: Stood | None, index: int, fresh: list[tuple[float, float, float]]
    ) -> None:
        ends = [(s.u, s.high + (3.0 if len(s.aims) > FAN else -2.0)) for s in (before, after) if s is not None]
        if not ends:
            ends = [(run[0].u, self.level)]
        laid = arch(self.plane, self.sky, [s.u for s in run], ends, held=before is not None and after is not None)
        aside = self._off_the_stem(before, after)
        for s, (at, v, reach, *ends_of) in zip(run, laid, strict=True):
            stitch, u = s.column.stitches[0], self.plane.place(self.plane.length(at, v) + aside, v) if aside else at
            (x0, y0), (x1, y1) = self.point(at, v), self.point(u, v)
            a, b = ((x + x1 - x0, y + y1 - y0) for x, y in ends_of)
            s.u, s.high = u, v + 3.0
            self.tops[stitch] = (u, v + 3.0)
            self.marks.append(Mark(stitch, "ch", (a,), b, "none", self.fabric.row[stitch]))
            fresh.append((u, reach, self.half(s, CHAIN_STEP / 2)))
            if s.column.knob:
                fresh.append(knob(self.fabric, self.plane, s.column.knob, (u, v + 3.0), index, self.marks))


def _fit(stood: Sequence[Stood]) -> None:
    """Bobbles and their like stand out of the fabric, not above their row: they are as tall as what they stand among."""
    among = [s.tall for s in stood if s.column.what == "stitch" and not _stands_out(s) and s.column.kind != "sl st"]
    for s in stood if among else ():
        if _stands_out(s):
            s.tall = min(s.tall, max(among))


def _stands_out(s: Stood) -> bool:
    return s.column.kind in STAND_OUT or s.column.kind.endswith("tog") and len(s.column.parents) == 1
