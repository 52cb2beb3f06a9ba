"""A list of numbers per size that has more or fewer numbers than the pattern has sizes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.source import Span

_LIST = re.compile(r"(?<![\d.,])(?P<first>\d+(?:\.\d+)?)\s?[(\[](?P<rest>\d+(?:\.\d+)?(?:\s*[,;:]\s*(?:\d+(?:\.\d+)?|[-–—]))+)[)\]]")
_SOME = re.compile(r"\bsizes?\b|\bonly\b|\bsmall(?:er|est)?\b|\blarge[rs]?t?\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only where a heading line names the sizes; a row for some sizes only is left alone."""
    told = pattern.value("sizes")
    sizes = len(pattern.document.sizes)
    if told is None or sizes < 2:
        return
    for span, words in pattern.body():
        if _SOME.search(words):
            continue
        for m in _LIST.finditer(words):
            n = 1 + len(re.split(r"[,;:]", m["rest"]))
            if n != sizes:
                yield Finding("C019", Span(span.start + m.start(), span.start + m.end()), {"numbers": n, "sizes": sizes, "list": m.group()})
