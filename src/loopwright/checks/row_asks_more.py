"""A row that takes more stitches than the confirmed row below it has, where the worker went on from a new start."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.arithmetic import flow
from loopwright.checks.neighbours import below, confirmed, only_report, sizes, with_chains
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.model.tree import EdgeRun, Label, Mark, Row

_WORKERS = frozenset({"W003", "W001", "W007"})


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only of a row whose number follows the row below, and of which the worker says nothing yet."""
    said = {f.span.start for f in pattern.report.findings if f.code in _WORKERS}
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows[1:], 1):
            known = any(row.span.start <= s < row.span.end for s in said)
            if not known and only_report(pattern, item) is not None and _follows(part, at) and confirmed(pattern, part, at):
                yield from _row(pattern, part, at, row)


def _follows(part: Part, at: int) -> bool:
    """Consecutive numbers, and nothing that begins a new piece or goes to another edge."""
    before, row = part.rows[at - 1][1], part.rows[at][1]
    last, first = _number(before.label, last=True), _number(row.label, last=False)
    moved = any(isinstance(n, EdgeRun) or isinstance(n, Mark) and n.what == "attach" for n in row.body)
    ended = any(isinstance(n, Mark) and n.what == "fasten-off" for n in before.body)
    return last is not None and first == last + 1 and not moved and not ended and row.doubt == 0


def _number(label: Label | None, *, last: bool) -> int | None:
    which = None if label is None or label.also else label.last if last else label.first
    return which.at(0) if which is not None and len(which.values) == 1 else None


def _row(pattern: Pattern, part: Part, at: int, row: Row) -> Iterator[Finding]:
    short = []
    facts: dict[str, object] = {}
    for size in sizes(pattern):
        asks, stands, chains = flow(row.body, size), below(pattern, part, at, size), with_chains(pattern, part, at, size)
        if asks is not None and stands is not None and asks.takes > max(stands, chains or 0):
            short.append(pattern.report.sizes[size])
            facts = facts or {"label": row.label.text if row.label else "this row", "asks": asks.takes, "there": stands}
    if short:
        only = tuple(short) if len(short) < len(pattern.report.sizes) else None
        yield Finding("C041", row.label.span if row.label and row.label.span.end else row.span, facts, sizes=only)
