"""Motifs that are joined: the first as it lies flat, again and again side by side, as they are laid out."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loopwright.drawing.scene.body import Floats
from loopwright.drawing.scene.buffers import Buffers
from loopwright.model.fabric import Fabric

MOST = 24  # motifs along a side that are drawn
TURNS = 90  # degrees that are tried, one by one
MEETING = 0.985  # of its width that a motif stands from the next: their edges meet


def first_motif(fabric: Fabric) -> Fabric:
    """The first piece of a fabric by itself."""
    rows = [r for r in fabric.rows if r.piece == fabric.rows[0].piece]
    end = next((r.start for r in fabric.rows if r.piece != rows[0].piece), len(fabric))
    columns = ("kind", "row", "into", "many", "place", "role", "colour", "origin", "origin_end", "round", "inner")
    cut = {name: getattr(fabric, name)[:end] for name in columns}
    extra = {s: p for s, p in fabric.extra.items() if s < end}
    counts_as = {s: k for s, k in fabric.counts_as.items() if s < end}
    return replace(fabric, **cut, extra=extra, counts_as=counts_as, rows=fabric.rows[: len(rows)], layout=None)


def tiled(motif: Buffers, across: int, down: int) -> Buffers:
    """Copies of a motif, seen from above, its sides level and upright, each beside the one before."""
    positions, normals = _squared(motif.positions.astype(np.float64)), motif.normals
    wide, high = (float(np.ptp(positions[:, k])) for k in (0, 1))
    wide, high = MEETING * wide, MEETING * high
    steps = [(x * wide, -y * high) for y in range(min(down, MOST)) for x in range(min(across, MOST))]
    vertices, many = len(positions), len(steps)
    moved = np.concatenate([positions + np.asarray((x, y, 0.0)) for x, y in steps])
    corners = np.concatenate([motif.indices + np.uint32(k * vertices) for k in range(many)])

    return replace(
        motif, positions=moved.astype(np.float32), normals=np.tile(normals, (many, 1)), colours=np.tile(motif.colours, (many, 1)),
        indices=corners, triangle_side=np.tile(motif.triangle_side, many), sheet=np.tile(motif.sheet, many),
        vertex_stitch=np.tile(motif.vertex_stitch, many), vertex_row=np.tile(motif.vertex_row, many),
        triangle_stitch=np.tile(motif.triangle_stitch, many), triangle_row=np.tile(motif.triangle_row, many),
    )


def _squared(points: Floats) -> Floats:
    """Turned about the line of sight so that the box around it is smallest: its sides lie level and upright."""

    def box(degrees: int) -> float:
        turned = _turned(points, degrees)
        return float(np.ptp(turned[:, 0]) * np.ptp(turned[:, 1]))

    return _turned(points, min(range(TURNS), key=box))


def _turned(points: Floats, degrees: int) -> Floats:
    angle = np.radians(degrees)
    found = points.copy()
    found[:, 0] = points[:, 0] * np.cos(angle) - points[:, 1] * np.sin(angle)
    found[:, 1] = points[:, 0] * np.sin(angle) + points[:, 1] * np.cos(angle)
    return found
