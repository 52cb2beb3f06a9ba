"""The energy of a shape, in stitch widths: springs along the edges, bending, stuffing, contact.

E(x) = 0.5 sum k (|xi - xj| - l)^2 + 0.5 tr(x^T Q x) - P V^(1/3) + 0.5 sum kc (d - |xi - xj|)^2 over pairs nearer than d.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from scipy.sparse import csr_matrix

from loopwright.measuring.relax.tops import Floats, Ints

# An extra force: x -> (energy, gradient).
Force = Callable[[Floats], tuple[float, Floats]]


def dot(a: Floats, b: Floats) -> float:
    """Sum of products. Not by BLAS: its threads wait for one another longer than this takes where other work shares the machine."""
    return float(np.einsum("i,i->", a.ravel(), b.ravel()))


@dataclass(slots=True)
class Energy:
    """`pairs`: (m, 2); `rest`, `stiff`: (m,); `bending`: Q, n x n. `incidence`: (n, m), +1 and -1, made from the pairs."""

    pairs: Ints
    rest: Floats
    stiff: Floats
    bending: csr_matrix
    more: list[Force] = field(default_factory=list)
    incidence: csr_matrix = field(init=False)

    def __post_init__(self) -> None:
        m, n = len(self.pairs), self.bending.shape[0]
        at = np.arange(m)
        values = np.concatenate([np.ones(m), -np.ones(m)])
        where = (np.concatenate([self.pairs[:, 0], self.pairs[:, 1]]), np.concatenate([at, at]))
        self.incidence = csr_matrix((values, where), shape=(n, m))

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Energy and gradient at x, (n, 2) or (n, 3)."""
        d = x[self.pairs[:, 0]] - x[self.pairs[:, 1]]
        length = np.sqrt(np.einsum("ij,ij->i", d, d))
        over = length - self.rest
        pull = self.stiff * over
        bent = self.bending @ x
        gradient = self.incidence @ (d * (pull / np.maximum(length, 1e-9))[:, None]) + bent
        energy = 0.5 * dot(pull, over) + 0.5 * dot(x, bent)
        for force in self.more:
            e, g = force(x)
            energy += e
            gradient += g
        return energy, gradient

    def laplacian(self) -> csr_matrix:
        """B^T K B: what the springs hold when all of them keep their direction."""
        weighted = self.incidence.multiply(self.stiff[None, :]).tocsr()
        return (weighted @ self.incidence.T).tocsr()


def strains(points: Floats, pairs: Ints, rest: Floats) -> Floats:
    """(length - rest) / rest of each edge."""
    length = np.linalg.norm(points[pairs[:, 0]] - points[pairs[:, 1]], axis=1)
    share: Floats = (length - rest) / np.maximum(rest, 1e-9)
    return share
