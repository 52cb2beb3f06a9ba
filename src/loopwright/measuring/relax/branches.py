"""Thumbs and sleeves: tubes worked afterwards out of an opening. The body is relaxed first, then the tube is grown outward from it.

Distances on the graph alone leave such a tube folded inside the body as often as not.
"""

from __future__ import annotations

import numpy as np

from loopwright.measuring.relax.graph import Graph
from loopwright.measuring.relax.starts import mean_posts, phase_of
from loopwright.measuring.relax.tops import Flags, Floats, Ints

# The rim of such an opening belongs to so many rows at most; a round along the ends of more rows goes on from a band.
RIM_ROWS = 3


def branch_rows(graph: Graph, nodes: Ints) -> list[list[int]]:
    """Rows of each branch of a part: a closed round that does not stand on the row made before it, and all that grows from it."""
    along = graph.along
    mine = np.zeros(len(graph), bool)
    mine[nodes] = True
    rows = np.unique(along.row[along.place[nodes[along.place[nodes] >= 0]]])
    child, parent = graph.wales[:, 0], graph.wales[:, 1]
    ok = mine[child] & (along.place[child] >= 0)
    below = np.where(along.place[parent] >= 0, along.row[along.place[parent]], -1)
    links = np.unique(np.stack([along.row[along.place[child[ok]]], below[ok]], axis=1), axis=0)
    stands_on: dict[int, set[int]] = {}
    for row, under in links.tolist():
        stands_on.setdefault(row, set()).add(under)
    found: dict[int, int] = {}
    branches: list[list[int]] = []
    for before, row in zip(rows[:-1].tolist(), rows[1:].tolist(), strict=True):
        under = stands_on.get(row, set())
        homes = {found.get(u, -1) for u in under}
        if len(homes) == 1 and homes != {-1}:
            found[row] = homes.pop()
            branches[found[row]].append(row)
        elif along.closed[row] and 0 < len(under) <= RIM_ROWS and before not in under and -1 not in under:
            found[row] = len(branches)
            branches.append([row])
    return branches


def grow(graph: Graph, rows: list[int], x: Floats, body: Flags) -> None:
    """Lays the rounds of a branch out from their opening, for a body that lies at x (all nodes of the graph, mm; changed in place)."""
    along = graph.along
    first = along.node[along.start[rows[0]] : along.start[rows[0] + 1]]
    opening = _parents(graph, first)
    rim = x[opening]
    middle = rim.mean(axis=0)
    normal = np.cross(rim - middle, np.roll(rim, -1, axis=0) - middle).sum(axis=0)
    away = middle - x[body].mean(axis=0)
    size = float(np.linalg.norm(normal))
    turn = 1.0
    if size < 1e-6 * float(np.einsum("ij,ij->", rim - middle, rim - middle) + 1e-12):
        normal, size = away, max(float(np.linalg.norm(away)), 1e-9)
    elif float(normal @ away) < 0:
        normal, turn = -normal, -1.0
    normal = normal / size
    across = rim[0] - middle
    across = across - normal * float(across @ normal)
    across /= max(float(np.linalg.norm(across)), 1e-9)
    side = turn * np.cross(normal, across)
    angle = np.zeros(len(graph))
    angle[opening] = np.arctan2((rim - middle) @ side, (rim - middle) @ across)
    height, level = mean_posts(graph), 0.0
    for row in rows:
        begin, end = along.start[row], along.start[row + 1]
        ring, length = along.node[begin:end], along.length_mm[begin:end]
        around = max(float(length.sum()), 1e-9)
        own = 2 * np.pi * (np.cumsum(length) - length) / around
        angle[ring] = own + phase_of(graph, ring, own, angle)
        level += height[row]
        out = np.outer(np.cos(angle[ring]), across) + np.outer(np.sin(angle[ring]), side)
        x[ring] = middle + level * normal + around / (2 * np.pi) * out


def _parents(graph: Graph, ring: Ints) -> Ints:
    """What a round stands on, in its order."""
    place = np.full(len(graph), -1)
    place[ring] = np.arange(len(ring))
    at = np.flatnonzero(place[graph.wales[:, 0]] >= 0)
    at = at[np.argsort(place[graph.wales[at, 0]], kind="stable")]
    parents = graph.wales[at, 1]
    _, first = np.unique(parents, return_index=True)
    taken: Ints = parents[np.sort(first)]
    return taken
