"""Stitches worked along row ends, and edging rounds and rows, against the edge that they are worked on."""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator, Sequence
from statistics import median

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.measuring.courses import Course
from loopwright.measuring.flatness.crowns import plain, unsure
from loopwright.measuring.flatness.mends import per_row_end, percent
from loopwright.measuring.flatness.told import told
from loopwright.model.fabric import PLACES, ROLES, Fabric
from loopwright.model.lies import LieFault
from loopwright.trade.stitches import row_ends

OFF = 0.15  # an edge is eased in or stretched by so much: our own reading, no source
HABIT = 0.25  # where the rate is the trade's habit for the rows
ROWS, STITCHES = 6, 3  # fewer row ends, or stitches too many or too few, block out
EASED = 0.10  # an edging round or row, against the one below
MEANT = 0.40  # further off than this, it is a frill or a gather
EDGING = 4  # so many rounds or rows at most are an edging
PLAIN_TOPS = 0.8
_ROW_END = PLACES.index("row-end")
_TOP, _CHAIN, _SPACE = PLACES.index("top"), PLACES.index("chain"), PLACES.index("space")
_EDGE = ROLES.index("edge")


def edge_faults(fabric: Fabric, courses: Sequence[Course], sizes: StitchSizes) -> Iterator[LieFault]:
    """Faults of edges: at most one for each row."""
    for c in courses:
        found = _row_ends(fabric, c, courses, sizes) if c.row_ends >= ROWS else _edging(fabric, c, courses)
        if found is not None:
            yield found


def _sides(fabric: Fabric, c: Course) -> Iterator[list[int]]:
    """Rows whose ends a course is worked into, one list for each side of the piece, one entry for each stitch."""
    run: list[int] = []
    way = 0
    for s in range(c.row.start, c.row.end):
        if fabric.role[s] != _EDGE:
            continue
        ends = fabric.place[s] == _ROW_END and fabric.into[s] >= 0
        row = fabric.row[fabric.into[s]] if ends else -1
        step = (row > run[-1]) - (row < run[-1]) if run and ends else 0
        if run and (not ends or step and way and step != way):
            yield run
            run, way = [], 0
        if ends:
            run.append(row)
            way = step or way
    if run:
        yield run


def _row_ends(fabric: Fabric, c: Course, courses: Sequence[Course], sizes: StitchSizes) -> LieFault | None:
    worst: tuple[float, float, int, float] | None = None
    for side in _sides(fabric, c):
        rows = courses[min(side) : max(side) + 1]
        used = [r for r in rows if r.way == "row"]
        if len(used) < ROWS or any(r.assumed or not _plain_rows(fabric, r) for r in used):
            continue
        per = Counter(side)
        usual = median(per.values())
        have = float(sum(n if n < usual + 2 else usual for n in per.values()))  # three in a corner are the corner's
        need = sum(r.height_mm for r in used) / (c.top_mm / c.places)
        off = have / need - 1
        limit = HABIT if _habit(used, have / len(used)) else OFF
        limit += unsure(sizes)
        if abs(off) > limit and abs(have - need) >= STITCHES and (worst is None or abs(off) > abs(worst[0])):
            worst = off, have, len(used), need
    if worst is None:
        return None
    off, have, many, need = worst
    now, needed = per_row_end(have, many), per_row_end(need, many)
    if now == needed:
        return None
    facts = {"have": f"{have:.0f}", "rows": str(many), "needed": f"{need:.0f}", "share": percent(off), "way": _way(off)}
    return told(c, "row ends", off, f"work {needed}, not {now}", facts)


def _way(off: float) -> str:
    return "waves" if off > 0 else "pulls in"


def _plain_rows(fabric: Fabric, c: Course) -> bool:
    """Rows into the tops of those below: ribs stretch, and nobody knows how tall they lie."""
    if not plain(c) or not c.stitches:
        return False
    found = fabric.place[c.row.start : c.row.end]
    return found.count(_TOP) + found.count(_CHAIN) + found.count(_SPACE) >= PLAIN_TOPS * c.stitches


def _habit(rows: Sequence[Course], rate: float) -> bool:
    """Whether so many stitches in a row end are the trade's habit for the stitch of the rows."""
    kinds = Counter(plain_kind(k) for r in rows for k in r.kinds if k != "ch")
    usual = row_ends().get(kinds.most_common(1)[0][0]) if kinds else None
    return usual is not None and abs(rate / float(usual) - 1) < 0.06


def _edging(fabric: Fabric, c: Course, courses: Sequence[Course]) -> LieFault | None:
    """A plain row or round along the top of another with far fewer or more stitches, and little after it."""
    below = courses[c.below] if 0 <= c.below < c.index else None
    if below is None or c.way != below.way or c.way not in ("round", "row") or below.assumed or below.height_mm <= 0:
        return None
    if c.uses + c.skipped != below.places or abs(c.places - below.places) < 2 * STITCHES:
        return None
    off = c.top_mm / below.top_mm - 1
    if not EASED < abs(off) <= MEANT:
        return None
    on_it = [o for o in courses[c.index + 1 :] if o.row.piece == c.row.piece]
    body = sum(1 for o in courses[: c.index] if o.row.piece == c.row.piece and o.way == c.way)
    if len(on_it) >= EDGING or body < 2 * EDGING:
        return None
    before = [o for o in courses[: c.index] if o.row.piece == c.row.piece][-EDGING:]
    if not all(o.places == below.places and o.way == c.way and not o.chains for o in before):
        return None
    if c.chains or not (plain(c) and plain(below) and _one_by_one(fabric, c)):
        return None
    facts = {"have": str(c.places), "edge": str(below.places), "share": percent(off), "way": _way(off)}
    return told(c, "edging", off, f"work about {below.places} sts evenly", facts)


def _one_by_one(fabric: Fabric, c: Course) -> bool:
    """Whether its stitches lie one to a place, some places passed over or worked twice here and there, none worked together."""
    run = range(c.row.start, c.row.end)
    if any(fabric.many[s] for s in run if fabric.role[s] == _EDGE):
        return False
    taken = [fabric.into[s] for s in run if fabric.role[s] == _EDGE]
    return all(len(list(g)) <= 2 for _, g in itertools.groupby(taken))
