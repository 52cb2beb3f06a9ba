"""Stitches that the row below skipped, worked as if they had been made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.checks.arithmetic import flow
from loopwright.checks.neighbours import below, only_report, sizes, sure_below
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Node, Repeat, Row, Skip


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Speaks only of a row that asks for exactly as many stitches too many as the row below skipped without chains over them."""
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows[1:], 1):
            report = only_report(pattern, item)
            if report is not None and sure_below(pattern, part, at):
                yield from _row(pattern, part, at, row)


def _row(pattern: Pattern, part: Part, at: int, row: Row) -> Iterator[Finding]:
    before = part.rows[at - 1][1]
    for size in sizes(pattern):
        skipped = _skipped(before.body, size)
        if not skipped:
            continue
        stands, asks = below(pattern, part, at, size), flow(row.body, size)
        if stands is None or asks is None:
            continue
        if asks.takes - stands == skipped:
            label = row.label.text if row.label else "this row"
            facts = {
                "label": label,
                "asks": asks.takes,
                "there": stands,
                "skipped": skipped,
                "before": before.label.text if before.label else "the row before",
            }
            yield Finding("C031", row.label.span if row.label and row.label.span.end else row.span, facts)
            return


def _skipped(nodes: Sequence[Node], size: int) -> int:
    """Stitches skipped in a row, without those that a chain goes over; 0 where not plain."""
    total = 0
    for at, node in enumerate(nodes):
        match node:
            case Skip() if node.thing.kind == "st" and not _bridged(nodes, at):
                total += node.n.at(size) or 0
            case Repeat() if node.mode in ("times", "more") and node.times:
                total += _skipped(node.nodes, size) * ((node.times.at(size) or 0) + (1 if node.mode == "more" else 0))
            case _:
                continue
    return total


def _bridged(nodes: Sequence[Node], at: int) -> bool:
    return any(isinstance(nodes[i], Chain) for i in (at - 1, at + 1) if 0 <= i < len(nodes))
