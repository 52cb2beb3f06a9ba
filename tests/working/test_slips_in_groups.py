"""A slip stitch that begins a group goes into the group's place: it closes no round."""

from __future__ import annotations

from typing import Any

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

BLOCKS = (
    "Row 1 (RS): Ch 6, dc in 4th ch from hook and in each of next 2 ch, turn.\n"
    "Row 2: Ch 6, dc in 4th ch from hook and in each of next 2 ch, (sl st, ch 3, 3 dc) in next ch-3 sp, turn.\n"
    "Row 3: Ch 6, dc in 4th ch from hook and in each of next 2 ch, *(sl st, ch 3, 3 dc) in next ch-3 sp; rep from * across, turn.\n"
)


def test_rows_of_blocks_told_in_brackets_stay_rows() -> None:
    report: Any = work(read(Source.of(BLOCKS)))
    assert [r.counts for r in report.rows] == [(3,), (6,), (9,)]
    fabric = report.fabrics[0]
    assert not any(row.joined for row in fabric.rows)
    assert not any(fabric.part_of(s) == "join" for s in range(len(fabric)))


def test_a_row_of_open_meshes_alone_is_filet() -> None:
    text = (
        "Turning chain: ch 3 counts as dc\nCh 18.\nRow 1 (RS): Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (16 dc)\n"
        "Row 2: Ch 3 (counts as dc), 5 sps, turn. (5 sps)\nRow 3: Ch 3, 5 sps, turn. (5 sps)\n"
    )
    report: Any = work(read(Source.of(text)))
    assert [r.made.get("ch-sp") for r in report.rows[-2:]] == [(5,), (5,)]
    assert all(r.agrees for r in report.rows[-2:])
    assert report.findings == ()
