"""Where a shape begins: rounds as rings, rows as they lie, distances on the graph for the rest."""

from __future__ import annotations

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix
from scipy.sparse.csgraph import connected_components, dijkstra

from loopwright.measuring.relax.graph import Graph
from loopwright.measuring.relax.part import Part
from loopwright.measuring.relax.tops import Floats, Ints

PIVOTS = 20


def distances(pairs: Ints, rest: Floats, nodes: int) -> csr_matrix:
    """The graph as a matrix of lengths, both ways."""
    i, j = np.concatenate([pairs[:, 0], pairs[:, 1]]), np.concatenate([pairs[:, 1], pairs[:, 0]])
    return coo_matrix((np.concatenate([rest, rest]), (i, j)), shape=(nodes, nodes)).tocsr()


def by_distance(pairs: Ints, rest: Floats, nodes: int, dimensions: int = 3) -> Floats:
    """Pivot MDS on the rest lengths, scaled to them. The graph must hang together.

    "Eigensolver Methods for Progressive Multidimensional Scaling of Large Data", Brandes and Pich 2006.
    """
    if nodes == 1:
        return np.zeros((1, dimensions))
    graph = distances(pairs, rest, nodes)
    columns = []
    nearest = np.full(nodes, np.inf)
    pivot = 0
    for _ in range(min(PIVOTS, nodes)):
        column = dijkstra(graph, directed=True, indices=pivot)
        column[~np.isfinite(column)] = 0.0
        columns.append(column)
        nearest = np.minimum(nearest, column)
        pivot = int(nearest.argmax())
    squared = np.stack(columns, axis=1) ** 2
    centred = -0.5 * (squared - squared.mean(axis=0) - squared.mean(axis=1)[:, None] + squared.mean())
    _, vectors = np.linalg.eigh(centred.T @ centred)
    axes = vectors[:, ::-1][:, :dimensions]
    x = centred @ axes
    if x.shape[1] < dimensions:
        x = np.pad(x, ((0, 0), (0, dimensions - x.shape[1])))
    norm = np.sqrt(np.sqrt(np.maximum(np.linalg.eigvalsh(centred.T @ centred)[::-1][:dimensions], 0.0)))
    span = np.maximum(np.linalg.norm(x, axis=0), 1e-9)
    x = x * (np.pad(norm, (0, dimensions - len(norm))) / span)
    return _scaled(x, pairs, rest)


def hangs_together(pairs: Ints, nodes: int) -> bool:
    """Whether every node can be reached from every other."""
    ones = np.ones(len(pairs))
    return int(connected_components(coo_matrix((ones, (pairs[:, 0], pairs[:, 1])), shape=(nodes, nodes)), directed=False)[0]) == 1


def saddle(part: Part, x: Floats, ringed: bool) -> Floats:
    """A second beginning for what has stitches to spare: nearly flat, with two lobes, z = r^2 / 4R cos 2t."""
    if ringed:
        middle = x[:, :2].mean(axis=0)
        angle = np.arctan2(x[:, 1] - middle[1], x[:, 0] - middle[0])
        pivot = int(np.hypot(*(x[:, :2] - middle).T).argmin())
        r = dijkstra(distances(part.pairs, part.rest, len(part)), indices=pivot)
        flat = np.stack([r * np.cos(angle), r * np.sin(angle)], axis=1)
    else:
        flat = by_distance(part.pairs, part.rest, len(part), 2)
        flat -= flat.mean(axis=0)
    r, angle = np.hypot(*flat.T), np.arctan2(flat[:, 1], flat[:, 0])
    z = 0.25 * r * r / max(float(r.max()), 1e-9) * np.cos(2 * angle)
    return np.column_stack([flat, z])


def _scaled(x: Floats, pairs: Ints, rest: Floats) -> Floats:
    length = np.linalg.norm(x[pairs[:, 0]] - x[pairs[:, 1]], axis=1)
    total = float(length @ length)
    return x * (float(length @ rest) / total) if total > 0 else x


def by_rounds(graph: Graph, nodes: Ints, *, flat: bool = False) -> Floats | None:
    """Rings about one axis, for a part (its nodes) that is made of closed rounds only, each on the one before; None for anything else.

    r = N w / 2 pi, the step up is what the row height leaves of the step out; where that is more than the height, the ring waves.
    `flat`: each ring a row height outside the one before, in the plane.
    """
    rows = _rounds(graph, nodes)
    if rows is None:
        return None
    x = np.zeros((len(graph), 3))
    angle = np.zeros(len(graph))
    height_at = mean_posts(graph)
    radius, level, sign = 0.0, 0.0, 1.0
    for number, (row, begin, end) in enumerate(rows):
        ring = graph.along.node[begin:end]
        length = graph.along.length_mm[begin:end]
        around = float(length.sum())
        h = height_at[row]
        own = 2 * np.pi * (np.cumsum(length) - length) / max(around, 1e-9)
        wanted = around / (2 * np.pi)
        step = h if flat else wanted - radius
        if number == 0 and not h:
            radius, step, excess = wanted, 0.0, 1.0
        else:
            excess = wanted / max(radius + h, 1e-9) if step > h else 1.0
            step = float(np.clip(step, -h, h))
            radius = max(radius + step, 0.05 * graph.width_mm)
        level += sign * np.sqrt(max(h * h - step * step, 0.0))
        angle[ring] = own + phase_of(graph, ring, own, angle)
        wave = _wave(angle[ring], radius, excess)
        x[ring] = np.stack([radius * np.cos(angle[ring]), radius * np.sin(angle[ring]), level + wave], axis=1)
    return x


def _wave(angle: Floats, radius: float, excess: float) -> Floats:
    """Two waves around that take up a ring's excess length (1: none)."""
    if excess <= 1.0:
        return np.zeros(len(angle))
    wave: Floats = 2 * radius * np.sqrt(excess - 1) / 2 * np.cos(2 * angle)
    return wave


def _rounds(graph: Graph, nodes: Ints) -> list[tuple[int, int, int]] | None:
    """(row, begin, end) of a part's tops, when all are closed and each stands on the one before."""
    along = graph.along
    rows = np.unique(along.row[along.place[nodes[along.place[nodes] >= 0]]])
    if not len(rows) or not along.closed[rows].all():
        return None
    found = [(int(r), int(along.start[r]), int(along.start[r + 1])) for r in rows]
    child, parent = graph.wales[:, 0], graph.wales[:, 1]
    mine = np.zeros(len(graph), bool)
    mine[nodes] = True
    inside = mine[child] & (along.place[parent] >= 0)
    order = np.full(len(along.closed), -1)
    order[rows] = np.arange(len(rows))
    if (order[along.row[along.place[child[inside]]]] - order[along.row[along.place[parent[inside]]]] != 1).any():
        return None
    return found


def mean_posts(graph: Graph) -> dict[int, float]:
    """Mean length of the posts of each row."""
    place = graph.along.place[graph.wales[:, 0]]
    ok = place >= 0
    row = graph.along.row[place[ok]]
    total = np.bincount(row, weights=graph.wale_mm[ok], minlength=len(graph.along.closed))
    count = np.maximum(np.bincount(row, minlength=len(graph.along.closed)), 1)
    return dict(enumerate((total / count).tolist()))


def phase_of(graph: Graph, ring: Ints, own: Floats, angle: Floats) -> float:
    """By how much a ring is turned so that its stitches stand over what they were worked into."""
    place = np.full(len(graph), -1)
    place[ring] = np.arange(len(ring))
    at = np.flatnonzero(place[graph.wales[:, 0]] >= 0)
    at = at[graph.along.place[graph.wales[at, 1]] >= 0]
    if not len(at):
        return 0.0
    turn = angle[graph.wales[at, 1]] - own[place[graph.wales[at, 0]]]
    return float(np.arctan2(np.sin(turn).sum(), np.cos(turn).sum()))
