"""Rows of shells as pages tell them: the stitch behind those skipped by its number, the chain without its word, rows told by others with no verb. The lines are our own; all counts by hand."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize(
    "row",
    [
        "Sc in 2nd ch, *sk 3, 7 dc in 4th ch, sk 3, sc in 4th ch; rep from *.", "Sc in 2nd, *skip 3, 7 dc in next, skip 3, sc in next; rep from *.",
        "Sc in second, *skip 3 ch and in the 4th ch 7 dc, skip 3, sc in fourth ch; rep from *.", "Sc in 2nd ch from hook, *miss 3 ch, 7 dc in next ch, miss 3 ch, sc in next ch; rep from * across.",
    ],
)
def test_the_one_behind_those_skipped_by_its_number(row: str):
    assert first_counts(f"Ch 26.\nRow 1: {row}\n")[1] == 25


@pytest.mark.parametrize("into", ["(2 dc, ch 1, sc) in 3rd ch", "2 dc, ch 1, sc in 3rd ch", "and in the 3rd chain (2 dc, ch 1, sc)", "(2 dc, ch 1, sc) in next"])
def test_a_group_behind_those_skipped(into: str):
    assert first_counts(f"Ch 19.\nRow 1: (2 dc, ch 1, sc) in 4th ch, *skip 2 ch, {into}; rep from *.\n")[1] == 18


def test_a_shell_is_met_in_its_middle():
    text = (
        "Ch 22.\nRow 1: Sc in 2nd ch, *sk 1, 3 dc in next, sk 1, sc in next; rep from *.\n"
        "Row 2: Ch 3, dc in 1st sc, *sk 1, sc in 2nd dc, sk 1, 3 dc in next sc; rep from *, end 2 dc in last sc.\n"
    )
    assert first_counts(text)[1:] == [21, 21]
    text = "Ch 20.\nRow 1: Sc in 2nd ch, *sk 2, 5 dc in next, sk 2, sc in next; rep from *.\nRow 2: Ch 3, 2 dc in 1st sc, *sc in middle of next shell, 5 dc in next sc; rep from *, end 3 dc in last sc.\n"
    assert first_counts(text)[1:] == [19, 19]


def test_a_chain_is_counted_from_the_hook_without_its_word():
    assert first_counts("Ch 18.\nRow 1: Dc in 4th, dc in each.\n")[1] == 16
    assert first_counts("Ch 18.\nRow 1: Sc in second and in each.\nRow 2: Ch 1, sc in 2nd, sc in each.\n")[1:] == [17, 16]


def test_a_triangle_that_grows_at_its_edges():
    text = "Ch 4.\nRow 1: 3 dc in 4th ch. Ch 3, turn.\nRow 2: Dc in same, dc in next 2, 2 dc in top. Ch 3, turn.\nRow 3: Dc in same, dc in 4, 2 dc in top.\n"
    assert first_counts(text)[1:] == [4, 6, 8]


def test_corners_told_by_their_chain_in_british_terms():
    text = "4ch, ss.\nR1: 3ch, 1tr, (2ch, 2tr) x 3, 2ch, ss.\nR2: 1ch, 1dc in each tr, 3dc in each 2ch corner, ss.\n"
    assert first_counts(text, "uk")[1:] == [8, 20]


def test_rows_told_by_others_with_no_verb():
    text = "Ch 13.\nRow 1: Sc in 2nd ch and each.\nRow 2: Ch 2, hdc in each.\nRow 3: Ch 1, sc in each, 2 sc in last.\nRow 4-7: Rows 2 and 3.\nR8: Row 2.\n"
    assert first_counts(text)[1:] == [12, 12, 13, 13, 14, 14, 15, 15]
