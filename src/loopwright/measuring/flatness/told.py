"""A fault as it is told of a row."""

from __future__ import annotations

from loopwright.measuring.courses import Course
from loopwright.model.lies import Fault, Follows, LieFault


def told(c: Course, what: Fault, off: float, mend: str, facts: dict[str, str], follows: Follows = "") -> LieFault:
    """The fault of a row, with where it stands."""
    return LieFault(what, c.row.section, c.row.label, c.index, c.row.item, off, mend, facts, follows)
