"""A count that is far off is a misprint only where nothing in the row and below it is in doubt."""

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

RING = "Rnd 1: 12 sc in magic ring. (12 sc)\n"


def severity(text):
    return [f.severity for f in check_source(Source.of(text + "\n"), "us").findings if f.code == "W001"]


@pytest.mark.parametrize("printed", [25, 30, 48, 12, 6])
def test_on_a_confirmed_row_a_clean_row_is_wrong_whatever_it_prints(printed):
    assert severity(f"{RING}Rnd 2: 2 sc in each st around. ({printed} sc)") == [None]


@pytest.mark.parametrize(("printed", "said"), [(26, None), (48, "warning"), (6, "warning")])
def test_words_that_are_not_understood_are_likelier_than_a_misprint_that_is_far_off(printed, said):
    assert severity(f"{RING}Rnd 2: 2 sc in each st around as the tide turns. ({printed} sc)") == [said]


@pytest.mark.parametrize(("printed", "said"), [(26, None), (48, "warning")])
def test_so_is_a_row_below_that_nothing_confirms(printed, said):
    assert severity(f"Rnd 1: 12 sc in magic ring.\nRnd 2: 2 sc in each st around. ({printed} sc)") == [said]


def test_a_row_told_stitch_by_stitch_is_measured_by_its_words():
    text = "Ch 34.\nRow 1: Sc in 2nd ch from hook and in each ch across.\nSide, Row 1: Sc in next 8 sts, 2 sc in next st. ({printed} sc)"
    assert severity(text.format(printed=12)) == [None]
