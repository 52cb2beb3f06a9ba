"""The page of one round: picture above, label and count with the words below, so that it is as wide as a telephone."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from loopwright.drawing import svg
from loopwright.drawing.lettering import plain as unmarked
from loopwright.drawing.lettering import width_px, wrapped
from loopwright.drawing.palette import WORKED, WRITTEN, colours
from loopwright.drawing.rounds.stitches import SIDE_PX
from loopwright.record import record

SCOPE = "lw-round"
WIDE_PX = SIDE_PX
_EDGE_PX = 12.0
_SOFT_PX, _LABEL_PX, _COUNT_PX, _TOLD_PX = 16.0, 22.0, 60.0, 17.0
_LINE = 1.3  # from one line of text to the next, in sizes of the type (common practice, no source)


@record
class Page:
    """What stands below the picture."""

    ident: str
    number: int
    title: str
    label: str
    section: str
    count: int
    told: str
    description: str


def page(it: Page, drawing: Sequence[str], *, plain: bool = False, one_black: bool = False) -> str:
    """The whole file. The count stands at the right, as large as it fits; what it counts at the left. `plain`: the picture alone."""
    picture = svg.group(drawing, f' data-row="{it.number}" transform="scale(.1)"')
    title = f"{unmarked(it.title)}, {unmarked(it.label)}" if it.title else unmarked(it.label)
    ident, told = f"{it.ident}-{it.number}", (title, unmarked(it.description))
    if plain:
        return svg.document(ident, SCOPE, (WIDE_PX, SIDE_PX), told, [f"<style>{style(one_black=one_black)}</style>", picture])
    size = _COUNT_PX * min(1.0, 0.5 * WIDE_PX / width_px(str(it.count), _COUNT_PX, heavy=True))
    room = WIDE_PX - 3 * _EDGE_PX - width_px(str(it.count), size, heavy=True)
    section = unmarked(it.section.split(" (", 1)[0])
    words, y = [], SIDE_PX
    lines = (("soft", section, _SOFT_PX), ("label", unmarked(it.label), _LABEL_PX), ("told", unmarked(it.told), _TOLD_PX))
    for name, text, type_px in lines:
        for line in wrapped(text, type_px, room, heavy=name == "label") if text else ():
            y += _LINE * type_px
            words.append(svg.text(name, (_EDGE_PX, y), line))
    place = f'x="{svg.number(WIDE_PX - _EDGE_PX)}" y="{svg.number(SIDE_PX + 0.9 * size)}" font-size="{svg.number(size)}"'
    words.append(f'<text class="count" text-anchor="end" {place}>{it.count}</text>')
    whole = WIDE_PX, max(y, SIDE_PX + size) + 1.5 * _EDGE_PX
    inside = [f"<style>{style(one_black=one_black)}</style>", svg.rect("paper", (0, 0), whole), picture, *words]
    return svg.document(ident, SCOPE, whole, told, inside)


def style(*, one_black: bool = False) -> str:
    """The style sheet: old stitches in four tones of the light, new ones in straw with a heavy line; in print black on white.

    `one_black`: on the screen too. Widths of lines within the picture are tenths of a pixel.
    """
    fixed = (
        "old{stroke-width:6;stroke-linejoin:round}", "new{stroke-width:16;stroke-linejoin:round}", "row{fill:none;stroke-width:8}",
        "lace{fill:none;stroke-width:16;stroke-linejoin:round}",
        "newest{fill:none;stroke-width:36;stroke-linejoin:round;stroke-linecap:round}",
        f"soft{{font:400 {_SOFT_PX:g}px {WRITTEN}}}", f"label{{font:500 {_LABEL_PX:g}px {WORKED}}}",
        f"count{{font-family:{WORKED};font-weight:700}}", f"told{{font:400 {_TOLD_PX:g}px {WRITTEN}}}",
    )
    light, night, black = (
        "".join(f".{SCOPE} .{rule}" for rule in rules)
        for rules in ((*fixed, *_painted("light")), _painted("dark"), _black(colours("light")["ink"]))
    )
    if one_black:
        return light + black
    return f"{light}@media screen and (prefers-color-scheme:dark){{{night}}}@media print{{.{SCOPE} .paper{{fill:none}}{black}}}"


def _black(ink: str) -> list[str]:
    """In one black: old stitches are lines, new ones black with white lines between them."""
    tones = [f"{name}.{part}{{fill:{fill}}}" for name, fill in (("old", "#fff"), ("new", ink)) for part in ("t0", "t1", "t2", "t3", "in")]
    lines = [f"{name}{{stroke:{ink}}}" for name in ("old", "row", "lace", "newest")]
    return [*tones, *lines, "old{stroke-width:5}", "new{stroke:#fff;stroke-width:4}", "paper{fill:#fff}",
            *(f"{name}{{fill:{ink}}}" for name in ("soft", "label", "count", "told"))]


def _painted(theme: Literal["light", "dark"]) -> list[str]:
    of = colours(theme)
    rules = [f"paper{{fill:{of['sheet']}}}", f"row{{stroke:{of['edge']}}}", f"soft{{fill:{of['ink2']}}}"]
    rules += [f"{name}{{fill:{of['ink']}}}" for name in ("label", "count", "told")]
    rules += [f"{name}{{stroke:{of['newedge']}}}" for name in ("new", "lace", "newest")]
    rules += [f"old{{stroke:{of['oldedge']}}}", f"old.in{{fill:{of['oldinside']}}}", f"new.in{{fill:{of['newinside']}}}"]
    return rules + [f"{name}.t{i}{{fill:{tone}}}" for name in ("old", "new") for i, tone in enumerate(of[name])]
