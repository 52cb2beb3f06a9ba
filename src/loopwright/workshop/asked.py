"""A maker's question about a design: the rows that can be asked about, the answer out of the fabric, a drawing of the place, a note."""

from __future__ import annotations

import math
import re
from collections.abc import Callable
from dataclasses import replace
from functools import cached_property
from typing import Any, Literal

from loopwright.answering import (
    LOOKS,
    Answer,
    Cause,
    CountAsked,
    LooksAsked,
    balls_of_another,
    chain_is,
    chained,
    count_is_off,
    gauge_is_other,
    it_looks,
    measure_is_wanted,
    turned_by,
    turning_chain,
    woven_row,
    yarn_is_left,
)
from loopwright.model.measures import Measures, YarnAtHand
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Row
from loopwright.record import record
from loopwright.terms import dialect
from loopwright.workshop.live import Live, Seen
from loopwright.workshop.measure import Measured, Wanted, measure_source
from loopwright.workshop.yarn_at_hand import CannotTellError, metres_of, with_yarn_at_hand

Kind = Literal["count", "gauge", "yarn", "measure", "looks", "chain", "turning", "balls"]
MOST = 100_000  # stitches of a row, rows, metres: what is more is a slip of the keys
_ALONG = ("around", "width", "across")
_DRAWN = ("join", "first", "last", "increase", "decrease")
_OF_A_ROW = ("count", "chain", "turning")
_NEAR_MM = 1.0
_NOTE_LONG = 300
_ENDS = re.compile(r"\w+ \d+-\d+")
_NUMBERED = re.compile(r"(?P<word>\w+) (?P<n>\d+)")


class CannotAnswerError(Exception):
    """A question that cannot be answered; the message says what is missing."""


@record
class Question:
    """What is asked. `size`: index of the size; `row`: index among the report's rows; `have`, `before`: her counts after it and before it.

    `have` is her chains, where they are asked about. `stitches`, `rows`: her gauge to 10 cm. `look`: how the section of `measure` looks;
    `ball_m`: metres of a ball of hers. `amount`: her yarn, as in "600 m" or "2 balls". `measure`: section and name of a dimension,
    `want_mm` what it should be. `terms`: whose terms the answer is in.
    """

    kind: Kind
    size: int = 0
    row: int = -1
    have: int = -1
    before: int | None = None
    stitches: float = 0.0
    rows: float = 0.0
    amount: str = ""
    measure: tuple[str | None, str] = (None, "")
    want_mm: float = 0.0
    terms: str = "us"
    look: str = ""
    ball_m: float = 0.0


class Asked:
    """One text of a design, for as many questions as are asked of it; it is measured when the first question needs that."""

    def __init__(self, text: str, name: str = "pattern", seen: Seen | None = None) -> None:
        """`text`: the design as written; `seen`: the same, where it was seen already. Never raises for a text."""
        self.seen: Seen = seen or Live(name).see(text)
        self._reports: dict[int, Report] = {}

    @cached_property
    def measured(self) -> Measured:
        """The design in all its sizes."""
        return measure_source(self.seen.source, Wanted())

    def report(self, size: int) -> Report:
        """The report with every row called as it is in this size: the last of "Rnds 4-11" is "Rnd 9" where that size ends there."""
        if size not in self._reports:
            rows: list[RowReport] = []
            before: RowReport | None = None
            for row in self.seen.report.rows:
                worked = row.counts[size] is not None
                m = _ENDS.fullmatch(row.label) if worked and before is not None and before.item == row.item else None
                n = _NUMBERED.fullmatch(before.label) if before is not None and m is not None else None
                rows.append(replace(row, label=f"{n['word']} {int(n['n']) + 1}") if n is not None else row)
                before = rows[-1] if worked else before
            self._reports[size] = replace(self.seen.report, rows=tuple(rows))
        return self._reports[size]

    def rows(self, size: int) -> list[dict[str, Any]]:
        """Rows that a size works and whose count is known, in order. Raises CannotAnswerError for a size that there is none of."""
        self._size(size)
        return [
            {"row": i, "section": r.section, "label": r.label or r.section or "the row", "count": r.counts[size],
             "line": self.seen.source.line_of(r.span.start), "chained": chained(self.seen.report, i, size),
             "turning": turned_by(self.seen.report, i, size)[0]}
            for i, r in enumerate(self.report(size).rows) if r.counts[size] is not None
        ]  # fmt: skip

    def measures(self, size: int) -> list[dict[str, Any]]:
        """Dimensions of a size that can be asked about, laid flat. Raises CannotAnswerError."""
        self._size(size)
        return [
            {"section": d.section, "name": d.name, "mm": round(d.value_mm, 1)}
            for d in self._measures(size).dimensions if not d.worn and not d.relaxed
        ]

    def answer(self, question: Question) -> Answer:
        """The answer. Raises CannotAnswerError with a word on what is missing."""
        self._size(question.size)
        find: dict[Kind, Callable[[Question], Answer]] = {
            "count": self._count, "gauge": self._gauge, "yarn": self._yarn, "measure": self._measure, "looks": self._looks,
            "chain": self._chain, "turning": self._turning, "balls": self._balls,
        }
        return find[question.kind](question)

    def as_wire(self, question: Question) -> dict[str, Any]:
        """The answer with drawings of its causes' places. Raises CannotAnswerError."""
        found = self.answer(question)
        return {
            "heading": found.heading, "facts": list(found.facts), "text": found.text, **self._about(question),
            "causes": [
                {"title": c.title, "see": c.see, "mend": c.mend, "mark": c.mark, **self._drawing(question, c, i)}
                for i, c in enumerate(found.causes)
            ],
        }

    def note(self, row: int, words: str) -> str:
        """The text with a note below a row of it. Raises CannotAnswerError where it cannot stand there."""
        found = self.seen.report.rows
        said = " ".join(words.replace("(", " ").replace(")", " ").split())
        if not 0 <= row < len(found) or not said or len(said) > _NOTE_LONG:
            raise CannotAnswerError(f"a note needs a row and at most {_NOTE_LONG} characters")
        item = self.seen.document.items[found[row].item]
        if not isinstance(item, Row):
            raise CannotAnswerError("this row has no line of its own in the pattern")
        text = self.seen.source.text
        at = text.find("\n", item.span.end - 1) if "\n" in text[item.span.end - 1 :] else len(text)
        noted = f"{text[:at]}\n(Note: {said}){text[at:]}"
        again = Live(self.seen.source.name).see(noted).report
        if [(r.section, r.label, r.counts) for r in again.rows] != [(r.section, r.label, r.counts) for r in found]:
            raise CannotAnswerError("with this note the pattern would be read otherwise: say it in other words")
        return noted

    def _size(self, size: int) -> None:
        if not 0 <= size < max(1, len(self.seen.report.sizes)):
            raise CannotAnswerError("this design has no such size")

    def _measures(self, size: int) -> Measures:
        found = self.measured.sizes
        if size >= len(found):
            raise CannotAnswerError("this size could not be measured")
        return found[size]

    def _about(self, question: Question) -> dict[str, Any]:
        """Section and label of the row, name of the size, version: what a question is kept with."""
        names = self.seen.report.sizes
        row = self.report(question.size).rows[question.row] if question.kind in _OF_A_ROW else None
        return {
            "size": names[question.size] if names else "one size", "version": self.seen.as_wire()["version"] or "",
            "section": (row.section or "") if row else question.measure[0] or "", "label": (row.label or row.section or "") if row else "",
        }

    def _row(self, question: Question) -> None:
        if not 0 <= question.row < len(self.seen.report.rows):
            raise CannotAnswerError("choose a row: this design has no such row")

    def _looks(self, question: Question) -> Answer:
        if question.look not in LOOKS:
            raise CannotAnswerError("say how it looks")
        gauge = self.seen.stitches if self.seen.stitches is not None and not self.seen.stitches.guessed else None
        wide, tall = (None, None) if gauge is None else (gauge.width_mm, gauge.row_mm)
        asked = LooksAsked(question.look, question.size, question.measure[0], wide, tall, question.terms)
        try:
            return it_looks(self.report(question.size), asked)
        except ValueError:
            raise CannotAnswerError("this section has no rows in this size: choose another") from None

    def _chain(self, question: Question) -> Answer:
        self._row(question)
        if not 0 <= question.have <= MOST:
            raise CannotAnswerError(f"a count is a whole number up to {MOST:,}")
        try:
            return chain_is(self.report(question.size), question.row, question.size, question.have, question.terms)
        except ValueError:
            raise CannotAnswerError("this row is not worked into a chain: choose the first row after one") from None

    def _turning(self, question: Question) -> Answer:
        self._row(question)
        try:
            return turning_chain(self.report(question.size), question.row, question.size, question.terms)
        except ValueError:
            raise CannotAnswerError("this row begins with no chain: choose one that does") from None

    def _balls(self, question: Question) -> Answer:
        self._measures(question.size)
        if not _real(question.ball_m):
            raise CannotAnswerError("say how many metres a ball of her yarn has")
        try:
            return balls_of_another(self.measured.sizes, question.size, question.ball_m)
        except ValueError:
            raise CannotAnswerError("the yarn of this size is not known: it needs a gauge, and rows that can be worked") from None

    def _count(self, question: Question) -> Answer:
        self._row(question)
        if not 0 <= question.have <= MOST or (question.before is not None and not 0 <= question.before <= MOST):
            raise CannotAnswerError(f"a count is a whole number up to {MOST:,}")
        asked = CountAsked(question.row, question.size, question.have, question.before, question.terms)
        try:
            return count_is_off(self.report(question.size), asked)
        except ValueError:
            raise CannotAnswerError("this size has no count in this row") from None

    def _gauge(self, question: Question) -> Answer:
        pattern = self.seen.stitches
        if pattern is None or pattern.guessed:
            raise CannotAnswerError("the pattern tells no gauge yet: it needs a line such as 'Gauge: 17 hdc and 13 rnds = 10 cm'")
        if not (_real(question.stitches) and _real(question.rows)):
            raise CannotAnswerError("a gauge is stitches and rows to 10 cm, both above nought")
        own_mm = (100 / question.stitches, 100 / question.rows)
        stitch = dialect(question.terms).term(pattern.kind).short
        said = _gauge_said(100 / pattern.width_mm, 100 / pattern.row_mm, stitch)
        own = _gauge_said(question.stitches, question.rows, stitch)
        self._measures(question.size)
        return gauge_is_other(self.measured.sizes, question.size, said, (pattern.width_mm, pattern.row_mm), own, own_mm)

    def _yarn(self, question: Question) -> Answer:
        self._measures(question.size)
        if not question.amount.strip():
            raise CannotAnswerError("say how much yarn there is, as in 300 m, 150 g or 2 balls")
        try:
            have_m = metres_of(question.amount[:40], self.measured.yarn)
            if not 0 < have_m <= MOST:
                raise CannotAnswerError("an amount of yarn is above nought")
            at_hand = self._where_it_ends(question.size, have_m)
            return yarn_is_left(self.measured.sizes, question.size, have_m, at_hand)
        except CannotTellError as e:
            raise CannotAnswerError(str(e)) from None
        except ValueError:
            raise CannotAnswerError("the yarn of this size is not known: it needs a gauge, and rows that can be worked") from None

    def _where_it_ends(self, size: int, have_m: float) -> YarnAtHand | None:
        """What measuring says of so much yarn; a row without a label is called by its number in its section."""
        at_hand = with_yarn_at_hand(self.measured, f"{have_m:.3f} m").sizes[size].at_hand
        fabric = self.measured.fabrics[size]
        if at_hand is None or at_hand.row is None or fabric is None or fabric.rows[at_hand.row].label:
            return at_hand
        row = fabric.rows[at_hand.row]
        nth = sum(r.section == row.section and r.piece == row.piece for r in fabric.rows[: at_hand.row + 1])
        return replace(at_hand, label=f"{'row' if row.turned else 'round'} {nth}")

    def _measure(self, question: Question) -> Answer:
        section, name = question.measure
        if not _real(question.want_mm):
            raise CannotAnswerError("a measure is above nought")
        known = self._measures(question.size).dimensions
        found = next((d for d in known if (d.section, d.name, d.worn) == (section, name, False)), None)
        if found is None:
            raise CannotAnswerError("this design has no such measure")
        wide = self.seen.stitches.width_mm if self.seen.stitches is not None and name in _ALONG else None
        multiple, plus = self._multiple(question.size, found.value_mm) if wide else (1, 0)
        return measure_is_wanted(self.measured.sizes, section, name, question.want_mm, wide, multiple, plus)

    def _multiple(self, size: int, value_mm: float) -> tuple[int, int]:
        """The multiple that the number behind a measure must keep, and what comes on top of it."""
        graded = self.seen.graded
        numbers = graded.sizes[size].numbers if graded is not None and size < len(graded.sizes) else ()
        for n in numbers:
            if n.unit.startswith("st") and n.achieved_mm is not None and abs(n.achieved_mm - value_mm) < _NEAR_MM and n.multiple > 1:
                return n.multiple, n.value % n.multiple
        return 1, 0

    def _drawing(self, question: Question, cause: Cause, number: int) -> dict[str, Any]:
        """The place of a cause, drawn, where it has one in the fabric."""
        if cause.mark not in _DRAWN or question.kind != "count":
            return {}
        from loopwright.drawing.place import place_drawing  # noqa: PLC0415 - only where it is looked at

        report = self.seen.report
        fabric = report.fabrics[question.size] if question.size < len(report.fabrics) else None
        at = woven_row(report, question.row, question.size)
        want = report.rows[question.row].counts[question.size] or 0
        if fabric is None or at is None:
            return {}
        more = question.have > want
        drawn = place_drawing(fabric, at, cause.mark, more=more, note=_NOTES[cause.mark, more], ident=f"place-{number}")  # type: ignore[arg-type]
        return {} if drawn is None else {"svg": drawn.svg, "description": drawn.description}


_NOTES = {
    ("join", True): ("not here,", "in the sl st"), ("join", False): ("passed over",),
    ("first", True): ("not here: the", "chain is one"), ("first", False): ("passed over",),
    ("last", True): ("not here",), ("last", False): ("one more, into the", "top of the chain"),
    ("increase", True): ("one of these", "is too many"), ("increase", False): ("one of these", "is missing"),
    ("decrease", True): ("one of these", "is missing"), ("decrease", False): ("one of these", "is too many"),
}


def _real(n: float) -> bool:
    return math.isfinite(n) and 0.01 < n <= MOST


def _gauge_said(stitches: float, rows: float, stitch: str) -> str:
    return f"{stitches:.4g} {stitch} and {rows:.4g} rows to 10 cm"
