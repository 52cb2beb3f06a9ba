"""What leaflets say of things to wear and to carry: shaping told in asides, fingers, pieces named before their chain, rows behind a length."""

from __future__ import annotations

import pytest

from tests.line_by_line import first_counts, last_rows

ROW = "Row 1: Ch 22, sc in 2nd ch from hook, sc in next 20 ch. Ch 1, turn. (21 sc)\n"


@pytest.mark.parametrize(("row", "count"), [
    ("Dec 1 sc—to dec, work off 2 sc as one—sc in all sc across. Ch 1, turn.", 20),
    ("Sc in each sc, increasing 1 sc in last sc—to inc, work twice in one. Ch 1, turn.", 22),
    ("Sc in each sc, decreasing 1 sc at end of row - to decrease, work off 2 sc as one. Ch 1, turn.", 20),
    ("Dec first sc, sc in each of next 18 sc, 2 sc in last sc.", 21),
    ("Sc in each sc, decreasing 1 sc at top of sleeve. Ch 1, turn.", 20),
    ("Make 1 S. C. in each S. C. across. Ch 1, turn.", 21),
    ("Sl st across 1st 3 sts, sc to within last 3 sts (3 sts decreased at both ends).", 15),
    ("Sl st across first 3 sts, work in pattern across to within last 3 sts. Turn.", 15),
    ("Sc in first 3 sc, * tr c (2 times over hook) in next sc, keeping the tr c to back of work, sc in next 2 sc, repeat from * 5 times.", 21),
])
def test_shaping_told_in_asides(row, count):
    assert first_counts(f"{ROW}Row 2: {row}\n")[-1] == count


@pytest.mark.parametrize(("line", "counts"), [
    ("Work 4 more rows, decreasing 1 sc at back of collar on every row.", [20, 19, 18, 17]),
    ("Continue in sc for 3 rows, increasing 1 sc at one end of each row.", [22, 23, 24]),
    ("Work 2 rows, decreasing 1 sc at both ends of each row.", [19, 17]),
    ("* Ch 1, sc in each st across, turn. Repeat from * 3 more times.", [21, 21, 21, 21]),
    ("Work straight until piece measures 4 inches. To shape shoulders, sl st across 1st 4 sts and continue across. Repeat last row until 9 sts remain.", [21, 17, 13, 9]),
    ("Work even until piece measures 6½ inches. On next row work in pattern across next 8 sts. Turn.", [21, 8]),
    ("To shape neck, decrease 1 sc at both ends of each row until 9 sc remain.", [9]),
])
def test_rows_told_together(line, counts):
    assert first_counts(ROW + line + "\n")[1:] == counts


def test_repeats_one_behind_the_other():
    lines = (
        "Row 1: Ch 12, sc in 2nd ch from hook, sc in next 10 ch. Ch 1, turn.\n"
        "Row 2: Sc in each st, increasing 1 sc in last st. Ch 1, turn.\n"
        "Row 3: 3 sc in first sc, sc in each remaining sc. Ch 1, turn.\n"
        "Repeat Rows 2 and 3 once more. Repeat Row 2 twice more. (19 sc)\n"
    )
    assert first_counts(lines) == [11, 12, 14, 15, 17, 18, 19]


def test_a_finger_is_worked_on_its_chain():
    lines = (
        "Row 1: Ch 28, sc in 2nd ch from hook, sc in next 26 ch, ch 1, turn.\n"
        "Row 2: 1 sc in each of next 18 sc, ch 12 for 3rd finger, turn.\n"
        "Row 3: Sc in 2nd st from hook, sc in each remaining st of ch, sc in each sc, ch 1, turn. (29 sc)\n"
    )
    assert first_counts(lines) == [27, 18, 29]


@pytest.mark.parametrize("title", ["Sleeves.", "Left Sleeve …", "Top [Make 2]:", "Cuffs (make 2)."])
def test_a_piece_is_named_before_its_chain(title):
    lines = f"{ROW}Row 2: Sc in each sc across. Break off.\n{title} Starting at lower edge, ch 31 (to measure about 6 inches), turn.\n"
    lines += "1st row: Half d c in 3rd ch from hook and in next 28 ch (30 half d c). Ch 2, turn. Hereafter pick up only the front loop of each st.\n"
    assert first_counts(lines)[-1] == 30


@pytest.mark.parametrize(("row", "count"), [
    ("3 sc in 2nd ch from hook, sc in next 12 ch, 3 sc in last ch. Along other side of ch, sc in each ch.", 30),
    ("2 sc in 2nd ch from hook, sc in next 12 ch, 3 sc in last ch. Along other side of ch, sc in each ch.", 30),
])
def test_an_end_with_its_fan_is_worked_once(row, count):
    assert first_counts(f"Ch 15.\n1st rnd: {row}\n")[-1] == count


def test_shells_told_in_two_parts_are_one():
    lines = (
        "Ch 4, join to form a ring, ch 3, 15 d c in ring, join. (16 d c)\n"
        "2nd Round. Ch 3, dc, ch 2, 2 dc in same place, * skip 1 dc, 2 dc in next dc, ch 2, 2 dc in same place (shell), repeat from * around, join (8 shells).\n"
        "3rd Round. * Shell in center of next shell, repeat from * 5 times (6 shells), ch 3.\n"
    )
    assert first_counts(lines) == [16, 32, 24]


def test_rows_without_a_label_go_on_without_the_chain_they_began_with():
    assert first_counts("Ch 17, sc in 2nd ch from hook, sc in next 15 ch.\nWork even until piece measures 3 inches.\n") == [16, 16]


ROUND = "Rnd 1: 7 sc in ring.\nRnd 2: 2 sc in each sc. (14 sc)\n"


@pytest.mark.parametrize(("row", "count"), [
    ("Inc. 7 sc evenly around.", 21),
    ("Inc. 7 sts evenly spaced.", 21),
    ("Dec. 7 sc evenly around.", 7),
    ("Inc 7 sc evenly (not directly over incs of last rnd).", 21),
    ("* Sc in next 3 sc, 2 sc in next sc, repeat from * twice, work to end-17 sc, join.", 17),
    ("Sc in next 2 sc, * 2 sc in next sc, sc in next sc, repeat from *, * sc in next sc, 2 sc in next sc, repeat from *, 2 sc in each remaining sc.", 22),
])
def test_rounds_that_grow(row, count):
    assert first_counts(f"{ROUND}Rnd 3: {row}\n")[-1] == count


def test_the_start_chain_is_the_first_of_every_fourth():
    lines = "Rnd 1: Ch 4, join, ch 3, 15 dc in ring, join. (16)\nRnd 2: Ch 3, dc around, inc in every 4th st. Join. (20)\nRnd 3: Work even (in back loop only) for 2 rounds.\n"
    assert first_counts(lines)[:2] == [16, 20]


@pytest.mark.parametrize("first", ["Ch 4, join to form a ring, ch 1, 12 sc in ring, join.", "Ch 12, join. Sc in each ch around."])
def test_even_rounds_make_no_second_ring(first):
    assert first_counts(f"Rnd 1: {first} (12)\nWork even (in back loop only) until there are 4 rounds.\n") == [12, 12, 12, 12]


MESH = "Row 1: Ch 24, dc in 6th ch from hook, * ch 1, skip 1 ch, dc in next ch, repeat from * to end.{turn}\n"


@pytest.mark.parametrize(("turn", "row"), [
    (" Ch 1, turn.", "Sc in first dc, * ch 1, sc in next dc, repeat from * across, ch 1, skip 1 st of end ch, sc in next st."),
    (" Ch 4, turn.", "Dc in next dc, * ch 1, dc in next dc, repeat from * across, ch 1, skip 1 st of end ch, dc in next st."),
])
def test_stitches_of_the_end_chain_are_passed_over(turn, row):
    assert first_counts(f"{MESH.format(turn=turn)}Row 2: {row}\n") == [11, 11]


@pytest.mark.parametrize(("row", "count"), [
    ("Ch 1, turn, 2 sc in last st, (ch 2, sc in next sc) repeated across, 1 more sc in last st.", 12),
    ("Ch 1, turn, sc in last st, (ch 2, sc in next sc) repeated to end.", 10),
])
def test_the_last_stitch_is_the_first_once_turned(row, count):
    assert first_counts(f"Row 1: Ch 20, sc in 2nd ch from hook, (ch 1, sc in next second ch) 9 times.\nRow 2: {row}\n") == [10, count]


def test_sizes_behind_what_they_count():
    lines = [
        "Ch 24 (20-28), sc in 2nd ch from hook, sc in each of next 22 chs (18-26).",
        "Row 2: Sc in each of the next 13 sts (11-15) 2 sc in next st, sc in each of the next 9 sts (7-11).",
        "Work even for 14 rows (12-16).",
    ]
    assert [tuple(row.counts) for row in last_rows(lines, "us")] == [(23, 19, 27), (24, 20, 28), (24, 20, 28)]


@pytest.mark.parametrize("told", ["until there are 30 sts on row", "until there are on row 30 sts"])
def test_rows_on_a_chain_to_be_cut_end_with_so_many(told):
    lines = f"Ch 60.\n1st row: Hdc in 3rd ch from hook, * dc in next ch, hdc in next ch. Repeat from * across {told}, ending with a dc. Cut off remaining chain. Ch 1, turn.\n2nd row: Sc in each st.\n"
    assert first_counts(lines)[1:] == [30, 30]


@pytest.mark.parametrize("told", ["sc in 2nd ch from hook and in each ch across", "sc in 2nd ch from hook, sc in each ch"])
@pytest.mark.parametrize("until", ["until there are 44 sc on row", "until there are 44 sts on row"])
def test_a_row_to_so_many_and_the_rest_of_the_chain_cut_off(told, until):
    assert first_counts(f"Ch 70.\n1st row: {told} {until}. Cut off remaining chain. Ch 1, turn.\n2nd row: Sc in each st.\n")[1:] == [44, 44]
