"""Yarn as tubes: many paths of equally many points swept at once."""

from __future__ import annotations

import numpy as np

from loopwright.drawing.scene.body import Floats, Ints
from loopwright.drawing.scene.surface import unit
from loopwright.record import record


@record
class Tubes:
    """Tubes as one mesh: `positions` and `normals` (v, 3), `corners` (t, 3), and the tube of each vertex (v,) and triangle (t,).

    `outward` (v,): how far the vertex faces the way its path's surface does, from -1 (the other side) to 1.
    """

    positions: Floats
    normals: Floats
    corners: Ints
    of_vertex: Ints
    of_triangle: Ints
    outward: Floats


def sweep(paths: Floats, surface: Floats, thick: Floats, flat: float, sides: int) -> Tubes:
    """Tubes along paths (m, s, 3) mm, of radius `thick` (m, s) mm across and `flat` times that towards the surface normal (m, 3).

    `sides`: of the section, 3 or more. The ends stay open: they lie within other yarn.
    """
    count, steps = paths.shape[:2]
    along = unit(np.gradient(paths, axis=1) if steps > 1 else np.zeros_like(paths))
    across = unit(np.cross(along, surface[:, None, :]), (1.0, 0.0, 0.0))
    out = unit(np.cross(across, along))
    angle = 2 * np.pi * np.arange(sides) / sides
    sine, cosine = np.sin(angle)[:, None], np.cos(angle)[:, None]
    radius = thick[:, :, None, None]
    ring = radius * (cosine * flat * out[:, :, None, :] + sine * across[:, :, None, :])
    facing = unit(cosine / flat * out[:, :, None, :] + sine * across[:, :, None, :])
    positions = (paths[:, :, None, :] + ring).reshape(-1, 3)
    outward = np.broadcast_to(np.cos(angle), (count, steps, sides)).reshape(-1)
    corners = (_grid(steps, sides)[None] + (np.arange(count) * steps * sides)[:, None, None]).reshape(-1, 3)
    each = (steps - 1) * sides * 2
    return Tubes(positions, facing.reshape(-1, 3), corners, np.repeat(np.arange(count), steps * sides),
                 np.repeat(np.arange(count), each), np.ascontiguousarray(outward))


def _grid(steps: int, sides: int) -> Ints:
    """Triangles of one tube, seen from outside against the clock."""
    step, side = (part.reshape(-1) for part in np.meshgrid(np.arange(steps - 1), np.arange(sides), indexing="ij"))
    following = (side + 1) % sides
    a, b = step * sides + side, step * sides + following
    c, d = a + sides, b + sides
    return np.concatenate((np.stack((a, b, d), axis=1), np.stack((a, d, c), axis=1))).astype(np.int64)
