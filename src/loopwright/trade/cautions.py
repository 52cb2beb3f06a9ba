"""Cautions: what to warn of for babies, toys, cords and sleep, and the words of a pattern that bring each up.

Prompts for the designer in our own words, never advice on law: every text is said together with `defer`.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

from loopwright.trade import sizes, tables
from loopwright.trade.tables import Entry

TOPICS = ("cord", "toy", "sleep", "baby", "fire", "home")
AGES = ("baby", "toddler", "child")
_AGE_OF = {"newborn": 0, "preemie": 0}  # months; other sizes carry their age in their name


@dataclass(frozen=True, slots=True)
class Caution:
    """One caution: for which ages (none = everybody), which words bring it up (one of each group), and what to say."""

    key: str
    topic: str
    ages: tuple[str, ...]
    words: tuple[tuple[str, ...], ...]
    text: str
    standard: str
    figures: Mapping[str, float]
    source: str
    weak: bool

    @property
    def said(self) -> str:
        """The text with the sentence that defers to local rules and qualified advice."""
        return f"{self.text} {defer()}"


def cautions() -> tuple[Caution, ...]:
    """All cautions."""
    return _load()[0]


def defer() -> str:
    """The sentence that every caution is said with."""
    return _load()[1]


def about(text: str, size_names: Sequence[str] = ()) -> tuple[Caution, ...]:
    """The cautions a pattern of that text in those sizes brings up.

    Those for an age come up where a size is of that age, or, without sizes, where the text speaks of it.
    """
    words = re.sub(r"[^a-z0-9-]+", " ", text.lower())
    ages = {age for name in size_names for age in ages_of(name)} if size_names else _spoken_of(words)
    return tuple(c for c in cautions() if (not c.ages or ages & set(c.ages)) and all(_any(words, group) for group in c.words))


def ages_of(size_name: str) -> frozenset[str]:
    """The ages a size is for: "baby" to 12 months, "toddler" to 3 years, "child" to 14 years; none for a grown-up's."""
    name = sizes.size_name(size_name)
    found = re.search(r"(\d+) (months|years)", name)
    months = _AGE_OF.get(name) if not found else int(found[1]) * (12 if found[2] == "years" else 1)
    if months is None:
        return frozenset()
    return frozenset(age for age, low, high in (("baby", 0, 12), ("toddler", 12, 36), ("child", 36, 168)) if low <= months <= high)


def _spoken_of(words: str) -> set[str]:
    spoken = {
        "baby": ("baby", "babies", "infant", "newborn", "preemie", "pram", "cot", "crib", "nursery"),
        "toddler": ("toddler", "toddlers", "under three", "small child"),
        "child": ("child", "children", "kids", "boy", "girl"),
    }
    return {age for age, names in spoken.items() if _any(words, names)}


def _any(words: str, group: Sequence[str]) -> bool:
    return _expression(tuple(group)).search(words) is not None


@cache
def _expression(group: tuple[str, ...]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(re.escape(word) for word in group)})\b")


@cache
def _load() -> tuple[tuple[Caution, ...], str]:
    top = tables.load("cautions")
    sources = tables.sources(top)
    found = tuple(_caution(entry, sources) for entry in top.entries("caution")), top.text("defer")
    top.done()
    return found


def _caution(entry: Entry, sources: Mapping[str, str]) -> Caution:
    topic, ages = entry.text("topic"), entry.texts("ages", ())
    if topic not in TOPICS:
        raise entry.error(f"'{topic}' is no topic; known: {', '.join(TOPICS)}")
    if not set(ages) <= set(AGES):
        raise entry.error(f"ages are {', '.join(AGES)}")
    figures = entry.entry("figures") if "figures" in entry else None
    found = Caution(
        entry.text("key"),
        topic,
        ages,
        entry.text_groups("words"),
        entry.text("text"),
        entry.text("standard", ""),
        {name: figures.number(name) for name in figures.left()} if figures else {},
        entry.source("source", sources),
        entry.flag("weak"),
    )
    entry.done()
    return found
