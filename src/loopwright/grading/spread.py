"""Even spreading: so many increases, decreases or stitches to pick up, shared out over a row with whole stitches.

The gaps are those of the line-drawing and rhythm algorithms (J. E. Bresenham, Algorithm for computer control of a digital plotter, IBM
Systems Journal 4(1), 1965; G. Toussaint, The Euclidean algorithm generates traditional musical rhythms, 2005): every gap is floor(N/k) or
ceil(N/k), and no stretch of the row holds more than its share by a whole event.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable

from loopwright.record import record


def even(total: int, parts: int) -> tuple[int, ...]:
    """`total` stitches in `parts` runs that differ by one at most, the longer ones spread too: gap i = ceil(iN/k) - ceil((i-1)N/k).

    51 in 4 gives 13, 13, 13, 12. No parts give no runs. Raises ValueError for numbers below zero.
    """
    if total < 0 or parts < 0:
        raise ValueError("neither stitches nor parts can be fewer than none")
    edges = [-(-i * total // parts) for i in range(parts + 1)] if parts else []
    return tuple(b - a for a, b in itertools.pairwise(edges))


def positions_round(total: int, events: int) -> tuple[int, ...]:
    """The stitches (from 1) that take the events of a round; the last falls on the last stitch, before the join."""
    return tuple(itertools.accumulate(even(total, events)))


def positions_flat(total: int, events: int) -> tuple[int, ...]:
    """The stitches (from 1) that take the events of a row: half a gap at each side, so that none falls on the edge.

    Position i = (2i - 1)N / 2k to the nearest whole, a half up: 51 stitches and 4 events give 6, 19, 32, 45.
    """
    if events < 0 or total < 0:
        raise ValueError("neither stitches nor events can be fewer than none")
    return tuple(((2 * i - 1) * total + events) // (2 * events) for i in range(1, events + 1))


def between(total: int, events: int) -> tuple[int, ...]:
    """The other custom for a row: events between stitches, `events` + 1 plain runs (40 stitches, 4 events: five runs of 8)."""
    return even(total, events + 1)


@record
class Run:
    """`times` times: `plain` stitches, then one event (none when `event` is False: the plain stitches that end a row)."""

    plain: int
    times: int = 1
    event: bool = True


def increases(total: int, events: int, *, offset: int = 0) -> tuple[int, ...]:
    """Plain stitches before each increase of a round over `total` stitches; an increase uses one stitch, so each run is its gap less 1.

    `offset` starts with the run that many places later, so that increases of round above round do not stand in lines.
    Raises ValueError when there are more increases than stitches to put them in.
    """
    if events > total:
        raise ValueError(f"{events} increases do not fit in {total} stitches, one in each")
    return _turned(tuple(g - 1 for g in even(total, events)), offset)


def decreases(total: int, events: int, *, offset: int = 0) -> tuple[int, ...]:
    """Plain stitches before each decrease of a round over `total` stitches; a decrease uses two, so each run is its gap less 2.

    Raises ValueError when `total` has not two stitches for each.
    """
    if 2 * events > total:
        raise ValueError(f"{events} decreases need {2 * events} stitches, there are {total}")
    return _turned(tuple(g - 2 for g in even(total, events)), offset)


def staggered(total: int, events: int, *, uses: int = 1) -> tuple[Run, ...]:
    """The same events with half of the first run moved to the end of the round: k/2 plain, event, (k plain, event) …, k/2 plain.

    `uses`: stitches that one event takes (1 for an increase, 2 for a decrease). Where every second round is staggered, a flat disc stays
    round instead of growing corners.
    """
    if events == 0:
        return (Run(total, event=False),) if total else ()
    runs = increases(total, events) if uses == 1 else decreases(total, events)
    first = runs[0] // 2
    rest = runs[0] - first
    return (*grouped((first, *runs[1:])), *((Run(rest, event=False),) if rest else ()))


def grouped(runs: Iterable[int]) -> tuple[Run, ...]:
    """Equal neighbours said once: 8, 8, 7 becomes (8 plain, event) twice, (7 plain, event) once."""
    return tuple(Run(plain, len(list(same))) for plain, same in itertools.groupby(runs))


def _turned(runs: tuple[int, ...], offset: int) -> tuple[int, ...]:
    at = offset % len(runs) if runs else 0
    return runs[at:] + runs[:at]
