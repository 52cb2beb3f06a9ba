"""A label of several rows against the times that rows are repeated in them: "Rows 4-9: Rep Rows 2 and 3 4 more times"."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only where times are told; a range that ends within a repeat is left alone, since many are meant to."""
    for _, row in pattern.rows():
        label, order = row.label, row.order
        if label is None or label.first is None or label.last is None or label.also or label.alternate or row.doubt or order is None:
            continue
        period = len(order.rows) or order.last_n or 0
        if order.what not in ("repeat", "same-as") or not period or order.times is None:
            continue
        if order.section is not None or order.total_rows is not None:
            continue
        for size in range(max(1, len(pattern.report.sizes))):
            first, last, times = label.first.at(size), label.last.at(size), order.times.at(size)
            if first is None or last is None or times is None or last <= first or last - first + 1 == times * period:
                continue
            facts = {"label": label.text, "rows": last - first + 1, "times": times, "period": period, "makes": times * period}
            yield Finding("C048", label.span if label.span.end else row.span, facts)
            break
