"""What confirms a row: its own printed count, or a confirmed row that needs all of it; and starts that later rows tell."""

from __future__ import annotations

import pytest

from loopwright.model.report import Report, RowReport
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def report(text: str) -> Report:
    return work(read(Source.of(text)))


def rows(text: str) -> list[RowReport]:
    return list(report(text).rows)


def test_a_row_without_a_count_is_confirmed_by_the_next_one_that_needs_all_of_it():
    made = rows("Rnd 1: 6 sc in a magic ring.\nRnd 2: 2 sc in each st.\nRnd 3: sc in each st. (12)\nRnd 4: sc in each st.\n")
    assert [r.confirmed for r in made] == [True, True, True, False]


def test_a_ring_of_chains_is_not_confirmed_by_what_is_worked_in_it():
    made = rows("Ch 5, join with sl st to form ring.\nRnd 1: 12 sc in ring. (12)\n")
    assert [(r.counts, r.confirmed) for r in made] == [((5,), False), ((12,), True)]


def test_a_row_that_leaves_stitches_confirms_nothing_below():
    made = rows("Rnd 1: 9 sc in a magic ring.\nRnd 2: sc in next 7 sts, leave remaining sts unworked. (7)\n")
    assert [r.confirmed for r in made] == [False, True]


def test_a_row_shaped_to_a_number_confirms_nothing_below():
    made = rows("Rnd 1: 9 sc in a magic ring.\nRnd 2: inc evenly around to 15 sts. (15)\n")
    assert [r.confirmed for r in made] == [False, True]


def test_a_false_count_confirms_neither_its_row_nor_the_one_below():
    made = rows("Rnd 1: 6 sc in a magic ring.\nRnd 2: 2 sc in each st. (13)\n")
    assert [(r.agrees, r.confirmed) for r in made] == [(None, False), (False, False)]


def test_a_count_that_told_where_an_earlier_row_began_confirms_nothing():
    made = rows("Rnd 5: *sc in next 2 sts, 2 sc in next st; rep from * around.\nRnd 6: sc in each st. (24)\nRnd 7: sc in each st. (24)\n")
    assert [r.counts for r in made] == [(24,), (24,), (24,)]
    assert [(r.agrees, r.confirmed) for r in made] == [(None, False), (None, False), (True, True)]


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        ("Row 5: Ch 1, sc in each st across.\nRow 6: Ch 1, 2 sc in first st, sc in next 9 sts, 2 sc in last st.\n", [11, 13]),
        ("Rnd 5: *sc in next 2 sts, 2 sc in next st; rep from * around.\nRnd 6: *sc in next 6 sts, 2 sc in next st* 4 times.\n", [28, 32]),
        ("Row 5: sc in each st.\nRow 6: sc in next 8 sts, leave last 2 sts unworked.\n", [10, 8]),
    ],
)
def test_what_a_later_row_needs_tells_where_the_text_begins(text: str, counts: list[int]):
    found = report(text)
    assert [r.counts for r in found.rows] == [(n,) for n in counts]
    assert not found.rows[0].confirmed
    assert any("the text begins in the middle" in a.message for a in found.assumptions)


@pytest.mark.parametrize("later", ["", "Row 6: sc in next 8 sts, leave remaining sts unworked.\n"])
def test_a_row_of_unknown_start_is_said_to_be_open_and_not_worked_on_its_turning_chain(later: str):
    found = report("Row 5: Ch 1, sc in each st across.\n" + later)
    assert not found.rows[0].read
    assert found.findings[0].code == "D001"
