"""Cautions for makers and wearers: the table, whom and what they are for, and those that a pattern brings up.

Prompts for the designer in our own words, never advice on law: every text is said together with `defer`.
"""

from loopwright.trade.cautions.ages import ages_of
from loopwright.trade.cautions.due import about, cautions_due, hidden_names, in_words
from loopwright.trade.cautions.gaps import Opening, StitchMm, openings_mm
from loopwright.trade.cautions.scopes import HIDDEN, TOLD
from loopwright.trade.cautions.table import Caution, cautions, defer

__all__ = [
    "HIDDEN", "TOLD", "Caution", "Opening", "StitchMm", "about", "ages_of", "cautions", "cautions_due", "defer", "hidden_names", "in_words",
    "openings_mm",
]
