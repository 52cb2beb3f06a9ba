"""Rows that are repeated until there are so many stitches: each is worked, in turn, and the last comes out at the number."""

from __future__ import annotations

import pytest

from loopwright.model.report import Report
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write
from loopwright.working import work

FLAT = "Row 1: Ch 31, sc in 2nd ch from hook and in each ch across, turn. (30)\nRow 2: Ch 1, sc in each st across, turn. (30)\n"
NARROWS = FLAT + "Row 3: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (28)\n"
GROWS = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"


def worked(text: str) -> Report:
    return work(read(Source.of(text)))


def counts(text: str, told: str) -> list[int | None]:
    """Counts of the rows that the last line asks for."""
    report = worked(text + told)
    return [r.counts[0] for r in report.rows if r.item == report.rows[-1].item]


def test_rows_repeated_in_turn_take_their_turns() -> None:
    assert counts(NARROWS, "Rep Rows 2 and 3 until 22 sts remain.") == [28, 26, 26, 24, 24, 22]
    assert counts(NARROWS, "Rep last 2 rows until 24 sts remain.") == [28, 26, 26, 24]


def test_a_row_is_repeated_as_it_is_told_and_not_by_its_change_alone() -> None:
    assert counts(GROWS, "Rep Rnd 2 until you have 96 sts.") == [24, 48, 96]


@pytest.mark.parametrize("told", [
    "Rep Rows 2 and 3 until 21 sts remain.",  # passed by
    "Rep Row 3 until 40 sts remain.",  # the other way
    "Rep Row 2 until 20 sts remain.",  # no change at all
    "Rep Row 3 until 28 sts remain.",  # there already
    "Rep Row 3 until 0 sts remain.",
])
def test_rows_that_never_come_out_at_the_number_are_one_row_and_that_is_said(told: str) -> None:
    report = worked(NARROWS + told)
    assert len(report.rows) == 4
    assert any("worked as told until" in a.message for a in report.assumptions)


def test_more_stitches_than_a_row_may_have_are_not_made() -> None:
    report = worked(NARROWS + "Rep Row 3 until 90000 sts.")
    assert [r.read for r in report.rows] == [True, True, True, False]
    (finding,) = report.findings
    assert (finding.code, finding.args["limit"]) == ("W008", 20_000)


def test_more_rows_than_anybody_means_are_not_laid_out() -> None:
    widens = "Row 1: Ch 3, sc in 2nd ch from hook, sc in next ch, turn. (2)\nRow 2: Ch 1, 2 sc in first st, sc in each st across, turn. (3)\n"
    assert len(counts(widens, "Rep Row 2 until 150 sts.")) == 147
    assert len(counts(widens, "Rep Row 2 until 4000 sts.")) == 1


def test_each_size_is_worked_to_its_own_number() -> None:
    text = (
        "Sizes: small, large\nRow 1: Ch 21 (27), sc in 2nd ch from hook and in each ch across, turn. (20 (26) sts)\n"
        "Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18 (24) sts)\nRep Row 2 until 14 (16) sts remain.\n"
    )
    assert [r.counts for r in worked(text).rows[2:]] == [(16, 22), (None, 20), (None, 18), (14, 16)]


def test_a_numbered_range_is_held_to_the_number_it_ends_with() -> None:
    right, wrong = worked(NARROWS + "Rows 4-9: Rep Rows 2 and 3 until 22 sts remain."), worked(NARROWS + "Rows 4-9: Rep Rows 2 and 3 until 20 sts remain.")
    assert [r.counts for r in right.rows[3:]] == [(28,), (26,), (26,), (24,), (24,), (22,)]
    assert (right.rows[-1].agrees, right.findings) == (True, ())
    (finding,) = wrong.findings
    assert (finding.code, finding.args["printed"], finding.args["made"]) == ("W001", 20, 22)


def test_a_printed_count_that_the_number_contradicts_is_found() -> None:
    assert [f.code for f in worked(NARROWS + "Rep Row 3 until 24 sts remain. (25 sts)").findings] == ["W001"]


def test_the_written_pattern_keeps_the_rows_that_are_repeated() -> None:
    document = read(Source.of("Scarf\n\n" + NARROWS + "Rep Rows 2 and 3 until 22 sts remain.\n"))
    text = write(document, work(document), terms="us")
    assert counts(text, "") == [28, 26, 26, 24, 24, 22]
