"""The fabric's surface: faces cut into triangles, its normals, and its edges."""

from __future__ import annotations

import numpy as np

from loopwright.drawing.scene.body import Floats, Ints


def triangles(points: Floats, faces: Ints) -> tuple[Ints, Ints]:
    """Faces as triangles (t, 3), a quad cut along its shorter diagonal, and the face each came from (t,)."""
    if not len(faces):
        return np.zeros((0, 3), dtype=np.int64), np.zeros(0, dtype=np.int64)
    number = np.arange(len(faces))
    quad = faces[:, 3] >= 0
    a, b, c, d = faces[quad].T
    other = np.linalg.norm(points[b] - points[d], axis=1) < np.linalg.norm(points[a] - points[c], axis=1)
    first = np.where(other[:, None], np.stack((a, b, d), axis=1), np.stack((a, b, c), axis=1))
    second = np.where(other[:, None], np.stack((b, c, d), axis=1), np.stack((a, c, d), axis=1))
    corners = np.concatenate((faces[~quad, :3], first, second))
    owner = np.concatenate((number[~quad], number[quad], number[quad]))
    order = np.argsort(owner, kind="stable")
    return corners[order], owner[order]


def unit(vectors: Floats, instead: tuple[float, float, float] = (0.0, 0.0, 1.0)) -> Floats:
    """Vectors (…, 3) of length one; `instead` where one has no length."""
    length = np.linalg.norm(vectors, axis=-1, keepdims=True)
    return np.where(length > 1e-12, vectors / np.maximum(length, 1e-12), np.asarray(instead))


def normals(points: Floats, corners: Ints) -> Floats:
    """Normal of each node (n, 3), the triangles around it weighed by their area; upward where there is no surface."""
    total = np.zeros_like(points)
    if len(corners):
        area = np.cross(points[corners[:, 1]] - points[corners[:, 0]], points[corners[:, 2]] - points[corners[:, 0]])
        for column in range(3):
            for axis in range(3):
                total[:, axis] += np.bincount(corners[:, column], area[:, axis], len(points))
    return unit(total)


def directed_edges(faces: Ints) -> Ints:
    """Every side of every face in its direction, (e, 3): from node, to node, face."""
    number = np.arange(len(faces))
    three = faces[:, 3] < 0
    a, b, c, d = faces.T
    last = np.where(three, c, d)
    sides = [np.stack((a, b, number), axis=1), np.stack((b, c, number), axis=1), np.stack((last, a, number), axis=1)]
    sides.append(np.stack((c, d, number), axis=1)[~three])
    return np.concatenate(sides)


def rim(faces: Ints) -> Ints:
    """Sides that belong to one face only (e, 3): from node, to node, face. They are the fabric's edges and the rims of its holes."""
    if not len(faces):
        return np.zeros((0, 3), dtype=np.int64)
    edges = directed_edges(faces)
    edges = edges[edges[:, 0] != edges[:, 1]]
    low, high = np.minimum(edges[:, 0], edges[:, 1]), np.maximum(edges[:, 0], edges[:, 1])
    _, index, times = np.unique(low * (high.max() + 1) + high, return_index=True, return_counts=True)
    alone: Ints = edges[np.sort(index[times == 1])]
    return alone


def loops(faces: Ints) -> list[Ints]:
    """The closed edges of the fabric as lists of nodes in their order, the longest (by nodes) first.

    An edge that crosses itself is cut where it does; what does not close is left out.
    """
    edges = rim(faces)
    onward: dict[int, list[int]] = {}
    for start, end, _ in edges.tolist():
        onward.setdefault(start, []).append(end)
    found: list[Ints] = []
    while onward:
        start = next(iter(onward))
        walk, place = [start], {start: 0}
        while walk and onward.get(walk[-1]):
            follows = onward[walk[-1]].pop()
            if follows in place:
                at = place[follows]
                found.append(np.asarray(walk[at:], dtype=np.int64))
                for node in walk[at + 1:]:
                    del place[node]
                del walk[at + 1:]
            else:
                place[follows] = len(walk)
                walk.append(follows)
        onward.pop(walk[-1], None)
        for node in [n for n in walk if not onward.get(n)]:
            onward.pop(node, None)
    return sorted((loop for loop in found if len(loop) > 2), key=lambda loop: -len(loop))
