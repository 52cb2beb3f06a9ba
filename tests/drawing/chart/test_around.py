"""Borders and edgings are drawn around their piece: feet on its edge, corners that turn, long sides folded."""

from __future__ import annotations

import math
import re
from collections import Counter
from itertools import pairwise
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.chart.ink import symbol_path
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.planes import Rim
from loopwright.drawing.chart.sections import sections
from loopwright.drawing.chart.symbols import AIR
from tests.drawing.chart.conftest import fabric_of, woven
from tests.drawing.chart.svg_reading import crossing, lines, overlaps, symbols


def _piece(sts: int, rows: int) -> str:
    return (
        f"Ch {sts + 2}.\nRow 1 (RS): Dc in 4th ch from hook (counts as 2 dc), dc in each ch across, turn. ({sts} dc)\n"
        f"Rows 2-{rows - 1}: Ch 3 (counts as dc), dc in each st across, turn. ({sts} dc)\n"
        f"Row {rows}: Ch 3 (counts as dc), dc in each st across, do not turn. ({sts} dc)\n"
    )


CHAINS = 4
FACE = 30
STEPPED = (
    "Body\nCh 17.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (16 sc)\nRows 2-6: Ch 1, sc in each st across, turn. (16 sc)\n"
    "\nFront\nRow 1 (RS): Ch 1, sc in each of first 8 sts, leave the last 8 sts unworked, turn. (8 sc)\n"
    "Rows 2-6: Ch 1, sc in each st across, turn. (8 sc)\nRow 7: Ch 1, sc in each st across, do not turn. (8 sc)\n"
)
FLAT = "Ch 9.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-6: Ch 1, sc in each st across, turn. (8 sc)\n"
TEXTS = {
    "from a corner": FLAT + "Fasten off.\n\nEdging\nRnd 1 (RS): Join yarn in top right corner, ch 1, sc in each of next 8 sts, 2 sc in corner, "
    "sc in side of each row, 2 sc in corner, sc in other side of next 8 ch, 2 sc in corner, work 6 sc evenly along row ends, "
    "2 sc in corner; join. (36 sc)\nRnd 2: Ch 1, sc in each st around; join. (36 sc)\n",
    "chains at corners": FLAT + "Row 7: Ch 1, sc in each st across, do not turn. (8 sc)\nBorder\nRnd 1: Ch 1, sc in end of each of the 7 rows, ch 2, "
    "sc in each of next 8 ch along foundation, ch 2, sc in end of each of the 7 rows, ch 2, sc in each st across, ch 2; join. (30 sc)\n"
    "Rnd 2: Ch 1, *sc in each st to next ch-2 sp, 3 sc in ch-2 sp; rep from * 3 times more; join.\n",
    "tall rows": _piece(8, 4) + "Edging\nRnd 1: Ch 1, 2 sc in end of each row, sc in other side of each of the 8 ch, 2 sc in end of each row, "
    "sc in each st across; join with sl st to first sc. (32 sc)\n",
    "large": _piece(41, 20) + "Edging\nRnd 1: Ch 1, 2 sc in end of each row, ch 1, sc in other side of each of the 41 ch, ch 1, "
    "2 sc in end of each row, ch 1, sc in each st across, ch 1; join with sl st to first sc.\nRnd 2: Ch 3 (counts as dc), dc in each st around; join.\n",
    "in an inner corner": STEPPED + "\nEdging\nRow 1 (RS): Ch 1, sc in end of each of the 7 rows of the front, sc in each of the 8 free sts of the body, turn. (15 sc)\n"
    "Row 2: Ch 3 (counts as dc), dc in each st across. (15 dc)\n",
    "of joined motifs": "sea-lavender-blanket", "of a triangle": "thrift-shawl", "along fronts and neck": "plover-cardigan",
    "along a side": "tideline-blanket", "along a neck": "avocet-bonnet",
}


@pytest.fixture(params=TEXTS, name="piece")
def _fabric(request: Any) -> tuple[Any, Any]:
    text = TEXTS[request.param]
    found: tuple[Any, Any] = woven(text) if "\n" in text else fabric_of(text)
    return found


def _edges(piece: tuple[Any, Any], **options: Any) -> list[Any]:
    return [c for c in charts(*piece, ChartOptions(**options)) if c.part == "edge"]


@pytest.mark.parametrize("whole", [False, True])
def test_no_symbol_lies_on_another(piece: tuple[Any, Any], whole: bool) -> None:
    (drawn,) = _edges(piece, whole=whole)
    assert overlaps(drawn.svg) == []


def test_a_foot_stands_just_outside_the_stitch_of_the_piece_that_it_was_worked_into(piece: tuple[Any, Any]) -> None:
    """The stitch is drawn in grey: no further away than air and half of it; and no grey line crosses a stem."""
    fabric, sizes = piece
    section = next(s for s in sections(fabric, sizes, whole=True) if s.edge is not None)
    laid = lay(fabric, section)
    grey: dict[int, list[Any]] = {}
    for m in laid.piece:  # of a row's end all chains that stand for its stitch are drawn
        grey.setdefault(m.row, []).append(m)
    feet = [(m, f) for m in laid.marks if m.row == section.rows[0] and m.kind not in ("ch", "sl st") for f in m.feet]
    measured = 0
    for m, foot in feet:
        below = [b for p in fabric.parents(m.stitch) for b in grey.get(fabric.row[p], ()) if abs(b.stitch - p) < CHAINS]
        if below:
            drawn = [line for b in below for line in lines(symbol_path(b, lambda p: p))] + laid.below
            away = min(_distance(foot, line) for line in drawn)
            assert away <= AIR + 10.0
            measured += 1
    assert measured
    stems = [(f, m.top) for m in laid.marks if m.kind != "ch" for f in m.feet]
    bars = [line for m in laid.piece for line in lines(symbol_path(m, lambda p: p))]
    assert not any(crossing(stem, bar) for stem in stems for bar in bars)


def _distance(p: Any, line: Any) -> float:
    (x0, y0), (x1, y1) = line
    long = (x1 - x0) ** 2 + (y1 - y0) ** 2 or 1.0
    t = max(0.0, min(1.0, ((p[0] - x0) * (x1 - x0) + (p[1] - y0) * (y1 - y0)) / long))
    return math.dist(p, (x0 + t * (x1 - x0), y0 + t * (y1 - y0)))


def test_a_border_goes_around_all_four_sides() -> None:
    """As many stems point up as there are stitches above, and so on: 8 up and down, 2 of each of 4 rows to either hand."""
    (drawn,) = _edges(woven(TEXTS["tall rows"]))
    ways = Counter(_way(s) for s in symbols(drawn.svg) if s.kind == "sc")
    assert ways == {"up": 8, "down": 8, "left": 8, "right": 8}


def _way(symbol: Any) -> str:
    (x0, y0), (x1, y1) = symbol.lines[0]
    if abs(x1 - x0) > abs(y1 - y0):
        return "right" if x1 > x0 else "left"
    return "up" if y1 < y0 else "down"


def test_a_folded_border_keeps_its_corners_and_says_what_is_left_out() -> None:
    (drawn,), (whole,) = _edges(woven(TEXTS["large"])), _edges(woven(TEXTS["large"]), whole=True)
    gone = len(symbols(whole.svg)) - len(symbols(drawn.svg))
    assert drawn.notes[0].startswith(f"Shown: corners and ends of the edge, {gone} symbols left out at the dotted lines")
    assert drawn.svg.count('class="gap"') == 4
    assert {_way(s) for s in symbols(drawn.svg) if s.kind == "sc"} == {"up", "down", "left", "right"}


def test_rows_that_turn_start_at_either_end_of_the_edge() -> None:
    (drawn,) = _edges(fabric_of("plover-cardigan"))
    tabs = [float(x) for x in re.findall(r'class="num mid" x="(\S+)"', drawn.svg)]
    wide = float(re.findall(r'viewBox="0 0 (\S+)', drawn.svg)[0])
    assert [x < wide / 2 for x in tabs] == [True, False, True, False]
    assert "Worked around the edge of the piece" in drawn.description
    assert ", clockwise" in drawn.description


def test_a_neck_between_two_fronts_is_drawn_inside_them() -> None:
    """Its stems point away from the piece: up from the free stitches of the back, inwards from the fronts on either hand."""
    (drawn,) = _edges(fabric_of("avocet-bonnet"))
    wide = float(re.findall(r'viewBox="0 0 (\S+)', drawn.svg)[0])
    ways = [(_way(s), s.foot[0] < wide / 2) for s in symbols(drawn.svg)]
    assert {w for w in ways if w[0] != "up"} == {("right", True), ("left", False)}
    assert {w for w, _ in ways} == {"up", "left", "right"}


NOTCHED = (
    STEPPED + "\nEdging\nRnd 1 (RS): Ch 1, sc in end of each of the 7 rows of the front, sc in each of the 8 free sts of the body, "
    "sc in end of each of the 6 rows of the body, sc in other side of each of the 16 ch, sc in end of each of the 13 rows, sc in each st across; "
    "join with sl st to first sc. (58 sc)\nRnd 2: Ch 1, sc in each st around; join. (58 sc)\n"
)


@pytest.mark.parametrize("whole", [False, True])
def test_a_round_goes_around_a_notch(whole: bool) -> None:
    """Seven rows down, eight stitches out, six rows down, the chain, thirteen rows up and eight stitches: as many stems to each hand."""
    fabric, sizes = woven(NOTCHED)
    row = next(r for r in fabric.rows if r.section == "Edging")
    stems = [s for s in range(row.start, row.end) if fabric.name(s) == "sc"]
    for k, s in enumerate(stems[15:21]):  # the reader takes the other ends of the body's rows
        of = fabric.rows[6 - k]
        ends = [x for x in range(of.start, of.end) if fabric.name(x) == "sc"]
        fabric.into[s] = ends[-1] if of.right_side else ends[0]
    (drawn,) = [c for c in charts(fabric, sizes, ChartOptions(whole=whole)) if c.part == "edge"]
    assert overlaps(drawn.svg) == []
    ways = Counter(_way(s) for s in symbols(drawn.svg) if s.kind == "sc" and s.stitch in stems)
    assert not whole or ways == {"left": 13, "up": 16, "down": 16, "right": 13}
    assert set(ways) == {"left", "up", "down", "right"}


def test_ends_of_rows_that_lie_below_the_free_stitches_beside_them_are_no_inner_corner() -> None:
    """Going on to the row ends at the far side, the edge lies on no outline."""
    assert _edges(woven(NOTCHED)) == []


def test_an_edge_bends_at_an_inner_corner_as_long_as_it_says() -> None:
    """A notch in a square, closed: every height is as long as the ways between its points; places and lengths are each other's inverse."""
    quarter, radius = math.pi / 2, 60.0
    side, corner, bend = (200.0, 0.0), (0.0, quarter), (radius * quarter, -quarter)
    rest = (side, corner, (400.0 + radius, 0.0), corner, (400.0 + radius, 0.0), corner)
    rim = Rim((side, corner, side, bend, side, corner, *rest), 0.0, closed=True)
    for v in (0.0, 20.0, 50.0):
        points = [rim.point(rim.long * k / 4000, v) for k in range(4001)]
        assert sum(math.dist(a, b) for a, b in pairwise(points)) == pytest.approx(rim.span(v), rel=2e-3)
        for k in range(40):
            u = rim.long * (k + 0.5) / 40
            assert v == 0.0 or rim.place(rim.length(u, v), v) == pytest.approx(u)


def test_an_edging_along_a_straight_row_stands_on_that_row_in_grey() -> None:
    """Of the face edge every stitch below is drawn under the stitch that is worked into it."""
    fabric, sizes = fabric_of("avocet-bonnet")
    section = next(s for s in sections(fabric, sizes, whole=True) if s.name == "Edging and ties")
    laid = lay(fabric, section)
    under = {m.stitch: (m.feet[0][0] + m.top[0]) / 2 for m in laid.piece}
    stems = [m for m in laid.marks if m.kind == "sc"]
    assert laid.below == []
    assert len(stems) >= FACE
    assert all(m.feet[0][0] == pytest.approx(under[fabric.parents(m.stitch)[0]], abs=1.0) for m in stems)


def test_left_handed_is_the_mirror_image() -> None:
    (right,), (left,) = _edges(woven(TEXTS["large"])), _edges(woven(TEXTS["large"]), left_handed=True)
    ways = [Counter(_way(s) for s in symbols(d.svg) if s.kind == "sc") for d in (right, left)]
    assert (ways[0]["left"], ways[0]["right"]) == (ways[1]["right"], ways[1]["left"])
    mirrored = [{s.stitch: s.foot for s in symbols(d.svg)} for d in (right, left)]
    sums = {round(mirrored[0][s][0] + mirrored[1][s][0], 0) for s in mirrored[0]}
    assert max(sums) - min(sums) <= 1.0


def test_rows_along_one_straight_row_are_no_edge() -> None:
    text = FLAT + "Trim\nRow 7: Ch 1, sc in each st across, turn. (8 sc)\nRow 8: Ch 1, sc in each st across. (8 sc)\n"
    assert _edges(woven(text)) == []
