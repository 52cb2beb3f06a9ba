"""What is measured of a worked fabric: dimensions, how each round lies, shape, yarn, time. Lengths are millimetres."""

from __future__ import annotations

from dataclasses import field
from typing import Literal

from loopwright.record import record

Lies = Literal["flat", "blocks out", "cups", "ruffles"]


@record
class Dimension:
    """One measurement of a section or piece: its value and the range that the gauge's own uncertainty leaves.

    `name`: in the trade's words ("around", "across", "depth", "width", "height", "length"). `rows`: first and last row of the fabric
    that it is taken from. `how`: the sum in words. `worn`: on the body, not laid flat. `relaxed`: taken from the relaxed shape, not
    from counts.
    """

    section: str | None
    name: str
    value_mm: float
    low_mm: float
    high_mm: float
    rows: tuple[int, int]
    how: str
    piece: int = 0
    worn: bool = False
    relaxed: bool = False


@record
class RoundLies:
    """How one round lies: what it gained (`rate`), what a flat one would gain at this gauge (`flat_rate`), and what that does.

    `row`: index of the fabric's row. `curvature`: the total curvature inside the round, radians; 0 is flat, above it cups, below it
    ruffles. `mend`: what would make it lie flat, "" where it does.
    """

    section: str | None
    label: str
    row: int
    item: int
    stitches: int
    rate: float
    flat_rate: float
    lies: Lies
    curvature: float = 0.0
    mend: str = ""


@record
class ShapeMeasures:
    """The relaxed shape's own measures: its bounding box as it lies, strains as shares, and whether the solver came to rest.

    `laid_flat`: laid out and blocked in the plane, as pieces of rows alone are shown; else free in space.
    """

    width_mm: float
    depth_mm: float
    height_mm: float
    strain_mean: float
    strain_max: float
    settled: bool
    laid_flat: bool = False


@record
class WornShape:
    """The relaxed shape put on a form of the size's own measure: where it ends.

    `form`: in words, "a head of 49.5 cm". Of a hat or bonnet: height of the opening's edge above the brow line, in front, behind and at the
    sides (below nought: lower); of a mitt: above the wrist crease. `behind_brow_mm`: how far the front edge lies behind the brow.
    `stretch`: the edge worn by relaxed.
    """

    form: str
    front_mm: float
    back_mm: float
    sides_mm: float
    behind_brow_mm: float
    stretch: float
    notes: tuple[str, ...] = ()


@record
class YarnNeed:
    """Yarn of one colour: length with its range in metres, mass where it can be told, whole balls to buy where a ball is known.

    `other_balls`: of another yarn that was asked about.
    """

    colour: str
    length_m: float
    low_m: float
    high_m: float
    mass_g: float | None = None
    balls: int | None = None
    how: str = ""
    other_balls: int | None = None


@record
class YarnAtHand:
    """Whether the yarn at hand makes this size, and where it ends if not.

    `verdict`: "fits" even at the high end of the range; "may not reach"; "does not fit"; "unknown". `spare_m`: what is left by the middle
    estimate, below nought what lacks, of `colour` ("" for all together). `row`: index of the fabric's row in which it runs out, with its
    label and section; `earliest` and `latest` are labels of the rows that the range allows; `share`: of the yarn that is used by then.
    """

    verdict: Literal["fits", "may not reach", "does not fit", "unknown"]
    spare_m: float
    colour: str
    have_m: float
    row: int | None = None
    label: str = ""
    section: str | None = None
    earliest: str = ""
    latest: str = ""
    share: float = 1.0


@record
class TimeNeed:
    """Making time in minutes, with its range."""

    value_min: float
    low_min: float
    high_min: float
    how: str = ""


@record
class Measures:
    """Everything measured of one size."""

    size: str
    dimensions: tuple[Dimension, ...] = ()
    rounds: tuple[RoundLies, ...] = ()
    shape: ShapeMeasures | None = None
    worn: WornShape | None = None
    yarn: tuple[YarnNeed, ...] = ()
    yarn_of_sections: tuple[tuple[str | None, tuple[YarnNeed, ...]], ...] = ()
    at_hand: YarnAtHand | None = None
    time: TimeNeed | None = None
    stitches: dict[str, int] = field(default_factory=dict)
    notes: tuple[str, ...] = ()
