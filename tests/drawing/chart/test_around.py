"""Borders and edgings are drawn around their piece: feet on its edge, corners that turn, long sides folded."""

from __future__ import annotations

import math
import re
from collections import Counter
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.chart.ink import symbol_path
from loopwright.drawing.chart.laid import lay
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
