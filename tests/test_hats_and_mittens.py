"""Rows as pages of hats, mittens and slippers tell them: places pointed at, one stitch per stitch, marks named, chains that are never a stitch.

The lines are our own; each count was worked by hand.
"""

from __future__ import annotations

import pytest

from loopwright.model.report import Report
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

RING = "Rnd 1: 12 dc in magic ring. (12)\n"
CH10 = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\n"


def worked(text: str, terms: str = "us") -> Report:
    return work(read(Source.of(text + "\n"), terms))


CASES = [
    # places pointed at
    ("us", CH10 + "Row 2: Ch 1, 3 hdc in first sc, hdc up to the last sc, 3 hdc in that one, turn.", 14),
    ("us", CH10 + "Row 2: Ch 1, hdc inc at the first st. Hdc over to the last st. Hdc inc there.", 12),
    ("us", CH10 + "Row 2: Ch 1, sc to last 3 sts, 2 sc in each of these.", 13),
    ("us", CH10 + "Row 2: Ch 1, sc over to the final st, 3 sc in it, turn.", 12),
    ("us", RING + "Rnd 2: Ch 2 (never the first dc), 2 dc in that same st, then 2 dc in every st left.", 24),
    ("us", RING + "Rnd 2: *Dc in one st, 2 dc in the st after; rep from * around.", 18),
    ("us", "Rnd 1: Magic ring, ch 1, 9 sc in it.", 9),
    ("us", RING + "Rnd 2: Ch 1, hdc in the ch 1's stitch, hdc the whole way.", 12),
    # in each, told briefly
    ("us", RING + "Rnd 2: One hdc per st.", 12),
    ("us", RING + "Rnd 2: Two dc per dc.", 24),
    ("us", "Ch 9.\nRow 1: One sc in 2nd ch from hook and in all the rest.", 8),
    ("us", "Ch 9.\nRow 1: One sc in 2nd ch from hook and all other ch, 8 sc. Ch 1, turn.", 8),
    ("us", "Ch 9.\nRow 1: One sc in 2nd ch from hook and every ch after.", 8),
    ("us", "Ch 9.\nRow 1: Sc in second chain off the hook and each of 6 ch after, 4 sc all in the last ch.", 11),
    ("us", CH10 + "Row 2: Hdc2tog, hdc on until 2 sts are left, hdc2tog.", 8),
    ("us", CH10 + "Row 2: Ch 1, sc in 2 sts, ch 3, pass 3 sts, sc what is left.", 7),
    ("us", RING + "Rnd 2: Ch 1, sc all round.", 12),
    # marks, and brackets that go on
    ("us", RING + "Rnd 2: (Dc in 3 sts, 2 dc in one) go on round. Join.", 15),
    ("us", RING + "Rnd 2: *2 sc in next st, sc in 2 sts* rpt * to * round.", 16),
    ("us", RING + "Rnd 2: *2 sc in next st, sc in 3 sts.* Keep going * to * round.", 15),
    ("us", RING + "Rnd 2: **Sc in 5 sts, 2 sc in one.* Repeat ** to * round.", 14),
    ("us", RING + "Rnd 2: *Sc in 2 sts, sc 2 sts together* Repeat * * round.", 9),
    ("us", RING + "Rnd 2: *2 sc in next st, sc in next* Work * to * 3 times in total. Sc the rest of the round.", 15),
    ("us", RING + "Rnd 2: *2 dc in next, dc in next, * (go on with what is between *s) join.", 18),
    # two in one, where numbers alone tell it
    ("us", RING + "Rnd 2: 2 dc, 1 dc all round.", 18),
    ("us", RING + "Rnd 2: (2 dc, dc, dc) 4 times.", 16),
    ("us", RING + "Rnd 2: *2 dc. Dc in 2 sts.* Repeat * to * round.", 16),
    # decreases and increases
    ("us", RING + "Rnd 2: Sc2tog (twice), sc 4, sc2tg 2 times.", 8),
    ("us", RING + "Rnd 2: Sc x 2 in 1st st, sc in each of 11 sts.", 13),
    ("us", RING + "Rnd 2: Hdc round, taking off 2 sts evenly spaced.", 10),
    # skips
    ("us", RING + "Rnd 2: Ch 1, *skip a dc, sc in the one after, ch 1; rep from * round, join.", 6),
    ("us", RING + "Rnd 2: *Pass 2 sts, 3 sc in one st; rep from * around.", 12),
    # the join, the count, the rest
    ("us", RING + "Rnd 2: (increases) Sc x 3 in 1st st, sc on to the last st, sc x 3 there (16 sts), ss to join, ch 1, no turn", 16),
    ("us", CH10 + "Row 2: Ch 1, sc over to the final st, 3 sc in it, turn. (12 sc) (Tie off)", 12),
    ("us", "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch. (6 total. The ch 1 is not a st)", 6),
    ("us", "Ch 7.\nRow 1: Turn. Leave 1 ch, sc in the other 6 in BLO.", 6),
    ("us", RING + "Rnd 2: Work 5 sc down the side; 3 sc on the edge; 6 sc up the other side; 4 sc to the end – 18 sc.", 18),
    ("us", "Ch 11.\nRow 1: Dc in 3rd ch from hook and in each ch, turn. (9 dc)\nRow 2: Ch 2, dc in 3 dc, (ch 1, skip 1, dc in 2 dc) all along, the last dc falling in the last dc.", 7),
    # rows again
    ("us", RING + "Rnd 2: Sc in each st.\nRnds 3-7: Rnd 2 five times more.", 12),
    ("us", CH10 + "Row 2: Ch 1, dc in each st, turn.\nRpt that row till the piece has 8 rows.", 10),
    ("us", RING + "Dec Rnd 1: *Sc in 2 sts, sc2tog; rep from * around. (9)\nDec Rnd 2: *Sc in next st, sc2tog; rep from * around. (6)", 6),
    # how many were there
    ("us", RING + "Rnd 6: (from 60) Ch 1, (sc in 9 sts, 2 sc in next) around.", 66),
    ("us", RING + "Rnd 6: (40 sts so far) Ch 1, sc in each st around.", 40),
    ("us", RING + "Rnd 6: (8 sc) sc2tog four times.", 4),
    # rings told briefly
    ("us", "Ch 5, sl st to a ring.\nRnd 1: Ch 1, 10 sc in ring.", 10),
    ("us", "30 chain. Slip stitch in the first, chain untwisted.\nChain 1. One single crotchet in every stitch.", 30),
    ("uk", "6ch, ss in first ch for a ring.\n1st round: 1ch, 14dc in ring, ss in first dc.", 14),
    # the chain's foot, and both of two
    ("uk", "4ch stands for the first dtr.\nRnd 1: 15dtr in a magic ring, ss in first dtr.\nRnd 2: 4ch, 1dtr in base of 4ch, 2dtr in every dtr to end, ss in top of beginning 4ch.", 30),
    ("uk", "Rnd 1: 12tr in a magic ring.\nRnd 2: 2ch and 1tr where the 2ch stands, 2tr in every st after, join. (24)", 24),
    ("uk", "Rnd 1: 12dc in a magic ring.\nRnd 2: * 1dc in both of next 2dc, 2dc in the one after, * rpt * to * to end.", 16),
    ("uk", "Rnd 1: 14dc in a magic ring.\nRnd 2: * 1dc in next 2dc, 2dc in the next; rep from * to last 2dc, 1dc in both last dc.", 18),
]


@pytest.mark.parametrize(("terms", "text", "count"), CASES, ids=[c[1].rsplit("\n", 1)[-1][:60] for c in CASES])
def test_a_row_is_worked_as_it_is_told(terms: str, text: str, count: int) -> None:
    report = worked(text, terms)
    row = report.rows[-1]
    assert row.read, row.why_not
    assert row.counts == (count,)


def test_what_a_chain_is_said_to_be_holds_further_on() -> None:
    for said in ("Ch 3 is never a st.\n", "Neither ch 2 nor ch 3 is ever counted.\n", "The ch 3 that opens each round is not a dc.\n"):
        report = worked(said + "Rnd 1: Ch 3, 12 dc in magic ring, join in first dc.\nRnd 2: Ch 3, 2 dc in each st around, join.")
        assert [row.counts for row in report.rows] == [(12,), (24,)], said
    told_once = worked("Rnd 1: Ch 2 (does not count as a st), 12 dc in magic ring, join in first dc. (12)\nRnd 6: Ch 2, (dc in 9 sts, 2 dc in next) around. (66)")
    assert told_once.rows[-1].counts == (66,)


def test_the_chain_told_beside_a_count_is_a_stitch_more() -> None:
    report = worked("3ch stands for the first tr.\nRnd 1: 3ch, 12tr in a magic ring, ss in top of the 3ch that began the round. (12tr + 3ch) DNT\nRnd 2: 3ch, 1tr in base of 3ch, 2tr in each tr, ss in top of 3ch. (25tr + 3ch)", "uk")
    assert [(row.counts, row.agrees) for row in report.rows] == [((13,), True), ((26,), True)]
    wrong = worked("3ch stands for the first tr.\nRnd 1: 3ch, 12tr in a magic ring, ss in top of 3ch. (13tr + 3ch)", "uk")
    assert wrong.rows[0].agrees is False


def test_stitches_go_on_around_the_end_of_a_foundation_unsaid() -> None:
    report = worked("Ch 11.\nRnd 1: 2 hdc in 2nd ch from hook, hdc in next 8 ch, 6 hdc in last ch, hdc in next 8 ch, 2 hdc in final ch. (26)")
    assert report.rows[-1].counts == (26,)
    report = worked("Ch 8.\nRnd 1: Sc in 2nd ch from hook, sc 5x, 3 sc in last ch, sc 6x. (15)")
    assert report.rows[-1].counts == (15,)


def test_a_count_before_the_round_is_slipped_together_is_one() -> None:
    for told in (", ss to join, ch 1", ", sl st in first sc", ", no join, ch 1, turn"):
        report = worked(RING + f"Rnd 2: One sc per st (14 sts){told}\nRnd 3: 2 sc in each st. (24)")
        assert report.rows[1].agrees is False, told
        assert report.rows[2].counts == (24,), told


def test_one_chain_skipped_is_a_stitch_where_later_rows_say_so() -> None:
    rows = "11ch.\n1st row: 1dc in 2nd ch from hook, 1dc in every ch after it, turn. 11 sts.\n2nd row: 1ch{}, 1dc in each of next 9 dc, 1dc in turning ch, turn."
    report = worked(rows.format(" (is the first dc), miss the st at its base"), "uk")
    assert [row.counts for row in report.rows[1:]] == [(11,), (11,)]
    assert worked(rows.format(""), "uk").rows[1].agrees is False


def test_sizes_named_with_colons() -> None:
    report = worked("Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch.\nRow 2: Sc 24 (m: 26) (l: 28), leave rest unworked. 24 (medium: 26) (large: 28) sc.")
    assert report.rows[-1].counts == (24, 26, 28)


def test_what_is_never_in_the_counts_counts_not() -> None:
    report = worked("The beginning ch 3 is never in the stitch counts.\nRnd 1: Ch 3, 12 dc in magic ring, join in first dc.\nRnd 2: Ch 3, 2 dc in each st around.")
    assert [row.counts for row in report.rows] == [(12,), (24,)]


def test_two_sizes_told_in_labels_and_dashes_between_three() -> None:
    two = worked(RING + "Rnd 2 [3]: Ch 1, one sc per st. (12, 12 sc)\nRnd 3 [4]: Sc2tog around. (6, 6 sc)\n")
    assert [row.counts for row in two.rows[-1:]] == [(6, 6)]
    three = worked("Ch 21 (26-31).\nRow 1: Sc in 2nd ch from hook and in each ch. 20 (25-30) sc.\nRow 2: Ch 1, sc in next 10 (15-20) sts, leave rest unworked. 10 (15-20) sc.")
    assert three.rows[-1].counts == (10, 15, 20)


def test_two_in_one_excuses_no_wrong_count() -> None:
    report = worked("Rnd 1: 36 sc in magic ring. (36)\nRnd 2: (2 sc, sc, sc) around. (40)")
    assert report.rows[-1].counts == (48,)
    assert report.rows[-1].agrees is False
