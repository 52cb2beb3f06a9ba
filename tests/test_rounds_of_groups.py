"""Rounds of clusters, shells and groups as leaflets print them, and what the last of their repeats makes. The counts are worked by hand."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

LOOPS = "Ch 6, join to form a ring.\nRnd 1: 20 sc in ring, join.\n"
DOZEN = "Ch 9, join to form a ring.\nRnd 1: Ch 3 (to count as 1 dc), 23 dc into ring, join.\n"
POPCORNS = (
    "Ch 9, join.\nRnd 1: Ch 3, 24 dc in ring. Sl st in top of ch-3.\n"
    "Rnd 2: Ch 3, *(4 dc in next dc, drop loop from hook, insert hook in first of these dc and pull dropped loop through—pc st made—dc in next dc) twice; ch 3, dc in next dc; rep from * around; join.\n"
)
MESH = "Ch 42.\nRow 1: Dc in 4th ch from hook and in each ch across. Ch 3, turn.\n"


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # 6 loops of two clusters each
        ("Ch 2, 6 sc in 2nd ch from hook, join in 1st sc.\nRnd 2: *Ch 5, sl st in next sc; rep from * 5 times. (6 loops)\nRnd 3: Sl st into loop, ch 3, 2 dc in same space keeping last loop of each dc on hook, yarn over and pull through all loops, ch 2, cluster st in same space (cluster st: 3 dc in same space keeping last loop of each dc on hook, yarn over and pull through all loops), *ch 2, 2 cluster sts with ch 2 between in next loop; rep from * around, ch 2, join in top of 1st cluster st. (12 cluster sts)\n", [6, 0, 12]),
        # 10 loops of four
        (LOOPS + "Rnd 2: *Ch 6, skip 1 sc, sc in next sc; rep from * around (10 loops).\nRnd 3: Sl st into loop, ch 3, dc in same loop, ch 1, 2 dc in same loop, *2 dc, ch 1, 2 dc (shell) in next loop; rep from * around, join in 1 st dc.\n", [6, 20, 10, 40]),
        (LOOPS + "Rnd 2: Ch 1, sc in first sc, *ch 6, skip 1 sc, sc in next sc; rep from * around, joining last ch-6 with sl st to 1st sc made.\n", [6, 20, 10]),
        (LOOPS + "Rnd 2: Ch 1, sc in first sc, *ch 6, skip 1 sc, sc in next sc; rep from * around, ch 6, join to tip of 1st sc made.\n", [6, 20, 10]),
        # 4 + 8 + 8 + 4 and three times 3
        (DOZEN + "Rnd 2: Ch 1, sc in first 4 dc, *ch 3, sc in next 8 dc; rep from * around. Join.\nRnd 3: Sc in same st as sl st, sc in next 3 sc, *3 sc in ch-3 loop, sc in next 8 sc; rep from * around. Join.\n", [9, 24, 24, 33]),
        # 4 + 3 x 8 + 4, then four loops of 3 besides
        (MESH + "Row 2: Skip first dc, dc in next 3 dc, *ch 3, skip 2 dc, dc in next 8 dc; rep from * across, ending with ch 3, skip 2 dc, dc in next 3 dc, dc in top of turning ch; ch 3, turn.\nRow 3: Skip first dc, dc in next 3 dc, *3 dc in next sp, dc in next 8 dc; rep from * across, ending with dc in top of turning chain. Turn.\n", [42, 40, 32, 44]),
        # 4, and twice 3 in the chains and 4
        ("Ch 22.\nRow 1: Dc in 4th ch from hook and in next 2 ch, *ch 5, skip 4 ch, dc in next 4 ch; rep from * across. Ch 3, turn.\nRow 2: Skip first dc, dc in next 3 dc, *skip 1 ch of next loop, dc in next 3 ch, dc in next 4 dc; rep from * across.\n", [22, 12, 18]),
        # 25 in five times five, of which the chain is the last
        (POPCORNS + "Rnd 3: Ch 3, *[pc st in tip of next pc st, 1 dc in next dc] twice, 2 ch, 1 dc in next dc; rep from * around, join.\n", [9, 25, 25, 25]),
        # five groups of 4: 2 + 2 + popcorn + 1
        ("Ch 8, join with sl st to form ring.\nRnd 1: Ch 3, 3 dc in ring, (ch 3, 4 dc in ring) 4 times, ch 3, sl st in top of ch-3.\nRnd 2: Ch 3, dc in same place as sl st, *dc in each of next 2 dc; popcorn in next dc; ch 2, dc in same st where popcorn was made, ch 4, 2 dc in 1st dc of next dc-group; rep from * around, ch 4, sl st in 3rd st of ch-3 first made.\n", [8, 20, 30]),
        # five times 3 and 3
        ("Ch 7, join to form a ring.\nRnd 1: Ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 4 times, ch 2, join in 3rd ch of ch-3.\nRnd 2: Attach Rust in 1 st dc of any dc group, sc in same space, sc in next 2 dc, sc in next loop, dc in ring working over the ch 2 loop, sc in same loop, *sc in next 3 dc, sc in next loop, dc in ring working over the ch 2 loop, sc in same loop; rep from * around, join in 1 st sc.\n", [7, 15, 30]),
        # eight loops, 3 and 4 by turns: the single stands for the first
        ("Ch 10, join with sl st to form ring.\nRnd 1: Ch 4, 2 tr in ring holding back last loop of each, yo and through all loops (cluster made), *ch 4, 3 tr in ring holding back last loop of each tr, yo and draw through all loops on hook. Repeat from * until 8 clusters are made. Ch 4, sl st in first cluster.\nRnd 2: Sl st in next ch, sc in loop, ch 3, 2 dc in same loop, *ch 3, 4 dc in next loop, ch 3, 3 dc in next loop; rep from * around, ch 3, sl st in top of ch-3.\n", [10, 8, 28]),
        # eight loops, whichever of its chains the hook slips to
        ("Ch 10, join with sl st to form ring.\nRnd 1: 8 sc in ring, join.\nRnd 2: (Sc in next sc, ch 5) 8 times, sl st in first sc.\nRnd 3: Sl st in next 2 ch, sc in loop, *ch 6, sc in next loop; rep from * around, ch 6, sl st in first sc.\n", [10, 8, 8, 8]),
        ("Ch 12.\nRow 1: Dc in 4th ch from hook and in each ch across. Ch 1, turn.\nRow 2: Sc in first dc, *ch 2, skip next dc and the following dc, sc in next dc; rep from * across.\n", [12, 10, 4]),
    ],
)
def test_they_count(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(f"Mat\n\n{text}"), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == counts


def test_a_row_not_understood_leaves_the_rows_before_it_as_they_are() -> None:
    text = (
        "Mat\n\nCh 8, join with sl st to form ring.\nRnd 1: Ch 3, 17 dc in ring. Sl st to top of ch-3.\n"
        "Rnd 2: Ch 5, *dc in next dc, ch 2; rep from * around. Sl st in 3rd ch of ch-5 (18 sps).\n"
        "Rnd 3: Sc in next sp, *twiddle the long loop out past the thumb and back under its own strand, then let it settle, sc in next sp; rep from * around.\n"
    )
    report = work(read(Source.of(text), "us"))
    assert [row.counts[0] for row in report.rows[:3]] == [8, 18, 18]
    assert not any(found.code == "W001" for found in report.findings)
