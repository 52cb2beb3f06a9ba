"""The picture of a grid: squares, numbers, arrows, counts, key and words, as one SVG."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise

from loopwright.drawing import svg
from loopwright.drawing.chart.drawn import ChartOptions, Point
from loopwright.drawing.chart.grid import Cell, Grid, GridRow, Window, shown
from loopwright.drawing.chart.grid_style import LETTER_PX, SCOPE, TEXT_PX, TITLE_PX, YARNS, in_tones, strokes, style
from loopwright.drawing.chart.grid_words import count, label, meaning, name_of, signs
from loopwright.drawing.chart.ink import number
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.words import named
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.drawing.speech import Speech
from loopwright.drawing.tones import tone
from loopwright.model.fabric import Fabric

MARGIN, LINE, TITLE_LINE = 24.0, 22.0, 24.0
LEAST = 18.0  # the shorter side of a square: a letter has room
MOST_APART = 3.0  # a square's sides, one to the other
TAB_HIGH, TAB_PAD, ARROW, GAP = 16.0, 5.0, 12.0, 4.0
NARROWEST = 330.0
ENTRY = 30.0
BESIDE = 58.0  # for numbers around a grid from corner to corner
TEN = 10
OF_COLUMN = 0.01985  # of the sheet's width that type is high at least: 9 pt (3.175 mm) where the sheet is 160 mm wide
SMALLEST_PX = 9.0  # type on a screen, CSS px
ALONE = 1_000  # squares; beyond, equal ones side by side are one element
_Told = tuple[dict[str, str], Speech]  # letters of what stands in squares, and whose words


@dataclass(slots=True)
class _Sheet:
    """Where squares lie: `left`, `top` of the grid in px; `w`, `h` of a square; `hand` -1 for left-handed."""

    window: Window
    left: float
    top: float
    w: float
    h: float
    left_handed: bool

    @property
    def right(self) -> float:
        """The right end of the grid."""
        return self.left + (self.window.x1 - self.window.x0) * self.w

    @property
    def bottom(self) -> float:
        """The lower end of the grid."""
        return self.top + (self.window.y1 - self.window.y0) * self.h

    def at(self, x: float, y: float) -> Point:
        """The upper left corner of a square."""
        across = x - self.window.x0 if self.left_handed else self.window.x1 - 1 - x
        return self.left + across * self.w, self.top + (self.window.y1 - 1 - y) * self.h


def grid_page(fabric: Fabric, section: Section, grid: Grid, window: Window, options: ChartOptions, told: tuple[Sequence[str], str]) -> str:
    """The SVG of a part of a grid. `told`: notes, and the description in words."""
    rows, sign = shown(grid, window), signs(grid)
    sheet = _sheet(fabric, grid, rows, window, options)
    sides = _sides(fabric, grid, rows, options.words, counts=window.counts)
    wide = max(NARROWEST, sheet.right + max(sides if grid.kind != "corner" else (BESIDE, BESIDE)) + MARGIN)
    name = wrapped(named(section, options.words), TITLE_PX, wide - 2 * MARGIN, heavy=True)
    sheet.top = MARGIN + TITLE_LINE * len(name) + (BESIDE if grid.kind == "corner" else 16.0)
    cells = sum(len(r.cells) for r in rows)
    parts = [x for row in rows for x in _row(fabric, grid, row, sheet, options, sign, merged=cells > ALONE)]
    parts += [*_lines(grid, rows, sheet), *_tens(grid, sheet)]
    parts += [x for row in rows for x in (_corner_tab if grid.kind == "corner" else _tab)(fabric, grid, row, sheet, (sign, options.words))]
    under = sheet.bottom + (BESIDE + 4.0 if grid.kind == "corner" else 34.0)
    key, under = _key(grid, options, under, wide, sign)
    said, high = _said(told[0], under, wide)
    lines = [svg.text("title", (MARGIN, 30 + TITLE_LINE * n), line) for n, line in enumerate(name)]
    ident = f"{options.ident}-grid-{rows[0].index}-{window.x0}-{window.y0}"
    own, rules = in_tones(_tones(grid, options))
    inside = ["\n".join(["", f"<style>{style()}{rules}</style>", svg.rect("sheet", (0, 0), (wide, high)), *lines, *parts, *key, *said, ""])]
    titles = _titled(" ".join(name), grid, options.words), told[1]
    return svg.document(ident, f"{SCOPE} {own}".rstrip(), (wide, high), titles, inside, shown_px=options.width)


def fitting(fabric: Fabric, grid: Grid, options: ChartOptions, *, counts: bool = True) -> int:
    """How many squares across a picture may have for its letters to be read: where it is as wide as a column, or as it is asked to be."""
    whole = _sheet(fabric, grid, grid.rows, Window(0, 0, grid.wide, grid.high, counts), options)
    px = TEXT_PX if grid.kind == "filet" else LETTER_PX
    widest = min(px / OF_COLUMN, options.width * px / SMALLEST_PX if options.width else math.inf)
    return int((widest - 2 * whole.left) // whole.w)


def _titled(name: str, grid: Grid, speech: Speech) -> str:
    return speech.say("grid-chart", name=name, kind=name_of(grid, speech).lower())


def _sheet(fabric: Fabric, grid: Grid, rows: Sequence[GridRow], window: Window, options: ChartOptions) -> _Sheet:
    ratio = min(MOST_APART, max(1 / MOST_APART, grid.cell_mm[0] / grid.cell_mm[1]))
    w, h = (LEAST * ratio, LEAST) if ratio >= 1 else (LEAST, LEAST / ratio)
    beside = BESIDE if grid.kind == "corner" else max(_sides(fabric, grid, rows, options.words, counts=window.counts))
    return _Sheet(window, MARGIN + beside, 0.0, w, h, options.left_handed)


def _sides(fabric: Fabric, grid: Grid, rows: Sequence[GridRow], speech: Speech, *, counts: bool) -> tuple[float, float]:
    """Room for numbers, and for counts, beside the squares."""
    sign = signs(grid)
    tab = max(_wide(label(fabric, r)) + 2 * TAB_PAD for r in rows) + ARROW + 3 * GAP
    return tab, max(_wide(count(grid, r, sign, speech)) for r in rows) + 2 * GAP if counts else 0.0


def _wide(text: str) -> float:
    return width_px(text, TEXT_PX)


def _safe(text: str) -> str:
    return escape(plain(text))


def _tones(grid: Grid, options: ChartOptions) -> dict[int, str]:
    """The tones of yarns whose names say a colour, by their number; none where more yarns than tones are apart."""
    if grid.kind == "filet" or len(grid.whats) > YARNS:
        return {}
    named = {n: tone(options.yarns.get(what, what)) for n, what in enumerate(grid.whats)}
    return {n: found for n, found in named.items() if found is not None}


def _classes(grid: Grid, what: str) -> str:
    return what if grid.kind == "filet" else f"y{grid.whats.index(what) % YARNS}"


def _row(
    fabric: Fabric, grid: Grid, row: GridRow, sheet: _Sheet, options: ChartOptions, sign: dict[str, str], *, merged: bool
) -> Iterator[str]:
    """The squares of a row, in the order of making, with their strokes and letters."""
    of = fabric.rows[row.index]
    yield f'<g data-row="{row.index}" data-label="{_safe(of.label)}" data-side="{"RS" if of.right_side else "WS"}">'
    for run in _together(row, options, merged=merged and grid.kind != "corner"):
        a, b = sheet.at(run[0].x, run[0].y), sheet.at(run[-1].x, run[-1].y)
        line = f' data-line="{options.line(run[0].stitch)}"' if options.line else ""
        many = f' data-cells="{len(run)}" data-step="{run[1].stitch - run[0].stitch}"' if len(run) > 1 else ""
        size = f'width="{number(sheet.w * len(run))}" height="{number(sheet.h)}"'
        place = f'x="{number(min(a[0], b[0]))}" y="{number(a[1])}" {size}'
        what = f'data-stitch="{run[0].stitch}" data-what="{_safe(run[0].what)}"'
        yield f'<rect class="{_classes(grid, run[0].what)}" {place} {what}{many}{line}/>'
    if grid.kind != "filet":
        yield from _inside(grid, row, sheet, sign)
    yield "</g>"


def _together(row: GridRow, options: ChartOptions, *, merged: bool) -> list[list[Cell]]:
    """Squares that are one element: side by side, alike, their stitches as far apart, made by one line."""
    found: list[list[Cell]] = []
    for c in row.cells:
        last = found[-1] if found else []
        if merged and last and last[-1].what == c.what and _goes_on(last, c, options):
            last.append(c)
        else:
            found.append([c])
    return found


def _goes_on(last: Sequence[Cell], c: Cell, options: ChartOptions) -> bool:
    step = c.stitch - last[-1].stitch
    even = step == c.many and all(b.stitch - a.stitch == step for a, b in pairwise(last[:2]))
    return even and (options.line is None or options.line(c.stitch) == options.line(last[0].stitch))


def _inside(grid: Grid, row: GridRow, sheet: _Sheet, sign: dict[str, str]) -> Iterator[str]:
    for what in dict.fromkeys(c.what for c in row.cells):
        n = grid.whats.index(what) % YARNS
        own = [sheet.at(c.x, c.y) for c in row.cells if c.what == what]
        data = "".join(strokes(n, at, (sheet.w, sheet.h)) for at in own)
        if data:
            yield f'<path class="mark m{n}" d="{data}"/>'
        if len(sign[what]) == 1:
            xs = " ".join(number(x + sheet.w / 2) for x, _ in own)
            ys = {number(y + sheet.h / 2 + 4.8) for _, y in own}
            down = ys.pop() if len(ys) == 1 else " ".join(number(y + sheet.h / 2 + 4.8) for _, y in own)
            yield f'<text class="in t{n}" x="{xs}" y="{down}">{escape(sign[what]) * len(own)}</text>'
        else:
            yield from (
                f'<text class="in t{n}" x="{number(x + sheet.w / 2)}" y="{number(y + sheet.h / 2 + 4.8)}">{escape(sign[what])}</text>'
                for x, y in own
            )


def _lines(grid: Grid, rows: Sequence[GridRow], sheet: _Sheet) -> list[str]:
    """Lines between squares; a bold one every ten, counted from where the work begins."""
    window = sheet.window
    if grid.kind == "corner":
        hair = "".join(_box(sheet, c) for r in rows for c in r.cells)
        ten = "".join(_bold(sheet, c) for r in rows for c in r.cells)
        return _three(hair, ten)
    hair, ten = "", ""
    for x in range(window.x0, window.x1 + 1):
        across = sheet.left + (x - window.x0 if sheet.left_handed else window.x1 - x) * sheet.w
        data = f"M{number(across)} {number(sheet.top)}V{number(sheet.bottom)}"
        hair, ten = (hair, ten + data) if x % TEN == 0 or x == grid.wide else (hair + data, ten)
    for y in range(window.y0, window.y1 + 1):
        down = sheet.at(window.x0, y - 1)[1]
        data = f"M{number(sheet.left)} {number(down)}H{number(sheet.right)}"
        hair, ten = (hair, ten + data) if y % TEN == 0 or y == grid.high else (hair + data, ten)
    return _three(hair, ten)


def _three(hair: str, ten: str) -> list[str]:
    """Thin lines; bold ones, cased so that they are seen on squares of every colour."""
    bold = [f'<path class="case" d="{ten}"/>', f'<path class="ten" d="{ten}"/>'] if ten else []
    return [f'<path class="hair" d="{hair}"/>', *bold]


def _bold(sheet: _Sheet, cell: Cell) -> str:
    """The edges of a square that stand ten from the first row or column."""
    x, y = sheet.at(cell.x, cell.y)
    near = x if sheet.left_handed else x + sheet.w
    found = f"M{number(near)} {number(y)}v{number(sheet.h)}" if cell.x and cell.x % TEN == 0 else ""
    return found + (f"M{number(x)} {number(y + sheet.h)}h{number(sheet.w)}" if cell.y and cell.y % TEN == 0 else "")


def _box(sheet: _Sheet, cell: Cell) -> str:
    x, y = sheet.at(cell.x, cell.y)
    return f"M{number(x)} {number(y)}h{number(sheet.w)}v{number(sheet.h)}h{number(-sheet.w)}Z"


def _tens(grid: Grid, sheet: _Sheet) -> Iterator[str]:
    """Numbers of every tenth column, below."""
    if grid.kind == "corner":
        return
    for x in range(sheet.window.x0 + TEN - 1, sheet.window.x1, TEN):
        yield svg.text("said mid", (sheet.at(x, 0)[0] + sheet.w / 2, sheet.bottom + 16), str(x + 1))


def _tab(fabric: Fabric, grid: Grid, row: GridRow, sheet: _Sheet, told: _Told) -> Iterator[str]:
    """A row's number where it starts, an arrow the way it goes, its counts where it ends."""
    from_right = fabric.rows[row.index].right_side != sheet.left_handed
    y = sheet.at(0, row.cells[0].y)[1] + sheet.h / 2
    out = 1 if from_right else -1
    edge, far = (sheet.right, sheet.left) if from_right else (sheet.left, sheet.right)
    yield _arrow((edge + out * (GAP + ARROW), y), (edge + out * GAP, y))
    number_ = label(fabric, row)
    if number_:
        wide = _wide(number_) + 2 * TAB_PAD
        x = edge + out * (2 * GAP + ARROW) - (0 if from_right else wide)
        yield svg.rect("tab", (x, y - TAB_HIGH / 2), (wide, TAB_HIGH))
        yield svg.text("num mid", (x + wide / 2, y + 5.5), number_)
    if sheet.window.counts:
        yield svg.text("said end" if from_right else "said", (far - out * 2 * GAP, y + 5.5), count(grid, row, *told))


def _corner_tab(fabric: Fabric, grid: Grid, row: GridRow, sheet: _Sheet, told: _Told) -> Iterator[str]:  # noqa: ARG001 - as _tab has it
    """A row's number and arrow at the square that it starts with: beside the grid, above or below it."""
    first, window = row.cells[0], sheet.window
    x, y = sheet.at(first.x, first.y)
    right = fabric.rows[row.index].right_side
    side = first.x == window.x0 if right else first.y > window.y0
    out, up = (1 if right != sheet.left_handed else -1), (-1 if right else 1)
    number_ = label(fabric, row)
    wide = _wide(number_) + 2 * TAB_PAD
    away = (sheet.w / 2 + ARROW / 2 + GAP, 0.0) if side else (0.0, sheet.h / 2 + ARROW / 2 + GAP)
    at = x + sheet.w / 2 + out * away[0], y + sheet.h / 2 + up * away[1]
    cx, cy = (at[0] + out * (ARROW / 2 + GAP + wide / 2), at[1]) if side else (at[0], at[1] + up * (ARROW / 2 + GAP + TAB_HIGH / 2))
    yield _arrow((at[0] + out * ARROW / 2, at[1] + up * ARROW / 2), (at[0] - out * ARROW / 2, at[1] - up * ARROW / 2))
    if number_:
        yield svg.rect("tab", (cx - wide / 2, cy - TAB_HIGH / 2), (wide, TAB_HIGH))
        yield svg.text("num mid", (cx, cy + 5.5), number_)


def _arrow(tail: Point, head: Point) -> str:
    long = math.dist(tail, head)
    ux, uy = (head[0] - tail[0]) / long, (head[1] - tail[1]) / long
    wings = [(head[0] - 4 * ux - k * 3.5 * uy, head[1] - 4 * uy + k * 3.5 * ux) for k in (1, -1)]
    return f'<path class="arrow" d="M{_pair(tail)}L{_pair(head)}M{_pair(wings[0])}L{_pair(head)}L{_pair(wings[1])}"/>'


def _pair(p: Point) -> str:
    return f"{number(p[0])} {number(p[1])}"


def _key(grid: Grid, options: ChartOptions, top: float, wide: float, sign: dict[str, str]) -> tuple[list[str], float]:
    """What stands in squares, and how many there are of each in the whole piece."""
    many = {w: sum(c.what == w for r in grid.rows for c in r.cells) for w in grid.whats}
    found = ['<g class="key">']
    y = top
    for n, what in enumerate(grid.whats):
        size = 24.0, 18.0
        found.append(svg.rect(_classes(grid, what), (MARGIN, y), size))
        if grid.kind != "filet":
            data = strokes(n % YARNS, (MARGIN, y), size)
            found += [f'<path class="mark m{n % YARNS}" d="{data}"/>'] if data else []
            found.append(svg.text(f"in t{n % YARNS}", (MARGIN + 12, y + 13.5), sign[what]))
        found.append(f'<path class="hair" d="M{number(MARGIN)} {number(y)}h24v18h-24Z"/>')
        said = options.words.say("in-all", what=meaning(grid, what, sign, options), n=many[what])
        for line in wrapped(plain(said), TEXT_PX, wide - 2 * MARGIN - 34):
            found.append(svg.text("", (MARGIN + 34, y + 13.5), line))
            y += LINE
        y += ENTRY - LINE
    return [*found, "</g>"], y + 6


def _said(said: Sequence[str], top: float, wide: float) -> tuple[list[str], float]:
    lines = [line for text in said for line in wrapped(plain(text), TEXT_PX, wide - 2 * MARGIN)]
    return [svg.text("said", (MARGIN, top + 14 + LINE * n), t) for n, t in enumerate(lines)], top + len(lines) * LINE + MARGIN

