"""A border told as "sc evenly around": along all four edges of a flat piece, and over every stitch of a round.

That one stitch goes into each stitch, into each chain of the foundation and, of single crochet, into each row end, three into a corner,
is common practice, no source. How many stitches a taller row's end takes stands in the table of row ends with its source.
"""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

from .sound import around, broken_edges, orphans
from .woven import edge, row, woven

FLAT = """Ch 31.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)
Row 2: Ch 1, sc in each st across, turn. (30 sc)
Rep Row 2 18 times.

Border
"""
PLAIN = 30 + 30 + 20 + 20
CORNERS = 4 * 2  # three instead of one


def counts(text: str) -> list[tuple[int | None, bool | None]]:
    """What the rounds of the border make, and whether their printed counts agree."""
    rows = [r for r in work(read(Source.of(text))).rows if r.section == "Border"]
    return [(r.counts[0] if r.counts else None, r.agrees) for r in rows]


@pytest.mark.parametrize("words", [
    "Ch 1, sc evenly around, 3 sc in each corner, join.",
    "Ch 1, work sc evenly around entire edge, working 3 sc in each corner; join with sl st to first sc.",
    "Join yarn in any corner. Ch 1, 3 sc in corner, *sc evenly along edge to next corner, 3 sc in corner; rep from * around, join.",
    "Ch 1, sc in each st and row end around, with 3 sc in each corner; join.",
    "Ch 1, sc in each st around, working 3 sc in each corner, join.",
    "Sc around entire blanket, placing 3 sc in each corner. Join.",
    "Sc evenly around all four sides, working 3 sc in each corner. Join.",
    "Work a row of sc all around, 3 sc in each corner.",
])
def test_a_border_goes_along_all_four_edges_and_its_corners_grow_round_by_round(words: str) -> None:
    second, third = "Ch 1, sc in each st around, working 3 sc in each corner st, join.", "Ch 1, sc in each sc around, 3 sc in center st of each corner; join."
    text = f"{FLAT}Rnd 1: {words}\nRnd 2: {second}\nRnd 3: {third}\n"
    first = PLAIN + CORNERS
    assert [n for n, _ in counts(text)] == [first, first + 8, first + 16]


def test_every_stitch_of_the_border_stands_where_a_maker_puts_the_hook() -> None:
    fabric = woven(f"{FLAT}Rnd 1: Ch 1, sc evenly around, 3 sc in each corner, join.\n")
    border = row(fabric, "Rnd 1")
    assert orphans(fabric) == []
    assert broken_edges(fabric) == []
    assert around(fabric, border) == [("top", ""), ("row-end", "left"), ("underside", ""), ("row-end", "right")]
    into = [fabric.parents(s)[0] for s in edge(fabric, "Rnd 1")]
    last = fabric.rows[fabric.rows.index(border) - 1]
    assert {s for s in range(last.start, last.end) if fabric.part_of(s) == "edge"} <= set(into)
    assert len([s for s in edge(fabric, "Rnd 1") if fabric.where(s) == "underside"]) == 30 + CORNERS // 2
    corners = [fabric.parents(s)[0] for s in edge(fabric, "Rnd 1") if fabric.where(s) != "row-end"]
    assert sorted(corners.count(p) for p in set(corners))[-5:] == [1, 3, 3, 3, 3]


@pytest.mark.parametrize(("kind", "first", "turning", "per_side"), [("hdc", "3rd", 2, 30), ("dc", "4th", 3, 40)])
def test_taller_rows_take_more_in_their_ends(kind: str, first: str, turning: int, per_side: int) -> None:
    rows = f"Row 1: {kind} in {first} ch from hook and in each ch across, turn. (30 {kind})\nRow 2: Ch {turning}, {kind} in each st across, turn.\n"
    text = f"Ch 32.\n{rows}Rep Row 2 18 times.\nBorder\nRnd 1: Ch 1, sc evenly around, join.\n"
    assert counts(text)[-1][0] == pytest.approx(30 + 30 + 2 * per_side, abs=1)


@pytest.mark.parametrize("words", [
    "Ch 1, sc in each st across, sc evenly around, join.", "Ch 1, sc in each st across, sc evenly around, working 3 sc in each corner, join.",
    "Sc in each st across, sc evenly around neck edge, join.",
])
def test_an_edge_of_which_the_top_is_worked_before_stops_nothing(words: str) -> None:
    report = work(read(Source.of(f"{FLAT}Rnd 1: {words}\n")))
    assert report.rows[-1].section == "Border"
    assert report.rows[-1].read == ("corner" not in words and "neck" not in words)


def test_a_number_around_a_round_that_is_used_up_stops_nothing() -> None:
    text = "Rnd 1: 6 sc in magic ring, join.\nRnd 2: Ch 1, sc in each st around, work 100 sc evenly around, join.\n"
    assert [r.read for r in work(read(Source.of(text))).rows] == [True, False]


def test_a_printed_count_tells_how_many_go_along_the_row_ends_and_then_confirms_nothing() -> None:
    text = f"{FLAT}Rnd 1: Ch 1, sc evenly around, 3 sc in each corner, join. (98 sc)\n"
    assert counts(text) == [(98, None)]
    said = [a.message for a in work(read(Source.of(text))).assumptions]
    assert any("15 along a side's row ends, what the printed count leaves" in s for s in said)


def test_a_printed_count_that_no_edge_can_hold_disagrees() -> None:
    assert counts(f"{FLAT}Rnd 1: Ch 1, sc evenly around, 3 sc in each corner, join. (48 sc)\n") == [(108, False)]


def test_a_number_told_is_that_of_the_whole_border() -> None:
    assert counts(f"{FLAT}Rnd 1: Work 100 sc evenly around, join.\n")[0][0] == 100


def test_evenly_around_a_round_is_over_its_stitches() -> None:
    text = "Ch 4, join.\nRnd 1: Ch 1, 8 sc in ring, join. (8 sc)\nRnd 2: Ch 1, 2 sc in each st around, join. (16 sc)\nBorder\nRnd 1: Ch 1, sc evenly around, join.\n"
    assert counts(text)[0][0] == 16


def test_a_round_of_which_nobody_told_the_corners_has_four() -> None:
    text = f"{FLAT}Rnd 1: Ch 1, sc evenly around, join.\nRnd 2: Ch 1, sc in each st around, working 3 sc in each corner; join.\n"
    assert [n for n, _ in counts(text)] == [100, 108]


def test_the_length_of_an_opening_is_that_of_the_printed_count_which_then_confirms_nothing() -> None:
    text = f"{FLAT.replace('Border', 'Neckband')}Rnd 1: Join yarn at shoulder seam, ch 1, sc evenly around neck edge; join. (60 sc)\nRnd 2: Ch 1, sc in each st around; join. (60 sc)\n"
    report = work(read(Source.of(text)))
    assert [(r.counts[0], r.agrees) for r in report.rows if r.section == "Neckband"] == [(60, None), (60, True)]
    assert any("how many stitches go round this edge" in a.message for a in report.assumptions)


def test_an_edging_around_the_last_round_goes_over_its_stitches() -> None:
    text = "Ch 4, join.\nRnd 1: Ch 1, 8 sc in ring, join. (8 sc)\nRnd 2: Ch 1, 2 sc in each st around, join. (16 sc)\nEdging\nRnd 1: Ch 1, sc evenly around bottom edge, join. (16 sc)\n"
    assert work(read(Source.of(text))).rows[-1].counts[0] == 16
