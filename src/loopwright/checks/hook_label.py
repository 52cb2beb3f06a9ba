"""A hook whose letter and millimetres do not belong together: "5 mm (F-5)"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.source import Span
from loopwright.trade.hooks import of_label

ROOM_MM = 0.5  # makers differ by so much in what a letter stands for. Common practice, no source.
_BOTH = re.compile(
    r"(?<![\d.])(?P<mm>\d{1,2}(?:\.\d{1,2})?)\s*mm\s*[(/,]?\s*(?:USA?\s*(?:size\s*)?)?"
    r"(?P<label>(?-i:[B-Q])[-/ ]?\d{1,2}(?:\.5|½)?|(?-i:[B-Q])(?=\s*\)))\b"
    r"|(?P<label2>(?-i:[B-Q])[-/]\d{1,2}(?:\.5|½)?)\s*[(/,]\s*(?P<mm2>\d{1,2}(?:\.\d{1,2})?)\s*mm\b", re.IGNORECASE,
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Hook lines of the heading; labels that nobody uses are left alone."""
    for told in pattern.lines("hook", "materials"):
        for m in _BOTH.finditer(told.value):
            label, mm = m["label"] or m["label2"], float(m["mm"] or m["mm2"])
            known = [hook.mm for hook in of_label(label)]
            if known and not min(known) - ROOM_MM <= mm <= max(known) + ROOM_MM:
                at = told.value_span.start
                facts = {"mm": f"{mm:g}", "label": label, "is_mm": " or ".join(f"{k:g}" for k in sorted(set(known)))}
                yield Finding("C050", Span(at + m.start(), at + m.end()), facts)
