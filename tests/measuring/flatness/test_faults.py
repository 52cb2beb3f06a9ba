"""What keeps fabric from lying as it should: each fault in invented texts that have it, and in texts that have not."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.flatness import notes
from tests.measuring.flatness.crown_texts import at_fault, disc, fabric

SIZES = StitchSizes(5.0, 4.6, "sc", own={"dc": (5.0, 9.4), "hdc": (5.0, 6.5), "tr": (5.0, 13.2)})
STACKED = ["Rnd 1: 6 sc in magic ring. (6)", "Rnd 2: 2 sc in each st around. (12)", "Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)"]
SQUARE = "Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 sc)\nRows 2-32: Ch 1, sc in each st across, turn. (30 sc)\nDo not fasten off.\n"
ROWS = {
    "sc": "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-24: Ch 1, sc in each st across, turn. (20 sc)\n",
    "hdc": "Ch 22.\nRow 1: Hdc in 3rd ch from hook and in each ch across, turn.\nRows 2-24: Ch 1, hdc in each st across, turn.\n",
    "dc": "Ch 22.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (20 dc)\nRows 2-24: Ch 3 (counts as dc), dc in each st across, turn. (20 dc)\n",
    "rib": "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRows 2-24: Ch 1, sc in back loop only of each st across, turn. (20 sc)\n",
}


def stacked(upto: int) -> str:
    return "\n".join([*STACKED, *(f"Rnd {n}: *Sc in next {n - 2} sts, 2 sc in next st; rep from * around. ({6 * n})" for n in range(4, upto + 1))])


def staggered(upto: int) -> str:
    lines = list(STACKED)
    for n in range(4, upto + 1):
        half = (n - 2) // 2
        even = f"Rnd {n}: Sc in next {half} sts, 2 sc in next st, *sc in next {n - 2} sts, 2 sc in next st; rep from * 4 times more, sc in next {half} sts. ({6 * n})"
        lines.append(even if n % 2 == 0 else f"Rnd {n}: *Sc in next {n - 2} sts, 2 sc in next st; rep from * around. ({6 * n})")
    return "\n".join(lines)


def faults(text: str) -> list[str]:
    return [f.what for f in at_fault(text, SIZES)]


@pytest.mark.parametrize(
    ("rate", "kind", "what"),
    [
        (4, "sc", ["cups"]), (5, "sc", ["cups"]), (7, "sc", ["ruffles"]), (8, "sc", ["ruffles"]), (6, "hdc", ["cups"]), (11, "hdc", ["ruffles"]),
        (9, "dc", ["cups"]), (13, "dc", ["ruffles"]), (16, "dc", ["ruffles"]), (22, "tr", ["ruffles"]),
        (6, "sc", []), (8, "hdc", []), (9, "hdc", []), (11, "dc", []), (12, "dc", []), (16, "tr", []), (17, "tr", []),
    ],
)
def test_discs(rate, kind, what):
    assert faults(disc([rate * n for n in range(1, 6)], kind)) == what


def test_few_rounds_are_too_few_to_judge():
    assert faults(disc([8, 16, 24])) == []


def test_a_rate_of_the_trade_is_let_go_unless_far_off():
    assert faults(disc([10 * n for n in range(1, 7)], "dc")) == []  # 11.8 would lie flat; 10 to 12 are the trade's numbers


def test_a_crown_that_goes_on_as_a_hat_may_cup_far():
    hat = disc([8, 16, 20, 24, 28, 32, 32, 32, 32], "hdc")
    assert faults(hat) == []


def test_a_guessed_gauge_finds_nothing():
    guessed = StitchSizes(5.0, 4.6, "sc", guessed=True)
    assert at_fault(disc([9 * n for n in range(1, 7)]), guessed) == ()


def test_stacked_increases():
    (found,) = at_fault(stacked(9), SIZES)
    assert (found.what, found.facts["places"], found.label) == ("corners", "6", "Rnd 9")
    assert float(found.facts["out_mm"]) == pytest.approx(9 * 4.6 * 0.1547, abs=0.5)  # r (1 / cos 30 - 1)
    assert faults(stacked(5)) == faults(staggered(9)) == []


@pytest.mark.parametrize(
    ("rows", "edge", "what"),
    [
        ("sc", "2 sc in end of each row. (48 sc)", ["row ends"]),
        ("dc", "sc in end of each row. (24 sc)", ["row ends"]),
        ("dc", "3 sc in end of each row. (72 sc)", ["row ends"]),
        ("hdc", "2 sc in end of each row. (48 sc)", ["row ends"]),
        ("sc", "sc in end of each row. (24 sc)", []),
        ("dc", "2 sc in end of each row. (48 sc)", []),
        ("rib", "2 sc in end of each row. (48 sc)", []),
    ],
)
def test_row_ends(rows, edge, what):
    assert faults(f"{ROWS[rows]}Edge: Ch 1, {edge}\n") == what


def test_the_mend_of_row_ends_is_a_rate():
    (found,) = at_fault(f"{ROWS['hdc']}Edge: Ch 1, 2 sc in end of each row. (48 sc)\n", SIZES)
    assert found.mend == "work 4 for every 3 row ends, not 2 in each row end"
    assert found.off == pytest.approx(2 / 1.3 - 1, abs=0.001)


BORDER = "Border\nRnd 1: Ch 1, sc evenly around, working 3 sc in each corner; join.\n"


@pytest.mark.parametrize(
    ("rounds", "what"),
    [
        ("Rnds 2-4: Ch 1, sc in each st around; join.", ["border"]),
        ("Rnd 2: Ch 1, sc around, increasing 16 sts evenly; join.\nRnd 3: Ch 1, sc around, increasing 16 sts evenly; join.", ["border"]),
        ("Rnd 2: Ch 3 (counts as dc), dc around, increasing 4 sts evenly; join.\nRnd 3: Ch 3 (counts as dc), dc around, increasing 4 sts evenly; join.", ["border"]),
        ("Rnd 2: Ch 1, sc around, increasing 8 sts evenly; join.\nRnd 3: Ch 1, sc around, increasing 8 sts evenly; join.", []),
        ("Rnd 2: Ch 3 (counts as dc), dc around, increasing 16 sts evenly; join.\nRnd 3: Ch 3 (counts as dc), dc around, increasing 16 sts evenly; join.", []),
        ("Rnd 2: Ch 1, sc in each st around; join.", []),
        ("Rnds 2-16: Ch 1, sc in each st around; join.", []),
    ],
)
def test_borders(rounds, what):
    assert faults(f"{SQUARE}{BORDER}{rounds}\n") == what


RIPPLE = "Ch 51.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (50 sc)\n"


def test_ripples():
    more = RIPPLE + "".join(f"Row {n}: Ch 1, *sc in next 4 sts, 3 sc in next st, sc in next {n + 1} sts, sc2tog; rep from * across, turn.\n" for n in range(2, 6))
    (found,) = at_fault(more, SIZES)
    assert (found.what, found.label, found.facts["each"], found.facts["way"]) == ("ripple", "Row 2", "5", "gains")
    even = RIPPLE + "Row 2: Ch 1, *sc in next 3 sts, 3 sc in next st, sc in next 3 sts, sk 2 sts, sc in next st; rep from * across, turn.\nRows 3-8: Rep Row 2.\n"
    assert faults(even) == []
    assert faults(RIPPLE + "Rows 2-20: Ch 1, sc in each st across, turn.\n") == []


ROW_1 = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
GROW = "Ch 1, 2 sc in first st, sc in each st to last 2 sts, sc2tog, turn."
SHRINK = "Ch 1, sc2tog, sc in each st to last st, 2 sc in last st, turn."


@pytest.mark.parametrize(
    ("rows", "what"),
    [
        (f"Row 2: {GROW}\nRow 3: {SHRINK}\nRows 4-21: Rep Rows 2 and 3.", ["slant"]),
        ("Row 2: Ch 1, sc in each st to last 2 sts, sc2tog, turn.\nRow 3: Ch 1, sc in each st across, turn.\nRows 4-15: Rep Rows 2 and 3.", ["slant"]),
        (f"Rows 2-21: {GROW}", []),
        ("Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.\nRow 3: Ch 1, sc in each st across, turn.\nRows 4-11: Rep Rows 2 and 3.", []),
        ("Rows 2-30: Ch 1, sc in each st across, turn.", []),
    ],
)
def test_slanting_sides(rows, what):
    assert faults(f"{ROW_1}{rows}\n") == what


def test_the_angle_of_a_slant():
    (found,) = at_fault(f"{ROW_1}Row 2: {GROW}\nRow 3: {SHRINK}\nRows 4-21: Rep Rows 2 and 3.\n", SIZES)
    assert found.facts["angle"] == "47"  # atan(w n / h) = atan(5 / 4.6)


COWL = "Ch 80, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. (80 sc)\nRnds 2-12: Ch 1, sc in each st around; join. (80 sc)\n"


@pytest.mark.parametrize(
    ("edging", "what"),
    [
        ("Rnd 13: Ch 1, work 60 sc evenly around; join. (60 sc)", ["edging"]),
        ("Rnd 13: Ch 1, sc around, increasing 20 sts evenly; join. (100 sc)", ["edging"]),
        ("Rnd 13: Ch 1, sc in each st around; join. (80 sc)", []),
        ("Rnd 13: Ch 1, work 76 sc evenly around; join. (76 sc)", []),
        ("Rnd 13: Ch 1, sc2tog around; join. (40 sc)", []),
        ("Rnd 13: Ch 1, 2 sc in each st around; join. (160 sc)", []),
    ],
)
def test_edgings(edging, what):
    assert faults(f"{COWL}{edging}\n") == what


def test_a_seam_of_many_joined_rounds_is_noted():
    many, few = courses(fabric(COWL), SIZES), courses(fabric(COWL.replace("2-12", "2-8")), SIZES)
    assert len(notes(many)) == 1
    assert notes(few) == ()


lines = st.sampled_from([
    "Rnd {n}: 2 sc in each st around.", "Rnd {n}: Sc around; join.", "Row {n}: Ch 1, sc in each st across, turn.", "Rnd {n}: Sc2tog around.",
    "Rnd {n}: *3 dc in next st, ch 2; rep from * around; join.", "Row {n}: Ch 1, sc in end of each row.", "Ch 5.", "Rnd {n}: Ch 1, work 30 sc evenly around.",
    "Row {n}: Sl st across.", "Fasten off.", "Rnd {n}: 6 sc in magic ring.", "Row {n}: *Sc in next 2 sts, sc3tog, 3 sc in next st; rep from * across, turn.",
])


@settings(max_examples=60, deadline=None)
@given(st.lists(lines, min_size=1, max_size=9), st.floats(0.5, 60.0), st.floats(0.5, 60.0))
def test_any_fabric_is_taken(told, width, height):
    text = "\n".join(line.format(n=n) for n, line in enumerate(told, start=1))
    for found in at_fault(text, StitchSizes(width, height, "sc")):
        assert found.mend
        assert "nan" not in str(found)
        assert "inf" not in str(found.facts)
