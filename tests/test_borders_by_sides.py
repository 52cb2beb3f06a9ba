"""Borders told side by side: down the side, across the bottom, up the other side, across the top; rows that are the same as others."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

CLOTH = "Ch 15.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (14 sc)\nRows 2-10: Ch 1, sc in each st across, turn. (14 sc)\n"


@pytest.mark.parametrize("row", [
    "Ch 1, sc evenly down the side, 3 sc in corner, sc across the bottom, 3 sc in corner, sc evenly up the other side, 3 sc in corner, sc across top, 3 sc in last corner, join.",
    "Ch 1, sc evenly along the side edge, 3 sc in corner, sc along bottom edge, 3 sc in corner, sc up other side, 3 sc in corner, sc evenly across the top edge, 3 sc in last corner, join.",
])
def test_a_border_told_by_its_sides(row):
    assert first_counts(f"{CLOTH}Border: {row}\n")[-1] == 2 * 10 + 2 * 14 + 4 * 3


@pytest.mark.parametrize(("row", "counts"), [
    ("4th and 5th rows are the same as 2nd and 3rd rows.", [11, 12]),
    ("4th row is the same as 3rd row.", [12]),
])
def test_rows_that_are_the_same_as_others(row, counts):
    text = f"1st row: Ch 11, sc in 2nd ch from hook and in each ch across, turn.\n2nd row: Ch 1, sc in each sc, turn.\n3rd row: Ch 1, 2 sc in first sc, sc in each sc, turn.\n{row}\n"
    assert first_counts(text)[-len(counts):] == counts


@pytest.mark.parametrize("join", ["Join with first hdc.", "Join with the first hdc.", "Join to first hdc.", "Join with sl st in first hdc."])
def test_the_join_makes_no_stitch(join):
    assert first_counts(f"Rnd 1: Ch 2, 14 hdc in magic ring. {join}\nRnd 2: Ch 2, 2 hdc in each st around. {join}\n")[-2:] == [14, 28]


@pytest.mark.parametrize("row", ["hhdc across.", "work 1 hhdc in the 1st st and every st across.", "hhdc in each st across."])
def test_a_short_name_wherever_it_stands(row):
    assert first_counts(f"Row 1: Ch 15, sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, turn, {row}\n")[-1] == 14
