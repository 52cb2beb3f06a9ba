"""Yarn of a fabric: by kind, colour and section, calibrated, and whether it is enough."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.measuring.yarn import (
    YarnKnown,
    calibration,
    copies_of,
    fabric_yarn,
    runs_out,
    sizes_that_fit,
    substitute,
    yarn_by_section,
    yarn_from_area,
    yarn_known,
    yarn_need,
    yarn_of,
)
from loopwright.measuring.yarn.need import spread, totals
from loopwright.measuring.yarn.strands import stitch_yarn_mm, thickness_mm
from loopwright.model.measures import YarnNeed
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SIZES = StitchSizes(6, 5.5)
SQUARE = (
    "Gauge: 16 sc and 18 rows = 10 cm\nYarn: worsted, wool, 100 g = 200 m\n{more}\n"
    "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-20: Ch 1, sc in each st across, turn. (20 sc)\n"
)


def worked(text: str):
    document = read(Source.of(text))
    return document, work(document).fabrics[0], stitch_sizes(document).sizes, yarn_known(document)


def test_a_square_takes_its_stitches_chains_and_tails():
    _, fabric, sizes, yarn = worked(SQUARE.format(more=""))
    thick = thickness_mm(sizes.width_mm, yarn.weight, 200)
    made = 400 * stitch_yarn_mm("sc", sizes, thick) + (21 + 19) * stitch_yarn_mm("ch", sizes, thick)
    (need,) = yarn_need(fabric, sizes, yarn)
    assert need.length_m == pytest.approx((made + 2 * 175) / 1000)
    assert need.low_m < need.length_m < need.high_m
    assert need.mass_g == pytest.approx(need.length_m / 2)
    assert need.balls == 1
    assert "10 % more" in need.how


@pytest.mark.parametrize(("less", "more"), [
    ("sl st", "sc"), ("sc", "hdc"), ("hdc", "dc"), ("dc", "tr"), ("tr", "dtr"), ("sc", "sc2tog"), ("sc2tog", "sc3tog"), ("dc", "fpdc"),
    ("dc", "dc3tog"), ("dc3tog", "bobble"), ("bobble", "popcorn"), ("sc", "fsc"), ("ch", "picot"),
])
def test_more_is_drawn_up_more_is_taken(less, more):
    assert stitch_yarn_mm(less, SIZES, 2) < stitch_yarn_mm(more, SIZES, 2)


def test_tall_stitches_take_more_in_a_loose_gauge():
    tight, loose = StitchSizes(6, 5), StitchSizes(6, 7)
    assert stitch_yarn_mm("ch", tight, 2) == stitch_yarn_mm("ch", loose, 2)
    rise = [stitch_yarn_mm(k, loose, 2) / stitch_yarn_mm(k, tight, 2) for k in ("sc", "dc", "tr")]
    assert 1 < rise[0] < rise[1] < rise[2]


def test_a_thicker_yarn_at_one_gauge_takes_more_and_no_label_is_believed_without_bound():
    assert thickness_mm(6, metres_per_100g=400) < thickness_mm(6) * 1.01
    assert thickness_mm(6, metres_per_100g=400) < thickness_mm(6, metres_per_100g=100)
    assert thickness_mm(6, metres_per_100g=20_000) == pytest.approx(math.sqrt(2 * 1))
    assert thickness_mm(6, metres_per_100g=3) == pytest.approx(math.sqrt(2 * 3))


TWO = (
    "Gauge: 16 sc and 18 rows = 10 cm\nYarn: worsted, 100 g = 200 m\n\nBody\nWith A, ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    "Row 2: With B, ch 1, sc in each st across, turn. (20 sc)\n\nStrap (make 3)\nWith B, ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10 sc)\n"
)


def test_colours_and_sections_add_up_and_copies_count():
    document, fabric, sizes, yarn = worked(TWO)
    copies = copies_of(document)
    assert copies == {"Body": 1, "Strap": 3}
    whole = {n.colour: n.length_m for n in yarn_need(fabric, sizes, yarn, copies)}
    sections = yarn_by_section(fabric, sizes, yarn, copies)
    assert set(sections) == {"Body", "Strap"}
    assert all(n.balls is None for needs in sections.values() for n in needs)
    assert sum(n.length_m for needs in sections.values() for n in needs) == pytest.approx(sum(whole.values()))
    once = {n.colour: n.length_m for n in yarn_need(fabric, sizes, yarn)}
    strap = sum(n.length_m for n in sections["Strap"])
    assert sum(whole.values()) - sum(once.values()) == pytest.approx(strap * 2 / 3)


def test_a_change_of_colour_leaves_two_tails():
    _, fabric, sizes, yarn = worked(TWO)
    _, tails = totals(fabric_yarn(fabric, sizes, yarn).rows)
    assert sum(tails.values()) == pytest.approx(175 * (2 + 2 + 2)), "two pieces, and one change between rows"


def test_sizes_of_copies():
    document = read(Source.of("Sizes: small, large\nGauge: 16 sc = 10 cm\n\nSquare (make 12 (20))\nRnd 1: 6 sc in magic ring.\n"))
    assert list(copies_of(document, 0).values()) == [12]
    assert list(copies_of(document, 1).values()) == [20]


def test_a_weighed_swatch_calibrates_its_kind_and_the_others():
    _, fabric, sizes, yarn = worked(SQUARE.format(more="Swatch: 20 sts x 20 rows of sc weighs 15 g"))
    hers = calibration(yarn, sizes)
    plain = yarn_need(fabric, sizes, yarn)[0]
    need = yarn_need(fabric, sizes, yarn, calibrated=hers)[0]
    assert need.mass_g == pytest.approx(15, rel=0.04), "the swatch itself, but for tails and turning chains"
    assert need.high_m / need.low_m < plain.high_m / plain.low_m
    assert hers.of("dc") == hers.factor
    assert "weighed swatch of sc" in need.how


def test_before_and_after_weights_and_lengths_tell_the_same():
    by = [yarn_known(read(Source.of(SQUARE.format(more=f"Swatch: 20 sc x 20 rows {how}")))).swatches[0] for how in ("weighs 12 g", "50 g before, 38 g after")]
    assert [s.grams for s in by] == [12, 12]
    assert yarn_known(read(Source.of(SQUARE.format(more="Swatch: 20 sc x 20 rows takes 24 m")))).swatches[0].metres == 24


def test_an_absurd_weight_is_not_used_and_said():
    _, _, sizes, yarn = worked(SQUARE.format(more="Swatch: 20 sc x 20 rows weighs 600 g"))
    hers = calibration(yarn, sizes)
    assert hers.factor == 1
    assert "not used" in hers.doubts[0]


def test_a_weighed_piece_calibrates_by_its_size():
    _, fabric, sizes, yarn = worked(SQUARE.format(more="Sample: child size weighs 12 g"))
    assert (yarn.samples[0].size, yarn.samples[0].grams) == ("child", 12)
    plain = yarn_need(fabric, sizes, yarn)[0]
    hers = calibration(yarn, sizes, {"child": plain.length_m})
    assert hers.factor == pytest.approx(24 / plain.length_m)


@pytest.mark.parametrize(("words", "grams", "metres", "balls", "strands"), [
    ("worsted, wool, 100 g = 200 m", 100, 200, None, 1), ("DK, 2 balls of 50 g / 120 m each", 50, 120, 2, 1), ("50 g (115 m), held double", 50, 115, None, 2),
    ("220 yds per 100 g skein", 100, 201.168, None, 1), ("3 skeins, 3.5 oz/1,000 yd", 99.225, 914.4, 3, 1), ("wool", None, None, None, 1), ("0 g = 200 m", None, None, None, 1),
])
def test_yarn_lines(words, grams, metres, balls, strands):
    yarn = yarn_of(words)
    assert yarn.ball_g == (None if grams is None else pytest.approx(grams))
    assert yarn.ball_m == (None if metres is None else pytest.approx(metres))
    assert (yarn.balls, yarn.strands) == (balls, strands)


def test_colours_of_a_yarn_line():
    assert yarn_of("DK, wool, 50 g = 120 m, in A (stone), B (mauve) and C (sage)").colours == {"A": "stone", "B": "mauve", "C": "sage"}


def test_which_sizes_fit_and_the_scarcest_colour_says_so():
    needs = {"small": (YarnNeed("A", 80, 70, 92), YarnNeed("B", 10, 9, 12)), "large": (YarnNeed("A", 120, 105, 138), YarnNeed("B", 15, 13, 18)), "none": ()}
    fits = sizes_that_fit(needs, {"A": 110.0, "B": 12.0})
    assert [(f.size, f.verdict) for f in fits] == [("small", "fits"), ("large", "does not fit"), ("none", "unknown")]
    assert (fits[1].colour, fits[1].spare_m) == ("B", -3.0)
    assert [f.verdict for f in sizes_that_fit(needs, 120.0)] == ["fits", "may not reach", "unknown"]


def test_where_the_yarn_runs_out():
    _, fabric, sizes, yarn = worked(SQUARE.format(more=""))
    found = fabric_yarn(fabric, sizes, yarn)
    total = sum(row.total_mm for row in found.rows) / 1000
    half, first = runs_out(fabric, found, total / 2, spread(sizes, yarn, None)), runs_out(fabric, found, 0, 0.1)
    assert half is not None
    assert first is not None
    assert first.row == 0
    assert half.earliest < half.row < half.latest
    assert fabric.rows[half.row].label == half.label
    assert half.share == pytest.approx(0.5)
    assert runs_out(fabric, found, total * 1.001, 0.1) is None
    with pytest.raises(ValueError, match="length of 0 or more"):
        runs_out(fabric, found, -1, 0.1)


def test_another_yarn_is_bought_by_metres():
    assert substitute(400, 120, contingency=0) == 4
    assert substitute(360, 120, contingency=0) == 3
    assert substitute(360, 120) == 4
    for length, ball in ((-1, 100), (math.nan, 100), (100, 0), (math.inf, 100)):
        with pytest.raises(ValueError, match=r"nought|0 or more"):
            substitute(length, ball)


def test_area_and_count_agree_for_a_solid_square():
    _, fabric, sizes, yarn = worked(SQUARE.format(more=""))
    counted = yarn_need(fabric, sizes, yarn)[0].length_m
    by_area = yarn_from_area(400 * sizes.width_mm * sizes.row_mm, sizes, yarn)
    assert by_area.length_m == pytest.approx(counted, rel=0.08), "the chains and tails apart"
    assert by_area.high_m / by_area.length_m > 1.2


def test_open_fabric_takes_less_and_posts_more():
    lengths = [yarn_from_area(10_000, SIZES, YarnKnown(), "dc", fill).length_m for fill in ("filet", "openwork", "solid", "post")]
    assert lengths == sorted(lengths)


@pytest.mark.parametrize(("area", "fill", "word"), [(0, "solid", "more than nought"), (math.nan, "solid", "more than nought"), (10, "fluff", "no fill called")])
def test_areas_that_are_none(area, fill, word):
    with pytest.raises(ValueError, match=word):
        yarn_from_area(area, SIZES, YarnKnown(), fill=fill)


def test_lace_thread_without_a_gauge_is_half_to_double_and_says_so():
    document = read(Source.of("Yarn: crochet cotton size 20\nHook: steel 8\nRnd 1: Ch 6, join.\nRnd 2: Ch 3, 15 dc in ring, join."))
    fabric, sizes = work(document).fabrics[0], stitch_sizes(document).sizes
    assert fabric is not None
    assert sizes is not None
    need = yarn_need(fabric, sizes, yarn_known(document))[0]
    assert need.high_m / need.length_m == pytest.approx(2, rel=0.02)
    assert "half to double" in need.how


@given(st.text(max_size=60) | st.from_regex(r"(DK|lace|)[, ]*[0-9]{0,3} ?(g|oz) ?(=|/|per)? ?[0-9]{0,4}[.,]?[0-9]{0,3} ?(m|yds)", fullmatch=True))
def test_any_yarn_line_gives_sound_figures_or_none(text):
    yarn = yarn_of(text)
    assert yarn.metres_per_100g is None or 3 <= yarn.metres_per_100g <= 20_000


@given(st.floats(0.2, 200), st.floats(0.2, 200), st.sampled_from(["ch", "sc", "dc", "fptr2tog", "popcorn", "", "bean st", "dc99tog"]))
def test_no_stitch_takes_nothing_or_without_end(width, row, kind):
    assert 0 < stitch_yarn_mm(kind, StitchSizes(width, row), thickness_mm(width)) < 10_000_000
