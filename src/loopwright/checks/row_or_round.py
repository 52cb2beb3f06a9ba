"""The word "Row" where the work goes round and is joined."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.tree import Join, Label, Mark, Row
from loopwright.source import Span

_WORD = re.compile(r"\b(r)(ow)(s?)\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """In whole patterns, and in parts that use both words: books and excerpts of one word only are left alone. Once per part."""
    for part in pattern.parts:
        kinds = {row.label.kind for _, row in part.rows if row.label}
        joined = [row for _, row in part.rows if _is_joined_row(row)]
        if not joined or not (pattern.whole or {"row", "rnd"} <= kinds):
            continue
        if (first := joined[0].label) is not None:
            yield _finding(pattern, first, joined)


def _is_joined_row(row: Row) -> bool:
    if row.label is None or row.label.kind != "row" or row.label.first is None:
        return False
    last = next((n for n in reversed(row.body) if not isinstance(n, Mark)), None)
    home = isinstance(last, Join) and (
        last.place is None or last.place.quant in ("first", "last") or last.place.thing.kind in ("tch", "ch")
    )
    return home and len(row.body) > 1 and not any(isinstance(n, Mark) and n.what == "turn" for n in row.body)


def _finding(pattern: Pattern, first: Label, joined: Sequence[Row]) -> Finding:
    edits = tuple(e for row in joined if row.label for e in _edits(pattern.document.text, row.label))
    better = _WORD.sub(_round, first.text)
    fix = Fix("call the rows that are joined rounds", edits) if edits else None
    return Finding("C014", _place(first), {"label": first.text, "better": better, "rows": len(joined)}, fix=fix)


def _edits(text: str, label: Label) -> Iterator[Edit]:
    span = _place(label)
    for m in _WORD.finditer(text, span.start, span.end):
        yield Edit(Span(m.start(), m.end()), _round(m))


def _round(m: re.Match[str]) -> str:
    """The word for a round, in the letters of the word for a row."""
    tail = "ND" if m[2].isupper() else "nd"
    return m[1] + tail + m[3]


def _place(label: Label) -> Span:
    return label.span
