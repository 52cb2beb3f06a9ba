"""Signs beside the stitches: rows that could not be read, own stitches, yarns, where the yarn is cut, which way rounds go."""

from __future__ import annotations

import json
import math
import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, UnreadRow, chart, charts
from loopwright.drawing.chart.numbering import row_label, row_number
from loopwright.drawing.palette import colours
from loopwright.drawing.scene.colours import hexed
from loopwright.drawing.tones import contrast, tone
from loopwright.grading import grade
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.charting import of_charts, palette_of, yarn_names
from tests.drawing.chart.conftest import DESIGNS, NAMES, fabric_of
from tests.drawing.chart.svg_reading import NS, overlaps, symbols

ROWS = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRow 2: Ch 1, sc in each st across, turn.\n"
DISC = "Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n"
UNREAD = """Gauge: 16 dc and 9 rows = 10 cm

Panel
Ch 22.
Row 1 (RS): Dc in 4th ch from hook and in each ch across, turn. (20 dc)
Row 2: Ch 3 (counts as dc), dc in each st across, turn. (20 dc)
Row 3: Widdershins fluff over the gap 3, turn.
Row 4: Ch 3 (counts as dc), dc in each st across, turn. (20 dc)

Cap
Rnd 1: 6 sc in magic ring. (6)
Rnd 2: Frobnicate the glorph. (12)
"""


def elements(svg: str, class_: str) -> list[Any]:
    return [e for e in ET.fromstring(svg).iter() if class_ in (e.get("class") or "").split()]  # noqa: S314 - our own drawing


def test_a_chart_ends_where_a_row_could_not_be_read_with_a_mark_and_a_word(tmp_path: Path) -> None:
    run = [sys.executable, "-m", "loopwright", "draw", "-", "--what", "chart", "--out", str(tmp_path), "--json"]
    done = subprocess.run(run, input=UNREAD, capture_output=True, text=True, check=False)
    files = json.loads(done.stdout)["files"]
    told = [f["description"] for f in files]
    svgs = [Path(f["path"]).read_text(encoding="utf-8") for f in files]
    assert [len(elements(svg, "torn")) for svg in svgs] == [1, 0, 1]
    assert "Row 3 could not be read: 'Widdershins fluff over the gap 3, turn'." in told[0]
    assert "The chart is drawn up to there." in told[0]
    assert "begins after that" in told[1]
    assert ">Row 3 could not be read<" in svgs[0]
    assert "Rnd 2 could not be read" in told[2]
    assert all(overlaps(svg) == [] for svg in svgs)


def test_the_torn_edge_lies_beyond_every_symbol(weave):
    for text in (ROWS, DISC):
        fabric, sizes = weave(text)
        last = fabric.rows[-1]
        drawn = chart(fabric, sizes, ChartOptions(unread=(UnreadRow(last.section, "Row 3", "Row 3: fluff", last.item + 1),)))
        (edge,) = elements(drawn.svg, "torn")
        points = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) ?(-?[\d.]+)", edge.get("d"))]
        inked = [p for s in symbols(drawn.svg) for line in s.lines for p in line]
        assert min(math.dist(p, q) for p in points for q in inked) > 4.0
        assert elements(drawn.svg, "cut") == [], "a torn chart does not end"


def test_rows_of_other_parts_tear_no_chart(weave):
    fabric, sizes = weave(ROWS)
    assert elements(chart(fabric, sizes, ChartOptions(unread=(UnreadRow("Strap", "Row 1", "fluff", 99),))).svg, "torn") == []


def test_a_stitch_of_the_pattern_s_own_is_explained_in_its_words(weave):
    fabric, sizes = weave(ROWS)
    fabric.kinds[fabric.kinds.index("sc")] = "reed knot"
    drawn = chart(fabric, sizes, ChartOptions(special={"Reed knot": "yo, pull up a loop, ch 3, yo and through both loops"}))
    assert ">1: yo, pull up a loop, ch 3, yo and through both loops<" in drawn.svg
    assert "1: yo, pull up a loop" in drawn.description


YARNS = "Yarn: DK, wool, in A (sand), B (reed), C (fog)\nWith A, ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n" + "".join(
    f"Row {n}: With {yarn}, ch 1, sc in each st across, turn.\n" for n, yarn in ((2, "B"), (3, "C"))
)


def test_yarns_differ_by_line_and_letter_not_by_colour_alone(weave):
    fabric, sizes = weave(YARNS)
    svg = chart(fabric, sizes, ChartOptions(grids=False)).svg
    used = {s for s in "ABCDEF" if elements(svg, f"y{s}")}
    assert used == {"A", "B", "C"}
    style = " ".join(re.findall(r"<style>(.*?)</style>", svg, re.DOTALL)).split("@media")[0]
    lines = [re.findall(rf"path\.y{s}\{{((?:stroke-dasharray|stroke-width)[^}}]*)", style) for s in "ABCDEF"]
    assert len({str(line) for line in lines}) == 6
    assert {p.get("data-yarn") for p in ET.fromstring(svg).iter(f"{NS}path") if p.get("data-yarn")} == used  # noqa: S314
    assert {t.text for t in ET.fromstring(svg).iter(f"{NS}text") if t.get("class") == "num mid"} == {"1 RS A", "2 WS B", "3 RS C"}  # noqa: S314
    assert "stroke:#000" in svg.split("@media print")[1]


def test_a_chart_of_one_yarn_has_its_two_line_colours(weave):
    fabric, sizes = weave(ROWS)
    svg = chart(fabric, sizes).svg
    assert 'class="two"' in svg
    assert not elements(svg, "yA")


def test_the_yarn_is_cut_at_the_end_of_each_piece_and_nowhere_else():
    for name in (n for n in NAMES if not n.startswith("pattern ")):
        fabric, sizes = fabric_of(name)
        drawn = [c for c in charts(fabric, sizes, ChartOptions(whole=True, grids=False)) if c.part != "assembly"]
        cut = {fabric.rows[c.rows[1]].piece for c in drawn if len(elements(c.svg, "cut")) == 2}  # one in the chart, one in the key
        assert cut == {r.piece for r in fabric.rows if any(fabric.part_of(s) != "assumed" for s in range(r.start, r.end))}
        assert all(len(elements(c.svg, "cut")) in (0, 2) for c in drawn)


@pytest.mark.parametrize("left", [False, True])
def test_an_arrow_shows_which_way_rounds_go(left, weave):
    fabric, sizes = weave(DISC)
    svg = chart(fabric, sizes, ChartOptions(left_handed=left)).svg
    (ring,) = [e for e in elements(svg, "ring") if e.get("r") != "9"]
    middle = float(ring.get("cx")), float(ring.get("cy"))
    (arrow,) = elements(svg, "arrow")
    places = [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) ?(-?[\d.]+)", arrow.get("d").split("M")[1])]
    start, end = (math.atan2(middle[1] - y, x - middle[0]) for x, y in (places[0], places[-1]))
    turn = (end - start + math.pi) % (2 * math.pi) - math.pi
    assert (turn > 0) == (not left), "counter-clockwise for the right hand"


def test_a_spike_reaches_a_row_further_down(weave):
    fabric, sizes = weave(ROWS + "Row 3: Ch 1, *sc in next 4 sts, spike sc in next st; rep from * across.\n")
    found = symbols(chart(fabric, sizes).svg)
    spikes = [s for s in found if s.kind == "spike"]
    assert len(spikes) == 2
    low = max(p[1] for s in found if s.row == 2 for line in s.lines for p in line)
    assert all(max(p[1] for line in s.lines for p in line) > low for s in spikes)


def test_the_third_loop_has_its_own_mark(weave):
    fabric, sizes = weave("Ch 8.\nRow 1: Hdc in 3rd ch from hook and in each ch across, turn.\nRow 2: Ch 1, hdc in 3rd loop of each st across.\n")
    assert "third" in {fabric.where(s) for s in range(len(fabric))}
    assert "third loop" in chart(fabric, sizes).svg


def test_where_yarn_is_joined_an_open_triangle_stands_beside_the_first_stitch():
    """In the words of the row, found by the workshop; the chain that the yarn is joined for is nearest to it; the key says what it is."""
    text = (DESIGNS / "tideline-blanket.txt").read_text(encoding="utf-8")
    graded = grade(read(Source.of(text)), work)
    assert graded.report is not None
    options = of_charts(graded.document, graded.report, 0)
    sizes, fabric = stitch_sizes(graded.document).sizes, graded.report.fabrics[0]
    assert isinstance(sizes, StitchSizes)
    assert fabric is not None
    edges = charts(fabric, sizes, replace(options, whole=True))[-1]
    found = re.findall(r'<path class="cut joined" d="M([\d.-]+) ([\d.-]+)L', edges.svg)
    assert len(found) == 2  # in the chart, and in its key
    assert "join yarn" in edges.svg
    x, y = (float(v) for v in found[0])
    drawn = symbols(edges.svg)
    near = min(drawn, key=lambda s: math.dist(s.foot, (x, y)))
    assert near.row == min(s.row for s in drawn)
    assert near.stitch - min(s.stitch for s in drawn) <= 1


def test_no_sign_stands_where_no_words_join_yarn(weave):
    fabric, sizes = weave("Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across. (6 sc)\n")
    assert not any("joined" in path for path in re.findall(r"<path[^>]*>", charts(fabric, sizes)[0].svg))
    assert "join yarn" not in charts(fabric, sizes)[0].svg


def test_posts_and_loops_of_wrong_side_rows_are_told_as_they_are_seen(weave):
    text = (
        "Ch 12.\nRow 1 (RS): Dc in 4th ch from hook and in each ch across, turn. (10 dc)\n"
        "Row 2: Ch 2 (does not count as a st), {} in each st across, turn. (10 sts)\n"
    )
    for made, seen, worked in (("fpdc", "bpdc: back post double crochet", "fpdc"), ("bpdc", "fpdc: front post double crochet", "bpdc")):
        fabric, sizes = weave(text.replace("{}", made))
        drawn = chart(fabric, sizes, ChartOptions())
        told = " ".join("".join(e.itertext()) for e in ET.fromstring(drawn.svg).iter(f"{NS}text"))  # noqa: S314
        assert seen in told
        assert f"on wrong-side rows: {worked}" in told
        assert "front and back change places" in told
        assert "front and back change places" in drawn.description
    fabric, sizes = weave(text.replace("{}", "dc"))
    assert "change places" not in chart(fabric, sizes, ChartOptions()).svg


def test_rows_without_a_label_are_numbered_on_from_the_row_before(weave):
    """What is worked even for three rounds has three numbers more, on its tape, in words, and in how rounds alternate."""
    text = "A hat\n\nHat\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\nWork even in sc for 3 rnds. (12 sc)\n"
    fabric, sizes = weave(text + "Next rnd: Sc in each st around. (12 sc)\n\nBrim\nWork even in sc for 2 rnds. (12 sc)\n")
    known = [(r.section, row_number(fabric, i), row_label(fabric, i)) for i, r in enumerate(fabric.rows)]
    assert [k for k in known if k[0] == "Hat"] == [
        ("Hat", "1", "Rnd 1"), ("Hat", "2", "Rnd 2"), ("Hat", "3", "Rnd 3"), ("Hat", "4", "Rnd 4"), ("Hat", "5", "Rnd 5"), ("Hat", "6", "Next rnd"),
    ]
    assert [k for k in known if k[0] == "Brim"] == [("Brim", "1", "Rnd 1"), ("Brim", "2", "Rnd 2")]
    body = next(d for d in charts(fabric, sizes) if d.rows[1] >= 3)
    tapes = ["".join(e.itertext()) for e in elements(body.svg, "num")]
    assert len(set(tapes)) == len(tapes)
    assert "4" in tapes


def test_yarns_that_are_named_have_their_tones_in_charts_and_fabric_alike(weave):
    fabric, sizes = weave(YARNS)
    drawn = chart(fabric, sizes, ChartOptions(grids=False, yarns={"A": "peat", "B": "pale cream"}))
    own = next(re.finditer(r"k(?:[A-F][0-9a-f]{6})+", drawn.svg))[0]
    assert own.startswith("kA" + (tone("peat") or "")[1:].lower())
    told = [t.text for t in ET.fromstring(drawn.svg).iter(f"{NS}text")]  # noqa: S314
    assert {"A: peat", "B: pale cream", "yarn C"} <= set(told)
    light = drawn.svg.split("@media")[0]
    line = re.findall(r"k\w+ path\.yB\{stroke:(#\w{6})", light + drawn.svg)[0]
    assert contrast(line, colours("light")["sheet"]) >= 3  # cream alone would not be seen
    document = read(Source.of("Yarn: DK, wool, in A (peat), B (cream) and C (nothing known)\n\n" + YARNS))
    assert yarn_names(document) == {"A": "peat", "B": "cream", "C": "nothing known"}
    assert palette_of(document) == {"A": hexed(tone("peat") or ""), "B": hexed(tone("cream") or "")}


def test_mirrored_charts_say_so(weave):
    for text in (ROWS, DISC, YARNS):
        fabric, sizes = weave(text)
        assert "Mirrored for the left hand." in chart(fabric, sizes, ChartOptions(left_handed=True)).notes
        assert "Mirrored for the left hand." not in chart(fabric, sizes).notes


BUMPS = (
    "Ch 10.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (9 sc)\n"
    "Row 2: Ch 1, sc in next 4 sts, {} in next st, sc in next 4 sts, turn.\nRow 3: Ch 1, sc in each st across, turn. (9 sc)\n"
)
CROSSED = (
    "Ch 10.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (9 sc)\n"
    "Row 2: Ch 3 (counts as dc), *sk next st, dc in next st, dc in skipped st; rep from * across, turn. (9 dc)\n"
    "Row 3: Ch 1, sc in each st across, turn. (9 sc)\n"
)


@pytest.mark.parametrize("text", [BUMPS.replace("{}", kind) for kind in ("bobble", "popcorn", "puff st")] + [CROSSED])
def test_rows_stay_level_over_bobbles_and_under_crossed_stitches(weave, text):
    fabric, sizes = weave(text)
    found = symbols(chart(fabric, sizes).svg)
    for row in {s.row for s in found if s.kind == "sc"}:
        feet = [s.foot[1] for s in found if s.row == row and s.kind == "sc"]
        assert max(feet) - min(feet) < 1.0
    chains = [s.foot[1] for s in found if s.kind == "ch" and s.row == 0][:-1]  # the last one turns
    assert max(chains) - min(chains) < 1.0


def test_what_the_heading_says_of_a_known_stitch_stands_in_the_key(weave):
    text = "Special stitches: bobble = dc5tog in one st\n\n" + BUMPS.replace("{}", "bobble")
    document = read(Source.of(text))
    fabric, sizes = weave(text)
    drawn = chart(fabric, sizes, replace(ChartOptions(), special=of_charts(document, None, 0).special))
    assert "bobble: dc5tog in one st" in [t.text for t in ET.fromstring(drawn.svg).iter(f"{NS}text")]  # noqa: S314
