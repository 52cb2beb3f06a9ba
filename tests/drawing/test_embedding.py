"""A drawing that carries its letters: those it uses, in the type it names, as bytes that are always the same."""

from __future__ import annotations

import base64
import io
import re
import xml.etree.ElementTree as ET
from typing import Any

from fontTools.ttLib import TTFont

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.embedding import embed_fonts
from loopwright.drawing.schematic import SchematicOptions, schematics

FACE = re.compile(r"@font-face\{font-family:'([^']+)';font-weight:(\d+);src:url\(data:font/woff;base64,([A-Za-z0-9+/=]+)\) format\('woff'\)\}")


def faces(svg: str) -> dict[tuple[str, int], Any]:
    return {(family, int(weight)): TTFont(io.BytesIO(base64.b64decode(data))) for family, weight, data in FACE.findall(svg)}


def test_every_letter_of_every_text_is_in_the_face_of_its_class(design):
    fabric = design.fabrics[0]
    svgs = [c.svg for c in charts(fabric, design.sizes)] + [d.svg for d in schematics(design.fabrics, design.sizes, design.names, SchematicOptions())]
    for svg in map(embed_fonts, svgs):
        found = faces(svg)
        texts = [(t.get("class") or "", set(t.text or "")) for t in ET.fromstring(svg).iter("{http://www.w3.org/2000/svg}text")]  # noqa: S314
        assert texts
        known = {key: set(map(chr, font.getBestCmap())) for key, font in found.items()}
        assert all(letters <= set().union(*known.values()) for _, letters in texts)
        titles = set().union(*(letters for class_, letters in texts if class_ == "title"))
        assert titles <= known.get(("Besley", 700), titles)


def test_the_letters_weigh_little_and_are_the_same_every_time(design):
    plain = charts(design.fabrics[0], design.sizes, ChartOptions())[0].svg
    one = embed_fonts(plain)
    assert one == embed_fonts(plain)
    assert 0 < len(one) - len(plain) < 25_000


def test_the_licence_stays_in_the_letters(design):
    svg = embed_fonts(charts(design.fabrics[0], design.sizes)[0].svg)
    for font in faces(svg).values():
        assert "Open Font License" in font["name"].getDebugName(13)


def test_a_drawing_without_text_stays_as_it_is():
    bare = '<svg xmlns="http://www.w3.org/2000/svg"><style>text{font:13px Besley,serif}</style><path d="M0 0L1 1"/></svg>'
    assert embed_fonts(bare) == bare
