"""Stitches told without "each" that stop at a corner or a space; rows of one label called by their own numbers."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source
from tests.line_by_line import first_counts

SHAWL = "Row 1: Ch 4 (counts as 1 ch and 1 dc), 2 dc, ch 2, 3 dc in first ch. (6 dc, 1 ch-2 sp)\n"
SQUARE = "Rnd 1: Ch 1, *3 sc in ring, ch 2; rep from * 3 more times; join. (12 sc)\n"
GRANNY = """Ch 4, join to form a ring.
Rnd 1: Ch 3, 2 dc in ring, *ch 2, 3 dc in ring; rep from * 2 more times, ch 2, join. (12 dc)
Rnd 2: Join B to any corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join. (24 dc)
Rnd 3: Join C to any corner, (ch 3, 2 dc, ch 2, 3 dc) in corner, *ch 1, 3 dc in ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in corner; rep from * around, ending with ch 1, 3 dc in last ch-1 sp, ch 1, join. (36 dc)
"""


@pytest.mark.parametrize("up_to", ["across to ch-2 sp", "to ch-2 sp", "across to the center ch-2 space", "to next ch-2 sp", "up to the ch-2 sp", "until you reach the ch-2 sp"])
def test_up_to_a_space(up_to: str) -> None:
    text = SHAWL + f"Row 2: Ch 3, 2 dc in first st, dc {up_to}, (2 dc, ch 2, 2 dc) in sp, dc across to last st, 3 dc in last st, turn. (14 dc)"
    assert first_counts(text) == [6, 14]
    assert [f.code for f in check_source(Source.of(text)).findings if f.code[0] in "NW"] == []


@pytest.mark.parametrize("up_to", ["to corner", "around to corner sp", "up to the corner", "until you reach the corner", "to corner ch-2 sp"])
def test_up_to_a_corner(up_to: str) -> None:
    text = f"Ch 4, join to form a ring.\n{SQUARE}Rnd 2: Ch 1, *sc {up_to}, (sc, ch 2, sc) in corner; rep from * around; join. (20 sc)"
    assert first_counts(text)[-1] == 12 + 4 * 2


@pytest.mark.parametrize("told", ["working one more group of 3 dc along each side", "adding one more group to each side", "with an extra group on each side", "having one additional group of 3 dc between corners"])
def test_a_group_more_on_each_side(told: str) -> None:
    text = f"{GRANNY}Rnd 4: As Rnd 3, {told}. (48 dc)\nRnd 5: Ch 1, sc in each dc and ch-1 sp around, working 3 sc in each corner; join."
    assert first_counts(text)[-2:] == [48, 48 + 4 * 3 + 4 * 3]  # each dc, three spaces a side, three in each corner


def test_rows_of_one_label_have_their_own_numbers() -> None:
    text = "R1: 6 sc in MR (6)\nR2-R4: sc around (6)\nR5: inc x 6 (12)"
    assert [row.label for row in work(read(Source.of(text), "us")).rows] == ["R1", "R2", "R3", "R4", "R5"]


def test_the_stitch_that_closes_told_before_its_number() -> None:
    assert first_counts("R1: 6 sc in MR (6)\nR2: sc around (6)\nPress flat and sc through both sides: 3 sc. (3)") == [6, 6, 3]


def test_a_yoke_divided() -> None:
    text = """Ch 32, join to form a ring.
Rnd 1: Ch 1, sc in each ch around, join. (32)
Rnd 2: Ch 2 (does not count), hdc in next 5 sts, *(hdc, ch 2, hdc) in next st, hdc in next 5 sts, (hdc, ch 2, hdc) in next st*, hdc in next 9 sts; rep from * to * once more, hdc in last 4 sts, join. (36 hdc)
Rnd 3: Ch 2, hdc to first ch-2 sp, ch 3 for underarm, skip all sleeve sts to next ch-2 sp, hdc to next ch-2 sp, ch 3, skip to next ch-2 sp, hdc to end, join.
Rnd 4: Ch 2, hdc in each st and ch around, join.
"""
    # 5 + 1, 1 + 5 + 1 passed over, 1 + 9 + 1, the other sleeve, 1 + 4; then the chains as well
    assert first_counts(text) == [32, 32, 36, 6 + 11 + 5, 6 + 3 + 11 + 3 + 5]


def test_a_space_that_is_worked_into_is_not_passed() -> None:
    text = f"Ch 4, join to form a ring.\n{SQUARE}Rnd 2: Ch 1, *skip to next ch-2 sp, 3 sc in sp; rep from * around; join."
    assert first_counts(text)[-1] == 4 * 3
