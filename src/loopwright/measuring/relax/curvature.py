"""Curvature by angles: what a fabric's rest lengths ask for, and what a shape has. 2 pi less the angles around a node."""

from __future__ import annotations

import numpy as np

from loopwright.measuring.relax.bending import corner_cosines
from loopwright.measuring.relax.tops import Flags, Floats, Ints


def inner_nodes(tris: Ints, n: int) -> Flags:
    """Nodes with triangles all around: none of their edges has only one triangle."""
    edges = np.sort(np.concatenate([tris[:, [0, 1]], tris[:, [1, 2]], tris[:, [2, 0]]]), axis=1)
    key = edges[:, 0] * n + edges[:, 1]
    _, first, count = np.unique(key, return_index=True, return_counts=True)
    inner = np.zeros(n, bool)
    inner[tris.ravel()] = True
    inner[edges[first[count == 1]].ravel()] = False
    return inner


def angle_deficits(tris: Ints, lengths: Floats, n: int) -> Floats:
    """2 pi less the sum of the angles at each of n nodes, for triangles (t, 3) with edges 01, 12, 20 of these lengths; 0 on rims."""
    angles = np.arccos(corner_cosines(lengths))
    total = np.bincount(tris.ravel(), weights=angles.ravel(), minlength=n)
    return np.where(inner_nodes(tris, n), 2 * np.pi - total, 0.0)
