"""The published text read again by the reader: the same fabric, in every English edition of every design.

The text is all of the document, its tables, notes and descriptions of charts among it, in wrapped lines.
"""

from __future__ import annotations

import pytest

from loopwright.publishing.plain import text
from tests.publishing.conftest import ALL, _gathered
from tests.publishing.made import published
from tests.wording.law import same, worked

WAYS = [{}, {"spelled_out": True, "full_words": True}, {"large_print": True}]


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("name", ALL)
def test_the_text_of_all_sizes_gives_the_same_fabrics(name, terms):
    first = _gathered(name).pattern.report
    for way in WAYS[:2]:
        assert same(first, worked(text(published(name, terms=terms, **way))).report), way


@pytest.mark.parametrize("name", ALL)
def test_the_text_of_each_size_gives_its_fabric(name):
    pattern = _gathered(name).pattern
    for size in range(len(pattern.sizes)):
        terms, way = ("us", "uk")[size % 2], WAYS[size % 3]
        assert same(pattern.report, worked(text(published(name, terms=terms, size=size, **way))).report, size), (size, terms, way)
