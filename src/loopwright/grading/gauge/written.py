"""Gauge as written: stitches and rows to a length, repeats to a length, or a measured disc. Stitch and row gauge stay apart."""

from __future__ import annotations

import re

from loopwright.grading.lengths import NUMBER, UNIT, number, unit_mm
from loopwright.grading.words import COUNTS, SWATCH
from loopwright.record import record

LARGEST_MM = 200.0
SMALLEST_MM = 0.2
_ITEM = re.compile(
    rf"(?P<sign>[-−])?(?P<n>{NUMBER})\s*"
    r"(?:(?P<noun>[A-Za-z][A-Za-z-]*)(?:\s*\(s\))?(?P<of>(?:\s+(?:of|in)\s+|\s+)(?P<what>[A-Za-z][\w]*))?)?", re.IGNORECASE,
)
_SIZE = re.compile(
    r"(?:=|\bto\b|\bper\b|\bover\b|\bmeasures?\b|\bis\b|\bin\b|\bequals?\b|/)\s*(?:the\s+|an?\s+|one\s+)?(?P<sign>[-−]\s?)?"
    rf"(?P<a>{NUMBER})?\s*(?:(?:x|×|by)\s*(?P<b>{NUMBER})\s*)?(?P<u>{UNIT})(?:\s*(?:x|×|by)\s*(?P<c>{NUMBER})\s*{UNIT})?"
    r"(?P<across>\s*(?:across|in diameter|diameter|wide across))?", re.IGNORECASE,
)


@record
class Gauge:
    """How big a stitch is. `stitch_mm` is its width, `row_mm` its height, `repeat_mm` the width of one pattern repeat.

    Each is None where the words do not tell it. `stitch` names the stitch of the swatch as written.
    """

    stitch_mm: float | None
    row_mm: float | None
    repeat_mm: float | None = None
    stitch: str | None = None
    text: str = ""


class GaugeError(ValueError):
    """A gauge that cannot be used. `code` is the finding's code, `args_` fill its words."""

    def __init__(self, code: str, **facts: object) -> None:
        super().__init__(code)
        self.code = code
        self.facts = facts


def parse_gauge(text: str) -> Gauge:
    """A gauge as written, e.g. "17 hdc and 13 rnds = 10 cm". Raises GaugeError for none, zero, negative or beyond all yarn."""
    try:
        return _parsed(text)
    except ValueError as e:
        raise e if isinstance(e, GaugeError) else GaugeError("G002", text=text.strip()) from None


def _parsed(text: str) -> Gauge:
    found: dict[str, float] = {}
    stitch: str | None = None
    at = 0
    for size in _SIZE.finditer(text):
        items = [m for m in _ITEM.finditer(text, at, size.start()) if m["noun"]]
        at = size.end()
        if not items:
            continue
        width, height = _lengths(size, text)
        for m in items:
            kind = _kind(m["noun"])
            if kind is None:
                continue
            many = _many(m, text)
            length = (height / 2 if size["across"] else height) if kind == "row" else width
            found.setdefault(kind, _checked(length / many, text))
            if kind == "stitch" and m["noun"].lower() not in COUNTS:
                stitch = stitch or m["noun"]
            elif m["what"] and m["what"].lower() not in ("and", "x", "by"):
                stitch = stitch or m["what"]
    if not found:
        raise GaugeError("G002", text=text.strip() or "nothing")
    return Gauge(found.get("stitch"), found.get("row"), found.get("repeat"), stitch, text.strip())


def gauge_end(text: str) -> int:
    """Where the first gauge of a line ends and what stands beside it begins; 0 where no counts stand to a length."""
    size = _SIZE.search(text)
    return size.end() if size else 0


def _kind(noun: str) -> str | None:
    kind = SWATCH.get(noun.lower(), "stitch")
    return None if kind == "none" or re.fullmatch(UNIT, noun, re.IGNORECASE) else kind


def _lengths(m: re.Match[str], text: str) -> tuple[float, float]:
    """Width and height that the counts stand for, in millimetres."""
    first = number(m["a"]) if m["a"] else number("1")
    second = number(m["b"] or m["c"]) if m["b"] or m["c"] else first
    if m["sign"] or first <= 0 or second <= 0:
        raise GaugeError("G003", text=text.strip())
    unit = unit_mm(m["u"])
    return float(first * unit), float(second * unit)


def _many(m: re.Match[str], text: str) -> float:
    many = number(m["n"])
    if m["sign"] or many <= 0:
        raise GaugeError("G003", text=text.strip())
    return float(many)


def _checked(mm: float, text: str) -> float:
    if not SMALLEST_MM <= mm <= LARGEST_MM:
        raise GaugeError("G004", text=text.strip(), mm=f"{mm:.3g}")
    return mm
