"""Published sums of yarn and time; the source of each stands beside it."""

import pytest

from loopwright.grading.gauge import StitchSizes, sizes_from
from loopwright.grading.gauge.written import parse_gauge
from loopwright.measuring.time import time_of
from loopwright.measuring.yarn import YarnKnown, fabric_yarn, runs_out, substitute, yarn_from_area, yarn_of
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.yarn_use import yarn_use
from loopwright.working import work


def test_metres_to_the_gram():
    """190 yd in 100 g are 1.9 yd to the gram: https://sassandstitch.com/tips-and-tricks/how-to-calculate-yardage-for-crochet/."""
    yarn = yarn_of("wool, 100 g = 190 yd")
    assert yarn.metres_per_100g == pytest.approx(190 * 0.9144)


@pytest.mark.parametrize(
    ("length", "ball", "balls"),
    [
        (5 * 338, 124, 14),  # 5 balls of 338 m by balls of 124 m: http://cebuana80.blogspot.com/2015/01/yarn-substitution-in-crochet-and.html
        (4 * 150, 200, 3),  # 4 of 150 yd by 200 yd: http://crochet.lifetips.com/tip/152677/starting-a-project/starting-a-project/substituting-yarn.html
    ],
)
def test_balls_of_another_yarn(length, ball, balls):
    assert substitute(length, ball, contingency=0) == balls


def test_what_to_add():
    """200 m used are listed as 220 to 230: https://deviousknitter.com/did-the-designer-include-enough-yarn-to-swatch."""
    assert [round(200 * (1 + share)) for share in (yarn_use().plain, yarn_use().patterned)] == [220, 230]


def test_half_the_rounds_take_little_more_than_a_quarter():
    """Rounds in pairs of 8, 16 ... 64 stitches: 160 of 576 are worked after 8 of 16 rounds, half after 11 of them.

    http://cromulentknitter.blogspot.com/2006/10/math-for-doilies-and-shawls-part-2.html. The yarn of our rounds follows the same shares.
    """
    counts = [n for n in (8, 16, 24, 32, 40, 48, 56, 64) for _ in range(2)]
    told = {False: "Sc in each st around.", True: "Sc around, increasing evenly to {} sts."}
    rounds = [f"Rnd {i + 1}: {told[counts[i] > counts[i - 1]].format(counts[i])} ({counts[i]})" for i in range(1, 16)]
    document = read(Source.of("\n".join([f"Rnd 1: {counts[0]} sc in magic ring.", *rounds])))
    fabric = work(document).fabrics[0]
    assert fabric is not None
    sizes = StitchSizes(5, 5)
    found = fabric_yarn(fabric, sizes, YarnKnown())
    by_row = [sum(row.stitches_mm.values()) for row in found.rows]
    assert len(by_row) == 16
    assert sum(by_row[:8]) / sum(by_row) == pytest.approx(0.278, abs=0.01)
    assert sum(by_row[:11]) / sum(by_row) == pytest.approx(0.5, abs=0.01)
    half = runs_out(fabric, found, sum(row.total_mm for row in found.rows) / 2000, 0.1)
    assert half is not None
    assert half.row in (10, 11)


def test_a_blanket_by_its_gauge():
    """13 sts and 7.5 rows in 4 in, 50 by 60 in: 162 by 112 stitches, 18144: https://rebab.net/how-many-yards-of-yarn-to-crochet-a-blanket/."""
    sizes = sizes_from(parse_gauge("13 dc and 7.5 rows = 4 in"), "dc")
    assert 50 * 25.4 / sizes.width_mm * 60 * 25.4 / sizes.row_mm == pytest.approx(18144, rel=0.01)


def test_area_goes_with_the_square():
    """Twice the length takes four times the yarn: http://qtpi.net/blog/?p=224."""
    sizes = StitchSizes(5, 5)
    small, large = (yarn_from_area(area, sizes, YarnKnown()).length_m for area in (10_000, 40_000))
    assert large == pytest.approx(4 * small)


def test_hours_by_a_timed_stitch():
    """3000 stitches at 2.8 s are 2.333 hours, finishing apart: https://www.runningwithscissorsmn.com/post/how-i-set-my-prices."""
    low, high = yarn_use().speed.finishing
    need = time_of({"sc": 3000}, {"sc": 2.8})
    assert need.value_min / 60 * (1 - (low + high) / 2) == pytest.approx(2.333, abs=0.001)


@pytest.mark.parametrize(
    ("around_in", "printed_yd", "near"), [(8.75, 17, 0.4), (11.25, 34, 0.2), (12.25, 43, 0.2), (13.5, 51, 0.2)],
)  # fmt: skip
def test_small_hats_of_double_crochet(around_in, printed_yd, near):
    """Hats of 3 dc and 2 rows to the inch in worsted yarn, by their printed lengths; around is the middle of the printed range.

    https://creamofthecropcrochet.com/preemie-newborn-landon-hat-crochet-pattern/. How deep they are is not printed: two fifths of around is
    taken, so the smallest comes near only.
    """
    around_mm, printed_m = around_in * 25.4, printed_yd * 0.9144
    sizes = sizes_from(parse_gauge("3 dc and 2 rows = 1 in"), "dc", 3, 2)
    area = around_mm**2 / 4 / 3.14159 + around_mm * (0.4 * around_mm - around_mm / 2 / 3.14159)
    need = yarn_from_area(area, sizes, yarn_of("worsted"))
    assert need.low_m < printed_m < need.high_m
    assert need.length_m == pytest.approx(printed_m, rel=near)
