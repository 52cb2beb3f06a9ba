"""A fabric put on a form: turned the right way, slid on until it touches, held outside, its stitches pulled back to their lengths.

Positions are brought in turn to "as long as relaxed", all at once with one factored matrix, and to "not inside the form" ("Projective
Dynamics: Fusing Constraint Projections for Fast Simulation", S. Bouaziz and others, 2014). No friction, no weight: it shows where a hat
ends and how far it must stretch, not how it feels.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

import numpy as np
from scipy.sparse import coo_matrix, csc_matrix, diags_array, eye_array
from scipy.sparse.csgraph import connected_components
from scipy.sparse.linalg import splu

from loopwright.drawing.scene.body import Body, Floats, Ints, Relaxed, sound
from loopwright.drawing.scene.forms import Form, nearest_outside
from loopwright.drawing.scene.surface import loops, rim, unit
from loopwright.record import record

_TILT = 12.0
"""Degrees by which a hat's crown is worn towards the back, so that its edge is higher in front (by eye; common practice, no source)."""
_FACE = 0.8
"""The edge of a bonnet that goes round the face: what is at least so far from the crown, as a share of the farthest (by eye)."""

_TIE_MM = 0.6
"""How far the corners of a bonnet are drawn towards the chin in one round, as its ties do: enough to keep it from sliding up (by eye)."""

Where = Literal["hat", "bonnet", "mitt"]

ROUNDS = 150
"""Times that lengths and the form are projected."""
_RESTS_MM = 0.1
"""A fabric whose nodes move less than this in a round, in the mean, lies still."""
_SHEAR, _BEND, _STAY, _PULL = 0.15, 0.2, 0.01, 0.35
"""Stiffness against shearing (as in the solver of the shape), bending and moving at once, beside 1 along a stitch; share of the way to
the touch of the crown that is gone in one round."""


@record
class Worn:
    """A fabric on a form, and where it ends. Lengths are mm.

    `front_mm`, `back_mm`, `sides_mm`: height of the opening's edge above the brow line of a head (below nought: lower), above the wrist
    crease of a hand; of a bonnet, the front is the middle of the edge over the face, the back that of the neck edge. `behind_brow_mm`: how
    far the front of the edge lies behind the foremost place of the brow. `stretch`: the opening's edge worn by relaxed; `stretch_most`:
    what 95 of 100 links between stitches stay below, worn by relaxed. `notes`: what to know of it.
    """

    body: Body
    front_mm: float
    back_mm: float
    sides_mm: float
    behind_brow_mm: float
    stretch: float
    stretch_most: float
    notes: tuple[str, ...] = ()


def worn(shape: Relaxed, form: Form, where: Where, *, thick_mm: float = 3.0, rounds: int = ROUNDS) -> Worn:
    """The fabric on the form.

    `where`: "hat": crown up, opening downward, the crown a little to the back. "bonnet": crown at the back of the head, opening towards the
    face, its neck edge below. "mitt": top at the finger tips, cuff at the wrist; give a mitten hand. `thick_mm`: of the fabric;
    its middle stays half of it outside of the form. Only what hangs together is put on; the rest is left out, and that is said.
    Raises ValueError where the shape has no opening to put it on by (no edge at all), or for another `where`.
    """
    if where not in ("hat", "bonnet", "mitt"):
        raise ValueError(f"'{where}' is no way to wear a fabric; there are hat, bonnet and mitt")
    body, lost = sound(shape)
    body, apart = _largest(body)
    edges = loops(body.faces)
    if not edges:
        raise ValueError("the shape has no edge to put it on by: it is closed all around, or has no faces")
    opening = max(edges, key=lambda loop: _length(body.points, loop)) if where != "mitt" else min(edges, key=lambda loop: int(loop.min()))
    points = _turned(body.points, opening, where)
    start = _slid(points, points[opening], form, where, thick_mm / 2)
    tied = _corners(start, opening) if where == "bonnet" else np.zeros(0, dtype=np.int64)
    placed, moved_mm = _held(body, start, tied, form, where, thick_mm / 2, rounds)
    notes = [f"only the largest part is put on; left out are parts that hang free: {apart}"] if apart else []
    notes += [] if body.settled else ["the shape had not come to rest when it was put on"]
    if lost:
        notes.append(f"{lost} places of the shape are no numbers")
    if moved_mm > _RESTS_MM:
        notes.append("it still slid on the form when it was drawn")
    return _told(body, replace(body.at(placed), settled=body.settled and moved_mm <= _RESTS_MM), opening, form, where, tuple(notes))


def _largest(body: Body) -> tuple[Body, int]:
    """What hangs together and has the most nodes, and how many other parts of more than one node there were."""
    count = len(body.points)
    ties = coo_matrix((np.ones(len(body.pairs)), body.pairs.T), shape=(count, count))
    _, part = connected_components(ties, directed=False)
    times = np.bincount(part, minlength=1)
    if (times > 0).sum() < 2:
        return body, 0
    mine = part == np.argmax(times)
    number = np.append(np.where(mine, np.cumsum(mine) - 1, -1), -1)
    pairs, faces = mine[body.pairs].all(axis=1), mine[body.faces[:, 0]]
    alone = Body(body.points[mine], number[body.node_of], number[body.pairs[pairs]], body.rest_mm[pairs], body.strain[pairs],
                 number[body.faces[faces]], body.face_stitch[faces], body.piece[mine], body.settled)
    return alone, int((times > 1).sum()) - 1


def _length(points: Floats, loop: Ints) -> float:
    return float(np.linalg.norm(points[np.roll(loop, -1)] - points[loop], axis=1).sum())


def _turned(points: Floats, opening: Ints, where: Where) -> Floats:
    """Turned so that the opening looks the way it is worn, and what belongs in front or aside is there."""
    edge = points[opening]
    middle, inward = _facing(edge, points)
    if where == "bonnet":
        # the neck edge is the part of the opening nearest to the crown, the place farthest in; the rest goes round the face
        crown = points[np.argmax((points - middle) @ inward)]
        far = np.linalg.norm(edge - crown, axis=1)
        near = edge[np.argsort(far)[: max(len(edge) // 8, 1)]].mean(axis=0)
        middle, inward = _facing(edge[far > _FACE * far.max()], points)
        return _framed(points - middle, np.asarray([0.0, 1.0, 0.0]), inward, np.asarray([0.0, 0.0, -1.0]), near - middle)
    aside = points - middle
    aside -= (aside @ inward)[:, None] * inward
    way = aside[np.argmax(np.linalg.norm(aside, axis=1))] if where == "mitt" else aside[0]
    if np.linalg.norm(way) < 1e-9:
        way = edge[0] - middle
    tilt = np.radians(_TILT) if where == "hat" else 0.0
    return _framed(points - middle, np.asarray([0.0, np.sin(tilt), np.cos(tilt)]), inward, np.asarray([1.0, 0.0, 0.0]), way)


def _facing(edge: Floats, points: Floats) -> tuple[Floats, Floats]:
    """Middle of an edge (n, 3), and the direction across its plane towards the fabric."""
    middle = edge.mean(axis=0)
    inward = _normal(edge - middle)
    return middle, inward if inward @ (points.mean(axis=0) - middle) >= 0 else -inward


def _normal(places: Floats) -> Floats:
    """Direction in which places (n, 3) about nought spread least."""
    return np.asarray(np.linalg.svd(places, full_matrices=False)[2][2])


def _framed(points: Floats, to_first: Floats, first: Floats, to_second: Floats, second: Floats) -> Floats:
    """Turned so that `first` becomes `to_first` and `second`, as near as may be, `to_second`."""

    def frame(a: Floats, b: Floats) -> Floats:
        a = a / np.linalg.norm(a)
        b = b - (b @ a) * a
        size = np.linalg.norm(b)
        b = b / size if size > 1e-9 else np.cross(a, np.roll(a, 1) + 0.1)
        b = b / np.linalg.norm(b)
        return np.stack((a, b, np.cross(a, b)))

    return np.asarray(points @ frame(first, second).T @ frame(to_first, to_second))


def _slid(points: Floats, opening: Floats, form: Form, where: Where, half_mm: float) -> Floats:
    """Put about the form so that the crown (the top) just touches it."""
    found = points.copy()
    top = np.asarray(form.marks["tip" if where == "mitt" else "top"])
    if where == "bonnet":
        found[:, 2] += top[2] + half_mm - points[:, 2].max()
        found[:, 1] += -form.marks["brow"][1] + half_mm - points[:, 1].max()
        return found
    found[:, :2] += top[:2] - opening[:, :2].mean(axis=0)
    found[:, 2] += top[2] + half_mm - points[:, 2].max()
    if where == "mitt":
        # laid about the oval of the hand first: a wall that starts inside of it could be pushed out on either side
        wide, deep = form.marks["side"][0] + half_mm, form.marks["back"][1] + half_mm
        around = np.hypot(found[:, 0] / wide, found[:, 1] / deep)
        found[:, :2] *= np.maximum(1 / np.maximum(around, 1e-6), 1.0)[:, None]
    return found


def _held(body: Body, start: Floats, tied: Ints, form: Form, where: Where, half_mm: float, rounds: int) -> tuple[Floats, float]:
    """Positions after the projections: lengths of the relaxed shape, outside of the form, the crown touching it.

    Then how far the nodes moved in the last round, mm, in the mean.
    """
    pairs, rest, share = _ties(body)
    count = len(start)
    used = np.zeros(count, dtype=bool)
    used[pairs.reshape(-1)] = True
    every = np.arange(len(pairs))
    sign = np.concatenate((-np.ones(len(pairs)), np.ones(len(pairs))))
    ties = csc_matrix((sign, (np.tile(every, 2), pairs.T.reshape(-1))), shape=(len(pairs), count))
    back = (ties.T @ diags_array(share)).tocsr()
    solver = splu((back @ ties + _BEND * _bending(body) + _STAY * eye_array(count)).tocsc())
    crown = _crown(start, where)
    way = np.asarray([0.0, -1.0, 0.0]) if where == "bonnet" else np.asarray([0.0, 0.0, -1.0])
    under = np.asarray(form.marks.get("chin", (0.0, 0.0, 0.0)))
    points = start.copy()
    left = float(np.ptp(start, axis=0).max(initial=0.0))  # it is pulled on by its own length at most
    before = points
    for _ in range(rounds):
        before = points
        along = ties @ points
        along *= (rest / np.maximum(np.linalg.norm(along, axis=1), 1e-9))[:, None]
        points = solver.solve(back @ along + _STAY * points)
        points[tied] += _TIE_MM * unit(under - points[tied])
        outside, out = nearest_outside(form, points)
        touch = float(np.clip(outside[crown].mean() - half_mm, 0.0, left))
        left -= _PULL * touch
        points += _PULL * touch * way + np.where(used, np.clip(half_mm - outside, 0, None), 0.0)[:, None] * out
    return points, float(np.linalg.norm(points - before, axis=1).mean()) if count else 0.0


def _bending(body: Body) -> csc_matrix:
    """What holds every node that is not on an edge near the mean of its neighbours (n, n)."""
    count = len(body.points)
    a, b = np.concatenate((body.pairs, body.pairs[:, ::-1])).T
    near = csc_matrix((np.ones(len(a)), (a, b)), shape=(count, count))
    inner = np.ones(count)
    inner[rim(body.faces)[:, :2].reshape(-1)] = 0.0
    share = inner / np.maximum(np.asarray(near.sum(axis=1)).reshape(-1), 1.0)
    off = diags_array(inner) - diags_array(share) @ near
    return csc_matrix(off.T @ off)


def _ties(body: Body) -> tuple[Ints, Floats, Floats]:
    """What holds nodes: pairs, and both diagonals of every quad against shearing; lengths as relaxed."""
    quads = body.faces[body.faces[:, 3] >= 0]
    pairs = np.concatenate((body.pairs, quads[:, [0, 2]], quads[:, [1, 3]]))
    share = np.concatenate((np.ones(len(body.pairs)), np.full(2 * len(quads), _SHEAR)))
    real = pairs[:, 0] != pairs[:, 1]
    pairs, share = pairs[real], share[real]
    return pairs, np.linalg.norm(body.points[pairs[:, 0]] - body.points[pairs[:, 1]], axis=1), share


def _corners(points: Floats, opening: Ints) -> Ints:
    """The nodes of a bonnet's edge where its ties are: the foremost of the low ones, on either side."""
    edge = points[opening]
    found = []
    for side in (-1.0, 1.0):
        score = -edge[:, 1] - 1.5 * edge[:, 2] + np.where(edge[:, 0] * side > 0, 0.0, -1e6)
        found.append(opening[np.argsort(-score)[: max(len(opening) // 40, 1)]])
    return np.concatenate(found)


def _crown(points: Floats, where: Where) -> Ints:
    """The nodes that are farthest on: they are to touch the form."""
    height = points[:, 1] if where == "bonnet" else points[:, 2]
    return np.argsort(-height, kind="stable")[: max(len(points) // 50, 1)]


def _told(relaxed: Body, placed: Body, opening: Ints, form: Form, where: Where, notes: tuple[str, ...]) -> Worn:
    edge = placed.points[opening]
    middle = edge.mean(axis=0)
    ahead = edge[:, 2] - middle[2] if where == "bonnet" else middle[1] - edge[:, 1]  # a bonnet's opening stands upright
    angle = np.arctan2(edge[:, 0] - middle[0], ahead)
    front, back = np.abs(angle) < np.radians(20), np.abs(angle) > np.radians(160)
    aside = np.abs(np.abs(angle) - np.pi / 2) < np.radians(20)
    at_front, at_back, at_sides = (float(edge[part, 2].mean()) if part.any() else float(middle[2]) for part in (front, back, aside))
    foremost = form.marks["brow"][1] if "brow" in form.marks else 0.0
    behind = (float(edge[front, 1].mean()) if front.any() else float(middle[1])) - foremost
    stretch = _length(placed.points, opening) / max(_length(relaxed.points, opening), 1e-9)
    before = np.linalg.norm(relaxed.points[relaxed.pairs[:, 0]] - relaxed.points[relaxed.pairs[:, 1]], axis=1)
    now = np.linalg.norm(placed.points[placed.pairs[:, 0]] - placed.points[placed.pairs[:, 1]], axis=1)
    longer = now / np.maximum(before, 1e-9)
    most = float(np.quantile(longer, 0.95)) if len(longer) else 1.0
    if stretch > 1.25 or most > 1.25:
        notes = (*notes, f"too tight: stitches would have to stretch by {max(stretch, most) - 1:.0%}")
    return Worn(placed, at_front, at_back, at_sides, behind, stretch, most, notes)
