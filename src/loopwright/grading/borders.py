"""Edges: how many stitches to pick up, what a border needs at its corners, what an edging adds, how long a cord's chain is."""

from __future__ import annotations

from fractions import Fraction

from loopwright.grading.counting import Legal, Number, count_for
from loopwright.grading.spread import even
from loopwright.record import record


def rate(sts: int, rows: int) -> Fraction:
    """Stitches per row end out of a gauge of so many stitches and rows over one same length: sts / rows."""
    return Fraction(sts, rows)


def in_words(per_row: Fraction) -> tuple[tuple[int, int], ...]:
    """A rate below one as small groups, each "k in every k + 1 row ends": 10/13 is 3 in 4, 3 in 4, 4 in 5.

    The row ends that are passed over are spread evenly: as many groups as rows are skipped. A rate of one is one in one.
    Raises ValueError for rates above one (say them as whole stitches and a rest) or not above zero.
    """
    if not 0 < per_row <= 1:
        raise ValueError("a rate in groups lies above none and at most at one stitch a row")
    skipped = per_row.denominator - per_row.numerator
    if skipped == 0:
        return ((1, 1),)
    return tuple(sorted((g - 1, g) for g in even(per_row.denominator, skipped)))


def pick_up_for(length_mm: Number, stitch_mm: Number, legal: Legal | None = None) -> int:
    """Stitches along an edge of a length that was left to the maker ("until it measures …"): a rate, never a fixed number."""
    return (legal or Legal()).nearest(length_mm / stitch_mm)[0]


@record
class Border:
    """One round around a rectangle: stitches along each side without the corners, and stitches in each corner."""

    long_side: int
    short_side: int
    corner: int = 3

    @property
    def total(self) -> int:
        """All stitches of the round."""
        return 2 * (self.long_side + self.short_side) + 4 * self.corner


def around(long_side: int, short_side: int, legal: Legal | None = None, corner: int = 3) -> Border:
    """The first round of a border: each side moved to the nearest count that the border's repeat allows, corners kept apart.

    Derived: a border meets itself at every corner only when each side by itself is a multiple and its edge stitches.
    """
    allowed = legal or Legal()
    return Border(allowed.nearest(long_side)[0], allowed.nearest(short_side)[0], corner)


def next_round(border: Border) -> Border:
    """The round after, plain along the sides, the same corner into the middle of each corner: each side gains `corner` - 1.

    A flat right angle in stitches as tall as wide gains 8 a round, 2 a corner: 3 in a corner.
    """
    more = border.corner - 1
    return Border(border.long_side + more, border.short_side + more, border.corner)


def stop_under_mm(target_mm: Number, edging_mm: Number) -> Number:
    """Where to stop so that the edging brings the piece to its measure: target - edging. Raises ValueError where nothing is left."""
    if edging_mm >= target_mm:
        raise ValueError("the edging alone is as wide as the whole piece may be")
    return target_mm - edging_mm


def cord_chain(length_mm: Number, chain_mm: Number, turning: int = 0) -> int:
    """Chains of a cord; a cord that is worked back over needs its turning chain too.

    Worked back in slip stitches from the second chain it gets one chain more than stitches wanted (common practice, no source).
    """
    return count_for(length_mm, chain_mm) + turning
