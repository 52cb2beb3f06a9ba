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


MORE = [
    ("a list told several times, continued", "Rnd 1: 28 sc in magic ring.\nRow 2: 5 sc, sc2tog, 5 sc, sc2tog, continue to end", [28, 24], "us"),
    ("a ring and its first chain told in a sentence", "6ch and join with slip stitch or magic circle and make 3 ch counts as first treble and then do a further 13 treble into the ring\n2nd round ..3ch and 1tr into same stitch then 2treble into each treble to end", [14, 28], "uk"),
    ("a ring closed by a slip stitch alone", "6ch and slip stitch, 3 ch, 15 tr into the ring.", [16], "uk"),
    ("a start chain that is skipped at the end", "Ch 20, sl st to first ch to make a ring.\nRound 1: Ch 3, 1dc in base of ch3, 1dc in every ch, skip the ch-3, join in first dc. (20dc)\nRound 2 - Ch 3, * bpdc around 1 dc, fpdc around next, * rpt from * to * to end, skip the ch-3, join in first st.", [20, 20, 20], "us"),
    ("a round that begins in the line of its chain", "ch22 loosely, sl st to first ch to make a ring, ch3, 1dc in same ch, 1dc in each ch to end, join. (22dc)", [22], "us"),
    ("a repeat to the chain that began the round", "Rnd 1: 8 sc in magic ring, join.\nRnd 2: Ch 3, dc in same st, ch 1, 2 dc in same st, *skip 1 st, (2 dc, ch 1, 2 dc) in next st, rep from * to beginning chain. Join.\nRnd 3: Sl st to ch 1 space, (ch 3, dc, ch 1, 2 dc) in first ch 1 space, (2 dc, ch 1, 2 dc) in each ch 1 space around. Join.", [8, 16, 16], "us"),
    ("rounds added in the same way", "Rnd 1: 6 sc in magic ring.\nRnd 2: 2 sc in each sc.\nRnd 3: *sc in next, 2 sc in next* around.\nKeep adding rounds in this way, 6 more each time, until you have 30 sts.", [6, 12, 18, 24, 30], "us"),
    ("carried on in the same way", "Rnd 1: 6 sc in magic ring.\nRnd 2: 2 sc in each sc.\nRnd 3: *sc in next, 2 sc in next* around.\nCarry on like this, adding 6 sts each round, until you have 24 sts.", [6, 12, 18, 24], "us"),
    ("rows of a table", "1. | MC (5) |\n2. | *INC *x5 (10) |\n3 | sc in each st | 10 |", [5, 10, 10], "us"),
    ("the rest of a round", "Rnd 1: 16 sc in magic ring.\nRnd 2: 2 sc in each of your next 5 st, sc in rest.", [16, 21], "us"),
    ("stitches of no name", "Rnd 1 = 5 st into 2nd chain from hook\nRnd 2 = 2 st into each st\nRnd 3 = [st in next st, 2 st in next] 5 times\nRnd 4 - 5 = st in each st\nRnd 6 = [st in next st, dec 1] 5 times", [5, 10, 15, 15, 15, 10], "us"),
    ("a whole round in one loop", "Rnd 1: 12 hdc in magic ring, join.\nRnd 2: Ch 1, entire round worked in the third loops, *dc in next 2 sts, 2 dc in next; rep from * around, join.", [12, 16], "us"),
    ("along rows that are named", "Rnd 1: 16 sc in magic ring.\nRow 2: Ch 1, sc in next 12, turn.\nRow 3: Ch 1, sc in each of the 12 sc, turn.\nRnd 4: ch 1, turn. Along the ends of the rows: 5 sc evenly across rows 2 to 3. Sc in the 4 stitches left from round 1, then 5 more sc evenly along the other ends of rows 2 to 3. Join. (14 sc)", [16, 12, 12, 14], "us"),
]


@pytest.mark.parametrize(("name", "text", "counts", "terms"), MORE, ids=[p[0] for p in MORE])
def test_more_rows_of_pages(name: str, text: str, counts: list[int], terms: str) -> None:
    assert first_counts(text, terms)[-len(counts):] == counts


def test_counts_told_along_the_row_are_one_of_each_kind() -> None:
    rows = ["Ch 15.", "Row 1: Sc in 2nd ch from hook and in each ch. (14 sc)"]
    body = "Ch 1, hdc in next 4, sc in next 6, hdc in next 4"
    report = last_rows([*rows, f"Row 2: {body} (4 hdc, 6 sc and 4 hdc)"], "us")
    assert (list(report[-1].counts), report[-1].agrees) == ([14], True)
    wrong = last_rows([*rows, f"Row 2: {body} (4 hdc, 6 sc and 5 hdc)"], "us")
    assert wrong[-1].agrees is False


@pytest.mark.parametrize("told", ["(4 hdc, 3 crossed st, 4 hdc)", "(4 hdc, 3 groups of crossed st and 4 hdc)", "(8 hdc, 3 groups of crossed st)"])
@pytest.mark.parametrize("made", ["", " = cross made"])
def test_a_stitch_over_two_with_its_name_behind_it(told: str, made: str) -> None:
    lines = [f"Crossed st = (skip next st, dc in next st, dc in skipped st{made})", "Ch 15.", "Row 1: Sc in 2nd ch from hook and in each ch. (14 sc)", f"Row 2: Ch 1, hdc in next 4, crossed st 3 times, hdc in next 4 {told}"]
    row = last_rows(lines, "us")[-1]
    assert (list(row.counts), row.agrees) == ([14], True)


SPOKEN = [
    ("numbers of stitches among increases", "R1 18 sc in MR\nR2  2, INC, 3, INC, 4, INC, 6\nR3 (DEC, 5) x 3\nR4 4, 3 DEC, 8", [18, 21, 18, 15], "us"),
    ("numbers and a kind told before", "Rnd 1: 12 hdc in magic ring.\nRnd 2: 3 hdc, inc, 4, inc, 3", [12, 14], "us"),
    ("a number in the bracket that is repeated", "R1 7 sc in MR\nR2 INC around\nR3 (1, INC) around", [7, 14, 21], "us"),
    ("counts far behind the words", "Row 1 - 7SC into ring                 7 St\nRow 2 - INC around                 14 St\nRow 3 - (SC, INC) around           21 St\nRow 4 - SC around      21 St", [7, 14, 21, 21], "us"),
    ("labels told twice", "Rnd 1: 9 sc in magic ring.\n2-4. Rounds 2-4: sc around. (9)\n5. Round 5: inc x 9", [9, 9, 9, 9, 18], "us"),
    ("a foundation row with its gloss", "1: fdc (foundation double crochet) 24 stitches\n2: 6 dc, 9 sc, 9 dc", [24, 24], "us"),
    ("a letter too many", "Rnd 1: 9 sc in magic ring.\nRnd 2: 2 sc in eaach st around.", [9, 18], "us"),
    ("a round closed in both loops", "Rnd 1: 9 sc in magic ring, join.\nRnd 2: Ch 1, sc in blo around, sl st in both loops", [9, 9], "us"),
    ("first stitches that are marked", "Rnd 1: 9 sc in magic ring. Mark the first sc.\nRnd 2: 2 sc in each. Mark your first st with a pin.", [9, 18], "us"),
    ("decreases at the beginning of a round", "1. Magic circle, one chain, 18 dc in the ring.\n2. Double crochet 2 together at the start of the next round, 7 dc, dc 2 tog, 7 dc.", [18, 16], "uk"),
    ("a round that begins with two in the first", "Rnd 1: 12 dc in magic ring.\nRnd 2: Ch 2 (not a dc, here and throughout), 2 dc in same st. 1 dc in the next st and 2 in the next around the hat. You will end with 1 dc in the last st. Sl st in the first dc, not the chain.", [12, 18], "us"),
    ("one and so on", "Rnd 1: 12 dc in magic ring.\nRnd 2: Ch 2 (not counted as a dc), then in the same stitch make 1 dc and continue to make one in each stitch around.", [12, 12], "us"),
]


@pytest.mark.parametrize(("name", "text", "counts", "terms"), SPOKEN, ids=[p[0] for p in SPOKEN])
def test_rows_told_shortly_or_as_spoken(name: str, text: str, counts: list[int], terms: str) -> None:
    assert first_counts(text, terms)[-len(counts):] == counts


WEARABLES = [
    ("so often in a word behind a cross", "Rnd 1: 24 sc in magic ring.\n2nd row: (2 increases, 10 single crochets) x twice (28 single crochets);", [24, 28], "us"),
    ("from the other side of the chain", "Ch 10.\n1st row: 2 hdc in the 2nd ch from hook, hdc in the next 7 ch, 5 hdc in the last ch. From the opposite side of chain: 7 hdc, 3 hdc in the edging st = 24 sts;", [24], "us"),
    ("only one in the space", "Ch 12.\nRow 1: Sc in 2nd ch from hook and in each ch.\nRow 2: Ch 1. Sc in each st until 5 sts remain. Ch 2. Sc in last 3 sts. Turn.\nRow 3: Ch 1, sc in each sc (work only 1 sc in ch-2 space).", [11, 9, 10], "us"),
    ("yarn joined to a hair tie", "Attach yarn to hair tie. Sc 24 around, sl st.\nR1 - ch 1, sc in each sc around.\nR2 - Ch 2, * skip 1, dc in next st, (working back) dc in the skipped st * repeat from * to * join", [24, 24, 24], "us"),
    ("stitches around a hair tie", "Join the yarn to the hair tie with a sl st, ch 1, 30 sc around the hair tie, join.\nRnd 2: Ch 1, sc in each sc.", [30, 30], "us"),
    ("the last chain joined to the first", "Ch 18, join the last ch with a sl st to the 1st ch.\nRnd 1: Ch 1, dc in each ch. Join.", [18], "us"),
    ("a round closed before its next chain", "Chain 18, slip stitch to form a loop.\nRnd 1: Dc in every ch around, slip stitch, ch 3", [18], "us"),
    ("two in one, as the count says", "Rnd 1: 6 dc in magic ring.\nRnd 2: *2 dc, dc in next st* repeat from * around (9)\nRnd 3: *2 dc, dc in next 2 sts* repeat from * around (12)", [6, 9, 12], "us"),
    ("a petal in each space", "Ch 4, join.\nRnd 1: Ch 1, (sc in ring, ch 4) 5 times, join.\nRnd 2: Ch 1. In each ch 4 space: sc, hdc, 2 dc, hdc, sc. Join.", [5, 30], "us"),
]


@pytest.mark.parametrize(("name", "text", "counts", "terms"), WEARABLES, ids=[p[0] for p in WEARABLES])
def test_rows_of_small_wearables(name: str, text: str, counts: list[int], terms: str) -> None:
    assert first_counts(text, terms)[-len(counts):] == counts


def test_two_stitches_before_a_place_are_over_two_where_no_count_says_otherwise() -> None:
    assert first_counts("Rnd 1: 9 dc in magic ring.\nRnd 2: *2 dc, dc in next st* repeat from * around")[-1] == 9
