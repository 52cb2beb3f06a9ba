"""Rounds from a centre that grow: discs, crowns, ovals, motifs; what each has, and what a flat one would have."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.measuring.corners import corners
from loopwright.measuring.courses import EVEN, Course, even_so_far, from_centre
from loopwright.model.fabric import PLACES, ROLES, Fabric
from loopwright.model.measures import Lies
from loopwright.record import record
from loopwright.trade.composed import composed

FLAT, BLOCKS = 0.04, 0.10  # our own reading of relaxed discs; no source
SURE = 0.03  # how sure a swatch of ten centimetres is, as a share
NEAR_CENTRE = 2  # rounds in which one stitch more or less does not show
SIDES = (3, 8)
STACKED = 2  # rounds with as many corners, one on the other
# A stitch worked into a space hangs lower than one worked into a top, by up to this share of its height: common practice, no source.
SINKS = 0.15
_SPACE, _BETWEEN = PLACES.index("space"), PLACES.index("between")
_EDGE, _COUNTS = ROLES.index("edge"), ROLES.index("counts")
_JUDGED = frozenset({"sc", "hdc", "dc", "tr", "dtr", "trtr", "esc", "ehdc", "edc"})


@record
class Ring:
    """One round of a crown.

    `rate`: what it gained, in stitches of its own width; the first: what it has, an oval without its straight sides. `flat_rate`: what a
    flat one gains. `off`: share of stitches too many (above 0) or too few, over all rounds so far. `flat_mm`: how long a flat one is.
    `sure`: plain stitches, no arches: the count alone tells how it lies.
    """

    course: Course
    rate: float
    flat_rate: float
    off: float
    flat_mm: float
    radius_mm: float
    word: Lies
    sure: bool


@record
class Crown:
    """Rounds from a centre up to the last that increases. `sides`: true corners, 0 for a round one. `after`: the next course's way."""

    rings: tuple[Ring, ...]
    sides: int
    oval: bool
    after: str

    @property
    def gain(self) -> float:
        """What a round gains on average, the first left out."""
        grown = self.rings[1:]
        return sum(r.rate for r in grown) / len(grown) if grown else self.rings[0].rate

    @property
    def flat_gain(self) -> float:
        """What a flat one would gain on average over the same rounds."""
        grown = self.rings[1:] or self.rings
        return sum(r.flat_rate for r in grown) / len(grown)


def crowns(fabric: Fabric, courses: Sequence[Course], sizes: StitchSizes) -> Iterator[Crown]:
    """Every crown of the fabric, in the order of making."""
    for first in courses:
        if starts(first, courses):
            found = _crown(fabric, _run(first, courses), courses, sizes)
            if found is not None:
                yield found


def starts(c: Course, courses: Sequence[Course]) -> bool:
    """A round of several stitches from a centre."""
    return c.stitches >= 3 and from_centre(c, courses)


def _run(first: Course, courses: Sequence[Course]) -> list[Course]:
    """The rounds on it, up to the last that increases before one decreases, turns down or leaves off."""
    run, even, keep = [first], 0, 1
    for c in courses[first.index + 1 :]:
        last = run[-1]
        if c.way != "round" or c.below != last.index or c.assumed or not c.height_mm or _slips(c) or c.row_ends:
            break
        if c.top_mm < last.top_mm * 0.999:
            break
        even = even_so_far(c, last, even)
        if even >= EVEN:
            break
        run.append(c)
        if not even:
            keep = len(run)
    return run[:keep]


def _slips(c: Course) -> bool:
    return set(map(plain_kind, c.kinds)) <= {"sl st", "ch"}


def _sides(fabric: Fabric, run: Sequence[Course]) -> tuple[int, int]:
    """Number of true corners, and up to which round of the run it is the same.

    In a second round of three in each stitch, or in every other, corners cannot be told from a pattern: the third round says.
    """
    found = [len(corners(fabric, c)) for c in run]
    found = [n if SIDES[0] <= n <= SIDES[1] else 0 for n in found]
    first = next((i for i, n in enumerate(found) if n), len(found))
    if first == len(found) or run[0].both_sides:
        return 0, len(found)
    if first > NEAR_CENTRE:
        return 0, first
    same = next((i for i in range(first, len(found)) if found[i] != found[first]), len(found))
    return (found[first], same) if same - first >= STACKED or same == len(found) else (0, max(1, first))


def _crown(fabric: Fabric, run: Sequence[Course], courses: Sequence[Course], sizes: StitchSizes) -> Crown | None:
    """None where nothing can be said: one round with spaces may become round or square, and no oval is shorter than its two sides."""
    sides, upto = _sides(fabric, run)
    run = run[:upto]
    around = 2 * sides * math.tan(math.pi / sides) if sides else 2 * math.pi
    low, high = _given(run[0], courses, sizes, around)
    first = run[0]
    if len(run) == 1 and first.chains or first.both_sides and first.top_mm < low:
        return None
    given = min(max(first.top_mm - around * first.height_mm, low), high)
    rings: list[Ring] = []
    tall, least, before = 0.0, 0.0, (low if first.both_sides else 0.0)
    sure, slack = True, unsure(sizes)
    for n, c in enumerate(run):
        tall += c.height_mm
        least += c.height_mm * (1 - (SINKS * _in_spaces(fabric, c) if n else 0.0))
        sure = sure and plain(c, corners_of=sides)
        width = _width(c, sizes)
        off, flat_mm = _off(c.top_mm, around * least + given, around * tall + given)
        near = n < NEAR_CENTRE and abs(c.top_mm - flat_mm) <= width * 1.001
        rate, flat = (c.top_mm - before) / width, around * c.height_mm / width
        rings.append(Ring(c, rate, flat, off, flat_mm, tall, "flat" if near else word(off, slack), sure))
        before = c.top_mm
    after = next((c.way for c in courses[run[-1].index + 1 :] if c.below == run[-1].index), "")
    return Crown(tuple(rings), sides, first.both_sides, after)


def _given(first: Course, courses: Sequence[Course], sizes: StitchSizes, around: float) -> tuple[float, float]:
    """Length that the middle gives to every round, least and most: a ring of chains drawn in or open, the straight sides of an oval.

    The chain of an oval bends about the middles of its two end chains, or a whole chain further in where they are drawn round.
    """
    below = courses[first.below] if 0 <= first.below < first.index else None
    chain = sizes.width("ch")
    if below is None or below.way != "chain":
        return 0.0, 0.0
    if first.both_sides:
        return 2 * max(0, first.uses - 2) * chain, 2 * max(0, first.uses - 1) * chain
    if first.from_ring:
        return 0.0, around * below.chains * chain / (2 * math.pi)
    return 0.0, 0.0


def _off(top_mm: float, least_mm: float, most_mm: float) -> tuple[float, float]:
    """Share away from the nearest flat length, and that length."""
    flat = min(max(top_mm, least_mm), most_mm)
    return (top_mm / flat - 1, flat) if flat > 0 else (0.0, top_mm)


def unsure(sizes: StitchSizes) -> float:
    """How much further off than with an ordinary swatch a round must be before anything can be said of it: two standard deviations more."""
    return 2 * max(0.0, math.hypot(sizes.width_share, sizes.height_share) - SURE)


def word(off: float, slack: float = 0.0) -> Lies:
    """How a round lies that has so great a share of stitches too many or too few; `slack` for a gauge that is not sure."""
    away = max(0.0, abs(off) - slack)
    if away <= FLAT:
        return "flat"
    return "blocks out" if away <= BLOCKS else "cups" if off < 0 else "ruffles"


def plain(c: Course, *, corners_of: int = 0) -> bool:
    """Whether its count tells how it lies: stitches of known height, side by side, no arches."""
    made = [composed(k) for k in c.kinds if k != "ch"]
    if any(m.plain not in _JUDGED or m.legs > 1 or m.post for m in made):
        return False
    return c.chains <= max(2 * corners_of, c.stitches)


def _width(c: Course, sizes: StitchSizes) -> float:
    solid = {k: n for k, n in c.kinds.items() if k != "ch"}
    many = sum(solid.values())
    return sum(n * sizes.width(k) for k, n in solid.items()) / many if many else sizes.width_mm


def _in_spaces(fabric: Fabric, c: Course) -> float:
    """Share of its stitches worked into spaces."""
    found = fabric.place[c.row.start : c.row.end]
    return min(1.0, (found.count(_SPACE) + found.count(_BETWEEN)) / c.stitches) if c.stitches else 0.0


def children(fabric: Fabric, c: Course) -> dict[int, list[int]]:
    """Stitches of its top by the one stitch that each is worked into; decreases are left out."""
    found: dict[int, list[int]] = {}
    for s in range(c.row.start, c.row.end):
        if fabric.role[s] in (_EDGE, _COUNTS) and fabric.into[s] >= 0 and not fabric.many[s] and s not in fabric.extra:
            found.setdefault(fabric.into[s], []).append(s)
    return found
