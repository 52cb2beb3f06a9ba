"""Repeats in brackets behind a list, clusters begun with a chain, chains passed over: each wording with the counts worked by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

TWELVE = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\n"
DC_RING = "Ch 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12)\n"
LOOPS = TWELVE + "Rnd 3: *Ch 5, sk 2 sts, sc in next st; rep from * around. (4)\n"
FLAT = "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (19)\n"
SHELLS = "Row 2: Ch 1, sc in first st, *sk 2 sts, shell in next st, sk 2 sts, sc in next st; rep from * across"

TOLD: list[tuple[str, str, list[int]]] = [
    ("repeat in brackets", TWELVE + "Rnd 3: 1 sc, 1 inc (repeat 6 times). (18)", [6, 12, 18]),
    ("repeat in brackets at the end", TWELVE + "Rnd 3: Sc in next st, inc (repeat 6 times)", [6, 12, 18]),
    ("rep in brackets, x behind", TWELVE + "Rnd 3: 1 sc, 1 inc (rep 6x), join.", [6, 12, 18]),
    ("repeat in square brackets, x before", TWELVE + "Rnd 3: 1 sc, 1 inc [repeat x6] (18)", [6, 12, 18]),
    ("repeat around in brackets", TWELVE + "Rnd 3: 1 sc, 1 inc (repeat around). (18)", [6, 12, 18]),
    ("number in words", TWELVE + "Rnd 3: 1 sc, 1 inc (repeat six times). (18)", [6, 12, 18]),
    ("between, 1", TWELVE + "Rnd 3: 2 sc in every other st, sc in the sts between. (18)", [6, 12, 18]),
    ("between, 2", TWELVE + "Rnd 3: 2 sc in every third st, 1 sc in the sts in between. (16)", [6, 12, 16]),
    ("between, 3", TWELVE + "Rnd 3: Inc in every 4th st, sc in those between. (15)", [6, 12, 15]),
    ("between, 4", TWELVE + "Rnd 3: 2 sc in every other st and sc in the others. (18)", [6, 12, 18]),
    ("between, 5", TWELVE + "Rnd 3: 2 sc in every other st, sc in the rest. (18)", [6, 12, 18]),
    ("between, 6", TWELVE + "Rnd 3: 2 sc in every other st, sc in each st between. (18)", [6, 12, 18]),
    ("even and joined", TWELVE + "Rnd 3: Work even, join. (12)\nRnd 4: Work even; join with sl st.\nRnd 5: Continue even, sl st to first sc.", [6, 12, 12, 12, 12]),
    ("even and turned", FLAT + "Row 2: Work even, turn. (19)\nRow 3: Work even, ch 1, turn.", [20, 19, 19, 19]),
    ("from a chain of the loop, 1", LOOPS + "Rnd 4: Sl st in next ch, ch 3, 6 dc in same sp, 7 dc in each remaining loop, join. (28 dc)", [6, 12, 4, 28]),
    ("from a chain of the loop, 2", LOOPS + "Rnd 4: Sl st in next 2 ch, ch 3, 6 dc in same loop, *7 dc in next loop; rep from * around, join.", [6, 12, 4, 28]),
    ("clusters, told to count", DC_RING + "Rnd 2: Ch 3, dc2tog in same st (counts as dc3tog), ch 2, *dc3tog in next st, ch 2; rep from * around, join. (12 dc3tog)", [4, 12, 12]),
    ("clusters, not told", DC_RING + "Rnd 2: Ch 3, dc2tog in same st, ch 2, *dc3tog in next st, ch 2; rep from * around, join.", [4, 12, 12]),
    ("clusters in the ring", "Ch 5, join with sl st to form ring.\nRnd 1: Ch 4, tr2tog in ring, (ch 3, tr3tog in ring) 5 times, ch 3, join.", [5, 6]),
    ("begun in any", DC_RING + "Rnd 2: In any st, ch 3, dc in same st, ch 2, *2 dc in next st, ch 2; rep from * around, join.\nRnd 3: In any ch-2 sp, ch 3, dc in same sp, *2 dc in next ch-2 sp; rep from * around, join.", [4, 12, 24, 24]),
    ("one chain that counts, 1", "Ch 11.\nRow 1: Hdc in 2nd ch (first sk ch counts as first hdc) and in each ch across, turn. (11)", [11, 11]),
    ("one chain that counts, 2", "Ch 11.\nRow 1: Hdc in 2nd ch from hook (skipped ch counts as hdc), hdc in each ch across, turn.\nRow 2: Ch 1, hdc in each hdc across. (11)", [11, 11, 11]),
    ("rounds more of a stitch", TWELVE + "Rnd 3: Sc in each st around. Sc two more rounds.", [6, 12, 12, 12, 12]),
    ("rounds more of another stitch", TWELVE + "Rnd 3: Sc in each st around. Hdc 2 more rounds. Fasten off.", [6, 12, 12, 12, 12]),
    ("so many, told with the", "Ch 12.\nRnd 1: Join with sl st to form ring, ch 1, sc the next 12 sts. (12)", [12, 12]),
    ("a comma before the end of a repeat", "Ch 20.\nRow 1: Sc in 2nd ch from hook, (sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch), across. (19)", [20, 19]),
    ("extended", TWELVE + "Rnd 3: (1 sc, 2 extended dc, 1 extended hdc) 3 times. (12)", [6, 12, 12]),
    ("letters torn apart", TWELVE + "Rnd 3: Sc in each st around, sl st to fi rst sc. (12)", [6, 12, 12]),
    ("loops around a ring, 1", "Ch 5, join with sl st to form ring.\nRnd 1: *Ch 6, sl st in ring* x4 (4 loops)\nRnd 2: Sl st in ch-6 loop, ch 1, 6 sc in same loop, 6 sc in next 3 loops, join. (24)", [5, 0, 24]),
    ("loops around a ring, 2", "Ch 5, join with sl st to form ring.\nRnd 1: (Ch 4, sl st in ring) 6 times.\nRnd 2: (Sc, 3 dc, sc) in each ch-4 loop around. (30)", [5, 0, 30]),
    ("a number that the chains are counted with", TWELVE + "Rnd 3: Sc 2, ch 3, skip 3, sc 3, ch 3, skip 3, sc 1. (6)\nRnd 4: Sc 12", [6, 12, 6, 12]),
    ("into chains, the stop left out", TWELVE + "Rnd 3: Sc in next 8 sts, ch 4, skip 4 sts, join. (8 sc and 1 ch 4 loop)\nRnd 4: Sc in each st and ch Join with sl st in first sc. (12)", [6, 12, 8, 12]),
    ("back along the chain, no number told", "Rnd 1: 12 sc in ring. (12)\nRow 1: Ch 5, sc in 2nd ch from hook and in next 3 ch; sc in each of next 12 sc; sc in each ch on opposite side of beg ch; turn. (20)", [12, 20]),
    ("joined through both loops", TWELVE + "Rnd 3: Ch 1, sc in blo around, sl st in both loops to join. (12)", [6, 12, 12]),
    ("a chain that is no stitch", "Ch 12.\nRow 1: Dc in 3rd ch from hook and in each ch across. (10)\nRow 2: Ch 3 (not a st), dc in each st across. (10)", [12, 10, 10]),
    ("a hand before the number", TWELVE + "Rnd (Right hand) 3: Sc in each st around. (12)", [6, 12, 12]),
]


def counts(text: str) -> list[int | None]:
    document = read(Source.of(text, "told.txt"))
    assert write(document) == text
    return [row.counts[0] for row in work(document).rows]


@pytest.mark.parametrize(("text", "expected"), [t[1:] for t in TOLD], ids=[t[0] for t in TOLD])
def test_rows_come_to_their_counts(text: str, expected: list[int]):
    assert counts(text) == expected


@pytest.mark.parametrize("text", [t[1] for t in TOLD], ids=[t[0] for t in TOLD])
def test_nothing_is_found_amiss_in_them(text: str):
    found = check_source(Source.of(text, "told.txt")).findings
    assert not [f.code for f in found if f.code[0] in "NW" or f.code == "C037"]


def made(text: str) -> dict[str, int | None]:
    return {kind: n[0] for kind, n in work(read(Source.of(text, "made.txt"))).rows[-1].made.items()}


def test_what_a_name_is_told_to_be_is_no_count():
    told = made(FLAT + SHELLS + " (shell = 7 dc).")
    assert (told["dc"], told["shell"], told["sc"]) == (21, 3, 4)
    row = work(read(Source.of(FLAT + SHELLS.replace("shell", "5 dc") + " (shell = 5 dc)", "no-count.txt"))).rows[-1]
    assert (row.printed, row.counts) == (None, (19,))


def test_a_name_told_where_it_is_worked():
    assert made(FLAT + SHELLS.replace("shell", "shell (= 7 dc)"))["dc"] == 21


@pytest.mark.parametrize("said", ["(counts as dc, ch 1)", "(skipped ch count as dc and ch-1 sp)", "(counts as dc, ch 1, dc)"])
def test_chains_passed_over_are_a_stitch_and_a_space(said: str):
    row1 = f"Ch 17.\nRow 1: Dc in 5th ch from hook {said}, *ch 1, dc in next ch; rep from * to end, turn. (14 dc)"
    assert made(row1)["ch-sp"] == 13
    assert made(f"{row1}\nRow 2: Ch 1, sc in first dc, 2 sc in each sp across, sc in last st.")["sc"] == 28


def test_counts_run_into_the_word_before_them():
    text = "Sizes: S (M, L)\nRow 1: Ch 30 (36, 42); sc in 2nd ch from hook and in each ch across29 (35, 41) sc.\nRow 2: Ch 1, sc2tog, sc in each sc across to last 2 sc, sc2tog, turn27 (33, 39) sc."
    rows = work(read(Source.of(text, "glued.txt"))).rows
    assert [(row.counts, row.printed) for row in rows[-2:]] == [((29, 35, 41), (29, 35, 41)), ((27, 33, 39), (27, 33, 39))]


def test_sizes_in_brackets():
    text = "Sizes: S (M, L)\n" + TWELVE + "Sizes (M, L) ONLY-Rnd 3: (1 sc, inc) around - (18, 18) sts.\nSize (L) ONLY-Rnd 4: (2 sc, inc) around - (24) sts.\nALL SIZES-Next Rnd: Sc in each sc around - 12 (18, 24) sts."
    assert work(read(Source.of(text, "sizes.txt"))).rows[-1].counts == (12, 18, 24)


def test_lists_of_sizes_without_a_comma_behind_them():
    text = "Sizes: 1 (2, 3)\nRnd 1: 20 (22, 24) sc in ring.\nRnd 2: Ch 1, sc (4, 5, 6) {sc dec} four times, sc (8, 9, 10) sl st to join\nRnd 3: Sc (6, 7, 8) 2 sc in next, sc next (8, 9, 10) 2 sc in last."
    assert [row.counts for row in work(read(Source.of(text, "sizes.txt"))).rows] == [(20, 22, 24), (16, 18, 20), (18, 20, 22)]


def test_a_chain_in_a_count_has_its_sizes():
    text = "Rnd 1: 18 (20) sc in ring. (18 (20) sc)\nRnd 2: Sc in next 9 (10) sc, ch 6 (7), skip 6 (7) sc, sc in next 3 (3) sc, join. (12 (13) sc and 1 ch 6 (7) loop)"
    row = work(read(Source.of(text, "loop.txt"))).rows[-1]
    assert (row.counts, row.printed) == ((12, 13), (12, 13))
