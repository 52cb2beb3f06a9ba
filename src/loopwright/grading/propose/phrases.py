"""Fit sentences in the words of the trade: shares, lengths, what a number must reach."""

from __future__ import annotations

import math
from fractions import Fraction

from loopwright.grading.counting import Legal

_TENS = {2: "half", 3: "third", 4: "quarter", 5: "fifth", 6: "sixth", 7: "seventh", 8: "eighth", 9: "ninth", 10: "tenth", 12: "twelfth"}
_ONES = "zero one two three four five six seven eight nine ten eleven".split()
SHARES = tuple(Fraction(s) for s in "1/2 2/3 3/4 4/5 5/6 1/3 1/4 1/5 1/6 2/5 3/5 7/8 5/8 3/8 1/8 9/10 7/10 3/10 1/10".split())
FINER = tuple(Fraction(n, d) for d in (7, 9, 12) for n in range(1, d) if math.gcd(n, d) == 1)
INCH_MM = 25.4


def share_of(part: Fraction, what: str) -> str:
    """As in "four fifths of {back sts}", "half of …"; a whole is the thing itself, a whole number of times "twice" or "3 times"."""
    if part.denominator == 1:
        return what if part == 1 else f"twice {what}" if part == 2 else f"{part.numerator} times {what}"
    name = _TENS[part.denominator]
    if part.numerator == 1:
        return f"half of {what}" if part.denominator == 2 else f"{'an' if name == 'eighth' else 'a'} {name} of {what}"
    return f"{_ONES[part.numerator]} {name}s of {what}"


def length(mm: float, inches: bool = False) -> str:
    """As in "3 cm", "1.5 cm", "1.25 in": as short as it is exact to a tenth of a millimetre."""
    value, unit = (mm / INCH_MM, "in") if inches else (mm / 10, "cm")
    return f"{value:.2f}".rstrip("0").rstrip(".") + f" {unit}"


def plus(mm: float, inches: bool = False) -> str:
    """As in " less 3 cm", " plus 1.5 cm"; nothing for none."""
    if abs(mm) < 0.01:
        return ""
    return f" {'less' if mm < 0 else 'plus'} {length(abs(mm), inches)}"


def legal(allowed: Legal) -> str:
    """As in ", multiple of 3 plus 2"; nothing where every number will do."""
    if allowed.multiple == 1:
        return ""
    return f", multiple of {allowed.multiple}" + (f" plus {allowed.plus}" if allowed.plus else "")
