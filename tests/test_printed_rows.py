"""Rows as printed leaflets word them, American and British: each with the counts that a maker would get, worked out by hand. All lines are our own."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

RING = "Ch 4, join.\nRnd 1: 12 sc in ring.\n"
FLAT = "Make 42 ch.\n1st row: 1 tr into 4th ch from hook, 1 tr into each ch to end. 40 tr.\n"
ROSE = "Ch 6, join.\nRnd 1: 16 sc in ring.\nRnd 2: * Ch 3, skip 1 sc, sc in next sc; rep from * around.\nRnd 3: In each loop work 1 sc, 3 dc, 1 sc.\n"
SQUARE = (
    "Make 5 ch, join with ss.\n1st round: 3 ch, 2 tr into ring, (2 ch, 3 tr into ring) 3 times, 2 ch, ss to top of 3 ch.\n"
    "2nd round: Ss to corner sp, (3 ch, 2 tr, 2 ch, 3 tr) into same sp, * 1 ch, (3 tr, 2 ch, 3 tr) into next corner sp; rep from * twice more, 1 ch, ss to top of 3 ch.\n"
    "3rd round: Ss to corner sp, (3 ch, 2 tr, 2 ch, 3 tr) into same sp, * 1 ch, 3 tr into next 1 ch sp, 1 ch, (3 tr, 2 ch, 3 tr) into corner sp; rep from * twice more, 1 ch, 3 tr into last sp, 1 ch, ss to top of 3 ch.\n"
)
SOLID = (
    "Make 5 ch, join with ss.\n1st round: 3 ch, 3 tr into ring, 2 ch, (4 tr into ring, 2 ch) 3 times, ss to top of 3 ch.\n"
    "2nd round: 1 tr into each tr, and 2 tr, 2 ch, 2 tr into each 2 ch sp, beginning with 3 ch for first tr and ending with a ss (8 tr on each side).\n3rd round: As 2nd round.\n"
)

US: list[tuple[str, str, list[int]]] = [
    ("so many in every third, the others plain", RING + "Rnd 2: 2 sc in every 3rd sc around.\nRnd 3: 2 sc in every fourth st.", [12, 16, 20]),
    ("one in every other, the others passed over", RING + "Rnd 2: Sc in every other st around.", [12, 6]),
    ("the last one left unworked", ("Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch. (30 sc)\n"
     "Row 2: Ch 1, skip first sc, sc in next 6 sc, * 3 sc in next sc, sc in next 6 sc, skip 2 sc, sc in next 6 sc; rep from * across, ending with 3 sc in next sc, sc in next 6 sc, leave last sc unworked."), [30, 30]),
    ("working back of petals", ROSE + "Rnd 4: Working back of petals, * ch 5, sc around next sc of rnd 2; rep from * around.\nRnd 5: In each loop work 1 sc, 5 dc, 1 sc.", [16, 8, 40, 8, 56]),
    ("an ending that tells the end of its round again", ("Ch 5, join.\nRnd 1: 24 sc in ring, join.\n"
     "Rnd 2: Sc in first sc, * (ch 3, skip 1 sc, sc in next sc) twice, ch 4, skip 1 sc, dc in next sc, ch 4, skip 1 sc, sc in next sc; rep from * around, ending ch 4, skip 1 sc, dc in next sc, ch 4, join."), [24, 12]),
    ("the last side", ("Ch 4, join.\nRnd 1: 40 sc in ring, join.\n"
     "Rnd 2: Ch 5, dc in same place, * (ch 1, skip 1 sc, dc in next sc) 4 times; ch 1, skip 1 sc, in next sc (center sc of corner) make dc, ch 2 and dc. Rep from * around, ending the last side with ch 1, skip 1 sc, sl st in 3rd st of ch-5 first made."), [40, 24]),
    ("care with the increases", RING + "Rnds 2 through 4: Inc 6 sc in each rnd, being careful not to have incs directly over each other.", [12, 18, 24, 30]),
    ("so many between the increases", RING + "Rnd 2: * Sc in next sc, 2 sc in next sc; rep from * around.\nRnd 3: Same as Rnd 2, having 2 sc between incs - 24 sc.", [12, 18, 24]),
    ("rows up to one, and that one", "CH 21.\nROW 1. SC IN 2ND CH FROM HOOK AND IN EACH CH ACROSS. CH 1, TURN.\nROWS 2 TO 4 INC. SC IN EACH SC, CH 1, TURN.", [20, 20, 20, 20]),
    ("how a popcorn is made", ("Ch 4, join.\nRnd 1: 12 sc in ring, join.\nRnd 2: Ch 3, popcorn st in next sc (4 dc in one st, drop loop, insert hook in first of the 4 and draw loop through), "
     "* dc in next sc, popcorn in next sc; rep from * around, join."), [12, 12]),
    ("what is missed begins below the chain", "Ch 32.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 4, skip 2 sc, dc in next sc, * ch 1, skip 1 sc, dc in next sc; rep from * across, turn.\nRow 3: Ch 1, sc in each dc and in each ch-1 sp, sc in 3rd of ch-4.", [31, 16, 31]),
    ("what is missed begins behind the chain", "Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 4, skip 2 sc, dc in next sc, * ch 1, skip 1 sc, dc in next sc; rep from * across, turn.", [30, 15]),
    ("holding back, worked off as one", ("Ch 4, join.\nRnd 1: 6 sc in ring, join.\nRnd 2: 3 sc in each sc, join.\n"
     "Rnd 3 - Ch 5, holding back last lp of each dc, dc in each of next 3 sc, work off as one - * ch 5, work next 3 sc off as one - rep from * around, ch 5 - join."), [6, 18, 6]),
    ("across so many only", "Ch 31 (35).\nRow 1: Sc in 2nd ch from hook and in each ch across. There are 30 (34) sc.\nRow 2: Work across first 12 (14) sts only. Turn.", [30, 12]),
    ("a repeat that ends between the last two", ("Ch 6, join.\n1st rnd: Ch 3, d c in ring, (ch 1, 2 d c in ring) 5 times; ch 1, join in top of ch-3.\n"
     "2nd rnd: Sl st to ch-1 sp, ch 3, in same sp make d c, ch 1 and 2 d c; in each following sp make 2 d c, ch 1 and 2 d c. Join.\n"
     "3rd rnd: Sl st to corner sp, ch 3, in same sp make d c, ch 1 and 2 d c; * 2 d c in sp between next 2 groups, 2 d c, ch 1 and 2 d c in next corner sp. Repeat from * around, ending with 2 d c between last 2 groups. Join.\n"
     "4th rnd: Work as for 3rd rnd, making 2 d c in each of the 2 sps along sides between corners. Join."), [12, 24, 36, 48]),
]
UK: list[tuple[str, str, list[int]]] = [
    ("a count before the chain to turn with", "Make 25 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. in every ch. (24 d.c.), 1 ch., turn.\n2nd row: 1 d.c. in each d.c. (24 d.c.) 3 ch. and turn.\n3rd row: Miss first d.c., 1 tr. into each d.c.", [24, 24, 24]),
    ("the last into the turning chain", FLAT + "2nd row: 3 ch, miss first tr, 1 tr into each tr, ending with 1 tr into 3rd of 3 ch.\n3rd row: 3 ch to count as first tr, miss first tr, 1 tr into each tr, 1 tr into 3rd of 3 ch.", [40, 40, 40]),
    ("round the stem of a row further down", ("Make 6 ch, join with ss.\n1st row: 14 dc into ring.\n2nd row: * 4 ch, miss 1 dc, 1 dc into next dc; rep from * all round.\n3rd row: Into each loop work 1 dc 1 hlf tr 3 tr 1 hlf tr and 1 dc.\n"
     "4th row: * 6 ch, inserting hook from behind work 1 dc round stem of next dc on 2nd row; repeat from * ending with 1 ss at base of first 6 ch."), [14, 7, 49, 7]),
    ("so many groups on each side", SQUARE + "4th round: As 3rd round, but having 2 groups of 3 tr between corners on each side.\n5th and 6th rounds: Continue thus, working one more group on every side each round.", [12, 24, 36, 48, 60, 72]),
    ("into the slip stitch that joined", "Make 4 ch., join in ring.\n1st rnd. - 3 ch. (= 1 tr.), 9 tr. in ring, s.s. in top of 3 ch.\n2nd rnd. - 3 ch., 1 tr. in s.s., 2 tr. in each tr., s.s. (20 tr.).\n3rd and 4th rnds. - Work 10 more tr. in each rnd. (40 tr. in last rnd.).", [10, 20, 30, 40]),
    ("to the last so many of a kind", FLAT + "2nd row: Ss across first 5 tr, work to last 5 tr, turn.\n3rd row: As 2nd row.", [40, 30, 20]),
    ("the last told in brackets", FLAT + "2nd row: 3 ch, miss first tr, 1 tr into each tr to end (the last into the 3 ch), turn.", [40, 40]),
    ("a count before the round is joined", "Make 25 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. 24 dc.\n2nd row: 1 ch, 1 dc into each of first 8 dc, (miss 1 dc, 1 dc into next dc) 4 times, 1 dc into each of last 8 dc. 20 dc. Do not turn, join into a round with ss.", [24, 20]),
    ("until so many on each of the sides", SOLID + "Continue thus until there are 20 tr on each of the four sides between corner sps.\n"
     "BORDER - 1st round: 1 dc into corner sp, * (5 ch, miss 3 tr, 1 dc into next tr) 5 times, 5 ch, 1 dc into corner sp; rep from * all round, ending last side with 5 ch, ss to first dc (24 loops).\n"
     "2nd round: Ss to centre of first loop, 1 dc into loop, * 5 ch, 1 dc into next loop; rep from * all round, 5 ch, ss to first dc.", [16, 32, 48, 24, 24]),
]

ON: list[tuple[str, str, str, list[int]]] = [
    ("straight on so many", "uk", FLAT + "Cont on these 40 sts without shaping until work measures 6 in.\nWork 1 row. Fasten off.", [40, 40, 40]),
    ("in pattern without decreasing", "uk", FLAT + "Dec 1 tr at each end of next row.\nWork in pattern without decreasing until armhole is 4 inches, ending at armhole edge.", [40, 38, 38]),
    ("the pattern row again", "uk", "Make 21 ch.\nFoundation row: 1 htr in 3rd ch from hook, 1 htr in each ch to end. 20 sts.\nPatt row: 2 ch, miss first htr, 1 htr in each st to end, working last htr in top of 2 ch.\nRep patt row, working 2 rows C, 2 rows M throughout, until back measures 20 cm.", [20, 20, 20]),
    ("keeping the pattern", "us", "Ch 31.\nRow 1: Sc in 2nd ch from hook and in each ch.\nKeeping pat as established, dec 1 st each end of next 3 rows.", [30, 28, 26, 24]),
    ("one and two in turn, as books say it", "old", ("Make 4 chain, and unite.\n1st round - 12 double crochet in the ring.\n2nd round - One in the first, two in the second, and so on all round.\n3rd round - Increase in every third stitch, which gives 24 stitches.\n4th round - Plain, without increase.\n"
     "Work two rounds of plain d.c.\nWork three rounds like the last."), [12, 18, 24, 24, 24, 24, 24, 24, 24]),
    ("in the centre, until so many rows are done", "old", ("Make 8 chain.\n1st row: Miss 1, 3 d.c., 3 d.c. in the next, 3 d.c.; turn with 1 chain.\n2nd row: 4 d.c., 3 d.c. in the centre stitch, 4 d.c.; turn with 1 chain.\n"
     "Continue in this manner, working always 3 d.c. in the centre stitch, until 5 rows are done, when there should be 17 stitches."), [9, 11, 13, 15, 17]),
    ("one over the other", "uk", "Make 21 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch.\n2nd row: 1 ch, * 1 dc into next dc, 1 tr into next dc, rep from * to end.\nRep this row twice, always working dc over tr and tr over dc.", [20, 20, 20, 20]),
    ("another piece up to a row", "us", "BACK: Ch 21.\nRow 1: Hdc in 3rd ch from hook and in each ch to end (19 hdc).\nRow 2: Ch 2, turn. Hdc in each hdc.\nFLAP: Dec 1 hdc each end of next row.\nFRONT: Work same as Back through Row 2. End off.", [19, 19, 17, 19, 19]),
    ("turned and on in the same line", "uk", "Make 32 ch.\n1st row: Miss 1 ch, 1 dc into each ch.\n2nd row: 1 ch, 1 dc into each of 20 dc, turn; 1 ch, 1 dc into each of next 9 dc, turn.\nWork 2 more rows on these 9 dc for instep.", [31, 20, 9, 9, 9]),
    ("rounds more in the same manner", "old", "Make 24 chain, and unite.\n1st round : 1 long, 1 chain, miss 1, all round.\nWork two rounds more in the same manner.", [12, 12, 12]),
]


@pytest.mark.parametrize(("told", "terms", "text", "counts"), ON, ids=[t[0] for t in ON])
def test_rows_that_go_on(told: str, terms: str, text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text), terms)
    assert [r.counts[0] for r in report.rows if set(r.made) != {"ch"}] == counts


def _check(text: str, terms: str, counts: list[int]) -> None:
    report = check_source(Source.of(text), terms)
    rows = [r for r in report.rows if r.label]
    assert [r.counts[0] for r in rows] == counts
    assert not [f for f in report.findings if f.code in ("W001", "W003", "N001", "N005")]


@pytest.mark.parametrize(("told", "text", "counts"), US, ids=[t[0] for t in US])
def test_american(told: str, text: str, counts: list[int]) -> None:
    _check(text, "us", counts)


@pytest.mark.parametrize(("told", "text", "counts"), UK, ids=[t[0] for t in UK])
def test_british(told: str, text: str, counts: list[int]) -> None:
    _check(text, "uk", counts)


@pytest.mark.parametrize("lead", ["BACK: Using 2 strands held together, ch 41.", "With three strands of yarn held together, make 41 ch.", "Beginning at heel, using wool double, make 41 ch."])
def test_with_how_many_strands_a_chain_is_made(lead: str) -> None:
    report = check_source(Source.of(lead + " Row 1: Hdc in 3rd ch from hook and in each ch to end (39 hdc)."), "us")
    assert [r.counts[0] for r in report.rows] == [41, 39]
