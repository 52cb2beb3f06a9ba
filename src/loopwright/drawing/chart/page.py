"""The picture: chart, numbers, frames, key and words, as one SVG."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from html import escape

from loopwright.drawing import svg
from loopwright.drawing.chart.drawn import ChartOptions, Frame, Point
from loopwright.drawing.chart.ink import is_filled, is_own, number, pair, sample, symbol_path
from loopwright.drawing.chart.laid import Laid
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.style import LETTERS, SCOPE, TEXT_PX, TITLE_PX, style
from loopwright.drawing.chart.symbols import marks, place_seen
from loopwright.drawing.chart.words import count, row_number
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.model.fabric import Fabric
from loopwright.terms import dialect

MARGIN = 24.0
LINE = 20.0
ENTRY = 58.0  # height of an entry of the key
NARROWEST = 380.0
TITLE_LINE = 22.0
TAB_HIGH = 18.0
RINGS = ("disc", "oval")
PLACES = {"back": "back loop only", "front": "front loop only"}


@dataclass(slots=True)
class _Sheet:
    """Where things lie on the sheet: `x0`, `y1` are the left and upper end of the chart in its own units."""

    x0: float
    y1: float
    mirror: int

    def at(self, p: Point) -> Point:
        """A point of the chart on the sheet."""
        return self.mirror * p[0] - self.x0, self.y1 - p[1]


def page(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, notes: Sequence[str], description: str) -> str:
    """The SVG of a section."""
    box = _box(fabric, section, laid, options)
    wide = max(NARROWEST, box[2] - box[0] + 2 * MARGIN)
    name = wrapped(plain(section.name or "") or "Chart", TITLE_PX, wide - 2 * MARGIN, heavy=True)
    sheet = _Sheet(box[0] - MARGIN, box[3] + MARGIN + 12.0 + TITLE_LINE * len(name), -1 if options.left_handed else 1)
    if wide == NARROWEST:
        sheet.x0 -= (NARROWEST - (box[2] - box[0] + 2 * MARGIN)) / 2
    high = sheet.y1 - box[1] + MARGIN
    parts = [*_drawn(fabric, laid, options, sheet), *_rows(fabric, section, laid, options, sheet)]
    said = [*notes, *_repeats(fabric, laid.frames), *(_yarns(fabric, laid) if options.colours else ())]
    if section.kind in RINGS:
        totals = [(fabric.rows[i].label or "Row", count(fabric, fabric.rows[i], options.terms)) for i in section.rows]
        said += [f"{label}: {total}" for label, total in totals if total]
    key, key_high = _key(fabric, laid, options, high, wide)
    told, told_high = _said(said, high + key_high, wide)
    return _svg(section, options, (wide, high + key_high + told_high), name, description, [*parts, *key, *told])


def _svg(section: Section, options: ChartOptions, size: Point, name: Sequence[str], description: str, parts: Sequence[str]) -> str:
    ident = f"{options.ident}-{section.rows[0]}-{section.rows[-1]}"
    lines = [svg.text("title", (MARGIN, 30 + TITLE_LINE * n), line) for n, line in enumerate(name)]
    inside = ["\n".join(["", f"<style>{style()}</style>", svg.rect("sheet", (0, 0), size), *lines, *parts, ""])]
    told = f"{' '.join(name)}: symbol chart", description
    return svg.document(ident, SCOPE, size, told, inside, shown_px=options.width)


def _wide(text: str) -> float:
    return width_px(text, TEXT_PX)


def _safe(text: str) -> str:
    return escape(plain(text))


def _box(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions) -> tuple[float, float, float, float]:
    """Left, lower, right and upper end of everything drawn, mirrored if asked."""
    sign = -1 if options.left_handed else 1
    xs = [sign * p[0] for m in laid.marks for p in (*m.feet, m.top)] + [sign * p[0] for b in laid.below for p in b]
    ys = [p[1] for m in laid.marks for p in (*m.feet, m.top)] + [0.0 for _ in laid.below]
    for line in laid.lines:
        long = _wide(count(fabric, fabric.rows[line.row], options.terms)) if section.kind not in RINGS else 0.0
        x = sign * line.end[0]
        ways = -sign * line.along[0]
        xs += [sign * line.tab[0] - 62, sign * line.tab[0] + 62, x, x + (-long if ways > 0 else long)]
        ys += [line.tab[1] - 12, line.tab[1] + 12]
    return min(xs) - 10, min(ys) - 12, max(xs) + 10, max(ys) + 12


def _drawn(fabric: Fabric, laid: Laid, options: ChartOptions, sheet: _Sheet) -> list[str]:
    found = []
    if laid.ring:
        x, y = sheet.at((0.0, 0.0))
        found.append(f'<circle class="ring" cx="{number(x)}" cy="{number(y)}" r="{number(laid.ring)}"/>')
    if laid.below:
        bars = "".join(f"M{pair(sheet.at(a))}L{pair(sheet.at(b))}" for a, b in laid.below)
        found.append(f'<g class="below"><path d="{bars}"/></g>')
    own = {kind: n for n, kind in enumerate((k for k in fabric.kinds if is_own(k)), 1)}
    turned = any(not fabric.rows[m.row].right_side for m in laid.marks)
    row = -1
    for m in laid.marks:
        if m.row != row:
            if row >= 0:
                found.append("</g>")
            row = m.row
            found.append(_group(fabric, row, turned=turned))
        line = f' data-line="{options.line(m.stitch)}"' if options.line else ""
        classes = " ".join(x for x in ("f" if is_filled(m.kind) else "", _yarn(fabric, m.stitch) if options.colours else "") if x)
        class_ = f' class="{classes}"' if classes else ""
        found.append(f'<path{class_} d="{symbol_path(m, sheet.at)}" data-stitch="{m.stitch}"{line} data-kind="{_safe(m.kind)}"/>')
        if m.kind in own:
            (x0, y0), (x1, y1) = sheet.at(m.feet[0]), sheet.at(m.top)
            x, y = x0 + 0.64 * (x1 - x0), y0 + 0.64 * (y1 - y0) + 4.5
            found.append(f'<text class="mid" x="{number(x)}" y="{number(y)}">{own[m.kind]}</text>')
    if row >= 0:
        found.append("</g>")
    return found


def _yarn(fabric: Fabric, stitch: int) -> str:
    at = fabric.colour[stitch]
    return f"y{LETTERS[(at - 1) % len(LETTERS)]}" if fabric.colours[at] else ""


def _yarns(fabric: Fabric, laid: Laid) -> list[str]:
    """Which rows are of which yarn: colour is never told by colour alone."""
    rows: dict[str, dict[str, None]] = {}
    for m in laid.marks:
        yarn = fabric.colours[fabric.colour[m.stitch]]
        if yarn:
            rows.setdefault(yarn, {})[fabric.rows[m.row].label or "the chain"] = None
    return [f"Yarn {yarn}: {', '.join(labels)}" for yarn, labels in rows.items()]


def _group(fabric: Fabric, index: int, *, turned: bool) -> str:
    """A row's group: wrong-side rows, or every other round, in the second line colour and with a thinner line."""
    row = fabric.rows[index]
    digits = row_number(row)
    second = not row.right_side if turned else bool(digits) and int(digits) % 2 == 1
    class_ = ' class="two"' if second else ""
    return f'<g{class_} data-row="{index}" data-label="{_safe(row.label)}" data-side="{"RS" if row.right_side else "WS"}">'


def _rows(fabric: Fabric, section: Section, laid: Laid, options: ChartOptions, sheet: _Sheet) -> list[str]:
    """Numbers on tape where the rows start, arrows, counts where they end."""
    found = []
    turned = any(not fabric.rows[line.row].right_side for line in laid.lines)
    rings = section.kind in RINGS
    for line in laid.lines:
        row = fabric.rows[line.row]
        text = row_number(row) + (" RS" if row.right_side else " WS") * turned
        x, y = sheet.at(line.tab)
        along = sheet.mirror * line.along[0], -line.along[1]
        text = text.strip()
        if text:
            half = _wide(text) / 2 + 4
            cx = x if rings else x - math.copysign(max(0.0, half - 8), along[0])
            place = f'x="{number(cx - half)}" y="{number(y - TAB_HIGH / 2)}"'
            found.append(f'<rect class="tab" {place} width="{number(2 * half)}" height="{number(TAB_HIGH)}"/>')
            found.append(f'<text class="num mid" x="{number(cx)}" y="{number(y + 4.6)}">{text}</text>')
        if not rings:
            out = _wide(text) + 8 + 12 if text else 0.0
            found.append(_arrow((x - math.copysign(out, along[0]), y), along))
            total = count(fabric, row, options.terms)
            ex, ey = sheet.at(line.end)
            side = "" if along[0] > 0 else " end"
            found.append(f'<text class="said{side}" x="{number(ex)}" y="{number(ey + 4.6)}">{_safe(total)}</text>' if total else "")
    for frame in laid.frames:
        sides = "".join(f"M{pair(sheet.at(a))}L{pair(sheet.at(b))}" for a, b in frame.sides)
        found.append(f'<g class="frame"><path d="{sides}" data-frame="{frame.row}" data-times="{frame.times}"/></g>')
    return [f for f in found if f]


def _arrow(at: Point, along: Point) -> str:
    x, y = at
    way = 1 if along[0] >= 0 else -1
    tip, back = x + way * 8, x - way * 8
    barb, up, down, y_ = number(tip - way * 4), number(y - 3), number(y + 3), number(y)
    return f'<path class="arrow" d="M{number(back)} {y_}L{number(tip)} {y_}M{barb} {up}L{number(tip)} {y_}L{barb} {down}"/>'


def _repeats(fabric: Fabric, frames: Sequence[Frame]) -> list[str]:
    """What the frames mean: rows with as many repeats are told together."""
    by_times: dict[int, list[str]] = {}
    for f in frames:
        by_times.setdefault(f.times, []).append(fabric.rows[f.row].label or "a row")
    return [f"Between the dashed lines, {times} times in all: {', '.join(rows)}" for times, rows in by_times.items()]


def _entries(fabric: Fabric, laid: Laid, terms: str) -> list[tuple[str, str, str]]:
    """What the key explains, and only what is used: kind, mark at its foot, words."""
    used: set[tuple[str, str]] = set()
    for m in laid.marks:
        used.add((m.kind, "none"))
        seen = place_seen(m.place.removeprefix("ws:"), right_side=not m.place.startswith("ws:"))
        if seen in PLACES and m.kind not in ("ch", "sl st"):
            used.add((m.kind, seen))
    entries = []
    for kind, place in sorted(used, key=lambda e: (fabric.kinds.index(e[0]), e[1] != "none", e[1])):
        term = dialect(terms).term(kind)
        text = term.short if term.short == term.long else f"{term.short}: {term.long}"
        post = "front-post" if kind.startswith("fp") else "back-post" if kind.startswith("bp") else place
        entries.append((kind, post if post in marks() else "none", text + (f", {PLACES[place]}" if place in PLACES else "")))
    return entries


def _key(fabric: Fabric, laid: Laid, options: ChartOptions, top: float, wide: float) -> tuple[list[str], float]:
    own = {kind: n for n, kind in enumerate((k for k in fabric.kinds if is_own(k)), 1)}
    entries = _entries(fabric, laid, options.terms)
    step = max(_wide(t) for _, _, t in entries) + 56
    across = max(1, int((wide - 2 * MARGIN) // step))
    mirror = -1 if options.left_handed else 1
    found = ['<g class="key">']
    for n, (kind, place, text) in enumerate(entries):
        x, y = MARGIN + (n % across) * step + 16, top + (n // across + 1) * ENTRY - 24
        turn = _Sheet(mirror * x - x, 0.0, mirror)
        class_ = ' class="f"' if is_filled(kind) else ""
        found.append(f'<path{class_} d="{symbol_path(sample(kind, place, (x, -y)), turn.at)}" data-key="{_safe(kind)}"/>')
        if kind in own:
            found.append(f'<text class="mid" x="{number(x)}" y="{number(y - 2)}">{own[kind]}</text>')
        found.append(f'<text x="{number(x + 24)}" y="{number(y + 4.5)}">{_safe(text)}</text>')
    return [*found, "</g>"], (len(entries) + across - 1) // across * ENTRY + 12


def _said(said: Sequence[str], top: float, wide: float) -> tuple[list[str], float]:
    """Notes and counts below the key, broken to the width."""
    lines = [line for text in said for line in wrapped(plain(text), TEXT_PX, wide - 2 * MARGIN)]
    found = [f'<text class="said" x="{number(MARGIN)}" y="{number(top + 14 + LINE * n)}">{_safe(t)}</text>' for n, t in enumerate(lines)]
    return found, len(lines) * LINE + MARGIN
