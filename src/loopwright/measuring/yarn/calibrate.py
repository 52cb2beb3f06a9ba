"""Her own hand: how her yarn differs from the sum, by a swatch or a finished piece that she weighed."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import field

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.yarn.known import YarnKnown
from loopwright.measuring.yarn.strands import stitch_yarn_mm, swatch_kind, thickness_mm
from loopwright.record import record
from loopwright.trade.yarn_use import yarn_use

# Beyond these factors the scales, the label or the count were wrong: no hand differs so much (common practice, no source).
LEAST, MOST = 0.5, 2.0


@record
class Calibration:
    """Factor on the length of a stitch: `by_kind` where that kind was weighed, else `factor`. `share`: its standard deviation."""

    factor: float = 1.0
    share: float = 0.0
    how: str = ""
    by_kind: Mapping[str, float] = field(default_factory=dict)
    doubts: tuple[str, ...] = ()

    def of(self, kind: str) -> float:
        """The factor for a kind (US key, plain)."""
        return self.by_kind.get(kind, self.factor)


def calibration(yarn: YarnKnown, sizes: StitchSizes, sample_m: Mapping[str, float] | None = None) -> Calibration:
    """What her weighed swatches say; without one, her weighed piece; without either, nothing (factor 1).

    `sample_m`: uncalibrated length in metres by size (lower case), for the piece that was weighed. A factor beyond one half or two is not
    used and is told in `doubts`.
    """
    spread = yarn_use().spread
    doubts: list[str] = []
    found: dict[str, float] = {}
    for swatch in yarn.swatches:
        true_m = swatch.metres or _of_mass(swatch.grams, yarn)
        kind = swatch.kind or swatch_kind(sizes)
        if true_m is None:
            doubts.append(f'the swatch "{swatch.text}" was weighed, but the yarn tells no metres to the gram')
            continue
        factor = true_m * 1000 / swatch_mm(kind, swatch.stitches, swatch.rows, sizes, yarn)
        if LEAST <= factor <= MOST:
            found[kind] = factor
        else:
            doubts.append(_absurd(swatch.text, factor))
    if found:
        mean = math.exp(sum(map(math.log, found.values())) / len(found))
        return Calibration(mean, spread.weighed, f"by her weighed swatch of {', '.join(found)}", found, tuple(doubts))
    for sample in yarn.samples:
        ours, true_m = (sample_m or {}).get(sample.size.lower()), _of_mass(sample.grams, yarn)
        if ours and true_m:
            factor = true_m / ours
            if LEAST <= factor <= MOST:
                return Calibration(factor, spread.sample, f"by the weighed {sample.size}", {}, tuple(doubts))
            doubts.append(_absurd(sample.text, factor))
    return Calibration(1.0, spread.counted, "", {}, tuple(doubts))


def _absurd(text: str, factor: float) -> str:
    return f'by "{text}" the yarn would be {factor:.2g} times what such stitches take; not used: are grams, count or label wrong?'


def _of_mass(grams: float | None, yarn: YarnKnown) -> float | None:
    metres = yarn.usual_metres_per_100g
    return grams * metres / 100 if grams and metres else None


def swatch_mm(kind: str, stitches: float, rows: float, sizes: StitchSizes, yarn: YarnKnown) -> float:
    """Yarn of a plain swatch, mm: its foundation chain and its rows; for a weighed swatch, with all strands held together as one."""
    thick = thickness_mm(sizes.width(kind), yarn.weight, yarn.metres_per_100g)
    one = stitch_yarn_mm(kind, sizes, thick)
    return yarn.strands * (stitches * rows * one + stitches * stitch_yarn_mm("ch", sizes, thick))
