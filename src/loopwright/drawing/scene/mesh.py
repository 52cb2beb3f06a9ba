"""Meshes of a scene before they are cut into pieces: where each vertex is and which stitch it belongs to."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from loopwright.drawing.scene.body import Body, Bools, Floats, Ints
from loopwright.drawing.scene.cells import cells_of, rows_stood_in
from loopwright.drawing.scene.colours import Bytes, Painted
from loopwright.drawing.scene.levels import Level
from loopwright.drawing.scene.strands import sweep
from loopwright.drawing.scene.surface import normals, rim, triangles
from loopwright.drawing.scene.yarn import Links, Paths, posts, sinking, stitch_of_node, tops, widths
from loopwright.model.fabric import Fabric
from loopwright.record import record

THICK_SHARE = 0.5
"""Thickness of a fabric as a share of the stitch's width: that of the bending model, two strands of a third of the width each, squashed."""
SHADE = 0.62
"""How dark the sheet behind the yarn is, so that gaps between strands read as depth (by eye)."""
FOOT = 0.8
"""How dark a facet is where its stitch begins, so that rows are seen (by eye)."""

RIGHT, WRONG, EDGE = 1, -1, 0


@record
class Mesh:
    """Vertices and triangles with what they belong to.

    `positions` (v, 3) mm, `normals` (v, 3), `colours` (v, 3) sRGB bytes, `stitch` (v,); `corners` (t, 3), `owner` (t,) the stitch of a
    triangle, `side` (t,): RIGHT, WRONG or EDGE, `sheet` (t,): seen from both sides.
    """

    positions: Floats
    normals: Floats
    colours: Bytes
    stitch: Ints
    corners: Ints
    owner: Ints
    side: NDArray[np.int8]
    sheet: Bools


def joined(meshes: list[Mesh]) -> Mesh:
    """Several meshes as one, in their order."""
    starts = np.cumsum([0, *(len(m.positions) for m in meshes)])
    return Mesh(
        np.concatenate([m.positions for m in meshes]), np.concatenate([m.normals for m in meshes]),
        np.concatenate([m.colours for m in meshes]), np.concatenate([m.stitch for m in meshes]),
        np.concatenate([m.corners + start for m, start in zip(meshes, starts[:-1], strict=True)]),
        np.concatenate([m.owner for m in meshes]), np.concatenate([m.side for m in meshes]), np.concatenate([m.sheet for m in meshes]))


def yarn(fabric: Fabric, body: Body, tied: Links, level: Level, painted: Painted) -> list[Mesh]:
    """The stitches as strands: posts, then top loops."""
    corners, _ = triangles(body.points, body.faces)
    up, wide = normals(body.points, corners), widths(body, tied)
    paths = (posts(fabric, body, tied, up, wide, steps=level.post_steps, strands=level.strands),
             tops(body, tied, up, wide, steps=level.top_steps, strands=level.strands))
    return [_tubes(path, level, painted) for path in paths if len(path.stitch)]


def _tubes(path: Paths, level: Level, painted: Painted) -> Mesh:
    tubes = sweep(path.lines, path.surface, path.thick, 0.8, level.sides)
    stitch = path.stitch[tubes.of_vertex]
    turned = (tubes.outward < -1e-9)[:, None]
    colours = np.where(turned, painted.wrong[stitch], painted.right[stitch])
    outward = tubes.outward[tubes.corners].mean(axis=1)
    side = np.where(outward > 1e-9, RIGHT, np.where(outward < -1e-9, WRONG, EDGE)).astype(np.int8)
    return Mesh(tubes.positions, tubes.normals, colours, stitch, tubes.corners, path.stitch[tubes.of_triangle], side,
                np.zeros(len(side), dtype=bool))


def behind(fabric: Fabric, body: Body, tied: Links, painted: Painted) -> Mesh:
    """The surface behind the yarn, darker, and following the post stitches."""
    corners, _ = triangles(body.points, body.faces)
    lift = sinking(fabric, body, tied, widths(body, tied))[:, None]
    return sheet(body.at(body.points + lift * normals(body.points, corners)), painted, SHADE)


def sheet(body: Body, painted: Painted, shade: float = 1.0) -> Mesh:
    """The surface as one layer that shares its vertices, each of its own stitch's colour; `shade` darkens it."""
    corners, face = triangles(body.points, body.faces)
    own = stitch_of_node(body)
    lent = np.zeros(len(own), dtype=np.int64)
    lent[corners.reshape(-1)] = np.repeat(body.face_stitch[face], 3)  # the middle of a ring takes the colour of a face around it
    stitch = np.where(own >= 0, own, lent)
    colours = np.rint(painted.right[stitch] * shade).astype(np.uint8)
    owner = body.face_stitch[face]
    used, corners = np.unique(corners, return_inverse=True)
    up = normals(body.points, used[corners.reshape(-1, 3)])
    return Mesh(body.points[used], up[used], colours[used], stitch[used], corners.reshape(-1, 3), owner,
                np.full(len(owner), RIGHT, dtype=np.int8), np.ones(len(owner), dtype=bool))


def facets(fabric: Fabric, body: Body, tied: Links, painted: Painted) -> Mesh:
    """Every stitch's cell on both sides of the fabric's thickness, in the stitch's colour, closed along the rims."""
    cells = cells_of(fabric, body)
    row_of = rows_stood_in(fabric)[stitch_of_node(body)]
    row_of = np.append(row_of, row_of[cells.nodes[:, 0]])
    wide = cells.places(widths(body, tied)[:, None])
    body = cells.within(body)
    corners, face = triangles(body.points, body.faces)
    up = normals(body.points, corners)
    half = 0.5 * THICK_SHARE * wide * up
    nodes = np.where(body.faces < 0, body.faces[:, [2]], body.faces).reshape(-1)
    slot = _slots(body.faces, corners, face)
    stitch = np.repeat(body.face_stitch, 4)
    at_foot = row_of[nodes] < np.repeat(cells.row, 4)  # there it stands on another one
    tone = np.where(at_foot, FOOT, 1.0)[:, None]
    layers = []
    for side, way, colours in ((RIGHT, 1.0, painted.right), (WRONG, -1.0, painted.wrong)):
        toned = np.rint(colours[stitch] * tone).astype(np.uint8)
        turned = slot if side == RIGHT else slot[:, ::-1]
        layers.append(Mesh(body.points[nodes] + way * half[nodes], way * up[nodes], toned, stitch, turned, body.face_stitch[face],
                           np.full(len(slot), side, dtype=np.int8), np.zeros(len(slot), dtype=bool)))
    return joined([*layers, _rims(body, half, painted)])


def _slots(faces: Ints, corners: Ints, face: Ints) -> Ints:
    """Triangle corners as places 4 f + k of their face's own vertices."""
    match = faces[face][:, None, :] == corners[:, :, None]
    return np.asarray(4 * face[:, None] + np.argmax(match, axis=2))


def _rims(body: Body, half: Floats, painted: Painted) -> Mesh:
    """The thickness of the fabric where it ends: a strip along every rim."""
    edges = rim(body.faces)
    start, end, face = edges.T
    number = np.arange(len(edges))[:, None] * 4
    ring = np.stack((start, end, end, start), axis=1)
    way = np.asarray([1.0, 1.0, -1.0, -1.0])[None, :, None]
    positions = body.points[ring] + way * half[ring]
    out = np.cross(body.points[end] - body.points[start], half[start] + half[end])
    out /= np.maximum(np.linalg.norm(out, axis=1, keepdims=True), 1e-12)
    lost = np.linalg.norm(out, axis=1) < 0.5
    out[lost] = (0.0, 0.0, 1.0)
    stitch = np.repeat(body.face_stitch[face], 4)
    corners = np.concatenate((number + np.asarray([[0, 2, 1]]), number + np.asarray([[0, 3, 2]])))
    owner = np.tile(body.face_stitch[face], 2)
    return Mesh(positions.reshape(-1, 3), np.repeat(out, 4, axis=0), painted.wrong[stitch], stitch, corners, owner,
                np.full(len(owner), EDGE, dtype=np.int8), np.zeros(len(owner), dtype=bool))

