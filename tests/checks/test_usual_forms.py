"""Forms that many patterns use and that must bring no false finding."""

import pytest

from loopwright.workshop.check import check_text

SOUND = [
    "65 ch, join with ss into a ring, taking care not to twist.\nRnd 1: 3 ch, 1 tr in each ch around, ss to top of 3 ch. 65 tr\nRnd 2: 3 ch, 1 tr in each st around, ss to top of 3 ch.\nRnd 3: 1 ch, 1 dc in each st around, ss to first dc. 65 dc\n",
    "Abbreviations (US terms):\nMR = magic ring\nsc = single crochet\ninc = increase (2 sc in one st)\ndec = sc two stitches together\nch = chain\n\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc 1, dec) x 4 (8)\nFO.\n",
    "Notes\n1. Turning chains do not count as stitches.\n2. The 3 ch at the start of a round counts as a stitch.\n\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (30 sts)\n",
    "Ch 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 3, sk first st, dc in each st across, turn. (20 dc)\nRow 3: Ch 3, sk the first dc, dc in each dc across, turn. (20 dc)\n",
    "Sizes: S (M, L, XL)\n\nBack\nMake 84 (90, 95, 102) ch.\nRow 1: 1 htr in 3rd ch from hook, 1 htr in each ch to end, turn. (83 (89, 94, 101) htr)\n",
]


@pytest.mark.parametrize("text", SOUND)
def test_no_errors(text):
    report = check_text(text)
    assert [f.code for f in report.findings if f.code.startswith(("W", "C019"))] == []
    assert all(r.read for r in report.rows if r.label)
    assert all(r.agrees is not False for r in report.rows)


def test_sizes_in_brackets_are_sizes():
    assert check_text(SOUND[-1]).sizes == ("S", "M", "L", "XL")
