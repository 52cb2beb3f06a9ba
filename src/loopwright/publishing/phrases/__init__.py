"""Words of pages: headings, heads of tables, furniture; one Fluent file a language, and one more for drawings in other languages."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING

from loopwright.shipped import shipped_text

if TYPE_CHECKING:
    from fluent.runtime import FluentBundle


class Phrases:
    """The words of one language. A key without words in it is said in English."""

    def __init__(self, language: str) -> None:
        """`language`: a code ("de"). Raises LookupError for one that there are no words in."""
        self.language = language
        self._bundle = _bundle(language)
        self.missing: set[str] = set()

    def say(self, key: str, **slots: str | float) -> str:
        """A phrase with its slots filled. Raises KeyError for a key that English does not have."""
        bundle = self._bundle
        if not bundle.has_message(key):
            self.missing.add(key)
            bundle = _bundle("en")
        message = bundle.get_message(key)
        if message.value is None:
            raise KeyError(key)
        said, errors = bundle.format_pattern(message.value, slots)
        if errors:
            raise KeyError(f"{key}: {errors[0]}")
        return str(said)

    def has(self, key: str) -> bool:
        """Whether there is such a phrase, in this language or in English."""
        return self._bundle.has_message(key) or _bundle("en").has_message(key)

    def number(self, value: float, digits: int = 0) -> str:
        """A number with the decimal sign of the language; "10.6", "10", no trailing noughts."""
        said = f"{value:.{digits}f}"
        said = said.rstrip("0").rstrip(".") if "." in said else said
        return said.replace("-0", "0") if said == "-0" else said.replace(".", self.say("decimal"))


@cache
def languages() -> tuple[str, ...]:
    """Codes of the languages that there are words in."""
    return tuple(sorted(p.name.removesuffix(".ftl") for p in files("loopwright.publishing.phrases").iterdir() if p.name.endswith(".ftl")))


@cache
def _bundle(language: str) -> FluentBundle:
    from fluent.runtime import FluentBundle, FluentResource  # noqa: PLC0415 - brings the plural rules of all languages: only where pages are made

    if language not in languages():
        raise LookupError(language)
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource(shipped_text("loopwright.publishing.phrases", f"{language}.ftl")))
    if language != "en":  # drawings have their English themselves
        bundle.add_resource(FluentResource(shipped_text("loopwright.publishing.phrases", f"drawings/{language}.ftl")))
    return bundle
