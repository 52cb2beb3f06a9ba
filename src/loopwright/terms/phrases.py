"""Phrase frames of a language: how instructions are put into words. The frames stand in phrases/*.toml."""

from __future__ import annotations

from functools import cache
from typing import Any

from loopwright.record import record
from loopwright.shipped import shipped_table


@record
class Phrases:
    """Frames and nouns for one set of terms, abbreviated or in full words; `heading` and `abbreviations` for the top of a pattern."""

    frames: dict[str, str]
    nouns: dict[str, tuple[str, str]]
    heading: dict[str, Any]
    abbreviations: dict[str, str]


@cache
def _data(language: str) -> dict[str, Any]:
    return shipped_table("loopwright.terms", f"phrases/{language}.toml")


@cache
def phrases(terms: str, full_words: bool = False, language: str = "en") -> Phrases:
    """The frames of a language for "us", "uk" or "old" terms. Frames of the terms go before those that all share."""
    data = _data(language)
    own = data.get("uk" if terms == "old" else terms, {})
    layers = [data["short"], own.get("short", {})]
    if full_words:
        layers += [data["long"], own.get("long", {})]
    frames: dict[str, str] = {}
    nouns: dict[str, tuple[str, str]] = {}
    for layer in layers:
        frames.update({k: v for k, v in layer.items() if isinstance(v, str)})
        nouns.update({k: (v[0], v[1]) for k, v in layer.get("nouns", {}).items()})
    return Phrases(frames, nouns, data["heading"], data["abbreviations"])
