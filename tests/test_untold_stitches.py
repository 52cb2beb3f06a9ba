"""Stitches that a pattern names and never tells are counted one for one, and said so. The patterns are our own."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

BEGINNING = "Terms: US\n\nRound 1: With magic ring, 6 sc. (6 sts)\nRound 2: Inc in each st. (12 sts)\n"


def told(text: str) -> tuple[list[int | None], list[str]]:
    document = read(Source.of(BEGINNING + text))
    assert write(document) == BEGINNING + text
    report = work(document)
    return [r.counts[0] for r in report.rows][2:], [f.code for f in report.findings]


@pytest.mark.parametrize(("words", "counts"), [
    ("Round 3: Marsh st in each st around. (12 sts)", [12]),
    ("Round 3: [Marsh st in next 5 sts, inc] x 2. (14 sts)", [14]),
    ("Round 3: [marsh st in 5, inc] x 2. (14 sts)\nRound 4: Marsh stitch in each st. (14 sts)", [14, 14]),
    ("Round 3: 2 reed grass sts in each of the next 2 sts, sc in each st around. (14 sts)", [14]),
])
def test_a_stitch_never_told_is_one_stitch_worked_into_one(words: str, counts: list[int]):
    assert told(words) == (counts, ["N006"])


@pytest.mark.parametrize("words", [
    "Round 3: Sc in each st, last st in the next st. (12 sts)",
    "Round 3: Popcorn st in each st around. (12 sts)",
    "Round 3: Bean st in each st around.\nSpecial stitches: bean st = [insert hook in st, yo, pull up a loop, yo] 3 times, yo, pull through all loops.",
])
def test_nothing_is_said_of_stitches_that_are_known_or_told(words: str):
    assert "N006" not in told(words)[1]


def test_how_the_hook_goes_in_is_no_stitch():
    assert told("Round 3: Marsh st in each st around (insert hook through the center of the V, not under the top loops). (12 sts)") == ([12], ["N006"])


def test_a_sentence_may_tell_it():
    assert told("Round 3: Marsh st in each st around. (12 sts)\n\nThe marsh stitch is made like a single crochet, but through the center of the V.") == ([12], [])
