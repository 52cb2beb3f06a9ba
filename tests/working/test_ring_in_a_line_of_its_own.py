"""A ring of chains told in a line of its own is what the first round is worked on: a count that disagrees is a fault, no other start."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


@pytest.mark.parametrize("ring", [
    "Ch 80; join with sl st to first ch to form a ring.", "Ch 80. Join to form a ring.", "Chain 80, join with a slip stitch to make a ring.",
])
def test_a_first_round_with_a_wrong_count_is_said(ring):
    text = f"Terms: US\nHat\n{ring}\nRnd 1: Ch 1, hdc in each ch around; join. (90 hdc)\nRnd 2: Ch 1, hdc in each st around; join. (90 hdc)\n"
    report = work(read(Source(text, "text")))
    assert [row.counts[0] for row in report.rows][:2] == [80, 80]
    assert [f.code for f in report.findings if f.code == "W001"] == ["W001"]


def test_a_right_one_is_confirmed():
    text = "Terms: US\nHat\nCh 80; join with sl st to first ch to form a ring.\nRnd 1: Ch 1, hdc in each ch around; join. (80 hdc)\n"
    report = work(read(Source(text, "text")))
    assert report.rows[-1].counts == (80,)
    assert not [f for f in report.findings if f.code == "W001"]
