"""Every letter that is drawn is in the type that comes with the program, stands in it as wide as was reckoned, and names type that is there."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from typing import Any

from PIL import ImageFont

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.lettering import plain, width_px, wrapped
from loopwright.drawing.palette import WORKED, WRITTEN
from loopwright.drawing.rounds import RoundOptions, round_drawings
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.drawing.schematic.words import inches

NS = "{http://www.w3.org/2000/svg}"
FONTS = sorted(f.name for f in files("loopwright.drawing").joinpath("fonts").iterdir() if f.name.endswith(".ttf"))
NO_LETTER = "\U000f1234"  # for private use: no font of ours has it, so that it shows what stands for a missing one


@cache
def font(name: str) -> Any:
    return ImageFont.truetype(str(files("loopwright.drawing").joinpath("fonts", name)), 64)


@cache
def is_there(name: str, letter: str) -> bool:
    return letter == " " or bytes(font(name).getmask(letter)) != bytes(font(name).getmask(NO_LETTER))


def drawn_texts(design: Any) -> Iterator[tuple[str, str]]:
    """Class and words of every drawing of a design: charts and rounds of its first size, schematics of all."""
    fabric = design.fabrics[0]
    svgs = [c.svg for terms in ("us", "uk") for c in charts(fabric, design.sizes, ChartOptions(terms=terms))]
    svgs += [d.svg for d in schematics(design.fabrics, design.sizes, design.names, SchematicOptions(title=design.title))]
    if len(fabric) < 3000:
        svgs += [d.svg for d in round_drawings(fabric, design.sizes, RoundOptions(title=design.title, budget_s=1.0))]
    for svg in svgs:
        root: Any = ET.fromstring(svg)  # noqa: S314 -- our own file
        yield from ((t.get("class") or "", t.text) for t in root.iter(NS + "text"))


def test_every_letter_is_in_every_font(design):
    letters = set("".join(text for _, text in drawn_texts(design)))
    assert len(letters) > 20
    assert [(name, letter) for name in FONTS for letter in letters if not is_there(name, letter)] == []


def test_letters_of_every_length_in_inches_are_in_every_font():
    letters = {c for eighths in range(400) for c in inches(25.4 * eighths / 8)}
    assert [(name, letter) for name in FONTS for letter in letters if not is_there(name, letter)] == []


def test_a_letter_that_is_not_there_is_found_out():
    assert not is_there(FONTS[0], "\u4e2d")


def test_no_text_comes_out_wider_than_reckoned(design):
    """In the program's own type, each class of text in its weight: so nothing runs into its neighbour."""
    heavy, serif = "AtkinsonHyperlegibleNext_700Bold.ttf", "Besley_700Bold.ttf"
    weights = {"letter": heavy, "title": serif, "count": serif, "name": "Besley_500Medium.ttf", "label": "Besley_500Medium.ttf"}
    for class_, text in drawn_texts(design):
        name = weights.get(class_, "AtkinsonHyperlegibleNext_400Regular.ttf")
        assert font(name).getlength(text) <= width_px(text, 64, heavy="Regular" not in name), (class_, text)


def test_families_that_come_first_are_those_that_come_with_the_program():
    families = {font(name).getname()[0] for name in FONTS}
    for stack in (WRITTEN, WORKED):
        names = [n.strip("'") for n in stack.split(",")]
        assert any(f.startswith(names[0]) for f in families), names[0]
        assert names[-1] in ("sans-serif", "serif"), "whoever has none of them sees the reader's own"


def test_words_are_broken_to_the_room_and_none_is_lost():
    text = "Rounds worked in a spiral, every one marked at its first stitch " * 5
    lines = wrapped(text.strip(), 13, 150)
    assert " ".join(lines) == text.strip()
    assert all(width_px(line, 13) <= 150 for line in lines)
    assert wrapped("unbreakablyverylongwordwithoutanyspace", 13, 20) == ["unbreakablyverylongwordwithoutanyspace"]


def test_plain_leaves_one_line_that_xml_can_hold():
    assert plain(" a\x00b\ud800 \n c\ufffe ") == "ab c"
    assert not re.search(r"[\x00-\x1f]", plain("".join(map(chr, range(32)))))
