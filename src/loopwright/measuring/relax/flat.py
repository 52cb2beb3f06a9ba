"""Laid flat and blocked: in the plane where the fabric can lie in it without folding, pressed into layers where it cannot."""

from __future__ import annotations

import time

import numpy as np

from loopwright.measuring.relax.contact import LARGEST, Contact
from loopwright.measuring.relax.descent import Factor, Limits, descend
from loopwright.measuring.relax.energy import Force, strains
from loopwright.measuring.relax.part import Part
from loopwright.measuring.relax.pose import posed, stands
from loopwright.measuring.relax.rows import by_rows
from loopwright.measuring.relax.solve import LARGEST_PART, LOOK_STEPS, Solver
from loopwright.measuring.relax.starts import by_distance, by_rounds
from loopwright.measuring.relax.tops import Floats, Ints

# What would be strained by more than this share in the plane lies in two layers, as a hat does on a table.
STRAINED = 0.1
# A triangle is kept from shrinking below this share of its area, and from turning over at all.
LEAST_AREA = 0.25
KEEP = 4.0
# A pressing board: stiffness against height, against 1 for an edge.
BOARD = 0.03
PRESSES = 12
# In the plane nothing waits to buckle: a coarser rule for rest than in space.
PLANE_RESTS_AT = 1e-7
PLANE_STEPS = 800


def lay_flat(solver: Solver) -> Floats:
    """Points of a part laid flat, (n, 3) in stitch widths, z = 0 in one layer. Sets the solver's `why` where it lies in layers."""
    part = solver.part
    if len(part) == 1:
        return np.zeros((1, 3))
    x = _in_plane(solver) if _plane_enough(part) else None
    if x is None:
        return _pressed(solver)
    x -= x.mean(axis=0)
    _, _, axes = np.linalg.svd(x, full_matrices=False)
    turned = x @ axes.T
    if _areas(part.tris, turned).sum() < 0:  # the right side lies up
        turned[:, 1] *= -1
    return np.column_stack([turned, np.zeros(len(x))])


def _plane_enough(part: Part) -> bool:
    """Whether the part is a disc or a ring of fabric: anything else has no place in the plane."""
    tris = part.hinges[0].nodes
    if not len(tris):
        return True
    edges = np.sort(np.concatenate([tris[:, [0, 1]], tris[:, [1, 2]], tris[:, [2, 0]]]), axis=1)
    _, count = np.unique(edges[:, 0] * len(part) + edges[:, 1], return_counts=True)
    euler = len(np.unique(tris)) - len(count) + len(tris)
    return euler >= 0 and bool((count == 1).any())


def _in_plane(solver: Solver) -> Floats | None:
    """Solved with two coordinates; None where it stays folded."""
    part = solver.part
    rng = np.random.default_rng(solver.options.seed)
    if len(part) > LARGEST_PART:
        return None
    for x in _plane_starts(part):
        begun = x + rng.normal(0, 1e-3, x.shape)
        guard = Guard(part.tris, begun)
        solver.energy.more = [guard] if len(part.tris) else []
        factor = Factor(solver.energy, begun)
        found = descend(solver.energy, factor, begun, Limits(PLANE_STEPS, solver.until, rests_at=PLANE_RESTS_AT))
        strain = np.abs(strains(found.x, part.pairs, part.rest)).mean()
        if guard.folds(found.x) == 0 and strain < STRAINED:
            solver.why = "" if found.rested else "time" if time.monotonic() >= solver.until else "steps"
            return found.x
    return None


def _plane_starts(part: Part) -> list[Floats]:
    """Rings about a middle for closed rounds; row over row; by distances: the least strained first."""
    rounds = by_rounds(part.graph, part.nodes, flat=True)
    found = [] if rounds is None else [rounds[part.nodes][:, :2] / part.unit_mm]
    rows = by_rows(part.graph, part.nodes)
    found += [] if rows is None else [rows[part.nodes][:, :2] / part.unit_mm]
    found.append(by_distance(part.pairs, part.rest, len(part), 2))
    return sorted(found, key=lambda x: float(np.square(strains(x, part.pairs, part.rest)).sum()))


class Guard:
    """Keeps triangles from turning over: a force on those that shrink, on the side to which most of them face at the start."""

    def __init__(self, tris: Ints, x: Floats) -> None:
        self.tris = tris
        area = _areas(tris, x)
        self.side = 1.0 if area.sum() >= 0 else -1.0
        usual = float(np.median(np.abs(area))) if len(area) else 1.0
        self.least = LEAST_AREA * max(usual, 1e-6)

    def folds(self, x: Floats) -> int:
        """How many triangles are turned over."""
        return int((_areas(self.tris, x) * self.side < 0).sum())

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Energy and gradient of triangles smaller than they should be."""
        under = np.maximum(self.least - self.side * _areas(self.tris, x), 0.0)
        small = np.flatnonzero(under > 0)
        gradient = np.zeros_like(x)
        if not len(small):
            return 0.0, gradient
        t, pull = self.tris[small], -KEEP * self.side * under[small]
        for i in range(3):
            b, c = x[t[:, (i + 1) % 3]], x[t[:, (i + 2) % 3]]
            by = np.stack([b[:, 1] - c[:, 1], c[:, 0] - b[:, 0]], axis=1) / 2
            np.add.at(gradient, t[:, i], by * pull[:, None])
        return 0.5 * KEEP * float(np.square(under).sum()), gradient


def _areas(tris: Ints, x: Floats) -> Floats:
    """Signed areas in the plane."""
    a, b, c = (x[tris[:, i]] for i in range(3))
    area: Floats = ((b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (b[:, 1] - a[:, 1]) * (c[:, 0] - a[:, 0])) / 2
    return area


class Board:
    """Presses everything onto z = 0."""

    def __call__(self, x: Floats) -> tuple[float, Floats]:
        """Energy and gradient."""
        gradient = np.zeros_like(x)
        gradient[:, 2] = BOARD * x[:, 2]
        return 0.5 * BOARD * float(np.square(x[:, 2]).sum()), gradient


def _pressed(solver: Solver) -> Floats:
    """The shape in space, laid on its side and pressed into layers that do not pass through one another."""
    solver.energy.more = []
    x = posed(solver.part, solver.run())
    if solver.why in ("too large", "collapsed"):
        return x
    if stands(solver.part, x):
        x = np.column_stack([x[:, 0], x[:, 2], -x[:, 1]])
    contact = Contact(solver.part.pairs, len(x)) if len(x) <= LARGEST else None
    factor = Factor(solver.energy, x)
    forces: list[Force] = [Board()]
    for _ in range(PRESSES):
        solver.energy.more = [*forces, contact] if contact is not None and contact.look(x) else forces
        found = descend(solver.energy, factor, x, Limits(LOOK_STEPS, solver.until))
        x = found.x if np.isfinite(found.x).all() else x
    solver.why = solver.why or "lies in layers"
    return x
