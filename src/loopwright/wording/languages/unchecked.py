"""Which terms of a text a native maker should look at: those for which no source was seen."""

from __future__ import annotations

from collections.abc import Iterable
from typing import NamedTuple

from loopwright.terms.languages import language


class Unchecked(NamedTuple):
    """A term without a source: its key, short and long form, and how it came to be ("custom" of the trade, or "memory")."""

    key: str
    short: str
    long: str
    sure: str


def unchecked(code: str, used: Iterable[str]) -> list[Unchecked]:
    """The weak terms among the keys used (stitches, things, words), in the order of use, each once; to be checked by a native maker.

    Raises ValueError for a language that there is not.
    """
    table = language(code)
    found: dict[str, Unchecked] = {}
    for key in used:
        word = table.nouns.get(key) or table.words.get(key) or table.stitch(key)
        if word.weak:
            found.setdefault(key, Unchecked(key, word.short, word.long, word.sure))
    return list(found.values())
