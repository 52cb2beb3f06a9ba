"""What a maker needs before the first stitch and a whole pattern does not tell: gauge, hook, yarn, finished size."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.lists import FINISHED
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import FitLine
from loopwright.source import Span

_HOOK = re.compile(r"\bhook\b[^.\n]*\d|\d\s*mm\b[^.\n]*\bhook\b|\b(?:size\s+)?[B-Q]\s+(?:crochet\s+)?hook\b", re.IGNORECASE)
_YARN = re.compile(r"\b(?:yarn|wool|cotton|acrylic|alpaca|merino|mohair|linen|thread|skeins?|balls?)\b", re.IGNORECASE)
_NEEDED = (
    ("C024", ("gauge", "tension"), re.compile(r"\bgauge\b|\btension\b", re.IGNORECASE)),
    ("C025", ("hook", "hooks", "crochet hook"), _HOOK),
    ("C026", ("yarn", "yarns"), _YARN),
)
_MEASURE = re.compile(r"[\d)\]]\s*(?:\"|″|cm\b|in\b|ins\b|inch|mm\s+(?:wide|tall|long|across))", re.IGNORECASE)
# "A toy duck, 12 cm tall." in the words before the rows
_TOLD_IN_WORDS = re.compile(
    r"\d\s*(?:\"|″|cm|in|ins|inch(?:es)?)\s+(?:tall|wide|long|high|deep|across|square|around|in\s+(?:height|length|width|diameter))\b",
    re.IGNORECASE,
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only in texts with a heading and rows."""
    rows = next(pattern.rows(), None)
    if not pattern.whole or rows is None:
        return
    head = pattern.document.text[: pattern.body_start()]
    at = pattern.told[0].span if pattern.told else Span(0, 0)
    for code, names, words in _NEEDED:
        if pattern.value(*names) is None and not words.search(head):
            yield Finding(code, at)
    fits = any(isinstance(i, FitLine) for i in pattern.document.items)  # a design's sizes are measured by its Fit
    told = any(_MEASURE.search(t.value) for t in pattern.lines(*FINISHED))
    gauges = [t.value for t in pattern.lines("gauge")]
    in_words = any(not any(m.group() in g for g in gauges) for m in _TOLD_IN_WORDS.finditer(head))
    if not fits and not told and not in_words and not re.search(r"\bmeasur(?:es|ing)\b[^.\n]*\d|\bfits?\b[^.\n]*\d", head, re.IGNORECASE):
        yield Finding("C027", at)
