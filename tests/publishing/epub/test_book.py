"""The book: its archive, its contents, its words and numbers, its claims. EPUBCheck looks at it in tests/outside."""

from __future__ import annotations

import io
import zipfile
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from loopwright.publishing.document import Figure, Instructions, Part, Picture, Remark, Table, TableRow, in_brackets
from loopwright.publishing.epub import epub
from tests.publishing.made import published
from tests.publishing.web.test_page import HOSTILE, with_hostile_words

XHTML = "{http://www.w3.org/1999/xhtml}"
OPF = "{http://www.idpf.org/2007/opf}"
DC = "{http://purl.org/dc/elements/1.1/}"


def parsed(data: bytes) -> ET.Element:
    return ET.fromstring(data)  # noqa: S314 - made by us a moment ago


def opened(data: bytes) -> zipfile.ZipFile:
    return zipfile.ZipFile(io.BytesIO(data))


def package(book: zipfile.ZipFile) -> ET.Element:
    return parsed(book.read("OEBPS/package.opf"))


def reading_order(book: zipfile.ZipFile) -> list[str]:
    root = package(book)
    names = {i.get("id"): i.get("href") for i in root.iter(f"{OPF}item")}
    return [str(names[i.get("idref")]) for i in root.iter(f"{OPF}itemref")]


def text_of(book: zipfile.ZipFile) -> str:
    return " ".join(" ".join(parsed(book.read(f"OEBPS/{name}")).itertext()) for name in reading_order(book) if name != "nav.xhtml")


def squeezed(words: str) -> str:
    return " ".join(words.split())


def test_the_archive_is_as_readers_ask_for_it():
    book = opened(epub(published("avocet-bonnet")))
    first = book.infolist()[0]
    assert (first.filename, first.compress_type, book.read(first)) == ("mimetype", zipfile.ZIP_STORED, b"application/epub+zip")
    assert {e.date_time for e in book.infolist()} == {(1980, 1, 1, 0, 0, 0)}
    assert b"OEBPS/package.opf" in book.read("META-INF/container.xml")
    held = {f"OEBPS/{i.get('href')}" for i in package(book).iter(f"{OPF}item")}
    assert held == set(book.namelist()) - {"mimetype", "META-INF/container.xml", "OEBPS/package.opf"}


def test_the_same_document_gives_the_same_bytes_and_another_edition_another_name():
    first, again, other = (epub(published("avocet-bonnet", **e)) for e in ({}, {}, {"size": 1}))
    assert first == again
    names = [package(opened(b)).findtext(f".//{DC}identifier") for b in (first, other)]
    assert names[0] != names[1]
    assert all(n and n.startswith("urn:uuid:") for n in names)


@pytest.mark.parametrize(("name", "edition"), [("samphire-beanie", {}), ("samphire-beanie", {"size": 6}), ("curlew-toy", {}), ("plover-cardigan", {"large_print": True})])
def test_every_row_and_count_is_in_it_in_order(name, edition):
    publication = published(name, **edition)
    text = squeezed(text_of(opened(epub(publication))))
    at = 0
    for part in publication.parts:
        for section in part.blocks:
            if not isinstance(section, Instructions):
                continue
            for row in section.steps:
                said = [in_brackets(row.text)] if isinstance(row, Remark) else [in_brackets(row.words), f"({in_brackets(row.count)})" if row.count else ""]
                for words in said:
                    found = text.find(squeezed(words), at)
                    assert found >= at, words
                    at = found


def test_chapters_and_contents():
    book = opened(epub(published("avocet-bonnet")))
    order = reading_order(book)
    assert order[:3] == ["title.xhtml", "nav.xhtml", "sizes.xhtml"]
    assert [n for n in order if n.startswith("instructions")] == [f"instructions-{i}-{s}.xhtml" for i, s in ((1, "back"), (2, "front"), (3, "edging-and-ties"))]
    nav = parsed(book.read("OEBPS/nav.xhtml"))
    links = [(squeezed("".join(a.itertext())), a.get("href")) for a in nav.find(f".//{XHTML}nav").iter(f"{XHTML}a")]
    assert ("Instructions", "instructions-1-back.xhtml") in links
    assert ("Front", "instructions-2-front.xhtml") in links
    assert {href for _, href in links} == set(order) - {"nav.xhtml"}
    for name in order:
        headings = [h.tag for h in parsed(book.read(f"OEBPS/{name}")).iter(f"{XHTML}h1")]
        assert len(headings) == 1, name


def test_what_it_offers_is_what_it_has():
    def said(book):
        found: dict[str, list[str]] = {}
        for m in package(book).iter(f"{OPF}meta"):
            found.setdefault(str(m.get("property")), []).append(m.text or "")
        return found

    pictured = said(opened(epub(published("avocet-bonnet"))))
    words = said(opened(epub(published("avocet-bonnet", words_only=True))))
    large = said(opened(epub(published("avocet-bonnet", large_print=True))))
    assert pictured["schema:accessMode"] == ["textual", "visual"]
    assert words["schema:accessMode"] == ["textual"]
    assert {"alternativeText", "longDescription"} <= set(pictured["schema:accessibilityFeature"])
    assert not {"alternativeText", "longDescription", "largePrint"} & set(words["schema:accessibilityFeature"])
    assert "largePrint" in large["schema:accessibilityFeature"]
    assert pictured["schema:accessibilityHazard"] == ["none"]
    assert len(pictured["schema:accessibilitySummary"][0]) > 40
    assert not any(key.endswith("conformsTo") for key in pictured), "conformance is claimed by whoever evaluates, not by us"


def test_every_picture_has_words_and_every_table_heads():
    book = opened(epub(published("samphire-beanie")))
    pictures = tables = 0
    for name in reading_order(book):
        root = parsed(book.read(f"OEBPS/{name}"))
        for image in root.iter(f"{XHTML}img"):
            assert image.get("alt")
            assert f"OEBPS/{image.get('src')}" in book.namelist()
            pictures += 1
        for table in root.iter(f"{XHTML}table"):
            assert all(th.get("scope") for th in table.iter(f"{XHTML}th"))
            assert len(table.find(f"{XHTML}thead/{XHTML}tr")) <= 6  # type: ignore[arg-type]
            assert table.findtext(f"{XHTML}caption")
            tables += 1
    assert pictures >= 4
    assert tables >= 2 * 3  # ten sizes, cut into what a small screen holds


def test_a_wide_table_is_cut_without_losing_a_cell():
    columns = tuple(f"size {i}" for i in range(11))
    rows = (TableRow("around", tuple(f"a{i}" for i in range(11))), TableRow("depth", tuple(f"d{i}" for i in range(11)), "Worn"))
    table = Table("Sizes", "cm", columns, rows, of_sizes=True)
    publication = replace(published("curlew-toy"), parts=(Part("sizes", "Sizes", (table,)),))
    text = text_of(opened(epub(publication)))
    assert all(text.split().count(cell) == 1 for r in rows for cell in r.cells)


def test_hostile_words_stay_words():
    book = opened(epub(with_hostile_words()))
    for name in reading_order(book):
        root = parsed(book.read(f"OEBPS/{name}"))
        assert not list(root.iter(f"{XHTML}script"))
        assert not any(key.startswith("on") for e in root.iter() for key in e.attrib)
    assert package(book).findtext(f".//{DC}title") == HOSTILE


def test_a_picture_that_cannot_be_shown_is_told():
    bad = Picture("bad.svg", "svg", b"<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>")
    broken = Picture("broken.jpg", "jpeg", b"no picture")
    part = Part("charts", "Charts", (Figure(bad, "a chart of the crown"), Figure(broken, "the crown, laid flat")))
    book = opened(epub(replace(published("curlew-toy"), parts=(part,))))
    text = text_of(book)
    assert "a chart of the crown" in text
    assert "the crown, laid flat" in text
    assert not [n for n in book.namelist() if "images/" in n]


def test_the_languages_are_told():
    publication = replace(published("curlew-toy"), language="de", own_language="en-US")
    book = opened(epub(publication))
    assert [e.text for e in package(book).iter(f"{DC}language")] == ["de", "en-US"]
    root = parsed(book.read("OEBPS/title.xhtml"))
    assert root.get("{http://www.w3.org/XML/1998/namespace}lang") == "de" == root.get("lang")
    assert root.find(f".//{XHTML}h1").get("lang") == "en-US"
