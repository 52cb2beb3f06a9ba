"""Flat discs, crowns, ovals and balls: how many stitches a round needs, how wide so many rounds are, where to stop.

A round of height h at radius r needs 2*pi*r / w stitches of width w; one round further out needs 2*pi*h/w more. That is the flat rate; the
"6 for sc, 8 for hdc, 12 for dc" of the trade is this rate at common gauges. A real disc can differ from its swatch, so where a disc has
been measured, its measured row height should be given.
"""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Literal

from loopwright.grading.counting import Number, half_up

# More than this share away from the flat rate shows after a few rounds (our own reading of what makers report; no source).
TOLERANCE = 0.05
# Increases per round that the trade gives by heart: a flat-circle tutorial of 2009, craftymaria.blogspot.com.
BY_HEART = {"sc": 6, "hdc": 8, "dc": 12}


def flat_rate(stitch_mm: Number, row_mm: Number) -> float:
    """Stitches that each round must gain to lie flat: 2*pi*h/w."""
    return 2 * math.pi * float(row_mm) / float(stitch_mm)


def lies(rate: Number, flat: Number) -> Literal["flat", "cups", "ruffles"]:
    """What a disc that gains `rate` stitches a round does when `flat` would lie flat: fewer cup, more ruffle."""
    away = float(rate) / float(flat) - 1
    return "flat" if abs(away) <= TOLERANCE else "cups" if away < 0 else "ruffles"


def flat_counts(rounds: int, flat: Number) -> tuple[int, ...]:
    """The count nearest to flat for each of the first `rounds` rounds: n * rate, rounded."""
    return tuple(half_up(n * flat) for n in range(1, rounds + 1))


def around_mm(across_mm: Number) -> float:
    """Circumference of a disc: pi * d."""
    return math.pi * float(across_mm)


def across_mm(around: Number) -> float:
    """Diameter of a disc whose edge measures `around` mm: C / pi."""
    return float(around) / math.pi


def across_by_rounds_mm(rounds: int, row_mm: Number, centre_mm: Number = 0) -> Number:
    """Width of a flat disc: two row heights a round, and the open centre (`centre_mm`, its width)."""
    return 2 * rounds * row_mm + centre_mm


def rounds_for(across: Number, row_mm: Number, centre_mm: Number = 0) -> int:
    """The number of rounds whose disc comes nearest to `across` mm; at least one."""
    return max(1, half_up((across - centre_mm) / (2 * row_mm)))


def crown(target: int, per_round: int, start: int | None = None) -> tuple[int, ...]:
    """Counts round by round up to `target`, the last round with only as many increases as are wanted.

    84 at 8 a round is 8, 16 … 80, 84: a whole eleventh round would give 88. Raises ValueError where nothing grows.
    """
    if per_round < 1 or target < 1:
        raise ValueError("a crown needs a target and increases, each at least 1")
    counts = [min(start or per_round, target)]
    while counts[-1] < target:
        counts.append(min(counts[-1] + per_round, target))
    return tuple(counts)


def gains(counts: tuple[int, ...]) -> tuple[int, ...]:
    """What each round adds; the first adds all it has."""
    return tuple(b - a for a, b in zip((0, *counts), counts, strict=False))


def sharing(target: int, rounds: int) -> tuple[int, ...]:
    """Counts that reach `target` in exactly `rounds` rounds with equal growth, remainders spread: round n has ceil(n * target / rounds)."""
    if rounds < 1 or target < rounds:
        raise ValueError(f"{target} stitches do not fill {rounds} rounds")
    return tuple(-(-n * target // rounds) for n in range(1, rounds + 1))


def start_for(have_around: Number, want_around: Number, gain_per_start_stitch: Number) -> tuple[Number, int, int]:
    """How many more stitches to begin with, when each brings so many mm at the edge: exact, and the whole numbers on both sides of it."""
    exact = (want_around - have_around) / gain_per_start_stitch
    return exact, math.floor(exact), math.ceil(exact)


def oval(side: int, rounds: int, per_round: int = 6) -> tuple[int, ...]:
    """Counts of an oval worked on both sides of a chain: two straight sides of `side` stitches, two half discs: 2L + k*n.

    Derived: the two ends of the oval are one disc cut in half.
    """
    return tuple(2 * side + per_round * n for n in range(1, rounds + 1))


def ball_rows(equator: int) -> int:
    """Rounds of a ball from pole to pole whose widest round has `equator` stitches: half of them, for stitches as tall as wide.

    Half a great circle is pi*d/2; the equator is pi*d: as many rows as half the stitches.
    """
    return half_up(Fraction(equator, 2))


def ball_counts(equator: int) -> tuple[int, ...]:
    """Counts of a ball round by round: round n of R at latitude pi*(n - 1/2)/R needs equator * sin(latitude) stitches."""
    rows = ball_rows(equator)
    return tuple(max(1, half_up(equator * math.sin(math.pi * (n - 0.5) / rows))) for n in range(1, rows + 1))
