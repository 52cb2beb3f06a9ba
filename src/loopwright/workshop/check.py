"""Read and work one pattern, and lay the result out as the command's JSON."""

from __future__ import annotations

from typing import Any

from loopwright.findings import Finding
from loopwright.findings.registry import message, severity, title
from loopwright.model.report import Report, RowReport
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def check_source(source: Source, terms: str | None = None) -> Report:
    """The report of a pattern as written."""
    return work(read(source, terms))


def as_json(source: Source, report: Report) -> dict[str, Any]:
    """One file's entry: rows, assumptions, findings."""
    return {
        "file": source.name,
        "title": report.title,
        "terms": report.terms,
        "sizes": list(report.sizes),
        "rows": [_row(source, r) for r in report.rows],
        "assumptions": [{"line": source.line_of(a.span.start), "message": a.message} for a in report.assumptions],
        "findings": [_finding(source, f) for f in report.findings],
    }


def _row(source: Source, row: RowReport) -> dict[str, Any]:
    return {
        "section": row.section, "label": row.label, "line": source.line_of(row.span.start), "read": row.read,
        "counts": list(row.counts), "with_chains": list(row.with_chains) if row.with_chains else None, "confirmed": row.confirmed,
        "made": {k: list(v) for k, v in row.made.items()}, "printed": list(row.printed) if row.printed else None, "agrees": row.agrees,
    }


def _finding(source: Source, found: Finding) -> dict[str, Any]:
    begin, end = source.position(found.span.start), source.position(found.span.end)
    return {
        "code": found.code, "name": title(found), "severity": severity(found), "line": begin.line, "column": begin.column,
        "end_line": end.line, "end_column": end.column, "message": message(found), "hints": list(found.hints),
        "sizes": list(found.sizes) if found.sizes else None, "fix": None,
    }
