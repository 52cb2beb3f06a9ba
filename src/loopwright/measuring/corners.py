"""Corners of a row or round: places where several stitches, or stitches with chains between them, go into one place."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from loopwright.measuring.courses import Course
from loopwright.model.fabric import PLACES, ROLES, Fabric
from loopwright.record import record

LEAST = 3  # stitches and chains in one place that make a corner
MOST = 12  # more such places in a round are its pattern, not its corners
SCALLOPS = 5  # so many fans with a short stitch between them are a scalloped round, not corners
SHORT = frozenset({"sc", "sl st"})
ALL = 8  # a second round of a motif may be corners and nothing else

_EDGE, _COUNTS, _ROW_END = ROLES.index("edge"), ROLES.index("counts"), PLACES.index("row-end")


@record
class Corner:
    """One corner: where along the row it stands, as a share of its length, and how many stitches and chains it holds."""

    at: float
    members: int
    chained: bool


@dataclass(slots=True)
class _Place:
    """Stitches in one place, in a run: where it begins along the row, its first stitch, and whether chains lie between its stitches."""

    key: tuple[int, int]
    start: int
    first: int
    members: int = 0
    stitches: int = 0
    chained: bool = False


def corners(fabric: Fabric, c: Course) -> tuple[Corner, ...]:
    """The corners of a course, in its order; none where every place holds as many (a row of shells has none)."""
    groups = _places(fabric, c)
    if len(groups) < 2:
        return ()
    if any(g.chained for g in groups):
        found = [g for g in groups if g.chained and g.stitches >= 2]
    else:
        usual = median(g.members for g in groups)
        found = [g for g in groups if g.members >= LEAST and g.members > usual + 1]
    if not 0 < len(found) <= MOST or 2 * len(found) > len(groups) and not (len(found) == len(groups) <= ALL):
        return ()
    if len(found) >= SCALLOPS and _scalloped(fabric, groups, found):
        return ()
    whole = max(1, c.places)
    return tuple(Corner((g.start + (g.members - 1) / 2) / whole, g.members, g.chained) for g in found)


def _scalloped(fabric: Fabric, groups: list[_Place], found: list[_Place]) -> bool:
    """Whether one short stitch lies between any two corners: fans around a round, whose sides would be no longer than that."""
    between = [g for g in groups if g not in found]
    alone = all(g.stitches == 1 and fabric.kinds[fabric.kind[g.first]] in SHORT for g in between)
    return alone and len(between) == len(found) and all((a in found) != (b in found) for a, b in pairwise(groups))


def _places(fabric: Fabric, c: Course) -> list[_Place]:
    groups: list[_Place] = []
    at = pending = 0
    for s in range(c.row.start, c.row.end):
        if fabric.role[s] not in (_EDGE, _COUNTS):
            continue
        if fabric.role[s] == _EDGE and fabric.kinds[fabric.kind[s]] == "ch":
            pending += 1
            at += 1
            continue
        key = (fabric.into[s], fabric.many[s]) if fabric.place[s] != _ROW_END else (-1, s)
        if groups and groups[-1].key == key and key[0] >= 0:
            groups[-1].members += pending
            groups[-1].chained = groups[-1].chained or pending > 0
        else:
            groups.append(_Place(key, at, s))
        groups[-1].members += 1
        groups[-1].stitches += 1
        pending = 0
        at += 1
    first, last = (groups[0], groups[-1]) if groups else (None, None)
    if first is not None and last is not None and first is not last and first.key == last.key and first.key[0] >= 0:
        last.members += first.members + pending  # a corner that the start of the round cuts in two
        last.stitches += first.stitches
        last.chained = last.chained or first.chained or pending > 0
        groups.pop(0)
    return groups
