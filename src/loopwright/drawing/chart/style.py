"""The style sheet of a chart: light, dark and print, from the palette."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from typing import Any

from loopwright.drawing.palette import WORKED, WRITTEN, colours
from loopwright.drawing.tones import legible

SCOPE = "lw-chart"
LETTERS = "ABCDEF"
LINES = (
    "", "stroke-width:3.2", "stroke-dasharray:4.5 2.6", "stroke-width:.8", "stroke-dasharray:7 3 .1 3",
    "stroke-dasharray:.1 3.6;stroke-width:2.4",
)
"""How the lines of the six yarns differ: plain, heavy, dashed, fine, dashed and dotted, dotted. Broken lines leave little of short bars."""
TEXT_PX, TITLE_PX = 13.0, 17.0
GROWN = range(13, 26)  # sizes of type on sheets that are wide


@cache
def style() -> str:
    """CSS for a chart; everything in it hangs on the class of the picture (SCOPE), so that it keeps to itself in a page."""
    light, dark = colours("light"), colours("dark")
    ink = {"sheet": "#fff", "tape": "#fff", **dict.fromkeys(("ink", "ink2", "edge", "creek", "tapeedge", "tapeink"), "#000")}
    ink["piece"] = "#777"  # what rows are worked around, grey on paper too
    fixed = (
        ".lw-chart .ring{fill:none;stroke-width:1.7}.lw-chart path{fill:none;stroke-width:1.7;stroke-linecap:round;stroke-linejoin:round}"
        ".lw-chart .two path{stroke-width:1.3}.lw-chart .below path{stroke-width:1.3}"
        ".lw-chart .cut{stroke-width:1}.lw-chart .joined{stroke-width:1.4}.lw-chart .frame .gap{stroke-dasharray:.1 5;stroke-width:2.6}"
        ".lw-chart .frame path{stroke-width:1.5;stroke-dasharray:2 4}.lw-chart .tab{stroke-width:1}.lw-chart .torn{stroke-width:2.2}"
        f".lw-chart text{{font:{TEXT_PX:g}px {WRITTEN}}}.lw-chart .title{{font:700 {TITLE_PX:g}px {WORKED}}}"
        ".lw-chart .mid{text-anchor:middle}.lw-chart .end{text-anchor:end}"
    )
    fixed += "".join(f".lw-chart path.y{letter}{{{line}}}" for letter, line in zip(LETTERS, LINES, strict=True) if line)
    fixed += ".lw-chart path.f[class*=y]{stroke-dasharray:none;stroke-width:1.2}"  # what is solid stays in shape
    fixed += "".join(
        f".lw-chart.t{n} text{{font-size:{n}px}}.lw-chart.t{n} .title{{font-size:{n * TITLE_PX / TEXT_PX:.4g}px}}"
        f".lw-chart.n{n} .num{{font-size:{n}px}}"
        for n in GROWN
    )
    dark_rule = f"@media screen and (prefers-color-scheme:dark){{{_colours(dark)}}}"
    return f"{fixed}{_colours(light)}{dark_rule}@media print{{{_colours({**ink, 'yarns': ['#000'] * 6})}}}"


def in_tones(tones: Mapping[str, str]) -> tuple[str, str]:
    """A class for charts whose yarns have tones of their own, and its rules; lines take as much ink as makes them stand out."""
    if not tones:
        return "", ""
    name = "k" + "".join(letter + tone.removeprefix("#").lower() for letter, tone in tones.items())

    def rules(of: Mapping[str, str]) -> str:
        root = f".{SCOPE}.{name}"
        return "".join(f"{root} path.y{y}{{stroke:{c}}}{root} .f.y{y}{{fill:{c}}}" for y, c in of.items())

    light, dark = ({y: legible(c, of["sheet"], of["ink"]) for y, c in tones.items()} for of in (colours("light"), colours("dark")))
    night = f"@media screen and (prefers-color-scheme:dark){{{rules(dark)}}}"
    return name, f"{rules(light)}{night}@media print{{{rules(dict.fromkeys(tones, '#000'))}}}"


def _colours(of: dict[str, Any]) -> str:
    tab = f".lw-chart .tab{{fill:{of['tape']};stroke:{of['tapeedge']}}}.lw-chart .num{{fill:{of['tapeink']}}}"
    found = (
        f".lw-chart .sheet{{fill:{of['sheet']}}}.lw-chart path,.lw-chart .ring{{stroke:{of['ink']}}}"
        f".lw-chart .two path{{stroke:{of['creek']}}}"
        f".lw-chart .f{{fill:{of['ink']}}}.lw-chart .two .f{{fill:{of['creek']}}}"
        f".lw-chart .below path{{stroke:{of.get('piece', of['edge'])}}}.lw-chart .frame path{{stroke:{of['edge']}}}"
        f".lw-chart text{{fill:{of['ink']}}}.lw-chart .said{{fill:{of['ink2']}}}"
        f"{tab}.lw-chart .arrow{{stroke:{of['ink2']}}}"
    )
    for letter, colour in zip(LETTERS, of["yarns"], strict=True):
        found += f".lw-chart path.y{letter}{{stroke:{colour}}}.lw-chart .f.y{letter}{{fill:{colour}}}"
    return found
