"""Rows told again by their numbers alone, "Rows 2 and 3, 4 times"; ordinals that count inclusively, and rows that are the same as others without a stop."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts, last_rows

START = ["Ch 11.", "Row 1: Sc in 2nd ch from hook and in next 9 ch, turn. (10 sc)", "Row 2: Ch 1, 2 sc in first st, sc in each st across, turn. (11)", "Row 3: Ch 1, sc in each st across, turn. (11)"]


@pytest.mark.parametrize(("again", "count"), [
    ("Rows 2 and 3, 6 times.", 17),
    ("Rows 2-3 six more times.", 17),
    ("Rows 2 & 3 x 6.", 17),
    ("Rep Rows 2 & 3 x 6.", 17),
    ("Rows 2 to 3: 6 more times.", 17),
    ("2nd and 3rd rows 6 times more.", 17),
    ("Row 2 three times more.", 14),
    ("Row 2 again.", 12),
    ("Rows 4-15: Rows 2 and 3, 6 times.", 17),
    ("Row 2, twice.", 13),
])
def test_rows_worked_again_by_their_numbers_alone(again, count):
    assert last_rows([*START, again], "us")[-1].counts == (count,)


def test_a_label_of_two_rows_stays_one():
    assert last_rows([*START, "Rows 4 and 5: Ch 1, 2 sc in first st, sc in each st across, turn. (13)"], "us")[-1].counts == (13,)


@pytest.mark.parametrize("label", [
    "2nd to 8 rows incl:", "2nd to 8th rows, inclusive:", "2nd to 8th rows include:", "2nd thru 8th rows included:", "Rows 2 to 8, inclusive:", "Rows 2-8 (inclusive):",
])
def test_a_range_told_inclusively(label):
    rows = first_counts(f"Ch 11.\n1st row: Sc in 2nd ch from hook and in next 9 ch, turn.\n{label} Ch 1, 2 sc in first st, sc in each st across, turn.\n")
    assert rows[-1] == 10 + 7


@pytest.mark.parametrize(("told", "count"), [
    ("5th, 6th and 7th rows same as 2nd, 3rd and 4th.", 16),
    ("5th and 6th rows the same as 2nd and 3rd rows.", 14),
    ("5th row same as 2nd.", 14),
    ("5th and 6th rows as 2nd and 4th rows.", 16),
])
def test_rows_the_same_as_others_without_a_stop(told, count):
    text = ("Ch 11.\n1st row: Sc in 2nd ch from hook and in next 9 ch, turn.\n2nd row: Ch 1, 2 sc in first st, sc in each st across, turn.\n"
            "3rd row: Ch 1, sc in each st across, turn.\n4th row: Ch 1, 2 sc in each of first 2 sts, sc in each st across, turn.\n")
    assert first_counts(text + told + "\n")[-1] == count
