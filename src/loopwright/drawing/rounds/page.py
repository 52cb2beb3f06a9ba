"""The page of one round: picture at the left, label, count and words at the right."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from loopwright.drawing.rounds.stitches import SIDE_PX
from loopwright.drawing.schematic import svg
from loopwright.drawing.schematic.look import WORKED, WRITTEN
from loopwright.drawing.schematic.words import plain, width_px, wrapped

SCOPE = "lw-round"
WIDE_PX, HIGH_PX = 640.0, 440.0
_LEFT_PX = SIDE_PX + 24
_OLD = ("#B9C6C2", "#CBD6D2", "#DDE5E1", "#EFF4F0")
_OLD_DARK = ("#1A262A", "#26353A", "#33454A", "#40555A")
_NEW_DARK = ("#5A4E22", "#6B5D29", "#7C6C30", "#8D7B37")
_NEW = ("#C9AE55", "#D9BF67", "#E6CD78", "#F3E1A0")


@dataclass(frozen=True, slots=True)
class Page:
    """What stands beside the picture."""

    ident: str
    number: int
    title: str
    label: str
    section: str
    count: int
    told: str
    description: str


def page(it: Page, drawing: Sequence[str]) -> str:
    """The whole file."""
    room = WIDE_PX - _LEFT_PX - 8
    words = [svg.text("soft", (_LEFT_PX, 40), plain(it.section.split(" (", 1)[0]))] if it.section else []
    label = wrapped(plain(it.label), 22, room)
    words += [svg.text("label", (_LEFT_PX, 72 + 26 * i), line) for i, line in enumerate(label)]
    y = 72 + 26 * (len(label) - 1)
    size = min(64.0, 64.0 * room / max(room, width_px(str(it.count), 64)))
    place = f'x="{svg.number(_LEFT_PX)}" y="{svg.number(y + 72)}" font-size="{svg.number(size)}"'
    words.append(f'<text class="count" {place}>{it.count}</text>')
    words += [svg.text("told", (_LEFT_PX, y + 104 + 20 * i), line) for i, line in enumerate(wrapped(plain(it.told), 15, room))]
    picture = svg.group(drawing, f' data-row="{it.number}" transform="translate(8 10) scale(.1)"')
    title = f"{plain(it.title)}, {plain(it.label)}" if it.title else plain(it.label)
    inside = [f"<style>{style()}</style>", svg.rect("paper", (0, 0), (WIDE_PX, HIGH_PX)), picture, *words]
    return svg.document(f"{it.ident}-{it.number}", SCOPE, (WIDE_PX, HIGH_PX), (title, plain(it.description)), inside)


def style() -> str:
    """The style sheet: old stitches in four tones of the light, new ones in straw with a heavy line, told apart in black and white.

    Widths of lines within the picture are tenths of a pixel.
    """
    s = f".{SCOPE} "
    rules = [
        "paper{fill:#FAFCF9}", "old{stroke:#748988;stroke-width:6;stroke-linejoin:round}", "old.in{fill:#8FA09D}",
        "new{stroke:#12262C;stroke-width:16;stroke-linejoin:round}", "new.in{fill:#84702A}", "row{fill:none;stroke:#748988;stroke-width:8}",
        "lace{fill:none;stroke:#12262C;stroke-width:16;stroke-linejoin:round}",
        "newest{fill:none;stroke:#12262C;stroke-width:36;stroke-linejoin:round;stroke-linecap:round}",
        f"soft{{font:400 15px {WRITTEN};fill:#3C5156}}", f"label{{font:500 22px {WORKED};fill:#12262C}}",
        f"count{{font-family:{WORKED};font-weight:700;fill:#12262C}}", f"told{{font:400 15px {WRITTEN};fill:#12262C}}",
    ]
    rules += [f"old.t{i}{{fill:{c}}}" for i, c in enumerate(_OLD)] + [f"new.t{i}{{fill:{c}}}" for i, c in enumerate(_NEW)]
    dark = [
        "paper{fill:#131D21}", "old{stroke:#95A6A6}", "old.in{fill:#0C1316}", "new{stroke:#F6E7B2}", "new.in{fill:#302B17}",
        "row{stroke:#6A7E80}", "lace{stroke:#F6E7B2}", "newest{stroke:#F6E7B2}", "soft{fill:#B9C7C5}",
        *(f"{name}{{fill:#E8EEEA}}" for name in ("label", "count", "told")),
    ]
    dark += [f"old.t{i}{{fill:{c}}}" for i, c in enumerate(_OLD_DARK)] + [f"new.t{i}{{fill:{c}}}" for i, c in enumerate(_NEW_DARK)]
    light, night = ("".join(f"{s}.{rule}" for rule in group) for group in (rules, dark))
    return f"{light}@media screen and (prefers-color-scheme:dark){{{night}}}@media print{{{s}.paper{{fill:none}}}}"
