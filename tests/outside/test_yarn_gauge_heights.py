"""Heights of stitches against published gauges, flat circles and measured rows; widths by hook and yarn against published gauges."""

import math

import pytest

from loopwright.grading.gauge import sizes_from
from loopwright.grading.gauge.guess import guess
from loopwright.grading.gauge.sizes import relative_height, usual_shape
from loopwright.grading.gauge.written import parse_gauge
from loopwright.trade.stitches import circle, flat_rate, swatches
from loopwright.trade.yarn import weight

# stitches a round of a flat circle: http://craftymaria.blogspot.com/2009/06/getting-your-circles-flat.html (6, 8, 12);
# http://mkcarroll.com/blog/2009/5/14/how-not-to-crochet-a-flat-circle.html (dc 10 to 12, tr 12 to 14)
FLAT = {"sc": (5, 7), "hdc": (7, 9), "dc": (10, 12.5), "tr": (12, 18)}


@pytest.mark.parametrize("kind", FLAT)
def test_the_usual_shape_gives_the_customary_circle(kind):
    low, high = FLAT[kind]
    assert low <= flat_rate(1, usual_shape(kind)) <= high


@pytest.mark.parametrize("swatch", swatches(), ids=lambda s: f"{s.stitch} {s.stitches:g} x {s.rows:g}")
def test_published_gauges_lie_near_the_usual_shape(swatch):
    assert swatch.height_over_width == pytest.approx(usual_shape(swatch.stitch), rel=0.12)


@pytest.mark.parametrize(("kind", "measured"), [("hdc", 1.45), ("dc", 1.91)])
def test_measured_rows_stand_as_the_table_says(kind, measured):
    """Rows of the measured swatches of https://www.windchilde.com/bluedepth/tag/crochet/, against its row of sc."""
    assert relative_height(kind) == pytest.approx(measured, rel=0.06)


@pytest.mark.parametrize(("kind", "usual"), [("tr", 16), ("dtr", 20)])
def test_tall_stitches_keep_the_proportion_of_their_circles(kind, usual):
    flat = circle(kind)
    assert flat is not None
    assert flat.usual == usual
    assert relative_height(kind) / relative_height("dc") == pytest.approx(usual / 12, rel=0.02)


@pytest.mark.parametrize(
    ("yarn", "hook_mm", "kind", "stitches_in_10_cm"),
    [
        ("medium", 5.5, "sc", 13 / 1.016),  # crochet handbook, medium yarn, I-9 hook: https://thenovelorange.com/ (the full address stands in stitches.toml)
        ("worsted", 4.5, "hdc", 13 / 1.016),  # measured swatch, 4.5 mm hook: http://www.niftynnifer.com/2013/07/how-to-measure-crochet-gauge-by.html
        ("worsted", 5.5, "hdc", 13 / 1.016),  # common practice, no source: hdc in worsted with an I-9 hook
        ("DK", 4.0, "dc", 17.5),  # common practice, no source: 17 to 18 in DK with a 4 mm hook
    ],
)
def test_a_guess_from_yarn_and_hook_holds_the_published_gauge_in_its_range(yarn, hook_mm, kind, stitches_in_10_cm):
    found = guess(kind, weight(yarn), hook_mm)
    assert found is not None
    assert abs(math.log(found.sizes.width_mm * stitches_in_10_cm / 100)) <= 2 * found.sizes.width_share


def test_five_rounds_of_double_crochet_with_a_6_mm_hook_in_light_yarn_lie_about_5_in_across():
    """Common practice, no source."""
    found = guess("dc", weight("light"), 6.0)
    assert found is not None
    across_mm = 2 * 5 * found.sizes.height("dc")
    assert abs(math.log(across_mm / 127)) <= 2 * found.sizes.height_share


def test_a_crown_that_rows_and_stitches_tell_differently():
    """72 hdc in 9 rounds at 16 sts and 14 rows in 4 in: 5.73 in across by the stitches, 5.14 by the rounds.

    https://www.d60crochet.com/p/chains-of-color-beanie.html, where 6.25 in is printed: a crown is not known from a flat swatch.
    """
    sizes = sizes_from(parse_gauge("16 hdc and 14 rows = 4 in"), "hdc")
    assert 72 * sizes.width("hdc") / math.pi / 25.4 == pytest.approx(5.73, abs=0.01)
    assert 2 * 9 * sizes.height("hdc") / 25.4 == pytest.approx(5.14, abs=0.01)
