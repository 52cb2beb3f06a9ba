"""Every stitch with a cell of its own: the faces of a shape lie between two stitches, and are shared out to both.

A row of n stitches has n - 1 gaps between its tops; half a cell lies beyond each of its ends.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from loopwright.drawing.scene.body import Body, Floats, Ints
from loopwright.drawing.scene.surface import rim
from loopwright.drawing.scene.yarn import links, stitch_of_node
from loopwright.model.fabric import Fabric
from loopwright.record import record

_NONE = -1


@record
class Cells:
    """Faces by stitch, over the nodes of a shape and further places between and beyond them.

    `nodes`, `shares` (k, 3): of which nodes each further place is the sum, and with which share; `faces` (f, 4): as in a shape, places
    numbered on from its nodes; `stitch` (f,): whose cell a face is of, all of one stitch running; `row` (f,): that it stands in.
    """

    nodes: Ints
    shares: Floats
    faces: Ints
    stitch: Ints
    row: Ints

    def places(self, points: Floats) -> Floats:
        """Nodes and further places (n + k, 3)."""
        return np.concatenate((points, np.einsum("kj,kjx->kx", self.shares, points[self.nodes])))

    def within(self, body: Body) -> Body:
        """The shape with the cells for its faces."""
        lent = body.piece[self.nodes[:, 0]] if len(body.piece) else body.piece
        return replace(body, points=self.places(body.points), faces=self.faces, face_stitch=self.stitch,
                       piece=np.concatenate((body.piece, lent)))


def rows_stood_in(fabric: Fabric) -> Ints:
    """The row of each stitch (stitches + 1,), of skipped chains that count as a stitch the row that counts them; last -1, of no stitch."""
    found = np.append(np.asarray(fabric.row, dtype=np.int64), _NONE)
    for index, row in enumerate(fabric.rows):
        found[list(row.borrowed)] = index
    return found


class _Build:
    """Further places as they are met, each once."""

    def __init__(self, fabric: Fabric, body: Body) -> None:
        self.owner = stitch_of_node(body)
        self.row = rows_stood_in(fabric)[self.owner]
        self.count = len(body.points)
        self.known: dict[tuple[int, ...], int] = {}
        self.nodes: list[tuple[int, int, int]] = []
        self.shares: list[tuple[float, float, float]] = []
        self.faces: list[tuple[int, int, int, int]] = []
        self.stitch: list[int] = []

    def middle(self, a: int, b: int) -> int:
        if a == b:
            return a
        low, high = sorted((a, b))
        return self._place((low, high), (low, high, low), (0.5, 0.5, 0.0))

    def beyond(self, foot: int, end: int, beside: int) -> int:
        """Half a stitch from a place, away from a stitch that stands beside the end of a row."""
        return self._place((foot, end, beside), (foot, end, beside), (1.0, 0.5, -0.5))

    def _place(self, key: tuple[int, ...], nodes: tuple[int, int, int], shares: tuple[float, float, float]) -> int:
        if key not in self.known:
            self.known[key] = self.count + len(self.nodes)
            self.nodes.append(nodes)
            self.shares.append(shares)
        return self.known[key]

    def face(self, corners: tuple[int, ...], stitch: int) -> None:
        found = [c for k, c in enumerate(corners) if c != corners[k - 1]]
        if len(found) > 2:
            self.faces.append((found[0], found[1], found[2], found[3] if len(found) > 3 else _NONE))
            self.stitch.append(stitch)

    def share(self, face: list[int], stitch: int) -> None:
        """Shares a face out to the stitches whose tops it has: at the gap between two, half to each."""
        corners = [c for c in face if c >= 0]
        tops = [k for k, c in enumerate(corners) if self.owner[c] >= 0 and self.row[c] == self.row[corners].max()]
        many = len(corners)
        if len(tops) != 2 or (tops[1] - tops[0]) % many not in (1, many - 1) or self.row[corners].min() == self.row[corners].max():
            own = int(self.owner[corners[tops[0]]]) if len(tops) == 1 else stitch
            self.face(tuple(corners), own)
            return
        first = tops[0] if (tops[1] - tops[0]) % many == 1 else tops[1]
        turned = corners[first:] + corners[:first]
        a, b, feet = turned[0], turned[1], turned[2:]
        top, low = self.middle(a, b), self.middle(feet[0], feet[-1])
        self.face((top, b, feet[0], low), int(self.owner[b]))
        self.face((a, top, low, feet[-1]), int(self.owner[a]))


def cells_of(fabric: Fabric, body: Body) -> Cells:
    """The cells of a fabric in its shape."""
    build = _Build(fabric, body)
    for face, stitch in zip(body.faces.tolist(), body.face_stitch.tolist(), strict=True):
        build.share(face, stitch)
    _ends(fabric, body, build)
    faces = np.asarray(build.faces, dtype=np.int64).reshape(-1, 4)
    stitch = np.asarray(build.stitch, dtype=np.int64)
    order = np.argsort(stitch, kind="stable")
    return Cells(np.asarray(build.nodes, dtype=np.int64).reshape(-1, 3), np.asarray(build.shares, dtype=np.float64).reshape(-1, 3),
                 faces[order], stitch[order], rows_stood_in(fabric)[stitch[order]])


def _ends(fabric: Fabric, body: Body, build: _Build) -> None:
    """The half of a cell beyond each end of the rows that turn."""
    tops = links(fabric, body).tops
    beside: dict[int, list[int]] = {}
    for a, b in tops.tolist():
        if build.row[a] == build.row[b]:
            beside.setdefault(a, []).append(b)
            beside.setdefault(b, []).append(a)
    ends = {a: near[0] for a, near in beside.items() if len(near) == 1}
    for start, end, _ in rim(body.faces).tolist():
        for top, foot, up in ((start, end, False), (end, start, True)):
            if top in ends and build.row[foot] < build.row[top]:
                out = build.beyond(top, top, ends[top])
                low = build.beyond(foot, foot, ends[foot]) if foot in ends else build.beyond(foot, top, ends[top])
                corners = (top, foot, low, out) if up else (foot, top, out, low)
                build.face(corners, int(build.owner[top]))


@record
class Outlines:
    """Cells by their outlines.

    `stitch`, `row` (m,) of each; `first` (m + 1,): where its faces begin in `cells`; `rings`: its edges, places in order.
    `posts` (p, 2), `post_row` (p,): stitches between holes, that have no cell, from foot to top.
    """

    cells: Cells
    stitch: Ints
    row: Ints
    first: Ints
    rings: list[list[list[int]]]
    posts: Ints
    post_row: Ints


def outlined(fabric: Fabric, body: Body) -> Outlines:
    """The faces of each stitch put together; what a stitch's halves share is no edge."""
    cells, tied = cells_of(fabric, body), links(fabric, body)
    stitch, first = np.unique(cells.stitch, return_index=True)
    ends = np.append(first, len(cells.stitch)).astype(np.int64)
    rings = [rings_of(cells.faces[a:b].tolist()) for a, b in zip(ends[:-1].tolist(), ends[1:].tolist(), strict=True)]
    bare = ~np.isin(tied.post_stitch, stitch)
    posts, post_row = tied.posts[bare], rows_stood_in(fabric)[tied.post_stitch[bare]]
    return Outlines(cells, stitch.astype(np.int64), cells.row[first], ends, rings, posts, post_row)


def rings_of(faces: list[list[int]]) -> list[list[int]]:
    """The outline of some faces: sides that only one of them has, end to end."""
    sides: dict[tuple[int, int], None] = {}
    for face in faces:
        corners = [c for c in face if c >= 0]
        for k, b in enumerate(corners):
            a = corners[k - 1]
            if (b, a) in sides:
                del sides[b, a]
            else:
                sides[a, b] = None
    onward: dict[int, list[int]] = {}
    for a, b in sides:
        onward.setdefault(a, []).append(b)
    found: list[list[int]] = []
    while onward:
        start = next(iter(onward))
        ring, here = [start], start
        while here in onward:
            follows = onward[here].pop()
            if not onward[here]:
                del onward[here]
            if follows == start:
                break
            ring.append(follows)
            here = follows
        found.append(ring)
    return [r for r in found if len(r) > 2]
