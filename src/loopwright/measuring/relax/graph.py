"""The graph of a fabric: a node for each stitch top, edges with their rest lengths, faces, the triangles that bend.

Model: course edges between neighbouring tops as long as the mean of their widths, wale edges from a top to what it stands on; both
diagonals of a quadrangle hold against shear, with the lengths they have when it lies flat.
"""

from __future__ import annotations

import numpy as np

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax.faces import Along, Gaps, Strips, along_of, gaps_of, strips_of, zipped
from loopwright.measuring.relax.orient import oriented
from loopwright.measuring.relax.tops import Flags, Floats, Ints, Tops, tops_of
from loopwright.measuring.relax.wales import CLUSTER_WIDTH, Wales, wales_of
from loopwright.model.fabric import Fabric
from loopwright.record import record

SHEAR = 0.15
HOLE = 0.05
# A hole bends with less than what is filled.
HOLE_BENDING = 0.15


@record
class Hinges:
    """Triangles whose shared edges bend. `nodes`: (t, 3); `lengths_mm`: (t, 3) of edges 01, 12, 20; `weight`: (t,)."""

    nodes: Ints
    lengths_mm: Floats
    weight: Floats


@record
class Graph:
    """A fabric as nodes and lengths; n nodes, m edges, lengths in mm.

    `node_of`: (stitches,) node of each stitch, -1 for none. `stitch_of`: (n,) the stitch a node stands for, -1 for a ring's centre.
    `piece`, `row`: (n,). `pairs`: (m, 2), `rest_mm`: (m,). `soft_pairs`, `soft_mm`, `soft`: diagonals and braces of holes with their
    stiffness against 1 for an edge. `faces`: (f, 4), -1 in the last place of a triangle, the right side outward; `face_stitch`: (f,).
    `hinges`: two triangulations, each of half the bending. `along`: the rows' tops. `wales`: (w, 2) child and parent. `ends`: (e, 2) the
    end of an open row and its neighbour, `end_mm`: half a stitch that reaches beyond. `width_mm`: the mean width of a stitch.
    """

    node_of: Ints
    stitch_of: Ints
    piece: Ints
    row: Ints
    pairs: Ints
    rest_mm: Floats
    soft_pairs: Ints
    soft_mm: Floats
    soft: Floats
    faces: Ints
    face_stitch: Ints
    hinges: tuple[Hinges, Hinges]
    along: Along
    wales: Ints
    wale_mm: Floats
    ends: Ints
    end_mm: Floats
    width_mm: float

    def __len__(self) -> int:
        return len(self.stitch_of)


def stitch_graph(fabric: Fabric, sizes: StitchSizes, drawn: frozenset[int] = frozenset()) -> Graph:
    """The graph of a fabric at her sizes of stitches. Never raises for a fabric that the worker made, an empty one included.

    `drawn`: rounds (indexes of the fabric's rows) that are drawn together with the end of the yarn.
    """
    tops = tops_of(fabric, sizes)
    wales = wales_of(tops)
    along = along_of(tops, wales, CLUSTER_WIDTH, drawn)
    right_side = np.array([r.right_side for r in fabric.rows], bool)
    gaps = gaps_of(tops, wales, along, right_side)
    strips = strips_of(tops, wales, along, gaps)
    pairs, rest = _edges(tops, wales, along)
    lookup = _Lengths(pairs, rest, wales.nodes)
    stitch_of, row = _owners(tops, wales)
    build = _Build(lookup, gaps, strips, *_fans(wales, stitch_of))
    faces, owner, reverse = build.faces(right_side[row] if len(row) else np.zeros(0, bool))
    piece = tops.piece[row] if len(row) else np.zeros(0, np.int64)
    soft_pairs, soft_mm, soft = build.soft()
    ends, end_mm = _ends(tops, along, stitch_of)
    return Graph(
        wales.node_of, stitch_of, piece, row, pairs, rest, soft_pairs, soft_mm, soft, oriented(faces, reverse), owner,
        (build.hinges(0), build.hinges(1)), along, np.stack([wales.child, wales.parent], axis=1), wales.rest_mm, ends, end_mm,
        float(rest.mean()) if len(rest) else sizes.width_mm,
    )


def _owners(tops: Tops, wales: Wales) -> tuple[Ints, Ints]:
    stitch_of = np.full(wales.nodes, -1, np.int64)
    row = np.zeros(wales.nodes, np.int64)
    has = np.flatnonzero(wales.node_of >= 0)
    inner = has[wales.node_of[has] < wales.nodes - len(wales.centre)]
    stitch_of[wales.node_of[inner]] = inner
    row[wales.node_of[inner]] = tops.row[inner]
    is_centre = np.isin(wales.parent, wales.centre)
    row[wales.parent[is_centre]] = row[wales.child[is_centre]]
    return stitch_of, row


def _edges(tops: Tops, wales: Wales, along: Along) -> tuple[Ints, Floats]:
    """Course and wale edges, each once."""
    here = np.arange(len(along.node))
    linked = along.length_mm > 0
    course = np.stack([along.node[here[linked]], along.node[along.at(here[linked], np.ones(int(linked.sum()), np.int64))]], axis=1)
    base = np.flatnonzero(tops.base[1:] & tops.base[:-1] & (tops.row[1:] == tops.row[:-1])) if len(tops.base) else np.zeros(0, np.int64)
    back = np.stack([wales.node_of[base], wales.node_of[base + 1]], axis=1)
    wale = np.stack([wales.child, wales.parent], axis=1)
    hung, held = tops.hanging()
    tie = np.stack([wales.node_of[hung], wales.node_of[held]], axis=1)
    pairs = np.concatenate([course, back, wale, tie]).astype(np.int64)
    rest = np.concatenate([along.length_mm[linked], tops.width_mm[base], wales.rest_mm, tops.width_mm[hung]])
    keep = pairs[:, 0] != pairs[:, 1]
    pairs, rest = np.sort(pairs[keep], axis=1), rest[keep]
    _, first = np.unique(pairs[:, 0] * max(1, wales.nodes) + pairs[:, 1], return_index=True)
    first.sort()
    return pairs[first], rest[first]


def _fans(wales: Wales, stitch_of: Ints) -> tuple[Ints, Ints]:
    """Triangles under a decrease, between the stitches that it draws together: (f, 3), and the child's post lengths are looked up."""
    same = np.flatnonzero((wales.child[1:] == wales.child[:-1]) & (wales.parent[1:] != wales.parent[:-1]))
    nodes = np.stack([wales.parent[same], wales.parent[same + 1], wales.child[same]], axis=1)
    return nodes.reshape(-1, 3), stitch_of[nodes[:, 2]]


def _ends(tops: Tops, along: Along, stitch_of: Ints) -> tuple[Ints, Floats]:
    """Ends of open rows with their neighbours: half a stitch lies beyond the last top."""
    size = np.diff(along.start)
    open_rows = np.flatnonzero((size > 1) & ~along.closed)
    first, last = along.start[open_rows], along.start[open_rows + 1] - 1
    ends = np.concatenate([np.stack([along.node[first], along.node[first + 1]], 1), np.stack([along.node[last], along.node[last - 1]], 1)])
    return ends, tops.width_mm[stitch_of[ends[:, 0]]] / 2 if len(ends) else np.zeros(0)


def _diagonals(mm: Floats, lean_a: Floats, lean_b: Floats) -> Floats:
    """(q, 2) diagonals of quadrangles (foot of a, foot of b, b, a) with these sides: a trapezium whose tops lie ahead of their feet.

    The feet, carried up, are as far apart as the tops less what b gains on a.
    """
    low, high = mm[:, 0], mm[:, 2]
    lean_a, lean_b = (np.clip(lean, -0.9 * post, 0.9 * post) for lean, post in ((lean_a, mm[:, 3]), (lean_b, mm[:, 1])))
    up = (np.sqrt(mm[:, 3] ** 2 - lean_a**2) + np.sqrt(mm[:, 1] ** 2 - lean_b**2)) / 2
    carried = (high - (lean_b - lean_a)) / 2
    one = np.sqrt((low / 2 + carried + lean_b) ** 2 + up**2)
    two = np.sqrt((low / 2 + carried - lean_a) ** 2 + up**2)
    return np.stack([one, two], axis=1)


class _Lengths:
    """Rest length of an edge by its nodes."""

    def __init__(self, pairs: Ints, rest: Floats, nodes: int) -> None:
        self.nodes = max(1, nodes)
        key = pairs[:, 0] * self.nodes + pairs[:, 1]
        self.by = np.argsort(key)
        self.key, self.rest = key[self.by], rest[self.by]
        self.usual = float(rest.mean()) if len(rest) else 1.0

    def of(self, i: Ints, j: Ints) -> Floats:
        """The lengths, the mean length where there is no such edge."""
        if not len(self.key):
            return np.full(len(i), self.usual)
        key = np.minimum(i, j) * self.nodes + np.maximum(i, j)
        at = np.minimum(np.searchsorted(self.key, key), len(self.key) - 1)
        return np.where(self.key[at] == key, self.rest[at], self.usual)


class _Build:
    """Faces, braces and hinges out of gaps, strips and fans."""

    def __init__(self, lengths: _Lengths, gaps: Gaps, strips: Strips, fans: Ints, fan_stitch: Ints) -> None:
        plain = (gaps.above == 0) & (gaps.below <= 1)
        quad = np.flatnonzero(plain & (gaps.below == 1))
        tri = np.flatnonzero(plain & (gaps.below == 0))
        self.quads = np.stack([gaps.foot_a[quad], gaps.foot_b[quad], gaps.b[quad], gaps.a[quad]], axis=1)
        self.tris = np.concatenate([np.stack([gaps.foot_a[tri], gaps.b[tri], gaps.a[tri]], axis=1), fans])
        self.quad_stitch, self.quad_reverse = gaps.stitch[quad], gaps.reverse[quad]
        self.tri_stitch = np.concatenate([gaps.stitch[tri], fan_stitch])
        self.fan_count = len(fans)
        self.tri_reverse = gaps.reverse[tri]
        q = self.quads
        self.quad_mm = np.stack([lengths.of(q[:, i], q[:, (i + 1) % 4]) for i in range(4)], axis=1) if len(q) else np.zeros((0, 4))
        self.diagonal_mm = _diagonals(self.quad_mm, gaps.a_lean[quad], gaps.b_lean[quad])
        t = self.tris
        self.tri_mm = np.stack([lengths.of(t[:, i], t[:, (i + 1) % 3]) for i in range(3)], axis=1) if len(t) else np.zeros((0, 3))
        self.strips = strips
        self.zips = (zipped(strips, low_first=True), zipped(strips, low_first=False))

    def faces(self, right_side_of_row: Flags) -> tuple[Ints, Ints, Flags]:
        """All filled faces, the stitch of each, and whether its nodes run the wrong way round as seen from the right side."""
        nodes, polygon, _ = self.zips[0]
        filled = ~self.strips.hole[polygon]
        tris = np.concatenate([self.tris, nodes[filled]])
        tri4 = np.concatenate([tris, np.full((len(tris), 1), -1)], axis=1)
        fan_right = right_side_of_row[self.tris[len(self.tris) - self.fan_count :, 2]]
        right = np.concatenate([~self.quad_reverse, ~self.tri_reverse, fan_right, ~self.strips.reverse[polygon[filled]]])
        owner = np.concatenate([self.quad_stitch, self.tri_stitch, self.strips.stitch[polygon[filled]]])
        return np.concatenate([self.quads, tri4]).astype(np.int64), owner.astype(np.int64), right

    def soft(self) -> tuple[Ints, Floats, Floats]:
        """Diagonals of quadrangles, braces across gaps."""
        q, d = self.quads, self.diagonal_mm
        pairs = [q[:, [0, 2]], q[:, [1, 3]]]
        lengths, soft = [d[:, 0], d[:, 1]], [np.full(2 * len(q), SHEAR)]
        for nodes, polygon, template in self.zips:
            inside = polygon[1:] == polygon[:-1]
            pairs.append(nodes[1:][inside][:, [0, 2]])  # the edge that a triangle shares with the one before it
            lengths.append(np.linalg.norm(template[1:][inside][:, 0] - template[1:][inside][:, 2], axis=1))
            soft.append(np.where(self.strips.hole[polygon[1:][inside]], HOLE, SHEAR))
        all_pairs, all_mm, all_soft = np.concatenate(pairs), np.concatenate(lengths), np.concatenate(soft)
        keep = all_pairs[:, 0] != all_pairs[:, 1]
        return all_pairs[keep].astype(np.int64), all_mm[keep], all_soft[keep]

    def hinges(self, which: int) -> Hinges:
        """One of the two triangulations."""
        a, b, c, e = (0, 1, 2, 3) if which == 0 else (1, 2, 3, 0)
        q, mm, d = self.quads, self.quad_mm, self.diagonal_mm[:, which]
        nodes, polygon, template = self.zips[which]
        sides = np.stack([np.linalg.norm(template[:, i] - template[:, (i + 1) % 3], axis=1) for i in range(3)], axis=1)
        weight = np.where(self.strips.hole[polygon], HOLE_BENDING, 1.0)
        return Hinges(
            np.concatenate([q[:, [a, b, c]], q[:, [a, c, e]], self.tris, nodes]).astype(np.int64),
            np.concatenate([
                np.stack([mm[:, a], mm[:, b], d], axis=1), np.stack([d, mm[:, c], mm[:, e]], axis=1), self.tri_mm, sides.reshape(-1, 3),
            ]),
            np.concatenate([np.ones(2 * len(q) + len(self.tris)), weight]),
        )
