"""The relaxed shape and what it may be asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import field

import numpy as np

from loopwright.measuring.relax.tops import Floats, Ints
from loopwright.model.measures import ShapeMeasures
from loopwright.record import record

# How stiff the fabric bends against how stiff it stretches, in stitch widths: t^2 / 12 of a plate half a width thick is 0.02; a judgement.
BENDING = 0.03
# What stuffing presses with where no pressure is said: a ball of 24 stitches comes out nearly round (our own trials; no source).
PRESSURE = 1.0


@record
class RelaxOptions:
    """How to relax.

    `flat`: laid out and blocked, in the plane. `stuffed`: the pieces that are filled, with their pressure (in stitch widths) or without.
    `budget_s`: seconds of the clock after which the shape is given as it is. `seed`: of the small disorder that starts are given; the same
    seed gives the same shape. `bending`: stiffness. `progress`: called with the share that is done, 0 to 1.
    `drawn`: rounds, by index of the fabric's rows, that are drawn together at the end.
    """

    flat: bool = False
    stuffed: Mapping[int, float] | frozenset[int] = frozenset()
    budget_s: float = 20.0
    seed: int = 1
    bending: float = BENDING
    progress: Callable[[float], None] | None = None
    drawn: frozenset[int] = frozenset()

    def pressure(self, piece: int) -> float:
        """What a piece's stuffing presses with, 0 for none."""
        if isinstance(self.stuffed, Mapping):
            return float(self.stuffed.get(piece, 0.0))
        return PRESSURE if piece in self.stuffed else 0.0


@record
class Shape:
    """A fabric's shape; n nodes, m edges, lengths in mm.

    `points`: (n, 3). `node_of`: (stitches,) node of each stitch, -1 where it has none (turning chains, joins, picots). `pairs`: (m, 2)
    edges; `rest_mm`, `strain`: (m,) their rest length and (length - rest) / rest. `faces`: (f, 4) quadrangles, -1 in the fourth place of
    a triangle, right side outward; holes have none. `face_stitch`: (f,) the stitch that owns the face. `piece`: (n,). `settled`: the
    solver came to rest everywhere; else `why` says what stopped it: "time", "steps", "no more progress", "too large", "collapsed", "no
    stitches", "lengths do not fit together", "stuffing in an open piece", "lies in layers" (flat only). `ends`: (e, 2) ends of open rows
    with their neighbours; `end_mm`: (e,) how far their stitches reach beyond the top.
    """

    points: Floats
    node_of: Ints
    pairs: Ints
    rest_mm: Floats
    strain: Floats
    faces: Ints
    face_stitch: Ints
    piece: Ints
    settled: bool
    why: str = ""
    ends: Ints = field(default_factory=lambda: np.zeros((0, 2), np.int64))
    end_mm: Floats = field(default_factory=lambda: np.zeros(0))

    def measures(self) -> ShapeMeasures:
        """The box along the principal axes, half a stitch beyond the ends of open rows included, and the strain; zeros for no stitches."""
        share = np.abs(self.strain)
        mean, most = (float(share.mean()), float(share.max())) if len(share) else (0.0, 0.0)
        size = self.box_mm()
        return ShapeMeasures(*size, mean, most, self.settled)

    def box_mm(self) -> tuple[float, float, float]:
        """Width, depth and height of the box along the principal axes, the largest first."""
        if not len(self.points):
            return 0.0, 0.0, 0.0
        out = self.points[self.ends[:, 0]] - self.points[self.ends[:, 1]]
        length = np.maximum(np.linalg.norm(out, axis=1), 1e-12)
        beyond = self.points[self.ends[:, 0]] + out * (self.end_mm / length)[:, None]
        points = np.concatenate([self.points, beyond])
        _, _, axes = np.linalg.svd(points - points.mean(axis=0), full_matrices=False)
        along = points @ axes.T
        size = sorted((float(s) for s in along.max(axis=0) - along.min(axis=0)), reverse=True)
        while len(size) < 3:
            size.append(0.0)
        return size[0], size[1], size[2]
