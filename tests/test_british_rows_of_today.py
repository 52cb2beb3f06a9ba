"""Rows as British designers and magazines write them today: each wording with the counts that a maker would get, worked out by hand. All lines are our own."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

RING = "Ch 6 and sl st together to form a ring.\n"
DISC = "Rnd 1: 8 dc in ring. (8)\nRnd 2: 2 dc in each dc. (16)\n"
FLAT = "Ch 28.\nRow 1: 1dc in 2nd ch from hook, 1dc in each ch to end, turn. 27 sts\n"
LACE = RING + "Rnd 1: 1 ch, 24 dc in ring, ss in first dc. (24 dc)\n"
ARCHES = LACE + "Rnd 2: 1 ch, 1 dc in same st, *4 ch, miss 2 dc, 1 dc in next dc; rep from * 6 more times, 4 ch, miss 2 dc, ss in first dc. (8 dc)\n"

ROWS: list[tuple[str, str, list[int]]] = [
    ("a chain that acts as the first stitch", RING + "Rnd 1: 3ch to act as first tr, 13 tr into ring, ss into 3rd ch. (14 tr)", [14]),
    ("a chain as first stitch", RING + "Rnd 1: 3ch as first tr, 9 tr into ring, ss into 3rd of beg ch. (10 tr)", [10]),
    ("a chain that acts as a stitch and a space", RING + "Rnd 1: Ch 4 to act as first (tr, ch1), (tr, ch1) 9 times into ring, ss to 3rd ch. (10 tr, 10 ch-1 sps)", [10]),
    ("what a chain is", RING + "Rnd 1: Ch 3 (is first tr), 1 tr, ch 1, (2 tr, ch 1) 4 times into ring, ss to join to the third ch st of the first tr.", [10]),
    ("a chain told as a stitch and a chain", RING + "Rnd 1: 4 ch (1 tr and a chain), *1 tr, 1 ch; rep from * 7 times, ss to 3rd ch.\nRnd 2: 3 ch and 1 tr into any chain space, (1 ch, 2 tr) into next chain space, and each ch sp around, 1 ch, ss into 3rd ch from beginning. {18 tr, 9 ch}", [9, 18]),
    ("a group, then in any space", RING + "Rnd 1: (1 ch, 2 dc) 6 times into ring, ss in first dc.\nRnd 2: (3 ch, 2 tr), in any ch sp, (1 ch, 3 tr) in next ch sp and each ch sp around, 1 ch, ss in 3rd ch.", [12, 18]),
    ("a count behind dots", "Ch 21.\n1st row: 1dc in 2nd ch from hook, 1dc in each of next 4 ch, * 2ch, miss 2, 1dc in each of next 3ch; rep from * to end, turn ... 14dc and 3 x 2ch-sps forming 3 holes at the end of this row.", [14]),
    ("a count in words", "Ch 9.\nRow 1: starting in fourth ch from hook, dc in each ch across, turn. Six sts\nRow 2: 1ch, 6dc, turn", [6, 6]),
    ("bobbles counted in words", FLAT + "Row 2: 1ch, *3dc, 1 bobble in next st; rep from * to last three sts, 3dc, turn. Six bobbles", [27, 27]),
    ("clusters named by their trebles, 1", FLAT + "Row 2: 1ch, *3dc, 4trCL in next st; rep from * to last 3 sts, 3dc, turn.\nRow 3: 1ch, *3dc, 1dc in top of next 4trCL; rep from * to last 3 sts, 3dc, turn.", [27, 27, 27]),
    ("clusters named by their trebles, 2", FLAT + "Row 2: 1ch, *3dc, 4-tr cl in next st; rep from * to last 3 sts, 3dc, turn.", [27, 27]),
    ("clusters named by their trebles, 3", FLAT + "Row 2: 1ch, *3dc, 5-tr-pc in next st; rep from * to last 3 sts, 3dc, turn.", [27, 27]),
    ("several stitches before a cluster", FLAT + "Row 2: 1ch, *2dc, dc3tog; rep from * to last 2 sts, 2dc, turn.\nRow 3: 1ch, *2dc, popcorn in next st; rep from * to last 2 sts, 2dc, turn.", [27, 17, 17]),
    ("when you reach a corner", RING + "Rnd 1: 3 ch, 3 tr in ring, 2 ch, *4 tr in ring, 2 ch; rep from * twice more, ss in 3rd ch. (16)\nRnd 2: 3 ch, tr in each tr, when you get to a corner work 2 tr, 2 ch, 2 tr in the corner space, ss to top of 3 ch.", [16, 32]),
    ("so many times, then two in one", DISC + "Rnd 3: work 1 dc in each dc three times, then 2 dc in next dc, and repeat all around.", [8, 16, 20]),
    ("both terms at once", "Rnd 1: 7 dc/sc in ring. (7)\nRnd 2: 2 dc/sc in each st around. (14)\nRnd 3: 1 tr/dc in each st around.", [7, 14, 14]),
    ("either a magic ring or a chain", "Rnd 1: either make a magic ring to start or ch 2, crochet 9 dc into the ring / 2nd ch from hook, use tail yarn to pull it shut (9 sts).", [9]),
    ("a magic loop or a ring", "Into the magic loop or ring 3ch (counts as tr), 1tr, 2ch, (2tr, 2ch) 4 times, ss to join.", [10]),
    ("a heading that says how it is worked", "Sun - (worked in rounds without turning) make a magic circle, 1ch, 11dc into circle, ss to first dc, close magic circle by pulling loose end. (11dc)\nNext Row - 3ch, 1tr in base of 3ch, 2tr in each dc, ss to top of 3ch on beginning of row. (21tr + 3ch)", [11, 22]),
    ("a last stitch that is no stitch, 1", LACE + "Rnd 2: 1 ch, 1 dc in same st, *4 ch, miss 3 dc, 1 dc in next dc, 6 ch, miss 3 dc, 1 dc in next dc*; repeat from * to * twice more, ending last rep with ss in first dc.", [24, 6]),
    ("a last stitch that is no stitch, 2", LACE + "Rnd 2: 1 ch, 1 dc in same st, *4 ch, miss 3 dc, 1 dc in next dc, 6 ch, miss 3 dc, 1 dc in next dc*, repeat from * to * 2 more times, but on last time, ss to first dc rather than making a new dc.", [24, 6]),
    ("a mark of its own, 1", ARCHES + "Rnd 3: Ss in sp, 3 ch, 1 tr in same sp, *2 tr in next sp, 3 ch, 2 tr in same sp, 1 ch, + 2 tr in next sp*; repeat from * to * twice, and then from first * to + once, ss in 3rd ch.", [24, 8, 24]),
    ("a mark of its own, 2", ARCHES + "Rnd 3: Ss in sp, 3 ch, 1 tr in same sp, *2 tr in next sp, 3 ch, 2 tr in same sp, 1 ch, # 2 tr in next sp*; repeat from * to * twice, then from * to # once, ss in 3rd ch.", [24, 8, 24]),
    ("words in full", RING + "Rnd 1: 3 chains, 9 treble crochets into the ring, join in the third of the initial 3 chains of this round.\nRnd 2: 2 half treble crochets in each stitch around.", [10, 20]),
    ("letters the wrong way round", RING + "Rnd 1: 10 hrt in ring.", [10]),
    ("a semicircle closed", ("Rnd 1: 8 dc in ring. (8)\nRnd 2: 2 dc in each dc. (16)\n"
     "Rnd 3: Fold work in half; working through both layers, join Chalk to outermost st, 1ch, 2dc in same st, dc in each st, ending with 2dc in last st."), [8, 16, 10]),
    ("two in each through both layers", DISC + "Rnd 3: Fold in half, 2 dc in each st across through both layers.", [8, 16, 16]),
    ("two pieces held together", DISC + "Rnd 3: 4 dc, holding the ear against the head and through both layers, dc in next 2 dc, 2 dc in next dc, 9 dc. (17)", [8, 16, 17]),
    ("so many through both layers", DISC + "Rnd 3: Fold in half, working through both layers, 1 dc in each of next 8 sts.", [8, 16, 8]),
    ("through both layers", "Rnd 1: 8 dc in ring. (8)\nRnd 2: 2 dc in each dc. (16)\nRnd 3: Fold in half, working through both thicknesses, 1dc in each st across.", [8, 16, 8]),
]


def counts(text: str) -> list[int | None]:
    return [r.counts[0] for r in work(read(Source.of(text), "uk")).rows if r.made and set(r.made) != {"ch"}]


@pytest.mark.parametrize(("text", "made"), [case[1:] for case in ROWS], ids=[case[0] for case in ROWS])
def test_british_rows(text: str, made: list[int]) -> None:
    assert counts(text) == made
    assert write(read(Source.of(text), "uk")) == text


@pytest.mark.parametrize("text", [case[1] for case in ROWS], ids=[case[0] for case in ROWS])
def test_right_counts_are_no_errors(text: str) -> None:
    assert not [f for f in check_source(Source.of(text), "uk").findings if f.code == "W001"]


def test_a_wrong_count_in_words_is_found() -> None:
    assert "W001" in [f.code for f in check_source(Source.of(FLAT + "Row 2: 1ch, 27dc, turn. Ten sts"), "uk").findings]


@pytest.mark.parametrize(("printed", "wrong"), [("(11, tr2tog, 1tr + 3ch)", False), ("(12 tr2tog, 1tr + 3ch)", True), ("(11 tr2tog, 4tr + 3ch)", True)])
def test_a_start_chain_counted_apart(printed: str, wrong: bool) -> None:
    text = RING + f"Row 1: 1 ch, 12 dc in ring, ss in first dc. (12dc)\nRow 2: 3ch (counts as tr), 1tr in same st, *1ch, tr2tog in next dc; rep from * to end, 1ch, ss to top of 3ch. {printed}"
    assert ("W001" in [f.code for f in check_source(Source.of(text), "uk").findings]) is wrong


def test_both_terms_are_the_patterns_own() -> None:
    text = "Ch 5.\nRow 1: 1 dc/sc in 2nd ch from hook, 1 dc/sc in each ch.\nRow 2: 3 ch, 1 tr/dc in each st."
    assert [set(r.made) - {"group", "ch-sp"} for r in work(read(Source.of(text), "uk")).rows][1:] == [{"sc"}, {"dc"}]
