"""Planes that rows are laid on: a strip, a ring, a polygon, a ring round a chain. A place is (u, v): u along the row, v outwards.

`s` is the length along a row at height v; every plane turns u into s and back, and a place into x and y.
"""

from __future__ import annotations

import math
from bisect import bisect_right

from loopwright.drawing.chart.drawn import Point
from loopwright.record import record


@record
class Strip:
    """Rows, one above the other. `wave`: of a ripple, how far the row lies up or down at each u, in order."""

    wave: tuple[Point, ...] = ()
    closed: bool = False

    @property
    def whole(self) -> float:
        """U of a whole turn: there is none."""
        return math.inf

    def span(self, v: float) -> float:  # noqa: ARG002 - as the other planes have it
        """Length of a whole turn at height v: there is none."""
        return math.inf

    def length(self, u: float, v: float) -> float:  # noqa: ARG002 - as the other planes have it
        """U as a length along the row at height v."""
        return u

    def place(self, s: float, v: float) -> float:  # noqa: ARG002 - as the other planes have it
        """The u of a length along the row at height v."""
        return s

    def reach(self, span: float) -> float:  # noqa: ARG002 - as the other planes have it
        """The height at which a turn is so long."""
        return 0.0

    def point(self, u: float, v: float) -> Point:
        """Where a place lies."""
        return u, v + self._up(u)

    def _up(self, u: float) -> float:
        if not self.wave:
            return 0.0
        at = bisect_right(self.wave, (u, math.inf))
        if at in (0, len(self.wave)):
            return self.wave[min(at, len(self.wave) - 1)][1]
        (a, one), (b, two) = self.wave[at - 1], self.wave[at]
        return one + (two - one) * (u - a) / (b - a)


@record
class Ring:
    """Rounds about a centre: circles, or polygons with `sides` whose corners lie at whole sides after `turn` (in u)."""

    sides: int = 0
    turn: float = 0.0
    closed: bool = True

    @property
    def whole(self) -> float:
        """U of a whole turn."""
        return 2 * self.sides * math.tan(math.pi / self.sides) if self.sides else 2 * math.pi

    def span(self, v: float) -> float:
        """Length of a whole turn at height v."""
        return self.whole * v

    def length(self, u: float, v: float) -> float:
        """U as a length along the round at height v."""
        return u * v

    def place(self, s: float, v: float) -> float:
        """The u of a length along the round at height v."""
        return s / v if v else 0.0

    def reach(self, span: float) -> float:
        """The height at which a turn is so long."""
        return span / self.whole

    def point(self, u: float, v: float) -> Point:
        """Where a place lies."""
        if not self.sides:
            return v * math.cos(u), v * math.sin(u)
        side = self.whole / self.sides
        n, along = divmod(u - self.turn, side)
        angle = (n + 1) * 2 * math.pi / self.sides - math.pi / 2  # a side lies flat at the bottom
        across = v * (2 * along / side - 1) * math.tan(math.pi / self.sides)
        return v * math.cos(angle) - across * math.sin(angle), v * math.sin(angle) + across * math.cos(angle)


@record
class Around:
    """Rounds about a straight chain of length `straight`; u = 0 at its right-hand end.

    In the straight parts u is a length, in the ends an angle; v is the distance from the chain.
    """

    straight: float
    closed: bool = True

    @property
    def whole(self) -> float:
        """U of a whole turn."""
        return 2 * math.pi + 2 * self.straight

    def span(self, v: float) -> float:
        """Length of a whole turn at height v."""
        return 2 * math.pi * v + 2 * self.straight

    def reach(self, span: float) -> float:
        """The height at which a turn is so long."""
        return max(0.0, span - 2 * self.straight) / (2 * math.pi)

    def _knots(self) -> tuple[tuple[float, bool], ...]:
        q = math.pi / 2
        return ((q, True), (self.straight, False), (2 * q, True), (self.straight, False), (q, True))

    def length(self, u: float, v: float) -> float:
        """U as a length along the round at height v."""
        turns, left = divmod(u, self.whole)
        found = turns * self.span(v)
        for long, bent in self._knots():
            here = min(long, left)
            found += here * v if bent else here
            left -= here
        return found

    def place(self, s: float, v: float) -> float:
        """The u of a length along the round at height v."""
        turns, left = divmod(s, self.span(v))
        found = turns * self.whole
        for long, bent in self._knots():
            whole = long * v if bent else long
            here = min(whole, left)
            found += here / v if bent and v else here
            left -= here
        return found

    def point(self, u: float, v: float) -> Point:
        """Where a place lies; the middle of the chain is the origin."""
        left, half, q = u % self.whole, self.straight / 2, math.pi / 2
        if left <= q:
            return half + v * math.cos(left), v * math.sin(left)
        left -= q
        if left <= self.straight:
            return half - left, v
        left -= self.straight
        if left <= 2 * q:
            return -half + v * math.cos(q + left), v * math.sin(q + left)
        left -= 2 * q
        if left <= self.straight:
            return -half + left, -v
        left -= self.straight
        return half + v * math.cos(3 * q + left), v * math.sin(3 * q + left)


@record
class Rim:
    """Rows around the edge of a piece: straight sides, and the corners between them.

    `knots`, in order: the length of a side with no turn, a corner's turn in radians with no length, or the length of an inner corner's
    bend and its turn below nothing. `heading`: of the first side, in radians; the piece lies on the left hand. In sides and bends u is a
    length, at outer corners `arc` times an angle; v is the distance outwards.
    """

    knots: tuple[tuple[float, float], ...]
    heading: float
    closed: bool = False
    arc: float = 40.0

    @property
    def whole(self) -> float:
        """U of a whole turn; infinite where the edge is open."""
        return self.long if self.closed else math.inf

    @property
    def long(self) -> float:
        """U of the last end."""
        return sum(self._in_u(long, turn) for long, turn in self.knots)

    def _in_u(self, long: float, turn: float) -> float:
        return long + self.arc * max(0.0, turn)

    def span(self, v: float) -> float:
        """Length of a whole turn at height v."""
        return sum(long + v * turn for long, turn in self.knots) if self.closed else math.inf

    def reach(self, span: float) -> float:
        """The height at which a turn is so long."""
        turns = sum(turn for _, turn in self.knots)
        return max(0.0, span - sum(long for long, _ in self.knots)) / turns if self.closed and turns else 0.0

    def length(self, u: float, v: float) -> float:
        """U as a length along the edge at height v."""
        turns, left = divmod(u, self.long) if self.closed else (0.0, u)
        found = turns * self.span(v) if turns else 0.0
        if left < 0:
            return left
        for long, turn in self.knots:
            whole = self._in_u(long, turn)
            here = min(whole, left)
            found += here * (long + v * turn) / whole if turn else here
            left -= here
        return found + left

    def place(self, s: float, v: float) -> float:
        """The u of a length along the edge at height v."""
        turns, left = divmod(s, self.span(v)) if self.closed else (0.0, s)
        found = turns * self.long
        if left < 0:
            return left
        for long, turn in self.knots:
            whole = long + v * turn
            here = min(whole, left)
            found += here * self._in_u(long, turn) / whole if turn and whole > 0 else here
            left -= here
        return found + left

    def point(self, u: float, v: float) -> Point:
        """Where a place lies; the first side begins at the origin."""
        left = u % self.long if self.closed else u
        x, y, way = 0.0, 0.0, self.heading
        for k, (long, turn) in enumerate(self.knots):
            here = self._in_u(long, turn)
            if left <= here or k + 1 == len(self.knots):
                break
            left -= here
            if turn < 0:
                x, y = self._bent(x, y, way, long / turn, turn)
            else:
                x, y = x + long * math.cos(way), y + long * math.sin(way)
            way += turn
        if turn < 0:
            x, y = self._bent(x, y, way, long / turn, turn * min(1.0, left / long))
            way, left = way + turn * min(1.0, left / long), max(0.0, left - long)
        elif turn:
            way, left = way + min(left / self.arc, turn), max(0.0, left - self.arc * turn)
        return x + left * math.cos(way) + v * math.sin(way), y + left * math.sin(way) - v * math.cos(way)

    @staticmethod
    def _bent(x: float, y: float, way: float, radius: float, turn: float) -> Point:
        """Where an edge that bends at a radius (below nothing to the right hand) has come to after a turn."""
        return x + radius * (math.sin(way + turn) - math.sin(way)), y - radius * (math.cos(way + turn) - math.cos(way))


Plane = Strip | Ring | Around | Rim
