"""Quasi-Newton descent whose first guess of the curvature is one constant, factored matrix.

L-BFGS with A^-1 as the initial inverse Hessian: "Quasi-Newton Methods for Real-Time Simulation of Hyperelastic Materials", Liu, Bouaziz,
Kavan 2017. A = B^T K B + Q + small is factored once for all coordinates and all steps.
"""

from __future__ import annotations

import time
from collections import deque
from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
from scipy.sparse import identity
from scipy.sparse.linalg import splu

from loopwright.measuring.relax.energy import Energy, dot
from loopwright.measuring.relax.ordering import dissected
from loopwright.measuring.relax.tops import Floats

MEMORY = 8
# In stitch widths.
LARGEST_MOVE = 3.0
SMALL = 1e-5
# Resting: the energy fell by less than this for each node over so many steps. A hundred times more stops in front of a buckle.
RESTS_AT = 1e-9
# Or by less than this share of itself: what strain is left over is known to a few parts in a hundred thousand.
RESTS_SHARE = 1e-5
LOOKS_BACK = 10
# By how much the first guess of the curvature is scaled at most.
SCALES = (0.3, 3.0)


Past = deque[tuple[Floats, Floats, float]]


@dataclass(slots=True)
class Outcome:
    """Where a descent came to. `rested`: by its own rule, not by a limit. `past`: what it learned of the curvature."""

    x: Floats
    energy: float
    steps: int
    rested: bool
    past: Past = field(default_factory=lambda: deque(maxlen=MEMORY))


class Factor:
    """The factor of A for an energy whose nodes start at x."""

    def __init__(self, energy: Energy, x: Floats) -> None:
        n = energy.bending.shape[0]
        self.matrix = a = (energy.laplacian() + energy.bending + SMALL * identity(n)).tocsr()
        self.order = dissected(a, x)
        options = {"SymmetricMode": True}
        self.lu = splu(a[self.order][:, self.order].tocsc(), permc_spec="NATURAL", options=options, diag_pivot_thresh=0.0)

    def solve(self, b: Floats) -> Floats:
        """A^-1 b, for all coordinates at once."""
        found = np.empty_like(b)
        found[self.order] = self.lu.solve(np.ascontiguousarray(b[self.order]))
        return found


@dataclass(slots=True)
class Limits:
    """When to stop: `steps`, `until` (time.monotonic), `rests_at` per node; `each`: called after every step with its number."""

    steps: int
    until: float = float("inf")
    rests_at: float = RESTS_AT
    each: Callable[[int], None] | None = None


def descend(energy: Energy, factor: Factor, x: Floats, limits: Limits, past: Past | None = None) -> Outcome:
    """Goes down from x. `past`: of an earlier descent that this one goes on from."""
    value, gradient = energy(x)
    past = deque(maxlen=MEMORY) if past is None else past
    values = [value]
    for step in range(limits.steps):
        if time.monotonic() > limits.until:
            return Outcome(x, value, step, rested=False, past=past)
        direction = _direction(factor, gradient, past)
        slope = dot(gradient, direction)
        if not slope < 0:
            past.clear()
            direction = -factor.solve(gradient)
            slope = dot(gradient, direction)
            if not slope < 0:
                return Outcome(x, value, step, rested=bool(np.isfinite(value)), past=past)
        moved = _search(energy, x, value, direction, slope)
        if moved is None:
            if not past:
                return Outcome(x, value, step, rested=True, past=past)
            past.clear()
            continue
        new_x, value, new_gradient = moved
        s, y = new_x - x, new_gradient - gradient
        curvature = dot(s, y)
        if curvature > 1e-12 * dot(s, s):
            past.append((s, y, 1 / curvature))
        x, gradient = new_x, new_gradient
        values.append(value)
        if limits.each is not None:
            limits.each(step)
        if len(values) > LOOKS_BACK and values[-LOOKS_BACK - 1] - value < max(limits.rests_at * len(x), RESTS_SHARE * abs(value)):
            return Outcome(x, value, step + 1, rested=True, past=past)
    return Outcome(x, value, limits.steps, rested=False, past=past)


def _direction(factor: Factor, gradient: Floats, past: Past) -> Floats:
    """The two-loop recursion."""
    q = gradient.copy()
    shares = []
    for s, y, rho in reversed(past):
        share = rho * dot(s, q)
        shares.append(share)
        q -= share * y
    r = factor.solve(q)
    if past:  # A is told the curvature that the last step met: a quarter of the steps fewer
        s, _, rho = past[-1]
        r *= min(max(dot(s, factor.matrix @ s) * rho, SCALES[0]), SCALES[1])
    for (s, y, rho), share in zip(past, reversed(shares), strict=True):
        r += (share - rho * dot(y, r)) * s
    return -r


def _search(energy: Energy, x: Floats, value: float, direction: Floats, slope: float) -> tuple[Floats, float, Floats] | None:
    """Backtracks from a whole step until the energy falls enough; no node moves further than LARGEST_MOVE."""
    most = float(np.sqrt(np.einsum("ij,ij->i", direction, direction).max()))
    length = min(1.0, LARGEST_MOVE / max(most, 1e-12))
    for _ in range(30):
        new_x = x + length * direction
        new_value, new_gradient = energy(new_x)
        if new_value <= value + 1e-4 * length * slope and np.isfinite(new_value):
            return new_x, new_value, new_gradient
        length *= 0.5
    return None
