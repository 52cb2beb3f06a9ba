"""Gauge, sizes and reasons to whole numbers: every blank of a design filled for every size, as near its target as stitches allow."""

from loopwright.grading.fill import fill, pick
from loopwright.grading.gauge import Gauge, GaugeError, parse_gauge
from loopwright.grading.grade import Graded, SizeGrade, grade
from loopwright.grading.number import Neighbour, Number
from loopwright.grading.written import written

__all__ = ["Gauge", "GaugeError", "Graded", "Neighbour", "Number", "SizeGrade", "fill", "grade", "parse_gauge", "pick", "written"]
