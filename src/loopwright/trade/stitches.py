"""Stitches: how tall they are, the chains that turn a row of them, their shape by gauge, and how a circle of them lies flat."""

from __future__ import annotations

import math
from collections.abc import Mapping
from fractions import Fraction
from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry, Span


@record
class Stitch:
    """A stitch by its US key. Heights are in chains and against single crochet (0 where unknown).

    `first_chain` is the chain from the hook that a row's first stitch goes into on a foundation, 0 where none is skipped;
    `also` lists other turning chains in use.
    """

    key: str
    height_chains: int
    relative_height: float
    turning_chains: int
    counts: bool
    first_chain: int
    also: tuple[int, ...]
    source: str
    height_source: str
    also_source: str
    weak: bool


@record
class Swatch:
    """A published gauge: stitches and rows over 4 in (101.6 mm)."""

    stitch: str
    stitches: float
    rows: float
    source: str

    @property
    def height_over_width(self) -> float:
        """How much taller than wide a stitch is."""
        return self.stitches / self.rows


@record
class Shape:
    """Width over height of a stitch, the usual range."""

    low: float
    high: float
    source: str
    weak: bool


@record
class Circle:
    """How many stitches a flat circle starts with and gains each round, and the range in use."""

    usual: int
    low: int
    high: int
    source: str
    weak: bool


@record
class Worked:
    """How much a row adds, as a share of the plain stitch's row, where it is not worked into the top."""

    share: float
    source: str
    weak: bool


@record
class _Tables:
    stitches: Mapping[str, Stitch]
    worked: Mapping[str, Worked]
    like: Mapping[str, str]
    swatches: tuple[Swatch, ...]
    shapes: Mapping[str, Shape]
    circles: Mapping[str, Circle]
    row_ends: Mapping[str, Fraction]


def stitch(key: str) -> Stitch | None:
    """What is known of a stitch, by US key; None where the trade has no figures."""
    return _load().stitches.get(key)


def heights() -> Mapping[str, int]:
    """How many chains are as tall as a stitch, by US key, for every stitch that the table has."""
    return {key: known.height_chains for key, known in _load().stitches.items()}


def worked(way: str) -> Worked | None:
    """What a row adds that is worked so ("post"), or None."""
    return _load().worked.get(way)


def like(key: str) -> str | None:
    """The plain stitch that a stitch of several ("cluster", "puff") is as tall as, or None."""
    return _load().like.get(key)


def swatches() -> tuple[Swatch, ...]:
    """Published gauges."""
    return _load().swatches


def shape(key: str) -> Shape | None:
    """The usual shape of a stitch, by US key, or None."""
    return _load().shapes.get(key)


def circle(key: str) -> Circle | None:
    """The trade's habit for flat circles of a stitch, by US key, or None."""
    return _load().circles.get(key)


def row_ends() -> Mapping[str, Fraction]:
    """Stitches that custom works into the end of one row, by the US key of the row's stitch."""
    return _load().row_ends


def flat_rate(width_mm: float, height_mm: float) -> float:
    """Stitches a flat circle gains each round: 2 pi height / width, as each round lies one height further out.

    Raises ValueError where a measure is not above nought.
    """
    if not (width_mm > 0 and height_mm > 0):
        raise ValueError("a stitch is wider and taller than nought")
    return 2 * math.pi * height_mm / width_mm


@cache
def _load() -> _Tables:
    top = tables.load("stitches")
    sources = tables.sources(top)
    known = top.entry("stitch")
    stitches = {key: _stitch(key, known.entry(key), sources) for key in known.left()}
    worked = top.entry("worked")
    like = _like(top.entry("like"), sources, stitches)
    swatches = tuple(_swatch(entry, sources) for entry in top.entries("gauge"))
    shapes = top.entry("aspect")
    circles = top.entry("circle")
    found = _Tables(
        stitches,
        {key: _worked(worked.entry(key), sources) for key in worked.left()},
        like,
        swatches,
        {key: _shape(shapes.entry(key), sources) for key in shapes.left()},
        {key: _circle(circles.entry(key), sources) for key in circles.left()},
        _row_ends(top.entry("row_ends"), sources),
    )
    top.done()
    return found


def _stitch(key: str, entry: Entry, sources: Mapping[str, str]) -> Stitch:
    also = entry.whole_numbers("also", ())
    found = Stitch(
        key,
        entry.whole("height_chains"),
        entry.number("relative_height", 0.0),
        entry.whole("turning_chains"),
        entry.flag("counts"),
        entry.whole("first_chain", 0),
        also,
        entry.source("source", sources),
        entry.source("height_source", sources),
        entry.source("also_source", sources) if also else "",
        entry.flag("weak"),
    )
    entry.done()
    return found


def _worked(entry: Entry, sources: Mapping[str, str]) -> Worked:
    found = Worked(entry.number("share"), entry.source("source", sources), entry.flag("weak"))
    entry.done()
    return found


def _like(entry: Entry, sources: Mapping[str, str], known: Mapping[str, Stitch]) -> dict[str, str]:
    entry.source("source", sources)
    entry.flag("weak")
    found = {key: entry.text(key) for key in entry.left()}
    for key, plain in found.items():
        if plain not in known:
            raise entry.error(f"'{key}' is like '{plain}', which has no figures")
    return found


def _row_ends(entry: Entry, sources: Mapping[str, str]) -> dict[str, Fraction]:
    entry.source("source", sources)
    found = {key: entry.whole_numbers(key, ()) for key in entry.left()}
    for key, told in found.items():
        if len(told) != 2 or min(told) < 1:
            raise entry.error(f"'{key}' is told as stitches over rows, two numbers above nought")
    return {key: Fraction(*told) for key, told in found.items()}


def _swatch(entry: Entry, sources: Mapping[str, str]) -> Swatch:
    found = Swatch(entry.text("stitch"), entry.number("stitches"), entry.number("rows"), entry.source("source", sources))
    entry.done()
    return found


def _shape(entry: Entry, sources: Mapping[str, str]) -> Shape:
    low, high = _span(entry)
    found = Shape(low, high, entry.source("source", sources), entry.flag("weak"))
    entry.done()
    return found


def _circle(entry: Entry, sources: Mapping[str, str]) -> Circle:
    low, high = _span(entry)
    found = Circle(entry.whole("usual"), int(low), int(high), entry.source("source", sources), entry.flag("weak"))
    entry.done()
    return found


def _span(entry: Entry) -> Span:
    return entry.span("range")
