"""Which terms a text is in where it does not say: start chains stand as high as the stitch after them. Cases of our own."""

import pytest

from loopwright.notation import read
from loopwright.source import Source

CASES = [
    ("us", "Rnd 1: Ch 3, 11 dc in ring; join.\nRnd 2: Ch 3, dc in same st, 2 dc in each st around; join."),
    ("uk", "Round 1: 3 ch, 11 tr in ring, join.\nRound 2: 3 ch, 1 tr in same st, 2 tr in each st, join."),
    ("us", "Row 1: Sc in 2nd ch from hook and in each ch across.\nRow 2: Ch 3, tr in each st."),
    ("uk", "Row 1: 1 ch, dc in each st.\nRow 2: 2 ch, htr in each st."),
]


@pytest.mark.parametrize(("terms", "text"), CASES)
def test_terms_are_told_by_what_the_text_does(terms: str, text: str) -> None:
    document = read(Source.of(text + "\n", "a pattern"))
    assert document.terms == terms
    assert any("terms taken from" in words for _, words in document.assumptions)
