"""A shape set down to be looked at: hats with the crown up, flat pieces with the right side up, pieces side by side on one floor."""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.csgraph import connected_components

from loopwright.drawing.scene.body import Body, Floats, Ints, Relaxed, sound
from loopwright.drawing.scene.surface import triangles, unit

_GAP_SHARE = 0.06
_HARDLY = 0.02
"""A surface whose areas cancel to less than this share (a ball, a tube) has no way up: it stays as it is."""


def stood(shape: Relaxed, *, opening_up: bool = False) -> Body:
    """The shape turned upright, every part that hangs together on its own; z = 0 is the floor, parts follow each other along x.

    Up is the way that the areas of the faces look in sum: for a flat piece its right side, for a hat the crown (what is missing of a
    closed surface, the opening, looks the other way). `opening_up`: the opening upward instead, as a bag stands. Then the longest way
    across lies along x.
    """
    body, _ = sound(shape)
    points = body.points.copy()
    corners, _ = triangles(points, body.faces)
    count = len(points)
    if not count:
        return body
    _, part = connected_components(coo_matrix((np.ones(len(body.pairs)), body.pairs.T), shape=(count, count)), directed=False)
    sizes = np.bincount(part)
    gap = _GAP_SHARE * float(np.ptp(points, axis=0).max())
    edge = 0.0
    for number in np.argsort(-sizes, kind="stable").tolist():
        mine = part == number
        placed = _upright(points, mine, corners[mine[corners[:, 0]]], up=-1.0 if opening_up else 1.0)
        placed -= [placed[:, 0].min(), (placed[:, 1].min() + placed[:, 1].max()) / 2, placed[:, 2].min()]
        points[mine] = placed + np.asarray([edge, 0.0, 0.0])
        edge += float(np.ptp(placed[:, 0])) + gap
    return body.at(points - np.asarray([(edge - gap) / 2, 0.0, 0.0]))


def _upright(points: Floats, mine: np.ndarray[tuple[int], np.dtype[np.bool_]], corners: Ints, up: float) -> Floats:
    own: Floats = points[mine] - points[mine].mean(axis=0)
    if not len(corners):
        return own
    area = np.cross(points[corners[:, 1]] - points[corners[:, 0]], points[corners[:, 2]] - points[corners[:, 0]])
    way = area.sum(axis=0)
    if np.linalg.norm(way) < _HARDLY * max(float(np.linalg.norm(area, axis=1).sum()), 1e-12):
        return own
    z = up * unit(way)
    level = own - np.outer(own @ z, z)
    x = np.linalg.svd(level, full_matrices=False)[2][0]
    x = unit(x - (x @ z) * z, (1.0, 0.0, 0.0))
    x *= 1.0 if x[np.argmax(np.abs(x))] > 0 else -1.0  # the same way round on every machine
    return np.asarray(own @ np.stack((x, np.cross(z, x), z)).T)
