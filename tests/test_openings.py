"""Thumbs, handles and buttonholes: chains over what is passed over, into which the next row goes. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize("after", ["Ch 1, sc in each st around, join.", "Ch 1, sc in each sc and 10 sc in each ch-10 sp around, join.", "Ch 1, sc in each sc and ch around."])
def test_the_chains_of_handles_are_stitches_of_the_next_round(after):
    text = f"Rnd 1: 40 sc in ring.\nRnd 2: Ch 1, sc in 7, ch 10, skip 6, sc in 14, ch 10, skip 6, sc in 7, join.\nRnd 3: {after}\n"
    assert first_counts(text) == [40, 28, 48]


@pytest.mark.parametrize("after", ["Row 3: Ch 1, sc in each st across.\n", "Row 3: Ch 1, sc across.\n", "Work 1 more row of sc.\n"])
@pytest.mark.parametrize(("many", "hole"), [(3, "ch 3, skip 3"), (5, "ch 5, skip 5 sts"), (4, "ch 3, skip 4 sc")])
def test_a_buttonhole_is_closed_by_the_next_row(after, many, hole):
    """The next row has the chains for stitches: as many again, or one less where one chain less was made."""
    text = f"Row 1: Ch 25, sc in 2nd ch and each across.\nRow 2: Ch 1, sc in 4, {hole}, sc to end.\n{after}"
    assert first_counts(text) == [24, 24 - many, 24 - many + int(hole[3])]


@pytest.mark.parametrize(("many", "words"), [(5, "skip 5 sts for thumb, sc in each st around"), (6, "skip 6 sts, sc in each st to end"), (6, "sk next 6 sts, sc in each remaining st")])
def test_a_thumb_at_the_start_of_a_round(many, words):
    text = f"Rnd 1: 30 sc in ring\nRnd 2: Ch {many}, {words}.\nRnd 3: Work round on these 30 sts in sc.\n"
    assert first_counts(text) == [30, 30 - many, 30]


def test_lace_is_no_opening():
    text = "Rnd 1: 16 sc in ring, join.\nRnd 2: Ch 1, sc in first st, ch 3, skip 3, (sc in next st, ch 3, skip 3) 3 times, join.\nRnd 3: Ch 1, sc in each sc around.\n"
    assert first_counts(text)[1:] == [4, 4]


def test_spaces_that_a_row_does_not_have_take_nothing():
    text = "Ch 22.\nRow 1: Sc in 2nd ch and in each ch across.\nRow 2: Ch 1, turn, *sc in next, ch 1, sk 1; rep from * to last st, sc in last.\nRow 3: Ch 1, turn, sc in each sc and ch-1 sp across.\nRep row 3 for a total of 6 rows.\n"
    assert first_counts(text) == [22, 21, 11, 21, 21, 21, 21]


@pytest.mark.parametrize("row", ["Sc in next 24 sts, ch 6, skip 6 sts.", "Ch 6, skip 6 sts, sc in each st around.", "Sc in next 12 sts, ch 6, skip 6 sts, sc in next 12 sts."])
def test_an_opening_anywhere_in_a_round(row):
    assert first_counts(f"Rnd 1: 30 sc in ring.\nRnd 2: {row}\nRnd 3: Sc in each st around.\n") == [30, 24, 30]
