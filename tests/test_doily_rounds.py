"""Rounds of doilies and motifs as leaflets print them. The counts are worked by hand."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SHELLS = (
    "Ch 6, join to form a ring.\nRnd 1: Ch 4, 19 tr in ring, join. (20 tr)\nRnd 2: Ch 4, tr in same st, *ch 1, sk 1 tr, 2 tr in next tr; rep from * around, ch 1, join.\n"
    "Rnd 3: Sl st in next tr and in ch-1 sp, ch 4, in same sp work tr, ch 3, 2 tr (starting shell made); in each sp around work 2 tr, ch 3, 2 tr (shell made)—10 shells.\n"
)
GROUPS = "Ch 7, join.\nRnd 1: (Sc in ring, ch 8) 6 times, join.\nRnd 2: *In next loop work 2 tr, ch 2 and 2 tr, ch 3; rep from * around, join.\n"
RING = "Ch 9, join to form a ring.\nRnd 1: Ch 3 (to count as 1 dc), 23 dc into ring, join.\n"


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        (SHELLS + "Rnd 4: Sl st in next tr and in ch-3 sp, ch 4 and complete a shell as before, *ch 3, shell in sp of next shell; rep from * around, ch 3, join.\n", [6, 20, 20, 40, 40]),
        (GROUPS + "Rnd 3: Sl st in next tr and in sp, ch 4, in same sp work tr, ch 2 and 2 tr, *ch 2, sc in next ch-3 sp, ch 2, in next sp (between tr-groups) work 2 tr, ch 2 and 2 tr; rep from * around. Join.\n", [7, 6, 24, 30]),
        (RING + "Rnd 2: *Ch 4, skip 2 dc, hdc in next; rep from * around (8 loops). Sl st to center of first loop.\n", [9, 24, 8]),
        ("Ch 5. Join.\nRnd 1: 16 hdc in ring, join.\nRnd 2: Ch 1, sc in first hdc, *ch 4, skip l hdc, sc in next hdc; rep from * around, ch 4, join.\n", [5, 16, 8]),
        ("Ch 2.\n1st round: 6 sc in 2nd ch from hook. Join in circle with ss.\n2nd rnd (round): 2 sc (single crochet) in each sc (single crochet) around (12 sc in the rnd).\n", [2, 6, 12]),
        ("Rnd 1: 15 sc in ring. Join with a slipstitch in first sc.\nRnd 2: 2 sc in each sc. (30)\nCont inc 15 sts each rnd for 2 more rnds [60 sts]. Join.\n", [15, 30, 45, 60]),
        ("Leaf: Make 2. Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n", [6, 5]),
        ("Ch 10.\nRow 1: Dc in 4th ch from hook and in each ch to last ch, (ch 1, dc) twice all in last ch.\n", [10, 9]),
        ("Ch 6. Join to form ring.\nRnd 1: Ch 3, 23 dc in ring, join.\nRnd 2: Ch 1, sc in same st, *ch 5, sk 2 dc, sc in next dc; rep from * around, ch 5, join. (8 loops)\nRnd 3: Into each loop: 1 sc, 1 hdc, 3 dc, 1 hdc, 1 sc.\n", [6, 24, 8, 56]),
        ("Ch 4, join.\nRnd 1: Ch 3 - counts as dc - 11 dc in ring, join.\nRnd 2: No increases, sc in each st.\n", [4, 12, 12]),
    ],
)
def test_they_count(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(f"Mat\n\n{text}"), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == counts


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("Ch 13; join with sl st to first ch to form a ring, dc in next sp **repeat from * ending at **.\n", [1]),
        ("Ch 9, join to form a ring.\nRnd 1: 12 sc in ring, ch 5, sc in next sc ** rep from * around. Join.\n", [9, 13]),
    ],
)
def test_a_repeat_of_nothing_is_no_fault(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(f"Mat\n\n{text}"), "us"))
    assert [row.counts[0] for row in report.rows] == counts
