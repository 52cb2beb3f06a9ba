"""Her own numbers come again where rows are not as tall as the gauge's: post stitches, other stitches, rows that take turns."""

from __future__ import annotations

import pytest

from loopwright.grading import grade, parse_gauge
from loopwright.grading.propose import Task, propose
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.propose import Wanted, measures_of, propose_design

HEAD = "Redshank Hat\n\nSize: child\nTerms: US\nGauge: {gauge}, 4 mm hook\nTurning chain: ch 1 does not count as a st\n\n"
CROWN = (
    "Crown\nRnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)\nRnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)\n"
    "Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)\n"
    + "".join(
        f"Rnd {n}: Ch 1, *hdc in each of next {n - 2} sts, 2 hdc in next st; rep from * around; join. ({8 * n} hdc)\n" for n in range(4, 10)
    )
)
RIB = "Ch 1, *fpdc around next st, bpdc around next st; rep from * around; join. (72 sts)\n"
HATS = {
    "a deep band of ribbing": CROWN + "\nBody\nRnds 10-18: Ch 1, hdc in each st around; join. (72 hdc)\n\nBand\nRnds 19-29: " + RIB,
    "single crochet in the body": CROWN + "\nBody\nRnds 10-25: Ch 1, sc in each st around; join. (72 sc)\n",
    "double crochet in the body": CROWN + "\nBody\nRnds 10-17: Ch 1, dc in each st around; join. (72 dc)\n",
    "ribbing all the way": CROWN + "\nBody\nRnds 10-20: " + RIB,
}


@pytest.mark.parametrize("gauge", ["17 hdc and 13 rnds = 10 cm", "15 hdc and 10 rnds = 10 cm", "20 hdc and 17 rnds = 4 in"])
@pytest.mark.parametrize("rows", HATS.values(), ids=HATS)
def test_her_own_numbers_come_again(rows: str, gauge: str) -> None:
    made = propose_design(Source.of(HEAD.format(gauge=gauge) + rows), Wanted())
    assert made.proposal.values
    assert made.own == made.proposal.values
    assert not [f for f in made.findings if f.code == "G043"]
    worked = grade(read(Source.of(made.text)), work, None, ["child"])
    assert worked.sizes[0].blanks == made.proposal.values
    for p in made.proposal.blanks:
        number = next(n for n in worked.sizes[0].numbers if n.blank == p.blank.name)
        if p.reasons and p.reasons[0].achieved_mm is not None:
            # the evidence and the graded design tell the same length
            assert p.reasons[0].achieved_mm == pytest.approx(number.achieved_mm, abs=0.01)


def test_rows_that_take_turns_keep_their_number() -> None:
    text = (
        "Godwit Scarf\n\nSize: one\nTerms: US\nGauge: 16 sc and 20 rows = 10 cm\n\nScarf\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\n"
        "Row 2: Ch 3 (counts as dc), dc in each of next 29 sts, turn. (30 dc)\nRow 3: Ch 1, sc in each st across, turn. (30 sc)\nRows 4-89: Rep Rows 2 and 3. (30 sts)\n"
    )
    source = Source.of(text)
    document = read(source)
    task = Task("one", ("one",), parse_gauge("16 sc and 20 rows = 10 cm"), measures_of("one"))
    found = propose(document, work(document), task)
    rows = next(p for p in found.blanks if p.blank.unit == "rows")
    assert rows.blank.value == 89
    # 45 rows of sc, 5 mm each, and 44 of dc, 10 mm each
    assert rows.reasons[0].achieved_mm == pytest.approx(45 * 5 + 44 * 10)
    assert propose_design(source, Wanted()).own["scarf rows"] == 89
