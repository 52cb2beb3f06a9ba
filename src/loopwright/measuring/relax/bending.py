"""Bending as one constant matrix: quadratic isometric hinges from rest lengths.

Per inner edge 0.5 * 3 / (A0 + A1) * |sum K_i x_i|^2 with K from cotangents of the rest shape: "A Quadratic Bending Model for Inextensible
Surfaces", Bergou, Wardetzky, Harmon, Zorin, Grinspun 2006. Only inner edges have hinges, so that free edges come out right.
"""

from __future__ import annotations

import numpy as np
from scipy.sparse import csr_matrix

from loopwright.measuring.relax.graph import Hinges
from loopwright.measuring.relax.tops import Floats, Ints

# Angles of a rest triangle stay between about 8 and 172 degrees: lengths of a real fabric need not close.
_STEEPEST = 0.99


def corner_cosines(lengths: Floats) -> Floats:
    """(t, 3) cosines of the corners 0, 1, 2 of triangles with edges 01, 12, 20, within what a triangle can have."""
    a, b, c = lengths[:, 1], lengths[:, 2], lengths[:, 0]  # opposite to the corners 0, 1, 2
    two = np.maximum(1e-12, 2 * np.stack([b * c, c * a, a * b], axis=1))
    cosines = np.stack([b * b + c * c - a * a, c * c + a * a - b * b, a * a + b * b - c * c], axis=1) / two
    clipped: Floats = np.clip(cosines, -_STEEPEST, _STEEPEST)
    return clipped


def bending_rows(hinges: tuple[Hinges, ...], nodes: int, unit_mm: float) -> csr_matrix:
    """The matrix H with Q = H^T H for a bending stiffness of 1: one row per hinge, lengths in units of `unit_mm`."""
    rows: list[Ints] = []
    cols: list[Ints] = []
    values: list[Floats] = []
    count = 0
    for triangles in hinges:
        quads, k, weight = _one(triangles, unit_mm)
        weight = np.sqrt(weight / len(hinges))
        rows.append(np.repeat(np.arange(count, count + len(quads)), 4))
        cols.append(quads.ravel())
        values.append((k * weight[:, None]).ravel())
        count += len(quads)
    shape = (count, nodes)
    return csr_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(cols))), shape=shape)


def _one(triangles: Hinges, unit_mm: float) -> tuple[Ints, Floats, Floats]:
    """Hinges of one triangulation: their four nodes, K, and 3 / (A0 + A1) by the hinge's own weight."""
    t, lengths = triangles.nodes, triangles.lengths_mm / unit_mm
    if not len(t):
        return np.zeros((0, 4), np.int64), np.zeros((0, 4)), np.zeros(0)
    cosines = corner_cosines(lengths)
    sines = np.sqrt(1 - cosines**2)
    cot = cosines / sines
    area = np.maximum(0.5 * lengths[:, 0] * lengths[:, 2] * sines[:, 0], 1e-3)
    begin, end, third = t.ravel(), t[:, [1, 2, 0]].ravel(), t[:, [2, 0, 1]].ravel()
    cot_begin, cot_end = cot.ravel(), cot[:, [1, 2, 0]].ravel()
    face = np.repeat(np.arange(len(t)), 3)
    swap = begin > end
    low, high = np.where(swap, end, begin), np.where(swap, begin, end)
    cot_low, cot_high = np.where(swap, cot_end, cot_begin), np.where(swap, cot_begin, cot_end)
    key = low * (int(t.max()) + 1) + high
    by = np.argsort(key, kind="stable")
    one = np.flatnonzero(key[by][1:] == key[by][:-1])
    i, j = by[one], by[one + 1]
    proper = (low[i] != high[i]) & (third[i] != third[j]) & (third[i] != low[i]) & (third[j] != low[j])
    i, j = i[proper], j[proper]
    quads = np.stack([low[i], high[i], third[i], third[j]], axis=1)
    k = np.stack([cot_high[i] + cot_high[j], cot_low[i] + cot_low[j], -cot_low[i] - cot_high[i], -cot_low[j] - cot_high[j]], axis=1)
    weight = 3 / (area[face[i]] + area[face[j]]) * np.minimum(triangles.weight[face[i]], triangles.weight[face[j]])
    return quads, k, weight
