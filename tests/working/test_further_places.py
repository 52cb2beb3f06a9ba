"""One stitch in further places, the preposition said once: "sc in first st and next 3 sts", "dc in 4th ch from hook and next 2 ch"."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


@pytest.mark.parametrize(("rows", "made"), [
    ("Row 1: Ch 10, sc in 2nd ch from hook and next 8 ch.", [9]),
    ("Row 1: Ch 10, sc in 2nd ch from hook and in next 8 ch.", [9]),
    ("Row 1: Ch 10, sc in back bump of 2nd ch from hook and each ch across.", [9]),
    ("Row 1: Ch 10, sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, sc in first st and next 3 sts, dc in next st and next 4 sts.", [9, 9]),
    ("Row 1: Ch 10, sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 1, sc in first st and following 3 sts, dc in next 5 sts.", [9, 9]),
])
def test_the_preposition_is_said_once(rows, made):
    report = work(read(Source(f"Terms: US\nPiece\n{rows}\n", "text")))
    assert [r.counts[0] for r in report.rows] == made
    assert not [f for f in report.findings if f.code == "N002"]
