"""A section laid out: its plane, what it begins on, its rows."""

from __future__ import annotations

import math
import statistics
from collections import Counter
from collections.abc import Sequence
from dataclasses import replace

from loopwright.drawing.chart.along import PITCH
from loopwright.drawing.chart.around import lay_around
from loopwright.drawing.chart.beginnings import begin, wave
from loopwright.drawing.chart.columns import LEAST, Column, columns
from loopwright.drawing.chart.drawn import Laid, Mark, Point, RowLine
from loopwright.drawing.chart.edging import Edge
from loopwright.drawing.chart.ending import Ending
from loopwright.drawing.chart.laying import Laying
from loopwright.drawing.chart.planes import Around, Plane, Ring, Strip
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.settling import settle
from loopwright.drawing.chart.stood import FAN
from loopwright.drawing.chart.symbols import AIR, height
from loopwright.drawing.chart.telling import clear_frames
from loopwright.model.fabric import Fabric, FabricRow

TAB_AWAY, END_AWAY = 24.0, 14.0  # from the nearest symbol to a number's middle, to a count
RING = 15.0  # radius of the ring that a first round is worked into
HALF, SIDED = (13.0, 12.0), (28.0, 12.0)  # room about the middle of a number, and of one with its side
NARROWER = 4.0  # than its room on both sides is a number itself
STEPS = (4.0, 8.0, 12.0, 16.0, 22.0, 30.0, 40.0)  # how far a number may move
BAND = 6.0  # height of a band in which numbers are kept clear of symbols
ASIDE = 0.25  # of the seam, in u, that the first and last feet of an oval stand
CHAIN_LONG, DRAWN_OUT = 16.0, 1.7  # length of a chain that stands up; times its height that a symbol may be long
EVEN = 0.08  # spread of lengths that a chart may have
ROWS_GAP = 16.0  # between rows where some are left out
FAN_TAB, FAN_ARROW = 62.0, 9.0  # of a fan: its number, from the first stitch of the row; half the arrow between them
WIDER = 1.15  # a piece whose last row is so much wider than its first has grown


def lay(fabric: Fabric, section: Section) -> Laid:
    """Lays a section out; its marks are in the order of work."""
    if section.edge is not None:
        found = _around(fabric, section, section.edge)
    elif section.kind == "disc":
        found = _disc(fabric, section)
    elif section.fan:
        found = _fan(fabric, section)
    elif section.kind == "oval" and section.base >= 0:
        found = _oval(fabric, section)
    else:
        found = _strip(fabric, section)
    found.marks.sort(key=lambda m: m.stitch)
    if section.ringed or section.edge is not None and section.closed:
        sided = any(not fabric.rows[n.row].right_side for n in found.lines)
        found.lines = _aside(found.lines, found.marks, SIDED if sided else HALF)
    found.frames = clear_frames(found.frames, found.marks)
    return found


def _around(fabric: Fabric, section: Section, edge: Edge) -> Laid:
    """Rows around an edge; where their stitches lean for want of room below, all rows once more, settled together."""
    found, _ = lay_around(fabric, section, edge)
    if not edge.closed and _slanted(fabric, found) > (0.0, EVEN):
        _, laying = lay_around(fabric, section, edge, {})
        base = [(s, u, 0.0) for known in (laying.sides, laying.undersides, laying.tops) for s, (u, v) in known.items() if v == 0.0]
        again, _ = lay_around(fabric, section, edge, settle(base, laying.held, fixed=True))
        found = min(found, again, key=lambda f: _slanted(fabric, f))
    return found


def _disc(fabric: Fabric, section: Section) -> Laid:
    """Rounds about a ring. They are laid first and turned afterwards, so that the corners of the last round come to the plane's corners."""
    chains = fabric.rows[section.base].end - fabric.rows[section.base].start if section.base >= 0 else 0
    radius = max(RING, chains * 13.0 / (2 * math.pi))
    plane: Plane = Ring(section.sides)
    laying = Laying(fabric, plane, radius + AIR + (3.0 if chains else 0.0))
    for index in section.rows:
        laying.row(index, 1)
    if section.sides and section.corners:
        turned = Ring(section.sides, _turn(fabric, laying, section))
        laying = Laying(fabric, turned, radius + AIR + (3.0 if chains else 0.0))
        for index in section.rows:
            laying.row(index, 1)
    return Laid(_ring(fabric, section, radius) + laying.marks, laying.lines, laying.frames, ring=0.0 if chains else radius)


def _fan(fabric: Fabric, section: Section) -> Laid:
    """Rows back and forth about a ring, spread over its upper side; their numbers where they start, at either end."""
    chains = fabric.rows[section.base].end - fabric.rows[section.base].start if section.base >= 0 else 0
    radius = max(RING, chains * 13.0 / (2 * math.pi))
    laying = Laying(fabric, Ring(closed=False), radius + AIR + (3.0 if chains else 0.0))
    laying.sector = (math.pi - section.fan) / 2, section.fan
    arrows: list[list[Point]] = []
    lines: list[RowLine] = []
    for index in section.rows:
        way = 1 if fabric.rows[index].right_side else -1
        many = len(laying.lines)
        laying.row(index, way)
        for line in laying.lines[many:]:
            row = laying.held[-1]
            first = row[0] if way > 0 else row[-1]
            v = (min((s.low for s in row if s.column.what != "chain"), default=first.high) + max(s.high for s in row)) / 2
            out = [first.u - way * k / v for k in (FAN_TAB, FAN_TAB - FAN_ARROW - 20.0, FAN_TAB - 20.0 - 2 * FAN_ARROW)]
            lines.append(replace(line, tab=laying.point(out[0], v)))
            arrows.append([laying.point(out[1], v), laying.point(out[2], v)])
    found = Laid(_ring(fabric, section, radius) + laying.marks, lines, laying.frames, ring=0.0 if chains else radius)
    found.arrows = arrows
    return found


def _ring(fabric: Fabric, section: Section, radius: float) -> list[Mark]:
    """The chains of the ring in the middle."""
    if section.base < 0:
        return []
    row = fabric.rows[section.base]
    chains = row.end - row.start
    ring = [(s, 2 * math.pi * (k + 0.5) / chains) for k, s in enumerate(range(row.start, row.end))]
    half = min(6.0, math.pi * radius / chains - 0.4)
    return [_on_circle(s, a, radius, half, section.base) for s, a in ring]


def _on_circle(stitch: int, angle: float, radius: float, half: float, row: int) -> Mark:
    x, y = radius * math.cos(angle), radius * math.sin(angle)
    dx, dy = -math.sin(angle) * half, math.cos(angle) * half
    return Mark(stitch, "ch", ((x - dx, y - dy),), (x + dx, y + dy), "none", row)


def _turn(fabric: Fabric, laying: Laying, section: Section) -> float:
    """Where the corners of the last round lie within a side, as a mean on the circle of one side."""
    row = fabric.rows[section.corner_row]
    edge = [s for s in range(row.start, row.end) if s in laying.tops and fabric.part_of(s) in ("edge", "counts")]
    side = laying.plane.whole / section.sides if isinstance(laying.plane, Ring) else 1.0
    x = y = 0.0
    for at in section.corners:
        place = min(max(at * len(edge), 0.0), len(edge) - 1.0)
        low = int(place)
        one, two = laying.tops[edge[low]][0], laying.tops[edge[min(low + 1, len(edge) - 1)]][0]
        angle = 2 * math.pi * (one + (two - one) * (place - low)) / side
        x, y = x + math.cos(angle), y + math.sin(angle)
    return math.atan2(y, x) * side / (2 * math.pi)


def _oval(fabric: Fabric, section: Section) -> Laid:
    """Rounds about both sides of a chain; its last chain lies at the right, where the first round begins."""
    row, first = fabric.rows[section.base], fabric.rows[section.rows[0]]
    used = {p for s in range(first.start, first.end) if fabric.part_of(s) != "join" for p in fabric.parents(s)} - set(first.borrowed)
    worked = [s for s in range(row.start, row.end) if s in used]
    straight = (len(worked) - 1) * PITCH
    plane = Around(straight)
    laying = Laying(fabric, plane, AIR + 3.5)
    marks = []
    spare = [s for s in range(row.start, row.end) if s > worked[-1]]
    if spare:
        laying.lead = [_stands_up(fabric, first, spare, worked[-1])]
    for s in range(row.start, worked[-1] + 1):
        x = -straight / 2 + (s - worked[0]) * PITCH
        marks.append(Mark(s, "ch", ((x - 6.0, 0.0),), (x + 6.0, 0.0), "none", section.base))
        if s in used:
            away = straight / 2 - x
            end = s == worked[0]
            quarter = math.pi / 2
            top = 0.0 if s == worked[-1] else (2 * quarter + straight if end else quarter + away)
            aside = ASIDE if s == worked[-1] else 0.0
            laying.tops[s] = (top + aside, 3.5)
            laying.undersides[s] = (plane.whole - aside if s == worked[-1] else top if end else plane.whole - top, 3.5)
    for index in section.rows:
        laying.row(index, 1)
    return Laid(marks + laying.marks, laying.lines, laying.frames)


def _stands_up(fabric: Fabric, first: FabricRow, spare: list[int], on: int) -> Column:
    """The chains at the end of an oval's foundation: a stitch of the first round on the chain of those beside it, or only the way up."""
    beside = next((s for s in range(first.start, first.end) if fabric.parents(s) == (on,)), -1)
    if not first.borrowed or beside < 0:
        return Column("stack", spare, "ch", wide=9.0, turning=True)
    return Column("stack", spare, "ch", fabric.where(beside), (on,), 15.5, counts_as=fabric.name(beside))


def _strip(fabric: Fabric, section: Section) -> Laid:
    """Rows laid one on the other; where their stitches lean for want of room below, all rows once more, settled together."""
    found, laying, base = _rows(fabric, section, {})
    if not (isinstance(laying.plane, Strip) and laying.plane.wave) and _slanted(fabric, found) > (0.0, EVEN):
        again, _, _ = _rows(fabric, section, settle(base, laying.held))
        found = min(found, again, key=lambda f: _slanted(fabric, f))
    found.lines = _cleared(found.lines, found.marks)
    found.gaps += _gaps(section, fabric, found.marks)
    return found


def _rows(fabric: Fabric, section: Section, hints: dict[int, float]) -> tuple[Laid, Laying, list[tuple[int, float, float]]]:
    """Rows as they lie, and what the first stands on: each stitch with its u and its room."""
    pitch = _pitch(fabric, section)
    laying = Laying(fabric, Strip(wave(fabric, section, pitch)))
    laying.hints, laying.left = hints, _left(section)
    first = fabric.rows[section.rows[0]]
    marks, below, piece = begin(fabric, section, laying, -1 if section.closed or first.right_side else 1, pitch)
    at = {s: u for s, (u, _) in laying.tops.items()}
    many = Counter(round(u) for u in at.values())
    base = [(s, u, PITCH if many[round(u)] == 1 else 0.0) for s, u in at.items()]
    level = None
    for index in section.rows:
        laying.row(index, -1 if section.closed or fabric.rows[index].right_side else 1)
        if section.ends and section.ending is not None and index == section.ending.after:
            level = _passed_over(fabric, laying, section.ending)
    found = Laid(marks + laying.marks, laying.lines, laying.frames, below, piece=piece)
    if level is not None:
        xs = [m.top[0] for m in found.marks]
        found.gaps = [[(min(xs), level), (max(xs), level)]]
    return found, laying, base


def _passed_over(fabric: Fabric, laying: Laying, end: Ending) -> float:
    """Lets the next row stand where the last one does, over a gap: all between are like it. How high the line in the gap lies."""
    shown, under = fabric.rows[end.after], fabric.rows[end.under]
    for known in (laying.tops, laying.undersides, laying.sides):
        for s, t in zip(range(shown.start, shown.end), range(under.start, under.end), strict=True):
            if s in known:
                known[t] = known[s][0], known[s][1] + ROWS_GAP
    moved = under.start - shown.start
    laying.last, laying.ends = {s + moved for s in laying.last}, {s + moved for s in laying.ends}
    line = laying.level - AIR + ROWS_GAP / 2
    laying.level += ROWS_GAP
    return line


def _slanted(fabric: Fabric, laid: Laid) -> tuple[float, float]:
    """How far the longest symbol is drawn out beyond what still looks well, as a share of its height, and the spread of lengths."""
    stems = [m for m in laid.marks if m.kind != "sl st" and len(m.feet) == 1 and not m.way]
    longest = max((math.dist(m.feet[0], m.top) / (height(m.kind) if m.kind != "ch" else CHAIN_LONG) for m in stems), default=1.0)
    return max(0.0, longest - DRAWN_OUT), leaning(fabric, laid.marks)


def leaning(fabric: Fabric, marks: list[Mark]) -> float:
    """The largest spread (deviation over mean) of length over height of the symbols of a kind, but for what stretches on purpose.

    That is: fans of three and more in one place, decreases, and stitches worked past others.
    """
    together = Counter((fabric.parents(m.stitch), m.row) for m in marks)
    shares: dict[str, list[float]] = {}
    for m in marks:
        if m.kind not in ("ch", "sl st") and len(m.feet) == 1 and not m.way and together[fabric.parents(m.stitch), m.row] < FAN:
            shares.setdefault(m.kind, []).append(math.dist(m.feet[0], m.top) / height(m.kind))
    return max((statistics.pstdev(v) / statistics.mean(v) for v in shares.values()), default=0.0)


def _cleared(lines: list[RowLine], marks: list[Mark]) -> list[RowLine]:
    """Numbers and counts moved out past everything that lies as high."""
    bands: dict[int, tuple[float, float]] = {}
    for m in marks:
        xs, ys = [m.top[0], *(p[0] for p in m.feet)], [m.top[1], *(p[1] for p in m.feet)]
        low, high = min(xs), max(xs)
        for band in range(int(min(ys) // BAND), int(max(ys) // BAND) + 1):
            left, right = bands.get(band, (low, high))
            bands[band] = min(left, low), max(right, high)
    return [_clear(line, bands) for line in lines]


def _aside(lines: list[RowLine], marks: list[Mark], half: Point) -> list[RowLine]:
    """Numbers within rounds moved to the nearest place beside them that is free of symbols and of other numbers."""
    inked = [p for m in marks for f in m.feet for p in (f, ((f[0] + m.top[0]) / 2, (f[1] + m.top[1]) / 2), m.top)]
    found: list[RowLine] = []
    for line in lines:
        x, y = line.tab
        tabs = [n.tab for n in found]
        around = [(x + r * math.cos(a * math.pi / 4), y + r * math.sin(a * math.pi / 4)) for r in STEPS for a in range(8)]
        apart = [p for p in ((x, y), *around) if not _near(p, tabs, (2 * half[0] - NARROWER, 2 * half[1] - NARROWER))]
        free = (p for p in apart if not _near(p, inked, half))
        found.append(replace(line, tab=next(free, next(iter(apart), line.tab))))
    return found


def _near(p: Point, others: Sequence[Point], room: Point) -> bool:
    return any(abs(p[0] - q[0]) < room[0] and abs(p[1] - q[1]) < room[1] for q in others)


def _clear(line: RowLine, bands: dict[int, tuple[float, float]]) -> RowLine:
    way = 1 if line.along[0] > 0 else -1
    tab, end = line.tab[0], line.end[0]
    near = [bands[b] for b in range(int((line.tab[1] - 9) // BAND), int((line.tab[1] + 9) // BAND) + 1) if b in bands]
    if near:
        tab = min(tab, min(n[0] for n in near) - TAB_AWAY) if way > 0 else max(tab, max(n[1] for n in near) + TAB_AWAY)
    near = [bands[b] for b in range(int((line.end[1] - 7) // BAND), int((line.end[1] + 7) // BAND) + 1) if b in bands]
    if near:
        end = max(end, max(n[1] for n in near) + END_AWAY) if way > 0 else min(end, min(n[0] for n in near) - END_AWAY)
    return RowLine(line.row, (tab, line.tab[1]), (end, line.end[1]), line.along)


def _pitch(fabric: Fabric, section: Section) -> float:
    """Between two chains of a foundation: wide enough for the first row, and for the widest unless the piece grows."""
    if section.base < 0:
        return PITCH
    base = fabric.rows[section.base]
    wide = [sum(c.wide for c in columns(fabric, fabric.rows[i], tab=False, left=_left(section)) if not c.turning) for i in section.rows[:8]]
    fans = any(_fanned(fabric, i) for i in section.rows[1:8])
    need = wide[0] if wide[-1] > WIDER * wide[0] and not fans else max(wide)
    chains = base.end - base.start - len(_left(section).intersection(range(base.start, base.end)))
    return max(PITCH, min(4 * PITCH, (need - LEAST) / max(1, chains - 1)))


def _fanned(fabric: Fabric, index: int) -> bool:
    """Whether most stitches of a row stand in fans over as few places as it leaves between them: it is no wider than the row below."""
    row = fabric.rows[index]
    places = Counter(fabric.parents(s) for s in range(row.start, row.end) if fabric.name(s) not in ("ch", "sl st") and fabric.into[s] >= 0)
    return 2 * sum(n for n in places.values() if n >= FAN) > sum(places.values())


def _left(section: Section) -> frozenset[int]:
    return frozenset[int]().union(*section.left)


def _gaps(section: Section, fabric: Fabric, marks: list[Mark]) -> list[list[Point]]:
    """The lines where stitches are left out, from row to row between those that stand beside them."""
    at = {m.stitch: m for m in marks}
    found = []
    for band in section.left:
        line: list[Point] = []
        for index in section.rows:
            here = [s for s in band if fabric.row[s] == index]
            one, two = at.get(min(here) - 1), at.get(max(here) + 1)
            if one is not None and two is not None:
                left, right = sorted((one, two), key=lambda m: m.top[0])
                low = (max(p[0] for p in left.feet) + min(p[0] for p in right.feet)) / 2, min(left.feet[0][1], right.feet[0][1])
                high = (left.top[0] + right.top[0]) / 2, max(left.top[1], right.top[1])
                line += [low] * (not line) + [((low[0] + high[0]) / 2, (low[1] + high[1]) / 2)] + [high] * (index == section.rows[-1])
        found.append(line)
    return [g for g in found if len(g) > 1]
