"""Shaping rows shared over rows, in the words of the trade: "every 6th row 3 times, then every 5th row twice".

Source of the sum: handbooks of shaping; for R rows and P events a = floor(R / P), r = R - a*P: every (a + 1)th row r times, every ath
P - r times.
"""

from __future__ import annotations

from loopwright.record import record


@record
class Step:
    """Shape on every `every`th row, `times` times."""

    every: int
    times: int

    @property
    def rows(self) -> int:
        """Rows that it takes."""
        return self.every * self.times


def schedule(rows: int, events: int) -> tuple[Step, ...]:
    """Events over rows, the wider spacing first: 108 rows and 11 events are every 10th row 9 times, every 9th twice.

    Raises ValueError when there are more events than rows.
    """
    if events > rows:
        raise ValueError(f"{events} shaping rows do not fit in {rows} rows: shape twice as much in each, or work more rows")
    if events <= 0:
        return ()
    every, wider = divmod(rows, events)
    steps = (Step(every + 1, wider), Step(every, events - wider))
    return tuple(s for s in steps if s.times)
