"""Forms that makers know, relaxed."""

import numpy as np
import pytest

from loopwright.measuring.relax import RelaxOptions, relax, stitch_graph
from loopwright.measuring.relax.stuffing import Volume
from tests.measuring.relax import forms


def relaxed(text, kind, **options):
    fabric = forms.made(text)
    return relax(fabric, forms.sizes(kind), RelaxOptions(**options)), stitch_graph(fabric, forms.sizes(kind))


def test_a_rectangle_is_as_wide_and_as_tall_as_its_stitches():
    shape, _ = relaxed(forms.rectangle("dc", 24, 12), "dc")
    width, depth, height = shape.box_mm()
    assert (width, depth) == (pytest.approx(240, rel=0.01), pytest.approx(225.6, rel=0.01))
    assert height < 1
    assert shape.settled
    assert shape.why == ""


def test_a_granny_square_is_square_and_hardly_strained():
    for flat in (False, True):
        shape, graph = relaxed(forms.granny(6), "dc", flat=flat)
        assert shape.measures().strain_mean < 0.05
    edge = shape.points[forms.ring(graph, 6)][:, :2]
    far = np.linalg.norm(edge - edge.mean(axis=0), axis=1)
    corner = edge[far.argmax()] - edge.mean(axis=0)
    across = np.array([-corner[1], corner[0]])
    reach = [np.abs((edge - edge.mean(axis=0)) @ way).max() / np.linalg.norm(way) for way in (corner, across)]
    assert reach[1] == pytest.approx(reach[0], rel=0.02)  # both diagonals
    side = np.ptp(edge @ (corner + across)) / np.linalg.norm(corner + across)
    assert 2 * reach[0] / side > 1.25  # a square's is 1.41 less the two chains that cut its tips; a circle's is 1


def test_a_mitt_has_a_thumb_that_stands_out():
    shape, graph = relaxed(forms.MITT, "hdc")
    assert shape.measures().strain_mean < 0.04
    cuff, thumb = forms.ring(graph, 5), forms.ring(graph, len(graph.along.closed) - 1)
    middle, tip = shape.points[cuff].mean(axis=0)[:2], shape.points[thumb].mean(axis=0)[:2]
    assert np.linalg.norm(tip - middle) > 1.5 * forms.across_mm(shape, graph, 5) / 2
    assert forms.around_mm(shape, graph, 2) == pytest.approx(280, rel=0.01)


def test_parts_that_are_not_joined_lie_side_by_side():
    text = forms.rectangle("sc", 8, 8) + "\nFasten off.\n\nStrap\n" + forms.rectangle("sc", 4, 20)
    shape, _ = relaxed(text, "sc")
    assert set(shape.piece.tolist()) == {0, 1}
    assert shape.points[shape.piece == 0][:, 0].max() < shape.points[shape.piece == 1][:, 0].min()


@pytest.mark.parametrize("text", [forms.disc("dc", 12, 5, 5), forms.tube("sc", 20, 12), forms.MITT])
def test_the_right_side_lies_outward(text):
    shape, _ = relaxed(text, "dc")
    assert Volume(forms.triangles(shape), len(shape.points))(shape.points)[0] > 0


def test_a_hat_stands_with_its_crown_up_and_a_bag_with_its_mouth_up():
    hat, graph = relaxed(forms.disc("dc", 12, 5, 6), "dc")
    assert hat.points[forms.ring(graph, 0)][:, 2].mean() > hat.points[forms.ring(graph, 10)][:, 2].mean()
    bag, graph = relaxed(forms.oval(12, 5) + "\nRnds 6-20: Ch 1, sc in each st around; join.", "sc")
    assert bag.points[forms.ring(graph, 0)][:, 2].mean() < bag.points[forms.ring(graph, 20)][:, 2].mean()


def test_layers_of_a_strong_ruffle_do_not_pass_through_one_another():
    shape, graph = relaxed(forms.disc("dc", 36, 5), "dc")
    p, n = shape.points / forms.WIDTH_MM, len(shape.points)
    near = np.eye(n, dtype=bool)
    link = np.zeros((n, n), bool)
    link[graph.pairs[:, 0], graph.pairs[:, 1]] = link[graph.pairs[:, 1], graph.pairs[:, 0]] = True
    for _ in range(4):
        near |= near.astype(float) @ link > 0
    apart = np.linalg.norm(p[:, None] - p[None], axis=2)[~near]
    assert (apart < 0.3).sum() == 0


def test_stuffing_rounds_a_ball_and_strains_it():
    text = forms.rounds([6, 12, 18, 24, 24, 24, 18, 12, 6])
    plain, filled, firm = (relaxed(text, "sc", stuffed=stuffed)[0] for stuffed in ({}, frozenset({0}), {0: 4.0}))
    round_ = [s.box_mm()[2] / s.box_mm()[0] for s in (plain, filled, firm)]
    assert round_[0] < round_[1] < round_[2]
    assert plain.measures().strain_mean < firm.measures().strain_mean
    assert plain.settled
    assert firm.settled


def test_a_blanket_lies_flat_from_the_start():
    shape, _ = relaxed(forms.rectangle("sc", 60, 60), "sc")
    assert forms.flatness(shape) < 0.001


def test_strains_are_those_of_the_points():
    shape, _ = relaxed(forms.disc("hdc", 10, 6), "hdc")
    length = np.linalg.norm(shape.points[shape.pairs[:, 0]] - shape.points[shape.pairs[:, 1]], axis=1)
    assert np.allclose(shape.strain, length / shape.rest_mm - 1)
    assert shape.measures().strain_max == pytest.approx(np.abs(shape.strain).max())


def test_a_round_that_is_drawn_together_closes():
    fabric = forms.made("Rnd 1: 24 sc in magic ring. (24)\nRnds 2-6: Sc in each st around. (24)\n")
    last = len(fabric.rows) - 1
    nodes = range(fabric.rows[last].start, fabric.rows[last].end)

    def wide(drawn):
        shape = relax(fabric, forms.sizes("sc"), RelaxOptions(drawn=frozenset(drawn)))
        ring = shape.points[shape.node_of[list(nodes)]]
        return float(np.linalg.norm(ring - ring.mean(axis=0), axis=1).mean())

    assert wide([last]) < 0.5 * wide([])
