"""Borders of several rounds around a rectangle, against the four corners that they must turn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from loopwright.measuring.courses import Course
from loopwright.measuring.flatness.crowns import plain
from loopwright.measuring.flatness.mends import figure
from loopwright.measuring.flatness.told import told
from loopwright.measuring.parts import ALL_ENDS
from loopwright.model.lies import LieFault

CORNERS = 4
RIGHT_ANGLES = 8.0  # what four right angles add to a round, in row heights: 2 n tan(pi / n) for n = 4
OFF = 0.30  # of what the corners need; less blocks out: our own reading, no source
ROUNDS = 3  # with the first, which is worked on the edge itself
DEEP = 8  # more rounds with nothing gained are sides that stand up
STRAIGHT = 0.1


def border_faults(courses: Sequence[Course]) -> Iterator[LieFault]:
    """One fault at most for each border."""
    for first in courses:
        below = courses[first.below] if 0 <= first.below < first.index else None
        if below is None or first.way != "round" or not _rectangle(below, courses):
            continue
        if first.row_ends >= ALL_ENDS * first.stitches:
            continue  # a strip joined into a ring, worked along its side
        run = [first]
        for c in courses[first.index + 1 :]:
            if c.way != "round" or c.below != run[-1].index or not plain(c) or c.chains > c.stitches / 4:
                break
            run.append(c)
        found = _judge(run) if len(run) >= ROUNDS else None
        if found is not None:
            yield found


def _rectangle(last: Course, courses: Sequence[Course]) -> bool:
    """Whether a row ends a piece of straight rows, and is one of several."""
    run = [c for c in courses[: last.index + 1] if c.row.piece == last.row.piece and c.way == "row" and not c.assumed]
    if last.way != "row" or len(run) < 2 * ROUNDS:
        return False
    lengths = [c.top_mm for c in run]
    return max(lengths) <= min(lengths) * (1 + STRAIGHT)


def _judge(run: Sequence[Course]) -> LieFault | None:
    grown = run[-1].top_mm - run[0].top_mm
    needed = RIGHT_ANGLES * sum(c.height_mm for c in run[1:])
    if not needed or abs(grown / needed - 1) <= OFF or abs(grown) < 0.01 and len(run) > DEEP:
        return None
    c, many = run[-1], len(run) - 1
    width = c.top_mm / c.places
    gain, flat = grown / width / many, needed / width / many
    corner = max(1, round(flat / CORNERS)) + 1
    now = gain / CORNERS + 1
    if corner == round(now):
        return None
    facts = {
        "gain": figure(gain), "needed": figure(flat), "rounds": str(len(run)), "way": "ruffles" if gain > flat else "cups",
    }
    mend = f"work about {corner} sts in each corner of each round, not {figure(now)}"
    return told(c, "border", grown / needed - 1, mend, facts)
