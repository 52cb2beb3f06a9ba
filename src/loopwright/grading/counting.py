"""Lengths to whole counts and back, and counts to the legal counts beside them.

Not the choice between several blanks that hang together: that is made where a design is graded. Lengths are millimetres; a pitch is the
width of one stitch or the height of one row. The formulas are the arithmetic of gauge; worked examples with their sources stand in
tests/outside.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction

from loopwright.record import record

Number = float | Fraction
HALF = Fraction(1, 2)


def half_up(value: Number) -> int:
    """The nearest whole number; a half goes up, as makers round (16.5 -> 17), not to the even neighbour."""
    return math.floor(value + HALF)


def pitch_mm(count: Number, over_mm: Number) -> Number:
    """Width of one stitch (height of one row) when `count` of them measure `over_mm`. Raises ValueError unless both are above zero."""
    if count <= 0 or over_mm <= 0:
        raise ValueError("a gauge needs a count and a length above zero")
    return over_mm / count


def exact_count(length_mm: Number, pitch: Number) -> Number:
    """How many stitches or rows of `pitch` mm make `length_mm`, unrounded: length / pitch."""
    return length_mm / pitch


def count_for(length_mm: Number, pitch: Number) -> int:
    """The whole number of stitches or rows nearest to a length; a half goes up."""
    return half_up(exact_count(length_mm, pitch))


def length_mm(count: int, pitch: Number) -> Number:
    """What `count` stitches or rows measure: count * pitch."""
    return count * pitch


@record
class Legal:
    """The counts that a stitch pattern allows: `multiple` * n + `plus`, never under `least`."""

    multiple: int = 1
    plus: int = 0
    least: int = 1

    def __post_init__(self) -> None:
        if self.multiple < 1:
            raise ValueError(f"a multiple of {self.multiple} is none: it starts at 1")

    def allows(self, count: int) -> bool:
        """Whether a count is legal."""
        return count >= self.least and (count - self.plus) % self.multiple == 0

    def below(self, target: Number) -> int | None:
        """The largest legal count not above the target; None where there is none."""
        found = self.multiple * math.floor((target - self.plus) / self.multiple) + self.plus
        return found if found >= self.least else None

    def above(self, target: Number) -> int:
        """The smallest legal count not below the target."""
        floor = max(target, self.least)
        return self.multiple * math.ceil((floor - self.plus) / self.multiple) + self.plus

    def nearest(self, target: Number) -> tuple[int, ...]:
        """The legal count nearest to the target, or both where two are equally near (the lower first)."""
        low, high = self.below(target), self.above(target)
        if low is None or low == high:
            return (high,)
        gap = (target - low) - (high - target)
        return (low,) if gap < 0 else (high,) if gap > 0 else (low, high)


def same_parity(value: Number, like: int) -> int:
    """The whole number nearest to `value` that is even when `like` is even and odd when it is odd; the lower one of two.

    So that two ends of a piece differ by whole pairs: 38.75 beside 60 gives 38, not 39.
    """
    return Legal(2, like % 2, least=0).nearest(value)[0]


def converted(count: Number, theirs: Number, mine: Number) -> Number:
    """A count of someone else's gauge in mine, unrounded: count * mine / theirs (both as stitches or rows over one same length)."""
    return count * mine / theirs


def share(count: int, part: Number, legal: Legal) -> int:
    """A share of a count, at the nearest legal count: nine tenths of 40 in fours is 36."""
    return legal.nearest(count * part)[0]


def with_ease_mm(body_mm: Number, add_mm: Number = 0, factor: Number = 1) -> Number:
    """Finished measure out of a body's: body * factor + add; close-fitting pieces have add below 0 or a factor below 1."""
    return body_mm * factor + add_mm


def implied_pitches_mm(counts: Sequence[int], lengths_mm: Sequence[Number]) -> tuple[Number, ...]:
    """The stitch width that each size of a pattern implies: width / stitches. One pattern has one gauge, so they should agree."""
    return tuple(pitch_mm(c, w) for c, w in zip(counts, lengths_mm, strict=True))


def consistent(counts: Sequence[int], lengths_mm: Sequence[Number]) -> bool:
    """Whether one gauge explains all sizes: some pitch brings every printed length within half a stitch of its count."""
    low = max(w / (c + HALF) for c, w in zip(counts, lengths_mm, strict=True))
    high = min(w / (c - HALF) for c, w in zip(counts, lengths_mm, strict=True))
    return low <= high
