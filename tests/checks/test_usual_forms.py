"""Forms that many patterns use and that must bring no false finding."""

import pytest

from loopwright.workshop.check import check_text

SOUND = [
    "65 ch, join with ss into a ring, taking care not to twist.\nRnd 1: 3 ch, 1 tr in each ch around, ss to top of 3 ch. 65 tr\nRnd 2: 3 ch, 1 tr in each st around, ss to top of 3 ch.\nRnd 3: 1 ch, 1 dc in each st around, ss to first dc. 65 dc\n",
    "Abbreviations (US terms):\nMR = magic ring\nsc = single crochet\ninc = increase (2 sc in one st)\ndec = sc two stitches together\nch = chain\n\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc 1, dec) x 4 (8)\nFO.\n",
    "Notes\n1. Turning chains do not count as stitches.\n2. The 3 ch at the start of a round counts as a stitch.\n\nCh 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (30 sts)\n",
    "Ch 22.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 dc)\nRow 2: Ch 3, sk first st, dc in each st across, turn. (20 dc)\nRow 3: Ch 3, sk the first dc, dc in each dc across, turn. (20 dc)\n",
    "Sizes: S (M, L, XL)\n\nBack\nMake 84 (90, 95, 102) ch.\nRow 1: 1 htr in 3rd ch from hook, 1 htr in each ch to end, turn. (83 (89, 94, 101) htr)\n",
]


@pytest.mark.parametrize("text", SOUND)
def test_no_errors(text):
    report = check_text(text)
    assert [f.code for f in report.findings if f.code.startswith(("W", "C019"))] == []
    assert all(r.read for r in report.rows if r.label)
    assert all(r.agrees is not False for r in report.rows)


def test_sizes_in_brackets_are_sizes():
    assert check_text(SOUND[-1]).sizes == ("S", "M", "L", "XL")


QUIET = [
    (
        "rounds measured across, and a size in words",
        ("Coaster\n\nA round coaster, 11 cm across.\n\nMaterials\nDK acrylic, 3.5 mm hook\nTension: 5 rounds = 9 cm across; 18 tr = 10 cm\nTerms: UK\n\n21 ch.\n"
        "Row 1: 1 dc in 2nd ch from hook and in each ch to end. (20 dc)\n"),
    ),
    (
        "an own name for the first V-st",
        ("Special stitches: V-st = (dc, ch 1, dc) in one st\n\nCh 19.\nRow 1: Sc in 2nd ch from hook and in each ch across; join with sl st to first sc. (18 sc)\n"
        "Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, sk 2 sts, *V-st in next st, sk 2 sts; rep from * around; join. (6 V-sts)\n"),
    ),
    (
        "a gauge of two lengths",
        ("Tension: 3 rounds = 5 cm; 18 tr = 10 cm\nYarn: DK wool\nHook: 4 mm\nTerms: UK\nFinished size: 40 cm\n\n21 ch.\n"
        "Row 1: 1 dc in 2nd ch from hook and in each ch to end. (20 dc)\n"),
    ),
    (
        "a gauge in ripples",
        ("Gauge: one ripple of 13 sts = 8 cm wide; 16 sc rows = 10 cm\nYarn: DK wool\nHook: 4 mm\nFinished size: 40 cm\n\nCh 21.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n"),
    ),
    (
        "blocks with what they are for in brackets",
        ("SIZES\nXS (S, M)\n\nACTUAL MEASUREMENTS\nChest: 84 (94, 104) cm\n\nYARN\nAran wool\n\nHOOK\n5 mm\n\nTENSION\n14 dc and 16 rows = 10 cm\n\n"
        "ABBREVIATIONS (UK)\nch = chain\ndc = double crochet\nst(s) = stitch(es)\n\nMake 60 (67, 74) ch.\n"
        "Row 1: 1 dc in 2nd ch from hook, 1 dc in each ch to end. 59 (66, 73) dc\n"),
    ),
]


@pytest.mark.parametrize("text", [q[1] for q in QUIET], ids=[q[0] for q in QUIET])
def test_nothing_at_all_is_said(text):
    assert [(f.code, f.args) for f in check_text(text).findings if f.code != "C014"] == []


def test_a_cuff_worked_on_row_ends_is_no_border():
    text = (
        "Gauge: 15 sc and 16 rnds = 10 cm\n\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\n"
        "Rows 2-24: Ch 1, sc in each st across, turn. (10 sc)\nSl st the short ends together to form a tube; do not fasten off.\n"
        "Rnd 1: Ch 1, sc in end of each row around; join with sl st to first sc. (24 sc)\nRnds 2-5: Ch 1, sc in each st around; join. (24 sc)\n"
    )
    assert [f.code for f in check_text(text).findings if f.code.startswith("M")] == []


@pytest.mark.parametrize(("said", "size"), [("about 10 cm across", "one size"), ("22 cm square", "one size"), ("38 (42) in", None), ("adult", "adult")])
def test_a_measure_is_no_name_of_a_size(said, size):
    sizes = check_text(f"Size: {said}\n\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20 sc)\n").sizes
    assert sizes == (size,) if size else len(sizes) == 2


def test_a_chain_said_to_count_against_the_notes_is_found_whatever_follows_it():
    text = (
        "Notes: The ch 1 at the start of a rnd does not count as a st.\n\nCh 20, join with sl st to form a ring.\n"
        "Rnd 1: Ch 1, sc in next 5 ch, ch 6, sk 6 ch, sc in each ch around; join. (14 sc)\n"
        "Rnd 2: Ch 1 (counts as a st), sc in each st and in each ch around; join.\n"
    )
    assert "C004" in {f.code for f in check_text(text).findings}


@pytest.mark.parametrize("line", ["Ch 120 (159).", "Rows 2-24 (30): Ch 1, sc in each st across, turn.", "Chest: 84 (94, 104, 110) cm"])
def test_a_size_left_out_of_a_list_is_found(line):
    head = "Sizes: S (M, L)\n" + (f"{line}\n" if line.startswith("Chest") else "")
    text = f"{head}\n{'' if line.startswith('Chest') else line}\nRow 1: Sc in each ch across.\n"
    assert "C019" in {f.code for f in check_text(text).findings}
    assert "C019" not in {f.code for f in check_text(text.replace("(159)", "(159, 200)").replace("(30)", "(30, 36)").replace(", 110", "")).findings}
