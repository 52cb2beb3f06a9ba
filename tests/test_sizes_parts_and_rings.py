"""Rows told for some sizes, parts that are worked as another, rings of an even number of stitches, ovals around a chain told in prose."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.line_by_line import first_counts

CAP = "Sizes: {names}\nRnd 1: Magic ring, ch 2, 8 (10, 14) dc in ring, join with sl st to first dc.\n"


@pytest.mark.parametrize(("names", "rows"), [
    ("Baby (Child, Adult)", "For Child and Adult sizes only:\nRnd 2: {does}\nAll sizes:\n"),
    ("Baby (Child, Adult)", "Rnd 2 (Child, Adult): {does}\n"),
    ("Small, Medium, Large", "Medium and Large Only\nRnd 2: {does}\nAll Sizes\n"),
    ("Small, Medium, Large", "Sizes Medium & Large\nRnd 2: {does}\nAll Sizes\n"),
    ("S, M, L", "Rnd 2 (sizes M and L only): {does}\n"),
    ("S, M, L", "Rnd 2: {does} [M and L only]\n"),
    ("S, M, L", "(M, L only) Rnd 2: {does}\n"),
    ("S, M, L", "Size S: Skip to Rnd 3.\nSizes M, L: Rnd 2: {does}\nAll: "),
])
def test_rows_of_some_sizes(names, rows):
    text = CAP.format(names=names) + rows.format(does="Ch 2, 2 dc in each st around, join.") + "Rnd 3: Ch 2, dc in each st around, join.\n"
    report = work(read(Source.of(text), "us"))
    assert [r.counts for r in report.rows if r.label] == [(8, 10, 14), (None, 20, 28), (8, 20, 28)]


@pytest.mark.parametrize(("told", "count"), [
    ("Rnd 1: Magic ring, ch 2, 14 dc in ring, join.", 14),
    ("Rnd 1: Ch 4, join to form ring, ch 2, 14 dc in ring, sl st to first dc.", 14),
    ("Rnd 1: Magic ring, ch 3, 14 dc in ring, join.", 14),
    ("Rnd 1: Magic ring, ch 3, 13 dc in ring, join.", 14),
    ("Rnd 1: Magic ring, ch 3 (counts as dc), 14 dc in ring, join.", 15),
    ("Rnd 1: Ch 5, join to form ring, ch 3, 15 dc in ring, join in top of ch-3.", 16),
])
def test_whether_the_chain_of_a_ring_counts(told, count):
    assert first_counts(told)[-1] == count


@pytest.mark.parametrize("order", [
    "R1-R3: Same as for leg 1.", "R1-R3: Repeat leg 1. Do not fasten off.", "Work as for first leg, but do not fasten off.",
])
def test_a_second_leg(order):
    text = f"Leg 1\nR1: 7 sc in MR (7)\nR2: inc around (14)\nR3: sc around (14)\nFasten off.\nLeg 2\n{order}\nBody\nR4: sc around\n"
    assert first_counts(text)[-2:] == [14, 14]


def test_an_oval_around_a_chain_told_in_prose():
    text = """Ch 6. Stitches are worked around both sides of the foundation chain.
Rnd 1: Start in second ch from the hook, inc in this st, sc in next 3 st, 4 sc in last st. Continue on the other side of the chain, sc in next 3 st, inc in last st [14]
"""
    assert first_counts(text)[-1] == 14


def test_the_last_slip_stitch_of_counted_petals_closes_the_round():
    text = "Rnd 1: Ch 4, sl st to form ring, ch 1, 12 sc in ring, sl st in first sc. (12)\nRnd 2: *Ch 3, 2 dc in same st, 2 dc in next st, ch 3, sl st in same st, sl st in next st; rep from * 5 more times.\n"
    report = work(read(Source.of(text), "us"))
    assert (report.rows[-1].counts, report.findings) == ((24,), ())


def test_chains_of_a_foundation_that_are_passed_over_are_told():
    row = "Row 1: Ch {n}, dc in 4th ch from hook, dc in next 2 ch, *3 dc in next ch, dc in next 3 ch, dc3tog, dc in next 3 ch; rep from * to last ch, 2 dc in last ch, turn.\n"
    assert [[f.code for f in work(read(Source.of(row.format(n=n)), "us")).findings] for n in (27, 31)] == [[], ["W015"]]
