"""The sheet of paper and the form in which rows stand on it."""

from __future__ import annotations

from typing import Literal

from loopwright.publishing.document import Paper, Publication
from loopwright.record import record

Form = Literal["columns", "brackets", "ledger", "far"]
"""How rows stand: sizes in columns; sizes in brackets in one wide column; counts on a ruler in the margin; large print."""

POINT_MM = 25.4 / 72
MOST_COLUMNS = 12  # sizes: with more of them the words would have less room than the numbers
NOTES_MM = 55.0
_PAPERS: dict[Paper, tuple[float, float]] = {"a4": (210.0, 297.0), "letter": (215.9, 279.4), "phone": (90.0, 160.0)}
_INCH_MM = 25.4
_WORDS_SHARE: dict[Form, float] = {"columns": 0.33, "brackets": 0.75, "ledger": 0.46, "far": 1.0}  # of the width, for the words of rows
_COLUMN_MM = {1: 26.0, 2: 18.0, 3: 16.0, 4: 15.0, 5: 13.0, 6: 12.0, 7: 10.6, 8: 9.6, 9: 8.8, 10: 8.1, 11: 7.6, 12: 7.2}


@record
class Sheet:
    """Measures of a page, mm. `words_pt`: size of its type. """

    form: Form
    paper: Paper
    width_mm: float
    height_mm: float
    side_mm: float
    top_mm: float
    bottom_mm: float
    words_pt: float

    @property
    def inner_mm(self) -> float:
        """Width between the margins."""
        return self.width_mm - 2 * self.side_mm

    @property
    def high_mm(self) -> float:
        """Height between the margins."""
        return self.height_mm - self.top_mm - self.bottom_mm

    @property
    def longest(self) -> int:
        """Letters of a row that surely fit on one page; longer ones may run on to the next."""
        a_line = self.inner_mm * _WORDS_SHARE[self.form] / (self.words_pt * 0.52 * POINT_MM)
        lines = self.high_mm / (self.words_pt * 1.45 * POINT_MM)
        return int(a_line * lines * 0.7)


def form_of(publication: Publication) -> Form:
    """How the rows of a publication stand on its paper."""
    edition, sizes = publication.edition, len(publication.sizes)
    design = edition.laid(sizes)
    if design == "far":
        return "far"
    if edition.paper == "phone" or (design == "columns" and sizes > MOST_COLUMNS):
        return "brackets"
    return "ledger" if design == "ledger" else "columns"


def sheet_of(publication: Publication) -> Sheet:
    """The sheet of a publication."""
    form, paper = form_of(publication), publication.edition.paper
    width_mm, height_mm = _PAPERS[paper]
    if paper == "phone":
        return Sheet(form, paper, width_mm, height_mm, 7.0, 8.0, 14.0, 24.0 if form == "far" else 11.0)
    if form == "far":
        return Sheet(form, paper, width_mm, height_mm, _INCH_MM, _INCH_MM, _INCH_MM, 24.0)
    return Sheet(form, paper, width_mm, height_mm, 18.0, 17.0, 21.0, 12.0 if form == "ledger" else 10.5)


def column_mm(sizes: int) -> float:
    """How wide the column of a size is."""
    return _COLUMN_MM[max(1, min(sizes, MOST_COLUMNS))]
