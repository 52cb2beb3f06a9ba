"""Sections that are made more than once: said in charts and schematics, and whether they are alike."""

import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.copies import copies_told, told_of
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.grading.gauge import StitchSizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SIZES = StitchSizes(5.0, 4.5)
DESIGNS = Path(__file__).parents[2] / "designs"
BIRD = (
    "Tern\n\nBody\nRnd 1: 6 sc in magic ring. (6 sc)\nRnds 2-4: Sc in each st around. (6 sc)\n\n"
    "Wing (make 2)\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n{more}Fasten off.\n"
)


def document(text) -> Any:
    return read(Source.of(text))


@pytest.mark.parametrize(("more", "how"), [("", "alike"), ("Work the second wing reversing the shaping.\n", "mirrored")])
def test_a_section_made_twice_says_so_in_its_chart_and_its_schematic(more, how):
    told = document(BIRD.format(more=more))
    copies = copies_told(told)
    assert [c[1] for c in copies] == [f"make 2, {how}"]
    fabric: Any = work(told).fabrics[0]
    drawn = charts(fabric, SIZES, ChartOptions(copies=copies))
    assert {c.section for c in drawn if f"Make 2, {how}." in c.notes} == {"Wing"}
    assert all(f"Make 2, {how}." in c.svg for c in drawn if c.section == "Wing")
    sheet = schematics((fabric,), SIZES, ("one size",), SchematicOptions(copies=copies))[0]
    assert sheet.sections == ("Body", "Wing")
    assert f"; make 2, {how}" in sheet.description
    names = [t.text for t in ET.fromstring(sheet.svg).iter("{http://www.w3.org/2000/svg}text") if t.get("class") == "name"]  # noqa: S314
    assert names == ["Body", "Wing (make 2)"]


def test_reverse_single_crochet_mirrors_nothing():
    copies = copies_told(document(BIRD.format(more="Rnd 3: Reverse sc in each st around. (12 sc)\n")))
    assert told_of(copies, "Wing") == "make 2, alike"
    assert told_of(copies, "Body") == ""


def test_as_many_as_the_size_takes():
    told = document((DESIGNS / "sea-lavender-blanket.txt").read_text(encoding="utf-8"))
    assert [copies_told(told, size)[0][1] for size in range(3)] == ["make 62, alike", "make 107, alike", "make 179, alike"]


def test_a_closed_piece_says_why_it_goes_on_unrolled():
    told = document((DESIGNS / "curlew-toy.txt").read_text(encoding="utf-8"))
    fabric: Any = work(told).fabrics[0]
    drawn = [c for c in charts(fabric, SIZES) if c.section == "Head and body"]
    assert [c.part for c in drawn] == ["disc", "tube"]
    assert "The piece closes: beyond Rnd 4 it cannot be drawn flat, so its rounds are unrolled." in drawn[1].notes
    assert not any("closes" in n for n in drawn[0].notes)
    assert not any(n.startswith("Shown") for n in drawn[1].notes), "all rounds of a shaped piece are shown"


def test_a_hat_stands_up_and_does_not_close():
    rounds = "Rnd 1: 8 sc in magic ring.\nRnd 2: 2 sc in each st around.\nRnd 3: (Sc in next st, 2 sc in next st) 8 times.\nRnds 4-9: Sc in each st around.\n"
    fabric: Any = work(document(rounds)).fabrics[0]
    told = [n for c in charts(fabric, SIZES) for n in c.notes]
    assert any(n.startswith("The piece stands up: beyond Rnd") for n in told)
