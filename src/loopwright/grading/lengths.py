"""Lengths as the trade writes them: "5½ in", "5 1/2″", "4 cm", "12.5mm", "1 yard"; in millimetres from here on.

The units and their source stand in words.toml.
"""

from __future__ import annotations

import re
from fractions import Fraction

from loopwright.grading.words import SIGNS, UNITS_MM
from loopwright.source.expressions import Expression

_SIGNS = "".join(SIGNS)
NUMBER = rf"(?:\d{{1,9}}[ -]\d{{1,3}}/\d{{1,3}}|\d{{1,9}}/\d{{1,3}}|\d{{1,9}}(?:[.,]\d{{1,20}})?\s?[{_SIGNS}]?|[{_SIGNS}])"
UNIT = r'(?:millimet(?:re|er)s?|centimet(?:re|er)s?|met(?:re|er)s?|inch(?:es)?|feet|foot|yards?|yds?|mm|cm|in|ft|m|"|″|”)(?![a-z])\.?'
_LENGTH = Expression(rf"(?P<sign>[-−]\s?)?(?P<n>{NUMBER})\s*(?P<u>{UNIT})", re.IGNORECASE)


def number(text: str) -> Fraction:
    """A number as written: "5", "5.5", "5 1/2", "5½", "1/3". Raises ValueError for anything else, a zero below the line too."""
    text = text.strip().replace(",", ".")
    if text and text[-1] in SIGNS:
        return (Fraction(text[:-1].strip()) if text[:-1].strip() else Fraction(0)) + SIGNS[text[-1]]
    mixed = re.fullmatch(r"(\d+)[ -](\d+)/(\d+)", text)
    try:
        if mixed:
            return int(mixed[1]) + Fraction(int(mixed[2]), int(mixed[3]))
        return Fraction(text)
    except ZeroDivisionError:
        raise ValueError("a fraction over zero") from None


def unit_mm(word: str) -> Fraction:
    """Millimetres in a unit. Raises KeyError for a word that is none."""
    word = word.lower().rstrip(".")
    return UNITS_MM[word] if word in UNITS_MM else UNITS_MM[word.rstrip("s")]


def parse_length(text: str) -> float:
    """A length as written, in millimetres. Raises ValueError where the text is no length."""
    m = _LENGTH.fullmatch(text.strip())
    if m is None:
        raise ValueError(f"not a length: {text}")
    value = float(number(m["n"]) * unit_mm(m["u"]))
    return -value if m["sign"] else value


def in_cm(mm: float) -> str:
    """A length for people, in centimetres: "13.9 cm"."""
    value = round(mm / 10 + 0.0, 1)
    return f"{value + 0.0:.1f} cm".replace(".0 cm", " cm").replace("-0 cm", "0 cm")
