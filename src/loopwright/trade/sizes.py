"""Body sizes: charts of measurements by size, the trade's and the measured ones, and the designer's own."""

from __future__ import annotations

import difflib
import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache

from loopwright.trade import tables
from loopwright.trade.tables import Entry

CHARTS = ("trade", "measured")
UNITS = {"inches": tables.MM_PER_INCH, "cm": 10.0, "mm": 1.0}


class UnknownNameError(LookupError):
    """A size, measurement or chart nobody knows; the message names the nearest ones."""


@dataclass(frozen=True, slots=True)
class Length:
    """A length of the body in mm with where it comes from; a range keeps its ends, `mm` is its middle."""

    mm: float
    source: str
    weak: bool = False
    low_mm: float = 0.0
    high_mm: float = 0.0
    note: str = ""


@dataclass(frozen=True, slots=True)
class Size:
    """One size of a chart and what is known of it, by the trade's names of measurements."""

    name: str
    chart: str
    lengths: Mapping[str, Length]

    def measure(self, what: str) -> Length:
        """The measurement of that name. Raises UnknownNameError where the chart does not know it for this size."""
        name = measure_name(what)
        if name in self.lengths:
            return self.lengths[name]
        known = ", ".join(self.lengths) or "nothing"
        raise UnknownNameError(f"{self.chart}: no {name} for {self.name}; known: {known}")


@dataclass(frozen=True, slots=True)
class Chart:
    """Sizes from the smallest to the largest."""

    id: str
    title: str
    about: str
    sizes: tuple[Size, ...]

    def find(self, name: str) -> Size:
        """The size of that name or of another name for it. Raises UnknownNameError with the nearest names."""
        wanted = {_key(name), _key(size_name(name))}
        for size in self.sizes:
            if _key(size.name) in wanted:
                return size
        raise UnknownNameError(f"{self.title} has no size '{name.strip()}'; {_nearest(name, [s.name for s in self.sizes])}")

    def growth_mm(self, what: str, smaller: str, larger: str) -> float:
        """How much a measurement grows from one size to another, in mm; below nought where it shrinks."""
        return self.find(larger).measure(what).mm - self.find(smaller).measure(what).mm


@dataclass(frozen=True, slots=True)
class Measure:
    """A measurement of the body and how it is taken."""

    name: str
    taken: str
    also: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Names:
    sizes: tuple[str, ...]
    size_of: Mapping[str, str]
    measures: Mapping[str, Measure]
    measure_of: Mapping[str, str]


def chart(which: str) -> Chart:
    """The chart "trade" or "measured". Raises UnknownNameError for another."""
    if which not in CHARTS:
        raise UnknownNameError(f"no size chart '{which}'; {_nearest(which, CHARTS)}")
    return _load(which)


def measures() -> tuple[Measure, ...]:
    """Every measurement the trade has a name for."""
    return tuple(_names().measures.values())


def measure_name(what: str) -> str:
    """The trade's name of a measurement said in another way. Raises UnknownNameError with the nearest names."""
    key = _key(what)
    names = _names()
    if key in names.measure_of:
        return names.measure_of[key]
    raise UnknownNameError(f"no measurement '{what.strip()}'; {_nearest(what, names.measures)}")


def size_name(name: str) -> str:
    """The charts' own name of a size said in another way; the name itself where the charts do not know it."""
    return _names().size_of.get(_key(name), name)


def _nearest(name: str, known: Iterable[str]) -> str:
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


def _key(name: str) -> str:
    said = name.strip().lower()
    for pattern, instead in _WORDS:
        said = re.sub(pattern, instead, said)
    return re.sub(r"\s+", " ", said).strip(" .")


@cache
def _names() -> _Names:
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
    return _Names(ordered, size_of, known, measure_of)


def _once(entry: Entry, into: dict[str, str], said: str, name: str) -> None:
    key = _key(said)
    if into.setdefault(key, name) != name:
        raise entry.error(f"'{said}' is a name of both {into[key]} and {name}")


@cache
def _load(which: str) -> Chart:
    return read_table(which, tables.load(f"sizes_{which}"))


def read_table(which: str, top: Entry) -> Chart:
    """A chart from its table. Raises TableError where the table is not in order."""
    title, about, sources = top.text("title"), top.text("about"), tables.sources(top)
    found: dict[str, dict[str, Length]] = {}
    for row in top.entries("row"):
        for size, length in _row(row, sources):
            lengths = found.setdefault(size, {})
            measure, value = length
            if measure in lengths:
                raise row.error(f"{measure} of {size} is given twice")
            lengths[measure] = value
    top.done()
    order = {name: at for at, name in enumerate(_names().sizes)}
    return Chart(which, title, about, tuple(Size(n, title, found[n]) for n in sorted(found, key=lambda n: order[n])))


def _row(row: Entry, sources: Mapping[str, str]) -> Iterable[tuple[str, tuple[str, Length]]]:
    measure, source = row.text("measure"), row.text("source")
    if measure not in _names().measures:
        raise row.error(f"'{measure}' is no measurement of sizes_names.toml")
    if source not in sources:
        raise row.error(f"'{source}' is no source of this file")
    weak, note = row.flag("weak"), row.text("note", "")
    units = [unit for unit in UNITS if unit in row]
    if len(units) != 1:
        raise row.error(f"the figures must stand in one of {', '.join(UNITS)}")
    values, factor = row.entry(units[0]), UNITS[units[0]]
    for size in values.left():
        if size not in _names().sizes:
            raise row.error(f"'{size}' is no size of sizes_names.toml")
        low, high = values.span(size)
        middle = round((low + high) / 2 * factor, 2)
        yield size, (measure, Length(middle, sources[source], weak, low * factor, high * factor, note))
    row.done()
