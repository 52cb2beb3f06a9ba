"""The law of languages: a design written in German, French or Spanish and read back gives the same fabric, size by size."""

from functools import cache
from pathlib import Path

import pytest

from loopwright.grading import grade
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write
from loopwright.working import work

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))


@cache
def made(path):
    graded = grade(read(Source.of(path.read_text(encoding="utf-8"))), work)
    return graded.document, graded.report or work(graded.document)


def stitches(fabric):
    return [(fabric.name(i), fabric.row[i], fabric.parents(i), fabric.where(i), fabric.part_of(i)) for i in range(len(fabric))]


def the_same(text, language, fabrics):
    document = read(Source.of(text))
    assert document.language == language
    found = work(document).fabrics
    assert len(found) == len(fabrics)
    for size, (back, before) in enumerate(zip(found, fabrics, strict=True)):
        assert back is not None
        assert stitches(back) == stitches(before), (document.sizes[size], document.text)


@pytest.mark.parametrize("language", ["de", "fr", "es"])
@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_all_sizes(path, language):
    document, report = made(path)
    the_same(write(document, report, terms=document.terms, language=language), language, report.fabrics)


@pytest.mark.parametrize("language", ["de", "fr", "es"])
@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_one_size_in_full_words(path, language):
    document, report = made(path)
    size = len(document.sizes) // 2
    text = write(document, report, terms=document.terms, size=size, full_words=True, language=language)
    the_same(text, language, [report.fabrics[size]])
