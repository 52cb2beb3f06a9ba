"""Which side of the work faces the maker in each row of a piece."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.fabric import FabricRow


def facings(rows: Sequence[FabricRow]) -> list[bool]:
    """Per row of one piece whether the right side faces: as said, else by the turns, the first row on the right side.

    Each turn changes the side; one said side settles the others up to the next said one.
    """
    sides, side = [], True
    for row in rows:
        side = side != row.turned_before
        sides.append(side)
    said = [i for i, row in enumerate(rows) if row.side_said]
    if not said:
        return sides
    flip = sides[said[0]] != rows[said[0]].right_side
    for i, row in enumerate(rows):
        if row.side_said:
            flip = sides[i] != row.right_side
        sides[i] = sides[i] != flip
    return sides
