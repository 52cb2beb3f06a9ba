"""Signs that are no stitches: where the yarn is cut, which way rounds go, where the chart is torn off."""

from __future__ import annotations

import math
from collections.abc import Sequence
from html import escape

from loopwright.drawing.chart.drawn import ChartOptions, Laid, Mark, Point
from loopwright.drawing.chart.ink import number, pair
from loopwright.drawing.chart.sections import RINGS, Section
from loopwright.drawing.chart.sheet import Sheet
from loopwright.drawing.lettering import plain, width_px
from loopwright.model.fabric import Fabric

TORN_WORD = 30.0  # room for the word at a torn edge
CUT = 5.0  # half a side of the sign that the yarn is cut
CUT_AWAY = 11.0  # from the last stitch
ROOM, TAB_HALF = 8.0, 10.0  # around the sign that yarn is joined; half a number
ROOMS = (9.0, 12.0, 15.0, 19.0, 24.0)  # how far that sign may stand from the foot
ARROW, AHEAD, OUTSIDE = 42.0, 0.10, 16.0  # length; from where the last round begins, of a turn; from the outermost stitch
BARB = (7.0, 3.5)


def fastened(fabric: Fabric, section: Section) -> bool:
    """Whether a section's last row is the last of its piece: there the yarn is fastened off."""
    last = section.rows[-1]
    return len(section.rows) == section.of and (last + 1 == len(fabric.rows) or fabric.rows[last + 1].piece != fabric.rows[last].piece)


def cut_at(fabric: Fabric, section: Section, laid: Laid) -> Point | None:
    """The middle of the sign that the yarn is cut, beside the last stitch; None where the work goes on."""
    line = next((n for n in laid.lines if n.row == section.rows[-1]), None)
    if line is None or laid.torn is not None or not fastened(fabric, section):
        return None
    if section.edge is not None:
        last = max((m for m in laid.marks if m.row == line.row), key=lambda m: m.stitch)
        (fx, fy), (x, y) = last.feet[0], last.top
        far = math.dist((fx, fy), (x, y)) or 1.0
        return x + (x - fx) / far * CUT_AWAY, y + (y - fy) / far * CUT_AWAY
    if not section.ringed:
        return line.end[0] + math.copysign(2.0, line.along[0]), line.end[1]
    last = max((m for m in laid.marks if m.row == line.row), key=lambda m: m.stitch)
    (x, y), out = last.top, math.atan2(last.top[1], last.top[0])
    turns = (out + k * math.pi / 4 for k in (0, 1, -1, 2, -2, 3, -3, 4))
    around = [(x + CUT_AWAY * math.cos(a), y + CUT_AWAY * math.sin(a)) for a in turns]
    inked = [p for m in laid.marks if m is not last for f in m.feet for p in (f, ((f[0] + m.top[0]) / 2, (f[1] + m.top[1]) / 2), m.top)]

    def free(p: Point) -> bool:
        clear = not any(abs(p[0] - n.tab[0]) < TAB_HALF + CUT and abs(p[1] - n.tab[1]) < TAB_HALF + CUT for n in laid.lines)
        return clear and all(math.dist(p, q) > CUT for q in inked)

    return next((p for p in around if free(p)), around[0])


def joined_at(fabric: Fabric, laid: Laid, joins: Sequence[tuple[int, int]]) -> list[Point]:
    """The middles of the signs that yarn is joined, each beside the foot of the first stitch made with it, where there is room."""
    seen: set[int] = set()
    first: list[Mark] = []
    for m in sorted(laid.marks, key=lambda m: m.stitch):
        if m.row not in seen and any(start <= fabric.origin[m.stitch] < end for start, end in joins):
            seen.add(m.row)
            first.append(m)
    if not first:
        return []
    inked = [p for m in (*laid.marks, *laid.piece) for f in m.feet for p in (f, ((f[0] + m.top[0]) / 2, (f[1] + m.top[1]) / 2), m.top)]
    tabs = [n.tab for n in laid.lines]
    found: list[Point] = []
    for m in first:
        line = next((n for n in laid.lines if n.row == m.row), None)
        back = math.pi + (math.atan2(line.along[1], line.along[0]) if line is not None else 0.0)
        (x, y), turns = m.feet[0], (0, 1, -1, 2, -2, 3, -3, 4)
        around = [(x + r * math.cos(back + k * math.pi / 4), y + r * math.sin(back + k * math.pi / 4)) for r in ROOMS for k in turns]

        def room(p: Point) -> float:
            near = min((math.dist(p, q) for q in (*inked, *found)), default=ROOM)
            return min(near, *(max(abs(p[0] - t[0]) - TAB_HALF, abs(p[1] - t[1])) for t in tabs)) if tabs else near

        found.append(next((p for p in around if room(p) >= ROOM), max(around, key=room)))
    return found


def way_of_rounds(section: Section, laid: Laid) -> list[Point]:
    """The shaft of the arrow that shows which way rounds go: outside the last, from where it begins."""
    if section.kind not in RINGS or not laid.lines:
        return []
    start = laid.lines[-1].tab
    angle = math.atan2(start[1], start[0])
    places = [(math.atan2(p[1], p[0]), math.hypot(*p)) for m in laid.marks for p in (*m.feet, m.top)]
    if section.kind == "oval":
        reach = max(p[0] for m in laid.marks for p in (*m.feet, m.top)) + OUTSIDE
        return [(reach, start[1] + ARROW * k / 6) for k in range(1, 7)]
    near = [r for a, r in places if abs((a - angle - 0.2 + math.pi) % (2 * math.pi) - math.pi) < 0.45]
    reach = max(near, default=math.hypot(*start)) + OUTSIDE
    turn = ARROW / reach
    return [(reach * math.cos(angle + AHEAD + turn * k / 6), reach * math.sin(angle + AHEAD + turn * k / 6)) for k in range(7)]


def signs_box(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, px: float) -> list[Point]:
    """Points that the signs reach, mirrored for the left hand."""
    sign = -1 if options.left_handed else 1
    found = [*way_of_rounds(section, laid), *(p for shaft in laid.arrows for p in shaft)]
    at = cut_at(fabric, section, laid)
    found += [(x + CUT * k, y + CUT * k) for x, y in joined_at(fabric, laid, options.joins) for k in (-1, 1)]
    if at is not None:
        found += [(at[0] - 2 * CUT, at[1] - 2 * CUT), (at[0] + 2 * CUT, at[1] + 2 * CUT)]
    if laid.torn is not None:
        middle, half = _middle(laid.torn.edge), width_px(laid.torn.word, px) / 2
        found += [(x, y + TORN_WORD) for x, y in laid.torn.edge]
        found += [(middle - half, laid.torn.edge[0][1]), (middle + half, laid.torn.edge[0][1])]
    return [(sign * x, y) for x, y in found]


def signs(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, sheet: Sheet) -> list[str]:
    """All signs as elements."""
    at, shaft = cut_at(fabric, section, laid), way_of_rounds(section, laid)
    found = [cut_sign(sheet.at(at))] if at is not None else []
    found += [join_sign(sheet.at(p)) for p in joined_at(fabric, laid, options.joins)]
    found += [_arrow([sheet.at(p) for p in s]) for s in (shaft, *laid.arrows) if s]
    found += [_gap([sheet.at(p) for p in gap]) for gap in laid.gaps]
    return found + _torn(laid, sheet)


def cut_sign(at: Point) -> str:
    """A small filled triangle, as charts mark where the yarn is cut (from memory: customary international crochet symbols)."""
    return f'<path class="f cut" d="{_triangle(at)}"/>'


def join_sign(at: Point) -> str:
    """A small open triangle, as charts mark where yarn is joined (from memory: customary international crochet symbols)."""
    return f'<path class="cut joined" d="{_triangle(at)}"/>'


def _triangle(at: Point) -> str:
    x, y = at
    corners = ((x - CUT, y + 0.8 * CUT), (x + CUT, y + 0.8 * CUT), (x, y - 0.9 * CUT))
    return f"M{'L'.join(pair(c) for c in corners)}Z"


def _arrow(shaft: Sequence[Point]) -> str:
    (x0, y0), (x1, y1) = shaft[-2:]
    long = math.dist((x0, y0), (x1, y1)) or 1.0
    ux, uy = (x1 - x0) / long, (y1 - y0) / long
    barbs = [(x1 - BARB[0] * ux + s * BARB[1] * uy, y1 - BARB[0] * uy - s * BARB[1] * ux) for s in (-1, 1)]
    line = "M" + "L".join(pair(p) for p in shaft)
    return f'<path class="arrow" d="{line}M{pair(barbs[0])}L{pair(shaft[-1])}L{pair(barbs[1])}"/>'


def _gap(line: Sequence[Point]) -> str:
    return f'<g class="frame"><path class="gap" d="M{"L".join(pair(p) for p in line)}"/></g>'


def _middle(points: Sequence[Point]) -> float:
    return (min(p[0] for p in points) + max(p[0] for p in points)) / 2


def _torn(laid: Laid, sheet: Sheet) -> list[str]:
    """The jagged edge, and the word over it."""
    if laid.torn is None:
        return []
    points = [sheet.at(p) for p in laid.torn.edge]
    x, y = _middle(points), min(p[1] for p in points) - 8
    edge = "M" + "L".join(pair(p) for p in points)
    word = escape(plain(laid.torn.word))
    return [f'<path class="torn" d="{edge}"/>', f'<text class="mid" x="{number(x)}" y="{number(y)}">{word}</text>']
