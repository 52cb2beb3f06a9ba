"""What the scene takes of a relaxed shape, and that shape made sound: whole numbers where they belong, nodes without a place named."""

from __future__ import annotations

from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from loopwright.record import record

Floats = NDArray[np.float64]
Ints = NDArray[np.int64]
Bools = NDArray[np.bool_]


class Relaxed(Protocol):
    """A fabric with places: what the solver gives.

    `points` (n, 3) mm, one per node. `node_of` (stitches,): the node of each stitch's top, -1 for none. `pairs` (m, 2) nodes that hold
    each other, `rest_mm` (m,) how far apart they want to be, `strain` (m,) by which share they are farther (below nought: nearer).
    `faces` (f, 4): nodes around, right side outward, -1 in the fourth place of a triangle. `face_stitch` (f,): the stitch a face
    belongs to. `piece` (n,). `settled`: the solver came to rest.
    """

    @property
    def points(self) -> NDArray[np.floating]: ...  # noqa: D102 -- told above
    @property
    def node_of(self) -> NDArray[np.integer]: ...  # noqa: D102
    @property
    def pairs(self) -> NDArray[np.integer]: ...  # noqa: D102
    @property
    def rest_mm(self) -> NDArray[np.floating]: ...  # noqa: D102
    @property
    def strain(self) -> NDArray[np.floating]: ...  # noqa: D102
    @property
    def faces(self) -> NDArray[np.integer]: ...  # noqa: D102
    @property
    def face_stitch(self) -> NDArray[np.integer]: ...  # noqa: D102
    @property
    def piece(self) -> NDArray[np.integer]: ...  # noqa: D102
    @property
    def settled(self) -> bool: ...  # noqa: D102


@record
class Body:
    """A shape of our own making (worn on a form, say): the fields of `Relaxed`."""

    points: Floats
    node_of: Ints
    pairs: Ints
    rest_mm: Floats
    strain: Floats
    faces: Ints
    face_stitch: Ints
    piece: Ints
    settled: bool = True

    def at(self, points: Floats) -> Body:
        """The same fabric with its nodes elsewhere (n, 3) mm; strains are taken anew."""
        return Body(points, self.node_of, self.pairs, self.rest_mm, strains(points, self.pairs, self.rest_mm),
                    self.faces, self.face_stitch, self.piece, self.settled)


def strains(points: Floats, pairs: Ints, rest_mm: Floats) -> Floats:
    """By which share each pair is longer than it wants to be (m,); nought where it has no length of its own."""
    if not len(pairs):
        return np.zeros(0)
    length = np.linalg.norm(points[pairs[:, 0]] - points[pairs[:, 1]], axis=1)
    return np.asarray(np.divide(length - rest_mm, rest_mm, out=np.zeros(len(pairs)), where=rest_mm > 0))


def sound(shape: Relaxed) -> tuple[Body, int]:
    """The shape without what cannot be drawn, and how many nodes had no finite place.

    Pairs and faces that touch such a node, or one that is not there, are left out; the nodes themselves lie at nought, unseen.
    """
    points = np.array(shape.points, dtype=np.float64).reshape(-1, 3)
    finite = np.isfinite(points).all(axis=1)
    points[~finite] = 0.0
    known = np.append(finite, False)  # the last place answers for -1
    pairs = _within(np.asarray(shape.pairs, dtype=np.int64).reshape(-1, 2), len(points))
    faces = _within(np.asarray(shape.faces, dtype=np.int64).reshape(-1, 4), len(points))
    three = faces[:, 3] < 0
    keep = known[pairs].all(axis=1)
    whole = known[faces[:, :3]].all(axis=1) & (three | known[faces[:, 3]])
    node_of = _within(np.asarray(shape.node_of, dtype=np.int64).reshape(-1), len(points))
    node_of[~known[node_of]] = -1
    rest = np.nan_to_num(np.asarray(shape.rest_mm, dtype=np.float64)[keep])
    strain = np.nan_to_num(np.asarray(shape.strain, dtype=np.float64)[keep])
    owner = np.asarray(shape.face_stitch, dtype=np.int64)[whole]
    piece = np.asarray(shape.piece, dtype=np.int64)
    return Body(points, node_of, pairs[keep], rest, strain, faces[whole], owner, piece, bool(shape.settled)), int((~finite).sum())


def _within(nodes: Ints, count: int) -> Ints:
    """A copy in which a number that is no node is -1."""
    return np.where((nodes >= 0) & (nodes < count), nodes, -1)
