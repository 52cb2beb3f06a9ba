"""Filet: rows told in blocks and spaces."""

from __future__ import annotations

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
