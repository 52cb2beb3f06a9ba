"""The text that comes out of the pages holds every count of every row in every size."""

from __future__ import annotations

import re
from typing import Any

import pypdfium2
import pytest

from loopwright.publishing.document import Instructions, Step, in_brackets, of_size
from loopwright.publishing.pages.sheet import column_mm, sheet_of
from tests.publishing.made import published
from tests.publishing.pages.made_up import texts

DESIGNS = ("avocet-bonnet", "samphire-beanie", "plover-cardigan", "curlew-toy", "sea-lavender-blanket", "thrift-shawl")
POINTS = 72 / 25.4
FORMS: dict[str, dict[str, Any]] = {"columns": {}, "far": {"large_print": True}, "phone": {"paper": "phone"}}


def _steps(publication):
    return [s for p in publication.parts for b in p.blocks if isinstance(b, Instructions) for s in b.steps if isinstance(s, Step)]


def _numbers(text: str) -> list[str]:
    return re.findall(r"\d+", text)


def _needed(publication):
    """Per row and size the count that must be told: as the row says it, else as it was worked."""
    for step in _steps(publication):
        for i, alone in enumerate(step.by_size):
            if alone is None:
                continue
            said = _numbers(of_size(step.count, i))
            if said:
                yield step.ident, said[0]
            elif step.counts[i] is not None:
                yield step.ident, str(step.counts[i])


@pytest.mark.parametrize("name", DESIGNS)
@pytest.mark.parametrize("form", FORMS)
def test_every_count_stands_in_the_text(pages, name, form):
    publication = published(name, **FORMS[form])
    left = _numbers(" ".join(texts(pages.pdf(publication))))
    needed = list(_needed(publication))
    assert needed
    assert [(row, n) for row, n in needed if n not in left] == []


@pytest.mark.parametrize("size", range(5))
def test_counts_of_one_size_stand_in_order(pages, size):
    publication = published("avocet-bonnet", size=size)
    text = " ".join(texts(pages.pdf(publication)))
    at = text.index("My notes")
    for row, count in _needed(publication):
        found = re.compile(rf"(?<!\d){count}(?!\d)").search(text, at)
        assert found is not None, (row, count)
        at = found.start()


@pytest.mark.parametrize("name", ["samphire-beanie", "plover-cardigan"])
def test_numbers_stand_in_the_column_of_their_size(pages, name):
    """What is printed in the strip of a size holds that size's counts in order."""
    publication = published(name)
    sheet, column = sheet_of(publication), column_mm(len(publication.sizes))
    document = pypdfium2.PdfDocument(pages.pdf(publication))
    upright = [page for page in document if page.get_width() < page.get_height()]
    for i in range(len(publication.sizes)):
        left = (sheet.width_mm - sheet.side_mm - (len(publication.sizes) - i) * column) * POINTS
        strip = [n for page in upright for n in _numbers(page.get_textpage().get_text_bounded(left=left, right=left + column * POINTS))]
        at = 0
        for step in (s for s in _steps(publication) if len(set(s.counts)) > 1):
            wanted = (_numbers(of_size(step.count, i)) or [str(step.counts[i])])[0]
            at = strip.index(wanted, at)


def test_words_of_rows_are_whole_on_one_page(pages):
    publication = published("plover-cardigan", large_print=True)
    found = [" ".join(page.split()) for page in texts(pages.pdf(publication))]
    for step in _steps(publication):
        said = " ".join(in_brackets(step.words).split())
        assert any(said in page for page in found), step.ident
