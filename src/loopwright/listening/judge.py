"""The fabric as judge: a reading of a row is worked on the rows before it, and costs what does not fit."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from loopwright.listening.bodies import Reading
from loopwright.model.report import RowReport
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source
from loopwright.working import work

_UNREAD, _DISAGREES, _FINDING, _NO_COUNT = 8.0, 4.0, 1.5, 2.0
_ENOUGH = 14  # readings worked for one row


@record
class Verdict:
    """The reading that was taken. `count`: what it makes; `agreed`: the count said is what it makes, None where none was said."""

    line: str
    count: int | None
    agreed: bool | None
    cost: float
    others: int = 0


class Judge:
    """Works readings on the rows of one section; equal rows are worked once, whatever is asked how often."""

    def __init__(self, terms: str) -> None:
        self.terms = terms
        self.memo: dict[Any, Any] = {}
        self.worked: dict[Any, Any] = {}

    def last_row(self, lines: Sequence[str]) -> tuple[RowReport | None, int]:
        """The last row that these lines make, and how many findings stand on the last line."""
        text = "\n".join((f"Terms: {self.terms.upper()}", "", *lines)) + "\n"
        source = Source.of(text)
        report = work(read(source, None, self.memo), self.worked)
        last = len(text) - len(lines[-1]) - 1
        on_it = sum(1 for f in report.findings if f.span.start >= last)
        rows = [r for r in report.rows if r.span.start >= last]
        return (rows[-1] if rows else None), on_it

    def choose(
        self, before: Sequence[str], label: str, choices: Sequence[Reading], frame: tuple[str, str], counts: Sequence[int],
    ) -> Verdict | None:
        """The reading that the fabric likes best. `frame`: what stands before and after the words of the row."""
        best: Verdict | None = None
        tried = 0
        for choice in choices[:_ENOUGH]:
            if best is not None and choice.cost >= best.cost:
                break
            tried += 1
            line = f"{label}: {sentence(frame[0] + choice.words + frame[1])}"
            row, findings = self.last_row([*before, line])
            cost = choice.cost + _FINDING * findings
            made = row.counts[0] if row is not None and row.counts else None
            agreed = self._agrees(row, counts)
            if row is None or not row.read or row.why_not:
                cost += _UNREAD
            elif made is None:
                cost += _NO_COUNT
            elif agreed is False:
                cost += _DISAGREES
            elif agreed and counts:
                cost += 0.3 * min(3, self._rank(row, counts))
            if best is None or cost < best.cost:
                best = Verdict(line, made, agreed, cost)
        return None if best is None else Verdict(best.line, best.count, best.agreed, best.cost, tried)

    def _agrees(self, row: RowReport | None, counts: Sequence[int]) -> bool | None:
        if row is None or not counts or not row.counts:
            return None
        return row.counts[0] in counts or bool(row.with_chains and row.with_chains[0] in counts)

    def _rank(self, row: RowReport, counts: Sequence[int]) -> int:
        made = {row.counts[0], *(row.with_chains or ())}
        return next((i for i, c in enumerate(counts) if c in made), len(counts))


def sentence(words: str) -> str:
    """Words as a sentence: a capital in front, a full stop behind."""
    bare = words.strip().rstrip(",;. ")
    at = next((i for i, c in enumerate(bare) if c.isalnum()), 0)
    return bare[:at] + bare[at : at + 1].upper() + bare[at + 1 :] + "."
