"""Heads and heights of children in the size charts against the published growth tables.

Sources: WHO Child Growth Standards (by day), CDC growth charts of 2000 (hcageinf), UK 1990 growth reference
(reanalysed 2009); all read as data from the Python package rcpchgrowth, which ships the publishers' LMS tables. M is the median in cm; the
centile at z is M * (1 + L * S * z) ** (1 / L), or M * exp(S * z) where L is 0 (Cole's LMS method).
"""

import json
import math
from functools import cache
from importlib.resources import files
from typing import NamedTuple

import pytest

from loopwright.trade import sizes

DAYS_A_MONTH, DAYS_A_YEAR = 30.4375, 365.25
MEASURED, TRADE = sizes.chart("measured"), sizes.chart("trade")
BABIES = [("newborn", 0), ("3 months", 3), ("6 months", 6), ("9 months", 9), ("12 months", 12), ("18 months", 18), ("2 years", 24)]


class Lms(NamedTuple):
    """One age of a growth table: power, median in cm, coefficient of variation."""

    power: float
    median: float
    spread: float

    def at(self, z: float) -> float:
        """The head in mm at a z-score."""
        if self.power == 0:
            return 10 * self.median * math.exp(self.spread * z)
        return float(10 * self.median * (1 + self.power * self.spread * z) ** (1 / self.power))


@cache
def table(path: str, sex: str, what: str) -> list[dict[str, float]]:
    """The rows of a published table for heads ("ofc") or heights."""
    text = files("rcpchgrowth.data_tables").joinpath(path).read_text(encoding="utf-8")
    rows: list[dict[str, float]] = json.loads(text)["measurement"][what][sex]
    return rows


def row_at(path: str, sex: str, years: float, what: str = "ofc") -> Lms:
    """The table at an age, its median straight between the ages it gives."""
    rows = table(path, sex, what)
    after = next((i for i, row in enumerate(rows) if row["decimal_age"] >= years - 1e-9), len(rows) - 1)
    low, high = rows[max(after - 1, 0)], rows[after]
    gap = high["decimal_age"] - low["decimal_age"]
    share = min(1.0, max(0.0, (years - low["decimal_age"]) / gap)) if gap else 1.0
    return Lms(*(low[key] + share * (high[key] - low[key]) for key in ("L", "M", "S")))


def middle_mm(path: str, years: float, what: str = "ofc") -> float:
    """Mean of the medians of boys and girls in mm."""
    return sum(row_at(path, sex, years, what).at(0) for sex in ("male", "female")) / 2


@pytest.mark.parametrize(("name", "months"), [*BABIES, ("4 years", 48)])
def test_measured_heads_are_the_who_medians(name: str, months: int) -> None:
    years = months * DAYS_A_MONTH / DAYS_A_YEAR
    path = "who/who_infants.json" if months < 24 else "who/who_children.json"
    assert MEASURED.find(name).measure("head circumference").mm == pytest.approx(middle_mm(path, years), abs=0.6)


@pytest.mark.parametrize(("name", "months"), [*BABIES, ("4 years", 48), *((f"{years} years", 12 * years) for years in (6, 8, 10, 12, 14, 16))])
def test_measured_heights_are_the_medians(name: str, months: int) -> None:
    path = "who/who_infants.json" if months < 24 else "who/who_children.json" if months < 60 else "uk90_child.json"
    years = months * DAYS_A_MONTH / DAYS_A_YEAR
    assert MEASURED.find(name).measure("height").mm == pytest.approx(middle_mm(path, years, "height"), abs=1)


@pytest.mark.parametrize("years", [6, 8, 10, 12, 14, 16])
def test_measured_heads_are_the_uk_medians(years: int) -> None:
    assert MEASURED.find(f"{years} years").measure("head circumference").mm == pytest.approx(middle_mm("uk90_child.json", years), abs=0.6)


@pytest.mark.parametrize(("name", "months"), BABIES)
def test_measured_heads_lie_near_the_cdc_medians(name: str, months: int) -> None:
    """Another population, another year: within 11 mm, and within the middle nine tenths (z of 1.645) of its boys and girls."""
    head = MEASURED.find(name).measure("head circumference").mm
    years = months / 12
    assert head == pytest.approx(middle_mm("cdc_infants.json", years), abs=11)
    assert row_at("cdc_infants.json", "male", years).at(-1.645) <= head <= row_at("cdc_infants.json", "female", years).at(1.645)


@pytest.mark.parametrize(("name", "months"), BABIES)
def test_the_trades_heads_are_smaller_but_no_more_than_an_eighth(name: str, months: int) -> None:
    """What its chart says of itself: hats stretch, bodies are to be taken from the measured chart."""
    median = middle_mm("who/who_infants.json" if months < 24 else "who/who_children.json", months * DAYS_A_MONTH / DAYS_A_YEAR)
    assert median * 7 / 8 <= TRADE.find(name).measure("head circumference").mm <= median


def test_the_lms_formula_gives_the_who_centiles() -> None:
    """WHO prints 36.9 cm for the 97th and 31.7 cm for the 3rd centile of newborn boys' and girls' heads (head circumference for age)."""
    assert row_at("who/who_infants.json", "male", 0).at(1.881) == pytest.approx(369, abs=0.6)
    assert row_at("who/who_infants.json", "female", 0).at(-1.881) == pytest.approx(317, abs=1)


def test_most_growth_of_heads_is_in_the_first_year() -> None:
    years = [MEASURED.growth_mm("head circumference", a, b) for a, b in (("newborn", "12 months"), ("12 months", "2 years"), ("2 years", "4 years"))]
    assert years == sorted(years, reverse=True)
    assert years[0] == pytest.approx(113, abs=4)
