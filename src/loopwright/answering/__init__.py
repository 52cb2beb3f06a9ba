"""What a maker asks, answered out of the fabric: a count that is off, another gauge, too little yarn, another measure."""

from loopwright.answering.answer import Answer, Cause
from loopwright.answering.counts import CountAsked, count_is_off, woven_row
from loopwright.answering.gauges import gauge_is_other
from loopwright.answering.measures import measure_is_wanted
from loopwright.answering.yarn import yarn_is_left

__all__ = ["Answer", "Cause", "CountAsked", "count_is_off", "gauge_is_other", "measure_is_wanted", "woven_row", "yarn_is_left"]
