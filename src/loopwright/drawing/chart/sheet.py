"""The sheet that a chart lies on."""

from __future__ import annotations

from dataclasses import dataclass

from loopwright.drawing.chart.drawn import Point
from loopwright.drawing.chart.style import TEXT_PX

MARGIN = 24.0


@dataclass(slots=True)
class Sheet:
    """Where things lie on the sheet.

    `x0`, `y1`: left and upper end of the chart in its own units; `mirror`: -1 for the left hand;
    `text_px`, `number_px`: type of its words, and of the numbers of rows.
    """

    x0: float
    y1: float
    mirror: int
    text_px: float = TEXT_PX
    number_px: float = TEXT_PX

    def at(self, p: Point) -> Point:
        """A point of the chart on the sheet."""
        return self.mirror * p[0] - self.x0, self.y1 - p[1]
