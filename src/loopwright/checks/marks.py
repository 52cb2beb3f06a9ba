"""Marks of a repeat that have no partner: brackets, and "rep from *" without a star before it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from loopwright.checks.pattern import Pattern, standing
from loopwright.findings import Finding
from loopwright.source import Span

_REP = re.compile(r"\brep(?:eat)?(?:ing)?\.?\s+from\s+(?P<mark>\*+|\u2020+|\+)", re.IGNORECASE)
_BRACKET = re.compile(r"[()\[\]]")
_PAIRS = {")": "(", "]": "["}


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Row by row: a bracket or a star serves its own row only."""
    for _, row in pattern.rows():
        words = pattern.words(row)
        at = row.span.start
        for start, end in standing(_REP, words):
            mark = words[start:end].split()[-1]
            of_the_row_before = row.order is not None and not words[:start].strip(" .,;")  # told once behind a star, with its turn
            if mark not in words[:start] and not of_the_row_before:
                yield Finding("C036", Span(at + start, at + end), {"mark": mark})
        if not standing(_BRACKET, words):
            continue
        label = row.label.span.end - at if row.label else 0
        yield from (Finding("C037", Span(at + i, at + i + 1), {"bracket": words[i]}) for i in _alone(words, label))


@lru_cache(maxsize=4_096)
def _alone(words: str, label: int) -> tuple[int, ...]:
    """The first bracket without a partner; one that closes the row's label ("Row 1)") is none."""
    opened: list[int] = []
    for i, c in enumerate(words):
        if c in "([":
            opened.append(i)
        elif c in _PAIRS:
            if opened and words[opened[-1]] == _PAIRS[c]:
                opened.pop()
            elif i >= label and not re.match(r"\s*\w{1,6}\.?\s*$", words[:i]):
                return (i,)
    return (opened[0],) if opened else ()
