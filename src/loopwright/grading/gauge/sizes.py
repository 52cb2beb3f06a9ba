"""How wide and how tall every kind of stitch is, from her gauge.

Widths: a stitch of a plain row is as wide as the gauge says, whatever its height; the trade gives one number of stitches for an item
worked in several stitches. Heights: the gauge's row height, times how tall the kind stands against the kind of the swatch, by the table of
heights in `trade/data/stitches.toml`. That table was held against three kinds of evidence, each relative to single crochet:

| | published gauges | flat circles of 6, 8, 12, 16, 20 a round | measured rows (`trade/data/yarn_use.toml`) | chosen |
|---|---|---|---|---|
| hdc | 1.70 | 1.33 | 1.45 | 1.5 |
| dc | 2.18 | 2.00 | 1.91 | 2.0 |
| tr | none | 2.67 | none | 2.7 |
| dtr | none | 3.33 | none | 3.35 |

Published gauges (stitches over rows, means: sc 0.85, hdc 1.44, dc 1.85) come from different makers, so their quotients scatter most; the
chosen values lie between the sources. Post stitches and slip stitches have values of custom only, marked weak in the table.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field
from functools import cache

from loopwright.grading.gauge.written import Gauge
from loopwright.record import record
from loopwright.trade.composed import composed
from loopwright.trade.stitches import like, stitch, swatches, worked

# How sure a gauge is, as a share: one maker's tension from day to day and along a piece. Common practice, no source.
MAKER = 0.02
# A swatch is counted to a quarter of a stitch or row (common practice, no source).
COUNTED_TO = 0.25
# Two standard deviations: nineteen of twenty pieces lie within low … high.
WIDE = 2.0
# What was not measured but follows from the usual shape of the stitch (published gauges lie that far apart).
SHAPE_SHARE = 0.1


@record
class StitchSizes:
    """Widths and heights in mm by kind of stitch (US keys), with how sure they are.

    `width_mm` and `row_mm` are those of the swatch, worked in `kind`. `width_share` and `height_share`: standard deviation as a share
    of the value. `guessed`: nobody measured it. `own`: kinds that were measured themselves, {kind: (width, height)}; a kind between two
    of them in height lies between them, any other follows the nearest. `text`: the words of the gauge.
    """

    width_mm: float
    row_mm: float
    kind: str = "sc"
    width_share: float = MAKER
    height_share: float = MAKER
    guessed: bool = False
    own: Mapping[str, tuple[float, float]] = field(default_factory=dict)
    text: str = ""

    def width(self, kind: str) -> float:
        """How wide a stitch of that kind is in a plain row, mm. A chain is as wide as the stitch of the swatch."""
        found = self.own.get(plain_kind(kind))
        if found:
            return found[0]
        return self._between(kind, 0) if self.own and plain_kind(kind) not in ("ch", "st") else self.width_mm

    def height(self, kind: str) -> float:
        """How tall a row of that kind is, mm: 0 for a chain. A slip stitch has the height of a row of slip stitches.

        A slip stitch that closes a round adds nothing; that is a matter of its role, not of its kind.
        """
        found = self.own.get(kind)
        if found:
            return found[1]
        if kind == "st":
            return self.row_mm
        plain = plain_kind(kind)
        own = self.own.get(plain)
        return (own[1] if own else self._between(plain, 1)) * worked_share(kind)

    def _between(self, kind: str, part: int) -> float:
        """Width (part 0) or height (part 1) of a kind that was not measured, from those that were."""
        known = {relative_height(k): v for k, v in self.own.items()}
        known.setdefault(relative_height(self.kind), (self.width_mm, self.row_mm))
        at = relative_height(kind)
        if at <= 0:
            return 0.0 if part else self.width_mm
        below = max((r for r in known if r <= at), default=None)
        above = min((r for r in known if r >= at), default=None)
        if below is not None and above is not None and below < above:
            share = (at - below) / (above - below)
            return known[below][part] * (1 - share) + known[above][part] * share
        near = below if below is not None else above
        if near is None:
            return 0.0
        return known[near][part] * (at / near if part else 1.0)


def plain_kind(kind: str) -> str:
    """The plain stitch that a kind is made of: "dc" for "fpdc", "dc3tog" and "fdc"."""
    return composed(kind).plain


@cache
def relative_height(kind: str) -> float:
    """How tall a row of the kind is against single crochet; 1.0 for what the table does not know, 0 for a chain."""
    plain = plain_kind(kind)
    if plain == "ch":
        return 0.0
    known = stitch(plain) or stitch(like(plain) or "")
    return worked_share(kind) * (known.relative_height or 1.0) if known is not None else 1.0


@cache
def worked_share(kind: str) -> float:
    """How much a row of the kind adds against one worked into the tops: less for post stitches, 1 for all others."""
    post = worked("post") if composed(kind).post else None
    return post.share if post else 1.0


@cache
def usual_shape(kind: str) -> float:
    """Height over width that is usual for a kind: the published gauges' mean for single crochet, times the kind's own height."""
    found = [s.height_over_width / relative_height(s.stitch) for s in swatches()]
    return math.exp(sum(map(math.log, found)) / len(found)) * max(relative_height(kind), 0.1)


def sizes_from(gauge: Gauge, kind: str = "sc", stitches: float | None = None, rows: float | None = None) -> StitchSizes:
    """Sizes from a gauge worked in `kind` (US key); what it does not tell is taken from the usual shape of the stitch.

    `stitches` and `rows`: how many were counted, for how sure it is (10 cm worth unless given). Raises ValueError for a gauge that tells
    neither the width of a stitch nor the height of a row.
    """
    width, row = gauge.stitch_mm, gauge.row_mm
    if width is None and row is None:
        raise ValueError("a gauge that tells no stitch and no row")
    usual = usual_shape(kind)
    width_guessed, row_guessed = width is None, row is None
    width = width if width is not None else (row or 0.0) / usual
    row = row if row is not None else width * usual
    return StitchSizes(
        width, row, kind, counted_share(stitches or 100 / width, guessed=width_guessed),
        counted_share(rows or 100 / row, guessed=row_guessed), text=gauge.text,
    )


def counted_share(counted: float, *, guessed: bool = False) -> float:
    """Standard deviation as a share: the counting and the maker; the shape's own spread where it was not measured."""
    return math.hypot(SHAPE_SHARE if guessed else COUNTED_TO / max(counted, 0.1), MAKER)
