"""Sentences that say which rows are the pattern ask for no row; those behind them that repeat the pattern do."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

CLOTH = "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch to end. (19)\nRow 2: Ch 1, sc to end. (19)\nRow 3: Ch 1, hdc to end. (19)\n"


def _rows(text: str) -> int:
    """Rows made, the chain not counted."""
    return len(work(read(Source.of(text), "us")).rows) - 1


@pytest.mark.parametrize(
    ("told", "more"),
    [
        ("Rows 2 and 3 form patt.", 0),
        ("These two rows form the pattern.", 0),
        ("The last 2 rows form the pattern and are repeated throughout.", 0),
        ("Rows 2-3 set the st patt; rep these 2 rows 4 times more.", 8),
        ("Rows 2 and 3 form the pattern. Repeat them 10 times more.", 20),
        ("The last 2 rows form the pattern.\nWork 6 more rows in pattern.", 6),
        ("Cont in patt until 20 rows have been worked.", 17),
        ("Work even until there are 12 rows.", 9),
    ],
)
def test_rows_that_form_the_pattern(told: str, more: int) -> None:
    text = CLOTH + told
    assert _rows(text) == 3 + more
    assert [f.code for f in check_source(Source.of(text)).findings if f.code[0] in "NW"] == []


def test_a_ring_told_in_a_line_of_its_own() -> None:
    text = "Head\nR1: 6 sc in MR (6)\n\nEars\nMR\nRnd 1 - 5 sc\nRnd 2 - inc around (10)"
    assert [row.counts[0] for row in work(read(Source.of(text), "us")).rows if row.label] == [6, 5, 10]


def test_a_space_before_the_first_group() -> None:
    text = """Ch 22.
Row 1: 3 dc in 5th ch from hook, *sk next 2 ch, 3 dc in next ch; rep from * across to last 2 ch, skip 1, dc in last ch. (6 groups)
Row 2: Ch 3, turn; 3 dc in sp before first group, 3 dc in each sp between groups across, 3 dc in sp after last group; dc in turning ch.
"""
    assert [row.counts[0] for row in work(read(Source.of(text), "us")).rows] == [22, 1 + 6 * 3 + 1, 1 + 3 + 5 * 3 + 3 + 1]
    assert [f.code for f in check_source(Source.of(text)).findings if f.code[0] in "NW"] == []
