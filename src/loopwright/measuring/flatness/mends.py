"""What would make it lie flat, in the maker's words, from her gauge."""

from __future__ import annotations

import math
from fractions import Fraction

from loopwright.measuring.flatness.crowns import FLAT, Crown, Ring

GOOD = 0.07  # a whole number of stitches that near to the flat rate blocks out at worst


def whole_rates(flat: float) -> list[int]:
    """Whole stitches a round that lie flat or nearly; the nearest where none does."""
    near = [n for n in range(max(1, math.floor(flat * (1 - GOOD))), math.ceil(flat * (1 + GOOD)) + 1) if abs(n / flat - 1) <= GOOD]
    return near or [max(1, math.floor(flat + 0.5))]


def said(numbers: list[int]) -> str:
    """ "11", "11 or 12", "16 to 18"."""
    if len(numbers) > 2:
        return f"{numbers[0]} to {numbers[-1]}"
    return " or ".join(map(str, numbers))


def figure(value: float) -> str:
    """A rate as it is said: whole where it is whole, else with one decimal."""
    return f"{value:.0f}" if abs(value - round(value)) < 0.05 else f"{value:.1f}"


def round_mend(crown: Crown, ring: Ring) -> str:
    """The mend of one round's crown: another rate, another beginning, or another hook."""
    upto = [r for r in crown.rings if r.course.index <= ring.course.index]
    so_far = Crown(tuple(upto), crown.sides, crown.oval, crown.after)
    hook = "or go up a hook" if ring.off < 0 else "or go down a hook"
    gain, flat = so_far.gain, so_far.flat_gain
    if len(upto) > 1 and abs(gain / flat - 1) <= FLAT or len(upto) > 1 and (gain > flat) != (ring.off > 0):
        begin = said(whole_rates(crown.rings[0].flat_rate))
        return f"begin with {begin} sts, not {figure(crown.rings[0].rate)}; {hook}"
    good = whole_rates(flat)
    now = round(gain)
    if abs(gain - now) < 0.05 and now in good:
        return f"it lies flat at {figure(flat)} a round; {hook}"
    where = ", corners and their chains counted" if crown.sides else ""
    verb = "increase" if len(upto) > 1 else "begin with"
    each = " in a round" if len(upto) > 1 else " sts"
    return f"{verb} {said(good)}{each}{where}, not {figure(gain)}; {hook}"


def per_row_end(stitches: float, rows: int) -> str:
    """ "1 in each row end", "3 for every 2 row ends", "3 for every 4 row ends": a rate as it is worked."""
    rate = Fraction(stitches / rows).limit_denominator(4)
    if rate <= 0:
        rate = Fraction(1, 4)
    if rate.denominator == 1:
        return f"{rate.numerator} in each row end"
    return f"{rate.numerator} for every {rate.denominator} row ends"


def percent(off: float) -> str:
    """A share too many or too few: "21 % more"."""
    return f"{abs(off) * 100:.0f} % {'more' if off > 0 else 'fewer'}"
