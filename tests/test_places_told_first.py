"""Places told before the stitches that go into them, repeats begun where the yarn was joined, ovals turned about. The lines are our own; all counts by hand."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

RING = "Ch 4, join.\n"


@pytest.mark.parametrize(
    "into",
    [
        "in next ch (2 dc, ch 1, 2 dc)", "in the next chain (2 dc, ch 1, 2 dc)", "in next ch 2 dc, ch 1, 2 dc", "in next ch, 2 dc, ch 1 and 2 dc",
        "in next ch work 2 dc, ch 1, 2 dc", "(2 dc, ch 1, 2 dc) in next ch",
    ],
)
def test_a_place_before_the_stitches_of_a_group(into: str):
    assert first_counts(f"Ch 22.\nRow 1: Sc in 2nd ch, *skip 1 ch, {into}; rep from * to last 2 ch, skip 1, sc in last ch.\n")[1] == 38


def test_a_space_before_the_stitches_of_a_group():
    text = "Ch 20.\nRow 1: (Dc, ch 2, sc) in 2nd ch, *skip 2 ch, (dc, ch 2, sc) in next ch; rep from * across.\nRow 2: Turn, *in next ch-2 sp (dc, ch 2, sc); rep from * across.\n"
    assert first_counts(text)[1:] == [14, 14]


@pytest.mark.parametrize("words", ["repeat until the last 2 sts", "repeat to the last 2 sts", "until the last 2 sts", "and repeat until you reach the last 2 sts", "to last 2 sts"])
def test_a_bracket_is_repeated_to_so_many_before_the_end(words: str):
    assert first_counts(f"{RING}Rnd 1: 17 sc in ring.\nRnd 2: Ch 3, dc in same st, (dc 1, 2 dc in next st) {words}, dc 2.\n")[2] == 25


@pytest.mark.parametrize("joined", ["Join yarn in any st", "New yarn in any st", "With a new colour in any st", "Next colour to any st"])
def test_a_repeat_begun_where_the_yarn_was_joined(joined: str):
    assert first_counts(f"{RING}Rnd 1: 12 sc in ring.\nRnd 2: {joined}, *(sc, hdc) in that st, 3 dc in next st, (hdc, sc) in next; rep from *, join.\n")[2] == 28


def test_a_list_between_marks_goes_into_a_place_behind_the_second():
    text = f"{RING}Rnd 1: (Sc, ch 3) 7 times in ring.\nRnd 2: In any ch-3 sp, ch 3, dc in same sp, ch 1, *2 dc, ch 1** in next ch-3 sp. Rep * to **. Sl st to top.\n"
    assert first_counts(text)[1:] == [7, 14]


def test_a_chain_and_a_stitch_that_count_as_a_cluster():
    assert first_counts(f"{RING}Rnd 1: 8 sc in ring.\nRnd 2: Ch 2, dc in same st (counts as dc2tog), ch 2, (dc2tog in next st, ch 2) 7 times, join.\n")[2] == 8


@pytest.mark.parametrize(
    "behind",
    [
        "Do not turn, rotate work. Sc in bottom loop of 6 ch, 2 sc in bottom loop of last ch", "Rotate, sc in unused loops of next 6 ch, 2 sc in last ch",
        "Rotate work 180 degrees, sc in free loops of next 6 chs, 2 sc in free loop of last ch", "On other side sc in 6 ch, 2 sc in last ch",
    ],
)
def test_an_oval_that_is_turned_about(behind: str):
    assert first_counts(f"Ch 9.\nRnd 1: Sc in 2nd ch, sc in 6 ch, 3 sc in last ch. {behind}, sl st to first sc.\n")[1] == 18


def test_an_oval_that_is_turned_about_in_sizes():
    text = "Ch 9 (11, 13).\nRnd 1: Sc in 2nd ch, sc in 6 (8, 10) ch, 3 sc in last ch. Rotate work. Sc in bottom loops of 6 (8, 10) ch, 2 sc in bottom loop of last ch, sl st. 18 (22, 26) sc.\n"
    assert first_counts(text)[1] == 18


def test_rows_of_stitches_and_spaces_over_others_are_told_as_they_stand():
    text = (
        "Ch 23.\nRow 1: Dc in 3rd ch from hook, dc 9, ch 1, sk 1, dc 10, ch 2, turn.\n"
        "Row 2: Dc 4, ch 1, sk 1, dc 4, ch 1, sk 1, dc 1, ch 1, sk 1, dc 4, ch 1, sk 1, dc 4, ch 2, turn.\n"
        "Row 3: Dc 6, ch 1, sk 1, dc 2, ch 1, sk 1, dc 1, ch 1, sk 1, dc 2, ch 1, sk 1, dc 6, ch 2, turn.\nRow 4: Same as row 3.\n"
    )
    assert first_counts(text)[1:] == [20, 17, 17, 17]


def test_treble_crochet_by_three_letters_together():
    assert first_counts(f"{RING}Rnd 1: 9 sc in ring.\nRnd 2: Ch 1, sc in first 3, trc next 2 sts together, sc in last 4, join.\n")[2] == 8


@pytest.mark.parametrize("led", ["Sl st to loop, ch 3, 3 dc in loop", "Sl st in next 2 sc and in loop, ch 3, 3 dc in loop", "Sl st in next sp, ch 3, 3 dc in sp", "Sl st to loop, ch 3, 3 dc in same loop"])
def test_the_space_that_slip_stitches_lead_to(led: str):
    assert first_counts(f"Ch 8, join.\nRnd 1: (2 sc, ch 5) 6 times in ring.\nRnd 2: {led}, *4 dc in next {'sp' if ' sp' in led else 'loop'}; rep from *.\n")[1:] == [12, 24]


def test_petals_of_two_stitches_begin_with_no_stitch():
    text = f"{RING}Rnd 1: 12 sc in ring.\nRnd 2: *(Sl st, ch 2, dc) in next, (dc, ch 2, sl st) in next; rep from * around.\n"
    assert first_counts(text)[1:] == [12, 12]


def test_blocks_whose_stitches_go_into_the_space_slipped_to():
    text = (
        "Row 1: Chain 6, dc in 4th ch and in next 2. (1 block)\nRow 2: Chain 6, dc in 4th ch and in next 2, turn, sl st in ch-3 space, ch 3, 3 dc in space. (2 blocks)\n"
        "Row 3: Chain 6, dc in 4th ch and in next 2, *sl st in ch-3 space, ch 3, 3 dc in space; rep from *. (3 blocks)\nRows 4 and 5: Row 3 again. (5 blocks)\n"
    )
    assert first_counts(text) == [3, 6, 9, 12, 15]


@pytest.mark.parametrize("words", ["(skip last sc)", "(leave out the last sc)", "(not the last sc)", ", omitting last sc"])
def test_the_last_stitch_of_a_repeat_is_left_out(words: str):
    assert first_counts(f"Ch 24, join.\nRnd 1: Ch 1, sc in each ch, join.\nRnd 2: Ch 1, sc in 1st, *hdc in next, dc, hdc, sc; rep from * {words}.\n")[2] == 24
