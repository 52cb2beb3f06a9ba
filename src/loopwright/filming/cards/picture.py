"""A card with the work as it will look: the picture of a round at the right, its name in a corner."""

from __future__ import annotations

import re

from loopwright.drawing import svg
from loopwright.filming.cards.card import EDGE_PX, TOP_PX, Shape, bottom_px, boxes, line
from loopwright.filming.cards.letters import WORKED, fitted_px, width_px

_SIDE_PX = 500.0
_INSIDE = re.compile(r"<svg\b[^>]*viewBox=\"(?P<box>[^\"]*)\"[^>]*>(?P<inside>.*)</svg>", re.DOTALL)
_NIGHT = re.compile(r"@media[^{]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}")
_TOLD = re.compile(r"<(title|desc)\b[^>]*>.*?</\1>", re.DOTALL)


def picture(drawing: str, label: str, shape: Shape) -> tuple[list[str], tuple[float, float, float, float], bool]:
    """The drawing on a sheet of its own. Raises ValueError for a drawing that is no SVG with a view box."""
    found = _INSIDE.search(drawing)
    if found is None:
        raise ValueError("this is no drawing")
    left, top = (1280 - EDGE_PX - _SIDE_PX, TOP_PX) if shape == "16x9" else (EDGE_PX, TOP_PX + 120)
    side = min(_SIDE_PX, bottom_px(shape) - top - 24)
    inside = _TOLD.sub("", _NIGHT.sub("", found["inside"]))
    place = f'x="{svg.number(left + 20)}" y="{svg.number(top + 20)}" width="{svg.number(side - 40)}" height="{svg.number(side - 40)}"'
    size = fitted_px(label, 44, 400, WORKED, 700)
    wide = width_px(label, size, WORKED, 700) + 60
    drawn = [
        svg.rect("sheet", (left, top), (side, side)), f'<svg class="lw-round" {place} viewBox="{found["box"]}">{inside}</svg>',
        svg.rect("tape", (EDGE_PX, TOP_PX), (wide, 92)), svg.rect("ink", (EDGE_PX, TOP_PX), (wide, 6)),
        svg.rect("ink", (EDGE_PX, TOP_PX), (5, 92)),
        line("count", (EDGE_PX + 30, TOP_PX + 64), label, size),
    ]
    return drawn, boxes([(left, top, left + side, top + side), (EDGE_PX, TOP_PX, EDGE_PX + wide, TOP_PX + 92)]), True
