"""What the heading tells of the yarn: its class by name, its ball by grams and metres. Not a rule."""

from __future__ import annotations

import re

from loopwright.checks.pattern import Pattern
from loopwright.trade.yarn import Weight, weight

NUMBER = r"\d{1,5}(?:[.,]\d{3})*(?:\.\d+)?"
LONG = r"(?P<unit>m|metres?|meters?|yds?|yards?)\b"
_OUNCES = r"(?:\(\s*[\d.]+\s*oz\.?\s*\)\s*)?"
BALL = re.compile(rf"(?P<g>\d{{1,4}})\s*g\b\s*{_OUNCES}(?:=|/|:|\(|,|per|balls?|skeins?)?\s*(?P<n>{NUMBER})\s*{LONG}", re.IGNORECASE)
_METRES = {"m": 1.0, "y": 0.9144}
# names that mean a weight wherever they stand, and those that do so only before "weight" or "yarn"
_CLASS = re.compile(
    r"(?<![\w-])(?:(?P<plain>DK|double knitting|worsted|aran|chunky|super bulky|super chunky|bulky|sport|fingering|jumbo|\d{1,2}[ -]ply)"
    r"|(?P<weight>lace|super fine|fine|light|medium|sock|baby)(?=[ -](?:weight|yarn)))(?![\w])",
    re.IGNORECASE,
)


def metres(m: re.Match[str]) -> float:
    """The length that BALL, or an expression made with NUMBER and LONG, found."""
    return float(m["n"].replace(",", "")) * _METRES[m["unit"][0].lower()]


def named_class(pattern: Pattern) -> Weight | None:
    """The class of the yarn that its lines name; None when no word of them names one, or words name different ones."""
    found: dict[int, Weight] = {}
    for told in pattern.lines("yarn", "materials"):
        for m in _CLASS.finditer(told.value):
            known = weight(" ".join((m["plain"] or m["weight"]).replace("-", " ").lower().split()))
            if known is not None:
                found[known.number] = known
    return next(iter(found.values())) if len(found) == 1 else None
