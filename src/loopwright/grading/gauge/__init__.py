"""Gauge: as it is written, and what it says of every kind of stitch."""

from loopwright.grading.gauge.found import GaugeFound, stitch_sizes
from loopwright.grading.gauge.sizes import StitchSizes, plain_kind, sizes_from
from loopwright.grading.gauge.swatches import Swatch, read_swatches
from loopwright.grading.gauge.written import LARGEST_MM, SMALLEST_MM, Gauge, GaugeError, parse_gauge

__all__ = [
    "LARGEST_MM", "SMALLEST_MM", "Gauge", "GaugeError", "GaugeFound", "StitchSizes", "Swatch", "parse_gauge", "plain_kind", "read_swatches",
    "sizes_from", "stitch_sizes",
]
