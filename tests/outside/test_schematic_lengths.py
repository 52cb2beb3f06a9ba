"""Schematics against what stands outside them: the measure command's own output, read by a general XML library, and the formula for contrast.

Contrast: W3C, Web Content Accessibility Guidelines 2.2, success criteria 1.4.3 (text 4.5 : 1) and 1.4.11 (lines 3 : 1), relative luminance as
defined there.
"""

from __future__ import annotations

import json
import math
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path
from typing import Any

import pytest

from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.drawing.schematic.look import style
from loopwright.grading import grade
from loopwright.grading.gauge import stitch_sizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGNS = Path(__file__).parents[2] / "designs"
NS = "{http://www.w3.org/2000/svg}"


def parsed(svg: str) -> Any:
    return ET.fromstring(svg)  # noqa: S314 -- our own file


@pytest.mark.parametrize("name", ["samphire-beanie", "sandpiper-mitts", "glasswort-bag", "thrift-shawl", "plover-cardigan"])
def test_lengths_on_paper_are_what_the_measure_command_prints(name):
    path = DESIGNS / f"{name}.txt"
    done = subprocess.run([sys.executable, "-m", "loopwright", "measure", str(path), "--json"], capture_output=True, text=True, check=True)
    told = json.loads(done.stdout)["sizes"]
    graded = grade(read(Source.of(path.read_text(encoding="utf-8")), None), work, None, None)
    sizes = stitch_sizes(graded.document, None).sizes
    assert graded.report is not None
    assert sizes is not None
    for number, size in enumerate(told):
        printed = [d["value_mm"] for d in size["dimensions"]]
        sheets = schematics(graded.report.fabrics, sizes, graded.document.sizes, SchematicOptions(only=number))
        for scale, share, px in (line for sheet in sheets for line in lines(sheet.svg)):
            assert any(abs(px / scale / share - mm) <= 0.05 / scale / share + 0.06 for mm in printed)


def lines(svg):
    for figure in parsed(svg).iter(NS + "g"):
        for path in figure.findall(NS + "path"):
            if figure.get("data-scale") and path.get("data-mm"):
                a, b = (tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", path.get("d")))
                yield float(figure.get("data-scale")), float(path.get("data-share")), math.dist(a, b)


def luminance(colour):
    def linear(c):
        return c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(a, b):
    light, dark = sorted((luminance(a), luminance(b)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


@pytest.mark.parametrize("dark", [False, True])
def test_contrast_of_text_and_lines(dark):
    light_css, dark_css = style("s").split("@media screen", 1)
    rules = dict(re.findall(r"\.s \.(\w+)\{(?:fill|stroke):(#[0-9A-F]{6})", dark_css if dark else light_css))
    for name in ("text", "soft", "name", "letter"):
        assert contrast(rules[name], rules["paper"]) >= 4.5
    for name in ("fold", "join", "round", "work", "head", "span", "reach"):
        assert contrast(rules[name], rules["paper"]) >= 3.0
