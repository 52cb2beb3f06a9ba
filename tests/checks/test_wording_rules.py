"""Rules on what is said: groups, turning chains, terms, abbreviations, labels, sides, marks. Each fires once and stays silent once."""

import pytest

HEAD = "Reed Cowl\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n"
LIST = HEAD + "Abbreviations: ch = chain, sc = single crochet, st(s) = stitch(es), rep = repeat{more}\n\nBody\nCh 13.\n"
ROW_1 = "Row 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"

CASES = [
    # code, text that has it, text that has it not
    (
        "C003",
        "Rnd 1: 4 sc in magic ring. (4)\nRnd 2: (2 sc, 4 dc) 4 times.\n",
        "Rnd 1: 4 sc in magic ring. (4)\nRnd 2: (2 sc, 4 dc) in each of next 4 sts. (24)\n",
    ),
    (
        "C003",
        "Rnd 1: 4 sc in magic ring. (4)\nRnd 2: (2 sc, 4 dc) 4 times.\n",
        "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: (sc 1, inc) 3 times. (9)\n",
    ),
    (
        "C004",
        "Ch 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3 (counts as dc), dc in each st across, turn.\nRow 3: Ch 3 (does not count as a st), dc in each st across, turn.\n",
        "Ch 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3 (counts as dc), dc in each st across, turn.\nRow 3: Ch 1 (does not count as a st), sc in each st across, turn.\n",
    ),
    (
        "C004",
        HEAD
        + "Turning chain: ch 3 does not count as a st\n\nBody\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3 (counts as dc), dc in next st and in each st across, turn.\n",
        HEAD
        + "Turning chain: ch 3 counts as dc, ch 1 does not count as a st\n\nBody\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3 (counts as dc), dc in next st and in each st across, turn.\n",
    ),
    (
        "C005",
        HEAD
        + "\nBody\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (12 dc)\nRow 2: Ch 3, dc in next st and in each st across, turn. (12 dc)\n",
        HEAD
        + "Turning chain: ch 3 counts as dc\n\nBody\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (12 dc)\nRow 2: Ch 3, dc in next st and in each st across, turn. (12 dc)\n",
    ),
    (
        "C005",
        HEAD
        + "\nBody\nCh 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn.\nRow 2: Ch 3, dc in next st and in each st across.\n",
        HEAD + "\nBody\nCh 13.\n" + ROW_1 + "Row 2: Ch 1, sc in each st across. (12 sc)\n",
    ),
    ("C007", "Ch 13.\n" + ROW_1 + "Row 2: Ch 1, htr in each st across.\n", "Ch 13.\n" + ROW_1 + "Row 2: Ch 1, hdc in each st across.\n"),
    (
        "C007",
        HEAD + "Terms: UK\n\nBody\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n",
        HEAD + "Terms: UK\n\nBody\nCh 13.\nRow 1: Dc in 2nd ch from hook and in each ch across.\n",
    ),
    (
        "C008",
        LIST.format(more="") + ROW_1 + "Row 2: Ch 1, hdc in each st across, turn. (12 hdc)\n",
        LIST.format(more="") + ROW_1 + "Row 2: Ch 1, sc in each st across, turn. (12 sc)\n",
    ),
    (
        "C008",
        LIST.format(more="") + ROW_1 + "Row 2: Ch 1, sc2tog 6 times, turn.\n",
        LIST.format(more=", sc2tog = single crochet 2 together") + ROW_1 + "Row 2: Ch 1, sc2tog 6 times, turn.\n",
    ),
    (
        "C009",
        LIST.format(more=", dtr = double treble") + ROW_1 + "Row 2: Ch 1, sc in each st, rep.\n",
        LIST.format(more="") + ROW_1 + "Row 2: Ch 1, *sc in next st; rep from * across.\n",
    ),
    (
        "C010",
        HEAD
        + "\nBody\nRnd 1: 6 sc in magic ring; join with sl st to first sc. (6)\nRnd 2: Ch 1, sc in each st around; join with sl st. (6)\nRnd 3: Ch 1, sc in each st around; join with ss. (6)\n",
        HEAD
        + "\nBody\nRnd 1: 6 sc in magic ring; join with sl st to first sc. (6)\nRnd 2: Ch 1, sl st in each of next 6 sts. (6 sl sts)\n",
    ),
    (
        "C014",
        HEAD
        + "\nBody\nRow 1: 6 sc in magic ring; join with sl st to first sc. (6)\nRow 2: Ch 1, 2 sc in each st around; join with sl st to first sc. (12)\n",
        HEAD
        + "\nBody\nRnd 1: 6 sc in magic ring; join with sl st to first sc. (6)\nRnd 2: Ch 1, 2 sc in each st around; join with sl st to first sc. (12)\n",
    ),
    (
        "C015",
        "Ch 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2 (RS): Ch 1, sc in each st across, turn. (12 sc)\n",
        "Ch 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2 (WS): Ch 1, sc in each st across, turn. (12 sc)\n",
    ),
    (
        "C015",
        "Rnd 1 (RS): 6 sc in magic ring; join with sl st to first sc. (6)\nRnd 2 (WS): Ch 1, sc in each st around; join with sl st to first sc. (6)\n",
        "Ch 13.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across. Do not turn.\nRow 2 (RS): Ch 1, sc in each st across. (12 sc)\n",
    ),
    (
        "C036",
        "Ch 13.\n" + ROW_1 + "Row 2: Ch 1, sc in next st, ch 1, sk next st; rep from * across.\n",
        "Ch 13.\n" + ROW_1 + "Row 2: Ch 1, *sc in next st, ch 1, sk next st; rep from * across.\n",
    ),
    (
        "C037",
        "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: (Sc in next st, 2 sc in next st 3 times. (9)\n",
        "1) 6 sc in magic ring. (6)\n2) (Sc in next st, 2 sc in next st) 3 times. (9)\n",
    ),
]


@pytest.mark.parametrize(("code", "has", "has_not"), CASES)
def test_fires_and_stays_silent(codes, code, has, has_not):
    assert code in codes(has)
    assert code not in codes(has_not)


def test_a_composed_abbreviation_is_told_by_its_parts(codes):
    text = LIST.format(more=", tog = together") + ROW_1 + "Row 2: Ch 1, sc2tog 6 times, *sc in next st; rep from *.\n"
    assert "C008" not in codes(text)


def test_no_list_no_finding(codes):
    assert "C008" not in codes(HEAD + "\nBody\nCh 13.\n" + ROW_1)
