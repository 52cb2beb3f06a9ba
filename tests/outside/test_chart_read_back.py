"""Charts held against sources outside: the SVG read by general libraries, counts recomputed from the SVG alone, WCAG contrast.

Sources: SVG 2 (https://www.w3.org/TR/SVG2/); contrast ratio of WCAG 2.2 (https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio: 4.5 for text,
3 for lines); shapes of the symbols as told at https://dailyhandmade.com/?p=2036 and
https://mrscrochetworld.com/blogs/crochet-blog/how-to-read-crochet-symbol-charts (T with one slash for each yarn over of a taller stitch),
https://www.thecraftingplace.co.uk/blogs/news/you-must-learn-how-to-read-crochet-charts (rows begin where their number stands).
"""

import re
import tomllib
import xml.etree.ElementTree as ET
from collections import Counter
from importlib.resources import files
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from tests.drawing.chart.conftest import NAMES, fabric_of
from tests.drawing.chart.svg_reading import NS, crossing, symbols

STEMS = ("sc", "hdc", "dc", "tr", "fpdc", "bpdc")
LEAST_STEM = 12.0
SLASHES = {"hdc": 0, "dc": 1, "tr": 2, "dtr": 3, "trtr": 4}


@pytest.mark.parametrize("name", NAMES)
def test_the_counts_of_the_words_come_out_of_the_picture(name: str) -> None:
    """Stitches of each kind in each row, counted in the SVG; a start chain that counts is one stitch less there and a chain more."""
    fabric, sizes = fabric_of(name)
    found: Counter[tuple[int, str]] = Counter()
    for c in charts(fabric, sizes, ChartOptions(whole=True)):
        found.update((s.row, s.kind) for s in symbols(c.svg))
    for index, row in enumerate(fabric.rows):
        made = range(row.start, row.end)
        worked = Counter(fabric.name(s) for s in made if fabric.part_of(s) != "assumed")
        assert {k: n for (r, k), n in found.items() if r == index} == dict(worked)


@pytest.mark.parametrize("name", [n for n in NAMES if n.startswith("pattern ")])
def test_symbols_stand_in_the_order_of_work(name: str) -> None:
    """Read from where the number stands: right to left on the right side, left to right on the wrong side."""
    fabric, sizes = fabric_of(name)
    seen = 0
    for c in charts(fabric, sizes, ChartOptions(whole=True)):
        rows: dict[int, list[float]] = {}
        for s in symbols(c.svg):
            foot, top = s.lines[0]  # of a stitch with a stem its first stroke goes from the foot to the top
            if s.kind in STEMS and abs(top[1] - foot[1]) > LEAST_STEM:
                rows.setdefault(s.row, []).append(top[0])
        for index, xs in rows.items():
            way = -1 if fabric.rows[index].right_side else 1
            ordered = sorted(range(len(xs)), key=lambda k: way * xs[k])
            assert sum(abs(a - b) for a, b in enumerate(ordered)) <= 2, (index, xs)
            seen += len(xs)
    assert seen


def test_taller_stitches_have_a_slash_more() -> None:
    """Strokes that cross the stem, bar apart: none for hdc, one for dc, two for tr."""
    table = tomllib.loads(files("loopwright.drawing.chart").joinpath("symbols.toml").read_text(encoding="utf-8"))
    paths = {e["key"]: e["path"] for e in table["symbol"]}
    stem = ((0.0, 0.01), (0.0, 0.99))
    for kind, many in SLASHES.items():
        strokes = [tuple(float(v) for v in m) for m in re.findall(r"M(\S+) (\S+?)L(\S+) ([\d.-]+)", paths[kind])]
        crossed = [s for s in strokes if s[0] and crossing(stem, ((s[0], s[1]), (s[2], s[3])))]
        assert len(crossed) == many, kind
        assert any(s[1] == s[3] == 1.0 for s in strokes), "a bar on top"
    heights = {e["key"]: e["height"] for e in table["symbol"]}
    assert sorted(SLASHES, key=heights.__getitem__) == list(SLASHES)


def test_every_symbol_says_where_it_is_from() -> None:
    table = tomllib.loads(files("loopwright.drawing.chart").joinpath("symbols.toml").read_text(encoding="utf-8"))
    for entry in (*table["symbol"], *table["mark"]):
        source = table["sources"][entry["source"]]
        assert "https://" in source or entry.get("weak"), f"{entry['key']}: what no page tells is marked as weak"


def _light(colour: str) -> float:
    """Relative luminance as WCAG 2.2 defines it."""
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    r, g, b = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


def _ratio(one: str, two: str) -> float:
    low, high = sorted((_light(one), _light(two)))
    return (high + 0.05) / (low + 0.05)


def test_the_formula_gives_the_published_ends() -> None:
    """Black on white is 21 to 1."""
    assert _ratio("#000000", "#FFFFFF") == pytest.approx(21.0)


@pytest.mark.parametrize("theme", ["light", "dark"])
def test_lines_and_letters_stand_out(theme: str) -> None:
    p: Any = tomllib.loads(files("loopwright.drawing.chart").joinpath("palette.toml").read_text(encoding="utf-8"))[theme]
    assert all(_ratio(p[text], p["sheet"]) >= 4.5 for text in ("ink", "ink2", "creek"))
    assert _ratio(p["tapeink"], p["tape"]) >= 4.5
    assert all(_ratio(line, p["sheet"]) >= 3.0 for line in (p["edge"], p["tapeedge"], *p["yarns"]))


def test_the_colours_of_the_palette_are_those_of_the_picture() -> None:
    p: Any = tomllib.loads(files("loopwright.drawing.chart").joinpath("palette.toml").read_text(encoding="utf-8"))
    root: Any = ET.fromstring(charts(*fabric_of("pattern shell"))[0].svg)  # noqa: S314 - our own drawing
    style = root.find(f"{NS}style").text
    for theme in ("light", "dark"):
        assert all(p[theme][name] in style for name in ("sheet", "ink", "creek", "edge", "tape"))
