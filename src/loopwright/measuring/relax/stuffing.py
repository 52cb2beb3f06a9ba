"""Stuffing: the energy -P V^(1/3) of a filled piece, bounded where a plain -p V is not."""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix
from scipy.sparse.csgraph import connected_components

from loopwright.measuring.relax.tops import Floats, Ints

# Surface of a ball of 24 stitches around, in square stitch widths: pressures are told for it, and grow with the size of the piece so that
# a firm filling strains a large piece as it does a small one.
BALL = 24**2 / np.pi
# A piece whose opening, drawn round, is more than this share of its surface holds no stuffing (a judgement).
OPEN = 0.15


class Volume:
    """Volume within oriented triangles of n nodes, and its gradient; every opening is capped by a fan from its middle."""

    def __init__(self, tris: Ints, n: int) -> None:
        loops, edges = _rims(tris, n)
        count = int(loops.max()) + 1 if len(loops) else 0
        caps = np.stack([edges[:, 1], edges[:, 0], n + loops], axis=1) if len(edges) else np.zeros((0, 3), np.int64)
        self.tris = np.concatenate([tris, caps]).astype(np.int64)
        weight = 1 / np.maximum(np.bincount(loops, minlength=max(count, 1)), 1)
        middle = (weight[loops], (loops, edges[:, 0])) if len(edges) else (np.zeros(0), (loops, loops))
        self.middle = csr_matrix(middle, shape=(count, n))
        self.loops, self.edges = loops, edges

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Signed volume and gradient, (n, 3)."""
        n = len(x)
        y = np.concatenate([x, self.middle @ x])
        a, b, c = (y[self.tris[:, i]] for i in range(3))
        by_a, by_b, by_c = np.cross(b, c), np.cross(c, a), np.cross(a, b)
        volume = float(np.einsum("ij,ij->", a, by_a)) / 6
        gradient = np.zeros_like(y)
        for i, part in enumerate((by_a, by_b, by_c)):
            for axis in range(3):
                gradient[:, axis] += np.bincount(self.tris[:, i], weights=part[:, axis], minlength=len(y)) / 6
        return volume, gradient[:n] + self.middle.T @ gradient[n:]

    def largest_opening(self, x: Floats) -> float:
        """Area that the longest rim would have if it were round."""
        if not len(self.edges):
            return 0.0
        length = np.linalg.norm(x[self.edges[:, 0]] - x[self.edges[:, 1]], axis=1)
        return float(np.bincount(self.loops, weights=length).max() ** 2 / (4 * np.pi))


def _rims(tris: Ints, n: int) -> tuple[Ints, Ints]:
    """Edges that only one triangle has, as it runs along them, and the number of the rim each belongs to."""
    if not len(tris):
        return np.zeros(0, np.int64), np.zeros((0, 2), np.int64)
    edges = np.concatenate([tris[:, [0, 1]], tris[:, [1, 2]], tris[:, [2, 0]]])
    key = np.minimum(edges[:, 0], edges[:, 1]) * n + np.maximum(edges[:, 0], edges[:, 1])
    _, first, count = np.unique(key, return_index=True, return_counts=True)
    rim = edges[first[count == 1]]
    rim = rim[rim[:, 0] != rim[:, 1]]
    if not len(rim):
        return np.zeros(0, np.int64), np.zeros((0, 2), np.int64)
    _, label = connected_components(coo_matrix((np.ones(len(rim)), (rim[:, 0], rim[:, 1])), shape=(n, n)), directed=False)
    _, loops = np.unique(label[rim[:, 0]], return_inverse=True)
    return loops.astype(np.int64), rim


def surface(tris: Ints, x: Floats) -> float:
    """Area of the triangles."""
    return float(np.linalg.norm(np.cross(x[tris[:, 1]] - x[tris[:, 0]], x[tris[:, 2]] - x[tris[:, 0]]), axis=1).sum()) / 2


class Stuffing:
    """The force of a filling: `pressure` as told for a ball of 24 stitches."""

    def __init__(self, volume: Volume, pressure: float, area: float) -> None:
        self.volume, self.pressure = volume, pressure * max(area / BALL, 1e-6) ** 0.5

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Energy and gradient; no force on what has no volume."""
        volume, gradient = self.volume(x)
        if volume <= 1e-6:
            return 0.0, np.zeros_like(x)
        root = volume ** (1 / 3)
        return -self.pressure * root, gradient * (-self.pressure / (3 * root * root))
