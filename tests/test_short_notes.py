"""Notes of few words that pages of today set beside their chains, and rows told by others in few words. The lines are our own; all counts by hand."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

RING = "Ch 4, join.\n"


@pytest.mark.parametrize(
    "chain",
    [
        "Ch 3 (a dc)", "Ch 3 (the first dc)", "Ch 3 (first dc)", "Ch 3 (my first dc)", "Ch 3 (that's 1 dc)", "Ch 3 (is 1 dc)",
        "Ch 3 (a dc here and from now on)", "Chain three (the first dc)", "3 ch (instead of the first dc)", "3 ch(as replacement for the first dc)",
        "Ch 3 as a dc", "Ch 3 as the first dc",
    ],
)
def test_a_chain_that_is_called_a_stitch_counts_as_one(chain: str):
    assert first_counts(f"{RING}Rnd 1: {chain}, 13 dc in ring, sl st in top of ch-3.\n")[1] == 14


@pytest.mark.parametrize("chain", ["Ch 4 (dc and ch1)", "Ch 4 (a dc and ch 1)", "4 ch (dc + 1 ch)", "Ch 4 (the first dc plus ch 1)"])
def test_a_chain_that_is_called_a_stitch_and_a_space(chain: str):
    assert first_counts(f"{RING}Rnd 1: {chain}, (dc, ch 1) 9 times in ring, sl st in 3rd ch.\n")[1] == 10


@pytest.mark.parametrize("chain", ["Ch 3 (isn't a st)", "Ch 3 (isnt a st)", "Ch 3 (is not a st here)", "Ch 3 (never a st)"])
def test_a_chain_that_is_called_no_stitch_counts_as_none(chain: str):
    assert first_counts(f"{RING}Rnd 1: {chain}, 14 dc in ring, sl st in first dc.\n")[1] == 14


def test_a_group_behind_a_chain_is_worked():
    assert first_counts(f"{RING}Rnd 1: Ch 3 (a dc, 2 ch, dc) in ring, sl st in top.\n")[1] == 3
    assert first_counts(f"{RING}Rnd 1: Ch 3 (dc, ch 2, 2 dc) in ring, sl st in top.\n")[1] == 4


def test_a_chain_told_of_every_row_at_the_row_s_end():
    text = "Ch 17.\nRow 1: 1 dc in 4th ch, 1 dc in each ch to end, 3 ch, turn. (3 ch is the first dc of each row). 15 dc.\nRow 2: 1 dc in each dc. 3 ch, turn.\n"
    assert first_counts(text)[1:] == [15, 15]


def test_a_round_that_ends_at_the_top_is_joined():
    assert first_counts(f"{RING}Rnd 1: Ch 3, 13 dc in ring, sl st in top.\nRnd 2: Ch 3, dc in same st, 2 dc in each st, sl st to top.\n")[1:] == [14, 28]


def test_the_terms_named_beside_a_stitch_are_no_instruction():
    text = "Ch 40, sl st in first ch.\nRound 1: Ch 2, 1 single crochet (US) in each ch, sl st.\nRound 2: Ch 3, 1 double crochet (US) in each single crochet, sl st.\n"
    assert first_counts(text)[1:] == [40, 40]


def test_a_count_right_behind_the_repeat():
    text = (
        "Ch 18.\nRow 1: Sc in 2nd ch, *skip 1, (dc, ch 1, dc) in next, skip 1, sc in next; rep from * 5 sc and 4 ch-1 sps.\n"
        "Row 2: Ch 1, turn; sc in sc, *(dc, ch 1, dc) in ch-1 sp, sc in next sc; rep from * across 5 sc and 4 ch-1.\n"
    )
    assert first_counts(text)[1:] == [13, 13]


def test_rows_told_by_others_behind_an_equals_sign():
    text = "Ch 15.\nRow 1= Sc in 2nd ch and each ch.\nRow 2= Ch 2, hdc in each. (14 hdc)\nRow 3-5= Row 2 again. Fasten off.\n"
    assert first_counts(text) == [15, 14, 14, 14, 14, 14]


def test_rows_told_by_others_in_words():
    assert first_counts("Row One: Ch 16, sc in 2nd ch and each ch.\nRow Two: Ch 1, sc in each.\nRepeat row two to the length you like.\n") == [15, 15, 15]
    assert first_counts("Row 1: Ch 16, sc in 2nd ch and each ch.\nRow 2: Ch 1, sc in each.\nRepeat rows one and two until it is long enough.\n")[-1] == 15


def test_a_list_in_stars_repeated_from_star_to_star():
    assert first_counts(f"{RING}Rnd 1: 10 sc in ring.\nRnd 2: *2 sc in next st, sc in next st* rep * to * 4 times.\n")[-1] == 15
    text = "Ch 22.\nRow 1: Dc in 6th ch from hook, *skip 2, 5dc group in ch, skip 2, dc in ch, ch 1, skip 1, dc in ch, * rep * to * once. Turn.\n"
    assert first_counts(text)[-1] == 16


def test_a_space_begun_with_its_stitch_in_british_short_form():
    text = "5ch, ss.\nRnd 1: 24dc in ring, ss.\nRnd 2: 4ch (1tr, 1ch), miss 1, *1tr, 1ch, miss 1; rep, ss in 3rd ch.\n"
    assert first_counts(text, "uk")[1:] == [24, 12]


@pytest.mark.parametrize("corner", ["3 sc in corners", "3 sc in the corners", "3 sc in each corner"])
def test_what_goes_into_corners(corner: str):
    assert first_counts(f"{RING}Rnd 1: Ch 3, dc, ch 2, (2 dc, ch 2) 3 times in ring; join.\nRnd 2: Ch 1, sc in each dc, {corner}.\n")[1:] == [8, 20]
