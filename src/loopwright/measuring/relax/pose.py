"""How a relaxed part is set down: what is flat lies with its right side up, anything else stands with its narrower end up."""

from __future__ import annotations

import numpy as np

from loopwright.measuring.relax.branches import branch_rows
from loopwright.measuring.relax.part import Part
from loopwright.measuring.relax.tops import Floats, Ints

# Flat: thinner than this share of its length. Upright: first and last round further apart than this share of it.
FLAT = 0.12
UPRIGHT = 0.2


def posed(part: Part, x: Floats) -> Floats:
    """Turned about its middle, never mirrored: the longest way along x, the shortest or the axis along z."""
    x = x - x.mean(axis=0)
    if len(x) < 3:
        return x
    _, _, axes = np.linalg.svd(x, full_matrices=False)
    up = _axis(part, x)
    if not stands(part, x):
        up = axes[2] * (1.0 if float(axes[2] @ _facing(part, x)) >= 0 else -1.0)
    z = up / max(float(np.linalg.norm(up)), 1e-12)
    rest = x - np.outer(x @ z, z)
    _, _, across = np.linalg.svd(rest, full_matrices=False)
    wide = across[0] - z * float(across[0] @ z)
    wide /= max(float(np.linalg.norm(wide)), 1e-12)
    turned: Floats = x @ np.stack([wide, np.cross(z, wide), z], axis=1)
    return turned


def stands(part: Part, x: Floats) -> bool:
    """Whether it stands about an axis rather than lies."""
    _, spread, axes = np.linalg.svd(x - x.mean(axis=0), full_matrices=False)
    return len(spread) > 2 and bool(spread[2] >= FLAT * spread[0] and np.linalg.norm(_axis(part, x)) >= UPRIGHT * np.ptp(x @ axes[0]))


def _facing(part: Part, x: Floats) -> Floats:
    """Sum of the faces' normals by area."""
    t = part.tris
    total: Floats = np.cross(x[t[:, 1]] - x[t[:, 0]], x[t[:, 2]] - x[t[:, 0]]).sum(axis=0) if len(t) else np.array([0.0, 0.0, 1.0])
    return total


def _axis(part: Part, x: Floats) -> Floats:
    """From its wider to its narrower end; an oval that is worked around a chain lies below."""
    along = part.graph.along
    place = along.place[part.nodes]
    rows = np.unique(along.row[place[place >= 0]])
    branched = {row for rows_ in branch_rows(part.graph, part.nodes) for row in rows_}
    rows = np.array([r for r in rows if int(r) not in branched])
    rounds = rows[along.closed[rows]]
    oval = len(rows) > 1 and not along.closed[rows[0]] and bool(along.closed[rows[1]])
    if len(rounds) * 2 > len(rows) or (len(rounds) > 1 and not oval and along.closed[rows[-1]]):
        rows = rounds
    if len(rows) < 2:
        return np.zeros(3)
    local = np.full(len(part.graph), -1)
    local[part.nodes] = np.arange(len(part.nodes))
    third = max(1, len(rows) // 3)
    begun, ended = (_rows_of(part, r) for r in (rows[:third], rows[-third:]))
    way: Floats = x[local[along.node[begun]]].mean(axis=0) - x[local[along.node[ended]]].mean(axis=0)
    wide_first, wide_last = (float(along.length_mm[places].sum()) / third for places in (begun, ended))
    return -way if oval or wide_last < wide_first else way


def _rows_of(part: Part, rows: Ints) -> Ints:
    """Places along the tops of some rows."""
    start = part.graph.along.start
    return np.concatenate([np.arange(start[r], start[r + 1]) for r in rows])
