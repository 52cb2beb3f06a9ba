"""Shawls pinned out: a triangle that is worked from the middle of its top edge lies straight along it, as the schematic shows it.

As yarn lies by itself its rows would rather be arcs, the top edge sagging between two horns; blocking is what makes the triangle.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.drawing.scene.body import Body, Floats
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import Course
from loopwright.measuring.fans import MIDDLE, fan
from loopwright.measuring.parts import Part, pieces
from loopwright.model.fabric import Fabric


def blocked(fabric: Fabric, sizes: StitchSizes, cut: Sequence[Part], body: Body) -> Body | None:
    """The shape with every such piece laid out; None where there is none."""
    points = body.points.copy()
    for piece, own in pieces(cut).items():
        flat = [p for p in own if p.kind == "flat"]
        tip = flat and len(flat[0].corners) == 1 and MIDDLE[0] <= flat[0].corners[0].at <= MIDDLE[1]
        if tip and fan(own, flat, sizes):
            mine = body.piece == piece
            points[mine] = 0.0
            for c in (c for p in own for c in p.courses):
                _lay(fabric, sizes, c, body, points)
    return None if (points == body.points).all() else body.at(points)


def _lay(fabric: Fabric, sizes: StitchSizes, c: Course, body: Body, points: Floats) -> None:
    """A row along both legs, every stitch as far from those it stands on as it is tall; right-side rows from the right."""
    stitches = [s for s in range(c.row.start, c.row.end) if body.node_of[s] >= 0]
    for k, s in enumerate(stitches):
        below = [_deep(points[body.node_of[p]]) for p in fabric.parents(s) if body.node_of[p] >= 0]
        kind = fabric.counts_as.get(s, fabric.kind[s])
        tall = c.height_mm if fabric.name(s) == "ch" else sizes.height(fabric.kinds[kind])
        deep = (sum(below) / len(below) if below else _before(c, body, points)) + tall
        along = (k + 0.5) / len(stitches)
        points[body.node_of[s]] = _on_legs(1 - along if c.row.right_side else along, deep)


def _before(c: Course, body: Body, points: Floats) -> float:
    """How far out the stitch before the row lies, for chains that stand on nothing."""
    nodes = body.node_of[: c.row.start]
    nodes = nodes[nodes >= 0]
    return _deep(points[nodes[-1]]) if len(nodes) else 0.0


def _deep(p: Floats) -> float:
    """How far a place lies from the middle of the top edge, at right angles to its leg."""
    return float(abs(p[0]) + abs(p[1])) / math.sqrt(2)


def _on_legs(share: float, deep: float) -> tuple[float, float, float]:
    """A place on two legs that meet in the tip below, from the left end of the top edge to the right one."""
    long = deep * math.sqrt(2)
    x = long * (2 * share - 1)
    return x, abs(x) - long, 0.0


