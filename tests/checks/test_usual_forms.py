"""Forms that many patterns use and that must bring no false finding."""

import pytest

from loopwright.workshop.check import check_text

SOUND = [
    "Ch 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 3, sk first st, dc in each st across, turn. (20 dc)\nRow 3: Ch 3, sk the first dc, dc in each dc across, turn. (20 dc)\n",
    "Sizes: S (M, L, XL)\n\nBack\nMake 84 (90, 95, 102) ch.\nRow 1: 1 htr in 3rd ch from hook, 1 htr in each ch to end, turn. (83 (89, 94, 101) htr)\n",
]


@pytest.mark.parametrize("text", SOUND)
def test_no_errors(text):
    report = check_text(text)
    assert [f.code for f in report.findings if f.code.startswith(("W", "C019"))] == []
    assert all(r.agrees is not False for r in report.rows)


def test_sizes_in_brackets_are_sizes():
    assert check_text(SOUND[1]).sizes == ("S", "M", "L", "XL")
