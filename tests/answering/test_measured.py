"""Gauge, yarn and measure: the numbers in an answer are those that were measured."""

import math

import pytest

from loopwright.answering import gauge_is_other, measure_is_wanted, yarn_is_left
from loopwright.model.measures import Dimension, Measures, YarnAtHand, YarnNeed


def size(name, around_mm, metres):
    return Measures(
        name, (Dimension("Body", "around", around_mm, around_mm * 0.97, around_mm * 1.03, (0, 0), ""),),
        yarn=(YarnNeed("", metres, metres * 0.8, metres * 1.2),),
    )


SIZES = (size("small", 400, 100), size("medium", 450, 130), size("large", 500, 160))


def test_a_looser_gauge_makes_it_wider_and_a_smaller_size_comes_nearest():
    found = gauge_is_other(SIZES, 2, "20 sc", (5.0, 5.0), "18 sc", (100 / 18, 5.0))
    said = " ".join(found.facts)
    assert "55.6 cm around the Body instead of 50 cm" in said
    assert "size medium come nearest: 50 cm" in said
    assert "smaller hook" in said


def test_a_tighter_gauge_asks_for_a_larger_hook():
    assert "larger hook" in gauge_is_other(SIZES, 1, "20 sc", (5.0, 5.0), "22 sc", (100 / 22, 5.0)).text


def test_where_only_the_rows_differ_nothing_is_said_of_width():
    found = gauge_is_other(SIZES, 1, "20 sc", (5.0, 5.0), "20 sc", (5.0, 4.0))
    assert any("only the rows differ" in f for f in found.facts)
    assert not any("around" in f for f in found.facts)


def test_the_same_gauge_is_the_same():
    assert gauge_is_other(SIZES, 1, "20 sc", (5.0, 5.0), "20 sc", (5.0, 5.0)).heading == "That is the pattern's own gauge"


@pytest.mark.parametrize("mm", [(0, 5), (5, 0), (-1, 5)])
def test_a_gauge_of_nothing_is_refused(mm):
    with pytest.raises(ValueError, match="width"):
        gauge_is_other(SIZES, 0, "", (5.0, 5.0), "", mm)


@pytest.mark.parametrize(("have", "heading", "sizes"), [(200, "It will do", "small, medium, large"), (140, "It may not reach", "small"), (90, "It will not reach", "")])
def test_yarn_is_held_against_the_high_end_of_the_estimate(have, heading, sizes):
    found = yarn_is_left(SIZES, 1, have)
    assert found.heading == heading
    assert (f"can be made: {sizes}." in found.text) == bool(sizes)


def test_where_the_yarn_ends_is_told():
    at_hand = YarnAtHand("does not fit", -40, "", 90, label="Rnd 14", section="Body")
    assert "it ends in Rnd 14 of the Body" in yarn_is_left(SIZES, 1, 90, at_hand).text


@pytest.mark.parametrize("have", [0, -5, math.nan])
def test_no_yarn_is_no_amount(have):
    with pytest.raises(ValueError, match="amount"):
        yarn_is_left(SIZES, 1, have)


def test_the_nearest_size_and_the_nearest_legal_count():
    found = measure_is_wanted(SIZES, "Body", "around", 540, 5.0, 8)
    assert "Size large is nearest: 50 cm around (Body), 4 cm less." in found.facts
    assert any("work 112 sts there, which is 56 cm" in f or "work 104 sts there, which is 52 cm" in f for f in found.facts)


def test_a_size_that_is_that_measure_needs_no_other_count():
    found = measure_is_wanted(SIZES, "Body", "around", 451, 5.0, 8)
    assert found.facts == ("Size medium is 45 cm around (Body).",)


@pytest.mark.parametrize(("name", "want"), [("depth", 500), ("around", 0), ("around", -3), ("around", math.nan)])
def test_measures_that_there_are_none_of_are_refused(name, want):
    with pytest.raises(ValueError, match="measure"):
        measure_is_wanted(SIZES, "Body", name, want)
