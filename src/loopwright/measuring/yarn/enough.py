"""Is it enough: sizes that the yarn at hand makes, the row where it runs out, balls of another yarn."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import Literal

from loopwright.grading.gauge.sizes import WIDE
from loopwright.measuring.yarn.need import FabricYarn, balls_to_buy
from loopwright.model.fabric import Fabric
from loopwright.model.measures import YarnNeed
from loopwright.record import record
from loopwright.trade.yarn_use import yarn_use

Verdict = Literal["fits", "may not reach", "does not fit", "unknown"]


@record
class SizeFits:
    """Whether a size can be made: `spare_m` is what is left of the scarcest colour by the middle estimate, below nought what lacks."""

    size: str
    verdict: Verdict
    spare_m: float
    colour: str


def sizes_that_fit(needs: Mapping[str, Sequence[YarnNeed]], have_m: Mapping[str, float] | float) -> tuple[SizeFits, ...]:
    """Every size against the yarn at hand: metres by colour, or metres in all.

    "fits": even the high end of the range reaches; "may not reach": only the middle or the low end does; "unknown": no estimate.
    """
    return tuple(_size_fits(size, found, have_m) for size, found in needs.items())


def _size_fits(size: str, needs: Sequence[YarnNeed], have_m: Mapping[str, float] | float) -> SizeFits:
    if not needs:
        return SizeFits(size, "unknown", 0.0, "")
    if not isinstance(have_m, Mapping):
        whole = YarnNeed("", sum(n.length_m for n in needs), sum(n.low_m for n in needs), sum(n.high_m for n in needs))
        needs, have_m = (whole,), {"": have_m}
    cases = [(have_m.get(n.colour, 0.0), n) for n in needs]
    have, scarce = min(cases, key=lambda c: c[0] / c[1].high_m if c[1].high_m > 0 else math.inf)
    verdict: Verdict = "fits" if have >= scarce.high_m else "may not reach" if have >= scarce.low_m else "does not fit"
    return SizeFits(size, verdict, have - scarce.length_m, scarce.colour)


@record
class RunsOut:
    """Where the yarn ends: index and label of the row by the middle estimate, and the earliest and latest row (the last where it reaches).

    `share`: how much of that colour is worked by then.
    """

    row: int
    label: str
    section: str | None
    earliest: int
    latest: int
    share: float


def runs_out(fabric: Fabric, found: FabricYarn, have_m: float, share: float, colour: str | None = None) -> RunsOut | None:
    """The row in which the yarn at hand runs out, in the order of making; None where it reaches to the end.

    `colour`: one colour, None for all of them together. `share`: standard deviation of the estimate (`need.spread`). Sections made
    several times count whole, in the place of the first. Raises ValueError for yarn below nought.
    """
    if not have_m >= 0 or math.isinf(have_m):
        raise ValueError("yarn at hand must be a length of 0 or more")
    each = [_row_mm(r.stitches_mm, colour) + _row_mm(r.tails, colour) for r in found.rows]
    total = sum(each)
    at = _reached(each, have_m * 1000)
    if at is None:
        return None
    last = max(len(each) - 1, 0)
    early, late = (_reached(each, have_m * 1000 * math.exp(sign * WIDE * share)) for sign in (-1, 1))
    row = fabric.rows[at]
    return RunsOut(at, row.label, row.section, at if early is None else early, last if late is None else late, have_m * 1000 / total)


def _row_mm(by_colour: Mapping[str, float], colour: str | None) -> float:
    return sum(by_colour.values()) if colour is None else by_colour.get(colour, 0.0)


def _reached(each: Sequence[float], have_mm: float) -> int | None:
    """The first row that the yarn does not finish."""
    used = 0.0
    for i, mm in enumerate(each):
        used += mm
        if used > have_mm + 1e-6:
            return i
    return None


def substitute(length_m: float, ball_m: float, *, contingency: float | None = None) -> int:
    """Balls of another yarn for a length: by metres, never by grams. `contingency`: what to add, the table's for plain work unless told.

    Raises ValueError for a length below nought or a ball of nothing.
    """
    if not length_m >= 0 or math.isinf(length_m):
        raise ValueError("a length of yarn must be 0 or more")
    return balls_to_buy(length_m, ball_m, yarn_use().plain if contingency is None else contingency)
