"""Motifs joined: how they are laid out, drawn from the fabric."""

import copy
import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.chart.motifs import joined
from loopwright.grading.gauge import StitchSizes
from tests.drawing.chart.conftest import report_of
from tests.drawing.chart.svg_reading import NS

SIZES = StitchSizes(6.5, 12.5)


def plan(size=0, **options):
    return charts(report_of("sea-lavender-blanket").fabrics[size], SIZES, ChartOptions(**options))[-1]


def motifs(svg):
    rects = [r for r in ET.fromstring(svg).iter(f"{NS}rect") if "data-motif" in r.attrib]  # noqa: S314 - our own drawing
    return {int(r.attrib["data-motif"]): (float(r.attrib["x"]), float(r.attrib["y"]), int(r.attrib["data-stitch"])) for r in rects}


@pytest.mark.parametrize(("size", "across", "down"), [(0, 7, 9), (1, 9, 12), (2, 12, 15)])
def test_every_motif_stands_once_in_the_order_of_making(size, across, down):
    drawn = plan(size)
    assert drawn.part == "assembly"
    found = motifs(drawn.svg)
    assert list(found) == list(range(1, across * down + 1))
    assert len({x for x, _, _ in found.values()}) == across
    assert len({y for _, y, _ in found.values()}) == down
    assert [found[n][:2] for n in sorted(found)] == sorted((p[:2] for p in found.values()), key=lambda p: (p[1], p[0]))
    assert f"{across} motifs across and {down} down, {across * down} in all" in drawn.notes[0]


def test_motifs_lead_to_the_sections_that_make_them():
    fabric: Any = report_of("sea-lavender-blanket").fabrics[0]
    found = motifs(plan().svg)
    assert fabric.rows[fabric.row[found[1][2]]].section == "First square"
    assert {fabric.rows[fabric.row[at]].section for n, (_, _, at) in found.items() if n > 1} == {"Joined squares (make 62 (107, 179))"}


def test_joins_are_marked_where_motifs_meet_as_often_as_a_side_is_joined():
    """The joined round has five slip stitches into another square: a corner, three spaces, a corner."""
    fabric: Any = report_of("sea-lavender-blanket").fabrics[0]
    told: Any = joined(fabric)
    assert told.ties == 5
    ties = next(p.attrib["d"] for p in ET.fromstring(plan().svg).iter(f"{NS}path") if p.get("class") == "tie")  # noqa: S314
    assert ties.count("M") == 5 * (6 * 9 + 7 * 8)


def test_the_border_is_around_all_of_them():
    drawn = plan()
    rims = [r for r in ET.fromstring(drawn.svg).iter(f"{NS}rect") if r.get("class") == "rim"]  # noqa: S314 - our own drawing
    assert len(rims) == 2
    spots = motifs(drawn.svg).values()
    for r in rims:
        x, y, w, h = (float(r.attrib[k]) for k in ("x", "y", "width", "height"))
        assert all(x < a and a + 36 < x + w and y < b and b + 36 < y + h for a, b, _ in spots)
    assert "the border, 2 rounds" in drawn.notes[-1]


def test_left_handed_plans_are_numbered_from_the_other_side():
    right, left = motifs(plan().svg), motifs(plan(left_handed=True).svg)
    assert len({round(right[n][0] + left[n][0], 1) for n in right}) == 1
    assert "read right to left" in plan(left_handed=True).description


def test_a_fabric_without_a_layout_has_no_plan(weave):
    fabric, sizes = weave("Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n")
    assert joined(fabric) is None
    assert [c.part for c in charts(fabric, sizes)] == ["flat"]


def test_a_plan_too_large_for_any_page_is_cut_with_a_word():
    fabric: Any = copy.copy(report_of("sea-lavender-blanket").fabrics[0])
    fabric.layout = (300, 200)
    drawn = charts(fabric, SIZES)[-1]
    assert len(motifs(drawn.svg)) == 30 * 30
    assert motifs(drawn.svg).keys() >= {1, 30, 301}
    assert "Shown: the first 30 across and 30 down." in drawn.notes
    assert len(drawn.svg) < 400_000


def test_the_plan_is_plain():
    root: Any = ET.fromstring(plan().svg)  # noqa: S314 - our own drawing
    assert {e.tag.removeprefix(NS) for e in root.iter()} <= {"svg", "title", "desc", "style", "rect", "text", "g", "path"}
    assert root.find(f"{NS}desc").text == plan().description
    assert not re.search(r"nan|inf\b", "".join(p.get("d") for p in root.iter(f"{NS}path")))
