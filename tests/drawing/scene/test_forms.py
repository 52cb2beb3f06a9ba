import itertools
import math

import numpy as np
import pytest
import trimesh

from loopwright.drawing.scene.beside import form_buffers, together
from loopwright.drawing.scene.body import Body
from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.forms import Form, hand_form, head_form, nearest_outside
from loopwright.drawing.scene.surface import loops, rim
from loopwright.drawing.scene.worn import worn
from tests.drawing.scene.rounds import WIDE_MM, hat, sphere, tube


def around_at(form: Form, height_mm: float, side: slice = slice(None)) -> float:
    """Length of the form's outline at a height: where the sides of its faces cross the level."""
    a, b = form.points[form.faces], form.points[np.roll(form.faces, -1, axis=1)]
    cross = (a[:, :, 2] < height_mm) != (b[:, :, 2] < height_mm)
    share = np.where(cross, (height_mm - a[:, :, 2]) / np.where(cross, b[:, :, 2] - a[:, :, 2], 1), 0)
    at = a + share[:, :, None] * (b - a)
    two = cross.sum(axis=1) == 2
    ends = at[two][cross[two]].reshape(-1, 2, 3)
    return float(np.linalg.norm(ends[:, 0] - ends[:, 1], axis=1).sum())


@pytest.mark.parametrize("around", [330.0, 461.0, 561.0, 620.0])
def test_a_head_is_as_long_around_as_asked(around):
    head = head_form(around)
    assert around_at(head, -0.01) == pytest.approx(around, rel=0.003)
    assert around_at(head, 0.4 * head.marks["top"][2]) < around
    assert around_at(head, head.marks["chin"][2] * 1.3) < 0.8 * around


@pytest.mark.parametrize("form", [head_form(561), hand_form(187, 181)])
def test_a_form_is_closed_and_turned_outward(form):
    four = np.column_stack((form.faces, np.full(len(form.faces), -1)))
    assert len(rim(four)) == 0
    a, b, c = (form.points[form.faces[:, k]] for k in range(3))
    assert np.einsum("ij,ij->i", a, np.cross(b, c)).sum() > 0
    assert np.isfinite(form.normals).all()


def test_a_hand_is_as_large_as_asked():
    hand = hand_form(187, 181)
    assert hand.points[:, 2].max() == pytest.approx(181, rel=0.01)
    assert hand.marks["thumb tip"][0] > 0
    palm = 0.75 * hand.marks["knuckles"][2]
    flat = hand.points[np.abs(hand.points[:, 2] - palm) < 4]
    flat = flat[np.abs(flat[:, 0]) < 0.21 * 187]
    assert np.ptp(flat[:, 0]) == pytest.approx(0.4175 * 187, rel=0.06)


def test_distance_outside_of_a_ball():
    """Against the distance from a true ball; the form is a mesh of one."""
    radius = 95.0
    ball = trimesh.creation.icosphere(subdivisions=4, radius=radius)
    points = np.asarray(ball.vertices)
    form = Form(points, np.asarray(ball.faces), points / radius, {}, np.ones(len(points), dtype=bool), 6.0)
    way = np.random.default_rng(3).normal(size=(400, 3))
    way /= np.linalg.norm(way, axis=1, keepdims=True)
    reach = np.random.default_rng(4).uniform(0.5, 1.8, 400)
    off = nearest_outside(form, way * (reach * radius)[:, None])[0] - (reach - 1) * radius
    assert np.abs(off).max() < 0.7, "a tenth of the spacing"


@pytest.mark.parametrize("make", [lambda: head_form(math.nan), lambda: head_form(5), lambda: hand_form(200, 1e6)])
def test_an_impossible_size_is_refused(make):
    with pytest.raises(ValueError, match="of a form is 30 to 2000 mm"):
        make()


# --- worn ---------------------------------------------------------------------------------------------------------------------


def test_a_hat_lies_outside_of_the_head_and_keeps_its_stitches():
    head = head_form(561)
    _, shape = hat(106, 20)
    on = worn(shape, head, "hat", thick_mm=3)
    assert nearest_outside(head, on.body.points)[0].min() > 1.5 - 0.6
    assert np.abs(on.body.strain).mean() < 0.06
    assert 1.0 < on.stretch < 561 / (106 * WIDE_MM) + 0.03
    assert on.notes == ()


def test_a_deeper_hat_ends_lower_by_its_rounds():
    head = head_form(561)
    shallow, deep = (worn(hat(110, rounds)[1], head, "hat") for rounds in (12, 20))
    assert shallow.front_mm - deep.front_mm == pytest.approx(8 * 5.0, abs=6)
    assert deep.front_mm - deep.back_mm == pytest.approx(2 * -head.marks["brow"][1] * math.tan(math.radians(12)), abs=10)


def test_it_does_not_matter_how_the_hat_lay_before():
    head = head_form(561)
    _, shape = hat(106, 16)
    turn = np.linalg.qr(np.random.default_rng(5).normal(size=(3, 3)))[0]
    turn *= np.sign(np.linalg.det(turn))
    moved = shape.at(shape.points @ turn.T + np.asarray([300.0, -50.0, 12.0]))
    straight, turned = worn(shape, head, "hat"), worn(moved, head, "hat")
    assert turned.front_mm == pytest.approx(straight.front_mm, abs=4)
    assert turned.stretch == pytest.approx(straight.stretch, abs=0.02)


def test_too_tight_is_said():
    on = worn(hat(80, 20)[1], head_form(561), "hat")
    assert on.stretch > 1.25
    assert any(note.startswith("too tight: stitches would have to stretch") for note in on.notes)


def test_a_tube_goes_on_a_hand():
    around = 40
    _, shape = tube(around, 30)
    hand = hand_form(187, 181)
    on = worn(shape, hand, "mitt")
    assert np.isfinite(on.body.points).all()
    assert on.front_mm < 181 - 0.6 * 30 * 5.0


def test_a_closed_shape_cannot_be_put_on():
    _, ball = sphere(24)
    (edge,) = loops(ball.faces)
    fan = [(edge[0], later, earlier, -1) for earlier, later in itertools.pairwise(edge[1:])]
    closed = np.concatenate((ball.faces, fan))
    owner = np.append(ball.face_stitch, [ball.face_stitch[-1]] * len(fan))
    shut = Body(ball.points, ball.node_of, ball.pairs, ball.rest_mm, ball.strain, closed, owner, ball.piece)
    with pytest.raises(ValueError, match="no edge to put it on by"):
        worn(shut, head_form(561), "hat")


def test_a_form_stands_in_the_scene_beside_the_fabric():
    fabric, shape = hat(60, 6)
    head = head_form(330)
    both = together(buffers(fabric, shape), form_buffers(head))
    assert [p.piece for p in both.parts] == [0, -1]
    assert (both.vertex_stitch[both.parts[1].first_vertex:] == -1).all()
    assert both.indices[both.parts[1].first_triangle:].min() == both.parts[1].first_vertex
