"""What a film is planned from: the pattern worked and measured, and the size that is on camera. All of it is given."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field

from loopwright.model.cautions import CautionDue
from loopwright.model.fabric import Fabric, FabricRow
from loopwright.model.measures import Measures
from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.record import record


def _nothing(_row: FabricRow) -> tuple[str, int] | None:
    return None


@record
class FilmFacts:
    """A pattern with its blanks filled, and what is asked for.

    `size`: index of the size on camera. `terms`: us, uk or old, which matter for English alone; `language`: a code. `fabric`: of that size.
    `measures`: one per size. `speeds`: seconds a stitch by kind (US key), as timed; {} for the table's. `as_made`: one round of a row's
    repeat in few words and how often it is worked, for rows whose own words only say to go on; None where there is no more to say.
    `line_of`: line of the design by a position in its text.
    """

    document: Document
    report: Report
    size: int
    terms: str
    language: str
    fabric: Fabric | None
    measures: tuple[Measures, ...]
    cautions: tuple[CautionDue, ...] = ()
    speeds: Mapping[str, float] = field(default_factory=dict)
    as_made: Callable[[FabricRow], tuple[str, int] | None] = _nothing
    line_of: Callable[[int], int] = int
    left_handed: bool = False

    @property
    def sizes(self) -> tuple[str, ...]:
        """Names of the sizes; "one size" where it has one without a name."""
        return self.document.sizes or ("one size",)
