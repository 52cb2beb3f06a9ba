"""Colours, line weights and type of printed drawings, as one style sheet: ink on paper, light on dark where the reader asks for dark.

Every rule is bound to the class of its drawing, so that drawings may stand in one page. Nothing is told by colour alone.
"""

from __future__ import annotations

WRITTEN = "'Atkinson Hyperlegible Next','DejaVu Sans',Verdana,sans-serif"
WORKED = "Besley,Rockwell,'DejaVu Serif',Georgia,serif"
TEXT_PX = 13.0
NAME_PX = 14.0
LETTER_PX = 15.0
LINE_PX = 18.0

_LIGHT = {"sheet": "#FAFCF9", "rule": "#C9D6D0", "edge": "#748988", "ink": "#12262C", "ink2": "#3C5156"}
_DARK = {"sheet": "#131D21", "rule": "#2B3A3E", "edge": "#6A7E80", "ink": "#E8EEEA", "ink2": "#B9C7C5"}

_RULES = (
    ("paper", "fill", "sheet", ""),
    ("outline", "stroke", "ink", "stroke-width:2.4;stroke-linejoin:round"),
    ("outline", "fill", "sheet", ""),
    ("fold", "stroke", "ink", "stroke-width:1.2;stroke-dasharray:4 3"),
    ("join", "stroke", "ink", "stroke-width:3;stroke-dasharray:.1 5;stroke-linecap:round"),
    ("round", "stroke", "edge", "stroke-width:.7"),
    ("work", "stroke", "ink2", "stroke-width:1.5"),
    ("head", "fill", "ink2", ""),
    ("span", "stroke", "ink", "stroke-width:1"),
    ("reach", "stroke", "edge", "stroke-width:.7"),
    ("rule", "stroke", "rule", "stroke-width:1"),
    ("text", "fill", "ink", f"font:400 {TEXT_PX:g}px {WRITTEN}"),
    ("soft", "fill", "ink2", f"font:400 {TEXT_PX:g}px {WRITTEN}"),
    ("name", "fill", "ink", f"font:500 {NAME_PX:g}px {WORKED}"),
    ("letter", "fill", "ink", f"font:700 {LETTER_PX:g}px {WRITTEN}"),
    ("title", "fill", "ink", f"font:700 17px {WORKED}"),
)
_OPEN = ("fold", "join", "round", "work", "span", "reach", "rule")


def style(scope: str) -> str:
    """The style sheet of a drawing whose root has the class `scope`."""
    rules = [f".{scope} .{c}{{fill:none}}" for c in _OPEN]
    for name, what, colour, more in _RULES:
        rules.append(f".{scope} .{name}{{{what}:{_LIGHT[colour]}{';' + more if more else ''}}}")
    dark = "".join(f".{scope} .{name}{{{what}:{_DARK[colour]}}}" for name, what, colour, _ in _RULES)
    clear = f".{scope} .paper,.{scope} .outline{{fill:none}}.{scope} .label{{fill:#fff}}"
    rules.insert(0, f".{scope} .label{{fill:{_LIGHT['sheet']}}}")
    dark += f".{scope} .label{{fill:{_DARK['sheet']}}}"
    return "".join(rules) + f"@media screen and (prefers-color-scheme:dark){{{dark}}}@media print{{{clear}}}"
