"""Rows that only go on: they begin and end as the rows before did; rows further down; shaping rows told by their name."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

from .woven import row, woven

DISC = (
    "Rnd 1: Ch 3, 11 dc in magic ring; join with sl st to top of ch-3. (12 dc)\n"
    "Rnd 2: Ch 3, dc in same st, 2 dc in each st around; join with sl st to top of ch-3. (24 dc)\n"
)
CLOTH = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, sc in each st across, turn. (12 sc)\n"


@pytest.mark.parametrize("words", ["Continue as established, inc 12 sts each rnd.", "Work even.", "Continue as established."])
def test_a_round_that_goes_on_has_its_start_chain_and_its_join(words: str) -> None:
    fabric = woven(DISC + f"Rnd 3: {words}\n")
    third = row(fabric, "Rnd 3")
    assert [fabric.name(s) for s in range(third.start, third.start + 3)] == ["ch", "ch", "ch"]
    assert fabric.part_of(third.end - 1) == "join"
    assert third.joined


def test_rows_worked_even_are_turned_as_those_before() -> None:
    fabric = woven(CLOTH + "Work even for 2 rows.\n")
    assert [r.turned for r in fabric.rows[-3:]] == [True, True, True]
    assert all(fabric.name(r.start) == "ch" for r in fabric.rows[-2:])


@pytest.mark.parametrize("words", [
    "spike st 2 rows below", "spike 2 rows below", "spike st over 2 rows", "sc in next st 2 rows below", "sc in next st 1 row below",
    "sc in st 1 row below next st", "long sc in next st two rows below",
])
def test_a_stitch_rows_below_is_one_stitch_into_the_row_under_the_last(words: str) -> None:
    text = CLOTH + f"Row 3: Ch 1, *sc in next 3 sts, {words}; rep from * across, turn. (12 sts)\n"
    report = work(read(Source.of(text)))
    assert [report.rows[-1].counts, report.rows[-1].agrees, report.findings] == [(12,), True, ()]
    fabric = woven(text)
    third, first = row(fabric, "Row 3"), row(fabric, "Row 1")
    assert len([s for s in range(third.start, third.end) if first.start <= fabric.into[s] < first.end]) == 3


def test_a_shaping_row_is_asked_for_by_its_name() -> None:
    told = "Row 3 (inc row): Ch 1, 2 sc in first st, sc in each st across, turn. (13)\nRep inc row 4 more times. (17 sc)\n"
    assert [r.counts[0] for r in work(read(Source.of(CLOTH + told))).rows[-4:]] == [14, 15, 16, 17]


@pytest.mark.parametrize(("words", "count"), [
    ("Ch 1, 2 sc in first st, sc to end, turn.", 13), ("Ch 1, *sc in next st, 5-dc bobble in next st; rep from * across, turn.", 12),
])
def test_other_wordings(words: str, count: int) -> None:
    assert work(read(Source.of(CLOTH + f"Row 3: {words}\n"))).rows[-1].counts == (count,)
