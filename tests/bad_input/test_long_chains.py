"""A chain of any length is bounded, where it stands for a stitch or turns too: working and weaving end, with a word on it."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source


@pytest.mark.parametrize("row", [
    "Rnd 2: Ch 100000000000000000000 (counts as dc), dc in each st around.", "Row 2: (Ch 99999999, 3 dc, ch 2, sl st) in ring.",
    "Row 2: Ch 99999999, turn, sc in each st across.", "Row 2: Ch 30000 (counts as tr), tr in each st.",
])
def test_a_start_chain_too_long_is_said_to_be(row):
    report = check_source(Source.of(f"Rnd 1: 12 sc in magic ring. (12 sc)\n{row}\n"))
    assert [f.code for f in report.findings if f.code == "W008"]
    assert all(fabric is None or len(fabric) < 100_000 for fabric in report.fabrics)
