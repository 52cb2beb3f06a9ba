"""Rows that change the number of stitches and tell no count."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.lists import said
from loopwright.checks.neighbours import below, count, only_report
from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.source import Span

_COUNT = re.compile(r"[(\[][^()\[\]]*\d[^()\[\]]*[)\]]\s*\.?\s*$|[–—-]\s*\d+\s*\w*\s*\.?\s*$|\{")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """In whole patterns, once: at the first such row, with how many there are."""
    if not pattern.whole:
        return
    silent = []
    edits: list[Edit] = []
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            report = only_report(pattern, item)
            if (
                report is None
                or row.printed
                or row.label is None
                or row.order is not None
                or row.doubt
                or not report.read
                or _told(pattern.words(row))
            ):
                continue
            now, stood = count(report, 0), below(pattern, part, at, 0)
            if now is not None and stood is not None and now != stood:
                silent.append((row.label, row.span, said(report.counts)))
                edits += _print(pattern, row.span, said(report.counts))
    if silent:
        label, span, made = silent[0]
        facts = {
            "label": label.text,
            "made": made,
            "more": "1 row" if len(silent) == 2 else f"{len(silent) - 1} rows" if len(silent) > 2 else None,
        }
        yield Finding(
            "C035", label.span if label.span.end else span, facts, fix=Fix("print the counts that were worked", tuple(edits), safe=False)
        )


def _told(words: str) -> bool:
    """A number at the end of the row, or a blank, even where it was not read as the count."""
    return _COUNT.search(words) is not None


def _print(pattern: Pattern, span: Span, made: str) -> list[Edit]:
    """The count behind the last words of a row."""
    words = pattern.document.text[span.start : span.end].rstrip()
    at = span.start + len(words)
    stop = "" if words.endswith((".", ")", ";")) else "."
    return [Edit(Span(at, at), f"{stop} ({made} sts)")]
