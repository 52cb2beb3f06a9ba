"""Rounds and rows as books and magazines before about 1930 told them, each with its count worked by hand. All lines are our own."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write as said_again
from loopwright.working import work
from tests.line_by_line import last_rows

PIECES = [
    ("old", [
        ("20 chain, join.", 20),
        ("1st round—Plain.", 20),
        ("2nd round—Increase two stitches.", 22),
        ("3rd round—Increase two stitches.", 24),
        ("4th round—Work two together all round.", 12),
    ]),
    ("old", [
        ("12 chain, join round.", 12),
        ("1st round.—24 treble in the ring, the first 3 chain standing for one.", 24),
        ("2nd round.—1 double on each treble.", 24),
        ("3rd round.—* 1 double, 6 chain, miss 2; repeat from * 7 times more.", 8),
        ("4th round.—In every loop of 6 chain work 1 double, 7 treble, 1 double.", 72),
    ]),
    ("uk", [
        ("Make 7 ch., join into a ring with a slip-stitch.", 7),
        ("1st round : Work 18 tr. into the ring.", 18),
        ("2nd round : 1 d.c. into every tr.", 18),
        ("3rd round : * 7 ch., 1 d.c. into every third stitch; repeat from *.", 6),
        ("4th round : 9 d.c. over each chain loop.", 54),
    ]),
    ("uk", [
        ("Commence with 60 chain.", 60),
        ("1st row : 1 treble into third ch., and 1 treble into every ch.", 58),
        ("2nd row : 3 ch., turn, miss 1 tr., 1 treble into each treble of last row.", 58),
        ("Work 10 rows like the second.", 58),
    ]),
    ("old", [
        ("Begin with a chain of eleven.", 11),
        ("1st row.—Miss one, and work ten double crochet. Turn.", 10),
        ("2nd row.—One chain, ten double crochet in the back threads.", 10),
        ("3rd row.—One chain, four double crochet, two in the next, two in the next, four double crochet.", 12),
        ("4th row.—One chain, five double crochet, two in each of two, five double crochet.", 14),
    ]),
    ("us", [
        ("Ch. 6; join.", 6),
        ("1st round: Ch. 1, 12 s. c. in ring, sl. st. in first s. c.", 12),
        ("2nd round: Ch. 4, * d. c. in next, ch. 1; repeat from * around; sl. st. in 3d of ch. 4.", 12),
        ("3d round: 2 s. c. under each ch. 1.", 24),
        ("4th round: S. c. in every stitch.", 24),
        ("5th round: Increase in every third stitch.", 32),
    ]),
    ("old", [
        ("For the border, make a chain of 80 stitches, join.", 80),
        ("1st round.—Double crochet.", 80),
        ("2nd round.—1 long, 1 chain, miss 1, repeat.", 40),
        ("3rd round.—Double crochet.", 80),
        ("4th round.—1 double crochet, 6 chain, miss 4, repeat all round.", 16),
    ]),
    ("old", [
        ("6 ch., close in a ring.", 6),
        ("1st row : 12 d.c.", 12),
        ("2nd row : 2 d.c. on every d.c.", 24),
        ("3rd row : plain.", 24),
        ("4th row : 2 d.c. on every other d.c.", 36),
        ("5th row : 2 d.c. on every third d.c., 1 on the others.", 48),
        ("6th to 9th row : plain.", 48),
    ]),
    ("uk", [
        ("Make a ch. of 100 sts.", 100),
        ("1st row.—1 d.c. in each ch.", 99),
        ("2nd row.—1 ch., turn; 1 d.c. in each st.", 99),
        ("3rd row.—1 tr., 2 ch., miss 2; repeat.", 33),
        ("4th row.—1 d.c. on each tr., 2 d.c. under each ch.", 99),
    ]),
    ("old", [
        ("Cast on 40 chain stitches.", 40),
        ("1st row, plain.", 40),
        ("2nd row, 2 plain, 2 gold, to the end.", 40),
        ("3rd row, 1 gold, * 3 plain, 1 gold, repeat from *, end with 3 plain.", 40),
    ]),
    ("old", [
        ("Make three chain, join them, and work two stitches in each.", 6),
        ("2nd row. Two stitches in every stitch.", 12),
        ("3rd row. Increase one in every second stitch.", 18),
    ]),
    ("us", [
        ("Make a ch. of 40 sts.", 40),
        ("1st row: D. c. in 4th st. from hook, d. c. in each st. across.", 38),
        ("2d row: Ch. 3, turn, d. c. in each d. c.", 38),
        ("3d, 4th and 5th rows: Same as 2d row.", 38),
    ]),
    ("uk", [
        ("Commence with 8 ch., join in a ring.", 8),
        ("1st round—Work 20 trebles in the ring, joining evenly.", 20),
        ("2nd round—5 ch. (to count as 1 tr. and 2 ch.), * 1 tr. on the next, 2 ch., repeat from * to the end, and join to the 3rd of 5 ch.", 20),
        ("3rd round—3 d.c. under every 2 ch.", 60),
        ("4th round—Increase by working 2 d.c. into every fifth stitch.", 72),
    ]),
    ("old", [
        ("Make a chain of twenty stitches, and join the two ends together.", 20),
        ("Work one round of double crochet.", 20),
        ("2nd round.—Increase in every stitch.", 40),
        ("3rd to 6th rounds.—Without increasing.", 40),
        ("7th round.—Take two stitches together all round.", 20),
    ]),
    ("us", [
        ("Ch 3.", 3),
        ("1st round—6 s. c. in 2d ch. from hook.", 6),
        ("2nd round—Increase in every stitch.", 12),
        ("3rd round—Increase in every other stitch.", 18),
        ("4th round—Increase in every 3rd stitch.", 24),
        ("5th round—Even.", 24),
        ("Work 8 rounds even.", 24),
    ]),
    ("old", [
        ("Chain 24.", 24),
        ("First row—Plain.", 24),
        ("Second row—Plain, increasing one at each end.", 26),
        ("Third row—Plain.", 26),
        ("Fourth row—Like the second.", 28),
        ("Fifth row—Like the third.", 28),
    ]),
    ("uk", [
        ("Begin with 12 chain and unite in a ring.", 12),
        ("1st row: 24 double crochet into the ring.", 24),
        ("2nd row: 3 chain for 1st treble, then 1 treble in each double crochet.", 24),
        ("3rd row: 3 chain, 1 treble into the same place, 2 trebles into each treble; join.", 48),
    ]),
    ("old", [
        ("15 ch., join.", 15),
        ("1st round: 30 d.c. under the chain.", 30),
        ("2nd round: 1 d.c., 8 ch., miss 4; repeat 5 times more.", 6),
        ("3rd round: 10 d.c. under every 8 ch.", 60),
        ("4th round: 1 d.c. on every d.c.", 60),
    ]),
    ("us", [
        ("Make a ring of 6 ch.", 6),
        ("1st row: 16 d. c. in ring, join.", 16),
        ("2d row: ch. 3, 2 d. c. between each d. c., join.", 32),
        ("3d row: * 5 ch., 1 s. c. between groups, repeat from * around.", 16),
    ]),
    ("old", [
        ("1st Row—50 chain.", 50),
        ("2nd Row—Double crochet.", 50),
        ("3rd Row—* 1 treble, 1 chain, miss 1, repeat.", 25),
        ("4th Row—Double crochet.", 50),
    ]),
    ("old", [
        ("Chain ten, unite.", 10),
        ("1st round: Two doubles in each stitch.", 20),
        ("2nd round: One double in each.", 20),
        ("3rd round: One double, three chain, miss one; repeat.", 10),
        ("4th round: One double in each loop, four chain; repeat.", 10),
        ("5th round: Five doubles in each loop.", 50),
    ]),
    ("uk", [
        ("Make 60 ch.; join.", 60),
        ("1st round: d.c. in each ch.", 60),
        ("2nd round: * 1 d.c., 5 ch., miss 2; repeat from * to end of round.", 20),
        ("3rd round: * 1 d.c. in 3rd of 5 ch., 5 ch.; repeat from *.", 20),
        ("4th to 9th rounds: Like 3rd round.", 20),
        ("10th round: 3 d.c. in each loop.", 60),
    ]),
    ("old", [
        ("Six chain, join.", 6),
        ("1st round.—3 chain, 17 treble in the round.", 18),
        ("2nd round.—3 chain, 1 treble in the same, 2 treble in every treble.", 36),
        ("3rd round.—* 7 chain, 1 double in third treble; repeat.", 12),
    ]),
    ("uk", [
        ("24 ch.", 24),
        ("1st row: 1 d.c. into 3rd ch. from hook, 1 d.c. into each ch. to end, turn.", 22),
        ("2nd row: 1 ch., 1 d.c. into each d.c., turn.", 22),
        ("Rep. 2nd row till 10 rows are done.", 22),
        ("11th row: 1 ch., take 2 d.c. together, 1 d.c. into each d.c. to last 2, take 2 d.c. together.", 20),
    ]),
    ("old", [
        ("4 chain, close.", 4),
        ("1st r.—8 plain in the round.", 8),
        ("2nd r.—2 plain in each.", 16),
        ("3rd r.—* 1 plain, 2 plain in next; repeat from *.", 24),
        ("4th r.—* 2 plain, 2 plain in next; repeat from *.", 32),
    ]),
    ("uk", [
        ("5 ch., join. Into the ring work 7 d.c.", 7),
        ("2nd round: 2 d.c. in each stitch.", 14),
        ("3rd round: * 2 d.c. into the first stitch, 1 d.c. in the next; repeat from * all round.", 21),
        ("4th round: * 2 d.c. into first stitch, 1 d.c. in next 2; repeat from *.", 28),
        ("Continue to work in this way until there are five stitches between the increasings.", 49),
    ]),
    ("us", [
        ("Rnd 1: 6 sc in magic ring. (6)", 6),
        ("Rnd 2: 2 sc in each st. (12)", 12),
        ("Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18)", 18),
        ("Continue increasing in the same way until there are 6 sts between increases.", 48),
    ]),
    ("old", [
        ("Commence with 24 chain.", 24),
        ("1st row—Miss the first chain, and work 23 single crochet; turn the work.", 23),
        ("2nd row—Do 1 chain, 23 single crochet; turn.", 23),
        ("Repeat the 2nd row ten times.", 23),
    ]),
    ("old", [
        ("Commence with 61 chain for the neck.", 61),
        ("1st row—Miss two chain, work 59 double crochet.", 59),
        ("2nd row—Turn with 1 chain, work 59 double crochet inserting the hook in the back threads.", 59),
        ("3rd row—1 treble on the first stitch, * 1 chain, miss 1, 1 treble on the next; repeat from * to the end of the row.", 30),
    ]),
    ("uk", [
        ("Begin by making 16 chain.", 16),
        ("1st row.—1 tr. in 3rd ch. from hook, 1 tr. in each remaining ch.; 2 ch., turn.", 14),
        ("2nd row.—1 tr. in each tr.; 2 ch., turn.", 14),
    ]),
    ("us", [
        ("Ch 5, sl st in 1st ch.", 5),
        ("1st row.—10 s c in ring.", 10),
        ("2nd row.—2 s c in every stitch.", 20),
        ("3rd row.—1 s c in every stitch.", 20),
        ("4th row.—2 s c in every 2nd stitch.", 30),
        ("5th row.—* 3 ch, miss 2, 1 s c in next. Repeat from * all around.", 10),
    ]),
    ("old", [
        ("Eight chain; form a round.", 8),
        ("1st round: Sixteen double crochet in the round.", 16),
        ("2nd round: One treble, three chain, miss one; repeat seven times more.", 8),
        ("3rd round: Four double crochet under each three chain.", 32),
    ]),
    ("uk", [
        ("Make 30 chain, join round.", 30),
        ("1st round. 1 treble in each chain.", 30),
        ("2nd round. 1 treble in each treble.", 30),
        ("3rd round. Decrease twice in the round.", 28),
        ("4th round. Plain trebles.", 28),
    ]),
    ("us", [
        ("Chain 100, turn.", 100),
        ("Single crochet in each stitch of chain, turn.", 99),
        ("2d row. Chain 1, single crochet in back loop of each stitch, turn.", 99),
        ("Repeat 2d row 8 times.", 99),
    ]),
    ("old", [
        ("13 chain.", 13),
        ("1st row. 12 double crochet. Turn back.", 12),
        ("2nd row. 11 double crochet, 2 in the last. Turn back.", 13),
        ("3rd row. 12 double crochet, 2 in the last. Turn back.", 14),
    ]),
    ("old", [
        ("12 chain; unite.", 12),
        ("1st round: 24 d.c. under the ring.", 24),
        ("2nd round: 1 long, 5 chain, miss 2 loops; repeat 7 times more.", 8),
        ("3rd round: 7 long under each 5 chain.", 56),
        ("4th round: 1 d.c. between the groups of 7 long, 8 chain; repeat.", 8),
    ]),
    ("uk", [
        ("Make a ring of 10 ch.", 10),
        ("1st round: 4 ch., 1 tr., * 1 ch., 1 tr.; repeat from * 17 times, 1 ch., join to 3rd ch.", 20),
        ("2nd round: 2 d.c. in each space.", 40),
        ("3rd round: 1 d.c. on each d.c., working in the back loops.", 40),
    ]),
    ("us", [
        ("Ch. 20, join.", 20),
        ("1st row. S. c. in each ch.", 20),
        ("2d row. S. c. around.", 20),
        ("3d row. Widen 5 times.", 25),
        ("4th row. S. c. without widening.", 25),
        ("5th row. Narrow 5 times in the round.", 20),
    ]),
    ("us", [
        ("Make a ch of 8, join in ring.", 8),
        ("First round—16 s c in ring.", 16),
        ("Second round—1 s c in first, 2 s c in next. Repeat around.", 24),
        ("Third round—1 s c in each of 2, 2 s c in next. Repeat around.", 32),
        ("Fourth to sixth rounds—1 s c in each s c.", 32),
    ]),
    ("uk", [
        ("Commence with 21 ch.", 21),
        ("1st row: 1 tr. in third ch. from needle, 1 tr. in every following ch.; turn.", 19),
        ("2nd row: 2 ch. (for a tr.), 1 tr. in every tr.; turn.", 19),
        ("3rd row: Miss the first tr., tr. in every tr. to the last, leave that one; turn.", 17),
    ]),
    ("old", [
        ("4 chain, unite.", 4),
        ("1st round.—Work 8 stitches.", 8),
        ("2nd round.—Work 16 stitches by making 2 in each.", 16),
        ("3rd round.—Increase 8 stitches.", 24),
        ("4th round.—Increase 8 stitches as before.", 32),
        ("5th round.—Work plain.", 32),
    ]),
]


@pytest.mark.parametrize(("terms", "lines"), PIECES, ids=[str(i) for i in range(len(PIECES))])
def test_pieces_of_old_books(terms, lines):
    for (line, wanted), row in zip(lines, last_rows([line for line, _ in lines], terms), strict=True):
        assert (row.counts[0] if row is not None else None) == wanted, line


MESHES = [
    [("Make 60 chain, unite.", 60), ("1st round: 1 long, 2 chain, miss 2; repeat.", 20), ("2nd round: 1 long, 2 chain, miss 2; repeat.", 20), ("3rd round: Double crochet.", 60), ("4th round: * 1 long, 4 chain, miss 4; repeat from *.", 12), ("5th round: 3 long, 2 chain, miss 2; repeat.", 36)],
    [("Make a chain of 90 stitches.", 90), ("1st row: 1 long, 2 chain, miss 2; repeat.", 30), ("2nd row: 1 long on long, 2 chain; repeat.", 30), ("3rd row: 1 double crochet on each long and 2 under each chain.", 90)],
]


@pytest.mark.parametrize("lines", MESHES)
def test_chains_are_counted_with_the_stitches(lines):
    assert [r.counts[0] for r in last_rows([line for line, _ in lines], "old")] == [n for _, n in lines]


def test_open_and_close_squares():
    lines = [
        "Materials.—Cotton, No. 20; crochet hook, No. 18; 64 chain. This pattern is worked in close and open squares.",
        "1st.—3 o., + 1 c., 2 o., 1 c., 2 o., + twice, 1 c., 2 o., 1 c., 2 o., 1 dc.",
        "2nd.—6 o., + 1 c., 4 o., + 3 times. 1 dc.",
    ]
    rows = last_rows(lines, "old")
    assert [rows[0].counts[0], rows[1].made["mesh"][0], rows[1].made["block"][0], rows[2].made["mesh"][0], rows[2].made["block"][0]] == [64, 21, 6, 21, 3]


def test_only_the_count_tells_what_was_below():
    lines = ["5th: 1 stitch into every loop.", "6th: Increase 1 stitch in every 2nd loop. There must be 48 stitches in this round.", "7th: Double crochet."]
    assert [r.counts[0] for r in last_rows(lines, "old")[1:]] == [48, 48]


def test_stitches_between_the_increases():
    lines = ["1st round: 5 d.c. in a magic ring.", "2nd round: 2 d.c. in each.", "3rd round: * 2 d.c. in first, 1 d.c. in next; repeat from *.", "Go on in this way until there are seven d.c. between the increases."]
    assert [r.counts[0] for r in last_rows(lines, "uk")] == [5, 10, 15, 45]
    text = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: *2 sc in next st, sc in next st; rep from * around. (9)\nContinue increasing in the same way until there are 4 sts between increases.\n"
    document = read(Source.of(text), "us")
    report = work(document)
    assert report.rows[-1].counts == (18,)
    assert "between increases" in said_again(document, report, terms="us")
    assert work(read(Source.of(said_again(document, report, terms="uk")))).rows[-1].counts == (18,)
