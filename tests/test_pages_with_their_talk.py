"""Whole patterns as pages give them, with lists behind the rows, talk among them and counts on lines of their own: what is a row, and what it makes."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

BAND = "Ch 41.\nRow 1: Hdc in 3rd ch from hook and in each ch across. (39 hdc)\n"


def _counts(text: str, terms: str | None = None) -> list[int]:
    """The count of every row, the first one's first; rows that could not be worked as -1."""
    report = work(read(Source.of(text), terms))
    return [row.counts[0] if row.counts and row.counts[0] is not None else -1 for row in report.rows]


@pytest.mark.parametrize(
    "line",
    [
        "hdc = half double crochet",
        "MC, CC = main color, contrast color;",
        "[ ] = work what stands in brackets as often as told;",
        "Rep = Repeat",
        "Tr. Treble Crochet",
        "ABBREVIATIONS: A, B = colors A, B; ch = chain; hdc = half double crochet; st(s) = stitch(es); ( ) = work in brackets as often as told.",
        "Tension: 14 hdc and 10 rows measure 4 inches",
        "I usually block my cloths under a heavy book.",
        "Here are more patterns for the kitchen:",
        "Thank you for making this with me, I hope you like it in each color!",
        "Finish off A and join B",
        "Join B",
        "Cut the yarn, then join C.",
    ],
)
def test_a_line_that_only_tells_makes_no_row(line: str) -> None:
    text = f"{BAND}{line}\nRow 2: Ch 1, sc in each st across. (39 sc)\n"
    assert _counts(text) == [41, 39, 39]
    assert not [f for f in check_source(Source.of(text)).findings if f.code.startswith(("N", "W"))]


@pytest.mark.parametrize("line", ["TENSION - 6dc and 5 rows of dc measure one inch square", "Color B: Work 14 rows", "At beginning of a row-ch 2, skip first st, hdc in next st."])
def test_a_line_before_the_rows_that_only_tells_makes_no_row(line: str) -> None:
    assert _counts(f"Band\n{line}\n\n{BAND}") == [41, 39]


@pytest.mark.parametrize("line", ["Join with a sl st into first hdc at the beginning of round. (39 hdc)", "Turn. (39 hdc)", "Sl st to first hdc to join, fasten off. (39 hdc)"])
def test_a_count_on_the_line_that_ends_a_row_is_that_row_s(line: str) -> None:
    report = work(read(Source.of(f"{BAND}Row 2: Ch 1, hdc in each st\n{line}\nRow 3: Ch 1, sc in each st. (39 sc)\n")))
    assert [(row.counts, row.printed) for row in report.rows[1:]] == [((39,), (39,))] * 3
    wrong = work(read(Source.of(f"{BAND}Row 2: Ch 1, hdc in each st\n{line.replace('39', '37')}\n")))
    assert [row.agrees for row in wrong.rows[1:]] == [True, False]


def test_a_count_of_several_things_stands_before_the_end_of_the_work() -> None:
    text = (
        "Rnd 1: Ch 3 (counts as dc), 15 dc in magic ring; join. (16 dc)\nRnd 2: Ch 1, sc in same st, ch 5, [skip next st, sc in next st, ch 5] around; join. (8 sc and 8 ch-5 sps)\n"
        "Rnd 3: Sl st in next 2 ch, ch 1, sc in same sp, ch 2, 5 dc in next ch-5 sp, ch 2, [sc in next ch-sp, ch 2, 5 dc in next ch-5 sp, ch 2] around; join. (4 sc, 20 dc and 8 ch-2 sps) Finish off and sew in the ends.\n"
    )
    assert [row.agrees for row in work(read(Source.of(text))).rows] == [True] * 3


@pytest.mark.parametrize("label", ["Row 2 – 6 Repeat Row 1A", "Rows 2 - 6 Repeat Row 1A", "Row 2 – 6 same as Row 1A"])
def test_a_range_needs_no_stop_before_its_order(label: str) -> None:
    text = f"{BAND}{label.replace('1A', '1')}\nRow 7: Ch 1, sc in each st. (39 sc)\n"
    assert _counts(text) == [41, *[39] * 6, 39]


def test_a_chain_s_length_in_inches_is_no_part_of_it() -> None:
    assert _counts("Ch 62 to measure about 15 inches.\nRow 1: Sc in 2nd ch from hook and in each ch across.\n") == [62, 61]


def test_a_sum_of_three_is_no_sum_of_its_last_two() -> None:
    text = f"Note: over 5 boxes chain 5 x 4 = 20, 20 + 3 + 2 = 25.\n{BAND}"
    assert "C034" not in {f.code for f in check_source(Source.of(text)).findings}
    assert "C034" in {f.code for f in check_source(Source.of(text.replace("5 x 4 = 20", "5 x 4 = 24"))).findings}


RINGS = "Rnd 1: Ch 3 (counts as dc now and later), 7 dc in magic ring; sl st in top of ch 3. (8 dc)\n"


@pytest.mark.parametrize(
    ("text", "counts"),
    [
        (f"{RINGS}Rnd 2: Ch 3, dc between dc, ch 2, (dc in dc, dc between dc, ch 2) 7 times; sl st in top of ch 3.\n", [8, 16]),
        ("Rnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: (4 sc in the same stitch, 1 sc) x 3. (15 sc)\nRnd 3: Sc in each st. (15 sc)\n", [6, 15, 15]),
        ("Ch 4, sl st to form ring.\nRnd 1: Ch 2, 9 dc in ring; slip st in top of beginning ch to join.\nRnd 2: Ch 2, dc in same st, 2 dc in each st around; slip st in top of beginning ch to join.\n", [4, 10, 20]),
        ("Ch 25\nRow 1: Dc in 4th ch from hook and in each ch across\nRow 2: Ch 2, turn; skip first st, dc in next dc, (FPdc around next dc, dc in next dc) across; dc in top of turning ch\n", [25, 23, 23]),
        (
            ("With A, ch 5, sl st to form a ring.\nRnd 1: Ch 4 (counts as dc and ch 1), [dc in ring, ch 1] 7 times; join. (8 dc)\n"
            "Rnd 2: Join B in any ch-space, ch 2, dc in same space, *ch 1, 3 hdc in next ch-space, ch 1, (2 dc, ch 3, 2 dc) in next ch-space; repeat from * around, end ch 1, 3 hdc in next ch-space, ch 1, 2 dc in first ch-space, ch 3, slip st in top of beginning ch to join.\n"),
            [5, 8, 28],
        ),
        ("Rnd 1: 7 sc in magic ring.\nRnd 2: Join B in any st, ch 1, 2 sc in each st around.\nRnd 3: Join C in any st, repeat Rnd 2.\n", [7, 14, 28]),
    ],
)
def test_rounds_of_squares_and_coasters(text: str, counts: list[int]) -> None:
    assert _counts(text) == counts


@pytest.mark.parametrize("heading", ["Pattern:", "INSTRUCTIONS", "Directions", "Written Pattern:", "To make the band", ""])
def test_a_list_of_abbreviations_ends_where_the_pattern_begins(heading: str) -> None:
    text = f"Band\nAbbreviations:\nCH - chain\nHDC - half double crochet\n{heading + chr(10) if heading else ''}{BAND}"
    assert _counts(text) == [41, 39]


SCALLOPS = (
    "CH 55.\nRow 1: SC in second CH from hook, (SK 3 CH, 7 DC in next CH, SK 3, SC in next CH for a scallop) 6 times, end SK 2, 4 DC in last CH, CH 1, turn.\n"
    "Row 2: SC in same DC as turning CH and in next DC, * CH 2, DC in next SC, CH 2, SC in third DC of next shell, CH 2, SC in 5th DC of same shell, repeat from * across, end CH 2, DC in last SC, CH 3, turn.\n"
    "Row 3: 3 DC in base of turning CH, * SC in CH between next 2 SC, 7 DC in next DC - shell made, repeat from * across, end SC in last SC.\n"
)


def test_shells_whose_middle_is_framed_by_two_stitches() -> None:
    assert _counts(SCALLOPS) == [55, 1 + 6 * 8 + 4, 2 + 6 * 3 + 1, 4 + 6 * 8 + 1]


@pytest.mark.parametrize(
    "text",
    [
        "Ch 31.\nRow 1: Sc in 2nd ch from hook and each ch across. (30 sc)\nRow 2: Ch 3 (counts as first dc), turn. Dc in next 2 sts. *Sk 2, (2 dc, ch 2, 2 dc) in next st. Sk 1, dc in next 5 sts. Repeat from * across. (18 dc, 3 shells)\n",
        "V-st = (tr, ch 1, tr) in same st\n\nRnd 1: Ch 4 (counts as tr), 13 tr in magic ring, join. (14 tr)\nRnd 2: Ch 4 (counts as tr), V-st in next tr, *tr in next tr, V-st in following tr; rep from * 5 times more; join. (7 tr; 7 x V-st)\n",
    ],
)
def test_stitches_are_counted_beside_the_groups_that_are_counted_too(text: str) -> None:
    assert [row.agrees for row in work(read(Source.of(text))).rows if row.printed] == [True, True]


def test_a_count_far_out_is_no_error_where_two_words_are_not_understood() -> None:
    text = "Rnd 1: 8 sc in magic ring. (8 sc)\nRnd 2: 1 sc, (3 snug, 1 sc) x 3, 3 snug. (16 sc)\n"
    assert "error" not in {f.severity or "error" for f in check_source(Source.of(text)).findings if f.code == "W001"}


def test_a_hanging_loop_leaves_the_stitches_of_the_round_as_they_are() -> None:
    text = "Rnd 1: 9 hdc in magic ring, join. (9 hdc)\nRnd 2: Ch 1, 2 hdc in each st, join. (18 hdc)\nHanging loop: ch 14, skip next hdc and sl st in second hdc. Fasten off.\n"
    assert not [f.code for f in check_source(Source.of(text)).findings if f.code.startswith("W")]


@pytest.mark.parametrize("edging", ["Edging: 2 hdc in corner, 2 hdc in every sc up to the corner, 3 hdc in corner, hdc in every st to the next corner, 3 hdc in corner, join."])
def test_corners_of_a_flat_piece_are_not_missing_from_the_row_below(edging: str) -> None:
    found = [f.code for f in check_source(Source.of(f"{BAND}Rows 2-20: Ch 1, hdc in each st, turn. (39 hdc)\n{edging}\n")).findings]
    assert "W003" not in found


def test_what_a_row_asks_for_is_told_as_advice_where_most_of_its_words_are_not_understood() -> None:
    text = f"{BAND}Row 2: Wherever your lovely yarn wanders along both meadow pieces work 90 hdc in next 90 hdc, humming softly until supper.\n"
    assert [f.severity for f in check_source(Source.of(text)).findings if f.code == "W003"] in (["advice"], [])


RIPPLE = (
    "THROW\nWith A, ch 40.\nRow 1: 2 dc in 6th ch from hook, skip next ch, 2 dc in next ch, skip next ch, *(2 dc, ch 3, 2 dc) in next ch for point, [skip next ch, 2 dc in next ch] twice\n"
    "**, skip next 3 ch, [2 dc in next ch, skip next ch] twice; repeat from * across, ending last repeat at **; skip next ch, dc in last ch; turn - {points} points.\n"
)


def test_a_row_that_stops_amid_its_words_goes_on_in_the_next_line() -> None:
    # 4 chains from the 6th on lie before the first point; two repeats take 24, the last takes 5, and 2 lie behind it
    report = work(read(Source.of(RIPPLE.format(points=3))))
    assert [row.agrees for row in report.rows][1:] == [True]
    assert report.rows[1].counts[0] in (37, 38)  # with the chains before the first dc as one or as none


def test_the_second_stitch_may_be_a_chain_that_stands_for_one() -> None:
    text = "Ch 32\nRow 1: Sc in 2nd ch from hook, sc in each ch across. ch 1, turn\nRow 2: *Sc in next st, ch 1, miss a st; rep from * to last st, sc in it. Ch 2, turn.\nRow 3: Hdc in 2nd st, then hdc in each sc and each ch-1 space across. Ch 1, turn.\nRow 4 – 9: Repeat rows 2 and 3.\n"
    assert _counts(text) == [32, 31, *[16, 31] * 4]


def test_each_chain_behind_a_comma() -> None:
    assert _counts("Ch 14, dc in 4th ch from hook, and each ch across.\n") == [12]


@pytest.mark.parametrize("said", ["(is 1st dc and ch 2)", "(counts as first dc plus ch 2)"])
def test_a_chain_that_is_a_stitch_and_a_space(said: str) -> None:
    text = (
        "Ch 18.\nRow 1: Sc in 2nd ch from hook, *skip next ch, (tr, ch 1, tr) in next ch, skip next ch, sc in next ch; rep from * across. (5 sc and 4 ch-1 sps)\n"
        f"Row 2: Ch 5 {said}, turn; sc in next ch-1 sp, ch 2, dc in next sc, *ch 2, sc in next ch-1 sp, ch 2, dc in next sc; rep from * across. (9 sts)\n"
    )
    assert [row.agrees for row in work(read(Source.of(text))).rows[1:]] == [True, True]


def test_so_many_times_behind_a_stop() -> None:
    text = "Rnd 1: Ch 3 (counts as dc here and later), 6 dc in magic ring. Join to top of ch 3. (7 sts)\nRnd 2: Ch 3, dc in same sp, *(2 dc) between next sts. 6 times. Join to top of ch 3. (14 sts)\n"
    assert [row.agrees for row in work(read(Source.of(text))).rows] == [True, True]


def test_the_last_chain_of_a_round_spans_what_is_left() -> None:
    text = "Rnd 1: 36 sc in magic ring, join. (36 sc)\nRnd 2: Ch 1, sc in same st, (ch 6, skip 3 sts, sc in next st) 8 times, ch 6, join with sl st to first sc. (9 ch-6 loops)\n"
    assert not [f for f in check_source(Source.of(text)).findings if f.code == "W004"]
    assert [f for f in check_source(Source.of(text.replace("8 times, ch 6, join", "7 times, ch 6, join").replace("(9 ", "(8 "))).findings if f.code == "W004"]


def test_entries_of_a_list_of_abbreviations() -> None:
    text = f"Band\n\nAbbreviations:\nch - chain\nsl st. - slip stitch\nhdc - half double crochet\nsc - single crochet\n(..) - represents the sequence that comes again\nNotes: the band is worked flat.\n\n{BAND}Row 2: Ch 1, sl st in each st.\n"
    said = [f for f in check_source(Source.of(text)).findings if f.code in ("C008", "C009")]
    assert not [f for f in said if "sl st" in str(f.args) or "otes" in str(f.args) or "ence" in str(f.args)]


def test_a_border_with_an_edge_that_is_not_understood_is_warned_of() -> None:
    text = f"{BAND}Rows 2-12: Ch 1, hdc in each st, turn. (39 hdc)\nRnd 1: 2 sc in the end of each row, 3 sc in corner, sc across lowermost, 3 sc in corner, 2 sc in the end of each row, 3 sc in corner, sc in each st across, join. (144 sc)\n"
    found = [f for f in check_source(Source.of(text)).findings if f.code == "W001"]
    assert all(f.severity == "warning" for f in found)
