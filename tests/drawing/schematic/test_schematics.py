"""What every schematic holds to: lengths to scale, letters in the table, clean files, words for who cannot see it."""

from __future__ import annotations

import math
import re
import xml.etree.ElementTree as ET
from typing import Any

import pytest

from loopwright.drawing.lettering import width_px
from loopwright.drawing.schematic import SchematicOptions, schematics
from loopwright.drawing.schematic.words import inches
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.dimensions import dimensions
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

NS = "{http://www.w3.org/2000/svg}"
SC = StitchSizes(5.0, 5.0, "sc")


def parsed(svg: str) -> Any:
    return ET.fromstring(svg)  # noqa: S314 -- our own file


def drawn(design, **asked):
    return schematics(design.fabrics, design.sizes, design.names, SchematicOptions(title=design.title, **asked))


def of(text, **asked):
    fabrics = work(read(Source.of(text), "us")).fabrics
    return schematics(fabrics, SC, ("one size",), SchematicOptions(**asked))


def spans(svg):
    """Letter, measure in mm, share, drawn length in px, and scale in px per mm, of every dimension line."""
    found = []
    for figure in parsed(svg).iter(NS + "g"):
        if figure.get("data-scale") is None:
            continue
        for path in figure.iter(NS + "path"):
            if path.get("data-mm"):
                (ax, ay), (bx, by) = (tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", path.get("d")))
                length = math.dist((ax, ay), (bx, by))
                found.append((path.get("data-letter"), float(path.get("data-mm")), float(path.get("data-share")), length, float(figure.get("data-scale"))))
    return found


def texts(svg):
    return [t.text for t in parsed(svg).iter(NS + "text")]


@pytest.mark.parametrize("width_mm", [85.0, 170.0])
def test_every_length_is_its_measure_times_the_scale(design, width_mm):
    found = [s for d in drawn(design, width_mm=width_mm) for s in spans(d.svg)]
    assert found
    for letter, mm, share, px, scale in found:
        assert px == pytest.approx(mm * share * scale, abs=0.03 + 0.001 * px), letter


def test_every_measure_is_one_of_the_drawn_size(design):
    for only, fabric in enumerate(design.fabrics):
        measures = [round(d.value_mm, 3) for d in dimensions(fabric, design.sizes)]
        for d in drawn(design, only=only):
            assert all(any(mm == pytest.approx(m, abs=1e-3) for m in measures) for _, mm, *_ in spans(d.svg))


def test_letters_in_the_drawing_are_those_of_the_table(design):
    for d in drawn(design):
        labels = [t for t in texts(d.svg) if re.fullmatch(r"(½ )?[A-Z]\d*", t)]
        in_figures = {letter for letter, *_ in spans(d.svg)}
        assert in_figures == {t.removeprefix("½ ") for t in labels}
        assert all(f"{letter}, " in d.description for letter in in_figures)
        assert len(labels) >= 2 * len(in_figures)  # once at its line, once in the table


def test_all_sizes_stand_in_brackets_and_one_size_alone(worked):
    hat = worked("samphire-beanie")
    every, one = drawn(hat)[0], drawn(hat, only=3, units="cm")[0]
    around = [next(d.value_mm for d in dimensions(f, hat.sizes) if (d.section, d.name) == ("Body", "around")) for f in hat.fabrics]
    words = [f"{v / 10:.1f}".removesuffix(".0") for v in around]
    assert f"{words[0]} ({', '.join(words[1:])}) cm" in texts(every.svg)
    assert f"{words[3]} cm" in texts(one.svg)
    assert f"Size {hat.names[3]}" in texts(one.svg)


@pytest.mark.parametrize("width_mm", [85.0, 170.0, 300.0])
def test_everything_lies_within_the_file(design, width_mm):
    for d in drawn(design, width_mm=width_mm):
        root = parsed(d.svg)
        wide = float(root.get("width"))
        assert wide == pytest.approx(width_mm / 25.4 * 96, abs=0.01)
        for x, _ in points(root):
            assert -0.5 <= x <= wide + 0.5


def points(element, dx=0.0, dy=0.0):
    """Places of all lines, in pixels of the file."""
    move = re.match(r"translate\(([-\d.]+) ([-\d.]+)\)", element.get("transform") or "")
    if move:
        dx, dy = dx + float(move[1]), dy + float(move[2])
    if element.tag == NS + "path":
        for p in re.findall(r"[-\d.]+,[-\d.]+", element.get("d")):
            x, y = map(float, p.split(","))
            yield x + dx, y + dy
    for child in element:
        yield from points(child, dx, dy)


def test_files_are_clean_and_always_the_same_bytes(design):
    for a, b in zip(drawn(design), drawn(design), strict=True):
        assert a == b
        root = parsed(a.svg)
        allowed = {NS + t for t in ("svg", "title", "desc", "style", "g", "path", "rect", "text")}
        assert {e.tag for e in root.iter()} <= allowed
        assert not any(k.startswith("on") or "href" in k for e in root.iter() for k in e.attrib)
        assert "prefers-color-scheme:dark" in a.svg
        assert "nan" not in a.svg.lower()
        told = {e.get("id") for e in root.iter() if e.get("id")}
        assert set(root.get("aria-labelledby").split()) <= told


def test_a_mitten_has_its_thumb_and_a_bag_its_bottom(worked):
    mitten, bag = drawn(worked("sandpiper-mitts"))[0], drawn(worked("glasswort-bag"))[0]
    assert "Thumb" in texts(mitten.svg)
    assert "Thumb, depth" in texts(mitten.svg)
    assert bag.sections == ("Bottom", "Sides", "Strap")


def test_a_square_that_is_made_again_is_drawn_once(worked):
    assert drawn(worked("sea-lavender-blanket"))[0].sections == ("First square", "Border")


def test_two_pieces_alike_under_two_names_are_both_drawn(worked):
    sheet = drawn(worked("lapwing-cushion"))[0]
    assert sheet.sections == ("Front", "Back")
    assert sheet.svg.count('class="outline"') == 2
    assert "Back: worked in rows" in sheet.description


def test_a_triangle_is_as_wide_and_deep_as_the_whole(worked):
    shawl = drawn(worked("thrift-shawl"))[0]
    outline = next(p for p in parsed(shawl.svg).iter(NS + "path") if p.get("class") == "outline")
    corners = [tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", outline.get("d"))]
    scale = spans(shawl.svg)[0][4]
    whole = {d.name: d.value_mm for d in dimensions(worked("thrift-shawl").fabrics[1], worked("thrift-shawl").sizes) if d.section is None}
    assert len(corners) == 3
    assert max(x for x, _ in corners) - min(x for x, _ in corners) == pytest.approx(whole["width"] * scale, abs=0.1)
    assert max(y for _, y in corners) - min(y for _, y in corners) == pytest.approx(whole["depth"] * scale, abs=0.1)


def test_a_half_circle_is_one():
    rows = "Ch 3, join with sl st to form a ring.\nRow 1: Ch 1, 4 sc in ring, turn. (4 sc)\n"
    rows += "".join(
        f"Row {n}: Ch 1, *sc in each of next {n - 2} sts, 2 sc in next st; rep from * 3 times more, turn. ({4 * n - 4 + 4} sc)\n" if n > 2
        else "Row 2: Ch 1, 2 sc in each st across, turn. (8 sc)\n" for n in range(2, 12)
    )
    (d,) = of(rows)
    assert spans(d.svg)


def test_a_size_that_could_not_be_worked_is_a_dash(worked):
    hat = worked("samphire-beanie")
    fabrics = (None, *hat.fabrics[1:])
    (d,) = schematics(fabrics, hat.sizes, hat.names, SchematicOptions(units="cm"))
    assert any(t.startswith("- (") for t in texts(d.svg))


def test_nothing_worked_gives_nothing():
    assert schematics((None, None), SC, ("one", "two")) == ()
    assert schematics((), SC, ()) == ()
    assert of("Ch 4.") == ()


@pytest.mark.parametrize("asked", [{"width_mm": 10.0}, {"width_mm": math.nan}, {"only": 3}, {"only": -1}, {"drawn": 9}])
def test_what_cannot_be_drawn_is_said(worked, asked):
    with pytest.raises(ValueError, match=r"wide|no size"):
        drawn(worked("reedbed-panel"), **asked)


def test_names_that_xml_cannot_hold_are_made_plain():
    text = "Tern <Cap> & \x01more\n\nCrown <&\x02>\nRnd 1: Ch 1, 8 sc in magic ring; join. (8 sc)\nRnd 2: Ch 1, 2 sc in each st around; join. (16)\n"
    (d,) = of(text, title="Tern <Cap> & \x01more")
    assert parsed(d.svg).find(NS + "title").text == "Schematic of Tern <Cap> & more"


def test_a_strip_lies_on_its_side():
    rows = "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)\nRows 2-60: Ch 1, sc in each st across, turn. (4)\n"
    (d,) = of(rows)
    outline = next(p for p in parsed(d.svg).iter(NS + "path") if p.get("class") == "outline")
    corners = [tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", outline.get("d"))]
    wide, high = (max(c[i] for c in corners) - min(c[i] for c in corners) for i in (0, 1))
    assert wide == pytest.approx(15 * high, rel=0.01)


def test_a_ripple_ripples(worked):
    (d,) = drawn(worked("tideline-blanket"))
    outline = next(p for p in parsed(d.svg).iter(NS + "path") if p.get("class") == "outline" and len(p.get("d")) > 200)
    assert len(re.findall(r"[-\d.]+,[-\d.]+", outline.get("d"))) > 20


def extents(svg, number=0):
    """Width and height of a figure's first outline, in mm."""
    figure = [g for g in parsed(svg).iter(NS + "g") if g.get("data-scale")][number]
    outline = next(p for p in figure.iter(NS + "path") if p.get("class") == "outline")
    corners = [tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", outline.get("d"))]
    return [(max(c[i] for c in corners) - min(c[i] for c in corners)) / float(figure.get("data-scale")) for i in (0, 1)]


def of_whole(design, name, section=None):
    """The measure of that name that is taken from the most rows."""
    found = [d for d in dimensions(design.fabrics[len(design.fabrics) // 2], design.sizes) if (d.section, d.name) == (section, name)]
    return max(found, key=lambda d: d.rows[1] - d.rows[0]).value_mm


def test_outlines_are_as_large_as_the_measures(worked):
    hat, toy, panel = (worked(n) for n in ("samphire-beanie", "curlew-toy", "reedbed-panel"))
    assert extents(drawn(hat)[0].svg) == pytest.approx([of_whole(hat, "around", "Body") / 2, of_whole(hat, "depth")], rel=2e-3)
    tall = of_whole(toy, "height", "Head and body")
    assert extents(drawn(toy)[0].svg) == pytest.approx([of_whole(toy, "across", "Head and body"), tall], rel=2e-3)
    assert extents(drawn(panel)[0].svg) == pytest.approx([of_whole(panel, "width"), of_whole(panel, "depth")], rel=2e-3)


def test_panels_of_a_yoke_measure_its_last_row(worked):
    yoke = worked("plover-cardigan")
    figure = next(g for g in parsed(drawn(yoke)[0].svg).iter(NS + "g") if g.get("data-figure") == "Yoke")
    panels = [p for p in figure.iter(NS + "path") if p.get("class") == "outline"]
    wide = 0.0
    for panel in panels:
        corners = [tuple(map(float, p.split(","))) for p in re.findall(r"[-\d.]+,[-\d.]+", panel.get("d"))]
        low = max(y for _, y in corners)
        ends = [x for x, y in corners if y == low]
        wide += (max(ends) - min(ends)) / float(figure.get("data-scale"))
    assert len(panels) == 5
    assert wide == pytest.approx(of_whole(yoke, "width", "Yoke"), rel=2e-3)


def test_a_cardigan_is_seen_from_the_front(worked):
    cardigan = worked("plover-cardigan")
    (d,) = drawn(cardigan)
    figure = next(g for g in parsed(d.svg).iter(NS + "g") if g.get("data-figure") == "Front")
    measures = {float(p.get("data-mm")) for p in figure.iter(NS + "path") if p.get("data-mm")}
    for section, name in (("Body", "width"), ("Body", "depth"), ("Yoke", "depth"), ("Sleeve", "depth"), ("Sleeve", "around")):
        assert any(mm == pytest.approx(of_whole(cardigan, name, section), abs=1e-3) for mm in measures)


@pytest.mark.parametrize(("mm", "words"), [(0.0, "0"), (25.4, "1"), (508.0, "20"), (501.65, "19¾"), (15.9, "5/8"), (41.3, "1 5/8"), (12.7, "½")])
def test_inches_are_quarters_and_small_ones_eighths(mm, words):
    assert inches(mm) == words


def test_an_ident_that_is_no_name_is_refused(worked):
    with pytest.raises(ValueError, match="cannot begin an id"):
        drawn(worked("reedbed-panel"), ident='x" onload="')


def test_on_paper_a_body_hides_the_sleeve_that_goes_on_under_it(worked):
    (d,) = drawn(worked("plover-cardigan"))
    on_paper = d.svg.split("@media print{")[1].split("</style>")[0]
    assert re.search(r"\.outline[^{]*\{fill:#fff\}", on_paper)
    assert not re.search(r"\.outline[^{]*\{fill:none\}", on_paper)


def test_strips_are_measured_as_they_are_drawn(worked):
    """A brim of rows goes around, a strap is long."""
    assert "Brim, around" in texts(drawn(worked("bulrush-hat"))[0].svg)
    assert "Strap, length" in texts(drawn(worked("glasswort-bag"))[0].svg)


def test_a_square_is_as_wide_as_it_is_across_and_the_whole_blanket_is_drawn(worked):
    sheet = drawn(worked("sea-lavender-blanket"))[0]
    letters = {t: k for k, t in zip(texts(sheet.svg), texts(sheet.svg)[1:], strict=False) if re.fullmatch(r"[A-Z]", k or "")}
    assert {"First square, across", "Border, width", "Border, length"} <= set(letters)
    assert "First square, side" not in texts(sheet.svg)


def test_letters_beside_a_thumb_stand_clear_of_the_lines_that_measure_the_hand(worked):
    svg = drawn(worked("sandpiper-mitts"))[0].svg
    words = {t.text: t for t in parsed(svg).iter(NS + "text")}
    lines = [p for p in parsed(svg).iter(NS + "path") if p.get("data-letter") == "C"]
    at = float(re.findall(r"[-\d.]+", lines[0].get("d"))[0])
    for name in ("½ G", "Thumb"):
        assert float(words[name].get("x")) + width_px(name, 15, heavy=True) / 2 < at
