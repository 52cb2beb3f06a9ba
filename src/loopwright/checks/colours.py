"""Colours by letter: used and not listed, listed and not used."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern, Told, standing
from loopwright.findings import Finding
from loopwright.source import Span

_LETTER = r"(?:MC|CC\d?|[A-H])"
_LISTED = re.compile(rf"(?<![\w-])(?:(?i:colou?r|yarn)\s+)?(?P<c>{_LETTER})(?=\s*[(=:]|\s+[–-]\s)|(?<=\()(?P<d>{_LETTER})(?=\))")
_ONE = rf"{_LETTER}(?:\s*\([^()]*\))?"
_SERIES = re.compile(rf"\b(?i:in|colou?rs?)\s+{_ONE}(?:(?:\s*,\s*(?:and\s+)?|\s+and\s+){_ONE})+(?![\w-])")
_USED = re.compile(
    rf"\b(?i:with|join|joining|attach|change to|changing to|using|in|each of|rows of|rnds of)\s+(?i:(?:the\s+)?(?:colou?r|yarn)\s+)?"
    rf"(?P<all>{_LETTER}(?:(?:\s*,\s*(?:and\s+)?|\s+and\s+|\s+or\s+|\s*/\s*){_LETTER})*)(?![\w(-]|\s+(?i:hook|size|needle))",
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only where the heading lists two colours or more by letter."""
    lines = pattern.lines("yarn", "materials", "colours")
    listed = {letter: span for told in lines for letter, span in _listed(told)}
    if len(listed) < 2:
        return
    seen: set[str] = set()
    for span, words in pattern.body():
        for m in _USED.finditer(words) if standing(_USED, words) else ():
            for one in re.finditer(_LETTER, m["all"]):
                letter = one.group()
                if letter not in listed and letter not in seen:
                    start = span.start + m.start("all") + one.start()
                    yield Finding("C016", Span(start, start + len(letter)), {"colour": letter, "listed": ", ".join(listed)})
                seen.add(letter)
    rest = pattern.document.text[pattern.body_start() :]
    for letter, span in listed.items():
        if letter not in seen and not re.search(rf"{letter}(?<![\w-]{letter})(?![\w-])", rest):
            yield Finding("C017", span, {"colour": letter})


def _listed(told: Told) -> Iterator[tuple[str, Span]]:
    for m in _SERIES.finditer(told.value):
        for one in re.finditer(rf"(?<![\w-]){_LETTER}(?![\w-])", m.group()):
            start = told.value_span.start + m.start() + one.start()
            yield one.group(), Span(start, start + len(one.group()))
    for m in _LISTED.finditer(told.value):
        which = "c" if m["c"] else "d"
        yield m[which], Span(told.value_span.start + m.start(which), told.value_span.start + m.end(which))
