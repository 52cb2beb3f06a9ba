"""The yarn that somebody has: which sizes it makes, in which row it ends, how many balls of another yarn would do."""

from __future__ import annotations

import re
from dataclasses import replace

from loopwright.measuring.yarn import FabricYarn, YarnKnown, runs_out, sizes_that_fit, substitute, yarn_of
from loopwright.measuring.yarn.need import spread
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Measures, YarnAtHand, YarnNeed
from loopwright.workshop.measure import Measured

METRES = {"m": 1.0, "y": 0.9144}  # the international yard of 1959
GRAMS = {"g": 1.0, "o": 28.349523125}  # the international pound of 1959, a sixteenth of it
_AMOUNT = re.compile(
    r"(?P<n>\d{1,6}(?:\.\d{1,3})?)\s*(?P<unit>m|metres?|meters?|yds?|yards?|g|gr|grams?|grammes?|oz|ounces?|balls?|skeins?|hanks?)\b",
    re.IGNORECASE,
)


class CannotTellError(ValueError):
    """An amount or a yarn that cannot be understood; the message says what was expected."""


def metres_of(said: str, yarn: YarnKnown) -> float:
    """Metres of an amount such as "300 m", "330 yd", "2 balls", "150 g". Raises CannotTellError."""
    m = _AMOUNT.search(said)
    if m is None:
        raise CannotTellError(f'"{said}" is no amount of yarn: say for example "300 m", "150 g" or "2 balls"')
    many, unit = float(m["n"]), m["unit"][0].lower()
    if unit in METRES:
        return many * METRES[unit]
    if unit in GRAMS:
        if yarn.metres_per_100g is None:
            raise CannotTellError("grams tell no length without the label: add it to the Yarn line (100 g = 200 m), or say metres")
        return many * GRAMS[unit] * yarn.metres_per_100g / 100
    if yarn.ball_m is None:
        raise CannotTellError("balls tell no length without the label: add it to the Yarn line (50 g = 120 m), or say metres")
    return many * yarn.ball_m


def with_yarn_at_hand(measured: Measured, said: str) -> Measured:
    """The same, with what so much yarn makes of each size. Raises CannotTellError."""
    have_m = metres_of(said, measured.yarn)
    stitches = measured.gauge.sizes
    if stitches is None:
        return measured
    verdicts = sizes_that_fit({m.size: m.yarn for m in measured.sizes}, have_m)
    share = spread(stitches, measured.yarn, None)
    sizes = []
    for m, v, fabric, used in zip(measured.sizes, verdicts, measured.fabrics, measured.worked_yarn, strict=True):
        at_hand = YarnAtHand(v.verdict, v.spare_m, v.colour, have_m)
        sizes.append(replace(m, at_hand=at_hand if fabric is None or used is None else _where(at_hand, fabric, used, share)))
    return replace(measured, sizes=tuple(sizes))


def _where(at_hand: YarnAtHand, fabric: Fabric, used: FabricYarn, share: float) -> YarnAtHand:
    found = runs_out(fabric, used, at_hand.have_m, share)
    if found is None:
        return at_hand
    name = [r.label or f"row {i + 1} of the fabric" for i, r in enumerate(fabric.rows)]
    return replace(
        at_hand, row=found.row, label=name[found.row], section=found.section, earliest=name[found.earliest], latest=name[found.latest],
        share=found.share,
    )


def with_other_yarn(measured: Measured, said: str) -> Measured:
    """The same, with the balls that another yarn takes, by its label ("50 g = 120 m"). Raises CannotTellError."""
    other = yarn_of(said)
    if other.ball_m is None:
        raise CannotTellError(f'"{said}" tells no ball: say its grams and its length, for example "50 g = 120 m"')
    return replace(measured, sizes=tuple(_with_balls(m, other.ball_m) for m in measured.sizes))


def _with_balls(m: Measures, ball_m: float) -> Measures:
    needs: tuple[YarnNeed, ...] = tuple(replace(y, other_balls=substitute(y.length_m, ball_m)) for y in m.yarn)
    return replace(m, yarn=needs)
