"""What is drawn in one chart: a part of the fabric, the chain it begins on, the plane it lies on."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from loopwright.drawing.chart.along import PITCH
from loopwright.drawing.chart.edge_room import is_free
from loopwright.drawing.chart.edging import Edge, edge_of
from loopwright.drawing.chart.ending import Ending, ending
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.corners import Corner, corners
from loopwright.measuring.courses import Course, courses
from loopwright.measuring.parts import FEWEST_SIDES, Part, parts
from loopwright.model.fabric import Fabric
from loopwright.record import record

MANY = 700  # symbols that a chart shows where it may leave rows out
HUGE = 12_000  # symbols that are more than two rows may have
FEWEST, MOST = 4, 12  # rows
SHAPED = 1_200  # symbols of a piece that is shown whole, since its shape is in all of its rounds
PAGE, ROOM, GROWN = 820.0, 15.5, 1.15  # width of a chart that grows; of a stitch; a row that many times as long as the first has grown
RINGS = ("disc", "oval")
ENDED = ("tube", "flat")  # parts of which first and last rows can be shown
LEAST_FAN, SLENDER = 1.2, 2.2  # radians: of the narrowest fan; what spreads over less is no half circle
TIP = (0.4, 0.6)  # where along a row the corner of a triangle worked down from its tip lies
SLIM = 8.0  # times as far round as its stitches are wide


@record
class Section:
    """Rows of one chart.

    `kind`: of the part ("disc", "oval", "tube", "flat", "border", "edge", "tie", "rows"); `base`: the row of chains it begins on, -1 for
    none; `rows`: rows of the fabric that are shown; `of`: how many there are; `corners`: shares of the row
    `corner_row` where its corners stand. `blocks`: how many each row has, where it is worked from corner to corner.
    `left`: bands of stitches that are left out. `edge`: of the piece that the rows go around, where they do ("edge", "border" …).
    `fan`: the angle, radians, that rows worked back and forth from a ring are spread over; 0 for other pieces.
    `ending`: the rows that show how the piece ends too, where that is known; `ends`: whether `rows` are those.
    """

    kind: str
    name: str | None
    base: int
    rows: tuple[int, ...]
    of: int
    sides: int = 0
    corners: tuple[float, ...] = ()
    corner_row: int = -1
    closed: bool = False
    blocks: tuple[int, ...] = ()
    left: tuple[frozenset[int], ...] = ()
    edge: Edge | None = None
    fan: float = 0.0
    ending: Ending | None = None
    ends: bool = False

    @property
    def ringed(self) -> bool:
        """Whether its rows lie about a middle, with no straight ends beside which to say anything."""
        return self.kind in RINGS or self.fan > 0.0


def sections(fabric: Fabric, sizes: StitchSizes, *, whole: bool) -> list[Section]:
    """The charts of a fabric, in the order of making. Rows that nobody worked (they must have been there) are in none."""
    found = courses(fabric, sizes)
    taken: set[int] = set()
    drawn: list[tuple[int, Section]] = []
    for part in parts(fabric, found):
        rows = [c.index for c in part.courses if c.index not in taken and _has(fabric, c.index)]
        if not rows:
            continue
        base = _base(fabric, found, rows, taken)
        taken.update(rows, () if base < 0 else (base,))
        section = _section(fabric, part, base, rows, whole=whole)
        edge = edge_of(fabric, section.rows, found) if base < 0 and rows[0] and not part.branch else None
        if edge is not None and any(s.turn < 0 for s in edge.sides) and not is_free(fabric, edge):
            edge = None
        drawn.append((rows[0], section if edge is None else replace(section, kind="edge", edge=edge, closed=edge.closed)))
    left = [c for c in found if c.index not in taken and not c.assumed and _has(fabric, c.index)]
    drawn += [(c.index, Section("rows", c.row.section, -1, (c.index,), 1)) for c in left]
    return [s for _, s in sorted(drawn, key=lambda d: d[0])]


def _has(fabric: Fabric, index: int) -> bool:
    row = fabric.rows[index]
    return any(fabric.part_of(s) != "assumed" for s in range(row.start, row.end))


def _base(fabric: Fabric, found: Sequence[Course], rows: Sequence[int], taken: set[int]) -> int:
    if rows[0] == 0:
        return -1
    first = fabric.rows[rows[0]]
    parents = {p for s in range(first.start, first.end) for p in fabric.parents(s)} | set(first.borrowed)
    for index in range(rows[0] - 1, max(-1, rows[0] - 3), -1):
        row = found[index].row
        if found[index].way == "chain" and index not in taken and any(row.start <= p < row.end for p in parents):
            return index
    return -1


def _section(fabric: Fabric, part: Part, base: int, rows: list[int], *, whole: bool) -> Section:
    closes = part.kind == "tube" and _shaped(fabric, rows)
    fan = _fan(part, rows)
    shown = rows if whole or closes else _few(fabric, rows, rounds=part.kind in RINGS or fan > 0.0)
    last = next(c for c in part.courses if c.index == shown[-1])
    found, at = _corners(fabric, part, shown) if part.kind == "disc" else ((), -1)
    shares = tuple(c.at for c in found)
    kind = "tube" if part.kind == "disc" and _slim(part, shown) else part.kind
    found_end = ending(fabric, rows, shown) if part.kind in ENDED and not fan else None
    closed = last.way == "round"
    of, many = len(rows), len(found)
    return Section(kind, part.section, base, tuple(shown), of, many, shares, at, closed, part.blocks, fan=fan, ending=found_end)


def _fan(part: Part, rows: Sequence[int]) -> float:
    """The angle of rows worked back and forth from a ring: half a turn, less where its measures tell less; 0 for other pieces.

    A triangle from its tip to its two sides lies as its rows do, with its corner in their middle.
    """
    first, last = part.courses[0], part.courses[-1]
    if part.kind != "flat" or part.blocks or not first.from_ring or first.way != "row" or rows[0] != first.index or not part.depth_mm:
        return 0.0
    if any(TIP[0] <= c.at <= TIP[1] for c in part.corners) and len(part.corners) == 1:
        return 0.0
    wide = last.top_mm / part.depth_mm
    return math.pi if wide >= SLENDER else max(LEAST_FAN, wide)


def _slim(part: Part, shown: Sequence[int]) -> bool:
    """Whether rounds stay so few in stitches that rings about a middle would draw them far apart: a bill, a stalk."""
    widest = max((c for c in part.courses if c.index in shown), key=lambda c: c.places)
    upto = [c for c in part.courses if c.index in shown and c.index <= widest.index and c.kinds]
    reach = sum(height(max(c.kinds, key=lambda k: c.kinds[k])) + AIR for c in upto)
    return 2 * math.pi * reach > SLIM * PITCH * max(1, widest.places)


def _corners(fabric: Fabric, part: Part, shown: Sequence[int]) -> tuple[tuple[Corner, ...], int]:
    """The corners of a motif, and the row they were found in: the last shown that has them (one that joins may hide them)."""
    if part.sides and shown[-1] == part.courses[-1].index:
        return part.corners, shown[-1]
    for c in reversed([c for c in part.courses if c.index in shown]):
        found = corners(fabric, c)
        if len(found) >= FEWEST_SIDES and all(k.chained for k in found):
            return found, c.index
    return (), -1


def _shaped(fabric: Fabric, rows: Sequence[int]) -> bool:
    """Whether small rounds widen or narrow after those that would be shown: of a toy all are shown."""
    many = [fabric.rows[i].end - fabric.rows[i].start for i in rows]
    return sum(many) <= SHAPED and len(set(many[MOST - 1 :])) > 1


def _few(fabric: Fabric, rows: list[int], *, rounds: bool) -> list[int]:
    """The first rows, as many as a chart shows without being asked for the whole."""
    shown: list[int] = []
    symbols, across = 0, 0.0
    first = fabric.rows[rows[0]].end - fabric.rows[rows[0]].start
    for index in rows:
        row = fabric.rows[index]
        symbols += row.end - row.start
        kinds = {fabric.name(s) for s in range(row.start, row.end)} - {"ch", "sl st"}
        across += 2 * (AIR + max(map(height, kinds), default=0.0))
        wide = across if rounds else (row.end - row.start) * ROOM if row.end - row.start > GROWN * first else 0.0
        if len(shown) >= FEWEST and (symbols > MANY and rounds or wide > PAGE or len(shown) >= MOST) or len(shown) > 1 and symbols > HUGE:
            break
        shown.append(index)
    return shown
