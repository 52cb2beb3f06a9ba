"""Garments, hats, mittens and toys as designers write them today: each wording with the counts a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work


def ring(n: int) -> str:
    """A first round of so many."""
    return f"Rnd 1: {n} sc in magic ring. ({n})\n"


THREE = "Sizes: S (M, L)\n\n"
CUFF = "Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8)\nRows 2-40: Ch 1, sc in BLO of each st across, turn. (8)\n"
VEE = "Chain 36\nRow 1: Sc in second ch from hook, sc in next 15 ch, sc3tog, sc in last 16 ch, turn. (33)\n"
FLAP = ring(12) + "First Earflap\nRow 1: Ch 1, sc in next 6 sts, turn. (6)\nRow 2: Ch 1, sc2tog, sc in next 2 sts, sc2tog, turn. (4)\nRow 3: Ch 1, sc2tog, sc in next 2 sts, turn. (3)\nRow 4: Ch 1, sc2tog, sc in next st. (2)\nFasten off.\nSecond Earflap\nJoin yarn in next free st.\nRow 1: Ch 1, sc in same st and in next 5 sts, turn. (6)\n"
FLAT = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\n"
STAR = (
    "Special Stitches:\nBeginning star (beg star): insert hook in 2nd ch from hook, pull up a loop, insert hook in next ch, pull up a loop, (insert hook in next st, "
    "pull up a loop) 3 times, yo and pull through all loops on hook, ch 1.\nStar stitch (star st): insert hook in eye of last star, pull up a loop, insert hook in "
    "side of same star, pull up a loop, (insert hook in next st, pull up a loop) twice, yo and pull through all loops on hook, ch 1.\n\n"
    "Ch 43.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (42)\n"
)
SEAMED = CUFF + "Sew the short ends together.\n"

WORDINGS: list[tuple[str, str, list[int]]] = [
    ("rows numbered with a stop, 1", "1. 6 sc in magic ring (6)\n2. inc x6 (12)\n3. sc around (12)\n4. sc around (12)\n5. sc, inc x6, sc 5 (18)\n6-8. sc around (18)", [6, 12, 12, 12, 18, 18, 18, 18]),
    ("rows numbered with a stop, 2", "R1. 8 hdc in magic ring, join (8)\nR2. Ch 1, hdc around, join (8)\nR3. Ch 1, 2 hdc in each st around, join (16)\nR4. Ch 1, hdc around, join (16)\nR5-7. Ch 1, hdc around, join (16)", [8, 8, 16, 16, 16, 16, 16]),
    ("ranges and bars, 1", ring(6) + "R2~R4: 6 sc (6)", [6] * 4),
    ("ranges and bars, 2", ring(6) + "R2~3: 6 sc (6)", [6] * 3),
    ("ranges and bars, 3", ring(6) + "Rnds 2-4 | 6 sc | (6)\nRnd 5 | 6 inc | (12)", [6, 6, 6, 6, 12]),
    ("along the ends of rows, 1", SEAMED + "Rnd 1: Working along row ends, pick up and sc 3 sts for every 4 rows around. (30)", [30]),
    ("along the ends of rows, 2", SEAMED + "Rnd 1: Ch 1, sc evenly around, placing 3 sts for every 4 rows.", [30]),
    ("along the ends of rows, 3", CUFF + "Row 1: Ch 1, sc evenly along row ends at a rate of 3 sts per 4 rows, turn.", [30]),
    ("along the ends of rows, 4", SEAMED + "Rnd 1: Sc evenly around the edge of the ribbing, placing 1 sc in each row end.", [40]),
    ("along the ends of rows, 5", SEAMED + "Rnd 1: Ch 1, 1 sc per row around, join.", [40]),
    ("along the ends of rows, 6", SEAMED + "Rnd 1: Ch 1, work 40 sc evenly around the edge of the cuff (1 sc per row), join. (40)", [40]),
    ("along the ends of rows, 7", CUFF + "Bring the first row up behind the last one and sl st the two together through both loops.\nWorking in the row ends:\nRnd 1: Ch 1, 1 sc in each row end, join. (40)", [40]),
    ("along the ends of rows, 8", CUFF + "Join short ends with slip stitches.\nRnd 1: Ch 1, 1 sc in each row end, join. (40)", [40]),
    ("a chain joined to go round, 1", "Ch 20; join to work in the round.\nRnd 1: Ch 3 (counts as dc), dc in next 9 ch, dc in last 10 ch; join. (20)", [20]),
    ("a chain joined to go round, 2", "Ch 20, join with sl st to begin working in the round.\nRnd 1: Ch 3 (counts as dc), dc in next 9 ch, dc in last 10 ch; join. (20)", [20]),
    ("decreases up to the last ones", ring(14) + "Rnd 2: sc2tog around to last 2 sts, sc in last 2 sts. (8)", [14, 8]),
    ("up to a decrease, 1", VEE + "Row 2: Ch 1, 2 sc in first st, sc to 1 st before the sc3tog, sc3tog, sc to last st, 2 sc in last st, turn. (33)\nRows 3-5: Rep Row 2. (33)", [33] * 5),
    ("up to a decrease, 2", VEE + "Row 2: Ch 1, sc in each st to 1 st before next sc3tog, sc3tog, sc to end, turn. (31)\nRow 3: Ch 1, sc to 1 st before the decrease, sc3tog, sc to end, turn. (29)", [33, 31, 29]),
    ("up to so many before the end", VEE + "Row 2: Ch 1, sc to 2 sts before end, sc2tog, turn. (32)", [33, 32]),
    ("markers between stitches, 1", ring(30) + "Rnd 2: Sc in next 14 sts, pm, 2 sc in each of next 2 sts, pm, sc in next 14 sts. (32)\nRnd 3: Sc around, slipping markers.\nRnd 4: Sc to marker, 2 sc in next st, sc to 1 st before next marker, 2 sc in next st, sc to end. (34)\nRnd 5: Rep Rnd 4. (36)\nRnd 6: Sc to marker, skip gusset sts, ch 2, sc to end. (28)\nRnd 7: Sc in each sc and in each ch. (30)", [30, 32, 32, 34, 36, 28, 30]),
    ("markers between stitches, 2", "Ch 61.\nRow 1: Hdc in 2nd ch from hook and in each of next 9 ch, place marker, hdc in next 8 ch, pm, hdc in next 24 ch, pm, hdc in next 8 ch, pm, hdc in last 10 ch, turn. (60)\nRow 2: Ch 1, *hdc to 1 st before marker, 2 hdc in next st, sm, 2 hdc in next st; rep from * 3 more times, hdc to end, turn. (68)\nRows 3-5: Rep Row 2.", [60, 68, 76, 84, 92]),
    ("a repeat up to a marker", "Ch 31.\nRow 1: Sc in 2nd ch from hook and in each of next 9 ch, place marker, sc in next 20 ch, turn. (30)\nRow 2: Ch 1, *sc in next st, 2 sc in next st; rep from * to marker, sc to end, turn. (40)\nRow 3: Ch 1, *sc in next st; rep from * to 2 sts before marker, sc2tog, sc to end, turn. (39)", [30, 40, 39]),
    ("markers in stitches", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each of next 9 ch, 3 sc in next ch, place marker in last st made, sc in last 9 ch, turn. (22)\nRow 2: Ch 1, sc to marked st, 3 sc in marked st, move marker to centre st, sc to end, turn. (24)\nRow 3: Ch 1, sc to marked st, 3 sc in marked st, sc in each st to end. (26)", [22, 24, 26]),
    ("folded and closed, 1", ring(6) + "Rnd 2: fold flat and work 3 sc through both layers (3)", [6, 3]),
    ("folded and closed, 2", ring(6) + "Rnd 2: flatten and close with 3 sc through both sides = 3", [6, 3]),
    ("folded and closed, 3", ring(6) + "Rnd 2: pinch the opening shut and sc in each st across through both layers (3)", [6, 3]),
    ("folded and closed, 4", ring(6) + "Rnd 2: working through both layers, sc across (3)", [6, 3]),
    ("folded and closed, 5", ring(6) + "Rnd 2: fold flat, sc 3 across top to close [3]", [6, 3]),
    ("two edges of a band closed", CUFF + "Row 41: Ch 1, sc through both layers of the cuff across. (8)", [8, 8]),
    ("so many together, the number first", "UK terms\nSpecial abbreviations\nMB (make bobble): 5tr tog in the same st.\n\nRound 1: 2ch, 8htr in 2nd ch from hook, ss in first htr to join. (8htr)\nRound 2: 1ch, *3dc, MB; rep from * to end, ss in first st. (8)\nRound 3: 1ch, 3dc, 5trtog in next st, 4dc, ss in first st. (8)", [8, 8, 8]),
    ("where a chain is begun, 1", ring(6) + "Tail\nRow 1: Ch 21, starting in 2nd ch from hook: sl st 20 (20)", [6, 20]),
    ("where a chain is begun, 2", ring(6) + "Tail\nRow 1: Ch 21, beginning from second chain from hook, sc 20 (20)", [6, 20]),
    ("told as another part, 1", FLAP + "Rows 2-4: Same as first earflap.", [12, 6, 4, 3, 2, 6, 4, 3, 2]),
    ("told as another part, 2", "Curlew Toy\n\nLeg 1\n" + ring(6) + "Rnd 2: 2 sc in each st. (12)\nCut yarn.\nLeg 2\nRepeat as for leg 1, but don't cut yarn.", [6, 12, 6, 12]),
    ("told as another part, 3", "Heron Vest\n\nBack\n" + ring(6) + "Rnds 2-5: Sc around.\nFront\nWork as given for Back to Rnd 3.\nRnd 4: 2 sc in each st. (12)", [6, 6, 6, 6, 6, 6, 6, 6, 12]),
    ("told as a row, with what that does", ring(6) + "Rnd 2: 2 sc in each of first 3 sts, sc in each st to end. (9)\nRnds 3-4: Work as Rnd 2, 3 sts increased each rnd. (15)", [6, 9, 12, 15]),
    ("a band worked onto an edge, 1", ring(20) + "Brim\nCh 8.\nRow 1: Sc in 2nd ch from hook and in next 6 ch, sl st in next 2 sts of rnd 1, turn. (7)\nRow 2: Sk 2 sl sts, sc in BLO of next 7 sc, turn. (7)\nRow 3: Ch 1, sc in BLO of 7 sc, sl st in next 2 sts of rnd 1, turn. (7)\nRows 4-7: Rep Rows 2 and 3.", [7] * 7),
    ("a band worked onto an edge, 2", ring(20) + "Ribbing\nCh 6.\nRow 1: Sc in 2nd ch from hook and in next 4 ch, sl st to next 2 sts on body, turn. (5)\nRow 2: Do not ch. Skip sl sts, sc in BLO across, turn. (5)", [5, 5]),
    ("a decrease is one of its stitches", FLAT + "Row 2: Ch 1, sc in each sc to last 2 sc, sc2tog, turn. (19)\nRow 3: Ch 1, sc in each sc across, turn.", [20, 19, 19]),
    ("two together in words, 1", ring(12) + "Rnd 2: (2 sc, 2 sc together) x 3 (9)", [12, 9]),
    ("two together in words, 2", ring(12) + "Rnd 2: Single crochet two together, single crochet around. (11)", [12, 11]),
    ("two together in words, 3", ring(12) + "Rnd 2: 2 sc together x 6 (6)", [12, 6]),
    ("a part and its row in one line, 1", ring(12) + "Hand: Round 2: Ch 1, 5 sc, 2 sc in each of next 2 sts, 5 sc, sl st to first sc. (14)", [12, 14]),
    ("a part and its row in one line, 2", ring(12) + "Heel: Row 1: Ch 1, sc in next 6 sts, turn. (6)", [12, 6]),
    ("counts behind a colon", "Row 1 (right side): Ch 21; sc in 2nd ch from hook and in each remaining ch: 20 sc.\nRow 2: Ch 1, turn; sc in each sc: 20 sc.", [20, 20]),
    ("back along the chain, 1", "Ch 11.\nRnd 1: 2 sc in 2nd ch from hook, sc in each of next 8 chs, 4 sc in last ch; turn work upside down; sc in each of next 8 chs, 2 sc in last ch; join. (24)", [24]),
    ("back along the chain, 2", "Ch 11.\nRnd 1: 2 sc in 2nd ch from hook, sc in next 8 ch, 4 sc in last ch. Working on opposite side of chain: sc in next 8 ch, 2 sc in last ch (same ch as first sc). Join. (24)", [24]),
    ("a last round without its end", "Ch 24, sl st in first ch to form a ring.\nRnd 1: Ch 1, sc in each ch around, join. (24)\nRnd 2: Ch 1, sc in same place, *sk 2, 5 dc in next, sk 2, sc in next* to end, omit last sc, join. (4 shells)\nRnd 3: Sl st to centre of first shell, ch 1, sc in same, *5 dc in next sc, sc in centre of next shell* to end, omit last sc, join.", [24, 24, 24]),
    ("two legs joined", "Romper\n\nLeg (make 2)\n" + FLAT + "Body\nRow 2: Ch 1, sc in each st across first leg, ch 4, sc in each st across second leg, turn. (40)\nRow 3: Ch 1, sc in each st and ch across. (44)", [20, 40, 44]),
    ("told as another part, 4", "Wigeon Pullover\n\nBack Panel\n" + FLAT + "Front Panel\nRepeat instructions for Back Panel.", [20, 20]),
    ("labels that tell how many", ring(6) + "Rnds 2-4 (3 rounds): sc in each st (6)\nR5-6 (2 rnds total): sc around (6)", [6] * 6),
    ("a loop glued to its stitch", CUFF + "Rows 41-42: ch 1, turn, scblo in each st (8)", [8, 8, 8]),
    ("a number behind the loop", CUFF + "Row 41: ch 1, turn, sc blo 8 (8)", [8, 8]),
    ("ends matched and closed", CUFF + "Join: ch 1, turn, match the last row with the starting chain and sl st across both.\nRnd 1: Ch 1, rotate, sc in the side of each row. (40)", [40]),
    ("between two marks", ring(12) + "Rnd 2: *1sc, 2sc into next st*, repeat ** 6 times, ss to next st. (18)", [12, 18]),
    ("the first chain once more", "Ch 10.\nRnd 1: 3 sc in 2nd ch from hook, sc in next 7 ch, 5 sc in last ch, working on other side of ch, sc in next 7 ch, 2 sc in first ch, join. (24)", [24]),
    ("a chain joined to go round, 3", "Ch 20, sl st to join, being careful not to twist.\nRnd 1: Ch 3 (counts as dc), dc in next 9 ch, dc in last 10 ch; join. (20)", [20]),
    ("from the space the hook was slipped into", ring(16) + "Rnd 2: Ch 2 (does not count), *puff in next st, ch 1, sk 1 st; rep from * around, sl st to top of first puff. (8 puffs)\nRnd 3: Sl st into ch-1 sp, ch 2, *puff in ch-1 sp, ch 1; rep from * around, sl st to top of first puff. (8 puffs)\nRnd 4: Ch 1, 2 sc in each ch-1 sp around, join. (16)", [16, 8, 8, 16]),
    ("special sts by that name", "Special st: Puff = (yo, insert hook, pull up a loop) 3 times in same st, yo, pull through all loops.\n\n" + ring(8) + "Rnd 2: *Puff in next st, sc in next st; rep from * around. (8)", [8, 8]),
    ("along the ends of rows, 9", SEAMED + "Rnd 1: Ch 1, work 40 sc evenly round the band (1 sc into each row end), join.", [40]),
    ("two together to the end, 1", ring(12) + "Rnd 2: Sc2tog to end. (6)", [12, 6]),
    ("two together to the end, 2", ring(13) + "Rnd 2: Sc2tog to last st, sc in last st. (7)", [13, 7]),
    ("in this way until so many rows", CUFF + "Row 41: Ch 1, sc across. (8)\nCont in this way until 44 rows have been worked.", [8] * 5),
    ("all round a chain from its first", "Ch 30, join to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in same ch, sk 2 ch, *3 dc in next ch, sk 2 ch; rep from * around, join to top of ch-3. (10 groups)", [30]),
    ("two legs joined by a chain", "Phalarope Toy\n\nLegs\n" + ring(10) + "Rnds 2-5: Sc around. (10)\nBody\nRnd 6: Ch 3, join with sc to the first leg, 9 sc around the leg, 3 sc along the chain, 10 sc around the other leg, 3 sc along the other side of the chain (26)\nRnd 7: Sc around. (26)", [10, 10, 10, 10, 10, 26, 26]),
    ("rows numbered with a stop, 3", "1. 6 sc into a magic ring (6 st)\n2. (inc) * 6 (12 st)\n3.-4. sc in each st (12 st)\n5.-8. sc in each st (12 st)\n9. (dec) * 6 (6 st)", [6, *[12] * 7, 6]),
    ("rows numbered with a bullet", "\u2022 Rnd 1: 6 sc in magic ring [6]\n\u2022 Rnd 2-4: sc in all 6 sts [6]", [6] * 4),
    ("chains counted by their name first", ring(28) + "Rnd 2: Ch 6, skip next 6 sts, sc in each st to end of rnd. (22 sc, ch 6)\nRnd 3: Sc in each of 6 ch, sc in each st to end of rnd. (28)", [28, 22, 28]),
    ("stars of several stitches", STAR + "Row 2: Ch 3, beg star, *star st; rep from * across, hdc in last st, turn. (20 star sts)\nRow 3: Ch 1, sc in hdc, 2 sc in eye of each star across, sc in top of ch-3, turn. (42)\nRows 4-5: Rep Rows 2 and 3.", [42, 21, 42, 21, 42]),
    ("bobbles by their letters", ring(8) + "Rnd 2: sc 2, bs, sc 4, bobble st (8)", [8, 8]),
    ("so many chains with a yarn told", "Using yarn B, ch 16.\nRnd 1: Sc in 2nd ch from hook, 13 sc, 3 sc in last ch, working back along the other side of ch, 13 sc, 2 sc in last ch. (32)", [32]),
    ("the stitch that follows", "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: *Sc in next st, 2 sc in foll st; rep from * around. (12)", [8, 12]),
    ("raised stitches in UK letters", "UK terms\n\nCh 12, ss in first ch to form a ring.\nRnd 1: 3 ch (counts as tr), tr in each ch around, ss to top of ch-3. (12 tr)\nRnd 2: 2 ch (counts as st), *rbtr around next st, rftr around next st; rep from * to last st, rbtr around last st, ss to top of ch-2. (12)", [12, 12]),
]

SIZED: list[tuple[str, str, list[tuple[int | None, ...]]]] = [
    ("counts side by side, 1", THREE + "Ch 41 (43, 45).\nRow 1: Sc in 2nd ch from hook and across, turn (40, 42, 44)", [(40, 42, 44)]),
    ("counts side by side, 2", THREE + "Ch 41 (43, 45).\nRow 1: Sc in 2nd ch from hook and across, turn - 40, 42, 44 sts", [(40, 42, 44)]),
    ("counts side by side, 3", THREE + "Ch 41 (43, 45).\nRow 1: Sc in 2nd ch from hook and across, turn {40, 42, 44}", [(40, 42, 44)]),
    ("counts side by side, 4", THREE + "Ch 41 (43, 45).\nRow 1: Sc in 2nd ch from hook and across, turn (40/42/44 sc)", [(40, 42, 44)]),
    ("numbers side by side, 1", THREE + "Ch 41, 43, 45.\nRow 1: Sc in 2nd ch from hook and across, turn (40, 42, 44)", [(40, 42, 44)]),
    ("numbers side by side, 2", THREE + "Ch 41-43-45.\nRow 1: Sc in 2nd ch from hook and across, turn (40, 42, 44)", [(40, 42, 44)]),
    ("numbers and brackets by turns", "Sizes: XS (S) M (L)\n\nCh 41 (43) 45 (47).\nRow 1: Sc in 2nd ch from hook and across, turn. [40 (42) 44 (46)]", [(40, 42, 44, 46)]),
    ("sizes by dashes", "Sizes: S - M - L\nCh 7.\nRow 1: Sc in 2nd ch from hook, sc in each ch = 6 sc. Turn.\nRows 2-4-5-6: Ch 1, sc in each st. Turn.", [(6, 6, 6)] * 3 + [(None, 6, 6), (None, None, 6), (6, 6, 6)]),
    ("sizes by colons", "Size: S[M:L:XL]\nCh 11[13:15:17].\nRow 1: Sc in 2nd ch from hook and across. 10[12:14:16] sc", [(10, 12, 14, 16)]),
    ("sizes by slashes, 1", "sizes A/B/C\nCh 11/13/15.\nRow 1: Sc in 2nd ch from hook and across (10/12/14)", [(10, 12, 14)]),
    ("sizes by slashes, 2", "Ch 11/13/15.\nRow 1: Sc in 2nd ch from hook and across (10/12/14)\nRow 2: Ch 1, turn, sc across (10/12/14)", [(10, 12, 14)] * 2),
    ("two brackets of sizes, 1", "SIZES 1 (2, 3)(4, 5)\n\nCh 41 (43, 45)(47, 49)\nRow 1: Sc in 2nd ch from hook and across, turn [40 (42, 44)(46, 48)]", [(40, 42, 44, 46, 48)]),
    ("two brackets of sizes, 2", "Ch 41 (43, 45)(47, 49)\nRow 1: Sc in 2nd ch from hook and across, turn [40 (42, 44)(46, 48)]", [(40, 42, 44, 46, 48)]),
    ("rows of some sizes, 1", THREE + "Rnd 1: 12 sc in magic ring. (12, 12, 12)\nRnd 2 (M and L only): Sc in next - (8, 10), 2 sc in each rem st. (-, 16, 14)", [(12, 12, 12), (None, 16, 14)]),
    ("rows of some sizes, 2", THREE + "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: Sc in next - (8, 10) sts, 2 sc in each rem st. [- (16, 14)]", [(12, 12, 12), (None, 16, 14)]),
]


@pytest.mark.parametrize(("name", "text", "counts"), WORDINGS, ids=[w[0] for w in WORDINGS])
def test_a_wording_of_today(name: str, text: str, counts: list[int]) -> None:
    report = work(read(Source.of(text)))
    made = [row.counts[0] for row in report.rows]
    assert (made[-len(counts) :], [f for f in report.findings if f.code[0] == "W" or f.code == "N001"]) == (counts, [])


@pytest.mark.parametrize(("name", "text", "counts"), SIZED, ids=[w[0] for w in SIZED])
def test_a_wording_of_several_sizes(name: str, text: str, counts: list[tuple[int | None, ...]]) -> None:
    document = read(Source.of(text))
    report = work(document)
    assert ([row.counts for row in report.rows if row.label], report.findings, write(document)) == (counts, (), text)


@pytest.mark.parametrize("words", ["sc to marker, 2 sc in next st", "sc to 1 st before next marker, 2 sc in next st", "sc to 1 st before the sc3tog, sc3tog"])
def test_a_marker_or_decrease_that_is_not_there_is_not_guessed(words: str) -> None:
    report = work(read(Source.of(ring(12) + f"Rnd 2: {words}, sc to end.\n")))
    assert (report.rows[-1].counts, [f.code for f in report.findings]) == ((None,), ["W003"])


def test_stitches_through_both_layers_take_two() -> None:
    fabric = work(read(Source.of(ring(6) + "Rnd 2: fold flat and work 3 sc through both layers (3)\n"))).fabrics[0]
    assert fabric is not None
    assert fabric.counted(fabric.rows[-1]) == {"sc": 3}


@pytest.mark.parametrize(("words", "counts"), [
    ("Sizes M and L: Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)", (None, 18, 18)),
    ("For size L: Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)", (None, None, 18)),
    ("For size S: Fasten off. For sizes M and L: Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)", (None, 18, 18)),
    ("2nd size only: Rnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)", (None, 18, None)),
    ("First and third sizes:\nRnd 2: Ch 1, *sc in next st, 2 sc in next st; rep from * around, join. (18)", (18, None, 18)),
])
def test_rows_told_for_some_sizes_are_worked_in_those_alone(words: str, counts: tuple[int | None, ...]) -> None:
    report = work(read(Source.of("Sizes: S (M, L)\n" + ring(12) + words + "\n"), "us"))
    assert [r.counts for r in report.rows if r.label.startswith("Rnd 2")] == [counts]
    assert not report.findings


def test_chains_told_size_by_size_in_one_line() -> None:
    text = "Sizes: S (M, L)\nSize S: Ch 21. Size M: Ch 25. Size L: Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20, 24, 30)\n"
    assert work(read(Source.of(text), "us")).rows[-1].counts == (20, 24, 30)


def test_a_dash_for_one_size_is_not_a_count_of_another() -> None:
    report = work(read(Source.of(THREE + "Ch 41 (43, 45).\nRow 1: Sc in 2nd ch from hook and across, turn. (40, 42, 45)\n")))
    assert [(f.code, f.sizes) for f in report.findings] == [("W001", ("L",))]


def test_a_rate_that_leaves_a_part_of_a_stitch_confirms_no_count_that_is_further_off() -> None:
    rib = CUFF.replace("2-40", "2-42")
    told = "Row 1: Ch 1, work 3 sc for every 4 rows along the side edge, turn. ({})\n"
    for printed, made in ((31, 31), (32, 32), (34, 31)):
        assert work(read(Source.of(rib + told.format(printed)))).rows[-1].counts == (made,)
