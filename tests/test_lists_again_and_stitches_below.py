"""Lists told again without a verb, so many times in all or more; shells of a bracket and one more; stitches that an earlier round passed over; remarks on one row of a range."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("row", "count"), [
    ("*Sc in next 4 sts, inc* from * to * 5 times.", 30),
    ("*Sc in next 4 sts, inc*, rep * to * 4 times.", 30),
    ("*Sc in next 4 sts, inc* rep * to * 5 times altogether.", 30),
    ("*Sc in next 4 sts, inc* rep * to * 5 times in total.", 30),
    ("*Sc in next 4 sts, inc* repeat from * to * 4 times.", 30),
])
def test_a_list_from_star_to_star(row, count):
    assert last_rows(["Rnd 1: 25 sc in magic ring. (25)", f"Rnd 2: {row}"], "us")[-1].counts == (count,)


@pytest.mark.parametrize(("row", "count"), [
    ("*Skip 1 sc, (dc, ch 2) 4 times and dc in next sc, skip next sc, sc in next sc; rep from * around.", 24),
    ("*Skip 1 sc, (dc, ch 2) 4 times and dc (shell made) in next sc, skip next sc, sc in next sc; rep from * around.", 24),
    ("(Dc, ch 1) 3 times, dc in next st, (dc, ch 1) 3 times, dc in next st, sc in next 8 sts.", 16),
])
def test_a_bracket_and_one_more(row, count):
    assert last_rows(["Rnd 1: 16 sc in magic ring. (16)", f"Rnd 2: {row}"], "us")[-1].counts == (count,)


@pytest.mark.parametrize(("row", "count"), [
    ("Ch 1, *sc in next sc, dc in next unused st of Rnd 1; rep from * around.", 14),
    ("Ch 1, *sc in next sc, dc in next skipped st of Rnd 1; rep from * around.", 14),
    ("Dc in each unused st of Rnd 1 around. (7)", 7),
    ("Working behind loops, dc in each skipped st of Rnd 1 around. (7)", 7),
    ("Sc in each unworked sc of Rnd 1.", 7),
])
def test_stitches_that_an_earlier_round_passed_over(row, count):
    rows = last_rows(["Rnd 1: 14 sc in magic ring. (14)", "Rnd 2: Ch 1, *sc in next st, ch 3, skip 1 st; rep from * around, join. (7 sc)", f"Rnd 3: {row}"], "us")
    assert rows[-1].counts == (count,)
    assert rows[-1].agrees is not False


@pytest.mark.parametrize("remark", [
    ", on row 6 ch 2 for a buttonhole.", ". On row 5, change to B.", ", and on rows 5 and 7 make a buttonhole.",
])
def test_what_is_said_of_one_row_of_a_range(remark):
    row = last_rows(["Ch 16.", "Row 1: Sc in 2nd ch from hook and in next 14 ch. (15 sc)", f"Rows 2-8: Ch 1, sc in each st across{remark}"], "us")[-1]
    assert row.counts == (15,)
    assert row.read
