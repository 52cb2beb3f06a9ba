"""The gauge line as figures: stitches and rows over a length. Not a rule."""

from __future__ import annotations

import re

from loopwright.checks.pattern import Pattern
from loopwright.kept import of_short
from loopwright.record import record
from loopwright.source import Span
from loopwright.terms import dialect

MM = {"cm": 10.0, "mm": 1.0, "in": 25.4, "ins": 25.4, "inch": 25.4, "inches": 25.4, '"': 25.4, "″": 25.4}
NUMBER = r"\d{1,4}(?:\.\d{1,3})?"
_UNIT = r"(?P<unit>cm|mm|inch(?:es)?|ins?\b|\"|″)"
_LENGTH = re.compile(rf"(?:=|\bto\b|\bin\b|\bover\b|\bper\b|\bmeasures?\b|\bare\b)\s*(?P<length>{NUMBER})?\s*{_UNIT}", re.IGNORECASE)
_ROWS = re.compile(rf"(?P<rows>{NUMBER})\s*(?:rows?|rnds?|rounds?)\b", re.IGNORECASE)
_STITCHES = re.compile(
    rf"(?P<sts>{NUMBER})\s+(?P<noun>[A-Za-z][A-Za-z .-]{{0,40}}?)\s*(?=,|;|\bx\b|×|\band\b|&|=|\bto\b|\bin\b|\bover\b|\bper\b|\bby\b|$)"
)


@record
class Gauge:
    """What a gauge line says. `stitch` is a US key, None when it names none; rates are per 100 mm, None when not told."""

    span: Span
    text: str
    stitch: str | None
    noun: str
    stitches: float | None
    rows: float | None


def gauge(pattern: Pattern) -> Gauge | None:
    """The gauge of the heading; None when there is no such line or no length in it."""
    told = pattern.value("gauge")
    return None if told is None else _gauge(told.value, told.value_span, pattern.document.terms)


@of_short(16)
def _gauge(value: str, span: Span, terms: str) -> Gauge | None:
    """What a gauge line says; kept, as rows are written more often than headings."""
    lengths = [(m.start(), float(m["length"] or 1) * MM[m["unit"].lower()]) for m in _LENGTH.finditer(value)]
    if not lengths or min(mm for _, mm in lengths) <= 0:
        return None

    def rate(m: re.Match[str], group: str) -> float:
        """Per 100 mm, over the length that is told after it: "3 rnds = 5 cm; 18 tr = 10 cm"."""
        return float(m[group]) * 100 / next((mm for at, mm in lengths if at >= m.end(group)), lengths[0][1])

    def across(m: re.Match[str]) -> float:
        """2 where so many rounds are measured across, from rim to rim."""
        end = next((x.end() for x in _LENGTH.finditer(value, m.end())), len(value))
        return 2.0 if re.match(r"\s*(?:across|in\s+diameter)\b", value[end:], re.IGNORECASE) else 1.0

    sts = next((m for m in _STITCHES.finditer(value) if not re.match(r"rows?|rnds?|rounds?|mm|cm", m["noun"], re.IGNORECASE)), None)
    rows = _ROWS.search(value)
    noun = sts["noun"].strip() if sts else ""
    which = dialect(terms)
    return Gauge(
        span,
        value,
        which.kind_of(noun) if noun else None,
        noun,
        rate(sts, "sts") if sts else None,
        rate(rows, "rows") * across(rows) if rows else None,
    )
