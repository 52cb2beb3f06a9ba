"""Relaxed shapes against geometry's closed forms: circle, cone, cylinder, sphere, stadium, and Gauss-Bonnet.

Sources: elementary geometry; Gauss-Bonnet for a polyhedral disc (the angle deficits inside and the turning of the rim add up to 2 pi);
the 6, 8 and 12 of the trade: http://craftymaria.blogspot.com/2009/06/getting-your-circles-flat.html.
"""

import math

import numpy as np
import pytest

from loopwright.measuring.relax import RelaxOptions, relax, stitch_graph
from tests.measuring.relax import forms

FLAT = {kind: 2 * math.pi * height for kind, height in forms.USUAL.items()}
RATES = [(kind, round(FLAT[kind]) + away) for kind in FLAT for away in (-2, -1, 0, 1, 2)]


def relaxed(text, kind, height=None, **options):
    fabric, sizes = forms.made(text), forms.sizes(kind, height)
    return relax(fabric, sizes, RelaxOptions(**options)), stitch_graph(fabric, sizes)


@pytest.mark.parametrize(("kind", "rate"), [("sc", 6), ("hdc", 8), ("dc", 12), ("tr", 17)])
@pytest.mark.parametrize("rounds", [8, 14])
def test_a_flat_circle_is_two_row_heights_a_round_across(kind, rate, rounds):
    height = rate / (2 * math.pi)  # stitches of which this many a round fill a plane
    shape, graph = relaxed(forms.disc(kind, rate, rounds), kind, height)
    assert forms.across_mm(shape, graph, rounds - 1) == pytest.approx(2 * rounds * height * forms.WIDTH_MM, rel=0.006)
    assert forms.flatness(shape) < 0.01
    assert shape.measures().strain_mean < 0.012


def test_a_disc_of_twelve_a_round_in_double_crochet_lies_flat():
    shape, graph = relaxed(forms.disc("dc", 12, 12), "dc")
    assert forms.flatness(shape) < 0.01
    by_height, by_stitches = 2 * 12 * 18.8, 144 * forms.WIDTH_MM / math.pi  # 12 is 0.19 more than these stitches need
    assert 0.995 * by_height < forms.across_mm(shape, graph, 11) < 1.005 * by_stitches


@pytest.mark.parametrize(("kind", "rate"), RATES)
def test_curvature_is_that_of_the_cone_and_has_its_sign(kind, rate):
    shape, _ = relaxed(forms.disc(kind, rate, 10), kind)
    cone = 2 * math.pi - rate / forms.USUAL[kind]
    found = forms.curvature(shape)
    # what is hardly too much is pressed flat by the fabric's own stiffness
    assert found == pytest.approx(cone, abs=0.15 if cone > 0 else 0.25)
    if abs(rate - FLAT[kind]) > 0.5:
        assert math.copysign(1, found) == math.copysign(1, cone)


@pytest.mark.parametrize(("kind", "rate"), [("sc", 6), ("hdc", 8), ("dc", 12)])
def test_the_rates_that_the_trade_knows_by_heart_lie_flattest(kind, rate):
    bent = {r: abs(forms.curvature(relaxed(forms.disc(kind, r, 10), kind)[0])) for r in range(rate - 2, rate + 3)}
    assert min(bent, key=bent.__getitem__) == rate


@pytest.mark.parametrize(("kind", "rate"), [("sc", 4), ("hdc", 6), ("dc", 8), ("dc", 10), ("tr", 12)])
def test_a_cup_is_the_cone_of_its_slope(kind, rate):
    rounds = 12
    shape, graph = relaxed(forms.disc(kind, rate, rounds), kind)
    tip, edge = shape.points[forms.ring(graph, 0)].mean(axis=0), shape.points[forms.ring(graph, rounds - 1)]
    slope = rate / FLAT[kind]  # sine of half the opening: the circumference of a slant s is 2 pi s sin
    depth = (rounds - 1) * forms.USUAL[kind] * forms.WIDTH_MM * math.sqrt(1 - slope**2)
    assert np.linalg.norm(edge.mean(axis=0) - tip) == pytest.approx(depth, rel=0.06)  # its tip is rounded
    assert forms.around_mm(shape, graph, rounds - 1) == pytest.approx(rounds * rate * forms.WIDTH_MM, rel=0.015)


@pytest.mark.parametrize("kind", ["sc", "hdc", "dc"])
def test_a_tube_is_a_cylinder(kind):
    shape, graph = relaxed(forms.tube(kind, 40, 16), kind)
    tall = 16 * forms.USUAL[kind] * forms.WIDTH_MM
    ends = [shape.points[forms.ring(graph, row)] for row in (0, 16)]
    assert forms.around_mm(shape, graph, 8) == pytest.approx(400, rel=0.01)
    assert forms.across_mm(shape, graph, 8) == pytest.approx(400 / math.pi, rel=0.01)
    assert np.linalg.norm(ends[0].mean(axis=0) - ends[1].mean(axis=0)) == pytest.approx(tall, rel=0.01)
    assert shape.measures().strain_mean < 0.012


def test_a_hat_is_as_deep_and_as_wide_as_its_rounds():
    shape, graph = relaxed(forms.disc("dc", 12, 6, 8), "dc")
    assert forms.around_mm(shape, graph, 13) == pytest.approx(720, rel=0.01)
    edge = np.linalg.norm(np.diff(shape.points[_wale(graph, 13)], axis=0), axis=1).sum()
    assert edge == pytest.approx(14 * 18.8, rel=0.02)
    assert shape.measures().strain_mean < 0.012


def _wale(graph, row):
    """Nodes from a stitch of a row down to the centre."""
    parent = {int(c): int(p) for c, p in graph.wales}
    found = [int(forms.ring(graph, row)[0])]
    while found[-1] in parent:
        found.append(parent[found[-1]])
    return found


def test_rounds_of_a_sphere_make_one():
    around, rows = 36, 18
    height = 1.0
    counts = [max(5, round(around * math.sin(math.pi * (n - 0.5) / rows))) for n in range(1, rows + 1)]
    shape, _ = relaxed(forms.rounds(counts), "sc", height, stuffed=frozenset({0}))
    out = np.linalg.norm(shape.points - (shape.points.max(axis=0) + shape.points.min(axis=0)) / 2, axis=1)
    radius = around * forms.WIDTH_MM / (2 * math.pi)
    assert out.mean() == pytest.approx(radius, rel=0.04)
    assert out.std() / out.mean() < 0.04


def test_an_oval_is_a_stadium():
    straight, rounds = 12, 8
    shape, _ = relaxed(forms.oval(straight, rounds), "sc", 6 / (2 * math.pi))
    across = 2 * rounds * 6 / (2 * math.pi) * forms.WIDTH_MM
    chain = straight * forms.WIDTH_MM  # two straight sides of so many stitches between two half discs
    assert shape.box_mm()[1] == pytest.approx(across, rel=0.03)
    assert shape.box_mm()[0] == pytest.approx(across + chain, rel=0.03)


@pytest.mark.parametrize("kind", ["sc", "dc"])
def test_a_rectangle_is_its_stitches_by_its_rows(kind):
    shape, _ = relaxed(forms.rectangle(kind, 30, 12), kind)
    sides = sorted([300.0, 12 * forms.USUAL[kind] * forms.WIDTH_MM], reverse=True)
    assert shape.box_mm()[:2] == pytest.approx(sides, rel=0.01)


@pytest.mark.parametrize(("kind", "rate"), [("sc", 4), ("sc", 6), ("hdc", 10), ("dc", 8), ("dc", 12), ("dc", 20)])
def test_gauss_bonnet(kind, rate):
    shape, _ = relaxed(forms.disc(kind, rate, 7), kind)
    assert forms.curvature(shape) + forms.turning(shape) == pytest.approx(2 * math.pi, abs=1e-6)
