"""Text to tree in any of the languages that are read: English at once, another one by way of the reader's English."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from loopwright.model.tree import Document
from loopwright.notation import document as english
from loopwright.notation.folded import unfolded
from loopwright.notation.foreign.detect import language_of
from loopwright.source import Source


def read(source: Source, terms: str | None = None, memo: dict[Any, Any] | None = None) -> Document:
    """Reads a pattern as written. Never raises: what cannot be read stays as prose or unknown words.

    `terms`: us, uk or old, or the code of another language (de, fr, es); found out when not said. A pattern in another language has its
    document in the reader's English, and the way back to its own characters in `translated`.
    `memo` keeps lines between calls: one that says the same at the same place is not read again.
    """
    language, told = language_of(source.text, terms)
    if language == "en":
        return english.read(source, terms, memo)
    from loopwright.notation.foreign.items import in_language
    from loopwright.notation.foreign.translate import translated

    own = replace(translated(unfolded(source.text), language, told), original=source.text)
    return in_language(english.read(Source.of(own.made, source.name), "us", memo), own)


def write(document: Document) -> str:
    """The text again, as written."""
    if document.translated:
        return document.translated.original
    return document.written or document.text
