"""Charts held against what stands outside them: symbols counted in the SVG against published and printed counts; WCAG contrast.

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
from typing import Any, Literal

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.palette import colours
from loopwright.model.fabric import Fabric
from loopwright.trade.patterns import pattern, patterns
from tests.drawing.chart.conftest import NAMES, fabric_of, report_of
from tests.drawing.chart.svg_reading import NS, crossing, symbols

STEMS = ("sc", "hdc", "dc", "tr", "fpdc", "bpdc")
LEAST_STEM = 12.0
SLASHES = {"hdc": 0, "dc": 1, "tr": 2, "dtr": 3, "trtr": 4}


def seen(name: str) -> tuple[Fabric, Counter[tuple[int, str]]]:
    """The fabric, and symbols of each kind in each row, counted in the SVG of all its charts."""
    fabric, sizes = fabric_of(name)
    found: Counter[tuple[int, str]] = Counter()
    for c in charts(fabric, sizes, ChartOptions(whole=True, grids=False)):
        found.update((s.row, s.kind) for s in symbols(c.svg))
    return fabric, found


@pytest.mark.parametrize("name", NAMES)
def test_the_picture_holds_as_many_symbols_of_each_kind_as_the_fabric_has_stitches(name: str) -> None:
    fabric, found = seen(name)
    for index, row in enumerate(fabric.rows):
        worked = Counter(fabric.name(s) for s in range(row.start, row.end) if fabric.part_of(s) != "assumed")
        assert {k: n for (r, k), n in found.items() if r == index} == dict(worked)


def total(fabric: Fabric, found: Counter[tuple[int, str]], index: int) -> int:
    """Symbols of a row other than chains and slip stitches that join or move, and one for each start chain that stands for a stitch.

    The symbols are the picture's; which chains stand for a stitch and which slip stitches only join is the fabric's word.
    """
    row = fabric.rows[index]
    made = range(row.start, row.end)
    slips = sum(fabric.part_of(s) in ("join", "move", "picot") and fabric.name(s) != "ch" for s in made)
    stand = sum(fabric.part_of(s) == "counts" for s in made) + len(row.borrowed)
    return sum(n for (r, k), n in found.items() if r == index and k != "ch") - slips + stand


@pytest.mark.parametrize("key", [p.key for p in patterns() if p.noun == "sts"])
def test_counts_read_from_the_picture_are_those_published_with_the_stitch_pattern(key: str) -> None:
    """Counts of the table of stitch patterns, each with the page it is from; that one row counts no start chain is the page's own way."""
    fabric, found = seen(f"pattern {key}")
    published: Any = pattern(key)
    got = [total(fabric, found, i) for i in range(1, len(fabric.rows))]
    wanted = [r.at(3) for r in published.rows]
    if key == "interlocking-shell":
        wanted[1] += 1  # its row of decreases is published without the chain that it begins with
    assert got == wanted


UNLIKE = {
    ("avocet-bonnet", "Front", "Row 1"): "counts V-stitches",
    ("plover-cardigan", "Body", "Row 1"): "counts chains over skipped stitches",
    ("plover-cardigan", "Bands", "Row 3"): "counts chains over skipped stitches",
    ("sandpiper-mitts", "Hand", "Next rnd"): "counts chains over skipped stitches",
    ("sea-lavender-blanket", "Joined squares (make 62 (107, 179))", "Rnd 4"): "does not count slip stitches into the other square",
}


def was_worked(fabric: Fabric, index: int) -> bool:
    row = fabric.rows[index]
    return any(fabric.part_of(s) != "assumed" for s in range(row.start, row.end))


def test_counts_read_from_the_picture_are_those_printed_in_the_designs() -> None:
    """Every row of a first size that one sentence tells and that has its count printed behind it; rows that count otherwise are listed."""
    agree, unlike = 0, set()
    for name in (n for n in NAMES if not n.startswith("pattern ")):
        fabric, found = seen(name)
        told = report_of(name).rows
        spans = Counter((r.span.start, r.span.end) for r in told)
        for r in (r for r in told if r.printed and r.printed[0] is not None and spans[r.span.start, r.span.end] == 1):
            rows = [i for i, row in enumerate(fabric.rows) if r.span.start <= fabric.origin[row.start] < r.span.end and was_worked(fabric, i)]
            if len(rows) == 1 and total(fabric, found, rows[0]) == r.printed[0]:
                agree += 1
            elif len(rows) == 1:
                unlike.add((name, r.section, r.label))
    assert unlike == set(UNLIKE)
    assert agree > 80


@pytest.mark.parametrize("name", [n for n in NAMES if n.startswith("pattern ")])
def test_symbols_stand_in_the_order_of_work(name: str) -> None:
    """Read from where the number stands: right to left on the right side, left to right on the wrong side."""
    fabric, sizes = fabric_of(name)
    seen = 0
    for c in charts(fabric, sizes, ChartOptions(whole=True, grids=False)):
        rows: dict[int, list[float]] = {}
        for s in symbols(c.svg):
            foot, top = s.lines[0]  # of a stitch with a stem its first stroke goes from the foot to the top
            if s.kind in STEMS and abs(top[1] - foot[1]) > LEAST_STEM:
                rows.setdefault(s.row, []).append(top[0])
        for index, xs in rows.items():
            way = -1 if fabric.rows[index].right_side else 1
            ordered = sorted(range(len(xs)), key=lambda k: way * xs[k])
            assert ordered == sorted(ordered), (index, xs)
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
def test_lines_and_letters_stand_out(theme: Literal["light", "dark"]) -> None:
    p = colours(theme)
    assert all(_ratio(p[text], p["sheet"]) >= 4.5 for text in ("ink", "ink2", "creek"))
    assert _ratio(p["tapeink"], p["tape"]) >= 4.5
    assert all(_ratio(line, p["sheet"]) >= 3.0 for line in (p["edge"], p["tapeedge"], p["oldedge"], p["newedge"], *p["yarns"]))


def test_the_picture_has_the_colours_of_the_palette_and_no_others() -> None:
    root: Any = ET.fromstring(charts(*fabric_of("pattern shell"))[0].svg)  # noqa: S314 - our own drawing
    style = root.find(f"{NS}style").text.split("@media print")[0]
    known = {c for theme in ("light", "dark") for v in colours(theme).values() for c in ([v] if isinstance(v, str) else v)}
    used = set(re.findall(r"#[0-9A-F]{6}", style))
    assert used <= known
    assert {colours("light")["ink"], colours("dark")["ink"], colours("light")["sheet"], colours("dark")["sheet"]} <= used
