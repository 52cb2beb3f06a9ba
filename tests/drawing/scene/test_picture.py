import io
import math

import numpy as np
import pytest
from PIL import Image

from loopwright.drawing.scene.buffers import buffers
from loopwright.drawing.scene.picture import as_png, picture
from loopwright.drawing.scene.raster import nearest, shares
from tests.drawing.scene.rounds import disc, sphere, tube

CLEAR = (0, 0, 0, 0)


def test_a_ball_is_round_from_every_side():
    fabric, shape = sphere(48)
    drawn = buffers(fabric, shape, level="plain")
    for view in ((0, 0), (37, 50), (200, 89)):
        cover = picture(drawn, view=view, width_px=200, height_px=200, background=CLEAR)[:, :, 3] / 255
        box = 180.0
        assert cover.sum() == pytest.approx(math.pi / 4 * box**2, rel=0.03)


def test_a_disc_is_thin_from_the_side_and_round_from_above():
    fabric, shape = disc(8)
    drawn = buffers(fabric, shape, level="facets")
    above, aside = (picture(drawn, view=view, width_px=200, height_px=200, background=CLEAR)[:, :, 3] / 255 for view in ((0, 90), (0, 0)))
    assert above.sum() == pytest.approx(math.pi / 4 * 180**2, rel=0.02)
    assert aside.sum() < 0.08 * above.sum()


def test_from_below_the_wrong_side_shows():
    fabric, shape = disc(6)
    drawn = buffers(fabric, shape, level="facets", by="side")
    above, below = (picture(drawn, view=(0, e), width_px=80, height_px=80)[40, 40, :3].astype(int) for e in (90, -90))
    assert above[2] > above[0], "blue: the right side"
    assert below[0] > below[2], "vermilion: the wrong side"


def test_the_nearer_of_two_triangles_is_seen():
    far = [[2.0, 2.0, 0.0], [30.0, 2.0, 0.0], [2.0, 30.0, 0.0]]
    near = [[2.0, 2.0, 5.0], [15.0, 2.0, 5.0], [2.0, 15.0, 5.0]]
    for order in ([far, near], [near, far]):
        hit = nearest(np.asarray(order), 32, 32)[0].reshape(32, 32)
        assert hit[4, 4] == order.index(near)
        assert hit[4, 24] == order.index(far)
        assert hit[31, 31] == -1


def test_triangles_that_share_a_side_leave_no_gap_and_do_not_overlap():
    rng = np.random.default_rng(7)
    for _ in range(20):
        a, b, c, d = rng.uniform(1, 47, 2), rng.uniform(1, 47, 2), rng.uniform(1, 47, 2), rng.uniform(1, 47, 2)
        corners = np.zeros((2, 3, 3))
        corners[0, :, :2], corners[1, :, :2] = (a, b, c), (a, b, d)
        alone = [(nearest(corners[[k]], 48, 48)[0] == 0) for k in (0, 1)]
        side = [(b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) for p in (c, d)]
        if side[0] * side[1] < 0:
            assert not (alone[0] & alone[1]).any()
        assert np.array_equal(nearest(corners, 48, 48)[0] >= 0, alone[0] | alone[1])


def test_samples_agree_with_the_inside_of_the_triangle():
    corners = np.asarray([[[3.2, 4.1, 0.0], [40.7, 9.3, 1.0], [11.5, 44.9, 2.0]]])
    inside = nearest(corners, 48, 48)[0] == 0
    every = np.arange(48 * 48)
    x, y = every % 48 + 0.5, every // 48 + 0.5
    (ax, ay, _), (bx, by, _), (cx, cy, _) = corners[0]
    turns = [(bx - ax) * (y - ay) - (by - ay) * (x - ax), (cx - bx) * (y - by) - (cy - by) * (x - bx), (ax - cx) * (y - cy) - (ay - cy) * (x - cx)]
    assert np.array_equal(inside, np.all([t > 0 for t in turns], axis=0))
    weight = shares(corners, np.zeros(int(inside.sum()), dtype=np.int64), 48, every[inside])
    assert np.allclose(weight @ corners[0, :, :2], np.stack((x, y), axis=1)[inside], atol=1e-3)


def test_png_reads_back():
    fabric, shape = tube(12, 4)
    pixels = picture(buffers(fabric, shape), width_px=60, height_px=50)
    assert np.array_equal(np.asarray(Image.open(io.BytesIO(as_png(pixels)))), pixels)
    assert pixels.shape == (50, 60, 4)
    assert (pixels[0, 0] == 255).all()


def test_nothing_gives_the_background():
    fabric, shape = disc(2)
    empty = type(shape)(shape.points, shape.node_of, shape.pairs[:0], shape.rest_mm[:0], shape.strain[:0], shape.faces[:0], shape.face_stitch[:0], shape.piece)
    assert (picture(buffers(fabric, empty), width_px=20, height_px=20, background=(9, 8, 7, 255)) == [9, 8, 7, 255]).all()


def test_a_size_beyond_the_limit_is_refused():
    fabric, shape = disc(2)
    with pytest.raises(ValueError, match="1 to 4000 pixels"):
        picture(buffers(fabric, shape), width_px=40_000)
