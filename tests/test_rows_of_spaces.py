"""Rows worked from space to space whose last stitch goes into the turning chain: told in the ways that are usual, they keep their number.

Common practice, no source: the stitch is known as moss, linen or granite stitch. The words are our own.
"""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

ROWS = (
    "Ch 32.\nRow 1: Sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * to end. (15 sc)\n"
    "Row 2: Ch 2, turn. Sc in first ch-1 sp, *ch 1, sk next sc, sc in next ch-1 sp; rep from * across, {ending}. (15 sc)\n"
    "Rows 3-10: Rep Row 2. (15 sc)\n"
)


@pytest.mark.parametrize("ending", [
    "ending with sc in the turning ch-2 sp", "ending with sc in ch-2 sp", "ending with sc in the turning chain space", "ending with sc in tch",
    "working the last sc into the turning chain space",
])
def test_the_last_stitch_goes_into_the_turning_chain(ending: str):
    report = check_source(Source.of("Terms: US\n\n" + ROWS.format(ending=ending)))
    assert [r.counts for r in report.rows][1:] == [(15,)] * 10
    assert [f.code for f in report.findings if f.code == "W001"] == []


def test_chains_that_are_a_loop_are_called_one():
    report = check_source(Source.of("Terms: US\n\n" + ROWS.format(ending="ending with sc in ch-2 sp")))
    assert "the 3 chains skipped before the first sc are a loop" in [a.message for a in report.assumptions]
