"""What a row told by another one has otherwise."""

from __future__ import annotations

from loopwright.record import record

LOOP = "loop"


@record
class Instead:
    """So many of a stitch in place of others: "6 dc instead of 5". `kind`: None where no stitch is named; `old`: None where that is not told.

    A loop less in each row is `LOOP`, -1.
    """

    kind: str | None
    old: int | None
    new: int
