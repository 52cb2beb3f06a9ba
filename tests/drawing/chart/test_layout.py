"""How well a chart lies: symbols as long as their kind, no legs that cross but where the fabric crosses, type that can be read in a column."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, chart, charts
from loopwright.drawing.chart.around import fold
from loopwright.drawing.chart.laid import lay, leaning
from loopwright.drawing.chart.sections import sections
from tests.drawing.chart.conftest import NAMES, fabric_of, report_of
from tests.drawing.chart.svg_reading import crossing, overlaps, symbols

COLUMN_MM, LEAST_PT, PT_MM = 160.0, 9.0, 25.4 / 72
MEETING = 0.8  # lines may meet so near their ends
GROWING = {
    "trebled": "Row 2: Ch 3 (counts as dc), 2 dc in same st, 3 dc in each st across, turn.\n"
    "Row 3: Ch 3 (counts as dc), 2 dc in same st, 3 dc in each st across, turn.\n",
    "doubled": "".join(f"Row {n}: Ch 1, 2 sc in each st across, turn.\n" for n in (2, 3, 4)),
    "five in each": "Row 2: Ch 3 (counts as dc), 4 dc in same st, 5 dc in each st across, turn.\n",
}
BASE = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"


def stems(laid: Any) -> list[Any]:
    return [(m, foot) for m in laid.marks if m.kind not in ("ch", "sl st") and not m.way for foot in m.feet]


def crossings(laid: Any) -> tuple[list[Any], list[Any]]:
    """Pairs of legs that cross: those whose feet lie the same way round as their tops, which the fabric does not cross; and the others."""
    false: list[Any] = []
    true: list[Any] = []
    found = sorted(stems(laid), key=lambda s: min(s[0].top[0], s[1][0]))
    for i, (one, a) in enumerate(found):
        for two, b in found[i + 1 :]:
            if min(two.top[0], b[0]) > max(one.top[0], a[0]):
                break
            at = crossing((a, one.top), (b, two.top)) if one.stitch != two.stitch else None
            if at is None or min(math.dist(at, p) for p in (a, one.top, b, two.top)) <= MEETING:
                continue
            crossed = one.row == two.row and (a[0] - b[0]) * (one.top[0] - two.top[0]) < 0
            (true if crossed else false).append((one.stitch, two.stitch))
    return false, true


@pytest.mark.parametrize("name", NAMES)
def test_legs_cross_only_where_the_fabric_does(name: str) -> None:
    """In no design and no stitch pattern of the table does a stitch go back past another: so no two legs may cross at all."""
    fabric, sizes = fabric_of(name)
    for whole in (False, True):
        for section in sections(fabric, sizes, whole=whole):
            assert crossings(lay(fabric, section)) == ([], [])


def test_stitches_that_cross_in_the_fabric_cross_in_the_chart(weave):
    """Pairs of dc whose places are exchanged, as crossed stitches are worked."""
    fabric, sizes = weave("Ch 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (12 dc)\nRow 2: Ch 3 (counts as dc), dc in each st across.\n")
    row = fabric.rows[2]
    dcs = [s for s in range(row.start, row.end) if fabric.name(s) == "dc"]
    pairs = list(pairwise(dcs))[:8:2]
    for one, two in pairs:
        fabric.into[one], fabric.into[two] = fabric.into[two], fabric.into[one]
    (section,) = sections(fabric, sizes, whole=True)
    false, true = crossings(lay(fabric, section))
    assert false == []
    assert sorted(tuple(sorted(p)) for p in true) == sorted(tuple(sorted(p)) for p in pairs)


@pytest.mark.parametrize("name", NAMES)
def test_symbols_are_as_long_as_their_kind(name: str) -> None:
    """Spread of drawn over true length at most 0.10 for every kind of every chart, outside what stretches on purpose."""
    fabric, sizes = fabric_of(name)
    for whole in (False, True):
        for section in sections(fabric, sizes, whole=whole):
            assert leaning(fabric, lay(fabric, section).marks) <= 0.10, (section.name, section.kind)


@pytest.mark.parametrize("name", [n for n in NAMES if not n.startswith("pattern ")])
def test_symbols_of_a_folded_edge_are_as_long_as_their_kind(name: str) -> None:
    """As above, with the middle of long sides left out: there are then fewer of a kind, and those at corners count for more."""
    for fabric in (f for f in report_of(name).fabrics if f is not None):
        for section in sections(fabric, fabric_of(name)[1], whole=False):
            if section.edge is not None:
                edge, bands = fold(fabric, section, section.edge)
                laid = lay(fabric, replace(section, edge=edge, left=tuple(bands)))
                assert leaning(fabric, laid.marks) <= 0.10, section.name


@pytest.mark.parametrize("rows", GROWING.values(), ids=GROWING.keys())
def test_rows_that_grow_many_times_over_do_not_lie_down(rows: str, weave: Any) -> None:
    fabric, sizes = weave(BASE + rows)
    (section,) = sections(fabric, sizes, whole=True)
    laid = lay(fabric, section)
    assert crossings(laid) == ([], [])
    drawn = chart(fabric, sizes, ChartOptions(whole=True))
    assert overlaps(drawn.svg) == []
    assert len(symbols(drawn.svg)) == len(fabric)


def _type(svg: str) -> tuple[float, float]:
    wide = float(re.findall(r'viewBox="0 0 (\S+)', svg)[0])
    return float(re.findall(r'class="lw-chart t(\d+) ', svg)[0]), wide


@pytest.mark.parametrize("name", [n for n in NAMES if not n.startswith("pattern ")])
def test_type_can_be_read_in_a_column(name: str) -> None:
    """At least 9 pt where the picture is 160 mm wide, in what is shown of the first and last size without asking for the whole."""
    fabric, sizes = fabric_of(name)
    small = []
    for made in (fabric, report_of(name).fabrics[-1]):
        for c in charts(made, sizes):
            if "lw-chart" in c.svg:
                px, wide = _type(c.svg)
                if px * COLUMN_MM / wide / PT_MM < LEAST_PT - 0.05:
                    small.append(c.section)
    assert small == []
    if name == "avocet-bonnet":
        assert any(_type(c.svg)[0] > 13 for c in charts(fabric, sizes)), "type grows with the sheet"


def test_what_is_left_out_is_said_and_marked(weave):
    """A yoke's plain stitches, a row of shells."""
    text = "Ch 62.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
    fabric, sizes = weave(text + "Row 2: Ch 1, sc in each st across, turn.\n" * 1)
    whole = symbols(chart(fabric, sizes, ChartOptions(whole=True)).svg)
    shown = chart(fabric, sizes)
    assert "left out" in shown.notes[0]
    assert len(symbols(shown.svg)) < len(whole) == len(fabric)
    assert overlaps(shown.svg) == []
