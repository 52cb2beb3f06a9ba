"""A row told stitch by stitch whose stitches do not come to the printed count, nor to the row below, nor repeat into them."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.arithmetic import Flow, flow
from loopwright.checks.neighbours import below, only_report, sure_below
from loopwright.checks.pattern import Part, Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Join, Make, Mark, Row

MANY = 3  # so many plain instructions make a row that is told whole


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only of rows that the worker took as right by repeating them: one size, plain instructions, a confirmed row below."""
    if len(pattern.report.sizes) > 1:
        return
    for part in pattern.parts:
        for at, (item, row) in enumerate(part.rows):
            report = only_report(pattern, item)
            if report is not None and report.agrees and report.printed and report.printed_noun is None and sure_below(pattern, part, at):
                yield from _row(pattern, part, at, row, report.printed[0])


def _row(pattern: Pattern, part: Part, at: int, row: Row, printed: int | None) -> Iterator[Finding]:
    stands = below(pattern, part, at, 0)
    whole = flow(row.body)
    if printed is None or not stands or whole is None or row.doubt or not _plain(row):
        return
    starts = (0, 1) if any(isinstance(n, Chain) for n in row.body) else (0,)  # a start chain may stand for a stitch
    if any(_fits(whole, s, stands, printed) for s in starts):
        return
    label = row.label.text if row.label else "this row"
    yield Finding("C042", row.span, {"label": label, "makes": whole.gives, "takes": whole.takes, "printed": printed, "there": stands})


def _plain(row: Row) -> bool:
    made = [n for n in row.body if isinstance(n, Make)]
    return len(made) >= MANY and all(isinstance(n, Make | Mark | Join | Chain) for n in row.body)


def _fits(whole: Flow, start: int, stands: int, printed: int) -> bool:
    """The count or the row below is met, or the instructions are one repeat of a row that is met by both."""
    takes, gives = whole.takes + start, whole.gives + start
    if gives in (0, printed) or takes in (0, stands):
        return True
    return (stands - start) % whole.takes == 0 and (printed - start) % whole.gives == 0
