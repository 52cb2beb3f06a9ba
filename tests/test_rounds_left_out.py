"""Rounds left out, labels without a colon, counts in the midst, and how pages of today close their rounds."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

LEFT_OUT = """Rnd 1: 7 sc in magic ring. (7)
Rnd 2: Inc around. (14)
"""


@pytest.mark.parametrize(("row", "counts"), [
    ("Rnds 9-11: Sc around. (35)", [35, 35, 35]),
    ("9-11. 1 sc in each st [35]", [35, 35, 35]),
    ("Rounds 9-10 (or more): 1 sc in each st = 35 st", [35, 35]),
    ("9. sc (35)", [35]),
    ("9. Change to Blue – sc (35)", [35]),
])
def test_what_was_there_before_rounds_left_out(row: str, counts: list[int]) -> None:
    assert first_counts(LEFT_OUT + row)[2:] == counts


def test_a_range_that_goes_on_stands_on_what_is_there() -> None:
    assert first_counts(LEFT_OUT + "Rnds 3-5: Sc around. (15)")[2:] == [14, 14, 14]


@pytest.mark.parametrize(("rows", "counts"), [
    ("Round 1: 14 hdc in ring. (14)\nRow 2-4 hdc in every st, ch 2 turn (14)", [14, 14, 14, 14]),
    ("Round 1: 14 hdc in ring. (14)\nRows 2-3 hdc in each st across.", [14, 14, 14]),
    ("Row 1: Ch 12, sc in 2nd ch from hook and in each ch. (11)\nRow 2 – 4 rep row 1 *Fasten off at the end of row 4", [11, 11, 11, 11]),
    ("1. 9 sc in ring (9)\n2.Sc in each st. (9)", [9, 9]),
    ("1. 5 sc in ring (5)\n2. 5 inc (10)\n3. – 4. (2 rows) no change (10);\n5-6. unchanged (10)", [5, 10, 10, 10, 10, 10]),
    ("1) Ch 7, sc in 2nd ch from hook and in each ch. [6]\n2) Ch 1, sc in each st. [6]\n... repeat row (2) another 2 times.", [6, 6, 6, 6]),
])
def test_labels_of_todays_pages(rows: str, counts: list[int]) -> None:
    assert first_counts(rows) == counts


@pytest.mark.parametrize(("rows", "counts"), [
    ("Rnd 1: 10 sc in ring. (10)\nRnd 2: Ch 1, (2 sc in next, sc in next) around. Sl st to ch 1. (15)", [10, 15]),
    ("Rnd 1: 10 sc in ring. (10)\nRnd 2: Sc in every st, slip st at the end of each round (10);", [10, 10]),
    ("Rnd 1: 8 sc in ring. (8)\nRnd 2: 1 sc in first st, 2 sc in second. Repeat to end and SS –(now 12 stitches)", [8, 12]),
    ("Rnd 1: 8 sc in ring. (8)\nRnd 2: Sc in all stitches, SS (still 8 stitches at the end of round 2).", [8, 8]),
    ("Rnd 1: 8 sc in ring. (8)\nRnd 2: Sc2tog around (4 left)", [8, 4]),
    ("Rnd 1: Ch 2, 9 hdc in ring, (10) sl st in top of ch 2, NOTE: the chain is one of them, here and throughout\nRnd 2: Ch 2, hdc in each st, sl st in top of ch 2 (10)", [10, 10]),
    ("Rnd 1: 3 ch (counts as 1st tr) 8 tr in ring, sl st every rnd into top of 3 ch (9)\nRnd 2: 3 ch, 1 tr in same st, 2 tr in each st to end (18)", [9, 18]),
])
def test_ends_of_rounds(rows: str, counts: list[int]) -> None:
    assert first_counts(rows) == counts


def test_a_round_on_a_chain_that_is_not_told() -> None:
    assert first_counts("Rnd 1: Ch 2, hdc in every ch. Join. (34 hdc.)\nRnd 2: Ch 2, hdc in each hdc. Join.") == [34, 34]


@pytest.mark.parametrize("first", ["MC (6)", "MR (6)"])
def test_a_ring_alone_has_the_stitches_of_its_count(first: str) -> None:
    assert first_counts(f"1. {first}\n2. Inc x 6 (12)") == [6, 12]
