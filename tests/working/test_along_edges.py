"""Rows along the edges of a piece: every stitch stands where a maker would put the hook."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from loopwright.grading import grade
from loopwright.model.fabric import Fabric, FabricRow
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

from .sound import around, broken_edges, live, orphans, row_of_end, runs_along, side_of
from .woven import edge, parents, row, woven

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
PIECES = {  # as a maker would lay them out on the table
    "curlew-toy": 4, "glasswort-bag": 2, "lapwing-cushion": 2, "sea-lavender-blanket": 3,
    # body, bill, wing, tail; bag, strap; front, back; first square, joined square, border
}


@cache
def design(name: str) -> Fabric:
    text = next(p for p in DESIGNS if p.stem == name).read_text(encoding="utf-8")
    document = read(Source.of(text))
    report = grade(document, work).report or work(document)
    fabric = report.fabrics[min(1, len(report.fabrics) - 1)]
    assert fabric is not None
    return fabric


def section(fabric: Fabric, title: str) -> list[FabricRow]:
    return [r for r in fabric.rows if r.section == title]


@pytest.mark.parametrize("name", [p.stem for p in DESIGNS])
def test_every_design_hangs_together(name: str) -> None:
    fabric = design(name)
    assert orphans(fabric) == []
    assert broken_edges(fabric) == []
    assert len({r.piece for r in fabric.rows}) == PIECES.get(name, 1)


def test_a_tie_hangs_on_the_edging_and_the_neck_edge_goes_on_along_the_piece() -> None:
    fabric = design("avocet-bonnet")
    edging = section(fabric, "Edging and ties")[0]
    (chain, back), (neck,), (_, second) = (section(fabric, s) for s in ("First tie", "Neck edge", "Second tie"))
    assert chain.start == edging.end
    assert [fabric.parents(s) for s in live(fabric, back)] == [(c,) for c in range(chain.end - 2, chain.start - 1, -1)]
    front = section(fabric, "Front")
    down, up = runs_along(fabric, neck)
    assert [row_of_end(fabric, s) for s in down] == [fabric.rows.index(r) for r in reversed(front)]
    assert [row_of_end(fabric, s) for s in up] == [fabric.rows.index(r) for r in front]
    assert [e for _, e in around(fabric, neck)] == ["left", "", "right"]
    rim = live(fabric, section(fabric, "Back")[-1])
    free = [fabric.parents(s)[0] for s in live(fabric, neck) if fabric.where(s) == "top"]
    assert free == rim[-len(free) :]  # the stitches that the front left unworked, on from where its first row ended
    assert fabric.parents(second.end - 1) == (live(fabric, edging)[0],)


def test_a_sleeve_goes_over_the_free_stitches_and_under_the_chain_that_bridges_them() -> None:
    fabric = design("plover-cardigan")
    body, sleeve, yoke = section(fabric, "Body")[0], section(fabric, "Sleeve")[0], section(fabric, "Yoke")[-1]
    into = [fabric.parents(s)[0] for s in live(fabric, sleeve)]
    under = [s for s in live(fabric, sleeve) if fabric.where(s) == "underside"]
    chains = [s for s in live(fabric, body) if fabric.name(s) == "ch" and s not in fabric.counts_as]
    assert into[: len(under)] == chains[: len(under)][::-1]
    over = into[len(under) :]
    assert over == sorted(over, reverse=True)  # the yoke's last row was made from the other side
    assert {fabric.row[s] for s in over} == {fabric.rows.index(yoke)}
    assert not set(over) & {p for s in range(body.start, body.end) for p in fabric.parents(s)}
    assert all(fabric.name(s) == "dc" for s in over)


def test_bands_go_up_one_front_along_the_neck_and_down_the_other() -> None:
    fabric = design("plover-cardigan")
    band = section(fabric, "Bands")[0]
    assert around(fabric, band) == [("row-end", "left"), ("underside", ""), ("row-end", "right")]
    rows = [fabric.rows.index(r) for r in (*section(fabric, "Yoke")[1:], *section(fabric, "Body"))]
    first, last = runs_along(fabric, band)
    assert [row_of_end(fabric, s) for s in first] == [i for i in reversed(rows) for _ in range(2)]
    assert [row_of_end(fabric, s) for s in last] == [i for i in rows for _ in range(2)]
    neck = [fabric.parents(s)[0] for s in live(fabric, band) if fabric.where(s) == "underside"]
    assert len(set(neck)) == len(neck)
    assert {fabric.row[s] for s in neck} == {0}


def test_a_brim_is_seamed_to_its_foundation_and_the_body_picked_up_along_all_its_rows() -> None:
    fabric = design("bulrush-hat")
    foundation, *brim, seam = section(fabric, "Brim")
    body = section(fabric, "Body")[0]
    joined = [fabric.parents(s) for s in range(seam.start, seam.end)]
    assert {a for a, _ in joined} == set(live(fabric, brim[-1]))
    assert {b for _, b in joined} == {p for s in live(fabric, brim[0]) for p in fabric.parents(s)}
    assert foundation.start <= joined[0][1] < foundation.end
    assert [row_of_end(fabric, s) for s in runs_along(fabric, body)[0]] == [fabric.rows.index(r) for r in reversed(brim)]


def test_a_joined_square_is_worked_as_the_first_and_hangs_on_its_corners() -> None:
    fabric = design("sea-lavender-blanket")
    first = [r for r in section(fabric, "First square") if r.label]
    joined = [r for r in fabric.rows if r.piece == 1 and r.label]
    for ours, theirs in zip(joined[:3], first[:3], strict=True):
        assert [fabric.where(s) for s in live(fabric, ours)] == [fabric.where(s) for s in live(fabric, theirs)]
        assert [fabric.name(s) for s in live(fabric, ours)] == [fabric.name(s) for s in live(fabric, theirs)]
    last = joined[3]
    slips = [s for s in live(fabric, last) if fabric.name(s) == "sl st"]
    assert {fabric.rows[fabric.row[p]].piece for s in slips for p in fabric.parents(s)} == {0}
    rest = [s for s in live(fabric, last) if fabric.parents(s) and s not in slips]
    assert {fabric.row[p] for s in rest for p in fabric.parents(s)} == {fabric.rows.index(joined[2])}


# --- pasted text -----------------------------------------------------------------------------------------------------

FLAT = """Ch 9.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (8 sc)
Rows 2-6: Ch 1, sc in each st across, turn. (8 sc)
"""


def test_a_border_round_all_four_sides_with_corners() -> None:
    fabric = woven(
        FLAT + "Fasten off.\n\nEdging\nRnd 1 (RS): Join yarn in top right corner, ch 1, sc in each of next 8 sts, 2 sc in corner, "
        "sc in side of each row, 2 sc in corner, sc in other side of next 8 ch, 2 sc in corner, work 6 sc evenly along row ends, "
        "2 sc in corner; join. (36 sc)\n",
    )
    into = [p[0] for p in parents(fabric, "Rnd 1")]
    rows = {i: edge(fabric, f"Row {i}") for i in range(1, 7)}
    left = [rows[6][0], rows[5][-1], rows[4][0], rows[3][-1], rows[2][0], rows[1][-1]]
    right = [rows[1][0], rows[2][-1], rows[3][0], rows[4][-1], rows[5][0], rows[6][-1]]
    bottom = [fabric.parents(s)[0] for s in reversed(rows[1])]
    top = rows[6][::-1]
    assert into == [*top, *[top[-1]] * 2, *left, *[left[-1]] * 2, *bottom, *[bottom[-1]] * 2, *right, *[right[-1]] * 2]


def test_a_border_with_chains_in_its_corners() -> None:
    fabric = woven(
        FLAT + "Row 7: Ch 1, sc in each st across, do not turn. (8 sc)\nBorder\nRnd 1: Ch 1, sc in end of each of the 7 rows, ch 2, "
        "sc in each of next 8 ch along foundation, ch 2, sc in end of each of the 7 rows, ch 2, sc in each st across, ch 2; join. (30 sc)\n",
    )
    border = row(fabric, "Rnd 1")
    assert around(fabric, border) == [("row-end", "left"), ("underside", ""), ("row-end", "right"), ("top", "")]
    assert [len(r) for r in runs_along(fabric, border)] == [7, 7]
    assert broken_edges(fabric) == []


def test_a_turning_chain_that_counts_is_the_end_of_its_row() -> None:
    fabric = woven(
        "Ch 10.\nRow 1 (RS): Dc in 4th ch from hook (counts as 2 dc), dc in each ch across, turn. (8 dc)\n"
        "Rows 2-3: Ch 3 (counts as dc), dc in each st across, turn. (8 dc)\nRow 4: Ch 3 (counts as dc), dc in each st across, do not turn. (8 dc)\n"
        "Edging\nRnd 1: Ch 1, 2 sc in end of each row, sc in other side of each of the 8 ch, 2 sc in end of each row, sc in each st across; "
        "join with sl st to first sc. (32 sc)\n",
    )
    down, up = runs_along(fabric, row(fabric, "Rnd 1"))
    tops = set(fabric.counts_as)
    assert [s in tops for s in down[::2]] == [False, True, False, True]
    assert [s in tops for s in up[::2]] == [False, True, False, True]
    assert down[::2] == down[1::2]
    under = [fabric.parents(s)[0] for s in edge(fabric, "Rnd 1") if fabric.where(s) == "underside"]
    assert under == list(range(7, -1, -1)) or under == list(range(8))  # the seven worked into, and the one below the skipped chains
    assert broken_edges(fabric) == []


@pytest.mark.parametrize(("words", "side", "first"), [
    ("Join yarn at lower right corner", "right", "Row 1"), ("Join yarn at top left corner", "left", "Row 6"),
    ("With RS facing, join yarn at left side edge", "left", "Row 6"),
])
def test_the_corner_where_the_yarn_is_joined_tells_the_side(words: str, side: str, first: str) -> None:
    fabric = woven(FLAT + f"Fasten off.\nBand\nRow 1 (RS): {words}, ch 1, work 9 sc evenly along row ends, turn. (9 sc)\n")
    (run,) = runs_along(fabric, fabric.rows[-1])
    assert {side_of(fabric, s) for s in run} == {side}
    assert fabric.rows[row_of_end(fabric, run[0])].label == first
    assert len({row_of_end(fabric, s) for s in run}) == 6


def test_a_second_band_goes_along_the_side_that_is_free_and_not_along_the_first_band() -> None:
    band = "Row 1 (RS): Join yarn, ch 1, work 9 sc evenly along row ends, turn. (9 sc)\nRows 2-3: Ch 1, sc in each st across, turn. (9 sc)\nFasten off.\n"
    fabric = woven(FLAT + "Fasten off.\nOne band\n" + band + "Other band\n" + band)
    one, other = (section(fabric, s)[0] for s in ("One band", "Other band"))
    (a,), (b,) = runs_along(fabric, one), runs_along(fabric, other)
    assert {side_of(fabric, s) for s in a} | {side_of(fabric, s) for s in b} == {"left", "right"}
    assert {row_of_end(fabric, s) for s in a} == {row_of_end(fabric, s) for s in b} == set(range(1, 7))


def test_a_collar_goes_up_one_front_over_the_top_and_down_the_other() -> None:
    fabric = woven(
        FLAT + "Fasten off.\nCollar\nRow 1 (RS): Join yarn at lower right corner, ch 1, work 6 sc up right front edge, sc in each of next 8 sts, "
        "work 6 sc down left front edge, turn. (20 sc)\n",
    )
    assert around(fabric, fabric.rows[-1]) == [("row-end", "right"), ("top", ""), ("row-end", "left")]
    assert broken_edges(fabric) == []


def test_a_strap_begun_after_fastening_off_is_a_piece_of_its_own() -> None:
    tie = "Ch 10, sl st in 2nd ch from hook and in each ch across.\n"
    assert {r.piece for r in woven(FLAT + "Fasten off.\nTie\n" + tie).rows} == {0, 1}
    assert {r.piece for r in woven(FLAT + "Tie\n" + tie).rows} == {0}


def test_a_row_known_by_its_count_alone_stands_evenly_on_the_one_below() -> None:
    fabric = woven("Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRow 2: Work in pattern across, turn. (8 sc)\n"
                   "Row 3: Ch 1, sc in each st across. (8 sc)\n")
    assert orphans(fabric) == []


@pytest.mark.parametrize(("row", "count"), [
    ("sc evenly to end, turn", 8), ("sc evenly across to the end of row, turn", 8), ("sc along each st to the end, turn", 8),
    ("sc along the front loops, turn", 8), ("sc along the row to end, turn", 8), ("sc across top edge, turn", 8),
    ("8 sc evenly along the top edge, turn", 8),
])
def test_words_that_tell_the_row_itself_are_no_edge(row: str, count: int) -> None:
    fabric = woven(FLAT + f"Row 7: Ch 1, {row}. ({count} sc)\n")
    assert [fabric.where(s) for s in live(fabric, fabric.rows[-1])] == ["top"] * count
    assert broken_edges(fabric) == []


@pytest.mark.parametrize("second", [
    "6 sc along the other side", "6 sc down the other side of the chain", "work 6 sc along opposite side of chain",
])
def test_the_other_side_of_an_oval_is_the_chain_and_no_row_ends(second: str) -> None:
    fabric = woven(f"Rnd 1: Ch 9, sc in 2nd ch from hook, sc in next 6 ch, 3 sc in last ch, {second}, 2 sc in last ch. (18)\n")
    first = live(fabric, fabric.rows[-1])
    assert [fabric.where(s) for s in first] == ["chain"] * 10 + ["underside"] * 8
    assert [fabric.parents(s)[0] for s in first[10:16]] == list(range(1, 7))
