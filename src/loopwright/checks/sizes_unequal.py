"""A list of numbers per size that has more or fewer numbers than the pattern has sizes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern, standing
from loopwright.findings import Finding
from loopwright.source import Span

_N = r"\d+(?:\.\d+)?"
_LIST = re.compile(rf"(?<![\d.,]){_N}\s?[(\[](?P<rest>{_N}(?:\s*[,;:]\s*(?:{_N}|[-–—]))+)[)\]]")
# two numbers only: a list where the thing counted follows ("36 (38) sts"), not a count ("x 6 (12)")
_PAIR = re.compile(
    rf"(?<![\d.,])(?<!x )(?<!× )(?<!rnd )(?<!row )(?<!round ){_N}\s?\((?P<rest>{_N})\)\s*"
    r"(?:sts?|stitches|sc|hdc|dc|tr|htr|dtr|chs?|cm|mm|in\b|inch(?:es)?|balls?|skeins?|rows|rnds|rounds|times)\b",
    re.IGNORECASE,
)
# or in a label's range, or of a foundation chain
_RANGE = re.compile(rf"^\s*(?:rows|rnds|rounds)\s+\d+\s*[-–]\s*\d+\s\((?P<rest>{_N})\)(?=\s*[:.])", re.IGNORECASE)
_CHAIN = re.compile(r"\bch(?:ain)?\s+\d{2,3}\s\((?P<rest>\d{2,3})\)(?=\s*[.,;])", re.IGNORECASE)
_PAIRS = (_PAIR, _RANGE, _CHAIN)
_MEASURES = ("finished size", "to fit", "yarn", "materials", "chest", "bust", "waist", "hip", "length", "sleeve length", "width")
_QUOTED = re.compile(r"\s*>")  # told, not worked
_SOME = re.compile(r"\bsizes?\b|\bonly\b|\bsmall(?:er|est)?\b|\blarge[rs]?t?\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only where a heading line names the sizes; a row for some sizes only is left alone."""
    sizes = len(pattern.document.sizes)
    if pattern.value("sizes") is None or sizes < 2:
        return
    heading = [(t.value_span, t.value) for t in pattern.lines(*_MEASURES)]
    seen: set[Span] = set()
    for start, words in [*heading, *pattern.body()]:
        if not standing(_LIST, words) and not (sizes > 2 and any(standing(way, words) for way in _PAIRS)):
            continue
        if _QUOTED.match(words) or _SOME.search(words):
            continue
        pairs = [m for way in _PAIRS for m in way.finditer(words)] if sizes > 2 else []
        for m in [*_LIST.finditer(words), *pairs]:
            apart = m["rest"].count(";") or len(re.findall(r"[,:]", m["rest"]))  # in "40 (40; 45,7)" the comma is a decimal sign
            n = 2 + apart
            span = Span(start.start + m.start(), start.start + m.end())
            if n != sizes and span not in seen:
                seen.add(span)
                yield Finding("C019", span, {"numbers": n, "sizes": sizes, "list": m.group()})
