"""How pieces go together, the left-handed schematic, and what fits on a telephone."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET

import pytest

from loopwright.drawing.copies import copies_told
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.drawing.schematic.figure import Figure, rounded
from loopwright.drawing.schematic.fronts import _edges
from loopwright.drawing.schematic.making import Join, joins, made_up
from loopwright.drawing.speech import in_english
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

NS = "{http://www.w3.org/2000/svg}"
SC = StitchSizes(5.0, 5.0, "sc")
BIRD = (
    "Body\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnds 3-9: Sc in each st around. (12)\n"
    "Rnd 10: (Sc2tog) 6 times. (6)\nFasten off.\n\nWing (make 2)\nCh 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (5)\n"
    "Rows 2-4: Ch 1, sc in each st across, turn. (5)\nFasten off.\n\nMaking up\nSew the wings to the body at Rnd 4.\n"
)


def named(name: str, wide: float, high: float) -> Figure:
    figure = Figure(name)
    figure.stroke("outline", [(0, 0), (wide, 0), (wide, high), (0, high)], closed=True)
    return figure


BODY, WING, BILL, TAIL = named("Head and body", 70, 130), named("Wing", 40, 60), named("Bill", 20, 80), named("Tail", 40, 40)


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("Sew the bill to the head between Rnds 4 and 7 and the wings to the body at Rnd 18.", {(2, 0), (1, 0)}),
        ("Sew the tail on at Rnd 28.", {(3, 0)}),
        ("Attach the bill to the tail.", {(2, 3)}),
        ("Embroider an eye on each wing.", set()),
        ("Fasten off. The wing is ready.", set()),
        ("", set()),
    ],
)
def test_words_of_making_up_say_what_is_joined_to_what(words, expected):
    assert set(joins([BODY, WING, BILL, TAIL], words)) == {Join(*pair) for pair in expected}


def test_two_pieces_that_nobody_names_are_joined_to_each_other():
    one, two = named("", 70, 130), named("", 60, 40)
    assert joins([one, two], "Place wrong sides together and sew both pieces around.") == (Join(1, 0),)
    assert joins([one, two, two], "Sew the pieces together.") == ()
    sheet = made_up([one, two, two], ["", "", ""], "Sew the pieces together.", 600, in_english("us"))
    assert sheet is not None
    assert sheet.says == "a: piece. b: piece. c: piece."
    assert any("Sew the pieces together." in e for e in sheet.inside)


def test_nothing_is_put_together_where_nothing_is_joined_or_made_twice():
    assert made_up([BODY, WING], ["", ""], "", 600, in_english("us")) is None
    assert made_up([], [], "Sew up.", 600, in_english("us")) is None


@pytest.mark.parametrize("room", [300.0, 340.0, 640.0, 1000.0])
def test_pieces_and_names_stay_on_the_sheet(room):
    found = made_up([BODY, WING, BILL, TAIL], ["", "make 2, mirrored", "", ""], "Sew the wings to the body.", room, in_english("us"))
    assert found is not None
    places = [float(x) for e in found.inside for x in re.findall(r"(?:[M ])(-?[\d.]+),-?[\d.]+", e)]
    assert min(places) >= 0
    assert max(places) <= room
    assert "b: Wing (make 2), joined to a." in found.says


def sheets(text: str, **asked):
    document = read(Source.of(text), "us")
    report = work(document)
    return schematics(report.fabrics, SC, ("one size",), SchematicOptions(copies=copies_told(document), **asked))


def test_a_toy_of_pieces_has_a_sheet_that_puts_them_together():
    *_, last = sheets(BIRD, making_up="Sew the wings to the body at Rnd 4.")
    classes = [p.get("class") for p in ET.fromstring(last.svg).iter(NS + "path")]  # noqa: S314 -- our own file
    assert classes.count("outline") == 3  # the wing twice
    assert classes.count("join") == 2  # each of them is joined
    assert "Sew the wings to the body at Rnd 4." in last.description
    assert last.title == "How the pieces go together"


def test_left_handed_schematics_are_mirrored_and_their_words_are_not():
    cone = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across, turn. (10)\nRow 3: Ch 1, sc in next 4 sts, turn. (4)\nRow 4: Ch 1, sc in each st across, turn. (4)\n"
    right, left = sheets(cone)[0], sheets(cone, left_handed=True)[0]
    mine, other = ([float(v) for v in re.findall(r'data-mm="([\d.]+)"', d.svg)] for d in (right, left))
    assert mine == other
    assert "Mirrored for the left hand." in left.description
    assert "Mirrored" not in right.description


def test_a_mirrored_figure_is_the_exact_reflection():
    figure = named("Front", 30, 50)
    figure.span(0, (30, 0), (30, 50), "right")
    figure.span(1, (0, 0), (30, 0), "above")
    mirrored = figure.mirrored()
    assert [tuple((-x, y) for x, y in s.points) for s in mirrored.strokes] == [s.points for s in figure.strokes]
    assert [s.side for s in mirrored.spans] == ["left", "above"]
    assert [s.length_mm for s in mirrored.spans] == [s.length_mm for s in figure.spans]
    assert mirrored.mirrored() == figure


def test_a_piece_is_joined_at_the_rounds_that_the_words_name():
    """High up at Rnd 2, low at Rnd 9."""
    def end(words: str) -> float:
        *_, last = sheets(BIRD, making_up=words)
        (path, *_) = [p for p in ET.fromstring(last.svg).iter(NS + "path") if p.get("class") == "join"]  # noqa: S314
        return float(re.findall(r"[-\d.]+,([-\d.]+)", path.get("d") or "")[-1])

    assert end("Sew the wings to the body at Rnd 2.") < end("Sew the wings to the body between Rnds 4 and 6.")
    assert end("Sew the wings to the body between Rnds 4 and 6.") < end("Sew the wings to the body at Rnd 9.")


def test_filled_pieces_are_round_and_as_large_as_before():
    soft = rounded([(0.0, 0.0), (20.0, 0.0), (20.0, 30.0), (0.0, 30.0)], 4.0)
    xs, ys = [x for x, _ in soft], [y for _, y in soft]
    assert (max(xs), min(xs), min(ys), max(ys)) == pytest.approx((20, -20, 0, 30), abs=0.1)
    assert min(math.dist(p, (20, 0)) for p in soft) > 2  # no corner


def test_a_cuff_drawn_in_at_once_stands_in_the_middle_of_its_sleeve():
    text = "Ch 20; join with sl st to form a ring.\nRnds 1-4: Ch 1, sc in each ch around; join. (20 sc)\n"
    text += "Rnd 5: Ch 1, sc2tog around; join. (10 sc)\nRnds 6-8: Ch 1, sc in each st around; join. (10 sc)\n"
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    edges = _edges([c for c in courses(fabric, SC) if c.way == "round"])
    assert len({round(upper + lower, 6) for _, upper, lower in edges}) == 1
    assert edges[-1][1] - edges[-1][2] == pytest.approx(25.0)
