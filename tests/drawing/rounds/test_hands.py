"""Pictures of rounds for the left hand, for one black, and for cards of a film; how large they get."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import numpy as np
import pytest

from loopwright.drawing.rounds import RoundOptions, round_drawings
from loopwright.drawing.rounds.stitches import SIDE_PX
from loopwright.grading.gauge import StitchSizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

NS = "{http://www.w3.org/2000/svg}"
SC = StitchSizes(5.0, 5.0, "sc")
DISC = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)\n"
HEAVIEST = 150_000


@pytest.fixture(scope="module")
def disc():
    fabric = work(read(Source.of(DISC), "us")).fabrics[0]
    assert fabric is not None
    return fabric


def places(svg: str) -> np.ndarray:
    """Corners of all faces, (n, 2), sorted."""
    found = [p.split() for d in re.findall(r' d="([^"]+)"', svg) for p in re.findall(r"M([-\d ]+)", d)]
    corners = np.array([float(v) for p in found for v in p]).reshape(-1, 2)
    return corners[np.lexsort((corners[:, 1], corners[:, 0]))]


def test_the_left_hands_picture_is_the_exact_reflection_and_its_words_are_the_same(disc):
    right, left = (round_drawings(disc, SC, RoundOptions(left_handed=hand))[-1] for hand in (False, True))
    reflected = places(right.svg) * (-1, 1) + (10 * SIDE_PX, 0)
    reflected = reflected[np.lexsort((reflected[:, 1], reflected[:, 0]))]
    assert np.abs(reflected - places(left.svg)).max() <= 1  # a tenth of a pixel
    words = [[t.text for t in ET.fromstring(d.svg).iter(NS + "text")] for d in (right, left)]  # noqa: S314 -- our own file
    assert words[0] == words[1]
    assert left.description.endswith("Mirrored for the left hand.")
    assert left.stitches == right.stitches


def test_a_card_of_a_film_has_no_word_and_no_ground(disc):
    for drawing in round_drawings(disc, SC, RoundOptions(plain=True)):
        root = ET.fromstring(drawing.svg)  # noqa: S314 -- our own file
        assert not list(root.iter(NS + "text"))
        assert not [r for r in root.iter(NS + "rect") if r.get("class") == "paper"]
        assert root.get("viewBox") == f"0 0 {SIDE_PX:g} {SIDE_PX:g}"
        assert drawing.description in "".join(root.itertext())


def test_in_one_black_the_new_round_is_black_and_the_old_ones_are_white(disc):
    drawing = round_drawings(disc, SC, RoundOptions(one_black=True))[-1]
    last = {}
    for names, rule in re.findall(r"\.lw-round \.([\w.]+)\{([^}]*)\}", drawing.svg):
        for what, value in re.findall(r"(fill|stroke):([^;}]+)", rule):
            last[names, what] = value
    assert {last[f"new.t{i}", "fill"] for i in range(4)} == {"#12262C"}
    assert {last[f"old.t{i}", "fill"] for i in range(4)} == {"#fff"}
    assert "prefers-color-scheme" not in drawing.svg
    assert "@media print" in round_drawings(disc, SC)[-1].svg


@pytest.mark.parametrize("name", ["bulrush-hat", "thrift-shawl", "glasswort-bag"])
def test_a_picture_stays_light_however_long_the_pattern(worked, name):
    design = worked(name)
    found = round_drawings(design.fabrics[-1], design.sizes, RoundOptions(budget_s=5))
    assert len(found) > 30
    assert max(len(d.svg) for d in found) < HEAVIEST
