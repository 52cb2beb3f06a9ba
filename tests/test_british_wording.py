"""Rows as British leaflets and needlework books word them: each with the counts that a maker would get, worked out by hand. All lines are our own."""

from __future__ import annotations

import pytest

from loopwright.model.report import Report
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

RING = "Make 8 chain, join.\n1st round.—16 D.C. in the ring.\n"
LOOPS = RING + "2nd round.—* 3 chain, miss 1, 1 D.C. on the next; repeat from * all round.\n"
FLAT = "Make 31 chain.\n1st row.—Miss 1, 1 D.C. on each.\n"
RIB = "Make 10 chain.\n1st row.—Miss 1, 9 D.C.\n2nd row.—Turn, 1 chain, 4 D.C., 3 D.C. in the next, 4 D.C.\n3rd row.—Turn, 1 chain, 5 D.C., 3 D.C. in the centre stitch, 5 D.C.\n"
MESH = "Make 26 chain.\n1st row.—Miss 1, 1 D.C. on each.\n2nd row.—Turn with 4 chain, * miss 1, 1 treble on the next, 1 chain; repeat from * to the end.\n"
HAT = "Make 4 ch. and join into a ring.\n1st rd.: 8 d.c. in ring.\n2nd rd.: 2 d.c. in every st.\n"
SLEEVE = "Make 22 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. 21 dc.\n"
FANS = (
    "Make 8 ch., join.\n1st row: 3 ch., 31 tr. into ring, s.s. into 3rd of 3 ch.\n"
    "2nd row: 1 s.s. into next tr., 3 ch., 1 tr., 2 ch., 2 tr. into same place (a starting shell), * 3 ch., miss 3 tr., 5 tr. into next tr., 3 ch., miss 3 tr., "
    "2 tr., 2 ch., 2 tr. into next tr. (a shell made); rep. from * twice more, 3 ch., miss 3 tr., 5 tr. into next tr., 3 ch., s.s. into 3rd of 3 ch.\n"
    "3rd row: A starting shell into sp. of first shell, * 3 ch., 1 d.c. into first of 5 tr., (3 ch., 1 d.c. into next tr.) 4 times, 3 ch., shell into sp. of next shell; "
    "rep. from * all round, omitting shell at end of last rep., 1 s.s. into 3rd of 3 ch.\n"
    "4th row: A starting shell over shell, * 3 ch., miss 3 ch. sp., 1 d.c. into first loop of pineapple, (3 ch., 1 d.c. into next loop) 3 times, 3 ch., shell over next shell; "
    "rep. from * as before.\n"
)
GROUPS = (
    "Make 8 ch., join.\n1st round: 24 d.c. into ring.\n2nd round: * 1 tr. into each of next 3 d.c., 2 ch., miss 1 d.c.; rep. from * all round.\n"
    "3rd round: * 5 tr. into next sp., 2 ch.; rep. from * all round.\n"
)
BACK = "BACK. Make 41 ch.\n1st row: 1 dc into 2nd ch from hook, 1 dc into each ch to end. 40 dc.\n2nd row: 1 ch, 1 dc into each dc to end.\n3rd row: 1 ch, 1 tr into each dc to end.\n"

OLD: list[tuple[str, str, list[int]]] = [
    ("a list behind the place it goes into", LOOPS + "3rd round.—In every 3 chain, 1 D.C., 1 treble, 2 chain, 1 treble, 1 D.C.\n4th round.—Under each 2 chain, 5 treble; join.", [16, 8, 32, 40]),
    ("what a round forms", LOOPS + "3rd round.—Into each space, 2 treble, 1 chain; this makes 8 groups.", [16, 8, 16]),
    ("a list for all round", RING + "2nd round.—1 treble, 1 chain, miss 1, all round.", [16, 8]),
    ("long as a stitch", "Make 26 chain.\n1st row.—Miss 1, 1 D.C. on each.\n2nd row.—Turn, 3 chain for the first long, * 1 chain, miss 1, 1 long on the next; repeat from *.\n3rd row.—Turn, 1 chain, 1 D.C. on each long and on each chain.", [25, 13, 25]),
    ("long all round", RING + "2nd round.—Long all round.\n3rd round.—Increase by working twice into every fourth stitch.", [16, 16, 20]),
    ("a chain between each", LOOPS + "3rd round.—In each 3 chain, 1 long, 2 chain, 1 long; 3 chain between each.", [16, 8, 16]),
    ("a chain between each petal", "Make 6 chain, join.\n1st round.—12 D.C. in the ring.\n2nd round.—5 treble in each.\n3rd round.—2 D.C. at the point of each of the 12 shells, 7 chain between each shell.", [12, 60, 24]),
    ("a round told by one repeat that ends with what is missed", "Make 5 chain, join.\n1st round.—7 chain, 1 plain in every stitch.\n2nd round.—5 plain, miss 3.\n3rd round.—Plain.\n4th round.—3 treble, 1 chain, miss 1.", [5, 25, 25, 18]),
    ("double long", RING + "2nd round.—2 double long in every stitch.\n3rd round.—1 D.C. on each double long.", [16, 32, 32]),
    ("both stitches and chains", RING + "2nd round.—1 long, 1 chain, miss 1, all round.\n3rd round.—1 D.C. in every stitch, both long and chain.", [16, 8, 16]),
    ("plain double crochet", RING + "2nd round.—Plain double crochet all round.\n3rd round.—Treble, slipping the wool through each bead.", [16, 16, 16]),
    ("rows by their ordinal alone", FLAT + "2nd row.—Turn, 1 ch., 1 treble on each.\n3rd row.—Turn, 1 ch., 1 D.C. on each.\n4th row.—As the second.\n5th row.—Like the 3rd.", [30, 30, 30, 30, 30]),
    ("groups in the spaces between groups", ("Make a chain of 24, and join round.\n1st round.—1 D.C. in each chain.\n2nd round.—* 3 long in the next, miss 2; repeat from * all round.\n"
     "3rd round.—3 long in each space between the groups.\n4th round.—Like the third."), [24, 24, 24, 24]),
    ("counted on from so many", HAT + "3rd round.—1 D.C. on each of 3, 2 D.C. on the 4th; repeat.\n4th round.—4 D.C., 2 D.C. on the 5th; repeat.", [8, 16, 20, 24]),
    ("a purl after every seventh", RING + "2nd round.—1 D.C. on each stitch, with a purl of 4 ch. after every fourth D.C.\n3rd round.—* 6 ch., 1 D.C. in the next purl; repeat from * all round.", [16, 16, 4]),
    ("between the leaves", LOOPS + "3rd round.—Under each 3 chain, 1 D.C., 5 treble, 1 D.C.; this forms 8 leaves.\n4th round.—* 6 chain, 1 D.C. at the back between the next two leaves; repeat from * all round.", [16, 8, 56, 8]),
    ("in the centre of each row", RIB + "4th to 8th rows.—As the 3rd row, always increasing in the centre.", [9, 11, 13, 15, 17, 19, 21, 23]),
    ("until a row of that number", RIB + "Go on thus, increasing 2 stitches in the middle of the row, until the 6th row, in which there will be 19 stitches.", [9, 11, 13, 15, 17, 19]),
    ("and so many under each chain", MESH + "3rd row.—Turn with 1 chain, 1 D.C. on each treble and 2 under each chain, but 5 under the centre chain.", [25, 13, 42]),
    ("what a chain stands for, told behind the row", FLAT + "2nd row.—Turn with 4 chain, * miss 1, 1 treble on the next, 1 chain; repeat from *. The 4 chain counts for a treble and 1 chain.", [30, 15]),
    ("some of the row left", FLAT + "2nd row.—Turn, 1 chain, 12 D.C.; leave the rest for the neck.\nWork 2 rows on these 12 stitches, then fasten off and sew to the other side.", [30, 12, 12, 12]),
    ("treble on treble", ("Make 24 chain.\n1st row.—Miss 3, 1 treble in each of the next 6, 5 chain, miss 5, 1 treble in each of the last 10.\n"
     "2nd row.—Turn back with 3 chain for the first treble, 9 treble on treble, 5 chain, 6 treble on the last 6."), [16, 16]),
    ("a chain between the corners", ("Make 4 chain, join.\n1st round.—* 2 long in the ring, 3 chain; repeat from * 3 times more, and join.\n"
     "2nd round.—2 long, 3 chain, 2 long in each corner space, and 2 chain between the corners; finish with a single crochet."), [8, 16]),
    ("slipped to the centre", LOOPS + "3rd round.—In each loop work 1 D.C., 5 treble, 1 D.C.\n4th round.—Single crochet to the centre of the first scallop, 1 D.C. on the centre treble, * 5 chain, 1 D.C. on the centre treble of next scallop; repeat from * 6 times more.",
     [16, 8, 56, 8]),
    ("shells on the D.C. between shells", ("Make a chain of 20, and join round.\n1st round.—1 D.C. on each chain.\n2nd round.—* 1 D.C., miss 1, 3 long in the next, miss 1; repeat from * all round.\n"
     "3rd round.—* 1 D.C. on the centre long of shell, 3 long in the next D.C.; repeat from * all round.\n4th round.—As the 3rd, but with 5 long in each shell.\n5th round.—As the 4th."), [20, 20, 20, 30, 30]),
]

UK: list[tuple[str, str, list[int]]] = [
    ("so many more on every round", HAT + "3rd rd.: * 1 d.c. in next st., 2 d.c. in next; rep. from * all round. Cont. in this way, inc. 8 d.c. on every round, until there are 40 d.c.", [8, 16, 24, 32, 40]),
    ("so many fewer in this way", HAT + "Dec. 4 sts. in this way on every round until 8 d.c. remain.", [8, 16, 12, 8]),
    ("on every alternate round", HAT + "Cont. inc. 4 d.c. on every alt. round in this way until there are 24 d.c. in the round.", [8, 16, 16, 20, 20, 24]),
    ("at each end of every row", SLEEVE + "Dec. 1 st. at each end of every row until 15 d.c. remain.", [21, 19, 17, 15]),
    ("nothing but the yarn behind it", SLEEVE + "Dec. 1 st. at each end of next and foll. alt. rows until 17 sts. remain. Fasten off.", [21, 19, 19, 17]),
    ("in this way until so many", SLEEVE + "Dec. 1 d.c. at each end of next row.\nCont. dec. in this way on every row until 13 d.c. remain.", [21, 19, 17, 15, 13]),
    ("rows on these stitches", SLEEVE + "For edge work 2 rows on these sts. S.S. to next d.c. Fasten off.", [21, 21, 21]),
    ("the stitch below the chain", "Make 31 ch.\n1st row.—Miss 3 ch., 1 tr. into each ch. to end, turn.\n2nd row.—3 ch., miss 1 tr., 1 tr. into each tr. to end, 1 tr. into top of 3 ch., turn.", [29, 29]),
    ("the first dc passed over", SLEEVE + "2nd row: 3 ch, miss first dc, * 1 tr into next dc, 1 dc into next dc; rep from * to end.\n3rd row: 3 ch, miss first dc, * 1 dc into next tr, 1 tr into next dc; rep from * to end. 21 sts.", [21, 21, 21]),
    ("into the stitch a pattern begins in", SLEEVE + "2nd row: 1 ch, 1 dc into each dc.\nShape: SS over first 3 sts and into next st, patt to last 3 sts, turn. 15 sts.", [21, 21, 15]),
    ("a bridge behind missed stitches", HAT + "Next round: Miss first 5 d.c. for thumb, make 2 ch., 1 d.c. into each remaining d.c.", [8, 16, 11]),
    ("a strap on its chain", SLEEVE + "Strap: Make 9 ch. and work in d.c. until strap measures 40 cm.", [21, 8]),
    ("a strap with its stitches told", SLEEVE + "Strap: Make 12 ch. Work in d.c. (11 d.c. to each row) for 25 cm.", [21, 11]),
    ("V's", ("Make 25 ch.\n1st row: (1 tr., 1 ch., 1 tr.) into 5th ch. from hook (a V made), * miss 2 ch., (1 tr., 1 ch., 1 tr.) into next ch.; rep. from * to last 2 ch., miss 1 ch., 1 tr. into last ch., turn. 7 V's.\n"
     "2nd row: 3 ch., a V into 1-ch. sp. of each V to end, 1 tr. into top of turning ch. 7 V's.\n3rd row: As 2nd row."), [16, 16, 16]),
    ("rows of another piece", BACK + "FRONT. Make 21 ch. Work 1st row as for back. 20 dc.\nWork 2nd and 3rd rows as given for Back.", [40, 40, 40, 20, 20, 20]),
    ("so many instead", GROUPS + "4th round: As 3rd round, working 3 tr. in each space instead of 5.\n5th round: As 3rd round, but with 7 tr. in each space.", [24, 18, 30, 18, 42]),
    ("a number instead", FANS + "5th row: As 4th row, having 2 instead of 3 in brackets.", [32, 36, 36, 32, 28]),
    ("a loop less each time", FANS + "5th and 6th rows: Continue in this manner, having 1 loop less on each pineapple on every row, until 1 loop remains on each.", [32, 36, 36, 32, 28, 24]),
    ("clusters told by what is left on the hook", GROUPS + "4th round: * Leaving the last loop of each on hook work 3 tr. into next sp., thread over and draw through all loops on hook (a cluster made), 3 ch.; rep. from * all round.", [24, 18, 30, 6]),
    ("filet begun with its chain", ("Commence with 35 ch.\n1st Row: 1 tr. into 8th ch. from hook, * 2 ch., miss 2 ch., 1 tr. into next ch.; rep. from * to end, 5 ch., turn. (10 sps.)\n"
     "2nd Row: 1 sp., 2 blks., 4 sps., 2 blks., 1 sp., 5 ch., turn.\n3rd Row: 1 sp., 2 blks., 4 sps., 2 blks., 1 sp., 5 ch., turn.\n4th Row: 10 sps. Fasten off."), [11, 19, 19, 11]),
]


def worked(text: str, terms: str) -> Report:
    return work(read(Source.of(text), terms))


def counts(text: str, terms: str) -> list[int | None]:
    return [r.counts[0] for r in worked(text, terms).rows if r.made and set(r.made) != {"ch"}]


@pytest.mark.parametrize(("text", "made"), [case[1:] for case in OLD], ids=[case[0] for case in OLD])
def test_needlework_books(text: str, made: list[int]) -> None:
    assert counts(text, "old") == made


@pytest.mark.parametrize(("text", "made"), [case[1:] for case in UK], ids=[case[0] for case in UK])
def test_leaflets(text: str, made: list[int]) -> None:
    assert counts(text, "uk") == made


@pytest.mark.parametrize(("text", "terms"), [
    (UK[10][1], "uk"), (UK[8][1], "uk"),
    ("Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across. (20)\nRow 2: Ch 1, 4 sc in first 4 sts, 12 dc over next 12 sts, 4 sc in last 4 sts, turn. (20)\n", "us"),
])
def test_right_counts_are_no_errors(text: str, terms: str) -> None:
    assert not [f for f in check_source(Source.of(text), terms).findings if f.code == "W001"]


def test_a_count_of_the_last_row_is_compared() -> None:
    report = worked(RIB + "4th and 5th rows.—Like the 3rd, increasing 4 at the centre, so that the 5th row has 22 D.C.", "old")
    assert report.rows[-1].counts == (21,)
    assert [f.code for f in report.findings] == ["W001"]


def test_what_is_otherwise_and_not_understood_is_taken_from_the_print() -> None:
    report = worked(GROUPS + "4th round: As 3rd round, but with some more tr. in the corners. (50 tr.)", "uk")
    assert [(f.code, f.severity) for f in report.findings] == []
    assert (report.rows[-1].counts, report.rows[-1].agrees) == ((50,), None)


@pytest.mark.parametrize("text", ["1st row.—Along the long side work 12 D.C.", "Cut a strip 3 inches long.", "1st row.—With V, 12 D.C.\n2nd row.—1 D.C. on each."])
def test_words_that_are_no_stitches(text: str) -> None:
    assert not any(kind in ("tr", "v-st") for r in worked(RING + text, "old").rows for kind in r.made or ())


def test_what_is_left_as_it_was_slipped_over_is_meant() -> None:
    text = "Make 32 ch.\n1st row.—1 tr. into 4th ch. from hook, 1 tr. into each ch. to end, turn.\n2nd row.—S.S. over 3 tr. and into next tr., 3 ch., 1 tr. into each tr. to last 3 tr., turn."
    assert counts(text, "uk") == [30, 24]
    assert worked(text, "uk").findings == ()
