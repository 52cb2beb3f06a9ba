"""Binary glTF read back by trimesh, a general library for meshes: the same places, triangles, colours and stitch numbers."""

import io
import math

import numpy as np
import pytest
import trimesh

from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.gltf import as_glb
from tests.drawing.scene.rounds import TALL_MM, WIDE_MM, disc, sphere, tube


def read_back(glb: bytes) -> trimesh.Scene:
    return trimesh.load_scene(io.BytesIO(glb), file_type="glb", process=False)


def only(scene: trimesh.Scene) -> trimesh.Trimesh:
    (mesh,) = scene.geometry.values()
    assert isinstance(mesh, trimesh.Trimesh)
    return mesh


@pytest.mark.parametrize("level", ["yarn", "strand", "facets", "plain"])
def test_places_in_metres_with_y_upward(level):
    fabric, shape = tube()
    drawn = buffers(fabric, shape, level=level)
    mesh = only(read_back(as_glb(drawn, title="Tube")))
    x, y, z = (drawn.positions / 1000).T
    assert np.allclose(mesh.vertices, np.stack((x, z, -y), axis=1), atol=1e-7)
    assert np.array_equal(mesh.faces, drawn.indices)


def test_every_vertex_knows_its_stitch_and_row():
    fabric, shape = sphere(24)
    drawn = buffers(fabric, shape)
    mesh = only(read_back(as_glb(drawn, title="Ball")))
    stitch, row = (np.asarray(mesh.vertex_attributes[name]).reshape(-1) for name in ("_STITCH", "_ROW"))
    assert set(stitch.astype(int).tolist()) == {s for s in range(len(fabric)) if fabric.part_of(s) == "edge"}
    assert [fabric.row[int(s)] for s in stitch] == row.astype(int).tolist()


def test_sheet_of_a_ball_has_its_volume():
    """Turned outward, and the volume of a sphere less the slices that whole stitches cut off and the small opening below."""
    fabric, shape = sphere(48)
    mesh = only(read_back(as_glb(buffers(fabric, shape, level="plain"), title="Ball")))
    radius = 48 * WIDE_MM / (2 * math.pi) / 1000
    assert 0.93 < mesh.volume / (4 / 3 * math.pi * radius**3) < 1.0


def test_area_of_a_disc():
    """The right side's facets of a disc of n rounds cover the polygon of its last round."""
    fabric, shape = disc(7)
    mesh = only(read_back(as_glb(buffers(fabric, shape, level="plain"), title="Disc")))
    sides, radius = 6 * 7, 7 * TALL_MM / 1000
    assert mesh.area == pytest.approx(sides / 2 * radius**2 * math.sin(2 * math.pi / sides), rel=1e-6)


def test_rows_and_legend_are_named():
    fabric, shape = disc(3)
    scene = read_back(as_glb(buffers(fabric, shape, by="kind"), title="Disc"))
    extras = scene.metadata.get("extras", scene.metadata)
    assert extras["rows"] == ["Rnd 1", "Rnd 2", "Rnd 3"]
    assert "sc" in [entry["label"] for entry in extras["legend"]]


def test_same_buffers_same_bytes():
    fabric, shape = disc(4)
    assert as_glb(buffers(fabric, shape), title="Disc") == as_glb(buffers(fabric, shape), title="Disc")
