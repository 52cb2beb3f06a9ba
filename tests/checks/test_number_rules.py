"""Rules on numbers outside single rows: multiples, sums, sizes, gauge, yarn, decimals, colours, cautions, lengths."""

import pytest

HEAD = "Reed Cowl\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n"
SIZES = "Reed Cowl\nSizes: S, M, L, XL\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: {around} cm around\n\nBody\n"
ROUND = "Ch {n}; join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join with sl st to first sc. ({n} sc)\n"
COLOURS = "Reed Cowl\nYarn: DK, wool, in A (sand), B (reed){more}\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n\nBody\nWith A, ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: With {second}, ch 1, sc in each st across. (12 sc)\n"
BODY = "\nBody\nCh 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\n"

CASES = [
    (
        "C006",
        HEAD + "Multiple: chain a multiple of 6 + 2\n\nBody\nCh 45.\n",
        HEAD + "Multiple: chain a multiple of 6 + 2\n\nBody\nCh 44.\n",
    ),
    (
        "C006",
        "Pattern is a multiple of 2 + 1, plus 2 for the turning chain. For a sample ch 32.\nRow 1: Sc in 2nd ch from hook.\n",
        "Pattern is a multiple of 2 + 1, plus 2 for the turning chain. For a sample ch 33.\nRow 1: Sc in 2nd ch from hook.\n",
    ),
    ("C006", HEAD + "Multiple: 16 sts; chain a multiple of 16 + 3\n\nBody\nCh 48.\n", HEAD + "Multiple: 8 sts\n\nBody\nCh 49.\n"),
    ("C034", "For 7 repeats chain 4 x 8 = 28 + 1 = 29.\nCh 29.\n", "For 7 repeats chain 4 x 7 = 28 + 1 = 29.\nCh 29.\n"),
    ("C046", HEAD.replace("DK, wool", "DK, wool, 100 g = 23 m") + BODY, HEAD.replace("DK, wool", "DK, wool, 100 g = 230 m") + BODY),
    ("C046", HEAD.replace("DK, wool", "wool, 2 balls (100 g/5 m each)") + BODY, HEAD.replace("DK, wool", "wool, 2 balls (100 g/50 m each)") + BODY),
    ("C046", HEAD.replace("DK, wool", "lace weight, 50 g = 80 yds") + BODY, HEAD.replace("DK, wool", "lace weight, 50 g = 800 yds") + BODY),
    ("C032", HEAD.replace("DK, wool", "DK, wool, 50 g = 120 m (131 yd), 5 balls (720 m)") + BODY, HEAD.replace("DK, wool", "DK, wool, 50 g = 120 m (131 yd), 5 balls (600 m)") + BODY),
    ("C032", HEAD.replace("DK, wool", "DK, wool, 50 g = 120 m, 5 balls, total 300 m") + BODY, HEAD.replace("DK, wool", "DK, wool, 50 g (1.75 oz) = 120 m, 5 balls (about 300 m used)") + BODY),
    ("C050", HEAD.replace("Hook: 4 mm", "Hook: 5 mm (F-5)") + BODY, HEAD.replace("Hook: 4 mm", "Hook: 5 mm (US H-8)") + BODY),
    ("C050", HEAD.replace("Hook: 4 mm", "Hook: J/10 (4 mm)") + BODY, HEAD.replace("Hook: 4 mm", "Hook: G/6 (4 mm)") + BODY),
    ("C049", "Sizes: S, M, L\n" + BODY + "Row 2 (XL only): Ch 1, sc in each st across.\n", "Sizes: S, M, L\n" + BODY + "Row 2 (M and L only): Ch 1, sc in each st across.\n"),
    (
        "C051",
        "Cowl\nGauge: 16 sc and 18 rnds = 10 cm\nFinished size: 60 cm around\n" + ROUND.format(n=64),
        "Cowl\nGauge: 16 sc and 18 rnds = 10 cm\nFinished size: 15 3/4 in around, 20 cm deep\n" + ROUND.format(n=64),
    ),
    (
        "C051",
        SIZES.format(around="60 (66, 72, 78)") + ROUND.format(n="64 (70, 77, 83)"),
        SIZES.format(around="42 (46, 49, 54)") + ROUND.format(n="64 (70, 77, 83)"),
    ),
    ("C034", "Ch 6 + 2 = 9.\n", "Gauge: 15 x 20 = 10 cm\nCh 6 + 2 = 8.\n"),
    (
        "C020",
        SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 67, 83)"),
        SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 77, 83)"),
    ),
    (
        "C020",
        SIZES.format(around="40 (44, 84, 52)") + ROUND.format(n="64 (70, 77, 83)"),
        SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 70, 83)"),
    ),
    (
        "C021",
        SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 84, 98)"),
        SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 77, 83)"),
    ),
    (
        "C022",
        SIZES.format(around="40 (44, 48, 52)")
        + ROUND.format(n="64 (71, 76, 84)")
        + "Rnd 2: Ch 1, *sc in next st, ch 1, sk next st; rep from * around; join with sl st to first sc.\n",
        SIZES.format(around="40 (44, 48, 52)")
        + ROUND.format(n="64 (71, 76, 84)")
        + "Rnd 2: Ch 1, sc in each st around; join with sl st to first sc.\n",
    ),
    (
        "C023",
        HEAD + BODY + "Work even until piece measures 30 cm.\n\nEdging\nWork 60 sc evenly along the side edge.\n",
        HEAD + BODY + "Work even for 20 rows.\n\nEdging\nWork 60 sc evenly along the side edge.\n",
    ),
    ("C028", HEAD.replace("16 sc", "16 sts") + BODY, HEAD.replace("16 sc and 18 rows = 10 cm", "16 sts and 18 rows = 10 cm in sc") + BODY),
    ("C029", HEAD.replace("16 sc and 18 rows", "60 sc and 70 rows") + BODY, HEAD.replace("16 sc and 18 rows", "26 sc and 28 rows") + BODY),
    ("C038", HEAD.replace("16 sc and 18 rows", "16 dc and 18 rows") + BODY, HEAD.replace("16 sc and 18 rows", "16 dc and 9 rows") + BODY),
    ("C039", HEAD.replace("4 mm", "12 mm") + BODY, HEAD.replace("4 mm", "2.75 mm") + BODY),
    ("C030", HEAD + BODY + "Fold over .025 in and sew.\n", HEAD + BODY + "Fold over .25 in and sew.\n"),
    ("C030", HEAD.replace("4 mm", "45 mm hook") + BODY, HEAD.replace("4 mm", "4.5 mm hook") + BODY),
    (
        "C030",
        HEAD + BODY + "Row 2: Ch 1, sc in each of next 2.4 sts.\n",
        HEAD + "\n" + BODY + "Row 2: Ch 1, sc in each of next 2 sts, turn.\n",
    ),
    (
        "C032",
        HEAD.replace("DK, wool", "DK, wool, 50 g = 110 m, 6 balls (900 m)") + BODY,
        HEAD.replace("DK, wool", "DK, wool, 50 g = 110 m, 6 balls (660 m)") + BODY,
    ),
    ("C040", HEAD.replace("DK, wool", "DK, wool, 50 g = 110 m, 9 balls") + BODY, HEAD.replace("DK, wool", "DK, wool, 50 g = 110 m") + BODY),
    ("C016", COLOURS.format(more="", second="C"), COLOURS.format(more="", second="B")),
    ("C017", COLOURS.format(more=" and C (foam)", second="B"), COLOURS.format(more="", second="B")),
    (
        "C033",
        HEAD.replace("Reed Cowl", "Reed Baby Bonnet") + BODY + "\nTies\nCh 60.\n",
        HEAD.replace("Reed Cowl", "Reed Baby Bonnet") + "Notes: Ties near a baby's neck can strangle.\n" + BODY + "\nTies\nCh 60.\n",
    ),
    ("C033", HEAD.replace("Reed Cowl", "Reed Warbler Toy") + BODY, HEAD + BODY),
    (
        "C035",
        HEAD + "\nBody\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around.\n",
        HEAD + "\nBody\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: Sc in each st around.\n",
    ),
    (
        "C031",
        "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each of next 4 sts, sk next 2 sts, sc in each of next 4 sts, turn. (8 sc)\nRow 3: Ch 1, sc in each of next 10 sts, turn. (10 sc)\n",
        "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each of next 4 sts, sk next 2 sts, sc in each of next 4 sts, turn. (8 sc)\nRow 3: Ch 1, sc in each of next 8 sts, turn. (8 sc)\n",
    ),
]


@pytest.mark.parametrize(("code", "has", "has_not"), CASES)
def test_fires_and_stays_silent(codes, code, has, has_not):
    assert code in codes(has)
    assert code not in codes(has_not)


def test_rounding_to_whole_repeats_is_no_other_gauge(codes):
    text = (
        SIZES.format(around="46 (48, 51, 54)")
        + ROUND.format(n="72 (80, 80, 88)")
        + "Rnd 2: Ch 1, *sc in each of next 7 sts, 2 sc in next st; rep from * around; join with sl st to first sc.\n"
    )
    assert "C021" not in codes(text)


def test_a_finding_of_one_size_names_it(found):
    text = SIZES.format(around="40 (44, 48, 52)") + ROUND.format(n="64 (70, 67, 83)")
    assert [f.sizes for f in found(text) if f.code == "C020"] == [("L",)]


def test_cautions_of_the_table_are_told_and_can_be_added(found, codes):
    text = HEAD.replace("Reed Cowl", "Reed Baby Bonnet") + BODY + "\nTies\nCh 60.\n"
    (one,) = [f for f in found(text) if f.code == "C033"]
    assert any("strangle" in h for h in one.hints)
    (edit,) = one.fix.edits
    mended = text[: edit.span.start] + edit.text + text[edit.span.end :]
    assert "C033" not in codes(mended)
    assert set(codes(mended)) <= set(codes(text))


@pytest.mark.parametrize("text", ["Finished size: 0 (0, 0) cm around\nRow 1:\n(60 (64, 72) sc)", "Finished size: 40 (44, 48) cm around\nRow 1: Sc in each st. (0 (0, 0) sc)"])
def test_sizes_of_nothing_are_no_fault_of_the_program(codes, text):
    assert "C021" not in codes(text)
