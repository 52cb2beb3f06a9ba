"""Rosettes, squares and couvrettes as books before 1930 tell them. The counts are worked by hand."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

RING = "Make a chain of 7 stitches, join it into a ring.\n"


def _counts(text: str) -> list[int | None]:
    return [row.counts[0] for row in work(read(Source.of(text), "old")).rows]


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        pytest.param("Make a chain of 8 stitches, unite, and work the first round in the following manner:—16 double.\n", [8, 16], id="the first round announced"),
        pytest.param("Make 5 chain, join, and into circle work six times one double crochet, three chain, and two treble, and join by drawing the wool through the first double crochet.\n", [18], id="so many times told first"),
        pytest.param(f"{RING}1st round: 8 chain, of which the first three are reckoned as a treble, * 1 treble in the ring, 5 chain. Repeat 4 times from *. 1 slip stitch in the treble at the beginning.\n", [7, 6], id="chains reckoned"),
        pytest.param(f"{RING}1st round: * 4 chain, 1 double in the ring. Repeat 8 times from *. Instead of the last double, make a slip stitch to close the round.\n", [7, 8], id="instead of the last"),
        pytest.param(f"{RING}Round 1: 9 double in ring.\nRound 2: * 1 double, inserting the hook into the upper part of each stitch, 5 chain; repeat from * all round. At the end of the round one slip-stitch into the first double.\nRound 3: On each scallop of the preceding round work 2 double, 1 purl, 3 double.\n", [7, 9, 9, 45], id="scallops"),
        pytest.param(f"{RING}Round 1: 10 double in ring.\nRound 2: * 4 chain, 1 double in the next stitch.\nRound 3: * 3 double in the next scallop of the preceding round, 2 chain.\n", [7, 10, 10, 30], id="a star that nothing repeats"),
        pytest.param(f"{RING}Round 1: 10 double in ring.\nRound 2: * 1 double in the next stitch, 4 chain.\nRound 3: * 3 double in next loop, 2 chain; end with 4 chain.\n", [7, 10, 10, 30], id="and its end"),
    ],
)
def test_rosettes(text: str, counts: list[int]) -> None:
    assert _counts(text) == counts
