"""Gauge lines with more than one swatch, and the sizes of stitches that a whole pattern tells."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading.gauge import StitchSizes, parse_gauge, read_swatches, sizes_from, stitch_sizes
from loopwright.grading.gauge.heading import hook_of, yarn_class
from loopwright.grading.gauge.sizes import relative_height, usual_shape
from loopwright.notation import read
from loopwright.source import Source
from loopwright.terms import dialect


def found(text: str, gauge: str | None = None):
    return stitch_sizes(read(Source.of(text)), parse_gauge(gauge) if gauge else None)


@pytest.mark.parametrize(("text", "told"), [
    ("17 hdc and 13 rnds = 10 cm; 16 sc and 18 rows = 10 cm", [("hdc", 100 / 17, 100 / 13), ("sc", 6.25, 100 / 18)]),
    ("14 sts and 16 rows over 10 cm in sc, 14 sts and 8 rows over 10 cm in dc", [("sc", 100 / 14, 6.25), ("dc", 100 / 14, 12.5)]),
    ("16 sts = 4 in, 9 rows = 10 cm", [(None, 6.35, 100 / 9)]),
    ("13 sts and 10 rounds = 4 in (hdc)", [("hdc", 101.6 / 13, 10.16)]),
    ("20 single crochet stitches and 22 rows of sc = 10 cm", [("sc", 5, 100 / 22)]),
    ("6 rnds of dc = 15 cm across", [("dc", None, 12.5)]),
    ("5 sc = 2 in; 8 ridges = 8 in", [("sc", 10.16, 12.7)]),
    ("2 sc, ch 1, 1 sc = 4 cm; 5 rows = 5 cm", [("sc", 10, 10)]),
    ("900 sts = 10 cm", [(None, None, None)]),
    ("not important", []),
    ("17 hdc = 0 cm", []),
])
def test_every_swatch_of_a_line(text, told):
    swatches = read_swatches(text, dialect("us"))
    assert [s.kind for s in swatches] == [kind for kind, _, _ in told]
    for swatch, (_, width, row) in zip(swatches, told, strict=True):
        assert swatch.stitch_mm == (None if width is None else pytest.approx(width))
        assert swatch.row_mm == (None if row is None else pytest.approx(row))


def test_stitches_are_named_in_the_patterns_own_terms():
    assert [s.kind for s in read_swatches("16 dc and 18 rows = 10 cm; 16 treble and 9 rows = 10 cm", dialect("uk"))] == ["sc", "dc"]


def test_measured_kinds_are_kept_and_others_follow_the_nearest():
    sizes = found("Gauge: 16 sc and 18 rows = 10 cm; 15 dc and 8 rows = 10 cm\nRow 1: Sc in each st.").sizes
    assert (sizes.width("sc"), sizes.height("sc")) == (6.25, pytest.approx(100 / 18))
    assert (sizes.width("dc"), sizes.height("dc")) == (pytest.approx(100 / 15), 12.5)
    assert sizes.height("hdc") == pytest.approx((100 / 18 + 12.5) / 2), "half way between the two that were measured"
    assert sizes.height("tr") == pytest.approx(12.5 * relative_height("tr") / relative_height("dc"))
    assert sizes.height("dc2tog") == 12.5
    assert sizes.height("fpdc") == pytest.approx(0.8 * 12.5)
    assert (sizes.height("ch"), sizes.width("ch")) == (0.0, 6.25)
    assert 0 < sizes.height("sl st") < sizes.height("sc")


def test_after_blocking_counts_and_before_is_kept():
    gauge = found("Gauge: 18 dc and 10 rows = 10 cm before blocking, 16 dc and 9 rows = 10 cm after blocking\nRow 1: Dc in each st.")
    assert gauge.sizes.width_mm == 6.25
    assert gauge.before.width_mm == pytest.approx(100 / 18)
    assert gauge.doubts == ()


def test_a_gauge_line_may_name_its_stitch():
    sizes = found("Gauge: 17 hdc and 13 rnds = 10 cm\nGauge in sc: 17 sts and 20 rnds = 10 cm\nRnd 1: 6 sc in magic ring.").sizes
    assert sizes.kind == "hdc"
    assert sizes.own == {"sc": (pytest.approx(100 / 17), 5.0)}


def test_plain_sts_are_the_stitch_that_the_pattern_works_most_and_that_is_said():
    gauge = found("Gauge: 14 sts and 11 rnds = 10 cm\nRnd 1: Ch 1, 8 hdc in magic ring, join.\nRnd 2: Ch 1, 2 hdc in each st around.")
    assert gauge.sizes.kind == "hdc"
    assert "taken as hdc" in gauge.notes[0]


def test_a_repeat_needs_the_number_of_its_stitches():
    assert found("Gauge: 5 repeats = 11 cm\nNote: multiple of 6 + 2.\nRow 1: Dc in each st.").sizes.width_mm == pytest.approx(22 / 6)
    lost = found("Gauge: 5 repeats = 11 cm\nRow 1: Dc in each st.")
    assert lost.sizes is None
    assert any("does not say of how many stitches" in note for note in lost.notes)


def test_a_disc_tells_its_width_by_the_flat_circle():
    gauge = found("Gauge: 6 rnds of dc = 15 cm across\nRnd 1: 12 dc in ring.")
    assert gauge.sizes.height("dc") == 12.5
    assert gauge.sizes.width("dc") == pytest.approx(2 * 3.14159 * 12.5 / 12, rel=1e-3)
    assert gauge.sizes.width_share > 0.1
    assert "flat circle" in gauge.notes[0]


def test_a_motif_measured_after_a_round_is_a_disc_of_so_many_rounds():
    gauge = found("Tension: 1 square = 10 cm across after Rnd 4\nTerms: UK\nRnd 1: Ch 3, 11 tr in ring.")
    assert (gauge.sizes.kind, gauge.sizes.row_mm) == ("dc", 12.5)


def test_few_stitches_counted_are_less_sure():
    assert sizes_from(parse_gauge("4 sc = 1 in"), "sc", 4).width_share > 2 * sizes_from(parse_gauge("16 sc = 4 in"), "sc", 16).width_share


@pytest.mark.parametrize(("text", "low", "high"), [
    ("Yarn: worsted, wool\nRow 1: Sc in each st.", 6.5, 9.5), ("Hook: 4 mm\nRow 1: Sc in each st.", 5, 6.3),
    ("Yarn: DK\nHook: G-6\nRow 1: Sc in each st.", 5, 6.5), ("Yarn: crochet cotton size 20\nHook: steel 7\nRow 1: Sc in each st.", 1.6, 3),
])
def test_without_a_gauge_yarn_and_hook_give_a_guess_that_is_marked(text, low, high):
    gauge = found(text)
    assert gauge.guessed
    assert low < gauge.sizes.width_mm < high
    assert gauge.sizes.width_share >= 0.12
    assert "guessed" in gauge.notes[-1]
    assert [f.code for f in gauge.findings] == ["G001"]


def test_with_nothing_told_it_is_said_what_cannot_be_known():
    gauge = found("Rnd 1: 6 sc in magic ring.")
    assert gauge.sizes is None
    assert "no length, no yarn" in gauge.notes[0]


def test_a_gauge_given_replaces_the_patterns_own_and_keeps_proportions():
    text = "Gauge: 16 sc and 18 rows = 10 cm; 15 dc and 8 rows = 10 cm\nRow 1: Sc in each st."
    sizes = found(text, "20 sc and 18 rows = 10 cm").sizes
    assert sizes.width("sc") == 5
    assert sizes.width("dc") == pytest.approx(100 / 15 * 5 / 6.25)
    assert found(text, "20 sc = 10 cm").sizes.row_mm == pytest.approx(100 / 18)


@pytest.mark.parametrize(("text", "word"), [
    ("Gauge: 16 sc and 10 rows = 10 cm; 16 dc and 12 rows = 10 cm", "taller than rows of dc"),
    ("Gauge: 16 sc and 18 rows = 10 cm; 12 dc and 8 rows = 10 cm", "wider than sc"),
    ("Gauge: 16 sc and 18 rows = 10 cm; 16 dc and 16 rows = 10 cm", "about 2 times is usual"),
    ("Gauge: 16 hdc and 13 rows = 10 cm; 16 hdc and 9 rows = 10 cm", "11.1 mm in one swatch and 7.69 mm in another"),
    ("Gauge: 16 sc and 12 rows = 10 cm; 16 dc and 12 rows = 10 cm", "are as tall as rows of dc"),
    ("Gauge: 40 sc and 44 rows = 10 cm\nYarn: bulky", "cannot be bulky yarn"),
    ("Gauge: 18 sc and 8 rows = 10 cm", "rows and stitches exchanged"),
    ("Gauge: 900 sc = 10 cm; 16 dc and 9 rows = 10 cm", "a count is left out"),
    ("Gauge: 18 dc and 10 rows = 10 cm before blocking, 10 dc and 9 rows = 10 cm after blocking", "measured dry"),
])
def test_what_does_not_fit_together_is_said(text, word):
    assert any(word in doubt for doubt in found(f"{text}\nRow 1: Sc in each st.").doubts)


def test_ordinary_swatches_raise_no_doubt():
    assert found("Gauge: 14 sc and 16 rows = 4 in; 14 hdc and 10 rows = 4 in; 13 dc and 7.5 rows = 4 in\nYarn: worsted\nRow 1: Sc in each st.").doubts == ()


@pytest.mark.parametrize(("words", "mm"), [("4 mm (G-6)", 4), ("size I-9", 5.5), ("steel 7", 1.65), ("H", 5), ("none", None), ("90 mm", None)])
def test_hooks_in_words(words, mm):
    assert hook_of(words) == mm


@pytest.mark.parametrize(("words", "number"), [
    ("worsted, wool, 100 g = 200 m", 4), ("4 ply, cotton and wool", 2), ("fine, cotton, 50 g = 170 m", 2), ("fine wool of unknown weight", None),
    ("super bulky acrylic", 6), ("crochet cotton size 30", 0), ("light weight yarn", 3), ("50 g = 115 m cotton", 3), ("", None),
])
def test_yarn_classes_in_words(words, number):
    known = yarn_class(words)
    assert (known.number if known else None) == number


@given(st.text(max_size=80) | st.from_regex(r"[0-9 ./½-]{0,6}(sts|rows|dc|repeats|rnds of sc)?( and [0-9]{1,2} rows)? ?(=|to) ?[0-9.]{0,4}(cm|in)( across)?", fullmatch=True))
def test_any_gauge_line_gives_finite_sizes_or_none(text):
    sizes = found(f"Gauge: {text}\nRow 1: Sc in each st.").sizes
    assert sizes is None or (0 < sizes.width_mm < 1000 and 0 < sizes.row_mm < 2000)


def test_no_kind_has_a_height_below_nought():
    sizes = StitchSizes(5, 5)
    for kind in ("", "st", "ch", "sl st", "fpdc2tog", "bobble", "puff", "bean st", "qtr", "fsc"):
        assert sizes.height(kind) >= 0
        assert sizes.width(kind) == 5
    assert usual_shape("dc") == pytest.approx(2 * usual_shape("sc"))
