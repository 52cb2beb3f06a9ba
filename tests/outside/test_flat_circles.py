"""How many stitches a flat circle gains a round: the geometry, the published gauges and the trade's habits against each other.

Sources: the gauges named in `data/stitches.toml`; habits of 6, 8 and 12 (http://craftymaria.blogspot.com/2009/06/getting-your-circles-flat.html),
6, 8, 10-12 and 12-14 (http://mkcarroll.com/blog/2009/5/14/how-not-to-crochet-a-flat-circle.html); the circumference of a circle by its polygon
of many sides (Archimedes, Measurement of a Circle).
"""

import math
from itertools import pairwise

import pytest

from loopwright.grading import discs
from loopwright.trade import stitches

FROM_GAUGES = {("sc", 14.0): 5.50, ("sc", 13.0): 5.45, ("sc", 12.0): 5.03, ("hdc", 13.0): 9.08, ("dc", 12.0): 11.60}  # 2 pi stitches / rows


def round_by_polygon(radius: float, sides: int = 6 * 2**16) -> float:
    """The way round a circle as the sum of the sides of a polygon in it, doubled from a hexagon as Archimedes did."""
    side, count = 1.0, 6
    while count < sides:
        side = math.sqrt(2 - math.sqrt(4 - side * side)) if count < 6 * 2**8 else side / math.sqrt(2 + math.sqrt(4 - side * side))
        count *= 2
    return radius * side * count


@pytest.mark.parametrize(("width", "height"), [(6.3, 5.5), (7.8, 11.3), (8.5, 15.6), (5.0, 5.0)])
def test_each_round_further_out_takes_the_flat_rate_more(width: float, height: float) -> None:
    rounds = [round_by_polygon(n * height) / width for n in range(1, 9)]
    for inner, outer in pairwise(rounds):
        assert outer - inner == pytest.approx(stitches.flat_rate(width, height), rel=1e-6)


@pytest.mark.parametrize("swatch", stitches.swatches(), ids=lambda s: f"{s.stitch}-{s.stitches:g}")
def test_the_rate_of_published_gauges(swatch: stitches.Swatch) -> None:
    wide, tall = 101.6 / swatch.stitches, 101.6 / swatch.rows
    assert stitches.flat_rate(wide, tall) == pytest.approx(FROM_GAUGES[swatch.stitch, swatch.stitches], abs=0.01)
    assert discs.flat_rate(wide, tall) == pytest.approx(stitches.flat_rate(wide, tall))


@pytest.mark.parametrize("swatch", stitches.swatches(), ids=lambda s: f"{s.stitch}-{s.stitches:g}")
def test_habit_and_geometry_are_within_a_stitch(swatch: stitches.Swatch) -> None:
    circle = stitches.circle(swatch.stitch)
    assert circle is not None
    assert circle.low - 1 <= 2 * math.pi * swatch.height_over_width <= circle.high + 1


@pytest.mark.parametrize("swatch", stitches.swatches(), ids=lambda s: f"{s.stitch}-{s.stitches:g}")
def test_shapes_agree_with_the_gauges(swatch: stitches.Swatch) -> None:
    shape = stitches.shape(swatch.stitch)
    assert shape is not None
    assert shape.low - 0.01 <= 1 / swatch.height_over_width <= shape.high + 0.01


def test_the_numbers_known_by_heart_are_the_tables() -> None:
    for stitch, rate in discs.BY_HEART.items():
        circle = stitches.circle(stitch)
        assert circle is not None
        assert circle.usual == rate


def test_taller_stitches_turn_with_more_chains_and_gain_more() -> None:
    known = [stitches.stitch(key) for key in ("sc", "hdc", "dc", "tr", "dtr")]
    assert [s.turning_chains for s in known if s] == [1, 2, 3, 4, 5]
    assert [s.first_chain for s in known if s] == [2, 3, 4, 5, 6]
    circles = [stitches.circle(key) for key in ("sc", "hdc", "dc", "tr", "dtr")]
    assert [c.usual for c in circles if c] == [6, 8, 12, 16, 20]
