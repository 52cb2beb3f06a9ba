"""The law of wording: the text read back and worked gives the same counts and the same stitches in every row."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.grading import grade
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Document
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write
from loopwright.working import work

WAYS = [(terms, full, spelled) for terms in ("us", "uk") for full in (False, True) for spelled in (False, True)]
_NOT_STITCHES = frozenset({"group", "repeat"})


@dataclass(frozen=True)
class Worked:
    """A document with its report."""

    document: Document
    report: Report


def worked(text: str, terms: str | None = None) -> Worked:
    document = read(Source.of(text), terms)
    return Worked(document, work(document))


def graded(text: str) -> Worked:
    """A design with its blanks filled, and its report; a plain pattern is graded too, to its own numbers."""
    made = grade(read(Source.of(text)), work)
    assert made.report is not None
    return Worked(made.document, made.report)


def facts(report: Report, size: int | None = None) -> list[tuple[object, ...]]:
    """Counts and stitches of each row; of one size, without the rows that it does not work or that could not be worked."""
    rows = [_row(r, size) for r in report.rows]
    return [r[:2] for r in rows if size is None or r[0] is not None]


def same(first: Report, second: Report, size: int | None = None) -> bool:
    """Whether every row of the first that could be worked is so again. A row that could not may well be."""
    if size is not None:
        return facts(second, 0) == facts(first, size) and _fabric(second, 0) == _fabric(first, size)
    if any(_fabric(second, i) != _fabric(first, i) for i in range(len(first.fabrics)) if all(r.read for r in first.rows)):
        return False
    before, after = facts(first), facts(second)
    return len(before) == len(after) and all(a == b for a, b, row in zip(before, after, first.rows, strict=True) if row.read)


def _fabric(report: Report, size: int) -> tuple[object, ...]:
    """What was worked into what, stitch by stitch."""
    made = report.fabrics[size]
    if made is None:
        return ()
    names = {i: made.kinds[k] for i, k in made.counts_as.items()}
    return [made.kinds[k] for k in made.kind], list(made.row), list(made.into), list(made.many), bytes(made.place), bytes(made.role), made.extra, names


def _row(row: RowReport, size: int | None) -> tuple[object, ...]:
    if size is None:
        made = {k: v for k, v in row.made.items() if k not in _NOT_STITCHES and any(v)}
        return row.counts, tuple(sorted(made.items())), row.read
    one = {k: v[size] for k, v in row.made.items() if k not in _NOT_STITCHES and v[size]}
    return row.counts[size], tuple(sorted(one.items())), row.read


def again(first: Worked, terms: str, size: int | None, full: bool, spelled: bool) -> tuple[str, Report]:
    """The text written and the report of reading and working it."""
    text = write(first.document, first.report, terms=terms, size=size, full_words=full, spelled_out=spelled)
    return text, work(read(Source.of(text), terms))
