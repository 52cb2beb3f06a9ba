"""Hats, mitts and toys as pages of today tell them: counts in words, rings of chains, lists over and over, rounds that are worked on as they are."""

import pytest

from tests.line_by_line import first_counts, last_rows

RING = "Rnd 1: 7 sc in magic ring.\n"
PAGES = [
    ("counts told behind what is made", RING + "Rnd 2: (inc) around to make 14 sc\nRnd 3: (sc, inc) around to get 21 sc.\nRnd 4: (inc, 2 sc) around for 28 stitches\nRnd 5: 1 sc in each of your 28 sts, 3 rounds.", [7, 14, 21, 28, 28]),
    ("a remark on each increase", RING + "Rnd 2: *2 sc in first st - repeat from * around for 14 stitches. (each inc is two)", [7, 14]),
    ("counts of each row", "Row 1: 8 hdc in magic ring. Join. Ch 1.\nRow 2: 2 hdc in each st. Join. Ch 1. (16 hdc)\nRows 3-4: 1 hdc in each st. Join. Ch 1. (16 hdc in each row)", [8, 16, 16, 16]),
    ("counts of every round", "Row 1: 8 hdc in magic ring.\nRow 2: 2 hdc in each st around (16 hdc per row)\nRows 3-4: Hdc in each st around (16 sts in every round).", [8, 16, 16, 16]),
    ("dots behind a label", RING + "2nd round ..2 sc in each sc\n3rd round ...*1 sc in next sc, 2 sc in next* repeat to end.\n4th to 5th round .... sc in each sc", [7, 14, 21, 21, 21]),
    ("no colon behind a range", "R1 6 SC in MR (6)\nR2 INC all (12)\nR3-4 SC all (12)\nR5-6 sc even", [6, 12, 12, 12, 12, 12]),
    ("one in brackets, repeated", "Rnd 1: 6 sc in magic ring.\nRnd 2: (inc) repeat 6 times\nRnd 3: (dec) repeat 6 times", [6, 12, 6]),
    ("two dashes before a repeat", "Rnd 1: 10 sc in magic ring, join.\nRnd 2: Ch 1, sc in same st, inc, *sc in next, inc*--Repeat between *'s around. Join.", [10, 15]),
    ("a colour between stars", "Rnd 1: 12 sc in magic ring, join.\n*Change to 5mm hook*\nRnd 2: *using color B* ch 1, sc in each st around, join.", [12, 12]),
    ("braces that are repeated", "Rnd 1: 9 dc in ring.\nRnd 2: Ch 2 (counts as dc), dc in same st, 2 dc in each st to end.\nRnd 3: Ch 2 (counts as dc), dc in same st, dc in next st, then repeat {2 dc in next st, dc in next st} to the end.", [9, 18, 27]),
    ("decreases told in words", "Rnd 1: 24 sc in magic ring.\nRow 2: 1 sc in first 4 sc, next 2 sc together (dec.), 4 sc, decrease 2 sc together, 4 sc, dec. 2 sc tog., continue to end (20 sc)\nRow 3: 2 sc, 2 sc tog, 2 sc, 2 sc tog..and so on to the end", [24, 20, 15]),
    ("next two together among others", "Rnd 1: 14 sc in magic ring.\nRnd 2: Next 2 sc together, sc in 5, next 2 sc tog, sc in 5.", [14, 12]),
]


@pytest.mark.parametrize(("name", "text", "counts"), PAGES, ids=[p[0] for p in PAGES])
def test_rows_of_pages(name: str, text: str, counts: list[int]) -> None:
    assert first_counts(text) == counts


@pytest.mark.parametrize("place", ["same ch as join", "same st", "same ch", "first ch"])
def test_a_chain_that_was_joined_is_gone_round_once(place: str) -> None:
    assert first_counts(f"Ch 36, join with sl st to form a ring.\nRnd 1: Ch 1, sc in {place}, sc in each ch around, join.")[-1] == 36


def test_a_chain_of_a_ring_with_more_in_its_first() -> None:
    assert first_counts("Ch 12, join.\nRnd 1: Ch 1, 2 sc in same ch as join, sc in next 11 ch, join.")[-1] == 13
    assert first_counts("Ch 20, sl st to first ch.\nRnd 1: Ch 3 (does not count), 1dc in base of ch3, 1dc in each ch to end, sl st to first dc. (20dc)")[-1] == 20


@pytest.mark.parametrize(("words", "made"), [
    ("sc in next 2, 2 sc in next, around", 16), ("Sc in first 3 sts, 2 sc in next, around", 15), ("sc, sc, inc, around", 16),
    ("inc, sc in next 3 sts, around. Join.", 15), ("sc in next 2, dec, across", 9), ("sc in next 6 sts, hdc in next 6 sts, around", 12),
    ("sc in each st, around", 12),
])
def test_a_list_before_around(words: str, made: int) -> None:
    assert first_counts(f"Rnd 1: 12 sc in magic ring.\nRnd 2: {words}")[-1] == made


def test_post_stitches_are_worked_into_again() -> None:
    text = "Ch 4, join.\nRnd 1: Ch 3, 19 dc in ring. Join.\nRnd 2: Ch 3, dc in next 5 dc, fpdc in next 3 dc, dc around. (20 dc)\nRnds 3-5: Repeat rnd 2."
    assert first_counts(text)[1:] == [20, 20, 20, 20, 20]


def test_sizes_all_in_one_bracket_behind_a_label() -> None:
    lines = ["Rnd 1: (24, 30, 36) fsc, join with ss. (24, 30, 36)", "Rnd 2: ch 1, *using A* sc in each st around, join. (24, 30, 36)", "Rnd 3: ch 1, (sc in next 4 sts, sc2tog) around. (20, 25, 30)"]
    assert [list(r.counts) for r in last_rows(lines, "us")] == [[24, 30, 36], [24, 30, 36], [20, 25, 30]]
