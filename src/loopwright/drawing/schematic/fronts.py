"""A garment with a raglan yoke seen from the front, lying flat: yoke, body, and both sleeves.

The back's panel of the yoke lies flat; a sleeve's panel is folded in half and turned about the raglan line, so that its slanted edge lies
on the panel's. From there the sleeve goes on straight, half of what goes around wide. Derived from plane geometry.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.schematic.book import Book
from loopwright.drawing.schematic.figure import Figure, Point, Word
from loopwright.drawing.schematic.flats import STEPPED
from loopwright.drawing.schematic.garments import RAGLAN, cuts
from loopwright.measuring.corners import corners
from loopwright.measuring.courses import Course
from loopwright.measuring.parts import Part
from loopwright.measuring.ranges import width_mm
from loopwright.model.fabric import Fabric
from loopwright.record import record

LAID = 0.5  # what of a round is seen when it is laid flat
BEYOND = 0.04  # of a sleeve's length, that the line that measures its end lies beyond it


@record
class _Yoke:
    """Half widths of the back and of a sleeve at the neck and at the last row, and the depth, mm."""

    back: tuple[float, float]
    sleeve: tuple[float, float]
    deep: float


def raglan(fabric: Fabric, part: Part, body: Part, sleeve: Part, book: Book) -> Figure | None:
    """Yoke, body and sleeves from the front; None where the yoke has not four lines."""
    first, last = corners(fabric, part.courses[0]), part.corners
    if len(first) != RAGLAN or len(last) != RAGLAN:
        return None
    upper, lower = ([c * p.top_mm for c in cuts(found)] for found, p in ((first, part.courses[0]), (last, part.courses[-1])))
    back, side = (((upper[i + 1] - upper[i]) / 2, (lower[i + 1] - lower[i]) / 2) for i in (2, 1))
    yoke = _Yoke(back, side, part.height_mm)
    figure = Figure("Front", how="front")
    half, long = width_mm(body.courses[0]) / 4, body.height_mm
    _sleeves(figure, yoke, sleeve, long, book)
    top = -long - yoke.deep
    right = [(yoke.back[0], top), (yoke.back[1], -long), (half, -long), (half, 0.0)]
    figure.stroke("outline", [*right, *((-x, y) for x, y in reversed(right))], closed=True)
    figure.stroke("fold", [(-yoke.back[1], -long), (yoke.back[1], -long)])
    figure.stroke("outline", [(0.0, top), (0.0, 0.0)])
    figure.span(book.find(body, "width"), (-half, 0.0), (half, 0.0), "below", share=0.5)
    figure.span(book.find(body, "depth"), (half, 0.0), (half, -long), "right")
    figure.span(book.find(part, "depth"), (half, -long), (half, top), "right")
    figure.words.append(Word("Body", (-half / 2, -long / 2), (half, long)))
    figure.stroke("work", [(half / 2, -0.7 * long), (half / 2, -0.35 * long)])
    return figure


def _sleeves(figure: Figure, yoke: _Yoke, sleeve: Part, long: float, book: Book) -> None:
    """Both sleeves, drawn before the body that lies over them; the right one is measured."""
    lean = sum(math.atan((p[1] - p[0]) / yoke.deep) for p in (yoke.back, yoke.sleeve))
    way, up = (math.sin(lean), math.cos(lean)), (math.cos(lean), -math.sin(lean))

    def at(start: Point, along: float, above: float) -> Point:
        return start[0] + way[0] * along + up[0] * above, start[1] + way[1] * along + up[1] * above

    neck = (yoke.back[0], -long - yoke.deep)
    shoulder = at(neck, 0.0, yoke.sleeve[0])
    begin = at(shoulder, yoke.deep, 0.0)
    edges = _edges(sleeve.courses)
    over, under = ([at(begin, y, above[k]) for y, *above in edges] for k in (0, 1))
    outline = [neck, shoulder, *over, *reversed(under)]
    for side in (1, -1):
        figure.stroke("outline", [(side * x, y) for x, y in outline], closed=True)
    wide = LAID * sleeve.courses[0].top_mm
    figure.span(book.find(sleeve, "depth"), at(begin, 0.0, -wide / 2), at(begin, sleeve.height_mm, -wide / 2), "within", label=0.5)
    figure.span(book.find(sleeve, "around"), at(begin, 0.0, 0.0), at(begin, 0.0, -wide), "within", share=LAID, label=-1.0)
    out = BEYOND * sleeve.height_mm
    ends = [(p[0] + way[0] * out, p[1] + way[1] * out) for p in (over[-1], under[-1])]
    figure.span(book.find(sleeve, "around at the end"), ends[0], ends[1], "within", share=LAID, label=2.0)
    aside = at(begin, 0.55 * sleeve.height_mm, -wide / 2)
    figure.words.append(Word("Sleeve", (-aside[0], aside[1]), (0.5 * sleeve.height_mm, wide)))


def _edges(run: Sequence[Course]) -> list[tuple[float, float, float]]:
    """How far down each round ends, and how far above the upper edge's line its own edges lie there, mm.

    Rounds that grow shorter by and by do so at the lower edge; what is drawn in at once, a cuff, stands in the middle.
    """
    wide, upper, y = LAID * run[0].top_mm, 0.0, 0.0
    found = [(y, upper, upper - wide)]
    for c in run:
        own = LAID * c.top_mm
        if abs(own - wide) > STEPPED * max(own, wide):
            upper += (own - wide) / 2
            found.append((y, upper, upper - own))
        wide, y = own, y + c.height_mm
        found.append((y, upper, upper - own))
    return found
