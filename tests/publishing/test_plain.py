"""Plain text and Markdown: complete, in order, in narrow lines, and every mark a mark only where it is ours."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from loopwright.publishing.document import Instructions, Paragraph, Part, Remark, Step, in_brackets
from loopwright.publishing.plain import WIDTH, markdown, text
from tests.publishing.made import published

NAMES = ["samphire-beanie", "avocet-bonnet", "plover-cardigan", "curlew-toy"]


def squeezed(words: str) -> str:
    return " ".join(words.replace("\n> ", "\n").split())


@pytest.mark.parametrize("name", NAMES)
def test_lines_are_narrow_and_no_row_is_cut_from_its_number(name):
    lines = text(published(name)).split("\n")
    assert max(map(len, lines)) <= WIDTH
    assert not [line for line in lines if line.endswith((" Rnd", " Row", " Rnds", " Rows", " "))]
    assert not [a for a, b in pairwise(lines) if not a and not b]


@pytest.mark.parametrize("name", NAMES)
def test_everything_is_told_in_order(name):
    publication = published(name)
    said = squeezed(text(publication))
    assert said.startswith(publication.title)
    at = 0
    for part in publication.parts:
        for section in part.blocks:
            for row in section.steps if isinstance(section, Instructions) else ():
                words = in_brackets(row.text if isinstance(row, Remark) else row.words)
                found = said.find(squeezed(words), at)
                assert found >= at, words
                at = found
                if isinstance(row, Step) and row.count:
                    assert said[at:].startswith(squeezed(f"{words} ({in_brackets(row.count)})"))


@pytest.mark.parametrize("name", NAMES)
def test_what_pictures_show_is_told_in_full(name):
    publication = published(name)
    for made in (squeezed(text(publication)), squeezed(markdown(publication).replace("\\", ""))):
        for part in publication.parts:
            for block in part.blocks:
                if part.key in ("charts", "schematic"):
                    told = block.description or block.alt
                    assert all(squeezed(line) in made for line in told.split("\n"))


def test_parts_stand_in_the_order_of_the_trade():
    said = text(published("samphire-beanie"))
    order = ["Samphire Beanie", "Terms: US", "Sizes and finished measurements", "Materials", "Gauge: 17 hdc", "Abbreviations", "Notes", "Schematic", "\nCrown\n", "> Charts"]
    at = [said.index(words) for words in order]
    assert at == sorted(at)


def test_one_size_is_clean():
    said = text(published("samphire-beanie", size=6))
    assert "Size: child" in said
    assert "Rnds 4-9: Continue as established" in said
    assert "(5, 6, 6" not in said


def test_a_long_word_is_not_broken():
    word = "https://saltmarsh.example/" + "x" * 90
    publication = replace(published("curlew-toy"), parts=(Part("help", "Help", (Paragraph((f"Ask at {word} first.",)),)),))
    assert word in text(publication)
    assert word in markdown(publication).replace("\\", "")


def test_empty_documents_have_their_title():
    publication = replace(published("curlew-toy"), parts=())
    assert text(publication) == "Curlew Toy\n"
    assert markdown(publication) == "# Curlew Toy\n"
