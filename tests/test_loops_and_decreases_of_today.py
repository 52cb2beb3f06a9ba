"""Loops, decreases and openings in the words of pages of today: "sc tbl", "2sctog", linked stitches, shaped armholes."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

NINE = "Rnd 1: 9 sc in ring. (9)\n"


@pytest.mark.parametrize(("row", "count"), [
    ("Rnd 2: 1 sctbl in each st.", 9),
    ("Rnd 2: 3 sc tbl in first st, sc tbl to end of rd.", 11),
    ("Rnd 2: 1 sc-flo in each st.", 9),
    ("Rnd 2: Sc tbl, no increases.", 9),
    ("Rnd 2: Sc tbl around - do not sc in the sl st.", 9),
    ("Rnd 2: *2sctog (1st decrease), sc in next – repeat from * around for a total of 6 stitches.", 6),
    ("Rnd 2: Decrease round – *sc2tog, 1 sc in next, rep from * around. (6)", 6),
    ("Rnd 2: *1 sc dec* x3, sc in last 3 (6)", 6),
    ("Rnd 2: (sc dec) x3 [6]", 6),
    ("Rnd 2: Ch 1, working all sts for this round in the back loop of sc, 2 hdc in first st, hdc in next 2 *2 hdc in next, hdc in next 2; rep from * around. (12)", 12),
    ("Rnd 2: Ch 1, * 2 sc in next, sc in next 2 * continue from * to * around.", 12),
    ("Rnd 2: LDC inc, 7 LDC, LDC inc, sl st to join (11 sts)", 11),
])
def test_one_round(row: str, count: int) -> None:
    assert first_counts(NINE + row)[1] == count


@pytest.mark.parametrize(("rows", "counts"), [
    ("Fsc 22. Join with a sl st at the bottom of first fsc.\nRd 1: Sc tbl in first fsc, pm, sc tbl to end. (22 sts)", [22, 22]),
    ("Row 1: Ch 50, sc in 3rd ch from end and in each ch, turn.", [48]),
    ("Ch 30.\nRow 1: Tr in 5th ch (the 4 skipped chs are first tr) and in each ch. (27 tr)", [30, 27]),
    ("Ch 31.\nRow 1: Sc in 2nd ch and in each ch. (30)\nRow 2: Ch 1, turn, sl st in first 5 sts, ch 1, sc in next, sc2tog, sc to last 8 sts, sc2tog, sc in next; leave last 5 sts unworked - 18 sc (sl sts not counted).", [31, 30, 18]),
    ("Round 1: 20 hdc in ring (20)\nRow 2 - ch 2, hdc in next 15, DO NOT work anything in the last 4 sts, ch 2 turn (16)", [20, 16]),
    ("Ch 16.\nRow 1: Hdc in 3rd ch from hook and in each ch. (14)\nRow 2: Sc in next 6, ch 2, skip 2, sc in next 6.\nRow 3: Hdc across, ch 2, turn (put 2 hdc in each chsp)", [16, 14, 12, 14]),
    ("Ch 11.\nRow 1: Sc in 2nd ch and in each ch. (10)\nRow 2: Dc in each st.\nRow 3: Sc in each st.\nRows 4-7 – repeat Rows 2-3 2 times in all", [11, 10, 10, 10, 10, 10, 10, 10]),
])
def test_whole_beginnings(rows: str, counts: list[int]) -> None:
    assert first_counts(rows) == counts
