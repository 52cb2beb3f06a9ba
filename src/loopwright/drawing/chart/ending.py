"""How a piece of many rows ends: its last rows are shown where those left out before them are all alike."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.model.fabric import Fabric
from loopwright.record import record

LAST = 2  # rows at the end that are unlike those before
FEWEST = 4  # rows that must be left out
MOST = 60_000  # stitches that are compared


@record
class Ending:
    """The first rows of a piece and its last. `after`: the last before the gap; `under`: the row that truly lies under the next."""

    rows: tuple[int, ...]
    after: int
    under: int


def ending(fabric: Fabric, rows: Sequence[int], shown: Sequence[int]) -> Ending | None:
    """The rows shown, some of them given up for the last of all; None where those are like them, or what is between varies."""
    first = len(shown) - LAST - 2
    if first < LAST or len(rows) - len(shown) < FEWEST or fabric.rows[rows[-1]].end - fabric.rows[rows[0]].start > MOST:
        return None
    step = 1 if fabric.rows[rows[first]].right_side == fabric.rows[rows[first + 1]].right_side else 2
    at = first
    while at < len(rows) and _alike(fabric, (rows[at - 1], rows[at]), (rows[at - step - 1], rows[at - step])):
        at += 1
    tail = len(rows) - at
    if at <= len(shown) or not 0 < tail <= LAST:
        return None
    keep = len(shown) - tail - 1
    keep -= (at - 1 - keep) % step  # what is left out is whole turns, there and back
    return Ending((*rows[:keep], *rows[at - 1 :]), rows[keep - 1], rows[at - 2])


def _alike(fabric: Fabric, one: tuple[int, int], two: tuple[int, int]) -> bool:
    """Whether two rows, each with the row below it, have the same stitches in the same places. The first of a piece is like no other."""
    return _worked(fabric, *one) == _worked(fabric, *two)


def _worked(fabric: Fabric, below: int, index: int) -> tuple[object, ...]:
    row, start = fabric.rows[index], fabric.rows[below].start
    of = range(row.start, row.end)
    places = tuple((fabric.kind[s], fabric.colour[s], fabric.where(s), tuple(p - start for p in fabric.parents(s))) for s in of)
    return row.right_side, row.joined, fabric.rows[below].end - start, places
