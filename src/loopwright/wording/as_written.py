"""Words kept as they stand: only terms that are surely terms are exchanged, and lists of sizes brought down to one size."""

from __future__ import annotations

import re
from functools import lru_cache

from loopwright.terms import Dialect, dialect
from loopwright.wording.voice import Voice

_LIST = re.compile(r"(?P<first>\d+|[-–—])\s?[(\[](?P<rest>(?:\d+|[-–—])(?:\s*[,:;]\s*(?:\d+|[-–—]))*)[)\]]")
_TOG = re.compile(r"(?P<post>fp|bp)?(?P<kind>[a-z ]+?)(?P<n>\d+)tog$", re.IGNORECASE)


@lru_cache(maxsize=32)
def _terms(source: Dialect) -> tuple[re.Pattern[str], dict[str, tuple[str, int]]]:
    """The terms of a dialect that stand for one stitch only: (kind, which form) by their words in lower case."""
    table: dict[str, tuple[str, int]] = {}
    for kind, term in source.terms.items():
        for form, said in enumerate(term):
            if source.kind_of(said) == kind:
                table.setdefault(said.lower(), (kind, form))
    longest = sorted(table, key=len, reverse=True)
    ways = "|".join(re.escape(w).replace(r"\ ", r"[ ]") for w in longest)
    pattern = re.compile(rf"(?<![A-Za-z-])(?P<post>fp|bp|front post |back post )?(?P<term>{ways})(?P<tog>\d+tog)?(?![a-z])", re.IGNORECASE)
    return pattern, table


def translate(voice: Voice, text: str) -> str:
    """A text in the terms of the voice, sizes brought down to one where one is asked for."""
    return swap_terms(pick_size(voice, text), voice.source, voice.dialect)


def swap_terms(text: str, source: Dialect, target: Dialect) -> str:
    """Exchanges the terms of one dialect for those of another in running words."""
    if source.id == target.id:
        return text
    pattern, table = _terms(source)

    def swap(m: re.Match[str]) -> str:
        kind, form = table[m["term"].lower()]
        said = target.term(kind)[form]
        said = said[:1].upper() + said[1:] if m["term"][:1].isupper() and m["term"][1:2].islower() else said
        return f"{m['post'] or ''}{said}{m['tog'] or ''}"

    return pattern.sub(swap, text)


def pick_size(voice: Voice, text: str) -> str:
    """Lists of sizes reduced to one size; lists that have another number of entries stay."""
    if voice.size is None or voice.sizes < 2:
        return text

    def pick(m: re.Match[str]) -> str:
        values = [m["first"], *re.split(r"\s*[,:;]\s*", m["rest"])]
        assert voice.size is not None
        return values[voice.size] if len(values) == voice.sizes else m.group()

    return _LIST.sub(pick, text)


def doubtful_words(text: str, source: Dialect, target: Dialect) -> list[str]:
    """Words in prose that mean a stitch in one set of terms and cannot be exchanged safely."""
    if source.id == target.id:
        return []
    return sorted({m.group().lower() for m in re.finditer(r"\b(?:singles?|doubles?|trebles?|plain stitch(?:es)?)\b", swap_terms(text, source, dialect("us")), re.IGNORECASE)})
