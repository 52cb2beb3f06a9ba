"""What the worker found, told in full: a wrong count in every size, with its mend. Not a rule."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.findings import Edit, Finding, Fix
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Count, Document, Row
from loopwright.source import Span
from loopwright.terms import dialect


def with_mends(document: Document, report: Report) -> tuple[Finding, ...]:
    """The report's own findings; a count that disagrees tells its numbers for all sizes, and gets a mend unless the next row needs it.

    The mend is not a safe one: the row may be what is wrong.
    """
    return tuple(_mended(document, report, f) if f.code == "W001" and f.fix is None else f for f in report.findings)


def _mended(document: Document, report: Report, found: Finding) -> Finding:
    for at, row in enumerate(report.rows):
        item = document.items[row.item]
        if row.agrees is not False or not row.read or not isinstance(item, Row) or not item.span.start <= found.span.start <= item.span.end:
            continue
        count = next((c for c in item.printed if c.scope == "row"), None)
        if count is None:
            return found
        made = _made(row, count)
        noun = f" {dialect(document.terms).term(count.noun).short}" if count.noun else ""
        found = replace(found, args={**found.args, "printed": _said(row.printed or ()) + noun, "made": _said(_asked(made, row.printed))})
        after = report.rows[at + 1] if at + 1 < len(report.rows) else None
        if after is not None and after.section == row.section and after.agrees:
            return found  # the rows that follow are right with the number printed: it is the row that is wrong
        return replace(found, fix=_fix(document.text, count, made))
    return found


def _asked(made: Sequence[int | None], printed: Sequence[int | None] | None) -> Sequence[int | None]:
    """What was made in the sizes that a count is printed for."""
    if printed is None or len(printed) != len(made):
        return made
    return [m if p is not None else None for m, p in zip(made, printed, strict=True)]


def _said(numbers: Sequence[int | None]) -> str:
    """Numbers of the sizes as patterns tell them: 60 (64, 72); one number where all are the same."""
    words = ["-" if n is None else str(n) for n in numbers]
    return words[0] if len(set(words)) == 1 else f"{words[0]} ({', '.join(words[1:])})" if words else "?"


def _made(row: RowReport, count: Count) -> Sequence[int | None]:
    return row.made.get(count.noun or "", row.counts)


def _fix(text: str, count: Count, made: Sequence[int | None]) -> Fix | None:
    """The printed numbers replaced one by one; None where they do not stand in figures, one for each size."""
    span = count.n.span if count.n.span.end else count.span
    numbers = list(re.finditer(r"\d+", text[span.start : span.end]))
    told = [v for v in count.n.values if v is not None]
    right = [m for v, m in zip(count.n.values, made, strict=False) if v is not None]
    if len(told) == 1:
        right = right[:1] if len(set(made)) == 1 else []
    if len(numbers) < len(told) or len(right) != len(told) or any(r is None for r in right):
        return None
    edits = tuple(
        Edit(Span(span.start + m.start(), span.start + m.end()), str(r))
        for m, r in zip(numbers, right, strict=False)
        if int(m.group()) != r
    )
    said = ", ".join(e.text for e in edits)
    return Fix(f"print {said}", edits, safe=False) if edits else None
