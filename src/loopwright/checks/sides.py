"""Right and wrong side as told against the turns between two rows."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Part, Pattern, standing
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.tree import Mark, Row
from loopwright.source import Span

_NO_TURN = re.compile(
    r"\b(?:do not|don['’]t|without|never)\s+turn|\bfasten off\b|\bbreak off\b|\brejoin\b|"
    r"\bjoin\b[^.;]{0,30}\b(?:yarn|thread|[A-H]|MC|CC)\b",
    re.IGNORECASE,
)
_SIDE = re.compile(r"\b(RS|WS|right side|wrong side)\b", re.IGNORECASE)
_OTHER = {"RS": "WS", "WS": "RS", "rs": "ws", "ws": "rs", "right side": "wrong side", "wrong side": "right side"}
_WORDS = {"RS": "right side", "WS": "wrong side"}


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Between two rows of one part that tell their side, every turn must be plain: "turn" said in each row, or in none."""
    for part in pattern.parts:
        yield from _part(pattern, part)


def _part(pattern: Pattern, part: Part) -> Iterator[Finding]:
    known: Row | None = None
    turns: int | None = 0
    habit = {bool(_turned(row)) for _, row in part.rows if row.label and row.label.kind == "row" and row.order is None}
    for _, row in part.rows:
        if row.side is not None:
            if known is not None and known.side is not None and turns is not None and (known.side == row.side) != (turns % 2 == 0):
                yield _finding(pattern, known, row, turns)  # the rows behind it are held against the one before
            else:
                known, turns = row, 0
        step = _turns(pattern, part, row, len(habit) == 1)
        turns = None if step is None or turns is None else turns + step


def _turned(row: Row) -> bool:
    return any(isinstance(n, Mark) and n.what == "turn" for n in row.body)


def _turns(pattern: Pattern, part: Part, row: Row, one_habit: bool) -> int | None:
    """How often the work is turned from this row to the next; None where that is not plain. "As Row 2" is turned as that one is."""
    label = row.label
    if label is None or label.kind == "none" or row.doubt or label.first is None or label.last is None or label.also or label.alternate:
        return None
    first, last = label.first.values, label.last.values
    if len(first) != 1 or len(last) != 1 or first[0] is None or last[0] is None or standing(_NO_TURN, pattern.words(row)):
        return None
    rows = last[0] - first[0] + 1
    told = row if row.order is None else _same_as(part, row)
    if told is None or rows < 1:
        return None
    if _turned(told):
        return rows
    if label.kind == "rnd":
        return 0
    return rows if one_habit else None


def _same_as(part: Part, row: Row) -> Row | None:
    """The row of this part that a row is told by; None where it is told by several, or by none that is told itself."""
    order = row.order
    if order is None or order.what != "same-as" or len(order.rows) != 1 or order.section is not None:
        return None
    told = (r for _, r in part.rows if r.order is None and r.label is not None and r.label.first is not None)
    return next((r for r in told if r.label is not None and r.label.first is not None and r.label.first.values == order.rows), None)


def _finding(pattern: Pattern, known: Row, row: Row, turns: int) -> Finding:
    side = row.side or "RS"
    facts = {
        "label": row.label.text if row.label else "this row",
        "side": _WORDS[side],
        "before": known.label.text if known.label else "an earlier row",
        "other": _WORDS[known.side or "RS"],
        "turns": "1 turn" if turns == 1 else f"{turns} turns" if turns else "no turn",
    }
    span = row.label.span if row.label and row.label.span.end else row.span
    m = _SIDE.search(pattern.document.text, span.start, span.end)
    if m is None:
        return Finding("C015", span, facts)
    place = Span(m.start(), m.end())
    words = _OTHER.get(m.group()) or _OTHER[m.group().lower()]
    return Finding("C015", place, facts, fix=Fix(f"say {words}", (Edit(place, words),), safe=False))
