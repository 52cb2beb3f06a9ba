"""A relaxed fabric as triangles: positions, normals, colours, and for every triangle its stitch, row and side."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene import mesh
from loopwright.drawing.scene.body import Body, Bools, Ints, Relaxed, sound
from loopwright.drawing.scene.colours import By, Bytes, Colour, paint
from loopwright.drawing.scene.levels import BUDGET, Level, level_for
from loopwright.drawing.scene.yarn import links, stitch_of_node
from loopwright.model.fabric import Fabric
from loopwright.record import record


@record
class Part:
    """One piece of the fabric in the buffers: its vertices and triangles are first … first + count - 1 of the columns."""

    piece: int
    first_vertex: int
    vertices: int
    first_triangle: int
    triangles: int


@record
class Buffers:
    """What is drawn. Positions are mm, z upward.

    Vertices (v,): `positions` and `normals` (v, 3), `colours` (v, 3) sRGB bytes, `vertex_stitch`, `vertex_row`. Triangles (t,):
    `indices` (t, 3), against the clock from outside; `triangle_stitch`, `triangle_row`; `triangle_side`: 1 right side, -1 wrong side,
    0 neither; `sheet`: seen from both sides. Stitch -1 belongs to no stitch (a form). `parts`: the pieces. `row_labels`: by row number.
    `level`: how finely it is drawn, `level_about` in words. `legend`: what the colours stand for. `notes`: what to know of the picture.
    """

    positions: NDArray[np.float32]
    normals: NDArray[np.float32]
    colours: Bytes
    vertex_stitch: NDArray[np.int32]
    vertex_row: NDArray[np.int32]
    indices: NDArray[np.uint32]
    triangle_stitch: NDArray[np.int32]
    triangle_row: NDArray[np.int32]
    triangle_side: NDArray[np.int8]
    sheet: Bools
    parts: tuple[Part, ...] = ()
    row_labels: tuple[str, ...] = ()
    level: str = ""
    level_about: str = ""
    legend: tuple[tuple[str, Colour], ...] = ()
    notes: tuple[str, ...] = ()


def buffers(
    fabric: Fabric,
    shape: Relaxed,
    palette: Mapping[str, Colour] | None = None,
    *,
    by: By = "yarn",
    budget: int = BUDGET,
    level: str | None = None,
) -> Buffers:
    """The fabric in its shape as triangles.

    `palette`: colour by the name that the pattern gives it. `by`: what the colours tell (see `colours.paint`). `budget`: at most so many
    triangles, unless even the plainest level has more; `level` names a level instead. A shape without faces is drawn as yarn alone.
    Raises ValueError for an unknown `by` or `level`, or a shape that is not of this fabric (other number of stitches).
    """
    if len(shape.node_of) != len(fabric):
        raise ValueError(f"the shape is of another fabric: it has {len(shape.node_of)} stitches, the fabric has {len(fabric)}")
    body, lost = sound(shape)
    tied = links(fabric, body)
    chosen = level_for(tied, body, budget, level)
    painted = paint(fabric, body, by, palette)
    notes = [] if body.settled else ["the shape had not come to rest when it was drawn"]
    if lost:
        notes.append(f"{lost} places of the shape are no numbers and are not drawn")
    if chosen.sides or not len(body.faces):
        meshes = [mesh.behind(fabric, body, tied, painted)] if len(body.faces) else []
        meshes += mesh.yarn(fabric, body, tied, chosen if chosen.sides else level_for(tied, body, budget, "strand"), painted)
    elif chosen.layers == 2:
        meshes = [mesh.facets(fabric, body, tied, painted)]
    else:
        meshes = [mesh.sheet(body, painted)]
    meshes = [m for m in meshes if len(m.corners)]
    if not meshes:
        return _nothing(fabric, chosen, (*notes, "there is nothing to draw: the shape has no faces and no pairs"))
    return _cut(fabric, body, mesh.joined(meshes), chosen, painted.legend, tuple(notes))


def _nothing(fabric: Fabric, level: Level, notes: tuple[str, ...]) -> Buffers:
    three, none = np.zeros((0, 3)), np.zeros(0)
    return Buffers(three.astype(np.float32), three.astype(np.float32), three.astype(np.uint8), none.astype(np.int32), none.astype(np.int32),
                   three.astype(np.uint32), none.astype(np.int32), none.astype(np.int32), none.astype(np.int8), none.astype(bool),
                   (), _labels(fabric), level.name, level.about, (), notes)


def _labels(fabric: Fabric) -> tuple[str, ...]:
    return tuple(" · ".join(word for word in (row.section, row.label) if word) or f"row {i + 1}" for i, row in enumerate(fabric.rows))


def _cut(
    fabric: Fabric, body: Body, whole: mesh.Mesh, level: Level, legend: tuple[tuple[str, Colour], ...], notes: tuple[str, ...],
) -> Buffers:
    """The mesh sorted by pieces, in the order of their numbers; within a piece as it was."""
    piece_of = _pieces(body, len(fabric))
    row = np.asarray(fabric.row, dtype=np.int64)
    of_vertex, of_triangle = piece_of[whole.stitch], piece_of[whole.owner]
    # a vertex that two pieces share (a sheet over a join) goes with the first triangle that has it and is doubled for the other
    corners, vertices = _own_vertices(whole.corners, of_triangle, of_vertex)
    order = np.argsort(of_triangle, kind="stable")
    owner_piece = of_triangle[order]
    vertex_order = np.argsort(vertices[1], kind="stable")
    place = np.empty_like(vertex_order)
    place[vertex_order] = np.arange(len(vertex_order))
    source, vertex_piece = vertices[0][vertex_order], vertices[1][vertex_order]
    parts = []
    for piece in np.unique(owner_piece).tolist():
        v0, v1 = np.searchsorted(vertex_piece, [piece, piece + 1])
        t0, t1 = np.searchsorted(owner_piece, [piece, piece + 1])
        parts.append(Part(int(piece), int(v0), int(v1 - v0), int(t0), int(t1 - t0)))
    stitch, owner = whole.stitch[source], whole.owner[order]
    return Buffers(
        whole.positions[source].astype(np.float32), whole.normals[source].astype(np.float32), whole.colours[source],
        stitch.astype(np.int32), row[stitch].astype(np.int32), place[corners[order]].astype(np.uint32),
        owner.astype(np.int32), row[owner].astype(np.int32), whole.side[order], whole.sheet[order],
        tuple(parts), _labels(fabric), level.name, level.about, legend, notes)


def _own_vertices(corners: Ints, of_triangle: Ints, of_vertex: Ints) -> tuple[Ints, tuple[Ints, Ints]]:
    """Corners so numbered that no vertex is in two pieces, and for each vertex the one it is a copy of and its piece."""
    pieces = int(of_triangle.max()) + 1
    if pieces == 1:
        used = np.zeros(len(of_vertex), dtype=bool)
        used[corners.reshape(-1)] = True
        return (np.cumsum(used) - 1)[corners], (np.flatnonzero(used), np.zeros(int(used.sum()), dtype=np.int64))
    key = corners * pieces + of_triangle[:, None]
    kept, renumbered = np.unique(key, return_inverse=True)
    return renumbered.reshape(-1, 3), (kept // pieces, kept % pieces)


def _pieces(body: Body, stitches: int) -> Ints:
    """The piece of each stitch (stitches,): that of its node; 0 for a stitch without one."""
    piece = np.zeros(stitches, dtype=np.int64)
    own = stitch_of_node(body)
    has = body.node_of >= 0
    if len(body.piece) == len(own):
        piece[has] = np.maximum(body.piece[body.node_of[has]], 0)
    return piece
