"""The language a pattern is written in: said in its heading, or found out by the words it uses. English unless another one is plain."""

from __future__ import annotations

import re
from functools import cache, lru_cache

from loopwright.source.expressions import Expression
from loopwright.terms.reading import LANGUAGES, language_named, marks, plain

SAMPLE = 12_000  # characters that are looked at
_NAMES = ("language", "sprache", "langue", "idioma", "lengua")
_SAID = Expression(rf"^(?:{'|'.join(_NAMES)})\s*:\s*([^\W\d_]+)", re.IGNORECASE | re.MULTILINE)
_LEFT = Expression(r"\[en:[^\[\]]*\]")  # words that a translation left in English
_WORD = re.compile(r"[^\W\d_]+")


def language_of(text: str, terms: str | None = None) -> tuple[str, bool]:
    """The code of the language and whether it was said. "en" where no other one is plainly met.

    `terms` may name a language; "us", "uk" and "old" say English.
    """
    if terms in LANGUAGES:
        return terms, True
    if terms is not None:
        return "en", True
    sample = text if "[en:" not in text else _LEFT.sub("", text)
    found = [word for line in sample[:SAMPLE].split("\n") for word in _marked(line)]
    if _all_marks().isdisjoint(found):
        low = text[:SAMPLE].lower()
        told = _SAID.search(text[:SAMPLE]) if "\n" in text and any(name in low for name in _NAMES) else None
        return (language_named(told[1]) or "en" if told else "en"), told is not None
    told = _SAID.search(text[:SAMPLE])
    if told:
        return language_named(told[1]) or "en", True
    return _counted(found), False


@lru_cache(maxsize=8_192)
def _marked(line: str) -> tuple[str, ...]:
    """The words of a line that show a language, English among them."""
    return tuple(w for w in _WORD.findall(plain(line)) if w in _all_marks() or w in marks("en"))


@cache
def _all_marks() -> frozenset[str]:
    return frozenset().union(*(marks(code) for code in LANGUAGES))


def _counted(found: list[str]) -> str:
    """The language whose own words are met most: more often than English ones, and two different ones at least."""
    hits = {code: _hits(found, marks(code)) for code in LANGUAGES}
    best = max(hits, key=lambda code: hits[code])
    several = len(marks(best).intersection(found)) > 1
    return best if several and hits[best] > _hits(found, marks("en")) else "en"


def _hits(words: list[str], marks: frozenset[str]) -> int:
    return sum(w in marks for w in words)
