import numpy as np
import pytest

from loopwright.drawing.scene.body import Body
from loopwright.drawing.scene.stood import stood
from tests.drawing.scene.rounds import disc, hat, sphere


def tumbled(shape: Body, seed: int) -> Body:
    turn = np.linalg.qr(np.random.default_rng(seed).normal(size=(3, 3)))[0]
    return shape.at(shape.points @ (turn * np.sign(np.linalg.det(turn))).T + [40.0, -9.0, 300.0])


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_hat_stands_crown_up_and_a_bag_opening_up(seed):
    _, shape = hat(40, 10)
    crown = shape.pairs[:, 0].min()  # the middle of the ring
    up, down = stood(tumbled(shape, seed)), stood(tumbled(shape, seed), opening_up=True)
    assert up.points[:, 2].min() == pytest.approx(0, abs=1e-9)
    assert up.points[crown, 2] == pytest.approx(up.points[:, 2].max(), abs=1.0)
    assert down.points[crown, 2] == pytest.approx(0, abs=1.0)
    assert np.allclose(up.strain, shape.strain)


def test_a_flat_piece_lies_right_side_up():
    _, shape = disc(6)
    flat = stood(tumbled(shape, 4))
    assert np.ptp(flat.points[:, 2]) < 1e-6
    a, b, c = (flat.points[flat.faces[:, k]] for k in range(3))
    assert (np.cross(b - a, c - a)[:, 2] > 0).all()


def test_parts_stand_beside_each_other_on_one_floor():
    _, one = hat(24, 4)
    moved = one.points * [1, 1, -1] + [3.0, 0.0, 7.0]
    count = len(one.points)
    two = Body(np.concatenate((one.points, moved)), np.concatenate((one.node_of, np.where(one.node_of >= 0, one.node_of + count, -1))),
               np.concatenate((one.pairs, one.pairs + count)), np.tile(one.rest_mm, 2), np.tile(one.strain, 2),
               np.concatenate((one.faces, np.where(one.faces >= 0, one.faces + count, -1))), np.tile(one.face_stitch, 2), np.repeat([0, 1], count))
    placed = stood(two).points
    assert placed[:count, 0].max() < placed[count:, 0].min() or placed[count:, 0].max() < placed[:count, 0].min()
    assert placed[:count, 2].min() == pytest.approx(placed[count:, 2].min(), abs=1e-9)


def test_a_ball_stays_and_nothing_is_nothing():
    _, ball = sphere(24)
    assert np.ptp(stood(ball).points[:, 2]) == pytest.approx(np.ptp(ball.points[:, 2]), rel=0.1)
    empty = np.zeros((0, 3))
    none = np.zeros(0, dtype=np.int64)
    nothing = Body(empty, none, none.reshape(0, 2), np.zeros(0), np.zeros(0), none.reshape(0, 4), none, none)
    assert len(stood(nothing).points) == 0
