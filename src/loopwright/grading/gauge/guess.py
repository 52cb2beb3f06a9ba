"""A gauge where none was measured: from the yarn's class and the hook, as a range that is marked as a guess."""

from __future__ import annotations

import math
from functools import cache

from loopwright.grading.gauge.sizes import StitchSizes, relative_height, usual_shape
from loopwright.record import record
from loopwright.trade.yarn import Weight, weights

# How far a measured gauge may lie from these guesses: standard deviations as shares. The classes' own spans are 10 to 25 % either way
# (trade/data/yarn.toml), and makers leave them: toys tighter, shawls looser. Ours, no source.
FROM_BOTH, FROM_ONE, FROM_THREAD = 0.12, 0.15, 0.25
# The hook tells the width of a stitch better than the yarn: makers choose a hook for the fabric they want. Ours, no source.
_HOOK_SAYS = 0.75
_THIN_HOOK_MM = 2.0


@record
class Guess:
    """Sizes that nobody measured, and what they were taken from."""

    sizes: StitchSizes
    how: str


@cache
def hooks_wide() -> float:
    """Width of a single crochet over the thickness of the hook: the mean over the yarn classes 1 to 6 of their gauges and hooks.

    Derived from the Standard Yarn Weight System in trade/data/yarn.toml: about 1.4.
    """
    found = [math.log(_class_width_mm(w) / math.sqrt(w.hook_mm[0] * w.hook_mm[1])) for w in weights() if 1 <= w.number <= 6]
    return math.exp(sum(found) / len(found))


def _class_width_mm(yarn: Weight) -> float:
    """Middle width of a stitch of the class: the geometric mean of the table's two ends, counted over 10 cm."""
    return 100 / math.sqrt(yarn.gauge[0] * yarn.gauge[1])


def guess(kind: str, yarn: Weight | None, hook_mm: float | None) -> Guess | None:
    """Sizes from the yarn's class, the hook or both, for a pattern worked mostly in `kind`; None where neither is told."""
    if yarn is None and hook_mm is None:
        return None
    by_class = _class_width_mm(yarn) if yarn else None
    by_hook = hook_mm * hooks_wide() if hook_mm else None
    if by_class and by_hook:
        width = math.exp(_HOOK_SAYS * math.log(by_hook) + (1 - _HOOK_SAYS) * math.log(by_class))
        share, how = FROM_BOTH, f"from the yarn's class ({yarn.name if yarn else ''}) and the {hook_mm:g} mm hook"
    elif by_class:
        width, share, how = by_class, FROM_ONE, f"from the yarn's class alone ({yarn.name if yarn else ''})"
    else:
        width, share, how = by_hook or 0.0, FROM_ONE, f"from the {hook_mm:g} mm hook alone"
    if (yarn is not None and yarn.number == 0) or (hook_mm is not None and hook_mm < _THIN_HOOK_MM):
        share = FROM_THREAD
    row = width * usual_shape(kind)
    return Guess(StitchSizes(width, row, kind if relative_height(kind) else "sc", share, share, guessed=True, text=how), how)
