"""What a maker asks, answered out of the fabric: a count, a gauge, yarn, a measure, chains, and why it looks as it does."""

from loopwright.answering.answer import Answer, Cause
from loopwright.answering.chains import chain_is, chained, turned_by, turning_chain
from loopwright.answering.counts import CountAsked, count_is_off, woven_row
from loopwright.answering.gauges import gauge_is_other
from loopwright.answering.looks import LOOKS, Look, LooksAsked, it_looks
from loopwright.answering.measures import measure_is_wanted
from loopwright.answering.yarn import balls_of_another, yarn_is_left

__all__ = [
    "LOOKS", "Answer", "Cause", "CountAsked", "Look", "LooksAsked", "balls_of_another", "chain_is", "chained", "count_is_off",
    "gauge_is_other", "it_looks", "measure_is_wanted", "turned_by", "turning_chain", "woven_row", "yarn_is_left",
]
