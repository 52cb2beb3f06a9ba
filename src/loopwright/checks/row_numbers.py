"""Numbers of rows that are left out, doubled, or go backwards within one part."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from loopwright.checks.pattern import Part, Pattern, standing
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Label, Ring, Row

MAX_TURN = 4  # a longer chain at the start of a row is a foundation
# words of a row after which the next number may stand anywhere
_OPEN = re.compile(
    r"\brep(?:eat)?\b(?!\s*(?:from|between|\*|around|across))|\bcontinue\b|\buntil\b|\bwork even\b|\bin (?:this|the same) manner\b",
    re.IGNORECASE,
)

_RANGE_PER_SIZE = re.compile(r"^\W*\w+\s+(?:\d+\s*[-–]\s*)?\d+\s*[(\[]\s*\d")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Numbers left out are advice only in texts without a heading: an excerpt may leave rows out."""
    for part in pattern.parts:
        for found in _part(pattern, part):
            yield found if pattern.whole or found.code != "C011" else replace(found, severity="advice")


def _part(pattern: Pattern, part: Part) -> Iterator[Finding]:
    last: int | None = None
    previous: Row | None = None
    second: int | None = None  # rows of which every second one was told at once: even or odd
    for _, row in part.rows:
        label = row.label
        if label is not None and label.alternate:
            told = label.first.at(0) if label.first is not None else None
            second = told % 2 if told is not None else int(label.alternate == "odd")
            if told is None:
                continue
        if label is None or label.first is None:
            # "Next row" and rows without a label count, but what follows them is not sure
            last = None if label is None or last is None or len(label.how_many.values) != 1 else last + (label.how_many.at(0) or 1)
            last = None if _OPEN.search(pattern.words(row)) else last
            previous = row
            continue
        first, end = _plain(label, pattern.words(row))
        if first is None or row.sizes is not None:
            last, previous = None, row
            continue
        before = pattern.document.text.rfind("\n", 0, row.span.start) + 1
        if first == 1 and pattern.document.text[before : row.span.start].strip():
            last = None  # "Armhole row 1": a count of its own
        again = first == 1 and (last != 1 or _begins(pattern, previous, row))  # a new piece without a heading
        if last is not None and first == last + 2 and second == (last + 1) % 2:
            last += 1
        if last is not None and first != last + 1 and not again and not _between(pattern, previous, row):
            yield _finding(row, label, first, last)
        last = end
        if row.order is None and standing(_OPEN, pattern.words(row)):
            last = None
        previous = row


def _plain(label: Label, words: str) -> tuple[int | None, int | None]:
    """First and last number, None where they differ by size, are blanks, or are not a plain range."""
    if label.also or (label.first and len(label.first.values) != 1) or _RANGE_PER_SIZE.search(words[:60]):
        return None, None
    first = label.first.at(0) if label.first else None
    last = label.last.at(0) if label.last and len(label.last.values) == 1 else None if label.last else first
    if re.search(r"\band\b|&|,", label.text) and first is not None and last is not None and last - first > 1:
        return None, None
    return first, last


def _begins(pattern: Pattern, previous: Row | None, row: Row) -> bool:
    """Whether a second row 1 begins a piece: after an end, or with a chain or ring of its own."""
    ended = previous is not None and re.search(r"fasten off|\bcut\b|break off", pattern.words(previous), re.IGNORECASE)
    return bool(ended) or any(isinstance(n, Ring) or isinstance(n, Chain) and (n.n.at(0) or 0) > MAX_TURN for n in row.body[:2])


def _between(pattern: Pattern, previous: Row | None, row: Row) -> bool:
    """Words between two rows that may stand for rows ("Work 3 more rows")."""
    if previous is None:
        return False
    words = pattern.document.text[previous.span.end : row.span.start]
    return bool(re.search(r"\brows?\b|\brnds?\b|\brounds?\b|\bwork\b|\bmake\b|\bbegin\b|\bjoin\b|\breturn\b|:", words, re.IGNORECASE))


def _finding(row: Row, label: Label, first: int, last: int) -> Finding:
    span = label.span if label.span.end else row.span
    facts = {"label": label.text, "number": first, "before": last, "expected": last + 1}
    if first > last + 1:
        missing = f"{last + 1}" if first == last + 2 else f"{last + 1} to {first - 1}"
        return Finding("C011", span, {**facts, "missing": missing})
    return Finding("C012" if first == last else "C013", span, facts)
