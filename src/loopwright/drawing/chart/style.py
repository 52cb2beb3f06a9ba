"""The style sheet of a chart: light, dark and print, from the palette."""

from __future__ import annotations

import tomllib
from functools import cache
from importlib.resources import files
from typing import Any

LETTERS = "ABCDEF"
FONT = "'Atkinson Hyperlegible Next','Atkinson Hyperlegible','DejaVu Sans',Verdana,sans-serif"
SERIF = "Besley,'DejaVu Serif',Georgia,serif"


@cache
def palette() -> dict[str, Any]:
    """The colours by theme and name."""
    return tomllib.loads(files("loopwright.drawing.chart").joinpath("palette.toml").read_text(encoding="utf-8"))


@cache
def style() -> str:
    """CSS for a chart; everything in it hangs on the class of the picture, so that it keeps to itself in a page."""
    light, dark = palette()["light"], palette()["dark"]
    ink = {"sheet": "#fff", "tape": "#fff", **dict.fromkeys(("ink", "ink2", "edge", "creek", "tapeedge", "tapeink"), "#000")}
    fixed = (
        ".lwchart .ring{fill:none;stroke-width:1.7}.lwchart path{fill:none;stroke-width:1.7;stroke-linecap:round;stroke-linejoin:round}"
        ".lwchart .two path{stroke-width:1.3}.lwchart .below path{stroke-width:1.3}"
        ".lwchart .frame path{stroke-width:1.5;stroke-dasharray:2 4}.lwchart .tab{stroke-width:1}"
        f".lwchart text{{font:13px {FONT}}}.lwchart .title{{font:600 17px {SERIF}}}.lwchart .count{{font:600 13px {SERIF}}}"
        ".lwchart .mid{text-anchor:middle}.lwchart .end{text-anchor:end}"
    )
    dark_rule = f"@media screen and (prefers-color-scheme:dark){{{_colours(dark)}}}"
    return f"{fixed}{_colours(light)}{dark_rule}@media print{{{_colours({**ink, 'yarns': ['#000'] * 6})}}}"


def _colours(of: dict[str, Any]) -> str:
    tab = f".lwchart .tab{{fill:{of['tape']};stroke:{of['tapeedge']}}}.lwchart .num{{fill:{of['tapeink']}}}"
    found = (
        f".lwchart .sheet{{fill:{of['sheet']}}}.lwchart path,.lwchart .ring{{stroke:{of['ink']}}}.lwchart .two path{{stroke:{of['creek']}}}"
        f".lwchart .f{{fill:{of['ink']}}}.lwchart .two .f{{fill:{of['creek']}}}"
        f".lwchart .below path,.lwchart .frame path{{stroke:{of['edge']}}}"
        f".lwchart text{{fill:{of['ink']}}}.lwchart .said{{fill:{of['ink2']}}}"
        f"{tab}.lwchart .arrow{{stroke:{of['ink2']}}}"
    )
    for letter, colour in zip(LETTERS, of["yarns"], strict=True):
        found += f".lwchart .y{letter}{{stroke:{colour}}}.lwchart .f.y{letter}{{fill:{colour}}}"
    return found
