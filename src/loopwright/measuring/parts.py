"""A fabric cut into parts that have measures of their own: discs, ovals, tubes, flat pieces, borders, ties, edges."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from loopwright.measuring.corners import Corner, corners
from loopwright.measuring.courses import EVEN, FEW, SAME, Course, from_centre, goes_around
from loopwright.measuring.diagonal import blocks
from loopwright.model.fabric import Fabric
from loopwright.record import record

Kind = Literal["disc", "oval", "tube", "flat", "border", "tie", "edge"]
Origin = Literal["centre", "chain", "rim", "none"]

EDGED = 0.1  # so many of a row's stitches in row ends: it goes along an edge, as a band does (judgement)
ALL_ENDS = 0.9  # so many of a round's stitches in row ends: a strip worked along its side, not a border
FEWEST_SIDES = 3
UNSURE = 2  # rounds of which one alone may show the corners
TIE = 8  # a shorter chain is a ring or a turn, not a tie


@record
class Part:
    """Courses that lie alike and follow one another within a section.

    `radius_mm`: for discs and ovals, how far from the centre (or the chain) the part ends. `base_mm`: length of the chain in the middle
    of an oval. `depth_mm`: how far along the fabric the part's end lies from where its piece began. `edge_mm`: how far a border or edging
    reaches beyond what it is worked on. `corners`: those of its last course. `branch`: worked from a part of a round or row: thumb, sleeve.
    `blocks`: how many each row has, where it is worked from corner to corner.
    """

    kind: Kind
    section: str | None
    piece: int
    courses: tuple[Course, ...]
    radius_mm: float = 0.0
    base_mm: float = 0.0
    depth_mm: float = 0.0
    edge_mm: float = 0.0
    corners: tuple[Corner, ...] = ()
    branch: bool = False
    blocks: tuple[int, ...] = ()

    @property
    def sides(self) -> int:
        """Of a motif with true corners; 0 for a round one."""
        return len(self.corners) if self.kind == "disc" and len(self.corners) >= FEWEST_SIDES else 0

    @property
    def rows(self) -> tuple[int, int]:
        """First and last row of the fabric."""
        return self.courses[0].index, self.courses[-1].index

    @property
    def height_mm(self) -> float:
        """What its courses add together."""
        return sum(c.height_mm for c in self.courses)


@dataclass(slots=True)
class _Line:
    """What is known of a course from those it stands on: where they began, how far it is from there, how deep its border is.

    `even`: rounds up to it that are no longer than the widest below, `widest_mm`. `turned`: so many were, somewhere below it, that a crown
    ends there.
    """

    origin: Origin
    depth_mm: float
    base_mm: float = 0.0
    edge_mm: float = 0.0
    branch: bool = False
    even: int = 0
    turned: bool = False
    widest_mm: float = 0.0


def parts(fabric: Fabric, courses: Sequence[Course]) -> list[Part]:
    """The parts of a fabric, in the order of making. Chains that are only a foundation are no part."""
    lines = [_Line("none", 0.0) for _ in courses]
    for c in courses:
        lines[c.index] = _line(fabric, c, courses, lines)
    growing = _grows_later(fabric, courses, lines)
    kinds = [_kind(c, lines[c.index], growing[c.index], courses) for c in courses]
    found: list[Part] = []
    run: list[Course] = []
    last: Kind | None = None
    for c in courses:
        kind = kinds[c.index]
        if run and last is not None and (kind != last or _apart(run[-1], c)):
            found.append(_part(fabric, last, run, lines))
            run = []
        if kind is not None:
            run.append(c)
        last = kind
    if run and last is not None:
        found.append(_part(fabric, last, run, lines))
    return found


def _apart(last: Course, c: Course) -> bool:
    if c.row.section != last.row.section or c.row.piece != last.row.piece or c.index != last.index + 1:
        return True
    return c.below != last.index and c.way != "along"


def _part(fabric: Fabric, kind: Kind, run: list[Course], lines: Sequence[_Line]) -> Part:
    last, row = lines[run[-1].index], run[0].row
    return Part(
        kind, row.section, row.piece, tuple(run), last.depth_mm, last.base_mm, last.depth_mm, last.edge_mm,
        _true_corners(fabric, kind, run), last.branch, blocks(fabric, run) if kind == "flat" else (),
    )


def _true_corners(fabric: Fabric, kind: Kind, run: Sequence[Course]) -> tuple[Corner, ...]:
    """Corners of the last course; fans without chains in one round alone, on rounds that have none, are its edging."""
    found = corners(fabric, run[-1]) if kind in ("disc", "flat") else ()
    fans = kind == "disc" and len(run) > UNSURE and not all(k.chained for k in found)
    return () if fans and not any(len(corners(fabric, c)) == len(found) for c in run[:-1]) else found


def _line(fabric: Fabric, c: Course, courses: Sequence[Course], lines: Sequence[_Line]) -> _Line:
    if c.way == "chain" or c.assumed:
        return _Line("none", 0.0)
    below = courses[c.below] if 0 <= c.below < c.index else None
    if c.way == "round":
        if c.both_sides and below is not None and not c.from_ring:
            straight = below.top_mm * max(0, c.uses - 1) / below.places  # between the middles of its two end chains
            return _Line("centre", c.height_mm, base_mm=straight, widest_mm=c.top_mm)
        if below is None or c.from_ring or from_centre(c, courses):
            return _Line("centre", c.height_mm, widest_mm=c.top_mm)
    if c.way == "along" or c.way == "row" and c.row_ends >= max(2, EDGED * c.stitches):
        return _Line("rim", 0.0 if below is None else lines[c.below].depth_mm, edge_mm=c.height_mm)
    if below is None or below.way == "chain" or below.assumed:
        return _Line("chain", c.height_mm)
    under = lines[c.below]
    if c.way == "round" and c.row_ends >= ALL_ENDS * c.stitches:
        return _Line("chain", below.top_mm + c.height_mm)  # a strip joined into a ring, worked along its side
    if c.way == "round" and c.stitches < FEW * below.stitches and not goes_around(fabric, c, below):
        return _Line("chain", c.height_mm, branch=True)  # thumb, sleeve, leg
    if c.way == "round" and (below.way in ("row", "along") or c.row_ends):
        return _Line("rim", under.depth_mm, edge_mm=under.edge_mm + c.height_mm)
    if under.origin == "rim":
        return _Line("rim", under.depth_mm, edge_mm=under.edge_mm + c.height_mm)
    widest = max(under.widest_mm, below.top_mm)
    even = under.even + 1 if c.way == "round" and c.top_mm < widest * SAME else 0
    turned, widest = under.turned or even >= EVEN, max(widest, c.top_mm)
    return _Line(
        under.origin, under.depth_mm + c.height_mm, under.base_mm, branch=under.branch, even=even, turned=turned, widest_mm=widest,
    )


def _grows_later(fabric: Fabric, courses: Sequence[Course], lines: Sequence[_Line]) -> list[bool]:
    """Whether a round, or one that stands on it by way of rounds, gains stitches over all below, before the crown turns down."""
    found = [False] * len(courses)
    for c in reversed(courses):
        below = courses[c.below] if 0 <= c.below < c.index else None
        if c.way != "round" or below is None or below.way != "round":
            continue
        gains = c.places > below.places and (not below.chains or c.top_mm > SAME * lines[c.below].widest_mm)
        if gains and not lines[c.index].turned:
            found[c.index] = True
        if found[c.index] and goes_around(fabric, c, below):
            found[c.below] = True
    return found


def _kind(c: Course, line: _Line, grows: bool, courses: Sequence[Course]) -> Kind | None:
    if c.assumed:
        return None
    if c.way == "chain":
        after = next((o for o in courses[c.index + 1 : c.index + 3] if o.below == c.index), None)
        return "tie" if c.chains >= TIE and (after is None or set(after.kinds) == {"sl st"}) else None
    below = courses[c.below] if 0 <= c.below < c.index else None
    if below is not None and below.way == "chain" and set(c.kinds) == {"sl st"}:
        return "tie"
    if line.origin == "rim":
        return "border" if c.way == "round" else "edge"
    if c.way == "row":
        return "flat"
    first = below is None or below.way == "chain" or c.from_ring
    if line.origin == "centre" and (grows or first):
        return "oval" if line.base_mm else "disc"
    return "tube"


def tie_rows(found: Iterable[Part]) -> frozenset[int]:
    """Rows of the fabric that are ties: chains in the air, and what was worked back over them."""
    return frozenset(i for p in found if p.kind == "tie" for i in range(p.rows[0], p.rows[1] + 1))


def rows_alone(found: Iterable[Part]) -> bool:
    """Whether a fabric is rows, with or without a border: such a piece is blocked, and relaxed in the plane."""
    kinds = {p.kind for p in found}
    return "flat" in kinds and not kinds & {"disc", "oval", "tube"}


def pieces(found: Iterable[Part]) -> dict[int, list[Part]]:
    """Parts by the piece they belong to."""
    by_piece: dict[int, list[Part]] = {}
    for part in found:
        by_piece.setdefault(part.piece, []).append(part)
    return by_piece
