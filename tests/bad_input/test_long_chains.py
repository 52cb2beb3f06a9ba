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


def test_one_line_asks_for_no_more_rows_than_are_worked_for_a_line():
    """A circle of 150 rounds is worked from one line; of 500 it is not, and the line is told once."""
    line = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nRnds 3-{last}: Continue as established, inc 6 sts each round.\n"
    small, large = (check_source(Source.of(line.format(last=last))) for last in (150, 500))
    assert [f.code for f in small.findings if f.code.startswith("W")] == []
    assert small.rows[-1].counts == (900,)
    found = [f for f in large.findings if f.code == "W008"]
    assert len(found) == 1
    assert "one line" in str(found[0].args["limit"])


def test_more_shapes_than_a_row_can_hold_are_not_begun():
    report = check_source(Source.of("Row 2: 999999 shells across.\n"))
    assert report.rows[0].counts == (None,)
