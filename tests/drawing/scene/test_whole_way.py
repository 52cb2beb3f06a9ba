"""From a written pattern to a picture, a file and a hat on a head: the phases together."""

import json
import struct

import numpy as np
import pytest

from loopwright.drawing.scene.beside import form_buffers, together
from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.forms import head_form, nearest_outside
from loopwright.drawing.scene.gltf import as_glb
from loopwright.drawing.scene.picture import picture
from loopwright.drawing.scene.stood import stood
from loopwright.drawing.scene.worn import worn
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import relax
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HAT = """Teal hat
Terms: US

Rnd 1: Ch 1, 8 hdc in magic ring; join. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)
Rnd 4: Ch 1, *hdc in next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)
Rnd 5: Ch 1, *hdc in next 3 sts, 2 hdc in next st; rep from * around; join. (40 hdc)
Rnd 6: Ch 1, *hdc in next 4 sts, 2 hdc in next st; rep from * around; join. (48 hdc)
Rnds 7-14: Ch 1, hdc in each st around; join. (48 hdc)
"""
BONNET = """Plain bonnet
Terms: US

Rnd 1: Ch 1, 8 hdc in magic ring; join. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)
Rnd 4: Ch 1, *hdc in next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)
Rnd 5: Ch 1, *hdc in next 3 sts, 2 hdc in next st; rep from * around; join. (40 hdc)
Rnd 6: Ch 1, *hdc in next 4 sts, 2 hdc in next st; rep from * around; join. (48 hdc)
Row 7: Ch 1, hdc in each of next 40 sts; leave remaining 8 sts unworked, turn. (40 hdc)
Rows 8-15: Ch 1, hdc in each st across, turn. (40 hdc)
"""
WIDE_MM, TALL_MM = 7.0, 8.9


@pytest.fixture(scope="module")
def hat():
    (fabric,) = work(read(Source.of(HAT))).fabrics
    assert fabric is not None
    return fabric, relax(fabric, StitchSizes(WIDE_MM, TALL_MM, "hdc"))


def test_a_hat_stands_and_is_drawn_on_both_sides(hat):
    fabric, shape = hat
    up = stood(shape)
    crown = up.points[up.node_of[[s for s in range(fabric.rows[0].start, fabric.rows[0].end) if up.node_of[s] >= 0]], 2].mean()
    edge = up.points[up.node_of[[s for s in range(fabric.rows[-1].start, fabric.rows[-1].end) if up.node_of[s] >= 0]], 2].mean()
    assert crown > edge + 6 * TALL_MM, "the right side is outside, so the crown is up"
    pixels = picture(buffers(fabric, up, by="side", level="facets"), view=(0, 0), width_px=120, height_px=120)
    seen = pixels[40:90, 40:80, :3].astype(int)
    assert (seen[:, :, 2] > seen[:, :, 0]).all(), "blue, the right side, all over the outside"


def test_the_file_names_its_rows(hat):
    fabric, shape = hat
    glb = as_glb(buffers(fabric, shape), title="Teal hat")
    length = struct.unpack_from("<I", glb, 12)[0]
    data = json.loads(glb[20: 20 + length])
    assert data["scenes"][0]["name"] == "Teal hat"
    assert data["scenes"][0]["extras"]["rows"] == [row.label for row in fabric.rows]


def test_it_goes_on_a_head_of_about_its_size(hat):
    fabric, shape = hat
    head = head_form(360)
    on = worn(shape, head, "hat")
    assert on.stretch == pytest.approx(360 / (48 * WIDE_MM), abs=0.08)
    assert nearest_outside(head, on.body.points)[0].min() > 0.5
    both = together(buffers(fabric, on.body), form_buffers(head))
    assert np.isfinite(both.positions).all()
    assert [p.piece for p in both.parts] == [0, -1]


def test_a_bonnet_leaves_the_face_free_and_lies_alike_on_both_sides():
    (fabric,) = work(read(Source.of(BONNET))).fabrics
    assert fabric is not None
    shape = relax(fabric, StitchSizes(WIDE_MM, TALL_MM, "hdc"))
    head = head_form(400)
    on = worn(shape, head, "bonnet")
    face = np.abs(head.points[:, 0]) < 20
    assert on.front_mm > 0 > on.back_mm, "above the brow in front, below its level at the neck"
    assert on.body.points[:, 1].min() > head.points[face, 1].min() + 20, "behind the nose"
    left, right = (on.body.points[on.body.points[:, 0] * side > 0, 2].min() for side in (-1, 1))
    assert left == pytest.approx(right, abs=12)
    crown = on.body.points[on.body.node_of[[s for s in range(8) if on.body.node_of[s] >= 0]]].mean(axis=0)
    assert crown[1] > 0.5 * head.marks["nape"][1], "the middle of the back is at the back"
