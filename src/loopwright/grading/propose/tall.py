"""How tall the rows of a blank are, and what stands below them: the same heights as her pattern is measured with."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.grading.propose.facts import Line


def above_mm(lines: Sequence[Line], at: int, rows: int) -> float:
    """The last so many rows worked before a line, together."""
    found = [h for line in lines[:at] if line.row.label is not None or line.row.printed for h in line.tall_mm]
    return sum(found[max(0, len(found) - rows) :]) if rows > 0 else 0.0


def rows_mm(lines: Sequence[Line], at: int, number: int, before: int, own: int) -> tuple[float, float] | None:
    """What one more of a number of rows brings, and what is there besides.

    `own`: how many of the number are rows of the line itself, or how often it is worked; the rest, and `before` rows more, come before.
    """
    tall = sum(lines[at].tall_mm)
    if own < 1 or not tall:
        return None
    step = tall / own
    return step, above_mm(lines, at, number + before - own) + tall - number * step
