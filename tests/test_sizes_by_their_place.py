"""Sizes with the middle one first, "24 (20-28)", and rows for one size where the text names none."""

from __future__ import annotations

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.line_by_line import last_rows


def test_the_middle_size_first():
    lines = ["Ch 31 (27-35).", "Row 1: Sc in 2nd ch from hook and in each ch to end. 30 (26-34) sc.", "Row 2: Ch 1, sc in next 12 (10-14) sts, 2 sc in next st, sc in each st to end. 31 (27-35) sc."]
    assert [row.counts for row in last_rows(lines, "us")[1:]] == [(30, 26, 34), (31, 27, 35)]


def test_a_range_that_is_told_but_once_is_no_size():
    assert last_rows(["Ch 31.", "Row 1: Sc in 2nd ch from hook and in each ch to end. (30 sc)", "Rep Row 1 for 20 (18-22) rows."], "us")[1].counts == (30,)


TWO_ROWS = ["Ch 17 (19, 23, 25).", "Row 1: Sc in 2nd ch from hook and in each ch to end. 16 (18, 22, 24) sc.", "Row 2: Ch 1, sc in each st across."]


def test_a_row_for_a_size_by_its_place():
    rows = last_rows([*TWO_ROWS, "Size 4 only: Row 3: Ch 1, 2 sc in first st, sc in each st across. (25)", "All sizes: Row 4: Ch 1, sc in each st."], "us")
    assert [row.counts for row in rows[-2:]] == [(None, None, None, 25), (16, 18, 22, 25)]
    assert all(row.agrees is not False for row in rows if row)


def test_a_row_for_a_size_that_is_not_known():
    rows = last_rows([*TWO_ROWS, "Size 10 only: Row 3: Ch 1, 2 sc in first st, sc in each st across. (25)", "All sizes: Row 4: Ch 1, sc in each st."], "us")
    assert rows[-1].counts == (16, 18, 22, 24)
    assert all(row.agrees is not False for row in rows if row)


def test_small_is_the_first():
    rows = last_rows(["Ch 17 (19, 23).", "Row 1: Sc in 2nd ch from hook and in each ch to end. 16 (18, 22) sc.", "Small size only: Row 2: Ch 1, 2 sc in first st, sc in each st across. (17)"], "us")
    assert rows[-1].counts == (17, None, None)


def test_sizes_are_named_by_the_rows_told_for_some_of_them():
    """The lists have four sizes, three of which have rows of their own: the smallest has none."""
    lines = [
        "Rnd 5: Ch 2, *2 hdc in next st, hdc in next 4 sts; rep from * around. 48 hdc.",
        "Size 3 only: Rnd 6: Ch 2, *2 hdc in next st, hdc in next 11 sts; rep from * around. 52 hdc.",
        "Sizes 5 and 7 only: Rnd 6: Ch 2, *2 hdc in next st, hdc in next 5 sts; rep from * around. 56 hdc.",
        "Size 7 only: Rnd 7: Ch 2, *2 hdc in next st, hdc in next 13 sts; rep from * around. 60 hdc.",
        "All sizes: Next rnd: Ch 2, hdc in each hdc around. 48 (52, 56, 60) hdc.",
    ]
    rows = last_rows(lines, "us")
    assert [row.counts for row in rows] == [(48, 48, 48, 48), (None, 52, None, None), (None, None, 56, 56), (None, None, None, 60), (48, 52, 56, 60)]


def test_names_taken_from_rows_are_told_as_assumed():
    only = "Rnd 1: 12 sc in ring. 12 (12, 12) sc.\nSizes 5 and 7 only: Rnd 2: Inc in each. 24 sc.\nAll sizes: Next rnd: Sc around. 12 (24, 24) sc.\n"
    told = [a.message for a in work(read(Source.of(only), "us")).assumptions]
    assert "the sizes are called after the rows that are told for some of them: smaller than 5, size 5, size 7" in told
    named = work(read(Source.of(f"Sizes: 3 (5, 7)\n{only}"), "us"))
    assert not any("are called after" in a.message for a in named.assumptions)
