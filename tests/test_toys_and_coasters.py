"""Wording of toys, ornaments, flowers and coasters of today; the lines are our own, the counts worked by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

RING = "Rnd 1: {} sc in magic ring. ({})\n"


def ring(n: int) -> str:
    return RING.format(n, n)


def counts(text: str, terms: str = "us") -> list[int | None]:
    return [r.counts[0] if r.counts else None for r in work(read(Source.of(text), terms)).rows]


def made(text: str, terms: str = "us") -> dict[str, int | None]:
    return {kind: n[0] for kind, n in work(read(Source.of(text), terms)).rows[-1].made.items()}


def codes(text: str, terms: str = "us") -> list[str]:
    return [f.code for f in work(read(Source.of(text), terms)).findings if f.code[0] == "W"]


@pytest.mark.parametrize(("row", "count"), [
    ("2 row – 6 İNC = 12", 12),
    ("2 row – 6 ınc = 12", 12),
    ("2 rnd: (1 sc, İnc) * 3 = 9", 9),
    ("Rnd 2: incr around = 12 sc,", 12),
    ("Rnd 2: (sc, incr) - repeat 3 times = 9 sc", 9),
    ("Rnd 2: sc in each of next 2 st, (decr) 2 times (4)", 4),
])
def test_letters_and_abbreviations_of_other_keyboards(row: str, count: int) -> None:
    assert counts(ring(6) + row + "\n") == [6, count]


@pytest.mark.parametrize("join", [
    "sl st top beg sc, ch-1, turn", "sl st top of first sc", "join w/slst to first sc", "Join w/ sl st in first sc", "join sl st to first sc", "join the rnd w/sl st to first sc",
])
def test_joins_that_leave_out_words(join: str) -> None:
    text = ring(6) + f"Rnd 2: 2 sc in each st around, {join}.\nRnd 3: Sc in each st around, {join}.\n"
    assert counts(text) == [6, 12, 12]


def test_a_chain_with_a_dash_is_a_foundation() -> None:
    assert counts("Rnd 1: ch-20, sl st to form a ring, ch-1, hdc in ea ch around, sl st top beg hdc, turn. (20)\n") == [20]


@pytest.mark.parametrize(("join", "count"), [("top of first hdc", 12), ("top of ch 2", 13)])
def test_what_a_round_is_joined_to_tells_whether_its_chain_counts(join: str, count: int) -> None:
    assert counts(f"Rnd 1: Ch 4, sl st to first ch to form ring. Ch 2. 12 hdc in ring. Join with sl st to {join}.\n") == [count]


def test_a_chain_of_one_that_is_joined_to_may_count() -> None:
    text = ring(12) + "Rnd 2: Ch 1. Sc in same st as slst. 2 sc in each st around. Join w/slst to ch 1. (24)\n"
    assert (counts(text), codes(text)) == ([12, 24], [])


@pytest.mark.parametrize(("repeat", "count"), [
    ("*2 sc in next sc*; Repeat * to * 6 times.", 12),
    ("*2 sc in next sc, sc in next sc* rep *-* 3x", 9),
    ("*2 sc in next sc, sc in next sc* rep * 3 times", 9),
    ("*2 sc in next sc, sc in next sc*, repeat between * * 2 more times.", 9),
    ("*sc in next sc, 2 sc in next sc* - [repeat from *to* around (9 sc)]", 9),
    ("*sc in next sc, 2 sc in next sc* (rep around)", 9),
    ("*Sc in next sc, 2 sc in next sc.* Complete three times.", 9),
    ("(Sc in next sc, 2 sc in next sc) do what is in between the parentheses 3 times.", 9),
    ("Sc in next sc, 2 sc in next sc, 3 times.", 9),
    ("[1 sc, inc] (9)", 9),
    ("[1 sc, inc] 3 times, sl st in first sc (9)", 9),
])
def test_lists_and_how_often(repeat: str, count: int) -> None:
    assert counts(ring(6) + f"Rnd 2: {repeat}\n") == [6, count]


@pytest.mark.parametrize(("row", "count"), [
    ("Rnd 3: sc dec around (6)", 6), ("Rnd 3: Single crochet decrease every stitch around (6)", 6), ("Rnd 3: Scdec1, sc in next 10 sts. (11)", 11),
    ("Rnd 3: Sc in next 2 sts, scdec, 3 times. (9)", 9), ("Rnd 3: hdcinc, hdc in next 11 sts. (13)", 13),
])
def test_decreases_glued_to_their_stitch_and_all_around(row: str, count: int) -> None:
    assert counts(ring(6) + "Rnd 2: 2 sc in each st around. (12)\n" + row + "\n") == [6, 12, count]


def test_a_row_that_tells_its_own_count_once_is_not_repeated() -> None:
    text = "Rnd 11: (4 sc, dec) x 5 (25)\nRnd 4: 4 sc, dec, 3 sc (8)\n"
    assert (counts(text), codes(text)) == ([25, 8], [])


def test_numbers_that_go_back_begin_another_piece() -> None:
    text = ring(6) + "Rnd 2: inc around (12)\nRnd 3: (sc, inc) x 6 (18)\nRnd 2: inc around (10)\nRnd 3: sc around (10)\n"
    assert (counts(text), codes(text)) == ([6, 12, 18, 10, 10], [])


@pytest.mark.parametrize(("label", "rows"), [
    ("3-5) 12", 3), ("3 – 5 rows / 3 rows / – 12 sc", 3), ("3 to 5 rows / 3 rows / – 12 sc", 3), ("3, 4 rows – 12 sc", 2), ("3-4 rows 12 sc [12]", 2), ("3 row 12 sc [12]", 1),
    ("Rows 3-4: 12 sc [12] - 2 rows", 2),
])
def test_labels_with_the_number_first(label: str, rows: int) -> None:
    assert counts(ring(6) + f"Rnd 2: inc around (12)\n{label}\n") == [6, 12, *[12] * rows]


def test_single_letters_in_lower_case() -> None:
    assert counts(ring(6) + "Rnd 2: 6V [12]\nRnd 3: x, V, 8x, V, x [14]\nRnd 4: 14x [14]\nRnd 5: (5x, A) * 2 [12]\nRnd 6: (A, X) 4x\n") == [6, 12, 14, 14, 12, 8]


@pytest.mark.parametrize("words", [
    "sc around, cut A, draw B through loop on hook. (6)",
    "sc around (6 sc). Cut A, draw B thru lp. Next section.",
    "sc around. (6) These stitches form the front of the head.",
    "sc around (6 sc). Finish off leaving a long tail. Weave tail through each sc and gather tight.",
    "sc around = 6 (5 sc, dec on the right leg)",
    "sc around. This round makes 6 sc (including the first one).",
    "sc around (6 sc). tie off.",
    "- sc in each sc - put marker in 6th sc and last sc of every round",
])
def test_talk_behind_a_row_makes_nothing(words: str) -> None:
    text = ring(6) + f"Rnd 2: {words}\n"
    assert (counts(text), codes(text)) == ([6, 6], [])


def test_a_wrong_count_before_talk_is_told() -> None:
    assert codes(ring(6) + "Rnd 2: sc around (7 sc). Cut A, draw B thru lp. Next section.\n") == ["W001"]


def test_a_note_between_rows_is_no_row() -> None:
    assert counts(ring(6) + "Note: Begin each rnd with sc in same sc as joining.\nRnd 2: sc in 1 sc, 2 sc in next sc; rep from beg around. (9)\n") == [6, 9]


def test_increases_not_over_those_before() -> None:
    assert counts(ring(6) + "Rnds 2 & 3: Ch 1, inc 6 sts evenly spaced, not directly over incs of previous rnd (18 sc). Cut A.\n") == [6, 12, 18]


@pytest.mark.parametrize(("terms", "kind"), [("uk", "sc"), ("us", "sc")])
@pytest.mark.parametrize("row", ["2 dc (UK)/2 sc (USA) into each dc (UK)/ sc (USA)", "2 sc (US)/2 dc (UK) in each st", "UK: 2 dc / US: 2 sc in each st"])
def test_stitches_told_in_both_terms(row: str, terms: str, kind: str) -> None:
    one = "dc" if terms == "uk" else "sc"
    text = f"Rnd 1: 6 {one} in magic ring.\nRnd 2: {row}. (12)\nRnd 3: *2 sc (USA)/ 2 dc (UK), dec 1 sc (USA)/ dec 1 dc (UK) over next 2 sc (USA)/ 2 dc (UK)** repeat from * to ** to end (9)\n"
    assert counts(text, terms) == [6, 12, 9]
    assert made(text, terms) == {kind: 6, f"{kind}2tog": 3, "repeat": 3}


@pytest.mark.parametrize(("terms", "kind"), [("uk", "sc"), ("us", "sc")])
def test_the_other_term_in_brackets(terms: str, kind: str) -> None:
    assert made("Rnd 1: 6 sc (UK dc) in magic ring.\n", terms) == {kind: 6, "group": 1}


def test_a_list_in_stars_goes_into_each_place() -> None:
    text = ring(10) + "Rnd 2: *Ch 2, skip 1 sc, sc in next sc*; repeat * to * 5 times. (5 ch-sps)\nRnd 3: *Sl st, ch 2, 4 dc, ch 2, sl st* in each ch 2 space.\n"
    assert made(text)["dc"] == 20


def test_skip_a_stitch() -> None:
    assert made(ring(12) + "Rnd 2: *sc in next sc, ch 2, sk a sc*; rep from * around.\n")["sc"] == 6


@pytest.mark.parametrize(("chain", "first", "count"), [
    ("Ch 5", "Row 1: sc in 2nd ch from hook and next 3 ch (4)", 4), ("Chain 5 [5]", "Row 1: sc in 2nd ch from hook and in each ch (4)", 4),
])
def test_a_chain_on_its_own_line_begins_a_piece(chain: str, first: str, count: int) -> None:
    text = ring(6) + f"Rnd 2: inc around (12)\n{chain}\n{first}\n"
    assert (counts(text)[2:], codes(text)) == ([5, count], [])


def test_a_turning_chain_on_its_own_line_does_not() -> None:
    assert counts(ring(6) + "Rnd 2: inc around; join. (12)\nCh 3.\nRnd 3: dc in each st around. (12)\n")[-1] == 12


@pytest.mark.parametrize("row", ["Ch 12, starting in second stitch from hook hdc in each chain (11)", "Ch 12. Beginning in 2nd ch from hook, hdc in each ch (11)"])
def test_where_a_row_along_a_chain_begins(row: str) -> None:
    assert counts(row + "\n") == [11]


def test_slip_stitches_that_take_turns_with_tall_ones() -> None:
    text = (
        "Ch 12\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\nRow 2: Ch 3 (counts as first dc), skip first st, dc in next st and in each st across, turn. (11)\n"
        "Row 3: Ch 1, sl st in first dc, *dc in next dc, sl st in next dc. Repeat from *, work last sl st in top of ch-3, turn. (6 sl sts and 5 dc)\n"
    )
    assert (counts(text)[1:], made(text)["sl st"], made(text)["dc"]) == ([11, 11, 11], 6, 5)


def test_what_was_made_so_far_is_a_remark() -> None:
    assert counts("Ch 5.\nRow 1: 4 tr in 5th ch from hook. (5 tr)\nRow 2: Ch 4, turn, 2 tr in same st (3 tr), 3 tr in each of next 4 sts.\n")[-1] == 15


def test_movements_that_tell_a_decrease_again() -> None:
    row = (
        "Sc into the next 4 sts, then combine the next 2 sts to decrease, by inserting the hook into the 5th st, yarn over and pull up a loop, "
        "insert the hook into the 6th st, yarn over and pull up a loop, yarn over and pull through all 3 loops. Repeat 2 more times."
    )
    assert counts(ring(18) + f"Rnd 2: {row} (15)\n") == [18, 15]


def test_increases_told_twice() -> None:
    assert counts(ring(10) + "Rnd 2: Increase every 2nd st, working 1 hdc into the next st, and then 2 hdc into the next st. Repeat around until you have 15 sts. (15)\n") == [10, 15]


def test_a_circle_with_the_stitches_into_it() -> None:
    assert counts("Make a circle and work 10 htr into it. Join to first st.\nRound 2 Work 2 htr into each stitch\n", "uk") == [10, 20]


@pytest.mark.parametrize(("row", "count"), [
    ("Rnd 2: incx6 [12]", 12), ("Rnd 2: (inc) around = 12", 12), ("Rnd 2: (inc)x6 = 12", 12), ("Rnd 2: (1sc inc)x3 (9)", 9), ("Rnd 2: (1sc. inc) x 3 (9)", 9), ("Rnd 2: sc, inc, [rep 3x] (9)", 9),
    ("Rnd 2: 2 sc - inc - inc - 2 sc (8)", 8), ("Rnd 2: sc next 4 sts, sc last 2 (6)", 6), ("Rnd 2: crochet around. (6)", 6), ("Rnd 2: sc around, sl st, fasten off (6)", 6),
    ("Rnd 2: 2 sc into each st (12 sc), ss to the first st", 12), ("Rnd 2: 1x, 2v, 3x (8)", 8),
])
def test_rounds_told_shortly(row: str, count: int) -> None:
    text = ring(6) + row + "\n"
    assert (counts(text), codes(text)) == ([6, count], [])


@pytest.mark.parametrize(("row", "count"), [
    ("invdec around (6)", 6), ("dec around: slip st in next sc. (6 sc).", 6), ("dec in each st (6)", 6), ("invdec around to last 2 sts, sc in last 2 sts (7)", 7), ("decrease around, fasten off (6)", 6),
])
def test_decreases_all_around_are_one_after_the_other(row: str, count: int) -> None:
    text = ring(12) + f"Rnd 2: {row}\n"
    assert (counts(text), codes(text)) == ([12, count], [])


def test_two_decreases_of_a_stitch_are_not_excused() -> None:
    assert codes(ring(12) + "Rnd 2: 2 sc dec, sc in next 8 sts. (12)\n") == ["W001"]


@pytest.mark.parametrize(("label", "rows"), [("R3, R4, R5:", 3), ("R3-R4-R5:", 3), ("R3 & R4:", 2), ("Rnd 3-5 =", 3)])
def test_rounds_listed_with_their_letter(label: str, rows: int) -> None:
    assert counts(ring(6) + f"R2: inc x6 (12)\n{label} 12 sc (12)\n") == [6, 12, *[12] * rows]


def test_a_number_and_the_same_number_in_brackets() -> None:
    assert counts(ring(6) + "R2: inc x6 (12)\nR3-5: 12 (12)\n") == [6, 12, 12, 12, 12]


def test_a_first_row_with_its_letter_and_a_sum_is_a_row() -> None:
    assert counts("R1) 6 sc in MR = 6\nR2) inc x6 = 12\n") == [6, 12]
