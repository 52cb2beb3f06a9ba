"""A sleeve that narrows by a schedule: its ends, rows and decreases become blanks, and her own numbers come again."""

from __future__ import annotations

import pytest

from loopwright.grading import grade
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.propose import Wanted, propose_design

SLEEVE = (
    "Redshank Sleeve\n\nSize: child\nTerms: US\nGauge: 16 sc and 18 rows = 10 cm, 5 mm hook\nTurning chain: ch 1 does not count as a st\n\n"
    "Sleeve\nCh {chain}.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. ({first})\n"
    "Rows 2-10: Ch 1, sc in each st across, turn. ({first})\n{shaping}\nWork even for 6 rows.\nFasten off.\n"
)
NARROWS = "Dec 1 st at each end of every 4th row 9 times, then every 3rd row twice. (26)"
WIDENS = "Inc 1 st at each end on every 5th row 4 times. (34)"


@pytest.mark.parametrize(("shaping", "first", "values"), [
    (NARROWS, 48, {"sleeve end sts": 26, "sleeve decreases": 11, "sleeve shaping rows": 42}),
    (WIDENS, 26, {"sleeve end sts": 34, "sleeve increases": 4, "sleeve shaping rows": 20}),
])
def test_her_own_numbers_come_again(shaping, first, values):
    made = propose_design(Source.of(SLEEVE.format(chain=first + 1, first=first, shaping=shaping)), Wanted())
    assert values.items() <= made.proposal.values.items()
    assert made.own == made.proposal.values
    worked = grade(read(Source.of(made.text)), work, None, ["child"])
    assert worked.sizes[0].blanks == made.proposal.values
    assert [r.counts[0] for r in worked.report.rows][-1] == values["sleeve end sts"]


def test_a_spacing_that_is_not_even_keeps_its_numbers():
    uneven = "Dec 1 st at each end of every 6th row 3 times, then every 2nd row 5 times. (32)"
    made = propose_design(Source.of(SLEEVE.format(chain=49, first=48, shaping=uneven)), Wanted())
    assert uneven[:40] in made.text
    assert any("not an even one" in k for k in made.proposal.kept)
