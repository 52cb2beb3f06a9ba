"""Rounds of a square where the corners are told behind the sides, or the last side goes "to beg"."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts

SQUARE = """Rnd 1: Ch 5, join with sl st to form a ring; ch 3 (counts as dc), 3 dc in ring, (ch 2, 4 dc in ring) 3 times, ch 2, join. (16 dc)
Rnd 2: Sl st to corner sp, ch 3, (3 dc, ch 2, 4 dc) in same sp, *ch 1, (4 dc, ch 2, 4 dc) in next ch-2 sp; rep from * 2 more times, ch 1, join. (32 dc)
"""


@pytest.mark.parametrize(("row", "count"), [
    ("Join B in any corner, ch 3, (3 dc, ch 2, 4 dc) in same sp, *ch 1, 4 dc in next ch-1 sp; rep from * around, working (4 dc, ch 2, 4 dc) in each corner, ch 1, join.", 48),
    ("Join B in any corner, ch 1, 3 sc in same corner, sc in next 4 dc, *sc in ch-1 sp, sc in next 4 dc; rep from * around, working 3 sc in each corner, join.", 48),
    ("Join B in any corner, ch 1, 3 sc in same sp, *sc in each dc and ch-1 sp to next corner, 3 sc in corner sp; rep from * 2 more times, sc in each dc and ch-1 sp to beg, join.", 48),
    ("Join B in any corner, ch 1, 3 sc in same sp, *sc in each dc and ch-1 sp to next corner, 3 sc in corner sp; rep from * 2 more times, sc in each dc and ch-1 sp to first sc, join.", 48),
    ("Join B in any corner, ch 3, 2 dc in same sp, *dc in each dc and in each ch-1 sp to next corner, 3 dc in corner; rep from * twice more, dc in each dc and ch-1 sp to beg ch-3, join.", 48),
])
def test_third_rounds(row, count):
    assert first_counts(f"{SQUARE}Rnd 3: {row}\n")[-1] == count


def test_the_round_behind_such_corners_finds_its_spaces():
    sides = "Join B in any corner, ch 3, (3 dc, ch 2, 4 dc) in same sp, *ch 1, 4 dc in next ch-1 sp; rep from * around, working (4 dc, ch 2, 4 dc) in each corner, ch 1, join."
    assert first_counts(f"{SQUARE}Rnd 3: {sides}\nRnd 4: {sides}\nRnd 5: {sides}\n")[-3:] == [48, 64, 80]
