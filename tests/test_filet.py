"""Filet: rows told in blocks and spaces."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

PANEL = (
    "Turning chain: ch 3 counts as dc\nCh 30.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (28 dc)\n"
    "Row 2: Ch 3 (counts as dc), 1 bl, 7 sps, 1 bl, turn. (2 bls and 7 sps)\n"
    "Row 3: Ch 3 (counts as dc), 1 bl, 3 sps, 1 bl, 3 sps, 1 bl, turn. (3 bls and 6 sps)\n"
    "Row 4: Ch 3 (counts as dc), 9 bls. (28 dc)\n"
)


def test_a_mesh_stands_over_three_places_open_or_filled() -> None:
    report = work(read(Source.of(PANEL)))
    rows = report.rows[1:]
    assert [r.counts for r in rows] == [(28,), (14,), (16,), (28,)]
    assert [r.with_chains or r.counts for r in rows] == [(28,)] * 4
    assert [r.made["block"] for r in rows[1:]] == [(2,), (3,), (9,)]
    assert [r.made.get("ch-sp") for r in rows[1:]] == [(7,), (6,), None]
    assert all(r.agrees for r in rows)
    assert report.findings == ()


def test_a_mesh_too_many_is_said() -> None:
    report = work(read(Source.of(PANEL.replace("7 sps", "8 sps"))))
    assert not report.rows[2].read
    assert report.findings


def test_a_block_named_in_brackets_is_what_stands_before() -> None:
    text = "Ch 30.\nRow 1: Dc in 4th ch from hook, dc in each ch. (28 dc)\nRow 2: Ch 3, 3 dc (1 bl), 3 sps, 5 bls. (22 dc)\n"
    report = work(read(Source.of(text)))
    assert report.rows[-1].counts == (22,)
    assert report.rows[-1].agrees


CURTAIN = (
    "Ch 35. 1st row: Dc in 8th ch from hook, * ch 2, skip 2 ch, dc in next ch. Repeat from * across (10 sps). Ch 5, turn.\n"
    "2nd row: {second} Ch 5, turn.\n3rd row: 3 sps, 4 bls, 3 sps. Ch 5, turn.\n4th row: Same as 2nd row.\n5th row: Work 10 sps. Ch 3, turn.\n6th row: 1 bl over sp, 8 bls, 1 bl.\n"
)


@pytest.mark.parametrize("second", [
    "4 sps, 2 bls, 4 sps.",
    "Skip first dc, dc in next dc, (ch 2, dc in next dc) 3 times (4 sps made); (2 dc in next sp, dc in next dc) twice (2 bls made); 4 sps, making last dc in 3rd st of turning ch.",
])
def test_rows_begun_by_the_chain_at_the_end_of_the_row_before(second: str) -> None:
    report = work(read(Source.of(CURTAIN.format(second=second)), "us"))
    assert [r.counts for r in report.rows[1:]] == [(11,), (15,), (19,), (15,), (11,), (31,)]
    assert [r.made.get("ch-sp", (0,)) for r in report.rows[1:]] == [(10,), (8,), (6,), (8,), (10,), (0,)]


def test_a_chain_that_nobody_told_begins_a_row() -> None:
    report = work(read(Source.of("Ch 24. Row 1: Dc in 4th ch from hook and in each ch across (22 dc).\nRow 2: Ch 3, turn, 1 bl over bl, 5 sps, 1 bl.\nRow 3: 1 bl, 2 sps, 1 bl, 2 sps, 1 bl.\n"), "us"))
    assert [r.counts for r in report.rows[2:]] == [(12,), (14,)]
