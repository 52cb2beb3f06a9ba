"""The measures that a Fit sentence may name: which way the length lies, openings and edges, and how it is called in the result."""

from __future__ import annotations

import pytest

from loopwright.grading.explain import name_of, way_of
from loopwright.grading.sentence import NotUnderstoodError, parse_fit


@pytest.mark.parametrize(("sentence", "unit", "name", "way", "mm"), [
    ("rnds until crown measures 14 cm across", "row", "crown", "across", 140),
    ("sts to go around 50 cm", "st", "band", "around", 500),
    ("sts until hat measures 50 cm around", "st", "hat", "around", 500),
    ("sts to measure 8 cm wide", "st", "band", "width", 80),
    ("sts until band measures 8 cm in width", "st", "band", "width", 80),
    ("rnds until sides measure 22 cm high", "row", "sides", "height", 220),
    ("rnds until the bag is 22 cm tall", "row", "bag", "height", 220),
    ("rows to measure 22 cm in height", "row", "band", "height", 220),
    ("rows until yoke measures 17 cm deep", "row", "yoke", "depth", 170),
    ("rows to measure 150 cm long", "row", "band", "length", 1500),
    ("rnds until hat measures 17 cm from the centre", "row", "hat", "depth", 170),
    ("sts to go along an edge of 40 cm, multiple of 3", "st", "edge", "length", 400),
    ("sts along the neck edge of 40 cm", "st", "neck edge", "length", 400),
    ("sts to measure 40 cm along the neck edge", "st", "neck edge", "length", 400),
    ("sts until neck edge measures 40 cm", "st", "neck edge", "length", 400),
    ("sts until thumb opening measures 8 cm around", "st", "thumb opening", "opening around", 80),
    ("sts for a thumb opening of 8 cm", "st", "thumb opening", "opening around", 80),
    ("sts for an armhole opening 20 cm around, even", "st", "armhole opening", "opening around", 200),
    ("ch to make an armhole of 18 cm", "ch", "armhole", "opening around", 180),
    ("sts to make an opening that measures 8 cm around, at least 3", "st", "opening", "opening around", 80),
])
def test_what_is_measured_and_how_it_is_called(sentence: str, unit: str, name: str, way: str, mm: float) -> None:
    fit = parse_fit("band", sentence)
    assert (fit.unit, name_of(fit), way_of(fit)) == (unit, name, way)
    assert [atom.lengths_mm for _, atom in fit.target.terms] == [(mm,)]


@pytest.mark.parametrize(("sentence", "measure", "way"), [
    ("sts to fit around armhole circumference", "armhole circumference", "around"),
    ("rows until armhole measures armhole depth", "armhole depth", "depth"),
    ("rnds until sleeve measures sleeve length less 3 cm", "sleeve length", "length"),
    ("rnds until bag is as tall as hat height", "hat height", "height"),
])
def test_measurements_of_the_body_keep_their_names(sentence: str, measure: str, way: str) -> None:
    fit = parse_fit("arm rounds", sentence)
    assert fit.target.terms[0][1].name == measure
    assert way_of(fit) == way
    assert not fit.opening


@pytest.mark.parametrize("sentence", ["sts to measure 40 cm along", "sts to measure 40 cm along the moon", "sts to make an opening"])
def test_half_said_measures_are_refused(sentence: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_fit("band sts", sentence)
