"""How rows, tables and pictures are laid out, before they are set."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from loopwright.publishing.document import Edition, Figure, Picture, Remark, StepOfSize, Table, TableRow, Varies, running
from loopwright.publishing.pages.drawings import for_print, room_to_grow
from loopwright.publishing.pages.faces import Faces
from loopwright.publishing.pages.figures import grouped, placed
from loopwright.publishing.pages.rows import NOT_WORKED, Rows
from loopwright.publishing.pages.sheet import form_of, sheet_of
from loopwright.publishing.pages.signs import plain
from loopwright.publishing.pages.tables import laid
from loopwright.publishing.pages.texts import Blanks, pieces
from tests.publishing.pages.made_up import figure, make, picture, step


@pytest.fixture(scope="module")
def faces():
    opened = Faces()
    yield opened
    opened.close()


def _row(faces, changed, sizes=3):
    publication = make(sizes, 1, 1)
    section: Any = publication.parts[5].blocks[0]
    section = replace(section, steps=(changed,))
    return Rows(publication, sheet_of(publication), faces).section(section)["rows"][0]


@pytest.mark.parametrize(("sizes", "edition", "form"), [
    (1, Edition(), "ledger"), (2, Edition(), "columns"), (12, Edition(), "columns"), (13, Edition(), "brackets"),
    (3, Edition(paper="phone"), "brackets"), (1, Edition(paper="phone"), "brackets"), (3, Edition(large_print=True), "far"),
    (3, Edition(design="ledger"), "ledger"), (1, Edition(design="columns"), "columns"),
])
def test_form_follows_sizes_and_paper(sizes, edition, form):
    assert form_of(make(sizes, edition=edition)) == form


def test_numbers_that_differ_get_letters_and_lines(faces):
    changed = replace(
        step(0, 0, 3, ""), label=running("Rnds 5-9 (9, 10)", 3), words=running("Dc in next 4 (5, 6) sts, miss 4 (5, 6).", 3), counts=(20, 22, 24),
        count=running("20 (22, 24) dc", 3),
    )
    row = _row(faces, changed)
    assert row["label"] == ["Rnds 5-", {"blank": "a"}]
    assert row["words"] == ["Dc in next ", {"blank": "b"}, " sts, miss ", {"blank": "b"}, "."]
    assert [(x["letter"], x["values"], x["unit"]) for x in row["lines"]] == [
        ("a", ["9", "9", "10"], ""), ("b", ["4", "5", "6"], ""), ("", ["20", "22", "24"], "dc"),
    ]
    assert [x["bold"] for x in row["lines"]] == [False, False, True]


def test_a_count_that_the_words_name_shares_their_line(faces):
    changed = replace(step(0, 0, 3, ""), words=running("Increase to 40 (44, 48) sts.", 3), count=running("40 (44, 48) dc", 3), counts=(40, 44, 48))
    assert [(x["letter"], x["unit"], x["bold"]) for x in _row(faces, changed)["lines"]] == [("a", "dc", True)]


def test_equal_counts_are_one(faces):
    row = _row(faces, replace(step(0, 0, 3, ""), count=("8 dc",), counts=(8, 8, 8)))
    assert row["whole"] == {"number": "8", "unit": "dc", "worked": True}
    assert row["lines"] == []


def test_a_count_that_was_not_worked_is_not_set_as_one(faces):
    row = _row(faces, replace(step(0, 0, 3, ""), count=("9 dc",), counts=(8, 8, 8)))
    assert row["whole"]["worked"] is False


def test_a_size_without_the_row_has_a_dash(faces):
    alone = (None, StepOfSize("Rnd 1", "Dc.", "8 dc"), StepOfSize("Rnd 1", "Dc.", "8 dc"))
    row = _row(faces, replace(step(0, 0, 3, ""), count=("8 dc",), counts=(None, 8, 8), by_size=alone))
    assert row["lines"][0]["values"] == [NOT_WORKED, "8", "8"]


def test_two_counts_stand_on_two_lines(faces):
    count = (Varies(("10", "12", "14"), ""), " dc and ", Varies(("2", "3", "4"), ""), " shells")
    lines = _row(faces, replace(step(0, 0, 3, ""), count=count, counts=(10, 12, 14)))["lines"]
    assert [(x["values"], x["unit"], x["worked"]) for x in lines] == [(["10", "12", "14"], "dc", True), (["2", "3", "4"], "shells", False)]


def test_a_row_without_a_count_tells_what_was_worked(faces):
    row = _row(faces, replace(step(0, 0, 3, ""), count=(), counts=(5, 6, 7)))
    assert [(x["values"], x["worked"]) for x in row["lines"]] == [(["5", "6", "7"], True)]


def test_numbers_too_wide_for_their_column_get_smaller(faces):
    wide = _row(faces, replace(step(0, 0, 12, ""), count=(Varies(("1234.5",) * 11 + ("1",), ""), " dc")), 12)["lines"][0]
    small = _row(faces, replace(step(0, 0, 12, ""), count=(Varies(("8",) * 11 + ("9",), ""), " dc")), 12)["lines"][0]
    assert wide["size_pt"] < small["size_pt"]


def test_boxes_are_as_many_as_rows_where_all_sizes_agree(faces):
    base = step(0, 0, 3, "")
    assert _row(faces, replace(base, each=((8, 8, 8),) * 3))["ticks"] == 3
    assert _row(faces, replace(base, each=((8,), (8, 8), (8,))))["ticks"] == 1


def test_measures_have_columns_of_their_own(faces):
    row = _row(faces, Remark(running("Measure now: across 8.2 (9.2, 10.8) cm.", 3), own=False))
    assert row["lines"][0]["values"] == ["8.2", "9.2", "10.8"]
    assert row["lines"][0]["worked"]


def test_letters_go_on_after_z():
    blanks = Blanks()
    assert [blanks.letter((str(i),)) for i in range(28)][-3:] == ["z", "aa", "bb"]


def test_addresses_become_links_without_their_full_stop():
    assert pieces("See https://saltmarsh.example/a-b.") == ["See ", {"link": "https://saltmarsh.example/a-b"}, "."]


@pytest.mark.parametrize(("given", "taken"), [("a\tb\nc", "a b c"), ("10 cm", "10\u00a0cm"), ("e\u0301", "é"), ("x\u202ey", "x y"), ("½\u200b", "½")])
def test_plain(given, taken):
    assert plain(given) == taken


@pytest.mark.parametrize("sizes", [1, 5, 10, 12, 13, 30])
@pytest.mark.parametrize("paper", ["a4", "letter", "phone"])
def test_tables_fit_their_paper(faces, sizes, paper):
    publication = make(sizes, edition=Edition(paper=paper))
    sheet = sheet_of(publication)
    names = tuple(f"size {i}" for i in range(sizes))
    table = Table("Sizes", "cm", names, (TableRow("around", tuple(f"{100 + i}.5 (39½)" for i in range(sizes))),), of_sizes=True)
    found = laid(table, sheet, faces)
    assert [n for chunk in found["chunks"] for n in chunk["columns"]] == list(names)
    for chunk in found["chunks"]:
        assert found["head_mm"] + len(chunk["columns"]) * found["column_mm"] <= sheet.inner_mm + 0.01
        for cell in chunk["rows"][0]["cells"]:
            widest = max(faces.width_em(part) for part in cell)
            assert widest * found["size_pt"] * 25.4 / 72 <= found["column_mm"] + 0.01


def test_inches_stand_below_where_columns_are_narrow(faces):
    publication = make(10)
    table = Table("Sizes", "cm", publication.sizes, (TableRow("around", tuple(f"{110 + i} (43½)" for i in range(10))),), of_sizes=True)
    assert laid(table, sheet_of(publication), faces)["chunks"][0]["rows"][0]["cells"][0] == ["110", "(43½)"]


def test_one_value_for_all_sizes_stands_once(faces):
    publication = make(5)
    table = Table("Sizes", "cm", publication.sizes, (TableRow("tie", ("20",) * 5),), of_sizes=True)
    row = laid(table, sheet_of(publication), faces)["chunks"][0]["rows"][0]
    assert row["same"]
    assert row["cells"] == [["20", ""]]


@pytest.mark.parametrize("size", [(300, 300), (800, 600), (1200, 1500), (2600, 1080), (5000, 400), (500, 6000), (6000, 6000)])
def test_pictures_fit_and_can_be_read(faces, size):
    sheet = sheet_of(make())
    found = placed(figure(width=size[0], height=size[1]), sheet, faces)
    wide = sheet.height_mm - 2 * sheet.side_mm if found.across else sheet.inner_mm
    high = sheet.width_mm if found.across else sheet.high_mm
    for _, _, width, height in found.tiles or ((0, 0, found.width_mm, found.height_mm),):
        assert width <= wide + 0.01
        assert height <= high
    lettering_pt = 13 * found.width_mm / size[0] / 25.4 * 72 * found.grown
    assert lettering_pt >= 6.99


def test_parts_of_a_picture_hold_all_of_it(faces):
    found = placed(figure(width=4000, height=3000), sheet_of(make()), faces)
    assert max(x + w for x, _, w, _ in found.tiles) == pytest.approx(found.width_mm)
    assert max(y + h for _, y, _, h in found.tiles) == pytest.approx(found.height_mm)
    for x, _, _, _ in found.tiles:
        assert x == 0 or any(a < x < a + w for a, _, w, _ in found.tiles)


def test_small_pictures_stand_beside_one_another(faces):
    sheet = sheet_of(make())
    small = [placed(figure(width=400, height=300), sheet, faces) for _ in range(4)]
    lines = grouped(small, sheet)
    assert [len(line) for line in lines] == [2, 2]
    assert all(sum(f.width_mm for f in line) <= sheet.inner_mm for line in lines)


def test_lettering_grows_only_where_it_has_room(faces):
    near = '<text x="20" y="30">hdc: half double crochet</text><text x="180" y="30">sl st: slip stitch</text>'
    assert room_to_grow(near, 900, faces) == 1.0
    assert room_to_grow('<text x="20" y="30">ch: chain</text>', 900, faces) > 1.3


def test_drawings_for_paper_are_white_and_still():
    svg = (
        b'<svg><style>.sheet{fill:#FAFCF9}@media screen and (prefers-color-scheme:dark){.sheet{fill:#000}}@media print{.two path{stroke:#000}}'
        b'</style><path data-stitch="3" d="M0 0"/></svg>'
    )
    plain_colours, ink = for_print(svg, ink_only=False, grown=1).decode(), for_print(svg, ink_only=True, grown=1).decode()
    assert "@media" not in plain_colours + ink
    assert ".two path{stroke:#000}" in ink
    assert ".two path{stroke:#000}" not in plain_colours
    assert "data-stitch" not in plain_colours
    assert "fill:#fff!important" in plain_colours


def test_a_photograph_is_as_wide_as_it_is_meant_to_be(faces):
    import io

    from PIL import Image

    held = io.BytesIO()
    Image.new("RGB", (400, 300), "grey").save(held, "PNG")
    shot = Figure(Picture("a.png", "png", held.getvalue(), width_mm=50.0), "A hat.", "A hat")
    assert placed(shot, sheet_of(make()), faces).width_mm == pytest.approx(50.0)
    assert picture().kind == "svg"
