"""The size charts: they load, their names are found, their figures grow, and what they do not know they say."""

import pytest

from loopwright.trade import sizes

NEEDED = [
    "head circumference", "hat height", "hand circumference", "hand length", "palm length", "thumb circumference", "thumb length", "wrist", "foot length",
    "foot circumference", "neck", "chest", "waist", "hip", "upper arm", "arm length", "armhole depth", "back length",
]  # fmt: skip
GENERAL = ["newborn", "3 months", "6 months", "9 months", "12 months", "2 years", "4 years", "6 years", "8 years", "12 years", "teen", "adult"]


@pytest.mark.parametrize("measure", NEEDED)
def test_the_trades_chart_knows_every_measurement_a_design_needs(measure):
    chart = sizes.chart("trade")
    for name in ["2 years", "child", "teen", "woman", "man"]:
        if (measure, name) == ("back length", "man"):
            continue  # the trade gives a man's back to the hip
        assert chart.find(name).measure(measure).mm > 0


@pytest.mark.parametrize("which", sizes.CHARTS)
@pytest.mark.parametrize("measure", NEEDED)
def test_larger_sizes_are_not_smaller(which, measure):
    known = [s.lengths[measure].mm for s in sizes.chart(which).sizes if s.name in GENERAL and measure in s.lengths]
    assert known == sorted(known)


@pytest.mark.parametrize("which", sizes.CHARTS)
def test_every_figure_has_its_source_and_lies_in_its_range(which):
    for size in sizes.chart(which).sizes:
        for length in size.lengths.values():
            assert length.source
            assert length.low_mm - 0.01 <= length.mm <= length.high_mm + 0.01


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("6 months", "6 months"), ("6 mo", "6 months"), ("6 mos.", "6 months"), ("6m", "6 months"), ("3-6 months", "6 months"),
        ("3–6 mths", "6 months"), ("3 to 6 months", "6 months"), ("6-12 m", "12 months"), ("24 months", "2 years"), ("Child", "6 years"),
        ("age 4", "4 years"), ("4 yrs", "4 years"), ("4", "4 years"), ("2-year-old", "2 years"), ("2T", "2 years"), ("Woman", "woman M"),
        ("Women's M", "woman M"), ("adult large", "man L"), ("teen", "14 years"), ("toddler", "2 years"), ("1 year", "12 months"),
    ],
)  # fmt: skip
def test_sizes_are_found_by_any_name_of_the_trade(said, meant):
    assert sizes.chart("trade").find(said).name == meant


def test_measurements_are_found_by_other_names():
    size = sizes.chart("trade").find("woman")
    assert size.measure("Bust") == size.measure("chest")
    assert size.measure("sleeve length") == size.measure("arm length")


def test_what_is_not_known_is_said_with_the_nearest():
    with pytest.raises(sizes.UnknownNameError, match="head circumference"):
        sizes.chart("trade").find("adult").measure("head circumfrence")
    with pytest.raises(sizes.UnknownNameError, match="no size 'giant'"):
        sizes.chart("trade").find("giant")
    with pytest.raises(sizes.UnknownNameError, match="no chest for newborn"):
        sizes.chart("measured").find("newborn").measure("chest")
    with pytest.raises(sizes.UnknownNameError, match="trade, measured"):
        sizes.chart("mine")


def test_growth_between_sizes():
    assert sizes.chart("trade").growth_mm("head circumference", "3 months", "6 months") == pytest.approx(25.4)
