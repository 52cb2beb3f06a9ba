"""Yarn in a stitch, stitches made in a time, what to add for tails and mishaps: the figures of data/yarn_use.toml."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry, Span


@record
class Strands:
    """Strands of a stitch that lie across its width and stand up its height, and turns round a strand."""

    across: float
    up: float
    turns: float
    source: str
    weak: bool


@record
class Several:
    """A stitch of several: `many` of kind `of`; `whole`: each is finished and a chain closes them, else they share their last loop."""

    of: str
    many: int
    whole: bool


@record
class Measured:
    """A published measurement: yarn over the length of one row, and length of yarn per area in 1/mm (0 where it was not measured)."""

    kind: str
    over_length: float
    per_mm: float
    source: str
    weak: bool


@record
class Fill:
    """Yarn over area against solid fabric, from low to high."""

    low: float
    high: float
    source: str
    weak: bool


@record
class Spread:
    """How far true lengths lie from ours: standard deviations as shares."""

    counted: float
    weighed: float
    sample: float
    area: float
    thread: float
    source: str


@record
class Speed:
    """Seconds for a single crochet, and the time of other stitches against it; `post` and `leg` are factors on the plain stitch."""

    middle_s: float
    fast_s: float
    slow_s: float
    ratios: Mapping[str, float]
    post: float
    leg: float
    finishing: Span
    source: str


@record
class YarnUse:
    """The whole table.

    `tail_mm`: one end, from short to long. `plain`, `patterned`: what to add to what is needed, as shares.
    `filet_filled`: share of filled squares in filet, from low to high.
    """

    stitches: Mapping[str, Strands]
    groups: Mapping[str, Several]
    measured: tuple[Measured, ...]
    fills: Mapping[str, Fill]
    filet_filled: Span
    post_turns: float
    tail_mm: Span
    plain: float
    patterned: float
    spread: Spread
    speed: Speed


@cache
def yarn_use() -> YarnUse:
    """The table. Raises TableError where it is not in order."""
    return read_table("yarn_use", tables.load("yarn_use"))


def read_table(name: str, top: Entry) -> YarnUse:
    """A table of that shape. Raises TableError, naming `name` and the place, for anything missing, unknown or of a wrong type."""
    sources = tables.sources(top)
    measured = tuple(_measured(entry, sources) for entry in top.entries("measured"))
    known = top.entry("stitch")
    stitches = {key: _strands(known.entry(key), sources) for key in known.left()}
    groups = _groups(top.entry("group"), sources, stitches)
    fills = top.entry("fill")
    post, tails, more, filet = (top.entry(key) for key in ("post", "tails", "contingency", "filet"))
    found = YarnUse(
        stitches, groups, measured, {key: _fill(fills.entry(key), sources) for key in fills.left()}, filet.span("filled"),
        post.number("turns"), tails.span("mm"), more.number("plain"), more.number("patterned"), _spread(top.entry("spread"), sources),
        _speed(top.entry("speed"), top.entry("time"), top.entry("finishing"), sources),
    )
    for entry in (post, tails, more, filet):
        entry.source("source", sources)
        entry.flag("weak")
        entry.done()
    top.done()
    for key in ("ch", "sc"):
        if key not in stitches:
            raise tables.TableError(name, "stitch", f"'{key}' is missing")
    return found


def _measured(entry: Entry, sources: Mapping[str, str]) -> Measured:
    found = Measured(
        entry.text("kind"), entry.number("over_length"), entry.number("per_mm", 0.0), entry.source("source", sources), entry.flag("weak")
    )
    entry.done()
    return found


def _strands(entry: Entry, sources: Mapping[str, str]) -> Strands:
    found = Strands(entry.number("across"), entry.number("up"), entry.number("turns"), entry.source("source", sources), entry.flag("weak"))
    if found.turns < 1:
        raise entry.error("'turns' must be 1 or more")
    entry.done()
    return found


def _groups(entry: Entry, sources: Mapping[str, str], stitches: Mapping[str, Strands]) -> dict[str, Several]:
    entry.source("source", sources)
    entry.flag("weak")
    found = {}
    for key in entry.left():
        one = entry.entry(key)
        found[key] = Several(one.text("of"), one.whole("many"), one.flag("whole"))
        if found[key].of not in stitches:
            raise one.error(f"'{found[key].of}' is no stitch of this file")
        one.done()
    return found


def _fill(entry: Entry, sources: Mapping[str, str]) -> Fill:
    low, high = entry.span("range")
    found = Fill(low, high, entry.source("source", sources), entry.flag("weak"))
    entry.done()
    return found


def _spread(entry: Entry, sources: Mapping[str, str]) -> Spread:
    counted, weighed, sample = entry.number("counted"), entry.number("weighed"), entry.number("sample")
    found = Spread(counted, weighed, sample, entry.number("area"), entry.number("thread"), entry.source("source", sources))
    entry.flag("weak")
    entry.done()
    return found


def _speed(speed: Entry, time: Entry, finishing: Entry, sources: Mapping[str, str]) -> Speed:
    said = "; ".join(speed.source(key, sources) for key in ("source", "fast_source", "slow_source"))
    time.source("source", sources)
    time.flag("weak")
    middle, fast, slow = speed.number("middle"), speed.number("fast"), speed.number("slow")
    if not 0 < fast <= middle <= slow:
        raise speed.error("'fast', 'middle' and 'slow' must rise, from above nought")
    post, leg = time.number("post"), time.number("leg")
    ratios = {key: time.number(key) for key in time.left()}
    found = Speed(middle, fast, slow, ratios, post, leg, finishing.span("share"), said)
    finishing.source("source", sources)
    for entry in (speed, time, finishing):
        entry.done()
    return found
