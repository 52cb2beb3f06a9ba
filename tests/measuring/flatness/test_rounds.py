"""How rounds from a centre lie: the word, the rates, the curvature, what is listed, the mend."""

from __future__ import annotations

import math
from typing import cast

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.grading.gauge import StitchSizes
from tests.measuring.flatness.crown_texts import disc, lie

HDC = StitchSizes(5.88, 7.69, "hdc")  # 8.2 a round lie flat
DC = StitchSizes(5.0, 9.4, "dc")  # 11.8 a round


def test_a_flat_crown():
    found = lie(disc([8 * n for n in range(1, 8)], "hdc"), HDC)
    assert [r.lies for r in found] == ["flat"] * 7
    assert [r.rate for r in found] == pytest.approx([8.0] * 7)
    assert found[-1].flat_rate == pytest.approx(2 * math.pi * 7.69 / 5.88)
    assert (found[-1].stitches, found[-1].mend, found[-1].label) == (56, "", "Rnd 7")


@pytest.mark.parametrize(
    ("rate", "word", "mend"),
    [
        (10, "cups", "increase 11 or 12 in a round, not 10; or go up a hook"),
        (11, "blocks out", "it lies flat at 11.8 a round; or go up a hook"),
        (12, "flat", ""),
        (13, "ruffles", "increase 11 or 12 in a round, not 13; or go down a hook"),
    ],
)
def test_the_mend_names_whole_stitches(rate, word, mend):
    last = lie(disc([rate * n for n in range(1, 7)], "dc"), DC)[-1]
    assert (last.lies, last.mend) == (word, mend)


def test_the_first_rounds_may_be_a_stitch_off():
    found = lie(disc([7, 13, 19, 25, 31, 37]), StitchSizes(5.0, 5.0 * 6 / (2 * math.pi), "sc"))
    assert [r.lies for r in found] == ["flat", "flat", "blocks out", "blocks out", "flat", "flat"]


def test_too_many_in_the_ring_is_mended_there():
    found = lie(disc([9, 15, 21, 27]), StitchSizes(5.0, 5.0 * 6 / (2 * math.pi), "sc"))
    assert found[-1].lies == "ruffles"
    assert found[-1].mend == "begin with 6 sts, not 9; or go down a hook"


def test_a_crown_is_listed_up_to_its_last_increase():
    assert len(lie(disc([8, 16, 24, 32, 32, 32, 32], "hdc"), HDC)) == 4
    assert len(lie(disc([8, 16, 16, 24, 24, 32], "hdc"), HDC)) == 6


def test_a_ball_is_listed_up_to_its_widest_round():
    assert [r.stitches for r in lie(disc([6, 12, 18, 18, 12, 6]), StitchSizes(5.0, 4.6, "sc"))] == [6, 12, 18]


def test_a_tube_and_a_flat_piece_are_not_listed():
    tube = "Ch 40, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. (40)\nRnds 2-5: Ch 1, sc in each st around; join. (40)\n"
    flat = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRows 2-5: Ch 1, sc in each st across, turn. (10)\n"
    assert lie(tube, HDC) == lie(flat, HDC) == ()


def test_an_oval_counts_without_its_straight_sides():
    text = (
        "Ch 13.\nRnd 1: 2 sc in 2nd ch from hook, sc in each of next 10 ch, 3 sc in last ch; working along the other side of the ch, sc in each of next 10 ch, sc in same ch as first 2 sc; join. (26)\n"
        "Rnd 2: Ch 1, 2 sc in each of first 2 sts, sc in each of next 10 sts, 2 sc in each of next 3 sts, sc in each of next 10 sts, 2 sc in last st; join. (32)\n"
    )
    found = lie(text, StitchSizes(5.0, 4.6, "sc"))
    assert [r.rate for r in found] == pytest.approx([6.0, 6.0])
    assert [r.lies for r in found] == ["flat", "flat"]


GRANNY = (
    "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join. (12 dc)\n"
    "Rnd 2: Sl st to ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join. (24 dc)\n"
    "Rnd 3: Sl st to ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * twice more; join. (36 dc)\n"
)


def test_a_granny_square_has_corners_and_lies_flat():
    found = lie(GRANNY, DC)
    assert [r.lies for r in found] == ["flat"] * 3
    assert found[-1].flat_rate == pytest.approx(8 * 9.4 / 5.0)  # 2 n tan(pi / n) = 8 for n = 4


def test_three_in_each_corner_make_a_square():
    text = (
        "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: *3 sc in next st, sc in next st; rep from * around. (16)\n"
        "Rnd 3: Sc in next st, *3 sc in next st, sc in next 3 sts; rep from * 2 more times, 3 sc in next st, sc in next 2 sts. (24)\n"
        "Rnd 4: Sc in next 2 sts, *3 sc in next st, sc in next 5 sts; rep from * 2 more times, 3 sc in next st, sc in next 3 sts. (32)\n"
    )
    found = lie(text, StitchSizes(5.0, 4.9, "sc"))
    assert [r.lies for r in found] == ["flat"] * 4
    assert found[0].flat_rate == pytest.approx(8 * 0.98)


def test_ordinary_increases_are_a_circle_even_when_stacked():
    rounds = ["Rnd 1: 6 sc in magic ring. (6)", "Rnd 2: 2 sc in each st around. (12)"]
    rounds += [f"Rnd {n}: *Sc in next {n - 2} sts, 2 sc in next st; rep from * around. ({6 * n})" for n in range(3, 7)]
    assert lie("\n".join(rounds), StitchSizes(5.0, 4.6, "sc"))[-1].flat_rate == pytest.approx(2 * math.pi * 0.92)


def test_rounds_of_loops_are_not_judged():
    text = (
        "Rnd 1: Ch 1, 12 sc in magic ring; join. (12)\nRnd 2: Ch 1, sc in first st, ch 5, *sc in next st, ch 5; rep from * around; join. (12 sc)\n"
        "Rnd 3: Sl st in next 2 ch, ch 1, sc in same sp, ch 7, *sc in next ch-5 sp, ch 7; rep from * around; join. (12 sc)\n"
    )
    assert [r.stitches for r in lie(text, StitchSizes(5.0, 4.6, "sc"))] == [12]


def test_a_guessed_gauge_says_less():
    text = disc([13 * n for n in range(1, 7)], "dc")
    assert lie(text, DC)[-1].lies == "ruffles"
    assert lie(text, StitchSizes(5.0, 9.4, "dc", 0.1, 0.1, guessed=True))[-1].lies == "flat"


rates = st.integers(3, 24)
shapes = st.floats(0.5, 4.0)


@settings(max_examples=60, deadline=None)
@given(rates, shapes, st.integers(3, 7))
def test_the_word_follows_the_share_of_stitches_too_many(rate, shape, rounds):
    width = 5.0
    last = lie(disc([rate * n for n in range(1, rounds + 1)]), StitchSizes(width, width * shape, "sc"))[-1]
    off = rate / (2 * math.pi * shape) - 1
    word = "flat" if abs(off) <= 0.04 else "blocks out" if abs(off) <= 0.1 else "cups" if off < 0 else "ruffles"
    assert last.lies == word
    assert last.curvature == pytest.approx(-2 * math.pi * off)
    assert (last.mend == "") == (word == "flat")


@settings(max_examples=40, deadline=None)
@given(rates, shapes, st.floats(1.0, 20.0))
def test_only_the_shape_of_a_stitch_matters_not_its_size(rate, shape, width):
    text = disc([rate * n for n in range(1, 5)])
    small, large = (lie(text, StitchSizes(w, w * shape, "sc")) for w in (width, 2 * width))
    assert [r.lies for r in small] == [r.lies for r in large]
    assert [r.curvature for r in small] == pytest.approx([r.curvature for r in large])


@settings(max_examples=40, deadline=None)
@given(cast("st.SearchStrategy[list[int]]", st.lists(st.integers(0, 14), min_size=2, max_size=7)), st.integers(3, 14))
def test_the_curvature_is_two_pi_less_the_edge_over_the_radius(grown, start):
    counts = [start]
    for more in grown:
        counts.append(counts[-1] + min(more, counts[-1]))
    sizes = StitchSizes(5.0, 5.0, "sc")
    found = lie(disc(counts), sizes)
    assert all(math.isfinite(r.curvature) and math.isfinite(r.rate) for r in found)
    for r in found:
        assert r.curvature == pytest.approx(2 * math.pi - r.stitches * 5.0 / (5.0 * (r.row + 1)))
