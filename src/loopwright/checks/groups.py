"""A bracket of several stitches "n times" that could go into one stitch or over several: "(2 sc, 4 dc) 4 times"."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.neighbours import only_report
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Make, Mark, Repeat, Row

_NUMBER_FIRST = re.compile(r"[(\[]\s*\d+\s*[A-Za-z]")


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Speaks only where no printed count confirms how the bracket was worked."""
    for item, row in pattern.rows():
        report = only_report(pattern, item)
        if report is not None and report.agrees is True:
            continue
        yield from _row(pattern, row)


def _row(pattern: Pattern, row: Row) -> Iterator[Finding]:
    for node in row.body:
        if not isinstance(node, Repeat) or node.mode not in ("times", "more"):
            continue
        inside = [n for n in node.nodes if not isinstance(n, Mark)]
        made = [n for n in inside if isinstance(n, Make)]
        words = pattern.document.text[node.span.start : node.span.end]
        if len(made) != len(inside) or len(made) < 2 or not _NUMBER_FIRST.match(words):
            continue
        shaped = any(n.kind in ("inc", "dec", "sl st") or "tog" in n.kind or n.place is not None for n in made)
        several = any((n.n.at(0) or 1) > 1 for n in made)
        if not shaped and several and len({n.kind for n in made}) > 1:
            total = sum(n.n.at(0) or 1 for n in made)
            yield Finding("C003", node.span, {"stitches": total, "times": node.times.at(0) if node.times else None})
