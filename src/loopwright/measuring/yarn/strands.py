"""How long the yarn of one stitch is, from its width and height and the thickness of the yarn.

A stitch is counted as strands: three lie across its top as in a chain, three or four stand up its post, and each loop drawn turns once
round a strand. So a tall stitch in a loose gauge takes more, and a thicker yarn at the same gauge takes more. The counts stand in
`trade/data/yarn_use.toml`, with the measured swatches they were held against.
"""

from __future__ import annotations

import math
from functools import cache
from typing import Protocol

from loopwright.grading.gauge import StitchSizes, plain_kind
from loopwright.trade.composed import composed
from loopwright.trade.yarn import Weight, weights
from loopwright.trade.yarn_use import Strands, yarn_use

# In ordinary fabric the yarn is a third as thick as a stitch is wide: so in the measured swatches of trade/data/yarn_use.toml.
WIDE_TO_THICK = 3.0
# Yarn much thinner or thicker than that is no yarn of this gauge (a shawl in lace yarn, a stiff basket): the bounds of what is believed.
_THINNEST, _THICKEST = 6.0, 2.0


class Sized(Protocol):
    """What tells how big a stitch is."""

    def width(self, kind: str) -> float:
        """Width in mm."""

    def height(self, kind: str) -> float:
        """Height in mm."""


@cache
def _thick_by_metres() -> float:
    """Thickness in mm times the root of metres per 100 g: the mean over the classes 1 to 6 of the wraps and metres in trade/data/yarn.toml.

    Yarn of one density is as thick as the root of its mass per length. About 32.
    """
    inner = [w for w in weights() if 1 <= w.number <= 6]
    found = [math.log(_by_wraps_mm(w)) + math.log(w.metres_per_100g[0] * w.metres_per_100g[1]) / 4 for w in inner]
    return math.exp(sum(found) / len(found))


def _by_wraps_mm(yarn: Weight) -> float:
    return 25.4 / math.sqrt(yarn.wraps_per_inch[0] * yarn.wraps_per_inch[1])


def thickness_mm(stitch_mm: float, yarn: Weight | None = None, metres_per_100g: float | None = None) -> float:
    """How thick the yarn is in the fabric: halfway between what its label and what the stitch's width say (geometric mean).

    Yarn is squeezed where it turns, and labels tell mass, not thickness (cotton is thinner than wool of the same mass); the stitch it
    makes is the better half of the evidence. Without a label the width alone.
    """
    by_width = stitch_mm / WIDE_TO_THICK
    told = [_thick_by_metres() / math.sqrt(metres_per_100g)] if metres_per_100g else []
    if yarn is not None:
        told.append(_by_wraps_mm(yarn))
    if not told:
        return by_width
    by_label = min(told)
    return math.sqrt(by_width * min(max(by_label, stitch_mm / _THINNEST), stitch_mm / _THICKEST))


def stitch_yarn_mm(kind: str, sizes: Sized, thick_mm: float) -> float:
    """Yarn in one stitch of a kind (US key), mm. Kinds that the table does not have are taken as the stitch of the swatch.

    Decreases draw every stitch up but for its last loop; foundation stitches have a chain of their own below them.
    """
    return _of_several(kind, sizes, thick_mm) if kind in yarn_use().groups else _of_one(kind, sizes, thick_mm)


def _of_one(kind: str, sizes: Sized, thick_mm: float) -> float:
    table = yarn_use()
    made = composed(kind)
    strands = table.stitches.get(made.plain) or table.stitches[swatch_kind(sizes)]
    around = table.post_turns if made.post else 0.0
    below = _length(table.stitches["ch"], 1, sizes.width("ch"), 0.0, thick_mm) if made.foundation else 0.0
    return below + _length(strands, made.legs, sizes.width(kind), sizes.height(made.plain), thick_mm, around)


def _of_several(kind: str, sizes: Sized, thick_mm: float) -> float:
    table = yarn_use()
    group = table.groups[kind]
    strands = table.stitches[group.of]
    wide, tall = sizes.width(group.of), sizes.height(group.of)
    if group.whole:
        return group.many * _length(strands, 1, wide, tall, thick_mm) + _length(table.stitches["ch"], 1, sizes.width("ch"), 0.0, thick_mm)
    return _length(strands, group.many, wide, tall, thick_mm)


def _length(strands: Strands, legs: int, wide_mm: float, tall_mm: float, thick_mm: float, around: float = 0.0) -> float:
    turn = 2 * math.pi * thick_mm
    return strands.across * wide_mm + legs * (strands.up * tall_mm + (strands.turns - 1 + around) * turn) + turn


def swatch_kind(sizes: Sized) -> str:
    """The stitch of the swatch, where the table has it; else single crochet."""
    kind = plain_kind(sizes.kind) if isinstance(sizes, StitchSizes) else "sc"
    return kind if kind in yarn_use().stitches and kind != "ch" else "sc"


def known_kind(kind: str) -> bool:
    """True where the table knows how much yarn the kind takes."""
    return kind in yarn_use().groups or plain_kind(kind) in yarn_use().stitches
