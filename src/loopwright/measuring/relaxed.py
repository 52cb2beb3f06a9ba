"""Where shape matters: measures taken from the relaxed shape, beside those of the arithmetic.

A crown's rim is rounded where it turns into the body, so that it is narrower than its rounds say; what goes around is shorter where the
fabric bends round a corner.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

import numpy as np

from loopwright.grading.gauge import StitchSizes
from loopwright.grading.gauge.sizes import WIDE
from loopwright.measuring.courses import Course, courses
from loopwright.measuring.parts import Part, parts
from loopwright.measuring.relax import Shape
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension


def relaxed_dimensions(fabric: Fabric, sizes: StitchSizes, shape: Shape) -> Iterator[Dimension]:
    """Across every disc as it lies in the shape (of a crown: at the round that turns), and around every tube."""
    found = courses(fabric, sizes)
    for part in parts(fabric, found):
        last = part.courses[-1]
        ring = _ring(shape, last)
        if len(ring) < 3 or part.kind not in ("disc", "tube"):
            continue
        around = float(np.linalg.norm(ring - np.roll(ring, 1, axis=0), axis=1).sum())
        if part.kind == "disc":
            centre = ring.mean(axis=0)
            across = 2 * float(np.linalg.norm(ring - centre, axis=1).mean())
            how = "mean width at the last round"
            yield _dimension(part, "across relaxed", across, how, sizes)
            if part.radius_mm and abs(across / (2 * part.radius_mm) - 1) > 0.25:
                continue
        if math.isfinite(around):
            yield _dimension(part, "around relaxed", around, "along the last round", sizes)


def _ring(shape: Shape, course: Course) -> np.ndarray[tuple[int, ...], np.dtype[np.float64]]:
    """The points of a course's stitches, in order; (k, 3)."""
    nodes = shape.node_of[course.row.start : course.row.end]
    return np.asarray(shape.points[nodes[nodes >= 0]], dtype=np.float64)


def _dimension(part: Part, name: str, value_mm: float, how: str, sizes: StitchSizes) -> Dimension:
    off = WIDE * sizes.width_share * value_mm
    rows = part.courses[-1].index, part.courses[-1].index
    return Dimension(part.section, name, value_mm, value_mm - off, value_mm + off, rows, how, part.piece, relaxed=True)
