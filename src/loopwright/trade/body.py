"""The body in numbers: lengths, sizes and charts of them, and the names the trade has for sizes and measurements."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping
from functools import cache, lru_cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry


class UnknownNameError(LookupError):
    """A size, measurement or chart nobody knows; the message names the nearest ones."""


@record
class Length:
    """A length of the body in mm with where it comes from; a range keeps its ends, `mm` is its middle."""

    mm: float
    source: str
    weak: bool = False
    low_mm: float = 0.0
    high_mm: float = 0.0
    note: str = ""


@record
class Size:
    """One size of a chart and what is known of it, by the trade's names of measurements."""

    name: str
    chart: str
    lengths: Mapping[str, Length]

    def measure(self, what: str) -> Length:
        """The measurement of that name. Raises UnknownNameError where the chart does not know it for this size."""
        own = " ".join(what.lower().split())
        name = own if own in self.lengths else measure_name(what)
        if name in self.lengths:
            return self.lengths[name]
        known = ", ".join(self.lengths) or "nothing"
        raise UnknownNameError(f"{self.chart}: no {name} for {self.name}; known: {known}")


@record
class Chart:
    """Sizes from the smallest to the largest."""

    id: str
    title: str
    about: str
    sizes: tuple[Size, ...]

    def find(self, name: str) -> Size:
        """The size of that name or of another name for it. Raises UnknownNameError with the nearest names."""
        for said, meant in ((key_of(name), key_of), (key_of(size_name(name)), lambda own: key_of(size_name(own)))):
            for size in self.sizes:
                if meant(size.name) == said:
                    return size
        raise UnknownNameError(f"{self.title} has no size '{name.strip()}'; {nearest(name, [s.name for s in self.sizes])}")

    def growth_mm(self, what: str, smaller: str, larger: str) -> float:
        """How much a measurement grows from one size to another, in mm; below nought where it shrinks."""
        return self.find(larger).measure(what).mm - self.find(smaller).measure(what).mm


@record
class Measure:
    """A measurement of the body and how it is taken."""

    name: str
    taken: str
    also: tuple[str, ...]


@record
class Names:
    """What sizes and measurements are called: own names in order, and every other name (as `key_of` gives it) to its own."""

    sizes: tuple[str, ...]
    size_of: Mapping[str, str]
    measures: Mapping[str, Measure]
    measure_of: Mapping[str, str]


def measures() -> tuple[Measure, ...]:
    """Every measurement the trade has a name for."""
    return tuple(names().measures.values())


def measure_name(what: str) -> str:
    """The trade's name of a measurement said in another way. Raises UnknownNameError with the nearest names."""
    key = key_of(what)
    known = names()
    if key in known.measure_of:
        return known.measure_of[key]
    raise UnknownNameError(f"no measurement '{what.strip()}'; {nearest(what, known.measures)}")


def size_name(name: str) -> str:
    """The charts' own name of a size said in another way; the name itself where the charts do not know it."""
    return names().size_of.get(key_of(name), name)


def nearest(name: str, known: Iterable[str]) -> str:
    """Words for a message: the known names nearest to one, or all of them where none is near."""
    known = list(known)
    close = difflib.get_close_matches(name.lower(), known, n=3, cutoff=0.5)
    return f"nearest: {', '.join(close)}" if close else f"known: {', '.join(known)}"


_WORDS = (
    (r"[\u2010-\u2015]|\s+to\s+|\s*-\s*", "-"),
    (r"\bmos?\b\.?|\bmths?\b\.?|\bmonth\b|(?<=\d) ?m\b", "months"),
    (r"\byrs?\b\.?|\byear\b|(?<=\d) ?y\b|\bage[sd]?\b", "years"),
    (r"(?<=\d)(?=months|years)", " "),
    (r"^(months|years)\s+(.*)$", r"\2 \1"),
    (r"\b(years|months)[ -]olds?\b", r"\1"),
    (r"(?<=\d)-(?=years|months)", " "),
    (r"^(\d+)$", r"\1 years"),
    (r"^(\d+) ?(months|years)-", r"\1-"),
    (r"[()'’]", ""),
    (r"'?s\b(?= (?:xs|s|m|l|\d?x+l?|small|medium|large)$)", ""),
)


@lru_cache(maxsize=1024)
def key_of(name: str) -> str:
    """A name as it is compared: small letters, months and years spelled one way, single spaces."""
    said = name.strip().lower()
    for pattern, instead in _WORDS:
        said = re.sub(pattern, instead, said)
    return re.sub(r"\s+", " ", said).strip(" .")


@cache
def names() -> Names:
    """The names of sizes_names.toml. Raises TableError where the table is not in order."""
    top = tables.load("sizes_names")
    sizes = top.entry("size")
    size_of: dict[str, str] = {}
    ordered = sizes.left()
    for name in ordered:
        for said in (name, *sizes.texts(name)):
            _once(sizes, size_of, said, name)
    measures = top.entry("measure")
    known: dict[str, Measure] = {}
    measure_of: dict[str, str] = {}
    for name in measures.left():
        entry = measures.entry(name)
        known[name] = Measure(name, entry.text("taken"), entry.texts("also", ()))
        entry.done()
        for said in (name, *known[name].also):
            _once(measures, measure_of, said, name)
    top.done()
    return Names(ordered, size_of, known, measure_of)


def _once(entry: Entry, into: dict[str, str], said: str, name: str) -> None:
    key = key_of(said)
    if into.setdefault(key, name) != name:
        raise entry.error(f"'{said}' is a name of both {into[key]} and {name}")
