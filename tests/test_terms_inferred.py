"""Which terms a text is in where it does not say: start chains stand as high as the stitch after them. Cases of our own."""

import pytest

from loopwright.notation import read
from loopwright.source import Source

CASES = [
    ("us", "Rnd 1: Ch 3, 11 dc in ring; join.\nRnd 2: Ch 3, dc in same st, 2 dc in each st around; join."),
    ("uk", "Round 1: 3 ch, 11 tr in ring, join.\nRound 2: 3 ch, 1 tr in same st, 2 tr in each st, join."),
    ("us", "Row 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 3, tr in each st."),
    ("uk", "Row 1: 1 ch, dc in each st.\nRow 2: 2 ch, htr in each st."),
    ("uk", "4 ch, join with sl st into ring.\n1st rnd. 3 ch (counts as first tr), 15 tr in ring, sl st in top of 3 ch."),
    ("uk", "6 ch, join.\n1st row. 4 ch, 2 tr in ring, 1 ch, 1 tr in ring, turn.\n2nd row. 4 ch, 2 tr in first sp, 1 tr in 3rd of 4 ch, turn."),
    ("uk", "6 chain, join.\n1st round.—5 chain, * 1 treble in the ring, 2 chain; repeat from * 4 times, join to the third of the 5 chain."),
    ("uk", "6 chain; unite.\n1st round.—18 treble in the ring; unite with a single crochet."),
    ("uk", "8 chain, join into a ring.\n1st round.—3 chain for a treble, 15 treble in the ring, join."),
    ("uk", "1st row: 3 ch, 1 tr in first dc, * 1 tr in each of next 4 dc; rep from * to end, turn.\nFasten off."),
    ("us", "Rnd 1: Ch 4 (counts as tr), 15 tr in ring; join with sl st in 4th ch of ch-4."),
    ("us", "Rnd 1: Ch 5 (counts as dc and ch 2), dc in next tr, ch 2; join in 3rd ch of ch-5."),
    ("us", "With B, join with single crochet in any st.\nRnd 1: Single crochet in each st around."),
]


@pytest.mark.parametrize(("terms", "text"), CASES)
def test_terms_are_told_by_what_the_text_does(terms: str, text: str) -> None:
    document = read(Source.of(text + "\n", "a pattern"))
    assert document.terms == terms
    assert any("terms taken from" in words for _, words in document.assumptions)
