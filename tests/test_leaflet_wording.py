"""Rows as leaflets and notes of all times word them: each with the counts that a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

RING = "1st rnd: Ch 3, 23 dc in ring, join with sl st to top of ch-3 (24 dc).\n"
SHELLS = RING + "2nd rnd: Sl st in next dc, ch 3, in same st make dc, ch 2 and 2 dc {first}, * skip 1 dc, in next dc make 2 dc, ch 2 and 2 dc {other}. Repeat from * around, skip last dc, join.\n"
FLAT = "Ch 77. Row 1: Dc in 4th ch from hook and in each ch across (75 dc, counting turning ch as 1 dc). Ch 3, turn. Row 2: Skip first dc, dc in each dc across, dc in top of turning ch. Ch 3, turn. "
SIZED = "Sizes: S (M, L)\nRnd 1: 64 (72, 80) sc in magic ring. 64 (72, 80) sts\n"
YOKE = "Make 58 ch. Foundation row: 1 tr into 4th ch from hook, 1 tr into each ch to end, turn: 56 tr, counting the turning ch as 1 tr.\n"
DISC = "1st rnd: 6 sc in magic ring (6 sc).\n2nd rnd: 2 sc in each sc around (12 sc).\n3rd rnd: * Sc in next sc, 2 sc in next sc. Repeat from * around (18 sc). "

TOLD: list[tuple[str, str, str, list[int]]] = [
    ("shells named in passing", "us", SHELLS.format(first="(first shell made)", other="(another shell made)")
     + "3rd rnd: Sl st to sp of first shell, ch 3, 2 dc in same sp, * ch 4, 3 dc in sp of next shell. Repeat from * around, ending with ch 4. Join (36 dc).", [36]),
    ("shells nobody named", "us", SHELLS.format(first="", other="")
     + "3rd rnd: Sl st to sp of first shell, ch 3, 2 dc in same sp, * ch 4, 3 dc in sp of next shell. Repeat from * around, ending with ch 4. Join (36 dc).", [36]),
    ("shells over shells", "us", SHELLS.format(first="(shell)", other="(shell)")
     + "3rd rnd: Sl st to sp of shell, ch 3, in same sp make dc, ch 2 and 2 dc (shell over shell), * ch 1, shell over next shell. Repeat from * around, ch 1, join (12 shells).", [48]),
    ("ch 3 omitted in a sentence of its own", "us", FLAT + "Repeat Row 2 until piece measures 12 inches. Omit ch 3 at end of last row.\n"
     "ARMHOLES: Row 1: Sl st across first 4 sts, sl st in next st, ch 3, dc across to within last 4 sts (67 sts).", [67]),
    ("making last sc in", "us", ("Ch 20. 1st row: Sc in 2nd ch from hook and in each ch across (19 sc). Ch 4, turn.\n"
     "2nd row: Skip first 2 sc, dc in next sc, * ch 1, skip 1 sc, dc in next sc. Repeat from * across (9 sps). Ch 1, turn.\n"
     "3rd row: Sc in first dc, * sc in next sp, sc in next dc. Repeat from * across, making last sc in 3rd ch of turning ch (19 sc)."), [19]),
    ("one stitch decreased by its name", "us", "1st rnd: 40 sc in ring (40 sc).\n2nd rnd: Sc in each of first 13 sc, (dec 1 sc, sc in next sc) 6 times, sc in each of last 9 sc (34 sc).", [34]),
    ("so many evenly", "us", "1st rnd: 24 sc in ring (24 sc).\nDec rnd: Work in sc, dec 4 sc evenly spaced around (20 sc).", [20]),
    ("one more near the centre", "us", "Row 1: 60 sc in ring, turn. (60)\nRow 2: Ch 1, sc in each sc across, making 2 sc in one st near center (61 sc).", [61]),
    ("until a round is completed", "us", DISC + "Continue in this manner, having 1 sc more between incs on each rnd and taking care that incs do not fall over those of previous rnd, "
     "until 8th rnd is completed (48 sc).", [24, 30, 36, 42, 48]),
    ("increases named by what they are", "uk", YOKE + "1st row: 3 ch, miss first tr, 1 tr into each of next 8 tr, * into next tr work 1 tr, 1 ch and 1 tr (called inc), "
     "1 tr into each of next 8 tr, inc in next tr *, 1 tr into each of next 18 tr, rep from * to * once, 1 tr into each of last 9 tr, turn: 60 tr.\n"
     "2nd row: 3 ch, miss first tr, 1 tr into each tr to end, working 1 tr, 1 ch and 1 tr into each 1 ch sp, turn: 68 tr.", [60, 68]),
    ("a chain told as the first", "uk", ("Make 80 ch.\n1st row: 1 tr into 4th ch from hook, 1 tr into each ch to end, turn. [78 tr]\n"
     "2nd row: 3 ch (as first tr), miss first tr, 1 tr into each tr to end, last tr into top of turning ch, turn. [78 tr]"), [78, 78]),
    ("what a chain is worth", "uk", "Round 1: 4 ch (1 tr, 1 ch), [1 tr into ring, 1 ch] 11 times, ss into 3rd of 4 ch. (12 tr)", [12]),
    ("what a chain is worth, with a plus", "us", "Round 1: Magic ring, ch 4 (dc + ch 1), [dc in ring, ch 1] 11 times, sl st to third ch of ch-4. 12 dc, 12 ch-1 sps.", [12]),
    ("3rd of 4-ch", "uk", ("1st row: 18 tr in ring, turn. (18 tr)\n2nd row: 4 ch (counts as 1 tr, 1 ch), miss first tr, 1 tr in next tr, *1 ch, 1 tr in next tr; rep from * to end, turn. (18 tr)\n"
     "3rd row: 3 ch, 2 tr in each 1-ch sp to end, 1 tr in 3rd of 4-ch. (36 tr)"), [18, 36]),
    ("popcorns by the hook taken out", "uk", ("1st round: 3 ch, 15 tr into ring, ss into 3rd of 3 ch: 16 tr.\n2nd round: 4 ch (counts as 1 tr, 1 ch), * 1 tr into next tr, 1 ch; rep from * to end, ss into 3rd of 4 ch: 16 sps.\n"
     "3rd round: Ss into first sp, 3 ch, 4 tr into same sp, withdraw hook, insert it into 3rd of 3 ch and draw dropped loop through (first popcorn), * 2 ch, 5 tr into next sp, withdraw hook, "
     "insert it into first of the 5 tr and draw dropped loop through; rep from * to end, 2 ch, ss into top of first popcorn: 16 popcorns."), [16]),
    ("under each of the others", "old", ("1st round: 3 chain for a treble, 23 treble under the ring, join. (24 treble.)\n"
     "2nd round: 5 chain, * miss 1, 1 treble on the next, 2 chain; repeat from *, and miss the last treble; join to the third of the 5 chain. (12 holes.)\n"
     "3rd round: Slip into the first hole, 3 chain, 3 treble under the same hole, 4 treble under each of the others, join. (48 treble.)"), [48]),
    ("each dc and each sp to another", "us", ("Row 1: 9 dc in ring, turn. (9 dc)\nRow 2: Ch 4 (counts as dc and ch 1), skip 1 dc, dc in next dc, ch 1, skip 1 dc, (dc, ch 2, dc) in next dc, ch 1, skip 1 dc, dc in next dc, ch 1, skip 1 dc, dc in last dc, turn. (6 dc)\n"
     "Row 3: Ch 3 (counts as dc), dc in each dc and each ch-1 sp to the ch-2 sp, 3 dc in ch-2 sp, dc in each dc and each ch-1 sp to last st, dc in last st. (13 dc)"), [13]),
    ("loops of another length at the end", "uk", ("R1: 1 ch, 12 dc in ring. (12 dc)\nR2: 5 ch (counts as 1 tr, 2 ch), 1 dc in next dc, *5 ch, 1 dc in next dc; rep from * 8 times more, 2 ch, 1 tr in last dc, turn.\n"
     "R3: 3 ch (counts as 1 tr), 2 tr in 2-ch sp, 4 tr in each 5-ch loop, 2 tr in last 2-ch sp, 1 tr in 3rd of 5-ch. (42 tr)"), [42]),
]


@pytest.mark.parametrize(("terms", "text", "counts"), [t[1:] for t in TOLD], ids=[t[0] for t in TOLD])
def test_it_comes_to_what_it_prints(terms: str, text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text + "\n"), terms)
    assert [row.counts[0] for row in report.rows][-len(counts) :] == counts
    assert [f.code for f in report.findings if f.code[0] in "WD" or f.code == "N001"] == []


@pytest.mark.parametrize(("row", "printed"), [
    ("*sc 6, sc2tog* 8 (9, 10) times. 56 (63, 70) sts", (56, 63, 70)), ("sc in BLO across. 64 (72, 80) sts", (64, 72, 80)),
])
def test_numbers_for_each_size(row: str, printed: tuple[int, ...]) -> None:
    report = check_source(Source.of(f"{SIZED}Rnd 2: {row}\n"), "us")
    assert report.rows[-1].counts == report.rows[-1].printed == printed


@pytest.mark.parametrize("told", ["(12 shells and a ch-3)", "(12 shells; 12 ch-2 sps)", "{12 shells}", "(12 shells, 1 dc at each edge)"])
def test_counts_with_more_behind_them(told: str) -> None:
    text = SHELLS.format(first="(shell)", other="(shell)").replace("join.\n", f"join. {told}\n")
    report = check_source(Source.of(text), "us")
    assert report.rows[-1].printed == (12,)
    assert report.rows[-1].agrees


def test_each_of_several_rows_has_its_count():
    text = DISC + "\nRnds 4-6: Sc in each sc around, increasing 6 sts evenly. (24, {last}, 36 sts)\n"
    right, wrong = (check_source(Source.of(text.replace("{last}", last)), "us") for last in ("30", "31"))
    assert [row.counts[0] for row in right.rows][-3:] == [24, 30, 36]
    assert [f.code for f in right.findings if f.code == "W001"] == []
    assert [f.args["printed"] for f in wrong.findings if f.code == "W001"] == ["31"]


def test_a_sum_is_a_count():
    text = "Rnd 1: 6 sc in a magic ring. 6 sc = 6 sts\nRnd 2: Inc in each st. 6 inc = 12 sts\nRnd 3: (1 sc, inc) x 6. 6 sc + 6 inc = {n} sts. Begin stuffing.\n"
    right, wrong = (check_source(Source.of(text.replace("{n}", n)), "us") for n in ("18", "16"))
    assert [row.counts for row in right.rows] == [(6,), (12,), (18,)]
    assert [f.code for f in right.findings if f.code == "W001"] == []
    assert [f.code for f in wrong.findings if f.code == "W001"] == ["W001"]


def test_rows_of_this_part_and_of_another():
    text = (
        "CROWN\nRnd 1: 64 dc in ring, join. (64)\nBRIM\nRnd 1: *FPdc around next st, BPdc around next st; rep from * around, join. (64)\n"
        "Rnds 2-4: Rep Round 1 of brim.\n"
    )
    report = check_source(Source.of(text), "us")
    assert [set(row.made) & {"fpdc", "bpdc"} for row in report.rows[-3:]] == [{"fpdc", "bpdc"}] * 3


def test_a_piece_begun_in_a_ring_is_flat_where_the_notes_say_so():
    rows = "4 ch, ss in first ch to form a ring.\nR1: 3 ch (counts as tr), 8 tr in ring. (9 tr)\nR2: 3 ch, 1 tr in st at base of ch, 2 tr in each tr to end. (18 tr)\n"
    flat = check_source(Source.of("Shawl\nNotes: Worked flat, so turn at the end of every row.\n" + rows), "uk")
    assert [row.counts for row in flat.rows][-2:] == [(9,), (18,)]
    assert [f.code for f in flat.findings if f.code[0] == "W"] == []
