"""The fabric of a pattern is the same in German, French and Spanish as in English, stitch by stitch."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.foreign.test_patterns import patterns

ENGLISH = {
    "granny square": (
        "Ch 4, join with sl st to form a ring.\n"
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * 2 times more, join with sl st in top of turning ch. (12 dc)\n"
        "Rnd 2: Sl st in next 2 dc and in ch sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same ch sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; "
        "rep from * to end, join with sl st."
    ),
    "post stitches and loops": (
        "Rnd 1: 12 dc in magic ring, join with sl st.\nRnd 2: Ch 1, 2 sc in back loop only of each st; join.\n"
        "Rnd 3: Ch 2, *fpdc around next st, bpdc around next st; rep from *; join with sl st.\nRnd 4: Ch 1, 1 sc in front loop only of each st, join."
    ),
    "shells and skipped stitches": (
        "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\n"
        "Row 2: Ch 1, sc in first st, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * to end, turn.\n"
        "Row 3: Ch 3 (counts as dc), 2 dc in same st, *sk 2 sts, sc in next st, sk 2 sts, 5 dc in next st; rep from * to last 6 sts, sk 2 sts, "
        "sc in next st, sk 2 sts, 3 dc in last st, turn."
    ),
    "rows": (
        "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 1, sc in each st, turn.\n"
        "Row 3: Ch 1, 2 sc in first st, sc in next 18 sts, 2 sc in last st. Turn.\nRow 4: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\n"
        "Row 5: As Row 2\nRow 6: Ch 3 (counts as dc), dc in each next st, turn.\nRows 7-8: Rep Row 6."
    ),
}


def stitches(text, terms=None):
    """Every stitch: what it is, its row, what it was worked into and where, what it is to its row; and each row's turning and joining."""
    fabric = work(read(Source.of(text), terms)).fabrics[0]
    assert fabric is not None
    made = [(fabric.name(i), fabric.row[i], fabric.parents(i), fabric.where(i), fabric.part_of(i)) for i in range(len(fabric))]
    return made, [(r.start, r.end, r.turned, r.joined) for r in fabric.rows], sorted(fabric.counts_as)


TEXTS = {(code, name.partition(": ")[2]): text for code in ("de", "fr", "es") for name, text, _ in patterns(code)}


@pytest.mark.parametrize("name", ENGLISH)
@pytest.mark.parametrize("language", ["de", "fr", "es"])
def test_the_same_fabric(language, name):
    assert stitches(TEXTS[language, name]) == stitches(ENGLISH[name], "us")
