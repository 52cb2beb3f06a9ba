"""One picture per round: which stitches are told apart, the counts beside them, and clean files; and the picture of the fabric."""

from __future__ import annotations

import io
import re
import xml.etree.ElementTree as ET
from typing import Any

import numpy as np
import pytest
from PIL import Image

from loopwright.drawing.rounds import RoundOptions, fabric_picture, round_drawings
from loopwright.drawing.rounds.laid import facing, laid_out
from loopwright.drawing.scene.cells import cells_of
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

NS = "{http://www.w3.org/2000/svg}"
SC = StitchSizes(5.0, 5.0, "sc")
SWATCH = "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6 sc)\nRows 2-4: Ch 1, sc in each st across, turn. (6)\n"
SMALL = ["samphire-beanie", "sandpiper-mitts", "curlew-toy", "reedbed-panel", "avocet-bonnet", "dunlin-booties"]


def parsed(svg: str) -> Any:
    return ET.fromstring(svg)  # noqa: S314 -- our own file


def of(text) -> Fabric:
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    return fabric


def outlines(svg, name):
    """Corners of the stitches of a class, (4, 2) or (3, 2) each."""
    found = []
    for path in parsed(svg).iter(NS + "path"):
        if path.get("class").split()[0] == name:
            found += [np.array(p.split(), dtype=float).reshape(-1, 2) for p in re.findall(r"M([-\d ]+)", path.get("d"))]
    return found


@pytest.mark.parametrize("name", SMALL)
def test_counts_are_the_fabrics_own(worked, name):
    design = worked(name)
    fabric = design.fabrics[0]
    found = round_drawings(fabric, design.sizes, RoundOptions(title=design.title))
    assert len({d.row for d in found}) == len(found)
    for d in found:
        counted = sum(fabric.counted(fabric.rows[d.row]).values())
        words = [t.text for t in parsed(d.svg).iter(NS + "text") if t.get("class") == "count"]
        assert words == [str(d.count)]
        assert d.count == counted or not counted
        assert all(fabric.row[s] == d.row for s in d.stitches)
        assert d.label in d.description


def test_every_worked_row_has_its_picture(worked):
    design = worked("samphire-beanie")
    fabric = design.fabrics[0]
    found = round_drawings(fabric, design.sizes)
    assert [d.row for d in found] == list(range(len(fabric.rows)))


def test_new_stitches_are_those_of_the_row_and_old_ones_all_before():
    found = round_drawings(of(SWATCH), SC)
    rows = [d for d in found if d.label.startswith("Row")]
    assert [len(outlines(d.svg, "new")) for d in rows] == [len(outlines(rows[0].svg, "new"))] * 4
    assert [len(outlines(d.svg, "old")) for d in rows] == [n * len(outlines(rows[0].svg, "new")) for n in range(4)]


def test_rows_rise_and_the_new_one_is_on_top():
    last = round_drawings(of(SWATCH), SC)[-1]
    new, old = (np.concatenate(outlines(last.svg, name)) for name in ("new", "old"))
    assert new[:, 1].mean() < old[:, 1].mean()


def test_a_disc_grows_around_its_centre():
    text = "Rnd 1: Ch 1, 6 sc in magic ring; join. (6 sc)\nRnd 2: Ch 1, 2 sc in each st around; join. (12)\n"
    text += "Rnd 3: Ch 1, *sc in next st, 2 sc in next st; rep from * around; join. (18)\n"
    last = round_drawings(of(text), SC)[-1]
    new, old = (np.concatenate(outlines(last.svg, name)) for name in ("new", "old"))
    centre = old.mean(axis=0)
    assert np.linalg.norm(new - centre, axis=1).min() > 0.5 * np.linalg.norm(new - centre, axis=1).max()
    assert "right side" in last.description


def test_a_tube_is_seen_from_the_front(worked):
    design = worked("samphire-beanie")
    found = round_drawings(design.fabrics[-1], design.sizes)
    assert "right side" in found[2].description
    assert "from the front" in found[-1].description


@pytest.mark.parametrize("name", SMALL)
def test_files_are_clean_and_always_the_same_bytes(worked, name):
    design = worked(name)
    first, second = (round_drawings(design.fabrics[0], design.sizes) for _ in range(2))
    assert first == second
    for d in first:
        root = parsed(d.svg)
        assert {e.tag for e in root.iter()} <= {NS + t for t in ("svg", "title", "desc", "style", "g", "path", "rect", "text")}
        assert root.find(NS + "desc").text == d.description
        numbers = [float(n) for e in root.iter(NS + "path") for n in re.findall(r"-?\d+", e.get("d"))]
        assert numbers
        assert all(-200 <= n <= 4400 for n in numbers)


def test_names_of_stitches_in_other_terms():
    last = round_drawings(of(SWATCH), SC, RoundOptions(say=lambda kind: "dc" if kind == "sc" else kind))[-1]
    assert "6 dc" in last.description


def test_a_large_fabric_is_drawn_as_rows(worked):
    design = worked("tideline-blanket")
    found = round_drawings(design.fabrics[0], design.sizes)
    assert max(len(d.svg) for d in found) < 150_000
    assert outlines(found[-1].svg, "newest")


def test_one_stitch_is_a_dot():
    last = round_drawings(of("Ch 2.\nRow 1: Sc in 2nd ch from hook. (1 sc)\n"), SC)[-1]
    (dot,) = outlines(last.svg, "newest")
    assert dot.shape == (2, 2)
    assert (dot[0] == dot[1]).all()


def test_an_empty_fabric_has_no_pictures():
    assert round_drawings(Fabric(), SC) == ()


def pixels(png):
    return np.asarray(Image.open(io.BytesIO(png)).convert("RGBA"))


def test_a_picture_of_rows_lies_flat_with_the_first_row_below():
    found = fabric_picture(of(SWATCH.replace("Rows 2-4", "Rows 2-12")), SC, width_px=120)
    drawn = pixels(found.png)[:, :, 3] > 0
    assert found.flat
    assert drawn.shape == (found.height_px, found.width_px)
    assert found.height_px > found.width_px
    assert drawn.mean() > 0.5


def test_a_picture_of_a_hat_stands(worked):
    design = worked("samphire-beanie")
    found = fabric_picture(design.fabrics[0], design.sizes, width_px=160, title=design.title)
    drawn = pixels(found.png)[:, :, 3] > 0
    assert not found.flat
    assert drawn.any(axis=1).mean() > 0.8
    assert drawn[len(drawn) // 8].sum() < drawn[-len(drawn) // 4].sum()  # its crown is above
    assert found.description.startswith(design.title)


def test_ties_do_not_make_the_picture_small(worked):
    design = worked("avocet-bonnet")
    found = fabric_picture(design.fabrics[0], design.sizes, width_px=160)
    assert "Ties are left out" in found.description
    assert found.height_px > 0.6 * found.width_px


def test_a_picture_of_nothing_is_clear():
    assert not pixels(fabric_picture(Fabric(), SC, width_px=40).png)[:, :, 3].any()


@pytest.mark.parametrize("name", SMALL)
def test_words_can_be_read_on_a_telephone(worked, name):
    """360 px wide, no letter is smaller than 12 px (judgement), and all of them stand within the file."""
    design = worked(name)
    for d in round_drawings(design.fabrics[0], design.sizes, RoundOptions(title=design.title)):
        root = parsed(d.svg)
        wide, high = float(root.get("width")), float(root.get("height"))
        sizes = [float(s) for pair in re.findall(r"font:\d+ ([\d.]+)px|font-size=\"([\d.]+)\"", d.svg) for s in pair if s]
        assert min(sizes) * 360 / wide >= 12
        assert all(float(t.get("y")) < high for t in root.iter(NS + "text"))


def test_ids_of_two_pictures_in_one_page_differ():
    found = round_drawings(of(SWATCH), SC, RoundOptions(ident="small")) + round_drawings(of(SWATCH), SC, RoundOptions(ident="large"))
    ids = [i for d in found for i in re.findall(r' id="([^"]+)"', d.svg)]
    assert len(set(ids)) == len(ids) == 2 * len(found)
    with pytest.raises(ValueError, match="cannot begin an id"):
        round_drawings(of(SWATCH), SC, RoundOptions(ident="1 2"))


def test_a_cell_for_every_stitch_of_a_row_that_turns():
    """Six stitches have five gaps between them; a chain that counts as a stitch has its cell too."""
    assert [len(outlines(d.svg, "new")) for d in round_drawings(of(SWATCH), SC)[1:]] == [6] * 4
    counted = "Ch 9.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn. (7 dc)\n"
    counted += "Row 2: Ch 3 (counts as dc), dc in each of next 6 sts, turn. (7 dc)\n"
    assert [len(outlines(d.svg, "new")) for d in round_drawings(of(counted), SC)[1:]] == [7, 7]


def test_colours_of_both_sides_stand_over_each_other():
    """Rows that go there and back, the middle one of five in the other colour in each: one column of it, in its place."""
    row = "*with A, sc in next 2 sts, with B, sc in next st, with A, sc in next 2 sts; rep from * across, turn. (5 sc)\n"
    fabric = of("With A, ch 6.\nRow 1 (RS): With A, sc in 2nd ch from hook and in each ch across, turn. (5 sc)\n"
                + "".join(f"Row {n}: Ch 1, {row}" for n in range(2, 7)))
    body = laid_out(fabric, SC).body
    cells = cells_of(fabric, body).within(body)
    middles = cells.points[cells.faces].mean(axis=1)
    b = np.asarray([fabric.colours[fabric.colour[s]] == "B" for s in cells.face_stitch])
    rows = np.asarray(fabric.row)[cells.face_stitch]
    x, y = (middles - middles.mean(axis=0)).T[:2] if np.ptp(middles[:, 0]) else middles.T[:2]
    across = np.abs(np.corrcoef(x, rows)[0, 1]) < np.abs(np.corrcoef(y, rows)[0, 1])
    along = x if across else y
    of_rows = [along[b & (rows == r)].mean() for r in range(2, 7)]
    assert np.ptp(of_rows) < 0.5
    assert abs(np.mean(of_rows) - along.mean()) < 0.5


MESH = """Ch 26.
Row 1: Dc in 6th ch from hook (skipped ch count as dc and ch 1), *ch 1, sk next ch, dc in next ch; rep from * across, turn.
Row 2: Ch 4 (counts as dc and ch 1), sk next ch-1 sp, dc in next dc, *ch 1, sk next ch-1 sp, dc in next dc; rep from * across, turn.
Rows 3-5: Rep Row 2.
"""


def drawn_part(found):
    alpha = np.asarray(Image.open(io.BytesIO(found.png)).convert("RGBA"))[:, :, 3] > 0
    return np.ptp(np.flatnonzero(alpha.any(axis=0))) + 1, np.ptp(np.flatnonzero(alpha.any(axis=1))) + 1


def test_open_mesh_is_seen_from_above_as_wide_and_as_high_as_it_is():
    """Twenty-one widths of a stitch across, five rows up: nothing of it is filled, and yet it lies flat."""
    wide, high = drawn_part(fabric_picture(of(MESH), StitchSizes(5.5, 11.0, "dc"), width_px=400))
    assert wide / high == pytest.approx(21 * 5.5 / (5 * 11.0), rel=0.15)


def test_stitches_between_holes_are_lines_in_their_round():
    last = round_drawings(of(MESH), StitchSizes(5.5, 11.0, "dc"))[-1]
    assert len(outlines(last.svg, "lace")) == 12


def test_rows_lie_level_where_one_edge_slants():
    text = "Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
    for n in range(2, 10, 2):
        text += f"Row {n}: Ch 1, 2 sc in next st, sc in each st across, turn. ({8 + n // 2} sc)\n"
        text += f"Row {n + 1}: Ch 1, sc in each st across, turn. ({8 + n // 2} sc)\n"
    fabric = of(text)
    laid = laid_out(fabric, SC)
    seen = laid.body.points @ facing(laid, laid.parts[0]).T
    for row in range(1, len(fabric.rows)):
        ends = seen[laid.nodes_of(row)][[0, -1]]
        assert abs(ends[1, 1] - ends[0, 1]) < 0.1 * abs(ends[1, 0] - ends[0, 0])
