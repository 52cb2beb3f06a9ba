"""Chains skipped before a single that are a stitch, shaping told by what lies between, foundation stitches until there are so many."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts, last_rows


@pytest.mark.parametrize("row", [
    "Skip 3 chs (counts as dc), *sc in next ch, dc in next ch; rep from * to last ch, sc in last ch, turn.",
    "Sk first 3 ch (they count as 1 dc), *1 sc in next ch, 1 dc in next ch; rep from * to last ch, 1 sc in last ch, turn.",
    "Sc in 4th ch from hook, *dc in next ch, sc in next ch; rep from * across, turn. (18)",
    "Sc in 4th ch from hook (3 skipped ch count as first dc), *dc in next ch, sc in next ch; rep from * across, turn. (18)",
])
def test_three_chains_before_a_single_are_a_dc_where_both_take_turns(row):
    rows = last_rows(["Ch 20.", f"Row 1: {row}", "Row 2: Ch 3 (counts as dc), sk first st, *sc in next dc, dc in next sc; rep from * across, sc in top of turning ch. (18)"], "us")
    assert [rows[1].counts, rows[2].counts] == [(18,), (18,)]
    assert rows[1].made["dc"] == (9,)
    assert rows[1].made["sc"] == (9,)


def test_three_chains_before_singles_alone_are_none():
    assert last_rows(["Ch 20.", "Row 1: Sc in 4th ch from hook and in each ch across. (17)"], "us")[-1].counts == (17,)


@pytest.mark.parametrize(("row", "count"), [
    ("Sc around, decrease after every 10th stitch. (44)", 44),
    ("Decrease after every 6 sts.", 42),
    ("Change to Single Crochet. Decrease after every 4th stitch.", 40),
    ("Sc in each st around, decreasing 1 st after every 10th st. (44)", 44),
])
def test_shaping_after_so_many(row, count):
    label = "" if row.startswith("Change") else "Rnd 2: "
    assert last_rows(["Rnd 1: 48 sc in magic ring. (48)", label + row], "us")[-1].counts == (count,)


@pytest.mark.parametrize("row", ["Make FSC until you have 38 stitches, turn.", "Work fhdc until there are a total of 38 sts, turn."])
def test_foundation_stitches_until_there_are_so_many(row):
    assert first_counts(f"{row}\nRow 2: Ch 1, sc in each st across. (38)\n") == [38, 38]


@pytest.mark.parametrize("words", ["Hereafter continue in this manner, having 1 st more between incs, until there are 42 sts.", "From now on, continue in same manner until there are 42 sts."])
def test_what_goes_on_from_here(words):
    assert first_counts(f"Rnd 1: 6 sc in ring.\nRnd 2: 2 sc in each st.\nRnd 3: *Sc in next st, 2 sc in next st; rep from *. (18)\n{words}\n")[-1] == 42
