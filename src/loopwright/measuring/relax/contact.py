"""Contact: layers of fabric do not pass through one another."""

from __future__ import annotations

import numpy as np
from scipy.sparse import csr_matrix, identity
from scipy.spatial import cKDTree

from loopwright.measuring.relax.tops import Floats, Ints

# In stitch widths: nodes nearer than this are watched, and pushed apart below the thickness of the fabric (a judgement).
WATCH = 0.9
THICK = 0.6
# Larger fabrics are relaxed without: looking for contacts would cost more than it shows.
LARGEST = 40_000


class Contact:
    """Pairs that came too near, found anew by `look`."""

    def __init__(self, pairs: Ints, n: int) -> None:
        i, j = np.concatenate([pairs[:, 0], pairs[:, 1]]), np.concatenate([pairs[:, 1], pairs[:, 0]])
        near = csr_matrix((np.ones(len(i), np.int32), (i, j)), shape=(n, n)) + identity(n, dtype=np.int32, format="csr")
        self.two = (near @ near).tocsr()  # within two edges: two nodes are within four, and may be near, when these meet
        self.pairs = np.zeros((0, 2), np.int64)

    def look(self, x: Floats) -> bool:
        """Finds the pairs that are near; whether any are."""
        pairs = cKDTree(x).query_pairs(WATCH, output_type="ndarray")
        if len(pairs) > 20 * len(x):  # collapsed: everything is near everything
            pairs = pairs[:0]
        if len(pairs):
            meet = np.asarray(self.two[pairs[:, 0]].multiply(self.two[pairs[:, 1]]).sum(axis=1)).ravel()
            pairs = pairs[meet == 0]
        self.pairs = pairs.astype(np.int64)
        return bool(len(pairs))

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Energy and gradient of what is nearer than the fabric is thick."""
        gradient = np.zeros_like(x)
        if not len(self.pairs):
            return 0.0, gradient
        d = x[self.pairs[:, 0]] - x[self.pairs[:, 1]]
        length = np.linalg.norm(d, axis=1)
        under = np.maximum(THICK - length, 0.0)
        push = d * (-under / np.maximum(length, 1e-6))[:, None]
        np.add.at(gradient, self.pairs[:, 0], push)
        np.add.at(gradient, self.pairs[:, 1], -push)
        return 0.5 * float(np.square(under).sum()), gradient
