"""Remarks in a row and marks of other makers that tell no stitches. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts, last_rows


@pytest.mark.parametrize("where", ["all sts in 3rd loop of hdc", "all sts in 3rd loop", "working in 3rd loops of hdc"])
def test_a_loop_of_a_stitch_names_no_stitch(where):
    row = f"Rnd 2: ch 1, {where}, dc in first 2 sts, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; rep from * to end; join. (12)"
    assert first_counts(f"Rnd 1: 9 hdc in ring. (9)\n{row}\n") == [9, 12]


@pytest.mark.parametrize("told", ["first dc throughout", "1st dc here and throughout", "first dc now and throughout", "first dc in every rnd", "is first dc"])
def test_a_chain_that_is_the_first_stitch_from_here_on(told):
    assert first_counts(f"Rnd 1: Ch 2 ({told}), 8 dc in ring (9 dc). Sl st in top of ch2 (join so throughout).\nRnd 2: Ch 2, dc in joining st, [2 dc in next dc] 8 times; join.\n") == [9, 18]


@pytest.mark.parametrize("again", ["Repeat from ** to * until 9 shells are made.", "Rep from ** to * until 9 groups are made.", "Repeat from ** to * around."])
def test_two_stars_open_and_one_closes(again):
    start = "Rnd 1: 18 sc in ring.\nRnd 2: *Skip next sc, (sc and hdc) in next sc; rep from * around.\n"
    assert first_counts(f"{start}Rnd 3: ** In next sc make (sc and hdc.) * {again}\n") == [18, 18, 18]


@pytest.mark.parametrize("petal", ["In each ch 3 sp *sc, hdc, 2 dc, hdc*. Fasten off.", "In each ch-3 sp: sc, hdc, 2 dc, hdc.", "Into every sp *sc, hdc, 2 dc, hdc*"])
@pytest.mark.parametrize("closed", ["Sl st to ch 1 of first ch 3.", "Sl st to first ch of the first ch 3.", "Sl st to 1st ch of first ch-3."])
def test_petals_in_stars(petal, closed):
    loops = f"Rnd 2: Change to color B (cut color A) *sc in next, ch 3, sk 1* to end. {closed}\n"
    assert first_counts(f"Rnd 1: 12 hdc in ring. (12 hdc)\n{loops}Rnd 3: {petal}\n") == [12, 6, 30]


@pytest.mark.parametrize("ends", ["on the ends", "at each end", "at both ends"])
def test_increases_at_the_ends_of_an_oval_are_made_twice(ends):
    oval = "Ch 21.\nRnd 1: Sc in 2nd ch from hook and in next 18 ch, 3 sc in last ch; working along other side, sc in next 18 ch, 2 sc in last ch; join.\n"
    assert first_counts(f"{oval}Rnd 2: Ch 1, sc in each sc around, working 2 sc in each of the 3 sc {ends}; join.\n") == [21, 42, 48]


def test_the_side_before_a_label_with_other_sizes_rounds():
    lines = ["Sizes: S(M)", "RS Round 1: 10 hdc in ring, join, turn. (10)", "Rounds 2-5(7): Hdc in every st.", "RS Round 6(8): Ch 1. *Hdc in next 3 sts. Hdc2tog.** Repeat from * around. Turn. (8)"]
    assert last_rows(lines, "us")[-1].counts == (8, 8)


@pytest.mark.parametrize("remark", [" (skip row 3 for a smaller bag)", " (24 ch5 loops)(16 ch5 loops for smaller bag)", ""])
def test_what_another_size_does_is_said_in_passing(remark):
    rows = "1-ch1, 8 hdc in ring (8 sts)\n2-ch1, 2hdc in ea hdc (16 sts)\n3- ch1, (1hdc, 2hdc in nxt st) 8 times"
    assert first_counts(f"{rows}{'' if 'loops' in remark else remark}\n4- *ch5, sc in nxt st. Repeat from * around{remark if 'loops' in remark else ''}\n") == [8, 16, 24, 24]


@pytest.mark.parametrize("name", ["Reverse dc (crab stitch) or plain dc", "Reverse dc (crab st)", "Reverse dc"])
def test_another_name_of_a_stitch(name):
    rows = ["Row 1: 12 tr in a ring, ss.", "Row 2: 4ch, (1tr, 1ch) in each tr to end, ss to 3rd of 4ch.", f"Row 3: {name} into each ch1 space. (12 dc)."]
    assert last_rows(rows, "uk")[-1].counts == (12,)


@pytest.mark.parametrize("lead", ["Begin at bottom. ", "", "With white yarn. "])
@pytest.mark.parametrize("label", ["R{}: ", "R {}: ", "Rnd {}: "])
def test_several_rounds_in_one_line(lead, label):
    told = " ".join(f"{label.format(n)}{words}" for n, words in ((1, "6 sc in loop."), (2, "inc 6 (12)."), (3, "*sc, inc* 6 times (18).")))
    assert first_counts(f"{lead}{told}\n")[-3:] == [6, 12, 18]
