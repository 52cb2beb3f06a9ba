"""The table of cautions, out of data/cautions.toml."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from functools import cache, lru_cache

from loopwright.kept import of_short
from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry

TOPICS = ("cord", "toy", "sleep", "baby", "fire", "home")
AGES = ("baby", "toddler", "child")


@record
class Caution:
    """One caution: for which ages (none = everybody), for which things, which words bring it up, and what to say.

    `items`: kinds of things by their names, () for any. `words`: one of each group is said of it. `told`: beginnings of words; a note
    with one of each group says the caution already. `limit`: what the figures' limit is, in words. `melts`: due unless all fibres that
    are told stand the heat. `measured`: due by its figures where they are known, by its words where they are not.
    """

    key: str
    topic: str
    ages: tuple[str, ...]
    items: tuple[str, ...]
    words: tuple[tuple[str, ...], ...]
    told: tuple[tuple[str, ...], ...]
    text: str
    standard: str
    limit: str
    figures: Mapping[str, float]
    source: str
    weak: bool
    melts: bool
    measured: bool

    @property
    def said(self) -> str:
        """The text with the sentence that defers to local rules and qualified advice."""
        return f"{self.text} {defer()}"


def cautions() -> tuple[Caution, ...]:
    """All cautions. Raises TableError where the table is not in order."""
    return _load()[0]


def defer() -> str:
    """The sentence that every caution is said with."""
    return _load()[1]


@cache
def fibres(which: str) -> tuple[str, ...]:
    """Names of fibres that "melt" or "stand" heat."""
    return _load()[2][which]


def plain(text: str) -> str:
    """Text as words are looked for in it: lower case, nothing but letters, digits, hyphens and single spaces."""
    return re.sub(r"[^a-z0-9-]+", " ", text.lower().replace("’", "'").replace("'s ", " "))


said_plainly = of_short(512)(plain)  # for what is looked at again and again: notes, lines of the heading


def found(text: str, group: Sequence[str]) -> str:
    """The first of these words that stands in a text made plain; "" where none does."""
    return _found(text, tuple(group))


@lru_cache(maxsize=512)
def _found(text: str, group: tuple[str, ...]) -> str:
    if not any(word in text for word in group):  # most of the time: then nothing need be compiled
        return ""
    m = _expression(group, whole=True).search(text)
    return m.group() if m else ""


def begun(text: str, group: Sequence[str]) -> bool:
    """Whether a word of the text, made plain, begins with one of these."""
    return any(word in text for word in group) and _expression(tuple(group), whole=False).search(text) is not None


@cache
def _expression(group: tuple[str, ...], *, whole: bool) -> re.Pattern[str]:
    ways, end = "|".join(re.escape(word) for word in group), r"(?![\w-])" if whole else ""
    return re.compile(rf"(?<![\w-])(?:{ways}){end}")


@cache
def _load() -> tuple[tuple[Caution, ...], str, dict[str, tuple[str, ...]]]:
    top = tables.load("cautions")
    sources = tables.sources(top)
    entry = top.entry("fibres")
    stuffs = {name: entry.texts(name) for name in ("melt", "stand")}
    entry.done()
    kinds_of = top.entry("items")
    kinds = {name: kinds_of.texts(name) for name in kinds_of.left()}
    made = tuple(_caution(e, sources, kinds) for e in top.entries("caution")), top.text("defer"), stuffs
    top.done()
    return made


def _caution(entry: Entry, sources: Mapping[str, str], kinds: Mapping[str, tuple[str, ...]]) -> Caution:
    topic, ages, items = entry.text("topic"), entry.texts("ages", ()), entry.texts("items", ())
    if topic not in TOPICS:
        raise entry.error(f"'{topic}' is no topic; known: {', '.join(TOPICS)}")
    if not set(ages) <= set(AGES):
        raise entry.error(f"ages are {', '.join(AGES)}")
    if not set(items) <= set(kinds):
        raise entry.error(f"items are {', '.join(kinds)}")
    figures = entry.entry("figures") if "figures" in entry else None
    made = Caution(
        entry.text("key"), topic, ages, tuple(name for kind in items for name in kinds[kind]),
        entry.text_groups("words") if "words" in entry else (), entry.text_groups("told"),
        entry.text("text"), entry.text("standard", ""), entry.text("limit", ""),
        {name: figures.number(name) for name in figures.left()} if figures else {},
        entry.source("source", sources), entry.flag("weak"), entry.flag("melts"), entry.flag("measured"),
    )
    entry.done()
    return made
