"""Runs of stitches between chains, edges of soles and booties, samples of open chains, stitches named with a bracket."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize(("rows", "counts"), [
    (("Ch 38.\nRow 1: Tr in 5th ch from hook, tr in next ch, *ch 2, skip 2 ch, sc in next 2 ch, ch 2, skip 2 ch, tr in next 2 ch; rep from * across. (19)\n"
     "Row 2: Ch 1, turn, sc in each tr, *ch 2, tr in each sc, ch 2, sc in each tr; rep from * across."), [38, 19, 19]),
    ("Rnd 1: 12 sc in ring. (12)\nRnd 2: (2 sc in next 2 sts, ch 2, skip 1) around.\nRnd 3: *Dc in each sc, ch 2; rep from * around.", [12, 16, 16]),
])
def test_each_stitch_of_the_run_that_comes_next(rows: str, counts: list[int]) -> None:
    assert first_counts(rows) == counts


V_STITCH = """V-stitch (V-st): (Hdc, ch 1, hdc) in st or sp told.
Ch 30.
Row 1: Hdc in 3rd ch (2 skipped chs count as hdc) and in each ch. (29 hdc)
Row 2: Ch 2, turn, *skip 1, V-st in next st, skip 1; rep from * to last st, hdc in last st. (9 V-sts)
Rows 3-14: Ch 2, turn, V-st in ch-1 sp of each V-st, hdc in last st.
Row 15: Ch 2, turn, hdc in each st and ch-1 sp. (29 hdc)
"""


def test_the_rest_of_a_group_is_not_passed_over_on_the_way_to_the_last_stitch() -> None:
    assert first_counts(V_STITCH) == [30, 29, *[20] * 13, 29]


def test_a_stitch_told_in_the_bracket_behind_its_name() -> None:
    rows = "Special Stitches: V-Stitch (Work 2 half double crochets into one stitch)\nRow 1 - Ch 12, sc in the backloop of the second ch and across, turn (11 sc)\n"
    assert first_counts(rows + "Row 2 - Ch 2 (counts as hdc), sk the first st (V-stitch, sk the next st) repeat 3 more times, dc in next 2.", "us") == [11, 11]


SOLE = """Ch 7.
Row 1: Sc in 2nd ch and in each ch - 6 sc.
Rows 2-13: Ch 1, turn, sc in each sc.
"""
CUFF = """Round 1: 14 hdc in ring. (14)
Row 2: Ch 2, hdc in next 9 sts. (10)
Rows 3-6: Ch 2, turn, hdc in each st. (10)
"""


@pytest.mark.parametrize(("before", "row", "count"), [
    (SOLE, "Sides Rnd 1: Do not turn, 13 sc evenly down side of sole; 6 sc along opposite side of foundation ch (toe); 13 sc evenly along other side of sole; 6 sc to marker – 38 sc.", 38),
    (CUFF, "Round 7: Ch 1, turn. 5 sc evenly spaced across the ends of rows 2 to 6. Sc in the 4 stitches left unworked from round 1, then 5 more sc evenly along the other ends of rows 2 to 6. Join. (14 sc)", 14),
])
def test_along_row_ends(before: str, row: str, count: int) -> None:
    assert first_counts(before + row)[-1] == count


def test_the_other_spaces_are_all_that_remain() -> None:
    rows = "Rnd 1: 12 sc in ring. (12)\nRnd 2: Ch 3, skip next st, *hdc in next st, ch 1, skip next st; rep from * around, join. (6 ch-1 sps)\n"
    assert first_counts(rows + "Rnd 3: Sl st to a ch-1 sp, ch 2, 3 hdc in same sp, 4 hdc in each of the other ch-1 sps, join.")[-1] == 24


@pytest.mark.parametrize(("told", "chain"), [
    ("Chain a multiple of 5, plus 2, plus one. Mine was 33.", 33),
    ("Ch a multiple of 5 plus 3. I chained 28.", 28),
    ("Chain a multiple of 5 plus 3 (I did 43).", 43),
])
def test_samples_told_in_words(told: str, chain: int) -> None:
    assert first_counts(f"{told}\nRow 1: Sc in 2nd ch and in each ch.") == [chain, chain - 1]


def test_a_round_worked_in_back_loops_by_a_bracket() -> None:
    rows = "Rnd 1: 11 sc in ring. (11)\nRnd 2: Ch 1, (working in BLs for this round only) sc in each st around, join."
    assert first_counts(rows) == [11, 11]


@pytest.mark.parametrize(("rows", "counts"), [
    ("Rnd 1: 24 dc in ring. (24)\nR2: Ch 3, inc, *dc, inc* all around (36)", [24, 36]),
    (("Ch 26.\n1st row: Dc in 3rd ch from hook and in each ch, 24 sts;\n2nd row: turn, 2 dc across, * skip 1, (dc, ch2, dc) in next, skip 1, 3 dc across * repeat ** 3 times, skip 1, (dc, ch2, dc) in next, skip 1, 1 dc across;\n"
     "3rd row: turn, 1 dc across, * 4dc-shell stitch in next ch2-space, 3 dc across * repeat ** 3 times, 4dc-shell stitch in next ch2-sp, 2 dc across."), [26, 24, 20, 28]),
    ("Rnd 1: 9 sc in ring. (9)\nCuff Opening - Row 2: Sc in each st across. (9)", [9, 9]),
])
def test_repeats_without_from(rows: str, counts: list[int]) -> None:
    assert first_counts(rows) == counts
