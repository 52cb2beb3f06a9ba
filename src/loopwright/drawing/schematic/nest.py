"""The nest: the outline of a piece in every size, inside one another, all on one edge."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing import svg
from loopwright.drawing.schematic.book import book_of
from loopwright.drawing.schematic.figure import Figure, Point, Stroke
from loopwright.drawing.schematic.pieces import figures_of
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.parts import parts
from loopwright.model.fabric import Fabric
from loopwright.record import record

MOST = 4  # figures of one pattern


@record
class Outline:
    """One size of a figure: paths in mm for an SVG, the middle of its lower edge at nought. `folds`: lines within it."""

    path: str
    folds: str
    width_mm: float
    height_mm: float


@record
class Nest:
    """A figure in all sizes, None for one that could not be worked. `box_mm`: left, top, width and height of them all."""

    name: str
    outlines: tuple[Outline | None, ...]
    box_mm: tuple[float, float, float, float]


def nested(fabrics: Sequence[Fabric | None], sizes: StitchSizes) -> tuple[Nest, ...]:
    """The figures that every worked size has, in the order of making; at most `MOST`. `fabrics`: one per size."""
    drawn = [None if f is None else _figures(f, sizes) for f in fabrics]
    there = [d for d in drawn if d is not None]
    names = [n for n in (there[0] if there else {}) if all(n in d for d in there)]
    found = []
    for name in names[:MOST]:
        outlines = tuple(None if d is None else _outline(d[name]) for d in drawn)
        wide = max((o.width_mm for o in outlines if o is not None), default=0.0)
        high = max((o.height_mm for o in outlines if o is not None), default=0.0)
        if wide > 0 and high > 0:
            found.append(Nest(name, outlines, (-wide / 2, -high, wide, high)))
    return tuple(found)


def _figures(fabric: Fabric, sizes: StitchSizes) -> dict[str, Figure]:
    rows = courses(fabric, sizes)
    found: dict[str, Figure] = {}
    for figure in figures_of(fabric, rows, parts(fabric, rows), book_of([dimensions(fabric, sizes)], 0)).figures:
        found.setdefault(figure.name, figure)
    return found


def _outline(figure: Figure) -> Outline:
    edges = [s for s in figure.strokes if s.line == "outline"]
    points = [p for s in edges for p in s.points] or [(0.0, 0.0)]
    left, right = min(p[0] for p in points), max(p[0] for p in points)
    top, bottom = min(p[1] for p in points), max(p[1] for p in points)
    at = (left + right) / 2, bottom
    folds = [s for s in figure.strokes if s.line == "fold"]
    return Outline(_paths(edges, at), _paths(folds, at), right - left, bottom - top)


def _paths(strokes: Sequence[Stroke], at: Point) -> str:
    said = []
    for s in strokes:
        places = " ".join(f"{svg.number(x - at[0])},{svg.number(y - at[1])}" for x, y in s.points)
        said.append(f"M{places}{'Z' if s.closed else ''}")
    return "".join(said)
