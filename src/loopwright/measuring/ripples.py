"""Ripples: rows that zigzag take up width, and a gauge of plain rows does not know it."""

from __future__ import annotations

import math
import re

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.parts import Part

# A gauge that was taken over the pattern itself has the zigzag in it.
_IN_PATTERN = re.compile(r"\b(?:pattern|patt|pat|repeats?|reps?|ripples?|waves?|chevrons?|zigzags?)\b", re.IGNORECASE)
FEW_PEAKS = 2
PLAIN_BETWEEN = 4  # places to a peak: shells and fans stand closer


def takes_up(part: Part, sizes: StitchSizes) -> float:
    """How wide a row of the part lies against its stitches laid straight: 1 for what is no ripple, or where the gauge was taken over it.

    With every row a leg moves half a peak's increase sideways, so that rows lie at the angle whose tangent is that many widths over one
    height, where posts stand square on their row (derived from plane geometry).
    """
    peaks = part.corners
    last = part.courses[-1]
    if part.kind != "flat" or len(peaks) < FEW_PEAKS or last.places < PLAIN_BETWEEN * len(peaks) or _IN_PATTERN.search(sizes.text):
        return 1.0
    gained = sum(c.members - 1 for c in peaks) / len(peaks)
    before = part.courses[-2] if len(part.courses) > 1 else None
    if not last.height_mm or before is not None and abs(last.places - before.places) > len(peaks):
        return 1.0  # it grows: corners, no peaks
    return math.cos(math.atan(gained / 2 * sizes.width(next(iter(last.kinds))) / last.height_mm))
