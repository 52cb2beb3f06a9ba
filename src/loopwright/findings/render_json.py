"""Findings as the JSON of the commands: lines and columns from 1, code points; edits also in UTF-16 units for editors."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from loopwright.findings.model import Edit, Finding, Fix
from loopwright.findings.registry import hints, message, severity, title
from loopwright.source import Source, Span


def as_json(source: Source, findings: Iterable[Finding]) -> list[dict[str, Any]]:
    """One object per finding, in the order given."""
    return [one(source, f) for f in findings]


def one(source: Source, found: Finding) -> dict[str, Any]:
    """A finding as an object: code, name, severity, place, message, hints, sizes, fix."""
    return {
        "code": found.code,
        "name": title(found),
        "severity": severity(found),
        **_place(source, found.span),
        "message": message(found),
        "hints": list(hints(found)),
        "sizes": list(found.sizes) if found.sizes else None,
        "fix": _fix(source, found.fix) if found.fix else None,
    }


def _place(source: Source, span: Span) -> dict[str, int]:
    begin, end = source.position(span.start), source.position(span.end)
    return {"line": begin.line, "column": begin.column, "end_line": end.line, "end_column": end.column}


def _fix(source: Source, fix: Fix) -> dict[str, Any]:
    return {"title": fix.title, "safe": fix.safe, "edits": [_edit(source, e) for e in fix.edits]}


def _edit(source: Source, edit: Edit) -> dict[str, Any]:
    return {
        **_place(source, edit.span),
        "start_utf16": source.utf16(edit.span.start),
        "end_utf16": source.utf16(edit.span.end),
        "text": edit.text,
    }
