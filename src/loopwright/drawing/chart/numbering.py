"""Numbers and labels of rows: as the pattern has them, and counted on from the row before where it has none."""

from __future__ import annotations

import re

from loopwright.model.fabric import Fabric, FabricRow

_NEXT = re.compile(r"\s*next\b", re.IGNORECASE)
_NUMBER = re.compile(r"(\d+)(?!.*\d)")
_WORD = re.compile(r"\s*(rnd|round|row)s?\b", re.IGNORECASE)


def row_number(fabric: Fabric, index: int) -> str:
    """The number of a row: its own, else as many more than that of a row before in its section as lie between; none for a foundation.

    "Next 4 rnds" says how many there are, not which.
    """
    here, beyond = fabric.rows[index], 0
    if not here.label and _foundation(fabric, here):
        return ""
    for row in reversed(fabric.rows[: index + 1]):
        if row.section != here.section or row.piece != here.piece:
            continue
        m = None if _NEXT.match(row.label) else _NUMBER.search(row.label)
        if m:
            return str(int(m[1]) + beyond) if beyond else m[1]
        beyond += 1 if row.label or not _foundation(fabric, row) else 0
    return str(beyond)


def row_label(fabric: Fabric, index: int) -> str:
    """A row's label, or one made of its number; "" for a foundation chain."""
    row = fabric.rows[index]
    if row.label:
        return row.label
    number = row_number(fabric, index)
    return f"{_word(fabric, index)} {number}" if number else ""


def _word(fabric: Fabric, index: int) -> str:
    """Row or Rnd: as the section says it, else by whether the work is turned."""
    row = fabric.rows[index]
    for other in reversed(fabric.rows[:index]):
        m = _WORD.match(other.label) if other.section == row.section and other.piece == row.piece else None
        if m:
            return m[1].capitalize()
    return "Row" if not row.joined and (row.turned or row.turned_before) else "Rnd"


def _foundation(fabric: Fabric, row: FabricRow) -> bool:
    """Whether it is chains in the air, or was only taken for granted."""
    return all(fabric.part_of(s) == "assumed" or fabric.name(s) == "ch" and fabric.into[s] < 0 for s in range(row.start, row.end))
