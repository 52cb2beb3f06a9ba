"""A part of a fabric that hangs together, by its own numbers and in stitch widths."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from scipy.sparse import coo_matrix, csr_matrix
from scipy.sparse.csgraph import connected_components

from loopwright.measuring.relax.bending import bending_rows
from loopwright.measuring.relax.energy import Energy
from loopwright.measuring.relax.graph import Graph, Hinges
from loopwright.measuring.relax.tops import Flags, Floats, Ints


@dataclass(slots=True)
class Part:
    """One part; n nodes.

    `nodes`: (n,) its nodes in the graph. `pairs`, `rest`: its edges in stitch widths; `soft_pairs`, `soft_rest`, `soft`: its braces.
    `tris`: (t, 3) its filled faces, right side outward. `hinges`: its triangles. `unit_mm`: a stitch width.
    """

    graph: Graph
    nodes: Ints
    pairs: Ints
    rest: Floats
    soft_pairs: Ints
    soft_rest: Floats
    soft: Floats
    tris: Ints
    hinges: tuple[Hinges, ...]
    unit_mm: float

    def __len__(self) -> int:
        return len(self.nodes)

    def energy(self, bending: float) -> Energy:
        """Springs and bending."""
        rows = bending_rows(self.hinges, len(self), self.unit_mm)
        stiffness = (rows.T @ rows).tocsr() * bending
        pairs, rest = np.concatenate([self.pairs, self.soft_pairs]), np.concatenate([self.rest, self.soft_rest])
        return Energy(pairs, rest, np.concatenate([np.ones(len(self.pairs)), self.soft]), csr_matrix(stiffness))


def parts_of(graph: Graph) -> list[Part]:
    """The parts that hang together, in the order of their first nodes."""
    n = len(graph)
    if not n:
        return []
    ones = np.ones(len(graph.pairs))
    count, label = connected_components(coo_matrix((ones, (graph.pairs[:, 0], graph.pairs[:, 1])), shape=(n, n)), directed=False)
    if count == 1:
        return [part_of(graph, np.arange(n))]
    by = np.argsort(label, kind="stable")
    cuts = np.flatnonzero(np.diff(label[by])) + 1
    return [part_of(graph, nodes) for nodes in np.split(by, cuts)]


def part_of(graph: Graph, nodes: Ints) -> Part:
    """The part of the graph that some nodes make."""
    local = np.full(len(graph) + 1, -1, np.int64)
    local[nodes] = np.arange(len(nodes))
    unit = graph.width_mm

    def inside(rows: Ints) -> Flags:
        return np.asarray((local[rows] >= 0).all(axis=1), dtype=bool)

    e, s, f = inside(graph.pairs), inside(graph.soft_pairs), inside(graph.faces[:, :3])
    faces = graph.faces[f]
    second = faces[faces[:, 3] >= 0][:, [0, 2, 3]]
    tris = local[np.concatenate([faces[:, :3], second])]
    hinges = tuple(
        Hinges(local[h.nodes[k]], h.lengths_mm[k], h.weight[k]) for h in graph.hinges for k in (inside(h.nodes),)
    )
    return Part(
        graph, nodes, local[graph.pairs[e]], graph.rest_mm[e] / unit, local[graph.soft_pairs[s]], graph.soft_mm[s] / unit, graph.soft[s],
        tris, hinges, unit,
    )
