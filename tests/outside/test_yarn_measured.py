"""Yarn in a stitch against measured swatches, and a weighed swatch of one stitch foretelling the others.

Source: measured swatches (worsted yarn, 5 mm hook, pieces 5 in long), https://www.windchilde.com/bluedepth/tag/crochet/ : yarn for 5 in of a
chain 25.5 in, of a row of sc 53, hdc 78.5, dc 102, foundation sc 80; for 25 square inches of sc 785.5, hdc 802, dc 790. The width of its
stitches is not told: one width is taken for all, 13.5 stitches in 4 in, between the classes' 11 to 14 for worsted yarn; row heights follow
from the figures (25 times the yarn of a row over that of the square).
"""

import itertools

import pytest

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.yarn import YarnKnown, calibration
from loopwright.measuring.yarn.known import Weighed
from loopwright.measuring.yarn.strands import stitch_yarn_mm, thickness_mm
from loopwright.trade.yarn import weight

IN = 25.4
ROW_IN = {"ch": 25.5, "sc": 53.0, "hdc": 78.5, "dc": 102.0, "fsc": 80.0}  # yarn for 5 in
SQUARE_IN = {"sc": 785.5, "hdc": 802.0, "dc": 790.0}  # yarn for 25 square inches
WIDTH_MM = 4 * IN / 13.5
HEIGHT_MM = {kind: 5 * IN * ROW_IN[kind] / SQUARE_IN[kind] for kind in SQUARE_IN}
SIZES = StitchSizes(WIDTH_MM, HEIGHT_MM["sc"], "sc", own={k: (WIDTH_MM, h) for k, h in HEIGHT_MM.items()})
THICK_MM = thickness_mm(WIDTH_MM, weight("worsted"))


def model_in(kind):
    """Our yarn for 5 in, in inches."""
    return 5 * IN / WIDTH_MM * stitch_yarn_mm(kind, SIZES, THICK_MM) / IN


@pytest.mark.parametrize("kind", ROW_IN)
def test_rows_take_what_was_measured(kind):
    assert model_in(kind) == pytest.approx(ROW_IN[kind], rel=0.06)


@pytest.mark.parametrize(("weighed", "other"), list(itertools.permutations(SQUARE_IN, 2)))
def test_one_weighed_stitch_foretells_another(weighed, other):
    """Leave one out: calibrated by one kind alone, with heights by the table and not by its own swatch, the other comes within a tenth."""
    sizes = StitchSizes(WIDTH_MM, HEIGHT_MM[weighed], weighed)
    rows = 5 * IN / HEIGHT_MM[weighed]
    stitches = 5 * IN / WIDTH_MM
    chain_m = ROW_IN["ch"] * IN / 1000
    yarn = YarnKnown(weight("worsted"), 100, 200, swatches=(Weighed(weighed, stitches, rows, None, SQUARE_IN[weighed] * IN / 1000 + chain_m, ""),))
    hers = calibration(yarn, sizes)
    thick = thickness_mm(WIDTH_MM, yarn.weight, yarn.metres_per_100g)
    foretold = hers.of(other) * stitches * stitch_yarn_mm(other, sizes, thick) / IN
    assert foretold == pytest.approx(ROW_IN[other], rel=0.10)


def test_equal_areas_take_nearly_the_same():
    """The published squares differ by 2 %; ours, with the usual heights, by less than a tenth."""
    sizes = StitchSizes(WIDTH_MM, HEIGHT_MM["sc"])
    per_area = [stitch_yarn_mm(k, sizes, THICK_MM) / sizes.height(k) for k in ("sc", "hdc", "dc")]
    assert max(per_area) / min(per_area) < 1.10
