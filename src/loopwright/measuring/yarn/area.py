"""Yarn from measurements alone, where stitches are not counted: so much fabric of such a stitch."""

from __future__ import annotations

import math

from loopwright.grading.gauge import StitchSizes
from loopwright.grading.gauge.sizes import WIDE
from loopwright.measuring.yarn.calibrate import Calibration
from loopwright.measuring.yarn.known import YarnKnown
from loopwright.measuring.yarn.need import balls_to_buy, spread, thread
from loopwright.measuring.yarn.strands import stitch_yarn_mm, thickness_mm
from loopwright.model.measures import YarnNeed
from loopwright.trade.stitches import heights
from loopwright.trade.yarn_use import yarn_use

FILET = "filet"


def yarn_from_area(
    area_mm2: float, sizes: StitchSizes, yarn: YarnKnown, kind: str | None = None, fill: str = "solid",
    calibrated: Calibration | None = None,
) -> YarnNeed:
    """Yarn of a piece by its area: stitches to the area times yarn to the stitch, times how much of it is filled.

    `kind`: main stitch (US key), that of the gauge unless told. `fill`: "solid", "openwork" (eyelets, light mesh), "lace" (chain loops,
    nets), "filet", "post" or "bobbles". Raises ValueError for an area that is none, or a fill that the table does not have.
    """
    table = yarn_use()
    if not 0 < area_mm2 < math.inf:
        raise ValueError("an area must be more than nought")
    if fill not in table.fills and fill != FILET:
        raise ValueError(f"no fill called {fill!r}: there are {', '.join((*table.fills, FILET))}")
    kind = kind or sizes.kind
    thick = thickness_mm(sizes.width(kind), yarn.weight, yarn.metres_per_100g)
    per_mm = stitch_yarn_mm(kind, sizes, thick) / (sizes.width(kind) * (sizes.height(kind) or sizes.row_mm))
    low, high = filled_share(fill, kind, sizes, thick)
    factor = math.sqrt(low * high) * yarn.strands * (calibrated.of(kind) if calibrated else 1.0)
    length = area_mm2 * per_mm * factor / 1000
    share = spread(sizes, yarn, calibrated)
    if not (sizes.guessed and thread(sizes, yarn)):
        # unlike counted stitches, an area is divided by the gauge: a wrong width tells in full
        share = math.hypot(share, table.spread.area, 0.6 * sizes.width_share, 0.6 * sizes.height_share, math.log(high / low) / 4)
    mass = length * 100 / yarn.metres_per_100g if yarn.metres_per_100g else None
    balls = balls_to_buy(length, yarn.ball_m, table.plain) if yarn.ball_m else None
    how = f"from the area, as {fill} fabric of {kind}" + ("; gauge guessed" if sizes.guessed else "")
    if sizes.guessed and thread(sizes, yarn):
        how += "; thread lace without a gauge: half to double, no nearer; weigh a motif"
    return YarnNeed("", length, length * math.exp(-WIDE * share), length * math.exp(WIDE * share), mass, balls, how)


def filled_share(fill: str, kind: str, sizes: StitchSizes, thick_mm: float) -> tuple[float, float]:
    """Yarn over area against solid fabric of the kind, from low to high; of filet by its own strands, from open to half filled.

    An open square is one stitch and chains, as many fewer than the stitch is tall in chains that it comes out square: two for dc.
    """
    table = yarn_use()
    if fill != FILET:
        return table.fills[fill].low, table.fills[fill].high
    many = max(2, heights().get(kind, 3))
    solid = many * stitch_yarn_mm(kind, sizes, thick_mm)
    net = (solid / many + (many - 1) * stitch_yarn_mm("ch", sizes, thick_mm)) / solid
    low, high = (net + (1 - net) * share for share in table.filet_filled)
    return low, high
