import numpy as np
import pytest

from loopwright.drawing.scene.body import Body
from loopwright.drawing.scene.colours import hexed, muted, named, paint
from tests.drawing.scene.rounds import disc, rounds_of


def luminance(colour) -> float:
    share = np.asarray(colour) / 255
    light = np.where(share <= 0.04045, share / 12.92, ((share + 0.055) / 1.055) ** 2.4)
    return float(light @ [0.2126, 0.7152, 0.0722])


def test_a_colour_has_its_name_or_the_palettes():
    assert named("navy") == (0, 0, 128)
    assert named("Light Blue") == (173, 216, 230)
    assert named("#102030") == (16, 32, 48)
    assert [named(word) for word in ("MC", "A", "", "seafoam of the north")] == [None] * 4
    fabric, shape = disc(3)
    assert paint(fabric, shape, palette={"": (1, 2, 3)}).right.tolist() == [[1, 2, 3]] * len(fabric)


def test_rows_grow_lighter():
    fabric, shape = disc(7)
    painted = paint(fabric, shape, "row")
    every = [luminance(painted.right[row[0]]) for row in rounds_of(fabric)]
    assert every[::2] == sorted(every[::2])
    assert every[1::2] == sorted(every[1::2])
    assert [label for label, _ in painted.legend] == ["Rnd 1", "Rnd 7"]


def test_kinds_have_a_colour_each():
    fabric, shape = disc(4)
    painted = paint(fabric, shape, "kind")
    names = [label for label, _ in painted.legend]
    assert names[0] == "sc"
    assert len({colour for _, colour in painted.legend}) == len(names)
    assert {tuple(painted.right[s].tolist()) for s in range(len(fabric)) if fabric.name(s) == "sc"} == {dict(painted.legend)["sc"]}


def test_strain_goes_from_purple_to_orange():
    fabric, shape = disc(6)
    strain = np.where(shape.points[shape.pairs[:, 0], 0] > 0, 0.2, -0.2)
    pulled = Body(shape.points, shape.node_of, shape.pairs, shape.rest_mm, strain, shape.faces, shape.face_stitch, shape.piece)
    colours = paint(fabric, pulled, "strain").right.astype(int)
    last = rounds_of(fabric)[-1]
    x = shape.points[shape.node_of[last], 0]
    warm, cold = colours[np.asarray(last)[x > 10]], colours[np.asarray(last)[x < -10]]
    assert (warm[:, 0] > warm[:, 2] + 100).all(), "orange"
    assert (cold[:, 2] > cold[:, 1] + 50).all(), "purple"
    rest = paint(fabric, Body(shape.points, shape.node_of, shape.pairs, shape.rest_mm, strain * 0, shape.faces, shape.face_stitch, shape.piece), "strain")
    assert {tuple(c) for c in rest.right.tolist()} == {hexed("#f7f7f7")}


def test_sides_differ_in_lightness_too():
    fabric, shape = disc(2)
    painted = paint(fabric, shape, "side")
    assert abs(luminance(painted.right[0]) - luminance(painted.wrong[0])) > 0.1


def test_muted_is_darker_and_keeps_grey_grey():
    colours = np.asarray([[255, 0, 0], [100, 100, 100]], dtype=np.uint8)
    less = muted(colours)
    assert np.ptp(less[0].astype(int)) < 255
    assert less[1].tolist() == [80, 80, 80]


def test_a_colour_must_be_written_as_one():
    with pytest.raises(ValueError, match="'teal' is no colour: write it as #rrggbb"):
        hexed("teal")
