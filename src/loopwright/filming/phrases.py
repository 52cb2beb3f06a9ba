"""The words of plans and cards: one table a language. What a language lacks is said in English, and noted."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import Any

from loopwright.shipped import shipped_table
from loopwright.terms import dialect
from loopwright.terms.languages import LANGUAGES
from loopwright.wording.voice import Voice


@cache
def languages() -> tuple[str, ...]:
    """Codes of the languages that there are words in."""
    tables = files("loopwright.filming").joinpath("words").iterdir()
    return tuple(sorted(p.name.removesuffix(".toml") for p in tables if p.name.endswith(".toml")))


class Phrases:
    """The words of one language; `missing` gathers the keys that were said in English."""

    def __init__(self, language: str) -> None:
        """`language`: a code ("de"). Raises LookupError for one that there are no words in."""
        if language not in languages():
            raise LookupError(language)
        self.language = language
        self.missing: set[str] = set()
        self._own, self._english = _table(language), _table("en")

    def __call__(self, key: str, **slots: object) -> str:
        """A phrase with its slots filled. Raises KeyError for one that English does not have."""
        if key not in self._own:
            self.missing.add(key)
        return str(self._own.get(key, self._english[key])).format(**slots)

    def keys(self) -> dict[str, str]:
        """Its own phrases by key, their slots open."""
        return {k: v for k, v in self._own.items() if isinstance(v, str)}

    def measure(self, name: str) -> str:
        """A measure's name, as it is where there is no word for it."""
        key = f"measure_{name.replace(' ', '_')}"
        return str(self._own.get(key, self._english.get(key, name)))

    def noun(self, voice: Voice, kind: str) -> str:
        """Many of a kind of stitch, in full words."""
        if self.language in LANGUAGES:
            from loopwright.terms.languages import language  # noqa: PLC0415

            word = language(self.language).stitches.get(kind)
            return word.plural if word else ""
        return dialect(voice.terms).term(kind).plural

    def number(self, value: float, digits: int = 1) -> str:
        """A number with the decimal sign of the language, no noughts at its end."""
        said = f"{value:.{digits}f}"
        said = said.rstrip("0").rstrip(".") if "." in said else said
        return said.replace(".", self("decimal"))


@cache
def _table(language: str) -> dict[str, Any]:
    return shipped_table("loopwright.filming.words", f"{language}.toml")
