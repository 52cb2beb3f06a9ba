"""The document of a translated pattern: its own words where it is no instruction, and what was taken for granted."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.translated import Translated
from loopwright.model.tree import Document, Item, Prose, Section
from loopwright.source import Span
from loopwright.terms.reading import LANGUAGES, folded


def in_language(document: Document, own: Translated) -> Document:
    """The document with the language it is written in; prose, titles of sections and its own title say what the designer wrote."""
    items = tuple(_own_words(i, own) for i in document.items)
    at = own.made.find(document.title) if document.title else -1
    title = own.words(Span(at, at + len(document.title))) if document.title and at >= 0 else document.title
    noted: tuple[tuple[Span, str], ...] = ()
    if not own.said:
        noted = ((Span(0, min(1, len(own.made))), f"read as {LANGUAGES[own.language]}, by the words that the text uses"),)
    kept = tuple(a for a in document.assumptions if "terms taken" not in a[1])
    return replace(document, items=items, title=title, language=own.language, translated=own, assumptions=(*noted, *kept))


def _own_words(item: Item, own: Translated) -> Item:
    """An item as it was written; a part with a usual name ("Krone") keeps its English one, by which rows and the worker know it."""
    if isinstance(item, Prose):
        return replace(item, text=own.words(item.span))
    if isinstance(item, Section) and _letters(own.words(item.span)) == _letters(item.title):
        return replace(item, title=own.words(item.span).rstrip(": "))
    return item


def _letters(text: str) -> str:
    return "".join(c for c in folded(text) if c.isalnum())
