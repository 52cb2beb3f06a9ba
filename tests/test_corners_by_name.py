"""Corners asked for by their name, and other places told in a word. Counts worked by hand; common practice, no source."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.line_by_line import first_counts

RING = "Rnd 1: Ch 5, join. Ch 3, 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice, join to top of ch 3.\n"
FIRST = "(2 dc, ch 2, 3 dc) in same sp"


@pytest.mark.parametrize(
    "second",
    [
        f"ch 3, {FIRST}, ch 1, *corner, ch 1* 3 times, join.",
        f"ch 3, {FIRST} for corner, ch 1, *work corner in next sp, ch 1* 3 times, join.",
        f"ch 3, {FIRST} (corner), ch 1, *corner in next sp, ch 1* 3 times, join.",
        f"ch 3, {FIRST} for first corner, ch 1; [make corner, ch 1] 3 times, join.",
        f"ch 3, {FIRST} (corner made), ch 1, *corner in next sp, ch 1; rep from * around, join.",
    ],
)
@pytest.mark.parametrize(
    "third",
    [
        "ch 3, (2 dc, ch 2, 3 dc) in sp, ch 1, 3 dc in next sp, ch 1, *corner, ch 1, 3 dc in next sp, ch 1* 3 times, join.",
        "ch 3, 2 dc, ch 2, 3 dc in sp (corner made), ch 1, 3 dc in next sp, ch 1, *corner in next sp, ch 1, 3 dc in next sp, ch 1* 3 times, join.",
        "work first corner, ch 1, 3 dc in ch-1 sp, ch 1, *work corner, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around, join.",
    ],
)
def test_a_corner_is_the_group_that_an_earlier_one_tells(second, third):
    assert first_counts(f"{RING}Rnd 2: Sl st to corner sp, {second}\nRnd 3: Sl st to corner sp, {third}\n") == [12, 24, 36]


@pytest.mark.parametrize(("group", "made"), [("(2 dc, ch 2, 3 dc)", 24), ("(3 dc, ch 2, 3 dc)", 25)])
def test_the_chain_that_begins_a_round_is_a_stitch_of_the_group_it_stands_before(group, made):
    """The second: halves alike without it, so the chain is a stitch beside the first group only."""
    assert first_counts(f"{RING}Rnd 2: Sl st to sp, ch 3, {group} in same sp, ch 1, *shell in next sp, ch 1* 3 times, join.\n") == [12, made]


@pytest.mark.parametrize("where", ["at base", "at the base", "in base", "in same st"])
def test_the_base_of_a_chain_is_where_it_stands(where):
    assert first_counts(f"Rnd 1: Ch 3, 9 dc in ring, join. (10)\nRnd 2: Ch 3, dc {where}, 2 dc in each dc around, join.\n") == [10, 20]


@pytest.mark.parametrize("closed", ["sc both sides together with 5 sc", "sc both sides tog using 5 sc", "sc through both layers: 5 sc"])
def test_a_flattened_end_closed_with_so_many(closed):
    assert first_counts(f"Rnd 1: 10 sc in magic ring.\nRnd 2: Sc around.\nFlatten and {closed}.\n") == [10, 10, 5]


def test_a_corner_that_nothing_tells_is_not_taken_for_a_stitch():
    report = work(read(Source.of("Rnd 1: Ch 1, (3 sc, ch 2) 4 times in magic ring, join.\nRnd 2: Sl st to corner sp, *work corner, sc in next 3 sc; rep from * around, join.\n"), "us"))
    assert [row.counts[0] for row in report.rows] == [12, None]
    assert [f.code for f in report.findings] == ["D003"]
