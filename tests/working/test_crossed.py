"""Crossed stitches: the hook goes back to what was passed over just before."""

import pytest

from loopwright.workshop.check import check_text

BASE = "Ch 24.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (22 dc)\n"


def _row(text, label="Row 2"):
    return next(r for r in check_text(BASE + text).rows if r.label == label)


@pytest.mark.parametrize("words", [
    "*sk next st, dc in next st, dc in skipped st; rep from * to last st, dc in top of tch, turn.",
    "*skip next st, dc in next st, working in front of dc just made, dc in the skipped st; rep from * to last st, dc in last st, turn.",
    "*miss next st, dc in next st, dc in missed st; rep from * to last st, dc in last st, turn.",
    "*sk 1 st, dc in next st, dc in st just skipped; rep from * to last st, dc in last st, turn.",
])
def test_a_pair_takes_two_and_makes_two(words):
    row = _row(f"Row 2: Ch 3 (counts as dc), {words} (22 dc)\n")
    assert row.read
    assert row.counts == (22,)
    assert row.agrees


def test_the_fabric_crosses():
    report = check_text(BASE + "Row 2: Ch 3 (counts as dc), *sk next st, dc in next st, dc in skipped st; rep from * to last st, dc in last st.\n")
    fabric = report.fabrics[0]
    second = fabric.rows[-1]
    into = [fabric.into[i] for i in range(second.start, second.end) if fabric.kinds[fabric.kind[i]] == "dc"]
    pairs = list(zip(into[0::2], into[1::2], strict=False))[:9]
    assert all(later > first for first, later in pairs), "the row was turned: going back is to a stitch that was made later"
    assert len(set(into)) == len(into)


def test_first_and_second_of_what_was_skipped():
    row = _row("Row 2: Ch 1, sc in first st, *sk next 2 sts, dc in next st, dc in first skipped st, dc in 2nd skipped st; rep from * across, turn.\n")
    assert row.counts == (22,)


def test_each_of_several():
    row = _row("Row 2: Ch 1, sc in first 2 sts, *sk next 2 sts, tr in each of next 2 sts, tr in each of 2 skipped sts; rep from * across.\n")
    assert row.counts == (22,)


def test_nothing_was_skipped():
    report = check_text(BASE + "Row 2: Ch 3, dc in next st, dc in skipped st, dc in each st across.\n")
    assert any(f.code.startswith("W") for f in report.findings)
