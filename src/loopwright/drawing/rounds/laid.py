"""Fabric laid out for looking at: its shape, what lies flat, and the ways it is seen from."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from loopwright.drawing.rounds.blocked import blocked
from loopwright.drawing.scene.body import Body, Floats, Ints
from loopwright.drawing.scene.stood import stood
from loopwright.drawing.scene.surface import triangles, unit
from loopwright.drawing.ways import stands_open
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import Course, courses
from loopwright.measuring.fans import FROM_A_POINT
from loopwright.measuring.parts import Part, parts, rows_alone
from loopwright.measuring.relax import RelaxOptions, Shape, relax
from loopwright.model.fabric import Fabric
from loopwright.record import record

ABOVE = 18.0
"""Degrees from which standing pieces are seen."""
RIM = 0.75
FEWEST_IN_PLANE, THICKEST = 3, 0.1
"""Nodes that make a plane; how thick what lies in one may be, against its depth (by eye)."""
OPEN = 0.3
"""Ends of rows so far apart, as a share of their length, tell which way they lie."""
LACE = 8
"""Rounds of which more than one place in so many is a chain are lace (by eye)."""
SPREADS = 3
"""A piece that begins in one point and grows so many times over hangs from there, as a shawl does."""


@record
class LaidOut:
    """A fabric's rows, its parts, and its body; `flat`: nothing of it stands, so that it is looked at from above (motifs, rows).

    `pinned`: it is a triangle laid out as it is blocked.
    """

    fabric: Fabric
    rows: list[Course]
    parts: list[Part]
    body: Body
    flat: bool
    pinned: bool = False

    def part_of(self, row: int) -> Part | None:
        """The part that a row belongs to."""
        return next((p for p in self.parts if p.rows[0] <= row <= p.rows[1]), None)

    def nodes_of(self, row: int) -> Ints:
        """The nodes of a row's stitches, in the order of making."""
        own = self.fabric.rows[row]
        nodes = self.body.node_of[own.start : own.end]
        return np.asarray(nodes[nodes >= 0])


def laid_out(
    fabric: Fabric, sizes: StitchSizes, shape: Shape | None = None, *, title: str = "", opening_up: bool | None = None,
    budget_s: float = 20.0,
) -> LaidOut:
    """The fabric in its shape, relaxed here where none is given; standing pieces upright, flat ones as they are.

    `opening_up`: whether pieces stand with their opening above; None: as the title and the first section's name say.
    """
    rows = courses(fabric, sizes)
    found = parts(fabric, rows)
    flat = not any(_stands(p, found, rows) for p in found)
    given = _pinned_lace(fabric, sizes, found, budget_s) if flat else None
    if given is None:
        given = shape if shape is not None else relax(fabric, sizes, RelaxOptions(flat=rows_alone(found), budget_s=budget_s))
    up = opening_up if opening_up is not None else stands_open(title, found[0].section if found else None)
    body = stood(given, opening_up=up and not flat)
    pinned = blocked(fabric, sizes, found, body) if flat else None
    return LaidOut(fabric, rows, found, pinned or body, flat, pinned is not None)


def _pinned_lace(fabric: Fabric, sizes: StitchSizes, found: Sequence[Part], budget_s: float) -> Shape | None:
    """Lace in rounds as it is blocked; None for anything else, and for what is too full for the plane: that is shown as it falls."""
    if len({p.piece for p in found}) != 1 or not any(p.kind == "disc" and _is_lace(p) for p in found):
        return None
    pinned = relax(fabric, sizes, RelaxOptions(flat=True, budget_s=budget_s))
    return pinned if pinned.settled or pinned.why == "time" else None


def _is_lace(part: Part) -> bool:
    return sum(c.chains for c in part.courses) * LACE > sum(c.places for c in part.courses)


def _stands(part: Part, found: Sequence[Part], rows: Sequence[Course]) -> bool:
    """Whether it does not lie flat: a tube, but for an edging on something unsaid; a disc or oval that others are worked on from."""
    if part.kind == "tube":
        below = part.courses[0].below
        return not (0 <= below < len(rows) and rows[below].assumed)
    goes_on = (p for p in found if p.piece == part.piece and p is not part and p.kind in ("flat", "tube", "disc", "oval"))
    return part.kind in ("disc", "oval") and any(goes_on)


def seen_flat(laid: LaidOut, c: Course) -> Part | None:
    """The part on whose right side a row is looked at; None for a row that is seen from the front.

    Rounds from a centre as long as they lie flat, else pieces that are rows alone. The least share of a flat disc's rim is by eye.
    """
    part = laid.part_of(c.index) or next((p for p in laid.parts if p.rows[0] > c.index and p.piece == c.row.piece), None)
    if part is None or part.kind == "tie":
        return None
    own = [p for p in laid.parts if p.piece == part.piece]
    if part.kind in ("disc", "oval"):
        deep = sum(o.height_mm for o in part.courses if o.index <= c.index)
        rim = 2 * (math.pi * deep + part.base_mm)
        return part if laid.flat or c.top_mm >= RIM * rim or c.way == "chain" else None
    if all(p.kind in ("flat", "edge", "border", "tie") for p in own):
        return next((p for p in own if p.kind == "flat"), None)
    return next((p for p in own if p.kind in ("disc", "oval", "flat")), None) if laid.flat else None


def facing(laid: LaidOut, part: Part | None) -> Floats:
    """From the body to the eye (3, 3), x to the right, y upward, z towards the eye.

    On the right side of a part: its first row below, or above where it spreads from a point; a round begins at three o'clock. From the
    front and a little above where there is none.
    """
    if part is None:
        return from_front()
    body = laid.body
    rows = np.asarray(laid.fabric.row, dtype=np.int64)[body.face_stitch]
    corners, _ = triangles(body.points, body.faces[(rows >= part.rows[0]) & (rows <= part.rows[1])])
    p = body.points
    if len(corners):
        z = unit(np.cross(p[corners[:, 1]] - p[corners[:, 0]], p[corners[:, 2]] - p[corners[:, 0]]).sum(axis=0))
    else:
        plane = _plane(np.concatenate([p[laid.nodes_of(c.index)] for c in part.courses]))
        if plane is None:
            return from_front()
        z = plane
    way = _way(laid, part)
    along = unit(way - (way @ z) * z, (1.0, 0.0, 0.0))
    if part.sides:
        along = _on_a_side(laid, part, z, along)
    if part.kind in ("disc", "oval"):
        return np.stack((along, np.cross(z, along), z))
    return np.stack((np.cross(along, z), along, z))


def _on_a_side(laid: LaidOut, part: Part, z: Floats, along: Floats) -> Floats:
    """What is level where a motif stands on one of its sides: of those the direction nearest to `along`."""
    ring, many = laid.body.points[laid.nodes_of(part.courses[-1].index)], part.sides
    at = [min(len(ring) - 1, round(c.at * len(ring))) for c in part.corners]
    out, across = ring[at] - ring.mean(axis=0), np.cross(z, along)
    turned = np.angle(np.exp(1j * many * np.arctan2(out @ across, out @ along)).sum()) / many + math.pi / 2 - math.pi / many
    step = 2 * math.pi / many
    turned -= step * round(turned / step)
    return np.asarray(along * math.cos(turned) + across * math.sin(turned))


def _level(laid: LaidOut, part: Part) -> Floats:
    """Along the rows, from end to end, which then lie level however the edges slant; nought where their ends lie beside each other."""
    total, long = np.zeros(3), 0.0
    for c in part.courses:
        row = laid.body.points[laid.nodes_of(c.index)]
        if len(row) > 1:
            chord = row[-1] - row[0]
            total += chord if chord @ total >= 0 else -chord
            long += float(np.linalg.norm(np.diff(row, axis=0), axis=1).sum())
    return unit(total) if np.linalg.norm(total) > OPEN * long > 0 else np.zeros(3)


def _plane(points: Floats) -> Floats | None:
    """Upward from a net that has holes alone, and no face to tell how it lies; None where it does not lie in a plane."""
    if len(points) < FEWEST_IN_PLANE:
        return None
    _, size, axes = np.linalg.svd(points - points.mean(axis=0), full_matrices=False)
    if size[2] > THICKEST * size[1]:
        return None
    return np.asarray(axes[2] * (1.0 if axes[2][2] >= 0 else -1.0))


def _way(laid: LaidOut, part: Part) -> Floats:
    """Of a disc: from its middle to where the last round begins; of an oval: along its chain; of rows: upward."""
    body, last = laid.body, part.courses[-1]
    ring = body.points[laid.nodes_of(last.index)]
    below = laid.nodes_of(part.courses[0].below) if 0 <= part.courses[0].below < last.index else np.zeros(0, dtype=np.int64)
    if not len(ring):
        return np.asarray([1.0, 0.0, 0.0])
    if part.kind == "oval" and len(below) > 1:
        return np.asarray(body.points[below[-1]] - body.points[below[0]])
    if part.kind in ("disc", "oval"):
        return np.asarray(ring[0] - ring.mean(axis=0))
    first = body.points[laid.nodes_of(part.rows[0])]
    up = np.asarray(ring.mean(axis=0) - first.mean(axis=0)) if len(first) else np.asarray([0.0, 1.0, 0.0])
    level = _level(laid, part)
    up = up - (up @ level) * level
    spreads = part.courses[0].places <= FROM_A_POINT and last.places > SPREADS * part.courses[0].places
    return -up if spreads else up


def from_front() -> Floats:
    """From the front and a little above."""
    e = np.radians(ABOVE)
    return np.asarray([[1.0, 0.0, 0.0], [0.0, np.sin(e), np.cos(e)], [0.0, -np.cos(e), np.sin(e)]])
