"""Pieces drawn as squares: read back from the picture alone, square by square, and compared with the fabric and the words."""

import re
import xml.etree.ElementTree as ET
from collections import Counter
from typing import Any

import pytest

from loopwright.drawing.chart import ChartOptions, chart, charts
from loopwright.drawing.chart.grid_style import GREYS, LETTER_PX, TEXT_PX, on, strokes
from loopwright.drawing.palette import colours
from loopwright.drawing.tones import contrast
from loopwright.grading.gauge import StitchSizes
from tests.drawing.chart.conftest import fabric_of
from tests.drawing.chart.svg_reading import NS

PHONE_PX, SMALLEST_PX = 360, 9.0
FILET = (
    "Turning chain: ch 3 counts as dc\nCh 18.\nRow 1 (RS): Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (16 dc)\n"
    "Row 2: Ch 3 (counts as dc), 1 bl, 2 sps, 2 bls, turn.\nRow 3: Ch 3 (counts as dc), 1 sp, 3 bls, 1 sp, turn.\nRow 4: Ch 3 (counts as dc), 5 bls.\n"
)
COLOUR = (
    "Ch 13.\nRow 1 (RS): With A, sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"
    "Row 2: Ch 1, with A, sc in each of next 3 sts, with B, sc in each of next 4 sts, with A, sc in each st across, turn. (12 sc)\n"
    "Row 3: Ch 1, with B, sc in each of next 2 sts, with C, sc in each of next 4 sts, with A, sc in each st across, turn. (12 sc)\n"
)
BLOCKS = (
    "Row 1 (RS): With A, ch 6, dc in 4th ch from hook and in next 2 ch, turn.\n"
    "Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of next block, ch 3, 3 dc in same sp, turn.\n"
    "Row 3: With B, ch 6, dc in 4th ch from hook and in next 2 ch, *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * once, turn.\n"
    "Row 4: Ch 1, sl st in next 3 dc, sl st in ch-3 sp, *ch 3, 3 dc in same sp, sl st in ch-3 sp of next block; rep from * across, turn.\n"
)


def squares(svg) -> list[tuple[int, float, float, str, int, str]]:
    """Every square in the order of making: row, x, y, what, stitch, class; runs taken apart again as their data says."""
    found = []
    for group in ET.fromstring(svg).iter(f"{NS}g"):  # noqa: S314 - our own drawing
        for r in group.iter(f"{NS}rect") if "data-row" in group.attrib else ():
            many, step = int(r.get("data-cells", 1)), int(r.get("data-step", 0))
            wide = float(r.attrib["width"]) / many
            for k in range(many):
                at = many - 1 - k if _from_right(group, svg) else k
                x, stitch = float(r.attrib["x"]) + at * wide, int(r.attrib["data-stitch"]) + k * step
                found.append((int(group.attrib["data-row"]), x, float(r.attrib["y"]), r.attrib["data-what"], stitch, r.attrib["class"]))
    return found


def _from_right(group, svg):
    return (group.attrib["data-side"] == "RS") != ("Row 1 (RS), read left" in svg)


def said(description):
    """What stands in each row by its words: [(what, many), …]."""
    rows = re.findall(r"^R(?:ow|nd) \d+[^:]*read [a-z ]+: ([^.(]+)", description, re.MULTILINE)
    return [[(w.removesuffix("s"), int(n)) for n, w in re.findall(r"(\d+) (\w+)", row)] for row in rows]


def runs(found):
    rows: dict[int, list[list[Any]]] = {}
    for row, _, _, what, _, _ in found:
        own = rows.setdefault(row, [])
        if own and own[-1][0] == what:
            own[-1][1] += 1
        else:
            own.append([what, 1])
    return [[(what, n) for what, n in own] for own in rows.values()]


@pytest.mark.parametrize(("text", "part"), [(FILET, "filet"), (COLOUR, "colour"), (BLOCKS, "corner")])
@pytest.mark.parametrize("left_handed", [False, True])
def test_words_and_picture_say_the_same_row_by_row(weave, text, part, left_handed):
    fabric, sizes = weave(text)
    drawn = chart(fabric, sizes, ChartOptions(left_handed=left_handed))
    assert drawn.part == part
    assert said(drawn.description) == runs(squares(drawn.svg))


def test_filet_squares_are_the_meshes_that_the_words_tell(weave):
    drawn = chart(*weave(FILET))
    assert said(drawn.description) == [
        [("block", 5)], [("block", 1), ("space", 2), ("block", 2)], [("space", 1), ("block", 3), ("space", 1)], [("block", 5)],
    ]  # fmt: skip
    assert "Drawn as a filet grid." in drawn.notes[0]
    xs = [x for row, x, _, what, _, _ in squares(drawn.svg) if row == 2 and what == "block"]  # a wrong-side row begins at the left
    assert sorted(xs) == xs
    assert xs[1] - xs[0] == pytest.approx(3 * (xs[2] - xs[1]))


def test_every_stitch_of_a_colour_grid_has_the_square_of_its_colour(weave):
    fabric, sizes = weave(COLOUR)
    found = squares(chart(fabric, sizes).svg)
    assert [s for *_, s, _ in found] == [s for s in range(13, len(fabric)) if fabric.name(s) == "sc"]
    assert all(fabric.colours[fabric.colour[s]] == what for _, _, _, what, s, _ in found)
    above = {(round(x), row): s for row, x, _, _, s, _ in found}
    for (x, row), stitch in above.items():
        assert row == 1 or fabric.into[stitch] == above[x, row - 1], "a square stands over the stitch it was worked into"


def test_squares_have_the_proportions_of_the_gauge(weave):
    fabric, _ = weave(COLOUR)
    rect = re.search(r'width="([\d.]+)" height="([\d.]+)" data-stitch', chart(fabric, StitchSizes(5.0, 4.0)).svg)
    assert rect is not None
    assert float(rect[1]) / float(rect[2]) == pytest.approx(5 / 4, abs=0.02)


def test_blocks_from_corner_to_corner_stand_beside_those_they_are_worked_into(weave):
    fabric, sizes = weave(BLOCKS)
    found = squares(chart(fabric, sizes).svg)
    assert Counter(row for row, *_ in found) == {1: 1, 2: 2, 3: 3, 4: 2}
    corner = found[0]
    wide = max(x for _, x, *_ in found) - corner[1]
    assert wide == 0
    assert corner[2] == max(y for _, _, y, *_ in found), "row 1 lies at the lower right"
    assert len({(x, y) for _, x, y, *_ in found}) == len(found)
    diagonals = {row: {round((x - corner[1]) / 18 + (y - corner[2]) / 18) for r, x, y, *_ in found if r == row} for row in range(1, 5)}
    assert diagonals == {1: {0}, 2: {-1}, 3: {-2}, 4: {-3}}


@pytest.mark.parametrize("text", [FILET, COLOUR, BLOCKS])
def test_left_handed_grids_are_an_exact_mirror_with_upright_text(weave, text):
    fabric, sizes = weave(text)
    right, left = (chart(fabric, sizes, ChartOptions(left_handed=hand)) for hand in (False, True))
    ones, twos = squares(right.svg), squares(left.svg)
    sums = {round(a[1] + b[1], 1) for a, b in zip(ones, twos, strict=True)}
    assert max(sums) - min(sums) <= 0.2
    assert [(a[0], a[2:]) for a in ones] == [(b[0], b[2:]) for b in twos]
    assert "transform" not in left.svg
    assert right.description.count("right to left") == left.description.count("left to right")


def test_numbers_stand_where_rows_start_and_bold_lines_every_ten(weave):
    svg = chart(*weave(COLOUR)).svg
    root: Any = ET.fromstring(svg)  # noqa: S314 - our own drawing
    tabs = {t.text: float(t.attrib["x"]) for t in root.iter(f"{NS}text") if t.get("class") == "num mid"}
    xs = [x for _, x, *_ in squares(svg)]
    assert tabs["1"] > max(xs)
    assert tabs["3"] > max(xs)
    assert tabs["2"] < min(xs)
    bold = next(p.attrib["d"] for p in root.iter(f"{NS}path") if p.get("class") == "ten")
    assert sorted(float(x) for x in re.findall(r"M([\d.]+) [\d.]+V", bold)) == pytest.approx([min(xs), min(xs) + 36, max(xs) + 18], abs=0.2)


def test_colours_are_told_apart_by_letter_and_strokes_too(weave):
    svg = chart(*weave(COLOUR)).svg
    assert {"A", "B", "C"} <= set("".join(re.findall(r">([A-Z]+)</text>", svg)))
    drawn = [strokes(n, (0.0, 0.0), (18.0, 18.0)) for n in range(6)]
    assert len(set(drawn)) == 6
    assert len(set(GREYS)) == 6
    for theme in ("light", "dark"):
        assert all(contrast(on(fill, theme), fill) >= 4.5 for fill in colours(theme)["yarns"])
    assert all(contrast("#000000", "#" + "".join(c * 2 for c in g[1:]) if len(g) == 4 else g) >= 7 for g in GREYS)


@pytest.mark.parametrize("text", [FILET, COLOUR, BLOCKS])
def test_a_grid_is_plain_the_same_every_time_and_leads_to_the_source(weave, text):
    fabric, sizes = weave(text)
    options = ChartOptions(line=lambda stitch: stitch // 10 + 1)
    one, two = chart(fabric, sizes, options), chart(fabric, sizes, options)
    assert one == two
    root: Any = ET.fromstring(one.svg)  # noqa: S314 - our own drawing
    assert {e.tag.removeprefix(NS) for e in root.iter()} <= {"svg", "title", "desc", "style", "rect", "text", "g", "path"}
    assert root.find(f"{NS}desc").text == one.description
    cells = [r for r in root.iter(f"{NS}rect") if "data-stitch" in r.attrib]
    assert all(int(r.attrib["data-line"]) == int(r.attrib["data-stitch"]) // 10 + 1 for r in cells)
    assert "prefers-color-scheme:dark" in one.svg
    assert "@media print" in one.svg


def test_large_grids_are_cut_into_parts_that_hold_every_square_once(weave):
    rows = "".join(f"Row {n}: Ch 1, with A, sc in each of next {n} sts, with B, sc in next st, with A, sc in each st across, turn.\n" for n in range(2, 90))
    fabric, sizes = weave(f"With A, ch 145.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n{rows}")
    parts = charts(fabric, sizes)
    many = len(parts)
    assert many > 2
    assert all(f"Part {n} of {many}." in c.notes[1] and c.notes[1].startswith("Shown: squares") for n, c in enumerate(parts, 1))
    drawn = [s for c in parts for *_, s, _ in squares(c.svg)]
    whole = charts(fabric, sizes, ChartOptions(whole=True))
    assert len(whole) == 1
    assert not any("Shown" in n for n in whole[0].notes)
    assert sorted(drawn) == sorted(s for *_, s, _ in squares(whole[0].svg)) == [s for s in range(145, len(fabric)) if fabric.name(s) == "sc"]
    assert max(len(c.svg) for c in parts) < 400_000
    assert len({re.findall(r' id="([^"]+)"', c.svg)[0] for c in parts}) == many


def test_a_wide_grid_that_repeats_shows_its_repeat_with_both_edges(weave):
    """Diamonds of 12 squares and 10 rows, 72 wide: what is shown has the same squares as the whole at either edge, and letters of 9 pt."""
    fabric, sizes = fabric_of("lapwing-cushion")
    front = next(c for c in charts(fabric, sizes) if c.part == "colour")
    whole = next(c for c in charts(fabric, sizes, ChartOptions(whole=True)) if c.part == "colour")
    assert len([c for c in charts(fabric, sizes) if c.part == "colour"]) == 1
    assert "Across, the pattern is the same again after 12 squares." in front.notes
    assert "Upwards, the pattern is the same again after 10 rows." in front.notes
    lines, all_lines = said(front.description), said(whole.description)
    for line, one in zip(lines, all_lines, strict=False):
        assert (line[0][0], line[-1][0]) == (one[0][0], one[-1][0])
    wide = float(re.findall(r'viewBox="0 0 (\S+)', front.svg)[0])
    assert LETTER_PX * 160 / wide / (25.4 / 72) >= 9 - 0.05
    assert LETTER_PX * PHONE_PX / wide >= SMALLEST_PX


@pytest.mark.parametrize(("name", "parts"), [("reedbed-panel", 1), ("lapwing-cushion", 1)])
def test_a_grid_asked_for_as_wide_as_a_telephone_has_letters_that_can_be_read_there(name, parts):
    """Counts beside the rows, which the description tells too, are the first to go."""
    fabric, sizes = fabric_of(name)
    drawn = [c for c in charts(fabric, sizes, ChartOptions(width=PHONE_PX)) if c.part in ("colour", "filet")]
    assert len(drawn) == parts
    for c in drawn:
        assert "Counts beside" not in " ".join(c.notes)
        px = LETTER_PX if c.part == "colour" else TEXT_PX
        assert px * PHONE_PX / float(re.findall(r'viewBox="0 0 (\S+)', c.svg)[0]) >= SMALLEST_PX


def test_a_picture_too_wide_for_a_telephone_is_cut_into_parts_that_have_all_of_its_squares(weave):
    rows = "".join(f"Row {n}: Ch 1, with A, sc in each of next {n} sts, with B, sc in each st across, turn.\n" for n in range(2, 20))
    fabric, sizes = weave(f"With A, ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n{rows}")
    (whole,) = charts(fabric, sizes, ChartOptions(whole=True, width=PHONE_PX))
    parts = charts(fabric, sizes, ChartOptions(width=PHONE_PX))
    assert len(parts) == 2
    assert sorted(s for c in parts for *_, s, _ in squares(c.svg)) == sorted(s for *_, s, _ in squares(whole.svg))
    assert all(LETTER_PX * PHONE_PX / float(re.findall(r'viewBox="0 0 (\S+)', c.svg)[0]) >= SMALLEST_PX for c in parts)


def test_equal_squares_side_by_side_are_one_element_only_where_their_data_says_the_same(weave):
    rows = "Rows 2-40: Ch 1, with A, sc in each of next 20 sts, with B, sc in each st across, turn.\n"
    fabric, sizes = weave(f"With A, ch 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\n{rows}")
    merged = chart(fabric, sizes, ChartOptions(whole=True, line=lambda _: 3)).svg
    apart = chart(fabric, sizes, ChartOptions(whole=True, line=lambda stitch: stitch)).svg
    assert merged.count("data-stitch") == 1 + 39 * 2
    assert apart.count("data-stitch") == 1600
    assert [s[:5] for s in squares(merged)] == [s[:5] for s in squares(apart)]


@pytest.mark.parametrize(
    "text",
    [
        "Ch 13.\nRow 1: With A, sc in 2nd ch from hook and in each ch across, turn.\nRow 2: With B, ch 1, sc in each st across, turn.\nRow 3: With A, ch 1, sc in each st across, turn.\n",
        "Ch 12.\nRow 1: Dc in 6th ch from hook, *ch 1, sk next ch, dc in next ch; rep from * across, turn.\nRow 2: Ch 4, *dc in next dc, ch 1; rep from *, turn.\n",
    ],
)
def test_stripes_and_plain_mesh_stay_symbols(weave, text):
    assert all(c.part not in ("filet", "colour", "corner") for c in charts(*weave(text)))


def test_a_grid_may_be_asked_for_in_symbols(weave):
    fabric, sizes = weave(COLOUR)
    drawn = chart(fabric, sizes, ChartOptions(grids=False))
    assert drawn.part == "flat"
    assert "lw-chart" in drawn.svg


@pytest.mark.parametrize(("name", "part"), [("reedbed-panel", "filet"), ("lapwing-cushion", "colour")])
def test_shipped_designs_in_squares(name, part):
    fabric, sizes = fabric_of(name)
    found = [c for c in charts(fabric, sizes, ChartOptions(whole=True)) if c.part == part]
    assert len(found) == 1
    assert said(found[0].description) == runs(squares(found[0].svg))


def test_names_of_colours_that_are_no_letters_get_one(weave):
    fabric, sizes = weave(COLOUR)
    fabric.colours[fabric.colours.index("B")] = "mar\x02sh <green>"
    drawn = chart(fabric, sizes)
    assert "B: marsh &lt;green&gt;" in drawn.svg
    assert "4 B" in drawn.description


def test_a_first_row_of_open_meshes_has_its_first_mesh_over_the_last_chains(weave):
    rows = "Row 2: Ch 3 (counts as dc), 2 bls, 2 sps, 2 bls, turn.\nRow 3: Ch 3 (counts as dc), 6 sps, turn.\nRow 4: Ch 5 (counts as dc and ch 2), sk 2, dc in next dc, 5 bls, turn.\n"
    text = "Turning chain: ch 3 counts as dc\nCh 23.\nRow 1 (RS): Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn. (6 sps)\n" + rows
    drawn = chart(*weave(text))
    assert drawn.part == "filet"
    assert said(drawn.description) == runs(squares(drawn.svg))
    assert said(drawn.description)[0] == [("space", 6)]
    assert said(drawn.description)[2:] == [[("space", 6)], [("space", 1), ("block", 5)]]


def test_blocks_told_in_brackets_are_drawn_as_blocks_too(weave):
    brackets = BLOCKS.replace("sl st in ch-3 sp of next block, ch 3, 3 dc in same sp", "(sl st, ch 3, 3 dc) in next ch-3 sp")
    assert brackets != BLOCKS
    one, two = chart(*weave(BLOCKS)), chart(*weave(brackets))
    assert two.part == "corner"
    assert said(one.description) == said(two.description)
