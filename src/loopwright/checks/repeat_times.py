"""Repeats told "n times" where one time more or fewer would agree with the count printed and the stitches below."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.arithmetic import Flow, flow
from loopwright.checks.neighbours import below, count, only_report, sizes
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.report import RowReport
from loopwright.model.tree import Repeat, Row
from loopwright.source import Span


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Speaks only of rows whose printed count is not what they make, or that do not fit the row below."""
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            report = only_report(pattern, item)
            repeats = [n for n in row.body if isinstance(n, Repeat) and n.mode in ("times", "more", "star-times") and n.times]
            if report is None or len(repeats) != 1 or (report.read and report.agrees is not False):
                continue
            step = _step(pattern, part, at, report, row, repeats[0])
            if step is not None:
                yield _finding(pattern, row, repeats[0], step)


def _step(pattern: Pattern, part: Part, at: int, report: RowReport, row: Row, repeat: Repeat) -> int | None:
    """+1 or -1 when that many repeats more make it right in every size, None otherwise."""
    found: set[int | None] = set()
    for size in sizes(pattern):
        inside = flow(repeat.nodes, size)
        if inside is None or inside == Flow(0, 0):
            return None
        printed = report.printed[size] if report.printed else None
        found.add(_by_count(report, printed, size, inside) if report.read else _by_room(row, below(pattern, part, at, size), size, inside))
    return found.pop() if len(found) == 1 else None


def _by_count(report: RowReport, printed: int | None, size: int, inside: Flow) -> int | None:
    made = count(report, size)
    if made is None or printed is None or not inside.gives:
        return None
    return {inside.gives: 1, -inside.gives: -1}.get(printed - made)


def _by_room(row: Row, stands: int | None, size: int, inside: Flow) -> int | None:
    whole = flow(row.body, size)
    if whole is None or stands is None or not inside.takes:
        return None
    return {inside.takes: 1, -inside.takes: -1}.get(stands - whole.takes)


def _finding(pattern: Pattern, row: Row, repeat: Repeat, step: int) -> Finding:
    times = repeat.times.at(0) if repeat.times else None
    span = repeat.span if repeat.span.end else row.span
    facts = {"times": times, "better": None if times is None else times + step, "fewer_or_more": "more" if step > 0 else "fewer"}
    return Finding("C002", span, facts, fix=_fix(pattern.document.text, span, times, step))


def _fix(text: str, span: Span, times: int | None, step: int) -> Fix | None:
    """The number told at the end of the repeat put right, when it stands there in figures once."""
    if times is None:
        return None
    found = list(re.finditer(rf"(?<!\d){times}(?=\s*(?:times|x\b|more))", text[span.start : span.end + 12]))
    if len(found) != 1:
        return None
    at = span.start + found[0].start()
    return Fix(f"say {times + step} times", (Edit(Span(at, at + len(str(times))), str(times + step)),), safe=False)
