"""Slopes of whole rows: sleeves, necks, shoulders. So many shaping rows shared over so many rows (the sum: `model.tapers`)."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from loopwright.grading.spread import even
from loopwright.model.tapers import Step, schedule

__all__ = [
    "Step", "alternating", "compound", "events_of", "neck", "pairs", "rows_of", "schedule", "slope", "turned_rows", "within",
]


def pairs(wide: int, narrow: int) -> int:
    """Shaping rows with one stitch at each end between two widths. Raises ValueError where they differ by an odd number."""
    if (wide - narrow) % 2:
        raise ValueError(f"{wide} and {narrow} differ by an odd number: no whole pairs; change one of them by 1")
    return abs(wide - narrow) // 2


def turned_rows(rows: int, events: int) -> tuple[Step, ...]:
    """The same with even spacings only, so that all shaping falls on one side: rows are counted in pairs, an odd one stays plain."""
    return tuple(Step(2 * s.every, s.times) for s in schedule(rows // 2, events))


def alternating(rows: int, events: int) -> tuple[int, ...]:
    """The rows (from 1) that shape, wider and narrower spacings mixed as evenly as can be, for a straight line."""
    if events > rows:
        raise ValueError(f"{events} shaping rows do not fit in {rows} rows")
    return tuple(itertools.accumulate(even(rows, events)))


def within(rows: int, events: int, plain_before: int, plain_after: int) -> tuple[Step, ...]:
    """A schedule that leaves rows plain at both ends."""
    return schedule(rows - plain_before - plain_after, events)


def rows_of(steps: Sequence[Step]) -> int:
    """Rows that a schedule takes."""
    return sum(s.rows for s in steps)


def events_of(steps: Sequence[Step]) -> int:
    """Shaping rows of a schedule."""
    return sum(s.times for s in steps)


def compound(rows: int, events: int, close: int = 2, wide: int = 4) -> tuple[Step, ...] | None:
    """Two spacings that use exactly the rows and the events: x + y = events, close*x + wide*y = rows; None where no whole numbers do.

    For a raglan where every other row alone would land on the chest or on the depth, not on both.
    """
    if wide == close:
        return (Step(close, events),) if rows == close * events else None
    y, rest = divmod(rows - close * events, wide - close)
    if rest or y < 0 or y > events:
        return None
    return tuple(s for s in (Step(close, events - y), Step(wide, y)) if s.times)


def slope(stitches: int, steps: int) -> tuple[int, ...]:
    """A shoulder's stitches in steps of short rows, the larger ones first: 21 in 3 is 7, 7, 7."""
    return tuple(sorted(even(stitches, steps), reverse=True))


def neck(across: int, shoulder: int, side_steps: int) -> tuple[int, int]:
    """Stitches of a neck between two shoulders, and of its middle block when each side is shaped by `side_steps` more.

    neck = total - 2 * shoulder; middle = neck - 2 * side. Raises ValueError where either is below zero.
    """
    wide = across - 2 * shoulder
    middle = wide - 2 * side_steps
    if middle < 0:
        raise ValueError(f"shoulders of {shoulder} and steps of {side_steps} leave no neck in {across} stitches")
    return wide, middle
