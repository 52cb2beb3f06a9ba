"""Whole pieces as books and magazines before about 1930 told them, each row with its count worked by hand. All lines are our own."""

import pytest

from loopwright.notation.bygone import bygone
from loopwright.shipped import shipped_table
from tests.line_by_line import last_rows

SAID = shipped_table("loopwright.notation", "bygone.toml")["said"]


@pytest.mark.parametrize("one", SAID, ids=lambda one: one["as_in"][:40])
def test_older_words_for_the_same_are_put_plainly(one):
    text, terms = one["as_in"], one.get("terms", "uk").split()[0]
    assert one["word"] in text.lower()
    plain = bygone(text, terms)
    assert plain != text
    assert len(plain) == len(text)
    if one.get("terms") == "old":
        assert bygone(text, "us") == text


def test_marks_and_numbers_of_old_printing():
    assert bygone("_2nd round_. 1 long.", "old") == " 2nd round . 1 long."
    assert bygone("2nd: X 1 white, 5 steel, X 4 times.", "old") == "2nd: * 1 white, 5 steel, * 4 times."
    assert bygone("Make one hundred and twenty-four chain.", "old").split() == ["Make", "124", "chain."]
    assert bygone("18 X 5 ch loops", "old") == "18 X 5 ch loops"
    assert bygone("Pattern No. 3.--Make 8 chain.", "uk").split() == ["Make", "8", "chain."]


PIECES = [
    (
        "old",
        [
            ("Make a chain of 10 stitches and unite.", 10),
            ("1st round: 3 ch., 23 tr. in ring; unite.", 24),
            ("2nd round: * 5 ch., miss 1, 1 d.c. in next; repeat from *.", 12),
            ("3rd round: 6 d.c. under each loop of 5 ch.", 72),
        ],
    ),
    (
        "old",
        [
            ("Commence with 7 chain, join in a circle.", 7),
            ("1st round: 16 d.c. in the circle.", 16),
            ("2nd round: 2 d.c. on each d.c.", 32),
            ("3rd round: 1 d.c. on first, 2 d.c. on next, all round.", 48),
            ("4th round: D.c. all round, increasing in every third stitch.", 64),
            ("5th round: D.c. without increasing.", 64),
            ("Work 6 rounds without increasing.", 64),
            ("12th round: 1 l., 1 ch., miss 1; repeat.", 32),
            ("13th round: 1 l. on each l., 2 ch. between.", 32),
            ("14th round: D.c.", 96),
        ],
    ),
    (
        "uk",
        [
            ("Begin with 6 ch., join round.", 6),
            ("1st row.—12 d.c. in the ring.", 12),
            ("2nd row.—2 d.c. in every stitch.", 24),
            ("3rd row.—1 d.c. in each d.c., taking up the back thread.", 24),
            ("4th row.—* 1 d.c., 4 ch., miss 1; repeat from * all round.", 12),
            ("5th row.—5 d.c. in each 4 ch. loop.", 60),
        ],
    ),
    (
        "old",
        [
            ("Make 40 chain.", 40),
            ("1st row: Double crochet.", 40),
            ("2nd row: The same.", 40),
            ("3rd row: 1 treble, 1 chain, miss 1; repeat to the end.", 20),
            ("4th row: Double crochet into every stitch and chain.", 40),
        ],
    ),
    (
        "old",
        [
            ("Work 5 chain, and close in a round.", 5),
            ("1st: 10 dc.", 10),
            ("2nd: Two in each.", 20),
            ("3rd: Increase in every second stitch.", 30),
            ("4th: Increase in every third stitch.", 40),
            ("5th: No increase.", 40),
        ],
    ),
    (
        "old",
        [
            ("8 chain, unite.", 8),
            ("1st round.—16 double under the chain.", 16),
            ("2nd round.—1 double on 1 double, 5 chain, miss 1, repeat.", 8),
            ("3rd round.—1 double in the centre of 5 chain, 6 chain; repeat.", 8),
            ("4th round.—Under each loop of 6 chain work 1 double, 5 treble, 1 double.", 56),
        ],
    ),
    (
        "uk",
        [
            ("Make 9 chain and form into a ring.", 9),
            ("1st round: 18 double crochet in ring.", 18),
            ("2nd round: 4 chain (to stand for 1 treble and 1 chain), * 1 treble in next, 1 chain; repeat from * 16 times, join to 3rd of 4 chain.", 18),
            ("3rd round: 2 double crochet in each space.", 36),
        ],
    ),
    (
        "us",
        [
            ("Ch. 4, join.", 4),
            ("1st row—8 s. c. in ring.", 8),
            ("2d row—2 s. c. in each st.", 16),
            ("3d row—* 1 s. c. in first, 2 s. c. in next; repeat from * around.", 24),
            ("4th row—Widen in every 3d st.", 32),
            ("5th row—Plain.", 32),
            ("6th row—1 s. c. in each stitch.", 32),
        ],
    ),
    (
        "us",
        [
            ("Chain 50.", 50),
            ("1st row—Skip 2, 1 s. c. in each stitch of chain.", 48),
            ("2d row—Ch. 1, turn, 1 s. c. in back loop of each stitch.", 48),
            ("Repeat 2d row until there are 20 rows.", 48),
        ],
    ),
    (
        "old",
        [
            ("Make a chain of one hundred stitches with black wool.", 100),
            ("Second row.—Amber.", 100),
            ("Third row.—4 black, 1 amber; repeat to the end of the row.", 100),
            ("Fourth row.—Black all along.", 100),
        ],
    ),
    (
        "old",
        [
            ("Make a chain of 12 stitches, join the ends.", 12),
            ("1st round.—One stitch in each.", 12),
            ("2nd round.—Two stitches in every loop.", 24),
            ("3rd round.—One stitch in each loop.", 24),
            ("4th round.—Work two stitches in every second loop.", 36),
            ("5th and 6th rounds.—Plain double crochet.", 36),
            ("7th round.—1 treble, 2 chain, miss 1 all round.", 18),
        ],
    ),
    (
        "old",
        [
            ("Make 6 chain, unite.", 6),
            ("1st round.—2 d.c. in every stitch.", 12),
            ("2nd round.—2 d.c. in one, 1 d.c. in next, all round.", 18),
            ("3rd round.—2 d.c. in one, 1 d.c. in each of two, all round.", 24),
            ("4th round.—Plain.", 24),
            ("5th round.—1 long, 2 chain, miss 1 all round.", 12),
            ("6th round.—1 long in each space, 3 chain after each.", 12),
        ],
    ),
    (
        "uk",
        [
            ("With black wool make 20 ch.", 20),
            ("1st row.—1 d.c. in 2nd ch., and 1 d.c. in every ch. to the end; turn.", 19),
            ("2nd row.—1 ch., 1 d.c. in each d.c., working into the back loop to form a rib.", 19),
            ("Repeat the second row 12 times.", 19),
        ],
    ),
    (
        "us",
        [
            ("Make a chain of 8 stitches; join in a ring.", 8),
            ("1st row.—Ch. 3, 15 d. c. in ring; sl. st. to top of ch. 3.", 16),
            ("2nd row.—Ch. 3, 1 d. c. in same place, * 2 d. c. in next; repeat from * around; join.", 32),
            ("3rd row.—* Ch. 5, skip 1 d. c., 1 s. c. in next; repeat from * all around.", 16),
            ("4th row.—* Ch. 6, 1 s. c. in next loop; repeat from *.", 16),
            ("5th row.—8 s. c. over each loop.", 128),
        ],
    ),
    (
        "old",
        [
            ("Make a chain of 16 stitches.", 16),
            ("1st row. Double crochet.", 16),
            ("2nd row. Double crochet, taking the back loop.", 16),
            ("3rd row. Increase 1 stitch at each end.", 18),
            ("4th row. Without increase.", 18),
            ("5th row. Increase 1 at the beginning and 1 at the end of the row.", 20),
        ],
    ),
    (
        "old",
        [
            ("9 ch., unite.", 9),
            ("1st round.—2 d.c. in each loop.", 18),
            ("2nd round.—* 6 ch., miss 2, 1 d.c. in next; repeat from * all round.", 6),
            ("3rd round.—9 d.c. in each loop of chain.", 54),
        ],
    ),
    (
        "uk",
        [
            ("Make a ring of 8 chain.", 8),
            ("1st row: 3 ch., 23 tr. into the ring, slip-stitch into top of 3 ch.", 24),
            ("2nd row: 4 ch., * 1 tr. on next tr., 1 ch.; repeat from * all round, join to third of 4 ch.", 24),
            ("3rd row: 2 d.c. into each space.", 48),
        ],
    ),
    (
        "old",
        [
            ("Commence with a chain of fourteen stitches, unite both ends.", 14),
            ("1st round: One d.c. in each.", 14),
            ("2nd round: Two d.c. in each.", 28),
            ("3rd round: One d.c. in the first, two d.c. in the next; repeat to the end of the round.", 42),
            ("4th round: One d.c. in each of two stitches, two in the third; repeat.", 56),
            ("5th, 6th, and 7th rounds: Plain.", 56),
        ],
    ),
]


@pytest.mark.parametrize(("terms", "lines"), PIECES, ids=[f"{i}" for i in range(len(PIECES))])
def test_pieces_of_old_books(terms, lines):
    for (line, wanted), row in zip(lines, last_rows([line for line, _ in lines], terms), strict=True):
        assert row is not None, line
        assert row.counts[0] == wanted, (line, row)


ONE_BREATH = [
    ("old", "Make a chain of 20 stitches, join and do two rounds in single crochet, increasing in every stitch in the first round, in every alternate in the second.", 60),
    ("old", "With blue make a chain of 11 stitches, join and work a round in single crochet, increasing in every stitch.", 22),
    ("old", "Make a chain of 90 stitches, and do one row in single crochet.", 90),
    ("old", "Make a chain of 70 stitches; work 4 rows in plain-stitch crochet.", 70),
    ("uk", "Form 8 ch into a ring, into which put 18 tr, and close the row with a s c into the 1st tr, 5 ch 1 tr into next tr, 2 ch 1 tr into each tr, 2 ch 1 s c into the 3rd of the 5 ch to close a row of 18 spaces.", 18),
    ("uk", "Make a slip-knot, and work into it 9 d.c., join with s.s.", 9),
    ("uk", "Begin with 4 ch. Into the first of the ch. make 7 d.c., and draw up the end of the thread so as to close the centre.", 7),
    ("us", "Wind the cord 8 times round a pencil, slip off, and cover the ring with 24 s.c.", 24),
]


@pytest.mark.parametrize(("terms", "line", "wanted"), ONE_BREATH)
def test_rows_told_in_one_breath(terms, line, wanted):
    assert last_rows([line], terms)[-1].counts[0] == wanted


ROUND = "8 chain, unite."
MORE = [
    # a loop of chain told before its list
    ("old", [ROUND, "1st round: * 1 double crochet, 5 chain, repeat from * 3 times more.", "2nd round: Into the 5 chain 1 double crochet, 3 long, 1 double crochet, repeat."], [8, 4, 20]),
    # the hook climbs a loop by single crochet, which counts none
    ("old", [ROUND, "1st round: * 1 double crochet, 7 chain, repeat from * 5 times more.", "2nd round: 3 single crochet up the first chain, * 4 long into the loop of 7 chain, 1 chain, repeat from *."], [8, 6, 24]),
    # the last loop is followed by the stitch that the round began past
    ("old", [ROUND, "1st: * 1 dc, 7 ch, repeat from * 4 times more.", "2nd: D.c. into centre loop of 7, 6 ch., d.c. on d.c. stitch, 6 ch., repeat."], [8, 5, 10]),
    # counted by colours, a cross for the repeat
    ("old", ["Make a chain of 40 stitches, and do one round in s.c.", "1st pattern round: X 2 white, 3 steel, 4 white, 1 steel, X 4 times.", "2nd: X 5 steel, 5 white, X 4 times."], [40, 40, 40]),
    # a mesh with each stitch, and all of its chains taken
    ("old", ["Make 10 chain; unite.", "1st round: Double crochet.", "2nd round: 1 l, 1 ch worked in every loop of the last round.", "3rd round. Double crochet."], [10, 10, 10, 20]),
    # stitches without a name; no increase
    ("old", ["Chain 31, double crochet, taking the back loop; 5 rows even.", "6th Row - 12 stitches, 2 stitches in next stitch, 4 stitches, 2 in next stitch, 12 stitches.", "7th Row - No increasing."], [30, 32, 32]),
    # beads and plain by turns
    ("old", ["Make a chain of 24 stitches; work 1 row in plain-stitch crochet.", "2d row. 3 plain, 3 bead to the end of row.", "3d row. Plain."], [24, 24, 24]),
    # "*…* repeat 3 times" is as often again
    ("uk", ["9 ch., make into a circle.", "1. *1 double tr., 4 ch.* repeat 3 times", "2. 6 dtr into each 4 ch space."], [9, 4, 24]),
    # each of two worked so, which is said at length
    ("uk", [
        "Make a slip-knot, and work into it 8 h. tr.",
        "2nd round: 2 h. tr. into each stitch, working the first into the top thread of h. tr., and for the second insert hook into the thread behind (16 stitches).",
        "3rd round: 1 into each of the first 3 stitches, 2 h. tr. in next.",
    ], [8, 16, 20]),
    # loops that are the ring
    ("us", ["Ch. 10, join in loop.", "Ch. 3, 19 d.c. into loop, join."], [10, 20]),
    ("uk", ["Make 7 chain and join to form a little loop.", "Then make 1 chain and 14 half treble into this loop, joining with a slip stitch to the first half treble."], [7, 14]),
    # the last loop has more, and a place told by its loop alone
    ("old", [
        "Make a chain of 29 stitches.", "1. A double in 9th stitch of chain, * chain 4, miss 4, 1 double in next; repeat from * 3 times, making 5 loops in all, turn.",
        "2. Chain 3, 4 trebles in 1st loop, * chain 2, 4 trebles in next loop; repeat from * across the row, ending with 5 trebles, turn.",
        "3. Chain 5, a double under 2 chain, * chain 4, a double under next; repeat to end of row.",
    ], [29, 5, 22, 4]),
]


@pytest.mark.parametrize(("terms", "lines", "wanted"), MORE)
def test_rows_of_old_books(terms, lines, wanted):
    for w, row in zip(wanted, last_rows(lines, terms), strict=True):
        assert row is not None
        assert row.counts[0] == w, row
