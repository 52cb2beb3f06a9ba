"""What a reading program finds in the pages: tags, language, title, outline, alternatives, table heads, standards, fonts."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from itertools import pairwise
from typing import Any

import pikepdf
import pytest
from PIL import Image

from loopwright.publishing.document import Edition, Figure, Picture
from tests.publishing.made import published
from tests.publishing.pages.made_up import figure, make, opened, tags

KINDS: dict[str, tuple[str, dict[str, Any]]] = {
    "columns": ("avocet-bonnet", {}), "ledger": ("avocet-bonnet", {"size": 2}), "far": ("avocet-bonnet", {"large_print": True}),
    "phone": ("avocet-bonnet", {"paper": "phone"}), "one size": ("curlew-toy", {}), "ten sizes": ("samphire-beanie", {"paper": "letter"}),
}


@pytest.fixture(scope="module", params=KINDS)
def read(request, pages):
    """A publication of a kind, and its PDF as a general library opens it."""
    name, edition = KINDS[request.param]
    publication = replace(published(name, **edition), version="1.3", date="2026-11-20")
    return publication, opened(pages.pdf(publication))


def test_pages_are_tagged_and_say_so(read):
    _, pdf = read
    assert pdf.Root.MarkInfo.Marked
    assert {"H1", "H2", "P"} <= {kind for kind, _ in tags(pdf)}
    assert pdf.Root.ViewerPreferences.DisplayDocTitle


def test_language_and_title_are_told(read):
    publication, pdf = read
    assert str(pdf.Root.Lang) == publication.language
    assert str(pdf.docinfo["/Title"]) == publication.title
    with pdf.open_metadata() as meta:
        assert meta["dc:title"] == publication.title


def test_both_standards_are_claimed(read):
    _, pdf = read
    with pdf.open_metadata() as meta:
        assert meta["pdfuaid:part"] == "1"
        assert (meta["pdfaid:part"], meta["pdfaid:conformance"]) == ("2", "A")


def test_headings_never_skip_a_level(read):
    _, pdf = read
    levels = [int(kind[1]) for kind, _ in tags(pdf) if re.fullmatch(r"H\d", kind)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_bookmarks_lead_to_every_part_and_section(read):
    publication, pdf = read
    with pdf.open_outline() as outline:
        top = list(outline.root)
    assert [t.title for t in top] == [publication.title]
    below = [t.title for t in top[0].children]
    for heading in [p.heading for p in publication.parts if p.heading]:
        assert heading in below
    sections = [b.title for p in publication.parts if p.key == "instructions" for b in p.blocks]
    named = next(t for t in top[0].children if t.title == "Instructions")
    assert [t.title for t in named.children] == [s for s in sections if s]


def test_every_picture_has_its_words(read):
    publication, pdf = read
    told = [str(e["/Alt"]) for kind, e in tags(pdf) if kind == "Figure"]
    for block in (b for p in publication.parts for b in p.blocks if isinstance(b, Figure)):
        assert any(alt.startswith(block.alt.removesuffix(" …")) for alt in told), block.alt
    assert all(told)


def test_charts_and_schematics_are_told_in_full(read):
    """A page has no other place for the words of a picture; in large print a schematic's stand below it."""
    publication, pdf = read
    told = [" ".join(str(e["/Alt"]).split()) for kind, e in tags(pdf) if kind == "Figure"]
    for part in (p for p in publication.parts if p.key in ("charts", "schematic")):
        if part.key == "schematic" and publication.edition.large_print:
            continue
        for block in part.blocks:
            assert any(alt.startswith(" ".join(block.description.split())) for alt in told), block.alt


def test_every_row_of_a_table_has_its_head(read):
    """Each cell of sizes names the head of its row and of its column, and no head of another column."""
    _, pdf = read
    heads = {str(e["/ID"]): own(e) for kind, e in tags(pdf) if kind == "TH"}
    of_rows = {name for name, a in heads.items() if str(a["/Scope"]) == "/Row"}
    assert of_rows
    seen = 0
    for cell in (own(e) for kind, e in tags(pdf) if kind == "TD"):
        named = [str(n) for n in cell["/Headers"]]
        assert set(named) <= set(heads)
        if of_rows & set(named):
            plain = [n for n in named if n not in of_rows and "/ColSpan" not in heads[n]]
            assert "/ColSpan" in cell or len(plain) <= 1, named
            seen += len(plain)
    assert seen


def own(element: Any) -> Any:
    """What a cell says of itself as part of a table."""
    return next(a for a in element.get("/A", []) if isinstance(a, pikepdf.Dictionary) and str(a.get("/O", "")) == "/Table")


def test_the_file_stays_whole_where_rows_are_given_heads(read):
    _, pdf = read
    assert pdf.check_pdf_syntax() == []
    names = [str(n) for n in pdf.Root.StructTreeRoot.IDTree.Names[::2]]
    assert names == sorted(names)
    assert len(names) == len(set(names)) == sum(kind == "TH" for kind, _ in tags(pdf))


def test_every_table_begins_with_its_heads(read):
    _, pdf = read
    kinds = [kind for kind, _ in tags(pdf) if kind in ("Table", "TH", "TD")]
    assert "Table" in kinds
    assert all(after == "TH" for kind, after in pairwise(kinds) if kind == "Table")


def test_cells_name_the_head_of_their_column(read):
    _, pdf = read
    cells = [e for kind, e in tags(pdf) if kind == "TD"]
    named = [e for e in cells if any("/Headers" in a for a in e.get("/A", []) if isinstance(a, pikepdf.Dictionary))]
    assert len(named) == len(cells)


def test_fonts_are_embedded_and_only_in_part(read):
    _, pdf = read
    fonts = [f for page in pdf.pages if "/Font" in page.Resources for f in page.Resources.Font.values()]
    assert fonts
    for font in fonts:
        inner = font.DescendantFonts[0] if "/DescendantFonts" in font else font
        assert any(key in inner.FontDescriptor for key in ("/FontFile2", "/FontFile3"))
        assert re.match(r"/[A-Z]{6}\+", str(inner.BaseFont))
        assert "/ToUnicode" in font


def test_nothing_in_the_pages_acts(read):
    _, pdf = read
    assert "/OpenAction" not in pdf.Root
    assert "/AA" not in pdf.Root
    assert "/JavaScript" not in pdf.Root.get("/Names", {})
    assert all("/AA" not in page for page in pdf.pages)


def test_same_bytes_whenever_they_are_made(pages):
    publication = published("avocet-bonnet")
    assert pages.pdf(publication) == pages.pdf(publication)


def test_same_bytes_from_another_folder_of_fonts(pages):
    from loopwright.publishing.pages import pdf

    publication = make()
    assert pdf(publication) == pages.pdf(publication)


def test_threads_give_what_one_after_the_other_gives(pages):
    several = [make(n, edition=Edition(large_print=n == 2)) for n in (1, 2, 5, 14)]
    assert pages.pdfs(several) == [pages.pdf(p) for p in several]


def test_own_words_say_their_language(pages):
    publication = replace(make(), language="de", own_language="en-GB")
    pdf = opened(pages.pdf(publication))
    told = {str(e["/Lang"]) for _, e in tags(pdf) if "/Lang" in e}
    assert any(tag.startswith("en") for tag in told)


def test_the_date_is_the_publications_own(pages):
    pdf = opened(pages.pdf(make()))
    assert "20261001" in str(pdf.docinfo["/CreationDate"])


def test_a_chart_too_wide_for_a_page_is_cut_in_parts_that_all_have_words(pages):
    publication = make()
    wide = replace(publication.parts[-1], key="charts", heading="Charts", blocks=(figure(width=3000, height=700),))
    pdf = opened(pages.pdf(replace(publication, parts=(*publication.parts, wide))))
    told = [str(e["/Alt"]) for kind, e in tags(pdf) if kind == "Figure"]
    assert len(told) > 1
    assert told == [f"A chart of the crown. ({i + 1}/{len(told)})" for i in range(len(told))]


def test_the_film_of_a_section_is_linked_from_its_first_row(pages):
    publication = make(2, 1, 3)
    section: Any = publication.parts[5].blocks[0]
    part = replace(publication.parts[5], blocks=(replace(section, film="https://saltmarsh.example/film"),))
    for edition in (Edition(), Edition(large_print=True), Edition(paper="phone")):
        parts = (*publication.parts[:5], part, *publication.parts[6:])
        pdf = opened(pages.pdf(replace(publication, parts=parts, edition=edition)))
        links = [str(a.A.URI) for page in pdf.pages for a in page.get("/Annots", []) if "/A" in a and "/URI" in a.A]
        assert links == ["https://saltmarsh.example/film"]


@pytest.mark.parametrize("edition", [Edition(), Edition(large_print=True), Edition(paper="phone")])
@pytest.mark.parametrize("sizes", [1, 3])
def test_photographs_stand_with_their_section_and_have_words(pages, sizes, edition):
    held = io.BytesIO()
    Image.new("RGB", (1200, 800), "grey").save(held, "JPEG")
    shot = Figure(Picture("crown.jpg", "jpeg", held.getvalue()), "The crown, laid flat.", "The crown, laid flat.")
    publication = make(sizes, 2, 3)
    section: Any = publication.parts[5].blocks[1]
    part = replace(publication.parts[5], blocks=(publication.parts[5].blocks[0], replace(section, figures=(shot, shot))))
    pdf = opened(pages.pdf(replace(publication, parts=(*publication.parts[:5], part, *publication.parts[6:]), edition=edition)))
    assert [str(e["/Alt"]) for kind, e in tags(pdf) if kind == "Figure"] == ["The crown, laid flat."] * 2
