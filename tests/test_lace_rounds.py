"""Rounds of doilies, mats and motifs as leaflets of the 1940s print them. The counts are worked by hand."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

RING = "Ch 9, join to form a ring.\nRnd 1: Ch 3 (to count as 1 dc), 23 dc in ring, join.\n"
LOOPS = RING + "Rnd 2: Sc in same place as sl st, *ch 6, skip 2 dc, sc in next dc; rep from * around, ending with ch 3, dc in first sc.\n"


def rows(text):
    return work(read(Source.of(f"Mat\n\n{text}"), "us")).rows


def made(text, kind):
    """How many of a kind each row made, None where it has none."""
    return [row.made.get(kind, (None,))[0] for row in rows(text)]


@pytest.mark.parametrize(
    ("text", "kind", "counts"),
    [
        (RING + "Rnd 2: Sl st in next dc, ch 3 and work 2 popcorn sts with ch 3 between in same st, *skip 2 dc, 2 popcorn sts with ch 3 between in next dc; rep from * around, join.\n", "popcorn", [None, None, 16]),
        ("Ch 11, join to form a ring, work 6 cluster sts with ch 5 between each cluster st in ring, ch 5, join.\nRnd 2: Sl st into loop, work 2 cluster sts with ch 4 between in same space, * ch 2, 2 cluster sts with ch 4 between in next loop, repeat from * all around, ch 2, join.\n", "cluster", [6, 12]),
        (LOOPS + "Rnd 3: *Ch 7, sc in next loop; rep from * around, joining last ch-7 with sl st in dc.\n", "ch-sp", [None, None, 8, 8]),
        (LOOPS + "Rnd 3: *Ch 9, skip 1 loop, sc in next loop; rep from * around, joining last ch-9 with sl st in dc of 2nd rnd.\nRnd 4: In each ch-9 make 5 sc, ch 3 and 5 sc.\n", "ch-sp", [None, None, 8, 4, 4]),
        (LOOPS + "Rnd 3: *Ch 7, sc in next loop; rep from * around, ending with sl st in dc.\n", "ch-sp", [None, None, 8, 8]),
        (RING + "Rnd 2: Sc in same place, (ch 4, skip 2 dc, sc in next dc) 8 times; sl st in first sc.\n", "sc", [None, None, 8]),
        (RING + "Rnd 2: Ch 3, *ch 8, sc in 4th ch from hook (picot made), ch 4, skip 2 dc, dc in next dc; rep from * around, ch 8, sc in 4th ch from hook (picot made), ch 4, join.\n", "sc", [None, None, None]),
        (RING + "Rnd 2: Ch 6, holding back the last loop of each tr tr on hook work tr tr in next 3 dc, thread over and draw through all loops (cluster made), *ch 8, make a 4-tr tr cluster over next 4 dc; rep from * around, ch 9, join.\n", "cluster", [None, None, 6]),
    ],
)
def test_so_many_are_made(text: str, kind: str, counts: list[int | None]) -> None:
    assert made(text, kind) == counts


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # petals: the round begins where the last and the first of them meet
        (RING + "Rnd 2: Sc in same place, *ch 4, skip 3 dc, sc in next dc; rep from * around, join.\nRnd 3: In each sp around make sc, hdc, 3 dc, hdc and sc. Join.\nRnd 4: Ch 5, dc in same place as sl st, *ch 6, between next 2 petals make dc, ch 2 and dc; rep from * around, ending with ch 6. Join.\n", [9, 24, 6, 42, 12]),
        # the round begins with two of a bracket that is worked four times in each repeat
        (RING + "Rnd 2: Sc in same place, *ch 4, skip next dc, sc in next dc; rep from * around, join.\nRnd 3: Sl st in next 2 ch, sc in same sp, ch 4, sc in next sp, *ch 4, 5 dc in next sp, (ch 4, sc in next sp) 3 times; rep from * around. Join.\n", [9, 24, 12, 24]),
        (RING + "Rnd 2: Sl st in next dc, ch 3, 2 dc in same st, *ch 4, skip 3 dc, 3 dc in next dc; rep from * around, ch 4, join.\nRnd 3: Sl st in next 2 dc and to center of next loop, 2 sc in same loop, *ch 7, 2 sc in next loop; rep from * around, ch 7, join.\n", [9, 24, 18, 12]),
        # what is left before a group that does not come
        (RING + "Rnd 2: Ch 3, 2 dc in same place, *ch 4, skip 3 dc, 3 dc in next dc; rep from * around, ch 4, join.\nRnd 3: Ch 3, dc in same place, *dc in next dc, popcorn in next dc, ch 1, dc in same st, ch 3, 2 dc in first dc of next dc-group; rep from * around, ending with ch 3, join.\n"
         "Rnd 4: Ch 3, dc in same place, *dc in next 2 dc, ch 2, popcorn in next ch-1 sp, ch 3, 2 dc in first dc of next dc-group; rep from * around, ending with ch 3, join.\n", [9, 24, 18, 30, 30]),
        # the last loop gets its others as well
        (RING + "Rnd 2: Sc in same place, *ch 6, skip 2 dc, sc in next dc; rep from * around, ch 6, join.\nRnd 3: Sl st in next 2 ch, sl st in loop, ch 4, 2-tr cluster in same loop, *(ch 5, 3-tr cluster in same loop) 3 times; a 3-tr cluster in next loop; rep from * around, join.\n", [9, 24, 8, 32]),
    ],
)
def test_they_count(text: str, counts: list[int]) -> None:
    assert [row.counts[0] for row in rows(text)] == counts


def test_a_picot_stands_between_groups_and_in_the_last_loop_too() -> None:
    text = RING + (
        "Rnd 2: Sc in same place, *ch 8, sc in 4th ch from hook (a picot), ch 4, skip 3 dc, sc in next dc; rep from * around, ch 8, sc in 4th ch from hook (a picot), ch 4, join.\n"
        "Rnd 3: Sl st to center of next picot, in same picot work 2 sc, ch 6 and 2 sc; *ch 4, picot, ch 4, 2 sc, ch 6 and 2 sc in next picot; rep from * around, ending with ch 4, sl st in first sc.\n"
        "Rnd 4: Sl st in next 2 ch, sl st in same loop, ch 3, 3 dc in same loop; *ch 3, 4 dc in next picot, ch 3, 4 dc in next ch-6 loop; rep from * around. Join.\n"
    )
    assert [row.counts[0] for row in rows(text)] == [9, 24, 6, 24, 48]
    assert made(text, "picot")[3] == 6


def test_the_last_round_ends_with_what_each_begins_with() -> None:
    text = (
        "Ch 6, join to form a ring, ch 3 (counts as 1 dc) and work 14 dc in ring, join (15 dc).\n"
        "Rnd 2: Popcorn st in same dc, ch 2, 4 dc in next dc, drop loop from hook, insert in first dc and draw loop through (popcorn st), *dc in next dc, popcorn st in next dc, ch 2, popcorn st in next dc, repeat from * around ending round with dc in next dc, join.\n"
        "Rnd 3: Sl st into loop and work 2 popcorns with ch 3 between in same loop, *dc in popcorn, 2 dc in next dc, dc in next popcorn, 2 popcorns with ch 3 between in next loop; rep from * around ending round with the 4 dc, join.\n"
    )
    assert [row.counts[0] for row in rows(text)] == [15, 15, 30]
    assert made(text, "popcorn") == [None, 10, 10]


def test_the_space_between_popcorns_holds_one() -> None:
    text = RING + (
        "Rnd 2: Ch 3, popcorn in next dc, ch 1, popcorn in next dc, *dc in next 2 dc, popcorn in next dc, ch 1, popcorn in next dc; rep from * around, ending with dc in last dc, join.\n"
        "Rnd 3: Ch 3, *3 dc in next sp between popcorns, dc in next 2 dc; rep from * around, ending with 3 dc in next sp between popcorns, dc in last dc, join.\n"
    )
    assert [row.counts[0] for row in rows(text)] == [9, 24, 24, 30]


PINEAPPLES = (
    "Ch 37, sc in 2nd ch from hook, *ch 5, skip 4 ch, sc in next ch; rep from * across, ch 1, turn.\n"
    "Row 2: Sl st into loop, ch 3, dc in same space, ch 2, 2 dc in same space, *ch 3, 8 tr with ch 1 between each tr in next loop, ch 3, (2 dc, ch 2, 2 dc) in next loop (shell made); rep from * across, ch 1, turn.\n"
)


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        # seven loops: four shells and three pineapples; a chain of one turns, and the row begins with the other
        (PINEAPPLES, [8, 40]),
        (PINEAPPLES + "Row 3: Sl st to center of shell, ch 3, dc in same space, ch 2, 2 dc in same sp, **ch 5, sc between first 2 tr of next pineapple, *ch 2, sc between next 2 tr; rep from * 5 times, ch 5, shell in next shell; rep from ** across in same manner, ch 1, turn.\n"
         "Row 4: Sl st into loop of shell, always start each row with ch 3, shell in shell, **ch 6, sc in first loop of next pineapple, *ch 2, sc in next loop; rep from * 4 times, ch 6, shell in next shell; rep from ** across, ch 1, turn.\n", [8, 40, 37, 34]),
    ],
)
def test_pineapples_in_rows(text: str, counts: list[int]) -> None:
    assert [row.counts[0] for row in rows(text)] == counts


def test_a_corner_in_one_space() -> None:
    text = (
        "Ch 6, join with sl st to form a ring.\nRnd 1: Ch 3, 3 dc in ring, *ch 2, 4 dc in ring; rep from * 2 more times, ch 2, join.\n"
        "Rnd 2: Ch 3, dc in next 3 dc, 3 dc in sp, *ch 2, 3 dc in sp, dc in each of next 4 dc, 3 dc in next sp; repeat from * around, ending rnd with ch 2, 3 dc in sp, and join with sl st as before.\n"
    )
    assert [row.counts[0] for row in rows(text)] == [6, 16, 40]
    assert made(text, "ch-sp") == [None, 4, 4]
