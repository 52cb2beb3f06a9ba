"""Rounds that begin in a space: a group there, or the yarn joined in a loop and a chain that is its stitch; the repeat goes round to the last one."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows

RING = ["Ch 5, join with sl st to form a ring."]
LOOPS = [*RING, "Rnd 1: Ch 1, 14 sc in ring, join.", "Rnd 2: Ch 1, sc in same st, (ch 6, skip 1 sc, sc in next sc) 6 times, ch 6, join. (7 sc)"]
GROUPS = [*RING, "Rnd 1: Ch 3, 3 dc in ring, ch 2, (4 dc in ring, ch 2) 5 times, join with sl st in top of ch 3. (24 dc)"]


@pytest.mark.parametrize("row", [
    "Rnd 2: Ch 3, 3 dc in same sp, * ch 2, 4 dc in next sp; repeat around. Join.",
    "Rnd 2: Ch 3, 3 dc in same sp, * ch 2, 4 dc in next sp; rep from * around, ch 2, join with sl st in top of ch 3.",
    "Rnd 2: Ch 3, 3 dc in same sp, (ch 2, 4 dc in next sp) 5 times, ch 2, join.",
    "Rnd 2: Sl st to ch-2 sp, ch 3, 3 dc in same sp, * ch 2, 4 dc in next sp; repeat around, ch 2, join.",
    "Rnd 2: Attach B in any sp, ch 3, 3 dc in same sp, * ch 2, 4 dc in next sp; repeat around, ch 2, join.",
])
def test_as_many_groups_as_there_are_spaces(row):
    assert last_rows([*GROUPS, row], "us")[-1].counts == (24,)


def test_a_group_in_the_stitch_of_the_join_is_one_more():
    assert last_rows([*GROUPS, "Rnd 2: Ch 3, 3 dc in same st, * ch 2, 4 dc in next sp; repeat around, ch 2, join."], "us")[-1].counts == (28,)


@pytest.mark.parametrize("row", [
    "Rnd 3: Attach thread to loop. Ch 11, * dc in next loop, ch 8. Repeat around, join to 3rd ch of ch 11.",
    "Rnd 3: Join yarn in any loop, ch 8, * dc in next loop, ch 5; rep from * around, sl st in 3rd ch.",
    "Rnd 3: Join thread to any loop, ch 4, * tr in next loop, ch 4; repeat around, join.",
    "Rnd 3: Attach thread to loop. Ch 9, sc in next loop, * ch 6, sc in next loop. Repeat around, ch 6, join to 3rd ch.",
    "Rnd 3: Join thread in any loop, ch 7, (dc in next loop, ch 4) 6 times, join to 3rd ch of ch 7.",
    "Rnd 3: Attach thread to loop, sc in same loop, * ch 6, sc in next loop. Repeat around.",
])
def test_the_chain_is_the_stitch_of_the_loop_that_the_yarn_is_joined_in(row):
    assert last_rows([*LOOPS, row], "us")[-1].counts == (7,)


def test_in_british_terms():
    lines = ["5ch, ss to form a ring.", "Rnd 1: 1ch, 14dc in ring, ss.", "Rnd 2: 1ch, 1dc in same st, (6ch, miss 1 dc, 1dc in next dc) 6 times, 6ch, ss.",
             "Rnd 3: Join thread to a loop, 10ch, * 1dtr in next loop, 6ch, repeat all round, ss to 4th of 10ch."]
    assert last_rows(lines, "uk")[-1].counts == (7,)


@pytest.mark.parametrize("row", [
    "Rnd 3: Join yarn in loop, ch 3, dc in loop, * ch 4, 2 dc in next loop; repeat around, ch 4, join.",
    "Rnd 3: Join yarn in any loop, ch 7, dc in same loop, * ch 4, dc in next loop, ch 4, dc in same loop; rep from * around, ch 4, join to 3rd ch of ch 7.",
])
def test_a_group_in_the_loop_that_the_yarn_is_joined_in(row):
    assert last_rows([*LOOPS, row], "us")[-1].counts == (14,)


@pytest.mark.parametrize("row", [
    "Rnd 2: (Ch 3, 3 dc) in same sp, * ch 2, 4 dc in next sp; repeat around, join.",
    "Rnd 2: Ch 3 and 3 dc in first sp, * ch 2, 4 dc in next sp. Repeat around.",
    "Rnd 2: Join B in any sp, (ch 3, 3 dc) in same sp, * ch 2, 4 dc in next sp; repeat around, join.",
])
@pytest.mark.parametrize("then", [
    "Rnd 3: Sl st in sp, ch 3, 3 dc in sp, * ch 2, 4 dc in next sp; repeat around. Ch 2, sl st.",
    "Rnd 3: Join C in any sp, ch 3, 3 dc in this sp, * ch 2, 4 dc in next sp; repeat around. Ch 2, sl st.",
    "Rnd 3: Sl st over to next sp, (ch 3, 3 dc) in the sp, * ch 2, 4 dc in next sp; repeat around. Join.",
])
def test_the_round_after_has_no_fewer(row, then):
    assert [r.counts for r in last_rows([*GROUPS, row, then], "us")[-2:]] == [(24,), (24,)]
