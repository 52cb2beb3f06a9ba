"""Motifs that are joined: the first as it lies flat, again and again side by side, as they are laid out."""

from __future__ import annotations

from array import array
from dataclasses import replace

import numpy as np

from loopwright.drawing.scene.body import Floats
from loopwright.drawing.scene.buffers import Buffers
from loopwright.model.fabric import Fabric

_COLUMNS = ("kind", "place", "role", "colour", "origin", "origin_end", "round", "inner")
MOST = 24  # motifs along a side that are drawn
TURNS = 90  # degrees that are tried, one by one
MEETING = 0.985  # of its width that a motif stands from the next: their edges meet


def first_motif(fabric: Fabric) -> Fabric:
    """The first piece of a fabric by itself."""
    return piece_alone(fabric, fabric.rows[0].piece)


def piece_alone(fabric: Fabric, piece: int) -> Fabric:
    """A piece by itself: what it was worked into of others is left out."""
    first = next(i for i, r in enumerate(fabric.rows) if r.piece == piece)
    rows = [r for r in fabric.rows if r.piece == piece]
    start, end = rows[0].start, rows[-1].end
    cut = {name: getattr(fabric, name)[start:end] for name in _COLUMNS}
    cut["row"] = array("i", (r - first for r in fabric.row[start:end]))
    cut["into"] = array("i", (p - start if p >= start else -1 for p in fabric.into[start:end]))
    cut["many"] = array("h", (m if p >= start else 0 for m, p in zip(fabric.many[start:end], fabric.into[start:end], strict=True)))
    extra = {s - start: tuple(p - start for p in more if p >= start) for s, more in fabric.extra.items() if start <= s < end}
    counts_as = {s - start: k for s, k in fabric.counts_as.items() if start <= s < end}
    moved = [replace(r, start=r.start - start, end=r.end - start, piece=0, borrowed=tuple(s - start for s in r.borrowed)) for r in rows]
    return replace(fabric, **cut, extra=extra, counts_as=counts_as, rows=moved, layout=None)


def tiled(motif: Buffers, across: int, down: int) -> Buffers:
    """Copies of a motif, seen from above, its sides level and upright, each beside the one before."""
    positions, normals = squared(motif.positions.astype(np.float64)), motif.normals
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


def squared(points: Floats) -> Floats:
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
