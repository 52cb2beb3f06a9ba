"""Foundation chains whose length is left open: worked on a sample that fits, which is reported as an assumption."""

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source
from tests.line_by_line import first_counts

ROWS = "Row 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, sc in each sc across."


@pytest.mark.parametrize(
    ("told", "chain"),
    [
        ("Ch a multiple of 4 plus 2.", 26),
        ("Chain any multiple of 3 + 2 loosely.", 26),
        ("Ch in multiples of 6 plus 2.", 26),
        ("CH A MULTIPLE OF 10 + 3, turn.", 33),
        ("With A, ch a multiple of 14 + 1, plus 2 for turning.", 45),
        ("Foundation chain: multiple of 8 + 1.", 25),
        ("Ch an even number.", 24),
        ("Chain an uneven number of sts.", 25),
        ("Make a chain of the desired length.", 24),
        ("Chain to the length required.", 24),
        ("Ch any number.", 24),
        ("Chain a multiple of 3 + 2 (I made 62).", 62),
        ("Ch any multiple of 3 plus 2 (sample: 122).", 122),
    ],
)
def test_a_length_that_is_left_open(told: str, chain: int) -> None:
    text = f"Cloth\n{told}\n{ROWS}"
    assert first_counts(text) == [chain, chain - 1, chain - 1]
    checked = check_source(Source.of(text))
    assert [f for f in checked.findings if f.code[0] in "NWD"] == []
    assert any("sample" in a.message and str(chain) in a.message for a in work(read(Source.of(text), "us")).assumptions)
    assert write(read(Source.of(text), "us")) == text


def test_the_sample_is_one_that_the_first_row_fits_on() -> None:
    text = "Cloth\nCh any length.\nRow 1: Sc in 2nd ch from hook, *skip 1 ch, 3 dc in next ch, skip 1 ch, sc in next ch; rep from * across."
    assert first_counts(text) == [26, 1 + 6 * 4]  # 24 and 25 leave one and two over


def test_a_printed_count_tells_the_sample() -> None:
    text = "Cloth\nCh any multiple of 3 plus 2.\nRow 1: Sc in 2nd ch from hook and in each ch across. (61)"
    assert first_counts(text) == [62, 61]


def test_a_row_that_does_not_fit_the_multiple_is_found() -> None:
    text = "Cloth\nCh a multiple of 4 plus 1.\nRow 1: Sc in 2nd ch from hook, *skip 1 ch, 3 dc in next ch, skip 1 ch, sc in next ch; rep from * across. (25)"
    assert {f.code for f in check_source(Source.of(text)).findings} & {"W001", "W002", "W003", "W004"}


def test_a_chain_in_another_part_is_no_sample_of_the_multiple() -> None:
    text = f"Cloth\n{ROWS}\n\nTies\nCh 60; fasten off.\n\nBag\nCh a multiple of 4 plus 2.\n{ROWS}"
    assert "C006" not in {f.code for f in check_source(Source.of(text)).findings}
