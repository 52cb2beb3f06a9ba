"""How much yarn: per colour and section, from counted stitches, calibrated by what was weighed; from areas; is it enough."""

from loopwright.measuring.yarn.area import yarn_from_area
from loopwright.measuring.yarn.calibrate import Calibration, calibration
from loopwright.measuring.yarn.enough import RunsOut, SizeFits, runs_out, sizes_that_fit, substitute
from loopwright.measuring.yarn.known import Sample, Weighed, YarnKnown, yarn_known, yarn_of
from loopwright.measuring.yarn.need import (
    FabricYarn,
    RowYarn,
    balls_to_buy,
    copies_of,
    fabric_yarn,
    needs_of,
    sections_of,
    yarn_by_section,
    yarn_need,
)

__all__ = [
    "Calibration", "FabricYarn", "RowYarn", "RunsOut", "Sample", "SizeFits", "Weighed", "YarnKnown", "balls_to_buy", "calibration",
    "copies_of", "fabric_yarn", "needs_of", "runs_out", "sections_of", "sizes_that_fit", "substitute", "yarn_by_section", "yarn_from_area",
    "yarn_known", "yarn_need", "yarn_of",
]
