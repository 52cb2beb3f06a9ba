"""Line weights and type of a schematic as one style sheet: ink on paper, light on dark where the reader asks for dark.

Every rule is bound to the class of its drawing, so that drawings may stand in one page. Nothing is told by colour alone.
"""

from __future__ import annotations

from loopwright.drawing.palette import WORKED, WRITTEN, colours

TEXT_PX = 13.0
NAME_PX = 14.0
LETTER_PX = 15.0
LINE_PX = 18.0

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
)
_OPEN = ("fold", "join", "round", "work", "span", "reach", "rule")


def style(scope: str) -> str:
    """The style sheet of a drawing whose root has the class `scope`."""
    on_light, on_dark = colours("light"), colours("dark")
    rules = [f".{scope} .{c}{{fill:none}}" for c in _OPEN]
    for name, what, colour, more in _RULES:
        rules.append(f".{scope} .{name}{{{what}:{on_light[colour]}{';' + more if more else ''}}}")
    dark = "".join(f".{scope} .{name}{{{what}:{on_dark[colour]}}}" for name, what, colour, _ in _RULES)
    # a sleeve goes on under the body: outlines stay filled
    clear = f".{scope} .paper{{fill:none}}.{scope} .outline,.{scope} .label{{fill:#fff}}"
    rules.insert(0, f".{scope} .label{{fill:{on_light['sheet']}}}")
    dark += f".{scope} .label{{fill:{on_dark['sheet']}}}"
    return "".join(rules) + f"@media screen and (prefers-color-scheme:dark){{{dark}}}@media print{{{clear}}}"
