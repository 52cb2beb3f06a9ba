"""Grown-ups in the size charts against the army surveys.

Sources: means of ANSUR II, report NATICK/TR-15/007 and its public data (4,082 men, 1,986 women, 2012), in mm; means of the first survey of
1988, report NATICK/TR-89/044 (from memory: another sample, so only near).
"""

import pytest

from loopwright.trade import sizes

MEASURED, TRADE = sizes.chart("measured"), sizes.chart("trade")
ANSUR_2 = {  # women, men
    "head circumference": (561.1, 574.4),
    "hand circumference": (186.6, 212.3),
    "hand length": (181.1, 193.3),
    "palm length": (108.7, 116.5),
    "wrist": (154.8, 175.9),
    "foot length": (246.3, 271.2),
    "foot circumference": (228.1, 252.0),
    "ankle": (215.7, 229.3),
    "calf": (373.3, 392.3),
    "chest": (946.9, 1058.7),
    "waist": (860.9, 940.6),
    "hip": (1021.2, 1019.5),
    "upper arm": (305.6, 358.1),
    "neck": (329.8, 397.6),
    "back length": (425.4, 477.6),
    "back neck to wrist": (806.7, 895.8),
}
ANSUR_1 = {"head circumference": (546.2, 567.7), "hand circumference": (186.2, 213.8), "hand length": (180.5, 193.8), "foot length": (244.4, 269.7)}


@pytest.mark.parametrize("measure", ANSUR_2)
def test_means_of_the_second_survey(measure: str) -> None:
    women, men = ANSUR_2[measure]
    assert MEASURED.find("woman").measure(measure).mm == pytest.approx(women)
    assert MEASURED.find("man").measure(measure).mm == pytest.approx(men)
    assert MEASURED.find("adult").measure(measure).mm == pytest.approx((women + men) / 2, abs=0.06)


@pytest.mark.parametrize("measure", ANSUR_1)
def test_means_of_the_first_survey_are_near(measure: str) -> None:
    women, men = ANSUR_1[measure]
    assert MEASURED.find("woman").measure(measure).mm == pytest.approx(women, rel=0.03)
    assert MEASURED.find("man").measure(measure).mm == pytest.approx(men, rel=0.03)


@pytest.mark.parametrize("measure", ["hand circumference", "hand length", "wrist", "foot length", "foot circumference", "neck"])
@pytest.mark.parametrize("name", ["woman", "man", "adult"])
def test_the_trades_hands_feet_and_necks_are_near_the_measured(name: str, measure: str) -> None:
    """Weak figures of the trade's chart, held to a tenth of what was measured."""
    assert TRADE.find(name).measure(measure).mm == pytest.approx(MEASURED.find(name).measure(measure).mm, rel=0.1)


def test_sizes_of_a_chart_lie_in_order_about_the_mean() -> None:
    for who in ("woman", "man"):
        for measure in ANSUR_2:
            small, middle, large = (MEASURED.find(f"{who} {size}").measure(measure).mm for size in "SML")
            assert small < middle < large
