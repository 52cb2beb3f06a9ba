"""The rows and rounds of a fabric as they lie: how long each is along its top, how tall, what it stands on.

Pure counting on the fabric's columns; a stitch is as wide and tall as the gauge says.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Literal

from loopwright.grading.gauge import StitchSizes
from loopwright.grading.stitched import lent_stitches, row_height_mm, row_length_mm, taken_below, top_kinds
from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow
from loopwright.record import record

EVEN = 3  # so many even rounds turn a crown down
FEW = 0.6  # a round that uses less of the round below than this leaves an opening, or begins a branch, unless it goes all around
SAME = 1.001  # longer than this against the round below: it gains
Way = Literal["round", "row", "chain", "along"]

_EDGE, _COUNTS, _ASSUMED = (ROLES.index(r) for r in ("edge", "counts", "assumed"))
_TURNING, _STANDS, _JOIN, _PICOT, _BASE = (ROLES.index(r) for r in ("turning", "stands", "join", "picot", "base"))
_ROW_END, _RING, _SPACE, _UNDERSIDE, _CHAIN = (PLACES.index(p) for p in ("row-end", "ring", "space", "underside", "chain"))


@record
class Course:
    """One row or round.

    `index`: of the fabric's row. `way`: "round" closed or worked in a spiral, "row" back and forth, "chain" a chain in the air, "along"
    mostly into row ends. `kinds`: stitches along its top by kind, chains among them. `stitches`: those that are no chains. `top_mm`:
    length along the top. `height_mm`. `below`: index of the row that most of it is worked into, -1 for none. `skipped`: stitches of that
    row's top that it leaves. `uses`: those that it takes. `from_ring`: worked into a ring. `both_sides`: along both sides of a chain.
    `row_ends`: how many of its stitches are worked into row ends. `assumed`: nobody worked it; it must have been there.
    """

    index: int
    row: FabricRow
    way: Way
    kinds: dict[str, int]
    stitches: int
    chains: int
    top_mm: float
    height_mm: float
    below: int
    skipped: int
    uses: int
    from_ring: bool
    both_sides: bool
    row_ends: int
    assumed: bool

    @property
    def places(self) -> int:
        """Stitches and chains along the top."""
        return self.stitches + self.chains


def from_centre(c: Course, courses: Sequence[Course]) -> bool:
    """Whether a round begins a piece in its middle: in a ring, in one chain, or along both sides of a chain."""
    below = courses[c.below] if 0 <= c.below < c.index else None
    if c.way != "round" or c.assumed:
        return False
    if below is None:
        return c.from_ring and c.row_ends == 0
    return below.way == "chain" and (c.from_ring or c.both_sides or c.uses == 1)


def goes_around(fabric: Fabric, c: Course, below: Course) -> bool:
    """Whether a round is worked into all sides of the round below, though it may leave many of its stitches, as lace does."""
    if c.uses >= FEW * below.places:
        return True
    used = {p for s in range(c.row.start, c.row.end) if fabric.role[s] not in (_JOIN, _PICOT) for p in fabric.parents(s)}
    tops = [*below.row.borrowed, *(s for s in range(below.row.start, below.row.end) if fabric.role[s] in (_EDGE, _COUNTS, _ASSUMED))]
    at = [i for i, s in enumerate(tops) if s in used]
    return bool(at) and max(b - a - 1 for a, b in pairwise([*at, at[0] + len(tops)])) < (1 - FEW) * len(tops)


def even_so_far(c: Course, below: Course, even: int) -> int:
    """How many rounds up to this one gain nothing, one after the other, where `even` up to the one below do."""
    return even + 1 if c.top_mm < below.top_mm * SAME else 0


def courses(fabric: Fabric, sizes: StitchSizes) -> list[Course]:
    """All rows of the fabric, in the order of making."""
    found: list[Course] = []
    lent = lent_stitches(fabric)
    for index in range(len(fabric.rows)):
        found.append(_course(fabric, sizes, index, found, lent))
    return found


def _course(fabric: Fabric, sizes: StitchSizes, index: int, before: list[Course], lent: Mapping[int, int]) -> Course:
    row = fabric.rows[index]
    roles = fabric.role[row.start : row.end]
    kinds = top_kinds(fabric, row)
    chains = kinds.get("ch", 0)
    stitches = sum(kinds.values()) - chains
    places = Counter(fabric.place[row.start : row.end])
    below, uses = taken_below(fabric, row, lent)
    have = before[below].places if 0 <= below < index else 0
    assumed = bool(roles) and roles.count(_ASSUMED) == len(roles)
    way = _way(row, before, kinds, places, assumed=assumed)
    return Course(
        index, row, way, kinds, stitches, chains, row_length_mm(kinds, sizes),
        0.0 if assumed or way == "chain" else row_height_mm(kinds, sizes, max(0, have - uses)), below, max(0, have - uses), uses,
        places[_RING] > 0, places[_UNDERSIDE] > 0 and places[_CHAIN] > 0 and below >= 0, places[_ROW_END], assumed,
    )


def _way(row: FabricRow, before: list[Course], kinds: dict[str, int], places: Counter[int], *, assumed: bool) -> Way:
    if kinds and set(kinds) == {"ch"}:
        return "chain"
    if places[_ROW_END] * 2 > sum(kinds.values()) and not row.joined:
        return "along"
    word = row.label.split(" ", 1)[0].lower()
    if row.joined or word in ("rnd", "rnds", "round", "rounds"):
        return "round"
    if row.turned or row.turned_before or word in ("row", "rows"):
        return "row"
    if "rnd" in row.label.lower() or "round" in row.label.lower():
        return "round"
    last = before[-1] if before else None
    if last is not None and last.row.piece == row.piece and last.way == "round" and not assumed:
        return "round"
    return "row"
