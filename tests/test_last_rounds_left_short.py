"""What the last round of a repeat leaves out: "omitting the last hdc and ch 3", "ending last repeat without the ch 4", "leaving off the last ch 2"."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows

MESH = ["Ch 20.", "Row 1: Sc in 2nd ch from hook and in next 18 ch, turn. (19 sc)", "Row 2: Ch 1, sc in first st, *ch 2, skip 2 sts, sc in next st; rep from * across, turn. (7 sc)"]


@pytest.mark.parametrize("end", [
    "rep from * across, omitting last ch 2, turn.",
    "rep from *, omitting ch-2 on last rep, turn.",
    "rep from * across, leaving off the last ch 2, turn.",
    "rep from * to end, ending last rep without ch 2, turn.",
    "rep from * to end, ending last repeat without the ch 2, turn.",
    "rep from * to end, but omit the ch 2 at end of last repeat, turn.",
    "rep from * across, except for last ch 2, turn.",
    "rep from * across, do not work the last ch 2, turn.",
    "rep from * across (omit last ch 2), turn.",
    "rep from * across without the last ch 2, turn.",
])
def test_the_last_chain_left_out(end):
    rows = last_rows([*MESH, f"Row 3: Ch 1, *sc in next sc, ch 2; {end}"], "us")
    assert rows[-1].counts == (7,)
    assert rows[-1].with_chains == (7 + 6 * 2,)


@pytest.mark.parametrize(("row", "terms", "count"), [
    ("Ch 1, *sc in next 3 sts, hdc in same st, ch 3, skip 3 sts; rep from * around, omitting the last hdc and ch 3, ch 1, hdc in first sc.", "us", 4 * 4 - 1),
    ("1ch, *1dc in next 6 sts, 3ch, 1htr in same st, ch3; rep from * to end, omitting the last htr and ch3.", "uk", 4 * 7 - 1),
    ("Ch 1, *sc in next 3 sts, ch 3, skip 3 sts; rep from * around, omitting last ch 3, ch 1, hdc in first sc.", "us", 12),
])
def test_several_left_out(row, terms, count):
    first = "24 sc in magic ring." if terms == "us" else "24 dc in magic ring."
    assert last_rows([f"Rnd 1: {first} (24)", f"Rnd 2: {row}"], terms)[-1].counts == (count,)
