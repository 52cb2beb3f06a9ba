"""What the worker found, told in full: a wrong count in every size, with its mend. Not a rule."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from loopwright.checks.lists import said
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Count, Document, Row
from loopwright.source import Span
from loopwright.terms import dialect
from loopwright.trade.counted import counted


def with_mends(document: Document, report: Report) -> tuple[Finding, ...]:
    """The report's own findings; a count that disagrees tells its numbers for all sizes, and gets a mend unless the next row needs it.

    The mend is not a safe one: the row may be what is wrong.
    """
    found = _grouped(document, report.findings)
    return tuple(_mended(document, report, f) if f.code == "W001" and f.fix is None else f for f in found)


def _grouped(document: Document, findings: Sequence[Finding]) -> list[Finding]:
    """Words that were not understood are told once for each row, not one by one."""
    rows = [i.span for i in document.items if isinstance(i, Row)]
    found: list[Finding] = []
    first: dict[Span, int] = {}
    for f in findings:
        row = next((r for r in rows if r.start <= f.span.start < r.end), None) if f.code == "N002" else None
        if row is None or row not in first:
            if row is not None:
                first[row] = len(found)
            found.append(f)
            continue
        before = found[first[row]]
        found[first[row]] = replace(before, args={**before.args, "words": f"{before.args['words']}; {f.args['words']}"})
    return found


def _mended(document: Document, report: Report, found: Finding) -> Finding:
    for at, row in enumerate(report.rows):
        item = document.items[row.item]
        if row.agrees is not False or not row.read or not isinstance(item, Row) or not item.span.start <= found.span.start <= item.span.end:
            continue
        count = _wrong(item, row)
        if count is None:
            return found
        made = _made(row, count)
        told = [count.n.at(size) if row.printed is None or row.printed[size] is not None else None for size in range(len(made))]
        noun = f" {dialect(document.terms).term(count.noun).short}" if count.noun else ""
        found = replace(found, args={**found.args, "printed": said(told) + noun, "made": said(_asked(made, told))})
        after = report.rows[at + 1] if at + 1 < len(report.rows) else None
        if after is not None and after.section == row.section and after.agrees and not _taken_whole(report, row, after):
            return found  # the rows that follow are right with the number printed: it is the row that is wrong
        if after is not None and after.section == row.section and after.agrees is False:
            return found  # the next count does not come out either: with the number made it would be as wrong
        return replace(found, fix=_fix(document.text, count, made))
    return found


def _taken_whole(report: Report, row: RowReport, after: RowReport) -> bool:
    """Whether the next row is worked into every stitch of this one as it was made, so that only the number printed can be wrong."""
    for fabric in report.fabrics:
        if fabric is None:
            continue
        at = next((i for i, r in enumerate(fabric.rows[:-1]) if (r.item, r.label) == (row.item, row.label)), None)
        if at is None or (fabric.rows[at + 1].item, fabric.rows[at + 1].label) != (after.item, after.label):
            return False
        this, following = fabric.rows[at], fabric.rows[at + 1]
        taken = {p for s in range(following.start, following.end) for p in fabric.parents(s)}
        if sum(this.start <= p < this.end for p in taken) < sum(fabric.counted(this).values()):
            return False
    return any(f is not None for f in report.fabrics)


def _wrong(item: Row, row: RowReport) -> Count | None:
    """The first of the counts printed for the row that is not what was made, else the first."""
    counts = [c for c in item.printed if c.scope == "row"]
    if counts and row.printed is not None and counts[0].n.at(0) != row.printed[0]:
        counts = [c for c in counts if c.n.at(0) == row.printed[0]] or counts  # of several rows that each have one
    for count in counts:
        pairs = [(count.n.at(size), m) for size, m in enumerate(_made(row, count)) if m is not None]
        if any(told is not None and told != m for told, m in pairs):
            return count
    return counts[0] if counts else None


def _asked(made: Sequence[int | None], printed: Sequence[int | None] | None) -> Sequence[int | None]:
    """What was made in the sizes that a count is printed for."""
    if printed is None or len(printed) != len(made):
        return made
    return [m if p is not None else None for m, p in zip(made, printed, strict=True)]


def _made(row: RowReport, count: Count) -> Sequence[int | None]:
    return counted(row.made, count.noun, row.counts)


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
    right_ones = ", ".join(e.text for e in edits)
    return Fix(f"print {right_ones}", edits, safe=False) if edits else None
