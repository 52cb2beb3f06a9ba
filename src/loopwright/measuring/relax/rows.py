"""Where work in rows begins: row over row in the plane, each as it lies on the one below; edgings beside the rows they go along."""

from __future__ import annotations

import numpy as np

from loopwright.measuring.relax.graph import Graph
from loopwright.measuring.relax.starts import mean_posts
from loopwright.measuring.relax.tops import Floats, Ints


def by_rows(graph: Graph, nodes: Ints) -> Floats | None:
    """Points in mm, (all nodes of the graph, 3), for a part made of open rows only; None for anything else."""
    along = graph.along
    rows = np.unique(along.row[along.place[nodes[along.place[nodes] >= 0]]])
    if len(rows) < 2 or along.closed[rows].any() or (along.place[nodes] < 0).any():
        return None
    child, parent = graph.wales[:, 0], graph.wales[:, 1]
    child_row = np.where(along.place[child] >= 0, along.row[np.maximum(along.place[child], 0)], -1)
    by = np.argsort(child_row, kind="stable")
    cuts = np.searchsorted(child_row[by], np.arange(len(along.closed) + 1))
    height = mean_posts(graph)
    x = np.zeros((len(graph), 3))
    middle = 0.0
    for number, row in enumerate(rows.tolist()):
        begin, end = int(along.start[row]), int(along.start[row + 1])
        top, length = along.node[begin:end], along.length_mm[begin:end]
        way = np.cumsum(length) - length
        at = by[cuts[row] : cuts[row + 1]]
        if not number or not len(at):
            x[top, 0] = way
            middle = float(way.mean()) if not number else middle
            continue
        kids, feet = child[at], parent[at]
        below = along.row[along.place[feet]] if (along.place[feet] >= 0).all() else np.arange(3)
        if len(np.unique(below)) > 2:
            _beside(x, kids, feet, height[row], middle)
            continue
        own = np.zeros(len(graph))
        own[top] = way
        x[top, 0], x[top, 1] = _upon(way, own[kids], x[feet]), float(x[feet, 1].max()) + height[row]
    return x


def _upon(way: Floats, own: Floats, feet: Floats) -> Floats:
    """Places along the row: forward or back as its feet run, and over their middle."""
    lag = (own - own.mean()) @ (feet[:, 0] - feet[:, 0].mean())
    sign = 1.0 if lag >= 0 else -1.0
    over: Floats = feet[:, 0].mean() + sign * (way - own.mean())
    return over


def _beside(x: Floats, kids: Ints, feet: Ints, height: float, middle: float) -> None:
    """Stitches worked into row ends: outward from the side they stand on."""
    x[kids, 0] = x[feet, 0] + np.where(x[feet, 0] >= middle, height, -height)
    x[kids, 1] = x[feet, 1]
