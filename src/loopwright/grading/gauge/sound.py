"""Does the gauge hang together: swatches against one another, against the usual shape of a stitch, against the yarn. In words."""

from __future__ import annotations

import math
from collections.abc import Sequence

from loopwright.grading.gauge.sizes import MAKER, WIDE, StitchSizes, counted_share, relative_height, usual_shape
from loopwright.grading.gauge.swatches import Swatch
from loopwright.trade.yarn import Weight

# Room around what is usual, as a factor: the published shapes lie within 1.2, the classes' gauges within 1.3 of their middle; toys are
# worked half as tight again, shawls half as loose. Common practice, no source.
ROOM_SHAPE = 1.6
ROOM_YARN = 2.0
# Rows of two stitches keep their proportion within a quarter (the spread of the published gauges and measured rows).
ROOM_HEIGHT = 1.25


def doubts(sizes: StitchSizes | None, swatches: Sequence[Swatch], before: StitchSizes | None, yarn: Weight | None) -> list[str]:
    """What does not fit together; empty where all is well."""
    found = [*_faults(swatches), *_widths(swatches), *_heights(swatches)]
    if sizes is None:
        return found
    found += _shapes(sizes)
    if yarn is not None:
        found += _yarn(sizes, yarn)
    if before is not None:
        found += _blocking(sizes, before)
    return found


def _faults(swatches: Sequence[Swatch]) -> list[str]:
    return [f"a count is left out: {fault}" for s in swatches for fault in s.faults]


def _named(swatches: Sequence[Swatch]) -> list[tuple[str, Swatch]]:
    return [(s.kind, s) for s in swatches if s.kind is not None and not s.disc_rounds]


def _pairs(swatches: Sequence[Swatch]) -> list[tuple[tuple[str, Swatch], tuple[str, Swatch]]]:
    named = _named(swatches)
    return [(a, b) for i, a in enumerate(named) for b in named[i + 1 :]]


def _widths(swatches: Sequence[Swatch]) -> list[str]:
    found = []
    for (a, one), (b, other) in _pairs(swatches):
        if one.stitch_mm is None or other.stitch_mm is None or one.pattern or other.pattern:
            continue
        share = WIDE * math.hypot(counted_share(one.stitches), counted_share(other.stitches))
        apart = abs(math.log(one.stitch_mm / other.stitch_mm))
        if apart > share + MAKER:
            wider, narrower = (a, b) if one.stitch_mm > other.stitch_mm else (b, a)
            found.append(
                f"{wider} is {100 * (math.exp(apart) - 1):.0f} % wider than {narrower}, more than counting explains "
                f"({100 * share:.0f} %): was another hook used, or another tension?"
            )
    return found


def _heights(swatches: Sequence[Swatch]) -> list[str]:
    found = []
    for (a, one), (b, other) in _pairs(swatches):
        tall, low = relative_height(a), relative_height(b)
        if one.row_mm is None or other.row_mm is None or tall <= 0 or low <= 0:
            continue
        if tall == low:
            found += _apart((a, one, one.row_mm), (b, other, other.row_mm))
            continue
        (up, high), (down, short) = ((a, one.row_mm), (b, other.row_mm)) if tall > low else ((b, other.row_mm), (a, one.row_mm))
        usual = max(tall, low) / min(tall, low)
        if high <= short:
            how = "as tall as" if high == short else "taller than"
            found.append(
                f"rows of {down} ({short:.3g} mm) are {how} rows of {up} ({high:.3g} mm): "
                "one of the two was miscounted, or the terms are mixed"
            )
        elif not usual / ROOM_HEIGHT <= high / short <= usual * ROOM_HEIGHT:
            found.append(f"rows of {up} are {high / short:.2g} times as tall as rows of {down}; about {usual:.2g} times is usual")
    return found


def _apart(one: tuple[str, Swatch, float], other: tuple[str, Swatch, float]) -> list[str]:
    """Rows of the same height that were measured differently."""
    (tall, a, high), (low, b, short) = (one, other) if one[2] >= other[2] else (other, one)
    share = WIDE * math.hypot(counted_share(a.rows), counted_share(b.rows))
    apart = math.log(high / short)
    if apart <= share + MAKER:
        return []
    where = f"rows of {tall} are {high:.3g} mm in one swatch and {short:.3g} mm in another"
    if tall != low:
        where = f"rows of {tall} ({high:.3g} mm) are {100 * (math.exp(apart) - 1):.0f} % taller than rows of {low} ({short:.3g} mm)"
    return [f"{where}, more than counting explains ({100 * share:.0f} %): was a row miscounted, or one of them blocked?"]


def _shapes(sizes: StitchSizes) -> list[str]:
    found = []
    for kind, (width, row) in {sizes.kind: (sizes.width_mm, sizes.row_mm), **sizes.own}.items():
        usual = usual_shape(kind)
        if row > 0 and width > 0 and not 1 / ROOM_SHAPE <= row / width / usual <= ROOM_SHAPE:
            found.append(
                f"a {kind} of {width:.3g} mm by {row:.3g} mm is {row / width:.2f} times as tall as wide; about {usual:.2f} is usual: "
                "are rows and stitches exchanged, or the terms mixed?"
            )
    return found


def _yarn(sizes: StitchSizes, yarn: Weight) -> list[str]:
    many, (low, high) = 100 / sizes.width_mm, yarn.gauge
    if low / ROOM_YARN <= many <= high * ROOM_YARN:
        return []
    usual = f"which gives {low:g} to {high:g} {yarn.gauge_stitch}"
    return [f"{many:.3g} sts in 10 cm cannot be {yarn.name} yarn, {usual}: is the unit or the yarn wrong?"]


def _blocking(after: StitchSizes, before: StitchSizes) -> list[str]:
    wide, tall = after.width_mm / before.width_mm, after.row_mm / before.row_mm
    if max(wide, tall) > 1.3 or min(wide, tall) < 0.9:
        return [f"blocking would change widths by {100 * (wide - 1):+.0f} % and lengths by {100 * (tall - 1):+.0f} %: was it measured dry?"]
    return []
