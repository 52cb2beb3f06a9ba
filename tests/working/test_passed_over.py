"""Mosaic: a stitch goes down to the one that chains of the rows between passed over, and takes up the chains in its place.

Counts and places worked out by hand.
"""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

STRIP = (
    "Row 1 (A): Ch 22. Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\n"
    "Row 2 (A): Ch 1, sc in each st across, turn. (21 sc)\n"
    "Row 3 (B): Ch 1, sc in first st, *ch 1, sk 1 st, sc in next st; rep from * across, turn. (11 sc, 10 ch-1 sps)\n"
    "Row 4 (B): Ch 1, sc in first st, *ch 1, sk ch-1 sp, sc in next sc; rep from * across, turn. (11 sc, 10 ch-1 sps)\n"
)


@pytest.mark.parametrize("words", [
    "dc in skipped st 3 rows below", "dc in next skipped st 3 rows below", "dc in skipped st 2 rows below, in front of ch-1 sps", "dc in next skipped st",
])
def test_a_stitch_reaches_down_to_the_one_passed_over(words):
    report = check_source(Source.of(f"{STRIP}Row 5 (A): Ch 1, sc in first st, *{words}, sc in next sc; rep from * across, turn. (11 sc, 10 dc)\n"))
    assert [f.code for f in report.findings if f.severity != "advice"] == []
    assert report.rows[-1].counts == (21,)
    fabric = report.fabrics[0]
    assert fabric is not None
    low, high = next((row.start, row.end) for row in fabric.rows if row.label == "Row 2")
    last = fabric.rows[-1]
    deep = [fabric.into[i] for i in range(last.start, last.end) if fabric.kinds[fabric.kind[i]] == "dc"]
    begin = high - 21
    assert low <= begin
    assert deep == [begin + 19 - 2 * i for i in range(10)]  # every second stitch of Row 2, from its end: Row 5 comes back over it


@pytest.mark.parametrize("told", [
    "MDC (mosaic dc) = dc in skipped st 3 rows below, in front of the chain.", "MDC: dc in next skipped st 3 rows below, sk ch-sp behind",
])
def test_a_special_stitch_may_reach_down(told):
    report = check_source(Source.of(f"Special stitches: {told}\n{STRIP}Row 5 (A): Ch 1, sc in first st, [MDC in next skipped st, sc in next sc] 10 times, turn. (21 sts)\n"))
    assert [f.code for f in report.findings if f.code[0] in "NWD"] == []
    assert report.rows[-1].counts == (21,)
