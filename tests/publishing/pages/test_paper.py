"""Sheets: their size, margins that nothing crosses, rows that stay whole, what stands on every page."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pypdfium2
import pytest

from loopwright.publishing.document import Edition
from loopwright.publishing.pages.sheet import sheet_of
from tests.publishing.made import published
from tests.publishing.pages.made_up import figure, make, opened, texts

POINTS = 72 / 25.4
PAPERS = {"a4": (210, 297), "letter": (215.9, 279.4), "phone": (90, 160)}
EDITIONS: list[dict[str, Any]] = [{}, {"paper": "letter"}, {"paper": "phone"}, {"large_print": True}]
FORMS = {
    "columns": (3, Edition()), "many columns": (12, Edition()), "brackets": (14, Edition()), "ledger": (1, Edition()),
    "far": (3, Edition(large_print=True)), "phone": (3, Edition(paper="phone")), "letter": (10, Edition(paper="letter")),
    "a section a page": (3, Edition(section_per_page=True)), "ink-saving": (3, Edition(ink_saving=True)),
}


@pytest.fixture(scope="module", params=FORMS)
def laid(request, pages):
    sizes, edition = FORMS[request.param]
    publication = make(sizes, edition=edition)
    return publication, pages.pdf(publication)


@pytest.mark.parametrize("paper", PAPERS)
def test_pages_have_the_size_of_their_paper(pages, paper):
    for page in opened(pages.pdf(make(edition=Edition(paper=paper)))).pages:
        box = [float(v) for v in page.mediabox]
        assert box[2] == pytest.approx(PAPERS[paper][0] * POINTS, abs=0.1)
        assert box[3] == pytest.approx(PAPERS[paper][1] * POINTS, abs=0.1)


def test_no_row_is_split(laid):
    publication, pdf = laid
    found = texts(pdf)
    for section in range(3):
        for row in range(12):
            begun = [i for i, page in enumerate(found) if f"begin{section}x{row} " in page]
            ended = [i for i, page in enumerate(found) if f"end{section}x{row}." in page]
            assert begun == ended
            assert len(begun) == 1, publication.edition


def test_a_heading_stands_with_its_first_row(laid):
    """A page that begins or goes on with a section shows rows of it below the heading."""
    _, pdf = laid
    found = [page for page in texts(pdf) if "In this pattern" not in page]
    for section in range(3):
        headed = [page for page in found if f"Section{section}" in page]
        first = next(page for page in found if f"begin{section}x0 " in page)
        assert first in headed
        assert all(f"begin{section}x" in page or f"Fasten off {section}" in page for page in headed)


def test_version_title_and_number_stand_on_every_page(laid):
    _, pdf = laid
    found = texts(pdf)
    for number, page in enumerate(found, 1):
        assert "Test Hat" in page
        assert "2.1" in page
        assert f"page {number} of {len(found)}" in page


def test_address_of_corrections_stands_on_every_page_but_in_large_print(laid):
    publication, pdf = laid
    for page in texts(pdf):
        joined = "".join(page.split())
        assert ("saltmarsh.example/c" in joined) or publication.edition.large_print


def _ink(page: pypdfium2.PdfPage) -> tuple[float, float, float, float]:
    """Left, top, right and bottom of what is printed, mm from the page's left and upper edges."""
    from PIL import ImageOps

    image = ImageOps.invert(page.render(scale=2).to_pil().convert("L")).point(lambda v: 255 if v > 24 else 0)
    left, top, right, bottom = (v / 2 / POINTS for v in image.getbbox() or (0, 0, 0, 0))
    return left, top, right, bottom


def _assert_inside(publication, pdf):
    sheet = sheet_of(publication)
    for number, page in enumerate(pypdfium2.PdfDocument(pdf), 1):
        width, height = (v / POINTS for v in page.get_size())
        left, top, right, bottom = _ink(page)
        assert left >= sheet.side_mm - 0.6, number
        assert right <= width - sheet.side_mm + 0.6, number
        assert top >= min(sheet.top_mm, 10) - 0.6, number
        assert bottom <= height - 4.0, number


def test_nothing_is_printed_beyond_the_margins(laid):
    _assert_inside(*laid)


@pytest.mark.parametrize("name", ["samphire-beanie", "plover-cardigan", "avocet-bonnet", "curlew-toy"])
@pytest.mark.parametrize("edition", EDITIONS)
def test_designs_stay_inside_their_margins(pages, name, edition):
    publication = published(name, **edition)
    _assert_inside(publication, pages.pdf(publication))


def test_a_draft_says_so_on_every_page(pages):
    publication = replace(make(), draft="line 4: a count is missing")
    found = texts(pages.pdf(publication))
    assert all("Draft" in page for page in found)
    assert "a count is missing" in found[0]


def test_sizes_beyond_twelve_stand_in_brackets(pages):
    found = " ".join(" ".join(texts(pages.pdf(make(13, 1, 2)))).split())
    assert "10 (11, 12, 13, 14, 15, 16, 17, 18, 19, 20, 21, 22) dc" in found


def test_twelve_sizes_stand_in_columns(pages):
    found = " ".join(" ".join(texts(pages.pdf(make(12, 1, 2)))).split())
    assert "10 11 12 13 14 15 16 17 18 19 20 21" in found


def test_a_section_a_page(pages):
    found = texts(pages.pdf(make(2, 3, 3, edition=Edition(section_per_page=True))))
    assert all(sum(f"begin{s}x" in page for s in range(3)) <= 1 for page in found)


def test_a_row_longer_than_a_page_goes_on_on_the_next(pages):
    publication = make(2, 1, 4, words="Dc in each of next 3 sts, ch 2, miss next 2 sts, shell in next st, picot; " * 70)
    found = texts(pages.pdf(publication))
    assert sum("end0x3." in page for page in found) == 1
    _assert_inside(publication, pages.pdf(publication))


@pytest.mark.parametrize("form", ["columns", "many columns", "brackets", "ledger", "far", "phone"])
def test_the_longest_row_that_is_kept_whole_fits(pages, form):
    sizes, edition = FORMS[form]
    publication = make(sizes, 1, 2, edition=edition)
    words = "Treble in next stitch, 2 chain, miss next stitch, " * 200
    part = publication.parts[5]
    section: Any = part.blocks[0]
    long = replace(section.steps[1], words=(words[: sheet_of(publication).longest - 6] + " last.",))
    part = replace(part, blocks=(replace(section, steps=(section.steps[0], long)),))
    publication = replace(publication, parts=(*publication.parts[:5], part, *publication.parts[6:]))
    pdf = pages.pdf(publication)
    assert sum(" last." in " ".join(page.split()) for page in texts(pdf)) == 1
    _assert_inside(publication, pdf)


def test_a_heading_stays_with_a_chart_across(pages):
    publication = make()
    wide = replace(publication.parts[-1], key="charts", heading="Charts", blocks=(figure(width=1900, height=700),))
    pdf = pages.pdf(replace(publication, parts=(*publication.parts, wide)))
    turned = [i for i, page in enumerate(opened(pdf).pages) if float(page.mediabox[2]) > float(page.mediabox[3])]
    assert len(turned) == 1
    assert "Charts" in texts(pdf)[turned[0]]
