"""Ripples whose peaks and valleys do not balance, and flat pieces whose sides slant."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from loopwright.measuring.courses import Course
from loopwright.measuring.flatness.crowns import plain
from loopwright.measuring.flatness.mends import figure
from loopwright.measuring.flatness.told import told
from loopwright.model.fabric import ROLES, Fabric
from loopwright.model.lies import LieFault
from loopwright.record import record
from loopwright.trade.composed import composed

PEAKS = 3  # places of increases, and of decreases, that make a ripple
ROWS = 3  # ripple rows that all gain, or all lose
SLANT_ROWS = 8
SLANT = 4  # stitches that one end moves
END = 4  # stitches at the end of a row, within which its edge is shaped
_SINGLE = frozenset({"sc", "hdc", "dc", "tr", "dtr"})
_EDGE, _COUNTS = ROLES.index("edge"), ROLES.index("counts")


@record
class _Shaping:
    """Where a row gains and loses. `more`, `fewer`: at how many places; `first`, `second`: what each half gains; `ends`: only there."""

    more: int
    fewer: int
    first: int
    second: int
    ends: bool


def row_faults(fabric: Fabric, courses: Sequence[Course]) -> Iterator[LieFault]:
    """At most one fault for each run of rows."""
    for run in _runs(courses):
        if len(run) < ROWS:
            continue
        shaped = [_shaping(fabric, c, courses[c.below]) for c in run]
        found = _ripple(run, shaped) or _slant(run, shaped)
        if found is not None:
            yield found


def _runs(courses: Sequence[Course]) -> Iterator[list[Course]]:
    """Rows of plain stitches that follow one another in one section, each on the one before."""
    run: list[Course] = []
    for c in courses:
        below = courses[c.below] if 0 <= c.below < c.index else None
        goes = c.way == "row" and below is not None and below.way == "row" and not below.assumed and not c.chains and not below.chains
        if run and not (goes and c.below == run[-1].index and c.row.section == run[-1].row.section):
            yield run
            run = []
        if goes and c.stitches:
            run.append(c)
    if run:
        yield run


def _shaping(fabric: Fabric, c: Course, below: Course) -> _Shaping | None:
    """None where a row is not told by tops alone; nothing for a row of one stitch in each."""
    if c.places == below.places == c.uses and not any(fabric.many[c.row.start : c.row.end]):
        return _Shaping(0, 0, 0, 0, ends=True)
    if any(k != "ch" and not _single(k) for k in c.kinds):
        return None
    tops = [*below.row.borrowed, *(s for s in range(below.row.start, below.row.end) if fabric.role[s] in (_EDGE, _COUNTS))]
    if c.row.turned_before:
        tops.reverse()
    at = {s: i for i, s in enumerate(tops)}
    made = [[at.get(p, -1) for p in fabric.parents(s)] for s in range(c.row.start, c.row.end) if fabric.role[s] in (_EDGE, _COUNTS)]
    if any(-1 in m for m in made) or len(tops) < 2 * END or len(made) != c.places:
        return None
    here = [0] * len(tops)  # what each place of the row below becomes: 1 plain, 2 an increase, 0 worked together or passed over
    for parents in made:
        if parents:
            here[min(parents)] += 1
    if made and not made[0]:  # a start chain that counts stands on the first place
        here[0] += 1
    cut = len(tops) // 2
    fewer = sum(1 for i, n in enumerate(here) if n == 0 and (i == 0 or here[i - 1] != 0))
    ends = all(n == 1 for n in here[END:-END])
    return _Shaping(sum(n > 1 for n in here), fewer, sum(here[:cut]) - cut, sum(here[cut:]) - (len(tops) - cut), ends)


def _single(kind: str) -> bool:
    """Whether it takes one place, or is a decrease: then what a row gains is what it makes less what it takes."""
    made = composed(kind)
    return made.legs > 1 or made.plain in _SINGLE and not made.post and not made.foundation


def _ripple(run: Sequence[Course], shaped: Sequence[_Shaping | None]) -> LieFault | None:
    ripples = [(c, s) for c, s in zip(run, shaped, strict=True) if s is not None and s.more >= PEAKS and s.fewer >= PEAKS]
    if len(ripples) < ROWS or any(not plain(c) and not _single(k) for c, _ in ripples for k in c.kinds):
        return None
    nets = [s.first + s.second for _, s in ripples]
    if not (all(n > 0 for n in nets) or all(n < 0 for n in nets)):
        return None
    (first, before), (last, _) = ripples[0], ripples[-1]
    mean = sum(nets) / len(nets)
    width = last.top_mm / last.places
    facts = {
        "rows": str(len(ripples)), "each": figure(abs(mean)), "way": "gains" if mean > 0 else "loses", "peaks": str(before.more),
        "valleys": str(before.fewer), "wider_mm": f"{abs(sum(nets)) * width:.0f}", "does": "wider" if mean > 0 else "narrower",
    }
    mend = "make the peaks of a repeat gain what its valleys lose, half a peak or valley at each edge"
    return told(first, "ripple", mean / first.places, mend, facts)


def _slant(run: Sequence[Course], shaped: Sequence[_Shaping | None]) -> LieFault | None:
    """Both sides lean one way, or one leans and the other is straight, all through the run."""
    if len(run) < SLANT_ROWS or any(s is None or not s.ends for s in shaped):
        return None
    right, left = [], []
    for c, s in zip(run, shaped, strict=True):
        if s is not None:
            right.append(s.first if c.row.right_side else s.second)
            left.append(s.second if c.row.right_side else s.first)
    if any(min(side) < 0 < max(side) for side in (right, left)):
        return None
    one_end, other_end = sum(right), sum(left)
    both = one_end * other_end < 0 and min(abs(one_end), abs(other_end)) >= SLANT and abs(one_end + other_end) <= 2
    one = max(abs(one_end), abs(other_end)) >= SLANT and min(abs(one_end), abs(other_end)) == 0
    most = right if abs(one_end) >= abs(other_end) else left
    if not (both or one) or sum(1 for n in most if n) * 4 < len(run):
        return None
    first = run[0]
    width = first.top_mm / first.places
    moved, tall = abs(sum(most)) * width, sum(c.height_mm for c in run)
    angle = math.degrees(math.atan2(moved, tall))
    facts = {
        "sides": "both sides slant" if both else "one side slants", "both": "yes" if both else "", "angle": f"{angle:.0f}",
        "rows": str(len(run)), "moved_mm": f"{moved:.0f}",
    }
    off = sum(most) / len(run) / first.places
    return told(first, "slant", off, "shape both ends of a row alike", facts)
