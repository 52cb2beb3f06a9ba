"""The style sheet of a grid: light, dark and print, from the palette; and the strokes that tell its colours apart without colour."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any, Literal

from loopwright.drawing.chart.drawn import Point
from loopwright.drawing.chart.ink import number
from loopwright.drawing.palette import WORKED, WRITTEN, colours
from loopwright.drawing.tones import contrast

SCOPE = "lw-grid"
TEXT_PX, LETTER_PX, TITLE_PX = 16.0, 14.0, 20.0
YARNS = 6
WHITE = "#FFFFFF"
GREYS = ["#fff", "#bbb", "#e4e4e4", "#999", "#d0d0d0", "#f2f2f2"]  # on paper, under the strokes; by eye


def on(fill: str, theme: Literal["light", "dark"]) -> str:
    """The colour of a letter on a filled square: of ink, sheet and white that which stands out most."""
    p = colours(theme)
    found: str = max((p["ink"], p["sheet"], WHITE), key=lambda c: contrast(c, fill))
    return found


@cache
def style() -> str:
    """CSS for a grid; everything in it hangs on the class of the picture (SCOPE)."""
    fixed = (
        f".lw-grid text{{font:{TEXT_PX:g}px {WRITTEN}}}.lw-grid .title{{font:700 {TITLE_PX:g}px {WORKED}}}"
        ".lw-grid .mid,.lw-grid .in{text-anchor:middle}.lw-grid .end{text-anchor:end}"
        f".lw-grid .in{{font-size:{LETTER_PX:g}px}}"
        ".lw-grid .in{font-weight:600;paint-order:stroke;stroke-width:3.4;"
        "stroke-linejoin:round;pointer-events:none}"
        ".lw-grid path{fill:none;pointer-events:none;stroke-linecap:round;stroke-linejoin:round}"
        ".lw-grid .hair{stroke-width:.8}.lw-grid .case{stroke-width:4}.lw-grid .ten{stroke-width:1.8}"
        ".lw-grid .arrow{stroke-width:1.7}.lw-grid .tab{stroke-width:1}.lw-grid .mark{stroke-width:1.2}.lw-grid .m1{stroke-width:2.4}"
        ".lw-grid .tie{stroke-width:1.2}.lw-grid .rim,.lw-grid .motif{fill:none;stroke-width:1.5;pointer-events:all}"
        ".lw-grid .rim{stroke-dasharray:5 3}"
    )
    ink = {**colours("light"), "sheet": "#fff", "tape": "#fff", **dict.fromkeys(("ink", "ink2", "edge", "tapeedge", "tapeink"), "#000")}
    plain = ink | {"yarns": GREYS, "letters": ["#000"] * YARNS}
    light, dark = ({**colours(t), "letters": [on(f, t) for f in colours(t)["yarns"]]} for t in ("light", "dark"))
    return f"{fixed}{_colours(light)}@media screen and (prefers-color-scheme:dark){{{_colours(dark)}}}@media print{{{_colours(plain)}}}"


def _colours(of: dict[str, Any]) -> str:
    found = (
        f".lw-grid .sheet,.lw-grid .space{{fill:{of['sheet']}}}.lw-grid text{{fill:{of['ink']}}}.lw-grid .said{{fill:{of['ink2']}}}"
        f".lw-grid .block{{fill:{of['ink']}}}.lw-grid .hair{{stroke:{of['edge']}}}"
        f".lw-grid .case{{stroke:{of['sheet']}}}.lw-grid .ten{{stroke:{of['ink']}}}.lw-grid .arrow{{stroke:{of['ink2']}}}"
        f".lw-grid .tie{{stroke:{of['ink']}}}.lw-grid .rim,.lw-grid .motif{{stroke:{of['edge']}}}"
        f".lw-grid .tab{{fill:{of['tape']};stroke:{of['tapeedge']}}}.lw-grid .num{{fill:{of['tapeink']}}}"
    )
    return found + "".join(_yarn(".lw-grid", n, *of_yarn) for n, of_yarn in enumerate(zip(of["yarns"], of["letters"], strict=True)))


def _yarn(root: str, n: int, fill: str, letter: str) -> str:
    return f"{root} .y{n}{{fill:{fill}}}{root} .m{n}{{stroke:{letter}}}{root} .t{n}{{fill:{letter};stroke:{fill}}}"


def in_tones(tones: Mapping[int, str]) -> tuple[str, str]:
    """A class for grids whose yarns, by their number, have tones of their own, and its rules; on paper they are greys as others."""
    if not tones:
        return "", ""
    name = "k" + "".join(f"{n}-{tone.removeprefix('#').lower()}" for n, tone in tones.items())
    root = f".{SCOPE}.{name}"
    light = "".join(_yarn(root, n, c, max(("#000000", WHITE), key=lambda w: contrast(w, c))) for n, c in tones.items())
    paper = "".join(_yarn(root, n, GREYS[n], "#000") for n in tones)
    return name, f"{light}@media print{{{paper}}}"


def strokes(yarn: int, at: Point, size: Point) -> str:
    """Path data of the strokes in a square of a yarn: none, dots, aslant, level, crossed, ringed; the same in every theme.

    `at`: its upper left corner; `size`: width and height, px.
    """
    (x, y), (w, h) = at, size
    a, b, c, d = x + 2.5, y + 2.5, x + w - 2.5, y + h - 2.5
    mx, my = (a + c) / 2, (b + d) / 2
    dot = "h.01"
    found = (
        "",
        f"M{_p(a, b)}{dot}M{_p(c, b)}{dot}M{_p(a, d)}{dot}M{_p(c, d)}{dot}",
        f"M{_p(a, my)}L{_p(mx, b)}M{_p(a, d)}L{_p(c, b)}M{_p(mx, d)}L{_p(c, my)}",
        f"M{_p(a, b)}H{number(c)}M{_p(a, my)}H{number(c)}M{_p(a, d)}H{number(c)}",
        f"M{_p(a, d)}L{_p(c, b)}M{_p(a, b)}L{_p(c, d)}",
        f"M{_p(mx, b)}L{_p(c, my)}L{_p(mx, d)}L{_p(a, my)}Z",
    )
    return found[yarn % YARNS]


def _p(x: float, y: float) -> str:
    return f"{number(x)} {number(y)}"
