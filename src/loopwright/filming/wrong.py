"""What wrong looks like: the likeliest slip in a row, as answers to makers have it."""

from __future__ import annotations

from loopwright.answering.counts import CountAsked, count_is_off
from loopwright.filming.facts import FilmFacts
from loopwright.filming.rows import FilmRow
from loopwright.record import record


@record
class Wrong:
    """A count that is off, why, and how one sees it."""

    have: int
    want: int
    cause: str
    see: str


def wrong_in(facts: FilmFacts, row: FilmRow, own: str) -> Wrong | None:
    """The likeliest slip in a row, one stitch too few or too many; None where no cause is known but to count again."""
    at = _report_row(facts, row, own)
    if at is None or row.count is None or row.count < 3:
        return None
    for have in (row.count - 1, row.count + 1):
        answer = count_is_off(facts.report, CountAsked(at, facts.size, have, terms=facts.terms))
        if answer.causes and answer.causes[0].mark in ("join", "first", "last", "increase", "decrease"):
            return Wrong(have, row.count, answer.causes[0].title, answer.causes[0].see)
    return None


def _report_row(facts: FilmFacts, row: FilmRow, own: str) -> int | None:
    """The row's place in the report."""
    for i, r in enumerate(facts.report.rows):
        same = (r.section or "") == own and facts.line_of(facts.document.items[r.item].span.start) == row.line
        if same and r.counts[facts.size] == row.count:
            return i
    return None
