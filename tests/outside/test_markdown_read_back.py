"""Markdown read back by a general reader of it (PyPI markdown-it-py, CommonMark with tables): nothing of ours becomes a mark, or is lost."""

from __future__ import annotations

import re
from dataclasses import replace
from html import unescape

import pytest

from loopwright.publishing.document import Instructions, Paragraph, Part, Publication, Remark, Table, in_brackets
from loopwright.publishing.plain import markdown
from tests.publishing.made import published

ODD = ["*hdc in next st; rep from * around", "_sc_ **dc**", "# 3", "1. one", "- ch 2", "+ 4", "<b>&amp;", "[ch 1] (sl st)", "a | b", "`ch`", "~~x~~", "\\*", "=== ---"]


def read(text: str) -> str:
    reader = pytest.importorskip("markdown_it", reason="markdown-it-py is needed to read Markdown back")
    return str(reader.MarkdownIt("commonmark").enable("table").render(text))


def words(page: str) -> str:
    return " ".join(unescape(re.sub(r"<[^>]+>", " ", page)).split())


@pytest.mark.parametrize("odd", ODD)
def test_odd_words_come_back_as_they_were(odd):
    publication = replace(published("curlew-toy"), title=odd, parts=(Part("notes", odd, (Paragraph((f"{odd} and then {odd}",)),)),))
    page = read(markdown(publication))
    page = page.replace("\n", " ").replace("> <", ">\n<").strip() + "\n"
    assert page == f"<h1>{_html(odd)}</h1>\n<h2>{_html(odd)}</h2>\n<p>{_html(f'{odd} and then {odd}')}</p>\n"


def _html(said: str) -> str:
    return said.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


@pytest.mark.parametrize("name", ["samphire-beanie", "avocet-bonnet", "curlew-toy"])
def test_every_row_is_there_once_in_order(name):
    publication: Publication = published(name)
    page = read(markdown(publication))
    text = words(page)
    at = 0
    for part in publication.parts:
        for block in part.blocks:
            for row in block.steps if isinstance(block, Instructions) else ():
                said = " ".join(in_brackets(row.text if isinstance(row, Remark) else row.words).split())
                found = text.find(said, at)
                assert found >= at, said
                at = found
    tables = [b for p in publication.parts for b in p.blocks if isinstance(b, Table)]
    assert page.count("<table>") == len(tables)
    assert page.count("<td") == sum((len(r.cells) + 1) + (len(r.cells) + 1 if r.group else 0) for t in tables for r in t.rows)
    assert "<em>" not in page
