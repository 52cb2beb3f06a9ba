"""The picture: chart, numbers, frames, key and words, as one SVG."""

from __future__ import annotations

import math
from collections.abc import Sequence
from html import escape

from loopwright.drawing import svg
from loopwright.drawing.chart.drawn import ChartOptions, Frame, Laid, Point
from loopwright.drawing.chart.ink import is_filled, number, pair, symbol_path
from loopwright.drawing.chart.key import below_key, key_of, own_numbers, own_told
from loopwright.drawing.chart.numbering import row_label, row_number
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.sheet import MARGIN, Sheet
from loopwright.drawing.chart.signs import cut_at, signs, signs_box
from loopwright.drawing.chart.style import SCOPE, TEXT_PX, TITLE_PX, in_tones, style
from loopwright.drawing.chart.words import count, named
from loopwright.drawing.chart.yarns import coloured, tones_used, yarn_class, yarn_letter, yarn_rows
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.drawing.speech import Speech
from loopwright.model.fabric import Fabric

NARROWEST = 380.0
TITLE_LINE = 22.0
TAB_HIGH = 18.0
LARGEST_PX = 25.0  # type; larger would not go between rows
OF_COLUMN = 0.01985  # of the sheet's width that type is high: 9 pt (3.175 mm) where the sheet is 160 mm wide
NEAR = 3.0
TAB_MOST = 25.0  # rows of the lowest stitches are a little further apart
PAST_CUT = 14.0  # a count stands so far past the sign that the yarn is cut


def page(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, notes: Sequence[str], description: str) -> str:
    """The SVG of a section."""
    speech = options.words
    px, wide, box = _fitted(fabric, section, laid, options)
    name = wrapped(named(section, options.words), TITLE_PX * px / TEXT_PX, wide - 2 * MARGIN, heavy=True)
    title_high = 12.0 + TITLE_LINE * len(name) * px / TEXT_PX
    mirror = -1 if options.left_handed else 1
    sheet = Sheet(box[0] - MARGIN, box[3] + MARGIN + title_high, mirror, px, _number_px(fabric, section, laid, px))
    if wide == NARROWEST:
        sheet.x0 -= (NARROWEST - (box[2] - box[0] + 2 * MARGIN)) / 2
    high = sheet.y1 - box[1] + MARGIN
    parts = [*_drawn(fabric, laid, options, sheet), *signs(fabric, section, laid, options, sheet)]
    parts += _rows(fabric, section, laid, options, sheet)
    said = [*notes, *_repeats(fabric, laid.frames, speech), *(yarn_rows(fabric, laid, speech) if coloured(fabric, laid, options) else ())]
    if _around(section):
        totals = [(row_label(fabric, i), count(fabric, fabric.rows[i], speech)) for i in section.rows]
        named_rows = [(speech.row(label) if label else speech.say("row"), total) for label, total in totals if total]
        said += [speech.say("row-counts", row=label, count=total) for label, total in named_rows]
    said = [*own_told(fabric, laid, options), *said]
    key, key_high = key_of(fabric, section, laid, options, (high, wide, px))
    told, told_high = below_key(said, (high + key_high, wide, px))
    tones = tones_used(fabric, laid, options) if coloured(fabric, laid, options) else {}
    size = wide, high + key_high + told_high
    return _svg(section, options, size, (name, sheet, in_tones(tones)), description, [*parts, *key, *told])


def _fitted(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions) -> tuple[float, float, tuple[float, float, float, float]]:
    """How large type is, the sheet's width, the box of the chart. On a wide sheet type grows, to be read at a column's width."""
    px = TEXT_PX
    while True:
        box = _box(fabric, section, laid, options, px)
        wide = max(NARROWEST, box[2] - box[0] + 2 * MARGIN)
        if px >= min(LARGEST_PX, math.ceil(wide * OF_COLUMN)):
            return px, wide, box
        px += 1


def legible(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions) -> bool:
    """Whether its type can be read where the sheet is as wide as a column."""
    px, wide, _ = _fitted(fabric, section, laid, options)
    return px >= wide * OF_COLUMN - 0.1


def _tab_high(px: float) -> float:
    return min(TAB_HIGH * px / TEXT_PX, TAB_MOST)


def _number_px(fabric: Fabric, section: Section, laid: Laid, px: float) -> float:
    """How large the numbers of rounds are: as other type where they stand free of symbols and of each other."""
    if not _around(section):
        return px
    inked = [p for m in laid.marks for f in m.feet for p in (f, ((f[0] + m.top[0]) / 2, (f[1] + m.top[1]) / 2), m.top)]
    size = px
    while size > TEXT_PX:
        half = [(n.tab, width_px(row_number(fabric, n.row), size) / 2 + 4 + NEAR) for n in laid.lines]
        high = _tab_high(size) / 2 + NEAR
        free = not any(abs(p[0] - t[0]) < w and abs(p[1] - t[1]) < high for t, w in half for p in inked)
        pairs = [(one, two) for k, one in enumerate(half) for two in half[:k]]
        if free and not any(abs(t[0] - u[0]) < w + v and abs(t[1] - u[1]) < 2 * high for (t, w), (u, v) in pairs):
            break
        size -= 1
    return size


def _svg(
    section: Section, options: ChartOptions, size: Point, named: tuple[Sequence[str], Sheet, tuple[str, str]], description: str,
    parts: Sequence[str],
) -> str:
    name, sheet, (own, rules) = named
    grown = sheet.text_px / TEXT_PX
    ident = f"{options.ident}-{section.rows[0]}-{section.rows[-1]}"
    lines = [svg.text("title", (MARGIN, 12 + (18 + TITLE_LINE * n) * grown), line) for n, line in enumerate(name)]
    inside = ["\n".join(["", f"<style>{style()}{rules}</style>", svg.rect("sheet", (0, 0), size), *lines, *parts, ""])]
    told = options.words.say("symbol-chart", name=" ".join(name)), description
    scope = f"{SCOPE} t{sheet.text_px:g} n{sheet.number_px:g} {own}".rstrip()
    return svg.document(ident, scope, size, told, inside, shown_px=options.width)


def _around(section: Section) -> bool:
    """Whether rows have no ends beside which to say anything: counts are told below."""
    return section.ringed or section.edge is not None


def _safe(text: str) -> str:
    return escape(plain(text))


def _box(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, px: float) -> tuple[float, float, float, float]:
    """Left, lower, right and upper end of everything drawn, mirrored if asked."""
    sign = -1 if options.left_handed else 1
    xs = [sign * p[0] for m in (*laid.marks, *laid.piece) for p in (*m.feet, m.top)] + [sign * p[0] for b in laid.below for p in b]
    ys = [p[1] for m in (*laid.marks, *laid.piece) for p in (*m.feet, m.top)] + [p[1] for b in laid.below for p in b]
    reach = 62 * px / TEXT_PX
    for line in laid.lines:
        long = width_px(count(fabric, fabric.rows[line.row], options.words), px) + PAST_CUT if not _around(section) else 0.0
        x = sign * line.end[0]
        ways = -sign * line.along[0]
        xs += [sign * line.tab[0] - reach, sign * line.tab[0] + reach, x, x + (-long if ways > 0 else long)]
        ys += [line.tab[1] - 12, line.tab[1] + 12]
    signed = signs_box(fabric, section, laid, options, px)
    xs += [x for x, _ in signed]
    ys += [y for _, y in signed]
    return min(xs) - 10, min(ys) - 12, max(xs) + 10, max(ys) + 12


def _drawn(fabric: Fabric, laid: Laid, options: ChartOptions, sheet: Sheet) -> list[str]:
    found = []
    if laid.ring:
        x, y = sheet.at((0.0, 0.0))
        found.append(f'<circle class="ring" cx="{number(x)}" cy="{number(y)}" r="{number(laid.ring)}"/>')
    if laid.piece:
        strokes = "".join(symbol_path(m, sheet.at) for m in laid.piece)
        found.append(f'<g class="below"><path d="{strokes}"/></g>')
    if laid.below:
        bars = "".join(f"M{pair(sheet.at(a))}L{pair(sheet.at(b))}" for a, b in laid.below)
        found.append(f'<g class="below"><path d="{bars}"/></g>')
    own = own_numbers(fabric)
    turned = any(not fabric.rows[m.row].right_side for m in laid.marks)
    in_colours = coloured(fabric, laid, options)
    row = -1
    posts: set[object] = set()
    for m in laid.marks:
        if m.row != row:
            if row >= 0:
                found.append("</g>")
            row = m.row
            found.append(_group(fabric, row, turned=turned, plain_line=in_colours))
        line = f' data-line="{options.line(m.stitch)}"' if options.line else ""
        classes = " ".join(x for x in ("f" if is_filled(m.kind) else "", yarn_class(fabric, m.stitch) if in_colours else "") if x)
        class_ = f' class="{classes}"' if classes else ""
        post = (m.row, m.place, m.feet) if m.place.endswith("post") and not m.way else m.stitch
        hooked = post not in posts  # stitches around one post stand in one foot: one hook there is legible, five are a blot
        posts.add(post)
        data = symbol_path(m, sheet.at, hooked=hooked)
        found.append(f'<path{class_} d="{data}" data-stitch="{m.stitch}"{line} data-kind="{_safe(m.kind)}"/>')
        if m.kind in own:
            (x0, y0), (x1, y1) = sheet.at(m.feet[0]), sheet.at(m.top)
            x, y = x0 + 0.64 * (x1 - x0), y0 + 0.64 * (y1 - y0) + 4.5
            found.append(f'<text class="mid" x="{number(x)}" y="{number(y)}">{own[m.kind]}</text>')
    if row >= 0:
        found.append("</g>")
    return found


def _group(fabric: Fabric, index: int, *, turned: bool, plain_line: bool) -> str:
    """A row's group: wrong-side rows, or every other round, in the second line colour and with a thinner line."""
    row = fabric.rows[index]
    digits = row_number(fabric, index)
    second = not row.right_side if turned else bool(digits) and int(digits) % 2 == 1
    class_ = ' class="two"' if second and not plain_line else ""
    return f'<g{class_} data-row="{index}" data-label="{_safe(row.label)}" data-side="{"RS" if row.right_side else "WS"}">'


def _rows(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, sheet: Sheet) -> list[str]:
    """Numbers on tape where the rows start, arrows, counts where they end."""
    found, tabs = [], list[Point]()
    turned = any(not fabric.rows[line.row].right_side for line in laid.lines)
    rings = _around(section)
    cut, px, grown = cut_at(fabric, section, laid), sheet.number_px, sheet.number_px / TEXT_PX
    in_colours, first = coloured(fabric, laid, options), {m.row: m.stitch for m in reversed(laid.marks)}
    for line in laid.lines:
        row = fabric.rows[line.row]
        text = row_number(fabric, line.row) + f" {options.words.say('rs' if row.right_side else 'ws')}" * turned
        text += f" {yarn_letter(fabric, first[line.row])}" if in_colours and line.row in first and not rings else ""
        x, y = sheet.at(line.tab)
        along = sheet.mirror * line.along[0], -line.along[1]
        text = text.strip()
        if text:
            half = width_px(text, px) / 2 + 4
            cx = x if rings else x - math.copysign(max(0.0, half - 8), along[0])
            place = f'x="{number(cx - half)}" y="{number(y - _tab_high(px) / 2)}"'
            tabs.append((cx, y))
            found.append(f'<rect class="tab" {place} width="{number(2 * half)}" height="{number(_tab_high(px))}"/>')
            found.append(f'<text class="num mid" x="{number(cx)}" y="{number(y + 4.6 * grown)}">{text}</text>')
        if not rings:
            out = width_px(text, px) + 8 + 12 if text else 0.0
            found.append(_arrow((x - math.copysign(out, along[0]), y), along))
    if not rings:
        found += _counts(fabric, laid, options, sheet, (tabs, section.rows[-1] if cut is not None else -1))
    for frame in laid.frames:
        sides = "".join(f"M{pair(sheet.at(a))}L{pair(sheet.at(b))}" for a, b in frame.sides)
        found.append(f'<g class="frame"><path d="{sides}" data-frame="{frame.row}" data-times="{frame.times}"/></g>')
    return [f for f in found if f]


def _counts(fabric: Fabric, laid: Laid, options: ChartOptions, sheet: Sheet, told: tuple[Sequence[Point], int]) -> list[str]:
    """What each row has, where it ends, clear of the numbers of others. `told`: middles of the numbers, the row that ends with a sign."""
    found, (tabs, cut) = [], told
    clear = _tab_high(sheet.number_px) / 2 + 0.45 * sheet.text_px
    for line in laid.lines:
        total = count(fabric, fabric.rows[line.row], options.words)
        if not total:
            continue
        way = sheet.mirror * line.along[0]
        x, y = sheet.at(line.end)
        x += math.copysign(PAST_CUT, way) if line.row == cut else 0.0
        for _, ty in (t for t in tabs if way * (t[0] - x) > 0 and abs(t[1] - y) < clear):
            y = ty + math.copysign(clear, y - ty)
        side = "" if way > 0 else " end"
        y += 4.6 * sheet.number_px / TEXT_PX
        found.append(f'<text class="said{side}" x="{number(x)}" y="{number(y)}">{_safe(total)}</text>')
    return found


def _arrow(at: Point, along: Point) -> str:
    x, y = at
    way = 1 if along[0] >= 0 else -1
    tip, back = x + way * 8, x - way * 8
    barb, up, down, y_ = number(tip - way * 4), number(y - 3), number(y + 3), number(y)
    return f'<path class="arrow" d="M{number(back)} {y_}L{number(tip)} {y_}M{barb} {up}L{number(tip)} {y_}L{barb} {down}"/>'


def _repeats(fabric: Fabric, frames: Sequence[Frame], speech: Speech) -> list[str]:
    """What the frames mean: rows with as many repeats are told together."""
    by_times: dict[int, list[str]] = {}
    for f in frames:
        by_times.setdefault(f.times, []).append(speech.row(label) if (label := row_label(fabric, f.row)) else speech.say("a-row"))
    return [speech.say("between-dashes", n=times, rows=", ".join(rows)) for times, rows in by_times.items()]
