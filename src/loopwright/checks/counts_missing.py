"""Rows that change the number of stitches and tell no count."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.neighbours import below, count, only_report
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding


_COUNT = re.compile(r"[(\[][^()\[\]]*\d[^()\[\]]*[)\]]\s*\.?\s*$|[–—-]\s*\d+\s*\w*\s*\.?\s*$|\{")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """In whole patterns, once: at the first such row, with how many there are."""
    if not pattern.whole:
        return
    silent = []
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            report = only_report(pattern, item)
            if report is None or row.printed or row.label is None or row.order is not None or not report.read or _told(pattern.words(row)):
                continue
            made, stood = count(report, 0), below(pattern, part, at, 0)
            if made is not None and stood is not None and made != stood:
                silent.append((row, made))
    if silent:
        row, made = silent[0]
        assert row.label is not None
        facts = {"label": row.label.text, "made": made, "rows": len(silent)}
        yield Finding("C035", row.label.span if row.label.span.end else row.span, facts)


def _told(words: str) -> bool:
    """A number at the end of the row, or a blank, even where it was not read as the count."""
    return _COUNT.search(words) is not None
