"""A row worked into "the 35 sts just made" where the row before made, and prints, another number."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.source import Span

_JUST = re.compile(
    r"\b(?:each|all|first|next|last)?\s*(?:of\s+)?(?:the|these|those)\s+(?P<n>\d{1,4})\s+(?:sts?|stitches|sc|hdc|dc|tr|htr|chs?|chains?)\s+just\s+(?:made|worked)\b",
    re.IGNORECASE,
)

_SOON = re.compile(r"just\s+(?:made|worked)\b")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Silent where the number stands anywhere in the row before, or in what it made."""
    for part in pattern.parts if _SOON.search(pattern.document.text.lower()) else ():
        for at in range(1, len(part.rows)):
            row = part.rows[at][1]
            for m in _JUST.finditer(pattern.document.text, row.span.start, row.span.end):
                said, made = _before(pattern, part, at, row.span.start, m.start())
                if said and int(m["n"]) not in said:
                    yield Finding("C044", Span(m.start(), m.end()), {"number": m["n"], "made": made or max(said)})


def _before(pattern: Pattern, part: Part, at: int, start: int, end: int) -> tuple[set[int], int | None]:
    """Numbers told in the row before and in this row so far, and those made there; the largest count told."""
    item, row = part.rows[at - 1]
    words = pattern.words(row) + pattern.document.text[start:end]
    said = {int(n) for n in re.findall(r"(?<!\d)\d{1,4}(?!\d)", words)}
    told = re.findall(r"(?<!\d)(\d{1,4})\s+(?:sts|sc|hdc|dc|tr|htr)\b", pattern.words(row))
    for report in pattern.by_item.get(item, ()):
        counts = [c for c in report.counts if c is not None]
        said |= {c + more for c in counts for more in (-1, 0, 1)}
    return said, max(map(int, told)) if told else None
