"""Wording of patterns that designers publish themselves today: what each row comes to, in lines of our own in that wording."""

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

DISC = "Rnd 1: 12 dc in magic ring, join. (12 dc)\n"

TOLD: list[tuple[str, str, str, list[int]]] = [
    ("a note in brackets within brackets", "us", (
        DISC + "Rnd 2: Ch 3, dc in same st, ch 1, *2 dc in next st, ch 1; rep from * around, join. (24 dc)\n"
        "Rnd 3: Sl st in ch-1 sp. (Ch 3 [counts as dc], 2 dc, ch 2, 3 dc) in same sp, 3 hdc in each of next 2 ch-1 sps, "
        "*(3 dc, ch 2, 3 dc) in next ch-1 sp, 3 hdc in each of next 2 ch-1 sps; rep from * twice more, join. (24 dc, 24 hdc)"), [12, 24, 48]),
    ("a chain slipped into its first chain to join", "uk", "Round 1: 60 ch, ss to first ch to join. 3 ch (counts as 1 tr), 1 tr in each of next 59 ch, ss in top of 3 ch. 60 tr.", [60]),
    ("from a space between two stitches on", "us", DISC + "Rnd 2: Sl st in sp between first 2 dc, ch 1, 2 sc in same sp, *2 sc in next sp between dc; rep from * around, join. (24 sc)", [12, 24]),
    ("a numbered colour joined between two stitches", "uk", (
        "Rnd 1: 6 ch, join with ss. 3 ch (counts as tr), 9 tr into ring, ss to top of 3 ch. (10 tr)\n"
        "Rnd 2: Join col 2 in any space between 2 tr. 3 ch, 1 tr in same sp, 1 ch, *2 tr in next sp between tr, 1 ch; rep from * around, ss to join. (20 tr, 10 1-ch sps)\n"
        "Rnd 3: Join colour 3 in any 1-ch sp. 3 ch, 2 tr in same sp, 1 ch, *3 tr in next 1-ch sp, 1 ch; rep from * around, ss to join. (30 tr)"), [10, 20, 30]),
    ("gaps between groups, corner spaces by their length", "uk", (
        "Round 1: 5 ch, ss in 1st ch to form a ring. 3 ch (counts as 1 tr), 1 tr in ring, 1 ch, [2 tr in ring, 1 ch] 4 times, ss in 3rd of 3 ch. (10 tr)\n"
        "Round 2: Ss in next tr and in ch-sp, (3 ch, 1 tr, 2 ch, 2 tr) in same ch-sp, [(2 tr, 2 ch, 2 tr) in next ch-sp] 4 times, ss in 3rd of 3 ch. (20 tr)\n"
        "Round 3: Ss to corner sp, (3 ch, 1 tr, 2 ch, 2 tr) in same sp, 2 tr in gap between next two groups, *(2 tr, 2 ch, 2 tr) in next corner sp, "
        "2 tr in gap before next group; rep from * to end, ss in 3rd of 3 ch. (30 tr)\n"
        "Round 4: 1 ch, 1 dc in each tr around, working 3 dc in every 2-ch corner sp, ss in first dc. (45 dc)"), [10, 20, 30, 45]),
    ("a count and a remark behind it", "uk", (
        "Round 1: 20 dc in magic ring. (20 dc)\nRound 2: 1 ch, *1 htr in each of next 3 sts, htr2tog; rep from * to end, ss to first htr. 16 sts. Fasten off, thread tail through and draw up."), [20, 16]),
    ("a last chain and stitch that count as a loop", "us", (
        "Rnd 1: 30 dc in magic ring, join. (30 dc)\n"
        "Rnd 2: Ch 1, sc in same st, *ch 5, sk next 2 sts, sc in next st*, repeat from * to * around to last 2 sts, ch 2, sk 2 sts, dc in first sc. "
        "This last ch 2 + dc counts as a loop (10 loops)\n"
        "Rnd 3: Ch 1, sc in the loop you just made, *ch 5, sc in next loop*, repeat around, ending ch 2, dc in first sc (10 loops)\n"
        "Rnd 4: Ch 1, 4 sc in each loop around, sl st to first sc (40 sc)"), [30, 10, 10, 40]),
    ("chains counted beside stitches", "us", (
        "Rnd 1: 80 dc in magic ring, join. (80 dc)\n"
        "Rnd 2: Ch 3 (counts as dc), dc in next 23 sts, ch 6, sk next 16 sts, dc in next 24 sts, ch 6, sk last 16 sts; join. (48 dc + 2 underarm chains)"), [80, 48]),
    ("chains counted by what they become", "us", "Rnd 1: 48 sc in magic ring. (48 sc)\nRnd 2: Sc in 1st 8 sts, ch 8, sk 8 sts, sc in next 16 sts, ch 8, sk 8 sts, sc in last 8 sts. (32 sc, 2 ch-8 handles)", [48, 32]),
    ("a chain, then what the stitches are", "us", (
        "Ch 37. V-st = (dc, ch 1, dc) in same st or sp.\n"
        "Row 1: V-st in 5th ch from hook (first 4 ch count as dc + 1 skipped ch), *sk 2 ch, V-st in next ch; rep from * to last 2 ch, sk 1 ch, dc in last ch. - 11 V-sts\n"
        "Row 2: Ch 3 (counts as dc), turn. V-st in each ch-1 sp across, dc in top of t-ch. - 11 V-sts"), [24, 24]),
    ("told once to count, it counts", "us", "Row 1: Ch 12, dc in 4th ch from hook and in each ch across. (10 dc)\nRow 2: Ch 3 (counts as dc), turn, dc in each of next 9 sts.\nRow 3: Ch 3, turn, 5 dc in first st, sk 4 sts, 5 dc in next st, sk 3 sts, dc in top of t-ch.", [10, 10, 12]),
    ("so many more each row, and how many there are then", "us", (
        "Row 1: Make a magic ring. Ch 4 (counts as dc + ch 1 throughout), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn. 8 dc\n"
        "Row 2: Ch 4, 3 dc in first ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in center ch-2 sp, ch 1, 3 dc in last sp, ch 1, dc in 3rd ch of ch-4, turn. 14 dc\n"
        "Rows 3 - 10: Cont in this way, with one more 3-dc group on each side of the center on every row (6 more dc per row). At the end of Row 10 you should have 62 dc."), [8, 14, 62]),
    ("in each stitch and in each of so many chains", "uk", (
        "Round 1: 30 dc in magic ring. (30 dc)\nRound 2: 1 dc in first 8 sts, 6 ch, miss next 6 sts, 1 dc in each of the remaining 16 sts. 24 dc and one 6-ch space\n"
        "Round 3: 2 ch, 1 htr in each dc and in each of the 6 ch, ss to join. 30 htr"), [30, 24, 30]),
    ("filet in open meshes", "us", (
        "Open mesh = ch 2, sk 2, dc in next dc. Block = dc in next 3 sts.\n"
        "Row 1: Ch 32. Dc in 8th ch from hook, *ch 2, sk 2 ch, dc in next ch; rep from * across, turn. [9 open meshes]\n"
        "Row 2: Ch 5 (counts as dc + ch 2), dc in next dc, 3 open meshes, 1 block, 3 open meshes, ch 2, dc in 3rd ch of t-ch, turn. [8 open meshes, 1 block]"), [10, 12]),
    ("braces for brackets", "us", "Rnd 1: 6 sc in magic ring - 6 sts\nRnd 2: {inc} x6 - 12 sts\nRnd 3: {sc, inc} x6 - 18 sts\nRnd 4: {dec} 9 times - 9 sts", [6, 12, 18, 9]),
    ("a part behind a dash, in a colour", "us", (
        "EARS (make 2) - in Brown.\nRnd 1: 6 sc in magic ring - 6 sts\nMUZZLE - in Dark Cream, ch 5.\n"
        "Rnd 1: starting in 2nd ch from hook: inc, sc in next 2 ch, 4 sc in last ch, on the other side of the chain: sc in next 2 ch, inc in last ch - 12 sts"), [12]),
    ("a short name told by a long one", "us", (
        "All rows are worked on the RS. LDC = long dc (dc in the front loop of the st two rows below).\n"
        "Row 1: With A, ch 22. Sc in 2nd ch from hook and in each ch across. [21 sts]\nRow 2: With B, BLO sc in each st. [21 sts]\n"
        "Row 3: With A, sc in first st, *BLO sc in next 3 sts, LDC in next st; rep from * to last 4 sts, BLO sc in next 3 sts, sc in last st. [21 sts]"), [21, 21, 21]),
    ("spaces counted by where they are", "us", "Rnd 1: 8 dc in magic ring, join. (8 dc)\nRnd 2: [Dc in next st, ch 1] 7 times, dc in next st. (7 ch-1 sps in flower)", [8, 8]),
    ("a count behind a sign of equality", "uk", "Rnd 1: With pink, 5 ch, ss to form ring. 1 ch, 16 dc into ring, ss to first dc = 16 dc\nRnd 2: 2 dc in each dc = 32 dc", [16, 32]),
    ("counts of stitches and of what they make", "uk", (
        "Round 1: 4 ch, ss to form ring. 3 ch (counts as 1 tr throughout), 1 tr in ring, 2 ch, *2 tr in ring, 2 ch; rep from * 4 more times, ss to top of 3 ch. (12 tr, 6 corner sps)\n"
        "Round 2: Ss to 2ch-sp, (3 ch, 1 tr, 2 ch, 2 tr) in same sp, *1 tr in each tr to next 2ch-sp, (2 tr, 2 ch, 2 tr) in 2ch-sp; rep from * 4 more times, 1 tr in each tr to end, ss. (36 tr - 6 on each side)"), [12, 36]),
    ("behind the beginning chain", "us", "Rnd 1: Ch 4, 11 dc in 4th ch from hook (beg ch counts as dc), join in top of beg ch. 12 dc", [12]),
    ("a stitch count by its name", "us", "Rnd 1: 14 sc in magic ring. Stitch count: 14\nRnd 2: Ch 1, 2 sc blo in each st; sl st. Stitch count: 28", [14, 28]),
    ("between dashes", "us", "Rnd 1: MR, 10 sc, sl st to first sc. -10 sc-\nRnd 2: Ch 1, 2 sc in ea sc, sl st to first sc. -20 sc-", [10, 20]),
    ("spaces with their chains", "uk", (
        "Row 1: 11 ch, 1 tr in 4th ch from hook, 1 tr in each ch to end. [9 tr]\n"
        "Row 2: 4 ch (counts as 1 tr, 1 ch), turn, 1 tr in st at base, *1 ch, miss 1 tr, 1 tr in next tr; rep from * to end, 1 ch, 1 tr in same place as last tr. [7 tr, 6 1ch-sps]"), [9, 7]),
    ("at the base of the chain, and to the last", "uk", "1. 3 tr in magic ring. 3 sts.\n2. 3 ch, turn, 1 tr in st at base, 1 tr in each st to last, 2 tr in last st. 5 sts.\n3. As row 2, increasing by 2 each time. 7 sts.", [3, 5, 7]),
    ("a part before the label", "uk", "Cuff, Round 1: 33 dc in magic ring. (33 dc)\nCuff, Round 2: 1 ch, *1 dc in each of next 9 dc, dc2tog; rep from * to end, ss. (30 dc)", [33, 30]),
    ("a named row that decreases", "us", "RIGHT FRONT Row 1: Ch 30, hdc in 3rd ch from hook and in each ch to end. [28 hdc]\nV-neck dec row: Ch 2, turn, hdc to last 3 sts, hdc2tog, hdc in last st. [27 hdc]", [28, 27]),
    ("ends of rows of a part", "us", "Cuff Row 1: Ch 13, sc in 2nd ch from hook and in each ch across, turn [12]\nRows 2-20: Ch 1, sc in blo across, turn [12]. Sl st the two short ends together.\nHand Rnd 1: Ch 1, 1 sc in end of every cuff row [20] Work in a spiral from here.", [12, 20]),
    ("rows in another colour", "us", "Row 1: Ch 11, sc in 2nd ch from hook and in each ch across. 10 sc\nRow 2: Ch 1, turn, 2 sc in first st, sc in each st to end. 11 sc\nRow 3: Colour B, as Row 2. 12 sc\nRows 4 & 5: Change to next color. Work as for Row 2, then as for Row 2. 14 sc", [10, 11, 12, 13, 14]),
    ("a colour in brackets before a star", "us", "Rnd 1. (A) 60 sc in magic ring. (60)\nRnd 2. (A) *9 sc, inc; rep from * 5 more times. (66)\nRnd 3. (B) *9 sc, dec; rep from * around. (60)", [60, 66, 60]),
    ("in every space from the one joined into on", "us", "Rnd 1: 16 dc in magic ring, join. (16 dc)\nRnd 2: Join in any sp between 2 dc. (Sc, ch 1) in each sp between dc around, sl st to first sc. (16 sc)", [16, 16]),
    ("told in a sentence", "us", (
        "Round 1: Start with a magic ring. Chain 3 (this counts as your first double crochet) and work 11 more double crochets into the ring. Slip stitch to the top of the chain 3. You should have 12 stitches.\n"
        "Round 2: Chain 3, then put one more dc in that very same stitch. Now work 2 dc in every stitch around and join. You should have 24 stitches.\n"
        "Round 3: Chain 3, dc in the same stitch, dc in the next one. From here *2 dc in the next stitch, 1 dc in the one after* the whole way round and join. You should have 36 stitches."), [12, 24, 36]),
    ("so many after that", "us", "Row 1: Chain 7 and sc in the second chain from the hook and the 5 chains after that. 6 stitches.", [6]),
    ("shortened words", "us", "Row 1: Ch 27, sc in 2nd ch from hk and ea ch across: 26 sc.", [26]),
    ("marked spaces", "us", (
        "Rnd 1: Ch 24, join. Ch 3 (counts as dc), dc in next 4 ch, (dc, ch 2, dc) in next ch, *dc in next 5 ch, (dc, ch 2, dc) in next ch; rep from * twice more, join. (28 dc)\n"
        "Rnd 2: Ch 3, dc in each dc around, working (2 dc, ch 2, 2 dc) in each marked ch-2 sp and moving markers up as you go, join. (44 dc)"), [28, 44]),
    ("blocks over blocks", "us", "Row 1: Ch 15, dc in 4th ch from hook and in each ch across. (13 dc)\nRow 2: Ch 3, turn, dc in next 3 dc (blk over blk), [ch 2, sk 2 dc, dc in next dc] twice, dc in last 3 dc. (2 blks, 2 sps)", [13, 9]),
    ("what the first is made of", "uk", "Round 1: 10 dc in magic ring. (10 dc)\nRound 2: *1 dc in next st, 5 ch, miss 1 st; rep from * round, ss to first dc. (5 loops)\nRound 3: Ss into loop, 7 tr in each loop round (first tr is 3 ch), ss. (35 tr)", [10, 5, 35]),
    ("between the stars once more", "us", "Rnd 1: 24 sc in magic ring. (24 sc)\nRnd 2: *Sc in next 3 sts, 2 sc in next st,* sc in next 4 sts, rep between *s once more, sc in last 12 sts. (26 sc)", [24, 26]),
    ("joined between groups, and worked there first", "us", "Rnd 1: 16 dc in magic ring, join. (16 dc)\nRnd 2: Join in any sp between 2 dc. *(Sc, ch 1) in sp between dc; rep from * around, sl st to first sc. (16 sc)", [16, 16]),
]


@pytest.mark.parametrize(("terms", "text", "counts"), [t[1:] for t in TOLD], ids=[t[0] for t in TOLD])
def test_it_comes_to_what_it_says(terms: str, text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text + "\n"), terms)
    last = {row.label or row.span.start: row for row in report.rows if set(row.made) - {"ch"}}
    made = [row.counts[0] for row in last.values()]
    assert (made[: len(counts) - 1], made[-1]) == (counts[:-1], counts[-1])
    assert [f for f in report.findings if f.code[0] == "W"] == []


def test_a_note_about_a_group_is_no_group() -> None:
    report = check_source(Source.of(DISC + "Rnd 2: Ch 3 (counts as dc (here and below)), dc in same st, 2 dc in each st around, join. (24 dc)\n"), "us")
    assert (report.rows[-1].counts, report.rows[-1].agrees) == ((24,), True)


def test_do_not_is_said_shortly_too() -> None:
    told = [check_source(Source.of(f"Row 1: Ch 11, sc in 2nd ch from hook and in each ch across. {how}\n"), "us") for how in ("Do not turn.", "Don't turn.", "Don’t turn.")]
    assert [[f.code for f in report.findings] for report in told] == [[], [], []]


CORNER = (
    "Row 1: Ch 6. Dc in 4th ch from hook and in next 2 ch. Turn. (1 block)\n"
    "Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch; (sl st, ch 3, 3 dc) in ch-3 sp of Row 1 block. Turn. (2 blocks)\n"
    "Row 3: Ch 6, dc in 4th ch from hook and in next 2 ch; *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * once more. Turn. (3 blocks)\n"
)
FEWER = (
    "Begin decreasing on both sides:\n"
    "Row 9: Sl st in each of first 3 dc, (sl st, ch 3, 3 dc) in ch-3 sp, *(sl st, ch 3, 3 dc) in ch-3 sp of next block; rep from * to last block, sl st in ch-3 sp of last block (no block made). Turn. (7 blocks)\n"
    "Rows 10-15: Rep Row 9, with 1 less block each row.\n"
)


@pytest.mark.parametrize("grows", ["Cont increasing by one block in each row.", "Rep Row 3, with one more block each row."])
def test_blocks_from_corner_to_corner_and_back(grows: str) -> None:
    report = check_source(Source.of(f"{CORNER}Rows 4-8: {grows} (8 blocks)\n{FEWER}"), "us")
    assert [(row.made.get("block") or row.made["group"])[0] for row in report.rows] == [1, 2, 3, 4, 5, 6, 7, 8, 7, 6, 5, 4, 3, 2, 1]
    assert [f for f in report.findings if f.code[0] == "W"] == []


FLAT = "Row 1: Ch 21, sc in 2nd ch from hook and in each ch across. (20 sc)\n"
ROUND = "Rnd 1: 20 sc in magic ring. (20)\n"


@pytest.mark.parametrize(("text", "counts"), [
    ((f"{FLAT}Row 2: Ch 1, turn, 2 sc in first st, sc in each st to last st, 2 sc in last st. (22 sc)\nRow 3: Ch 1, turn, sc in each st. (22 sc)\n"
      "Rows 4-9: Continue as established, inc 2 sts every other row. (28 sc)"), [24, 24, 26, 26, 28, 28]),
    (f"{FLAT}Row 2: Ch 1, turn, 2 sc in first st, sc in each st to last st, 2 sc in last st. (22 sc)\nRows 3-6: Continue as established, inc 2 sts every other row. (26 sc)", [22, 24, 24, 26]),
    (f"{FLAT}Rows 2-9: Sc in each st, inc 1 st at each end of every other row. (28 sc)", [20, 22, 22, 24, 24, 26, 26, 28]),
    (f"{FLAT}Rows 2-9: Work in sc, increasing 1 st at each end of every even row. (28 sc)", [22, 22, 24, 24, 26, 26, 28, 28]),
    (f"{ROUND}Rnds 2-7: Cont as established, inc 2 sts for thumb on every even rnd. (26)", [22, 22, 24, 24, 26, 26]),
    (f"{ROUND}Rnds 2-7: Cont in sc, inc 2 sts on every odd rnd. (26)", [20, 22, 22, 24, 24, 26]),
], ids=["every other, after a plain row", "every other, after a shaped row", "every other, told with the stitch", "every even row", "every even round", "every odd round"])
def test_shaping_every_second_row_of_a_range(text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text + "\n"), "us")
    assert [row.counts[0] for row in report.rows][-len(counts) :] == counts
    assert [f for f in report.findings if f.code[0] == "W"] == []
