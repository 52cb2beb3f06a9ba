"""Rules that add up: repeats that do not divide, repeats told once too often or too seldom, row numbers, lists per size."""

import pytest

from loopwright.workshop.check import check_text

HEAD = "Reed Cowl\nYarn: DK, wool\nHook: 4 mm\nGauge: 16 sc and 18 rows = 10 cm\nFinished size: 20 cm deep\n\n"


def test_a_repeat_that_does_not_divide_names_the_numbers_that_would(found):
    text = "Ch 28.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (27 sc)\nRow 2: Ch 1, *sc in each of next 3 sts, sk next st, ch 1; rep from * across, turn. (20 sc)\n"
    mine = [f for f in found(text) if f.code == "C001"]
    assert [(f.args["takes"], f.args["fewer"], f.args["more"]) for f in mine] == [(4, 24, 28)]


def test_a_repeat_that_divides_is_left_alone(codes):
    text = "Ch 29.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (28 sc)\nRow 2: Ch 1, *sc in each of next 3 sts, sk next st, ch 1; rep from * across, turn. (21 sc)\n"
    assert codes(text) == []


def test_one_repeat_too_few_for_the_printed_count(codes):
    text = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: (Sc in next st, 2 sc in next st) 5 times. (18)\n"
    assert "C002" in codes(text)
    assert codes(text.replace("5 times", "6 times")) == []


@pytest.mark.parametrize(("second", "code"), [("Rnd 4", "C011"), ("Rnd 2", "C012"), ("Rnd 1-1", None), ("Rnd 3", None)])
def test_numbers_of_rows(codes, second, code):
    text = HEAD + f"Body\nRnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n{second}: Sc in each st around. (12)\n"
    assert [c for c in codes(text) if c.startswith("C01")] == ([code] if code else [])


def test_numbers_left_out_of_an_excerpt_are_advice(found):
    said = found("Rnd 4: 2 sc in each of 6 sts around. (12)\nRnd 9: Sc in each st around. (12)\n")
    assert [(f.code, f.severity) for f in said] == [("C011", "advice")]


@pytest.mark.parametrize(("numbers", "fires"), [("60 (64, 72)", True), ("60 (64, 68, 72)", False), ("60", False)])
def test_lists_for_sizes(codes, numbers, fires):
    text = HEAD.replace("Finished", "Sizes: S, M, L, XL\nFinished") + f"Body\nRow 1: Ch {numbers}.\n"
    assert ("C019" in codes(text)) is fires


@pytest.mark.parametrize(("left_out", "code"), [("Gauge", "C024"), ("Hook", "C025"), ("Yarn", "C026"), ("Finished", "C027")])
def test_what_a_whole_pattern_must_tell(codes, left_out, code):
    rows = "Body\nRnd 1: 6 sc in magic ring. (6)\n"
    head = "".join(line + "\n" for line in HEAD.splitlines() if not line.startswith(left_out))
    assert codes(HEAD + rows) == []
    assert codes(head + rows) == [code]
    assert codes(rows) == []


ROWS = "Ch 31.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (30)\nRow 2 (WS): Ch 1, sc in each st across{}. (30)\nRow 3 (RS): Ch 1, sc in each st across, turn. (30)\nRow 4 (WS): Ch 1, sc in each st across, turn. (30)\nRow 5 (RS): Ch 1, sc in each st across. (30)\n"


@pytest.mark.parametrize(("end", "fires"), [("", True), (", turn", False), ("; do not turn", False), (". Fasten off", False)])
def test_one_row_that_does_not_say_turn(found, end, fires):
    told = [f for f in found(ROWS.format(end)) if f.code == "C064"]
    assert [f.args["label"] for f in told] == (["Row 2"] if fires else [])


def test_a_habit_that_is_kept_by_some_rows_only_is_no_slip(codes):
    assert "C064" not in codes(ROWS.format("").replace("Row 3 (RS): Ch 1, sc in each st across, turn.", "Row 3 (RS): Ch 1, sc in each st across."))


@pytest.mark.parametrize(("left", "codes_told"), [(4, []), (3, ["W013"]), (12, ["W013"])])
def test_stitches_told_to_stay_unworked(left, codes_told):
    text = f"Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in next 6 sts, leave last {left} sts unworked, turn. (6)\n"
    told = [f for f in check_text(text).findings if f.code.startswith("W")]
    assert ([f.code for f in told], [f.args["left"] for f in told]) == (codes_told, [4] * len(codes_told))


@pytest.mark.parametrize(("asked", "told"), [(1, []), (2, ["W014"])])
def test_chain_spaces_of_another_length(asked, told):
    text = (
        "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (19)\n"
        "Row 2: Ch 4 (counts as dc, ch 1), sk first 2 sts, dc in next st, *ch 1, sk 1 st, dc in next st; rep from * across, turn. (10 dc)\n"
        f"Row 3: Ch 1, sc in first dc, *sc in next ch-{asked} sp, sc in next dc; rep from * across. (19)\n"
    )
    found = [f for f in check_text(text).findings if f.code == "W014"]
    assert [f.code for f in found] == told
    assert [f.args["there"] for f in found] == ["ch-1"] * len(told)


@pytest.mark.parametrize(("printed", "right"), [(30, True), (28, True), (29, False), (31, False)])
def test_chains_over_a_thumb_counted_or_not(printed, right):
    text = f"Rnd 1: Ch 36, join. Sc in each ch around. (36)\nRnd 2: Sc in next 14 sts, ch 2, sk next 8 sts for thumb, sc in each st to end. ({printed} sts)\n"
    assert [f.code for f in check_text(text).findings] == ([] if right else ["W001"])


def test_a_space_told_behind_a_stitch_in_each_is_met_where_it_is():
    text = (
        "Rnd 1: Ch 36, join. Sc in each ch around. (36)\nRnd 2: Sc in next 14 sts, ch 2, sk next 8 sts, sc in each st to end. (28 sc)\n"
        "Rnd 3: Sc in each sc around, 2 sc in ch-2 sp. (30 sts)\nRnd 4: Sc in each st around. (30)\n"
    )
    report = check_text(text)
    assert ([r.counts for r in report.rows], report.findings) == ([(36,), (28,), (30,), (30,)], ())


@pytest.mark.parametrize("told", [
    "Rnd 2: 2 sc in each st around ({}). Start stuffing.", "Rnd 2: 2 sc in each st around ({}) – change to B",
    "Rnd 2: 2 sc in each st around. ({}) sts", "Rnd 2: 2 sc in each st around.\n[{} sc]", "Rnd 2: 2 sc in each st around.\n{} sts",
    "Rnd 2: 2 sc in each st around.\nStitch count: {}", "Rnd 2: 2 sc in each st around. ({} sc and 1 tail)",
])
@pytest.mark.parametrize(("number", "right"), [(12, True), (13, False)])
def test_counts_wherever_they_are_told_are_compared(told, number, right):
    report = check_text(f"Bird\n\nRnd 1: 6 sc in magic ring. (6)\n{told.format(number)}\nRnd 3: Sc in each st around. (12)\n")
    assert [r.counts for r in report.rows] == [(6,), (12,), (12,)]
    assert report.rows[1].agrees is right
    assert ("W001" in [f.code for f in report.findings]) is not right


def test_a_count_with_something_that_is_no_stitch():
    text = "Ch 13.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (12 sc)\nRow 2: Ch 1, sc in next 4 sts, ch 4, sk 4 sts, sc in next 4 sts, turn. ({})\n"
    assert check_text(text.format("8 sc, 1 buttonhole")).findings == ()
    assert [f.code for f in check_text(text.format("9 sc and 1 buttonhole")).findings] == ["W001"]


def test_rows_told_as_those_of_a_part():
    report = check_text(
        "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nArmhole row 1: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18 sc)\n"
        "Armhole row 2: Rep Armhole row 1. (16 sc)\n"
    )
    assert ([r.counts for r in report.rows], report.findings) == ([(21,), (20,), (18,), (16,)], ())


def test_rows_of_which_each_size_has_its_own():
    report = check_text(
        "Sizes: S, M\nCh 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each st across, turn. (10 sc)\n"
        "Rows 3-6 (3-8): Rep Row 2.\nRow 7 (9): Ch 1, sc2tog, sc in each st across. (9 sc)\n"
    )
    assert report.findings == ()
    assert [sum(r.counts[size] is not None for r in report.rows) for size in (0, 1)] == [8, 10]


def test_a_turn_told_where_the_next_row_begins():
    rows = "".join(f"Row {n}: Ch 1, turn, sc in each st across. (12 sc)\n" for n in range(2, 7))
    assert check_text("Row 1: Ch 13, sc in 2nd ch from hook and in each ch across. (12 sc)\n" + rows).findings == ()


PLAIN = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across, turn. (20 sc)\n"


@pytest.mark.parametrize(("row", "codes"), [
    ("Row 3: Ch 1, sc in each st across, turn. (20 dc)", ["C047"]),
    ("Row 3: Ch 1, sc in each st across, turn. (20 sts)", []),
    ("Row 3: Ch 1, sc2tog, sc in each of next 16 sts, sc2tog, turn. (18 sc)", []),
    ("Row 3: Ch 1, sc in next 6 sts, ch 5, sk next 5 sts, sc in last 6 sts, turn. (12 sc)", ["W015"]),
    ("Row 3: Ch 1, sc in next 6 sts, ch 5, sk next 8 sts, sc in last 6 sts, turn. (12 sc)", []),
    ("Rows 3-8: Rep Rows 1 and 2 4 times. (20 sc)", ["C048"]),
    ("Rows 3-10: Rep Row 2 8 times. (20 sc)", []),
    ("Rows 3-9: Rep Row 2.", []),
])
def test_what_an_editor_would_ask_about(row, codes):
    assert sorted({f.code for f in check_text(PLAIN + row).findings} & {"C047", "C048", "W015", "W001"}) == codes


@pytest.mark.parametrize(("row", "codes"), [
    ("Row 3: Ch 1, sc in first 2 sts, *sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st; rep from * to end, turn.", []),
    ("Row 3: Ch 1, sc in first 3 sts, *sk next 2 sts, 5 dc in next st, sk next 2 sts, sc in next st; rep from * to end, turn.", ["C001"]),
    ("Row 3: Ch 3 (counts as dc), sk first st, *sc in next st, dc in next st; rep from * to last st, dc in last st.", []),
])
def test_a_repeat_that_breaks_off_without_a_count(row, codes):
    assert [f.code for f in check_text(PLAIN + row).findings if f.code in ("C001", "W001")] == codes
