"""Rows that ripple: where their peaks and valleys lie, and how high they rise.

A row that gains e stitches at a peak turns there as a flat corner does: over a row height h its top grows by 2 h sin(slope), seen level,
which is e stitch widths. So sin(slope) = e x width / (2 h). Derived from plane geometry; stitches are taken to stand upright, as in a
chevron.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from loopwright.measuring.courses import Course
from loopwright.model.fabric import ROLES, Fabric

LEAST_PEAKS = 3
ALIKE = 0.25  # a ripple gains about as much as it loses
STEEPEST = 0.8
_TOP = (ROLES.index("edge"), ROLES.index("counts"))


def ripple(fabric: Fabric, c: Course, wide_mm: float) -> list[tuple[float, float]]:
    """Places along a row from left to right as shares of its width, with how high the edge stands there, mm; none for a row without."""
    turns = _turns(fabric, c)
    gains, losses = ([t for t in turns if t[1] * sign > 0] for sign in (1, -1))
    if min(len(gains), len(losses)) < LEAST_PEAKS or not c.places or not c.height_mm:
        return []
    gained, lost = sum(t[1] for t in gains), -sum(t[1] for t in losses)
    if abs(gained - lost) > ALIKE * max(gained, lost):
        return []
    inner = turns[1:-1]
    mean = sum(abs(t[1]) for t in inner) / len(inner)
    slope = math.asin(min(STEEPEST, mean * wide_mm / c.places / (2 * c.height_mm)))
    legs = [(b[0] - a[0]) * wide_mm for a, b in pairwise(turns)]
    rise = math.tan(slope) * sum(legs) / len(legs)
    found = [(at, rise if more > 0 else 0.0) for at, more in turns]
    return _to_the_ends(found, rise)


def _to_the_ends(found: list[tuple[float, float]], rise: float) -> list[tuple[float, float]]:
    """With both ends of the row, that rise or fall from the turn next to them as steeply as the rest."""
    leg = sum(b[0] - a[0] for a, b in pairwise(found)) / (len(found) - 1)
    ends = []
    for at, (place, high) in ((0.0, found[0]), (1.0, found[-1])):
        share = min(1.0, abs(place - at) / leg)
        ends.append((at, high + share * ((0.0 if high else rise) - high)))
    return [ends[0], *(f for f in found if 0.0 < f[0] < 1.0), ends[1]]


def _turns(fabric: Fabric, c: Course) -> list[tuple[float, int]]:
    """Places where a row gains or loses stitches, as shares of its length from the left, neighbours of one kind taken together."""
    own = [s for s in range(c.row.start, c.row.end) if fabric.role[s] in _TOP]
    marks: list[tuple[int, int]] = []
    for place, (before, s) in enumerate(pairwise(own)):
        if fabric.into[s] >= 0 and fabric.into[s] == fabric.into[before] and not fabric.many[s] and not fabric.many[before]:
            marks.append((place + 1, 1))
    marks += [(place, -abs(fabric.many[s])) for place, s in enumerate(own) if fabric.many[s]]
    found = _together(sorted(marks), max(1, len(own) - 1))
    return [(1 - at, more) for at, more in reversed(found)] if c.row.right_side else found


def _together(marks: Sequence[tuple[int, int]], last: int) -> list[tuple[float, int]]:
    runs: list[list[tuple[int, int]]] = []
    for mark in marks:
        if runs and runs[-1][-1][1] * mark[1] > 0:
            runs[-1].append(mark)
        else:
            runs.append([mark])
    return [(sum(p for p, _ in run) / len(run) / last, sum(m for _, m in run)) for run in runs]
