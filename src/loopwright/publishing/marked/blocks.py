"""Blocks that web pages and EPUBs lay out alike: paragraphs, lists, facts, tables. Nothing in them is a void element."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.publishing.document import Facts, Figure, Listing, Paragraph, Publication, Table, TableRow, in_brackets
from loopwright.publishing.marked.element import Markup, el, join

_ADDRESS = re.compile(r"https?://[^\s<>\"]*[^\s<>\"().,;:!?]")


def linked(text: str) -> Markup:
    """Words in which addresses are links."""
    found: list[str] = []
    at = 0
    for m in _ADDRESS.finditer(text):
        found += [text[at : m.start()], el("a", m[0], href=m[0])]
        at = m.end()
    return join([*found, text[at:]])


def safe_address(address: str) -> str | None:
    """An address that a link may lead to: of the web, nothing that runs."""
    return address if _ADDRESS.fullmatch(address) else None


def own_language(publication: Publication, *, own: bool) -> str | None:
    """The language of the designer's own words, where it is not the document's."""
    return publication.own_language if own and publication.own_language != publication.language else None


def block(held: Paragraph | Listing | Facts | Table, publication: Publication, level: int) -> Markup:
    """A block as elements; `level` of a small heading inside it."""
    if isinstance(held, Paragraph):
        return join(_paragraph(held, publication, level))
    if isinstance(held, Listing):
        items = (el("li", linked(in_brackets(t))) for t in held.items)
        return el("ol" if held.ordered else "ul", *items, class_="list", lang=own_language(publication, own=held.own))
    if isinstance(held, Facts):
        return _facts(held)
    return _table(held)


def paragraphs(text: str) -> Markup:
    """Lines of text as paragraphs."""
    return join(el("p", line) for line in text.split("\n") if line.strip())


def figure_words(figure: Figure, publication: Publication) -> Markup:
    """What a picture shows, in words, to be opened; nothing where its short words say it all."""
    if not figure.description:
        return Markup()
    of = figure.caption.split(". ", 1)[0].rstrip(".")
    summary = el("summary", f"{publication.phrases['in-words']}{f': {of}' if of else ''}")
    return el("details", summary, el("div", paragraphs(figure.description), class_="in-words"))


def _paragraph(held: Paragraph, publication: Publication, level: int) -> Iterator[Markup]:
    if held.heading:
        yield el(f"h{level}", held.heading)
    yield el("p", linked(in_brackets(held.text)), lang=own_language(publication, own=held.own))


def _facts(held: Facts) -> Markup:
    pairs = (el("div", el("dt", name), el("dd", linked(in_brackets(text)))) for name, text in held.pairs)
    return el("dl", *pairs, class_="facts close" if held.close else "facts")


def _table(held: Table) -> Markup:
    head = el("tr", el("th", held.corner, scope="col"), *(el("th", c, scope="col") for c in held.columns))
    bodies = [el("tbody", *_rows(group, len(held.columns))) for group in _groups(held.rows)]
    caption = el("caption", held.caption)
    return el("table", caption, el("thead", head), *bodies, data_sizes=held.of_sizes)


def _groups(rows: Sequence[TableRow]) -> list[list[TableRow]]:
    found: list[list[TableRow]] = []
    for row in rows:
        if row.group or not found:
            found.append([])
        found[-1].append(row)
    return found


def _rows(group: Sequence[TableRow], columns: int) -> Iterator[Markup]:
    if group[0].group:
        yield el("tr", el("th", group[0].group, scope="rowgroup", colspan=columns + 1), class_="group")
    for row in group:
        yield el("tr", el("th", row.head, scope="row"), *(el("td", cell) for cell in row.cells))
