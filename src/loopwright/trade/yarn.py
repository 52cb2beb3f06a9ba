"""Yarn weight classes: what gauge, hook, wraps and metres are usual for each."""

from __future__ import annotations

from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry, Span


@record
class Weight:
    """A class of yarn; ranges run from low to high. `gauge` counts stitches of `gauge_stitch` (US key) over 10 cm."""

    number: int
    name: str
    also: tuple[str, ...]
    plies: tuple[str, ...]
    gauge_stitch: str
    gauge: Span
    hook_mm: Span
    wraps_per_inch: Span
    metres_per_100g: Span
    source: str
    wraps_source: str
    metres_source: str
    plies_source: str
    note: str = ""


@cache
def weights() -> tuple[Weight, ...]:
    """The classes 0 (lace) to 7 (jumbo). Raises TableError where the table is not in order."""
    top = tables.load("yarn")
    sources = tables.sources(top)
    found = tuple(_weight(entry, sources) for entry in top.entries("weight"))
    top.done()
    return found


def _weight(entry: Entry, sources: dict[str, str]) -> Weight:
    weight = Weight(
        entry.whole("number"),
        entry.text("name"),
        entry.texts("also"),
        entry.texts("plies"),
        entry.text("gauge_stitch"),
        entry.span("gauge"),
        entry.span("hook_mm"),
        entry.span("wraps_per_inch"),
        entry.span("metres_per_100g"),
        entry.source("source", sources),
        entry.source("wraps_source", sources),
        entry.source("metres_source", sources),
        entry.source("plies_source", sources),
        entry.text("note", ""),
    )
    entry.done()
    return weight


def weight(said: str) -> Weight | None:
    """The class of a name of the trade ("worsted", "DK", "4", "4 ply", "chunky"), or None."""
    key = said.strip().lower().replace("-", " ").removesuffix("yarn").strip().removesuffix("weight").strip(" .")
    for known in weights():
        names = {known.name, *(name.lower() for name in (*known.also, *known.plies))}
        if key == str(known.number) or key.removeprefix("uk ") in {name.removeprefix("uk ").replace("-", " ") for name in names}:
            return known
    return None


def by_metres(metres_per_100g: float) -> tuple[Weight, ...]:
    """The classes a yarn of so many metres per 100 g may belong to; its two neighbours where it falls into a gap of the table."""
    inside = tuple(w for w in weights() if w.metres_per_100g[0] <= metres_per_100g <= w.metres_per_100g[1])
    if inside:
        return inside
    thinner = [w for w in weights() if w.metres_per_100g[0] > metres_per_100g]
    thicker = [w for w in weights() if w.metres_per_100g[1] < metres_per_100g]
    return (*thinner[-1:], *thicker[:1])


def by_wraps(wraps_per_inch: float) -> tuple[Weight, ...]:
    """The classes with that many wraps per inch; neighbours overlap, so wraps alone often leave two."""
    return tuple(w for w in weights() if w.wraps_per_inch[0] <= wraps_per_inch <= w.wraps_per_inch[1])
