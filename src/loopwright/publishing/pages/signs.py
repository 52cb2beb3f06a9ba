"""Characters of a document: made plain, and told where no font holds them."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

from loopwright.publishing.document import Facts, Figure, Instructions, Listing, Paragraph, Publication, Remark, Table, Text, in_brackets
from loopwright.publishing.errors import PageError

# Signs that our fonts lack and that others stand for without a change of meaning; invisible ones go.
_ALIKE = str.maketrans({
    "\u2010": "-", "\u2011": "-", "\u2032": "'", "\u2033": '"', "\u202f": "\u00a0", "\u2009": "\u00a0", "\u2007": "\u00a0",
    "\u200b": "", "\u200c": "", "\u200d": "", "\u2060": "", "\ufeff": "", "\u00ad": "", "\u200e": "", "\u200f": "", "\ufe0f": "",
})
_CONTROLS = re.compile("[\x00-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff]+")
_MEASURE = re.compile(r"(?<=\d) (?=(?:cm|mm)\b)")  # a number and its unit stay on one line
Told = tuple[str, str]
"""A place in the document, in words, and the text that stands there."""


def plain(text: str) -> str:
    """A text on one line, without control characters, in composed letters, with signs that the fonts hold where some mean the same."""
    return _MEASURE.sub("\u00a0", unicodedata.normalize("NFC", _CONTROLS.sub(" ", text)).translate(_ALIKE))


def require_signs(publication: Publication, held: set[int]) -> None:
    """Raises PageError for the first character that no font holds, with the word and the row that it is in."""
    for place, text in _told(publication):
        said = plain(text)
        if all(ord(c) in held for c in said):
            continue
        sign = next(c for c in said if ord(c) not in held)
        word = next(w for w in said.split(" ") if sign in w)
        raise lacking(place, sign, word)


def lacking(place: str, sign: str, word: str) -> PageError:
    """That no font holds a sign, with the word and the place that it is in, and the way out."""
    name = unicodedata.name(sign, "a sign without a name").lower()
    return PageError(
        f"{place}: no font of these pages holds '{sign}' (U+{ord(sign):04X}, {name}) in '{word}'; "
        "write it in words, or give a typeface that holds it",
    )


def _told(publication: Publication) -> Iterator[Told]:
    yield "title", publication.title
    yield "version", f"{publication.version} {publication.date} {publication.corrections} {publication.author}"
    yield "draft", publication.draft
    yield from (("sizes", size) for size in publication.sizes)
    yield from (("page furniture", said) for said in publication.phrases.values())
    for part in publication.parts:
        where = part.heading or "title page"
        yield where, part.heading
        for block in part.blocks:
            if isinstance(block, Instructions):
                yield from _of_rows(block, where)
            elif isinstance(block, Table):
                yield from _of_table(block)
            elif isinstance(block, Figure):
                yield from _of_figure(block, where)
            else:
                yield from ((where, text) for text in _of_words(block))


def _of_words(block: Paragraph | Listing | Facts) -> Iterator[str]:
    if isinstance(block, Paragraph):
        yield f"{block.heading} {in_brackets(block.text)}"
    elif isinstance(block, Listing):
        yield from (in_brackets(item) for item in block.items)
    else:
        yield from (f"{name} {in_brackets(text)}" for name, text in block.pairs)


def _of_rows(section: Instructions, part: str) -> Iterator[Told]:
    where = section.title or part
    yield where, section.title
    for figure in section.figures:
        yield from _of_figure(figure, where)
    for step in section.steps:
        if isinstance(step, Remark):
            yield where, in_brackets(step.text)
            continue
        label = in_brackets(step.label)
        place = f"{where}, {label}" if label else where
        yield from ((place, said) for said in (step.lead, label, *_joined(step.words, step.count)))


def _joined(*texts: Text) -> Iterator[str]:
    return (in_brackets(text) for text in texts)


def _of_table(table: Table) -> Iterator[Told]:
    for text in (table.caption, table.corner, table.note, *table.columns):
        yield table.caption, text
    for row in table.rows:
        yield f"{table.caption}, {row.head}", " ".join((row.group, row.head, *row.cells))


def _of_figure(figure: Figure, where: str) -> Iterator[Told]:
    yield f"{where}, caption", f"{figure.caption}"
    yield f"{where}, picture in words", figure.description
