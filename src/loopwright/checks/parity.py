"""Counts that are odd in some sizes and even in others where the next row works in pairs."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.arithmetic import flow
from loopwright.checks.neighbours import below, only_report, sizes, with_chains
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Repeat, Row


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only of a row with a repeat over an even number of stitches to its end, by what it stands on; once per part."""
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            repeat = None if _agrees(pattern, item) else _pairs(row)
            stands = [below(pattern, part, at, size) for size in sizes(pattern)] if repeat else []
            odd = [n % 2 == 1 for n in stands if n is not None]
            chained = any(
                with_chains(pattern, part, at, size) for size in sizes(pattern)
            )  # chains or stitches: which are worked is not sure
            if repeat is None or chained or len(odd) != len(stands) or not 0 < sum(odd) < len(odd):
                continue
            rare = sum(odd) * 2 <= len(odd)
            few = tuple(s for s, o in zip(pattern.report.sizes, odd, strict=True) if o == rare)
            span = repeat.span if repeat.span.end else row.span
            yield Finding("C022", span, {"sizes": ", ".join(few), "is": "odd" if rare else "even"}, sizes=few)
            break


def _agrees(pattern: Pattern, item: int) -> bool:
    """A printed count that agrees shows that the row comes out."""
    report = only_report(pattern, item)
    return report is not None and report.agrees is True


def _pairs(row: Row) -> Repeat | None:
    for node in row.body:
        if isinstance(node, Repeat) and node.mode in ("end", "left") and not node.ending:
            inside = flow(node.nodes)
            if inside is not None and inside.takes >= 2 and inside.takes % 2 == 0:
                return node
    return None
