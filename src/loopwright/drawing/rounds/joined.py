"""Motifs that are joined, laid flat: each by itself with its sides level, beside the one that it is joined to; a border around them all.

Worked as one fabric only a few of the motifs are there, so that the shape of the whole is none that the finished piece ever has.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from loopwright.drawing.rounds.laid import LaidOut
from loopwright.drawing.rounds.motifs import MEETING, piece_alone, squared
from loopwright.drawing.scene.body import Floats, Ints
from loopwright.drawing.scene.stood import stood
from loopwright.drawing.scene.surface import triangles
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import RelaxOptions, relax
from loopwright.model.fabric import Fabric

_QUARTERS = 4


@dataclass(slots=True)
class Joined:
    """Places of the nodes, (n, 3) mm, right side up.

    `beside`: by the round in which a motif is joined, the row that the motif it is joined to begins with. `lines`: where motifs meet,
    within the border; `border`: the border's rows. `across_mm`: of each motif; `pieces`: all that are laid out.
    """

    points: Floats
    beside: dict[int, int] = field(default_factory=dict)
    lines: tuple[Floats, ...] = ()
    border: frozenset[int] = frozenset()
    across_mm: dict[int, float] = field(default_factory=dict)
    pieces: set[int] = field(default_factory=set)


def joined_flat(laid: LaidOut, sizes: StitchSizes, budget_s: float) -> Joined | None:
    """The layout of a fabric of motifs that are joined; None for another."""
    fabric = laid.fabric
    motifs = [p for p in _pieces(laid) if all(part.kind == "disc" for part in laid.parts if part.piece == p)]
    tied = {p: _ties(fabric, p, motifs) for p in motifs}
    if not laid.flat or not any(tied.values()):
        return None
    found = Joined(np.full_like(laid.body.points, np.nan), pieces=set(motifs))
    nodes_of: dict[int, Ints] = {}
    for piece in motifs:
        nodes, points = _alone(laid, sizes, piece, budget_s)
        found.points[nodes], nodes_of[piece] = points, nodes
        found.across_mm[piece] = float(np.ptp(points[:, :2], axis=0).max())
    turned: set[int] = set()
    for piece in motifs:
        other = piece - 1
        ties = [(s, p) for s, p in tied[piece] if _piece_of(fabric, p) == other]
        if not ties or other not in nodes_of:
            continue
        made, into = (np.unique(laid.body.node_of[[tie[k] for tie in ties]]) for k in (0, 1))
        if other not in turned:
            _turn(found.points, nodes_of[other], into, 0.0)
        _turn(found.points, nodes_of[piece], made, np.pi)
        if _looks(found.points, nodes_of[other], into) % _QUARTERS == 0:
            found.beside[max(fabric.row[s] for s, _ in ties)] = min(i for i, r in enumerate(fabric.rows) if r.piece == other)
            far = found.points[nodes_of[other], 0].max() + found.across_mm[piece] / 2
            found.points[nodes_of[piece], 0] += far - (1 - MEETING) * found.across_mm[piece]
        turned |= {other, piece}
    if fabric.layout is not None:
        _around(laid, found, (fabric.layout[0], fabric.layout[1]), MEETING * found.across_mm[motifs[0]])
    found.points = _filled(laid, found.points)
    return found


def _pieces(laid: LaidOut) -> list[int]:
    return sorted({p.piece for p in laid.parts})


def _piece_of(fabric: Fabric, stitch: int) -> int:
    return fabric.rows[fabric.row[stitch]].piece


def _ties(fabric: Fabric, piece: int, motifs: Sequence[int]) -> list[tuple[int, int]]:
    """The stitches of a motif that are worked into motifs made before, each with what it is worked into."""
    rows = [r for r in fabric.rows if r.piece == piece]
    pairs = ((s, p) for r in rows for s in range(r.start, r.end) for p in fabric.parents(s))
    return [(s, p) for s, p in pairs if p < rows[0].start and _piece_of(fabric, p) in motifs]


def _alone(laid: LaidOut, sizes: StitchSizes, piece: int, budget_s: float) -> tuple[Ints, Floats]:
    """Nodes of a motif, and where they lie by themselves: in the plane, right side up, about its middle, its sides level."""
    start = next(r.start for r in laid.fabric.rows if r.piece == piece)
    alone = piece_alone(laid.fabric, piece)
    body = stood(relax(alone, sizes, RelaxOptions(flat=True, budget_s=budget_s)))
    corners, _ = triangles(body.points, body.faces)
    p = body.points
    up = np.cross(p[corners[:, 1]] - p[corners[:, 0]], p[corners[:, 2]] - p[corners[:, 0]])[:, 2].sum() if len(corners) else 1.0
    points = squared(p if up >= 0 else p * np.asarray([-1.0, 1.0, -1.0]))
    points[:, :2] -= (points[:, :2].min(axis=0) + points[:, :2].max(axis=0)) / 2
    whole, own = laid.body.node_of[start : start + len(alone)], body.node_of
    known = (whole >= 0) & (own >= 0)
    return whole[known], points[own[known]]


def _looks(points: Floats, nodes: Ints, some: Ints, way: float = 0.0) -> int:
    """How many quarters against the clock some of a motif's nodes must go about its middle, to lie that way of it (radians)."""
    x, y = points[some, :2].mean(axis=0) - (points[nodes, :2].min(axis=0) + points[nodes, :2].max(axis=0)) / 2
    return round((way - float(np.arctan2(y, x))) / (np.pi / 2))


def _turn(points: Floats, nodes: Ints, some: Ints, way: float) -> None:
    """Turns a motif by quarters about nought, so that some of its nodes lie that way."""
    for _ in range(_looks(points, nodes, some, way) % _QUARTERS):
        points[nodes, :2] = np.stack((-points[nodes, 1], points[nodes, 0]), axis=1)


def _around(laid: LaidOut, found: Joined, layout: tuple[int, int], side: float) -> None:
    """Sets the border around all motifs, from the upper right corner against the clock, and the lines in which they meet."""
    own = [c for c in laid.rows if c.row.piece not in found.pieces]
    wide, high = layout[0] * side, layout[1] * side
    out = 0.0
    for c in own:
        out += 0.0 if c.assumed else c.height_mm
        nodes = laid.nodes_of(c.index)
        if len(nodes):
            found.points[nodes] = _on_rectangle(np.arange(len(nodes)) / len(nodes), wide, high, out)
    columns = [[(x, -high / 2, 0.0), (x, high / 2, 0.0)] for x in (np.arange(layout[0] + 1) - layout[0] / 2) * side]
    lines = [[(-wide / 2, y, 0.0), (wide / 2, y, 0.0)] for y in (np.arange(layout[1] + 1) - layout[1] / 2) * side]
    found.lines = tuple(np.asarray(line, dtype=np.float64) for line in (*columns, *lines))
    found.border = frozenset(c.index for c in own)
    found.pieces |= {c.row.piece for c in own}


def _on_rectangle(shares: Floats, wide: float, high: float, out: float) -> Floats:
    """Places along a rectangle from its upper right corner against the clock, so far outside it."""
    at = np.cumsum([0.0, wide, high, wide, high])
    x, y = wide / 2, high / 2
    corners = np.asarray([[x, y], [-x, y], [-x, -y], [x, -y], [x, y]]) * (1 + out / np.asarray([x, y]))
    along = shares * at[-1]
    return np.stack([*(np.interp(along, at, corners[:, k]) for k in (0, 1)), np.zeros(len(shares))], axis=1)


def _filled(laid: LaidOut, points: Floats) -> Floats:
    """Nodes that no stitch has, in the middle of what they lie beside; where they were for want of that."""
    for node in np.flatnonzero(np.isnan(points[:, 0])).tolist():
        beside = np.unique(laid.body.faces[(laid.body.faces == node).any(axis=1)])
        known = [n for n in beside.tolist() if n >= 0 and not np.isnan(points[n, 0])]
        points[node] = points[known].mean(axis=0) if known else laid.body.points[node]
    return points
