"""Cardigans, shawls and bags as they are written today: sizes told in other ways, counts behind other words, repeats told anew. Counts worked by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.notation.size_lists import plain_lists
from loopwright.source import Source
from loopwright.working import work

FLAT = "Ch 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21)\n"
RING = "Rnd 1: 12 dc in magic ring; join. (12)\n"


def rows_of(text: str, terms: str = "us") -> list[tuple[int | None, ...]]:
    """The counts of each row; none of the texts may be found at fault."""
    report = work(read(Source.of(text), terms))
    assert not [f for f in report.findings if f.code in ("W001", "W003", "N001")]
    return [r.counts for r in report.rows]


SIZES: list[tuple[str, str, list[tuple[int | None, ...]]]] = [
    ("by turns", "Ch 31 (35) 39 (43) 47.\nRow 1: Sc in 2nd ch from hook and in each ch, turn - 30 (34) 38 (42) 46 sts.\nRow 2: Ch 1, sc2tog, sc to last 2 (2) 2 (2) 2 sts, sc2tog, turn. (28, 32, 36, 40, 44)", [
        (31, 35, 39, 43, 47), (30, 34, 38, 42, 46), (28, 32, 36, 40, 44)]),
    ("in braces", "Instructions are for size Small, with size Large in {}.\nCh 41 {47}, being careful not to twist, join with sl st to first ch.\nRnd 1: Ch 1, sc in each of next 20 {24} ch, ch 2, sc in each of next 21 {23} ch, join.", [(41, 47), (41, 47)]),
    ("in one bracket", "Ch (22, 26, 30).\nRow 1: Hdc in 3rd ch from hook and in the next 9 ch, dc in next (10, 14, 18) ch, ch 2, turn.\nRow 2: Dc in (10, 14, 18) sts, hdc in next 10 sts, turn. Total (10, 14, 18) dc, 10 hdc.", [
        (22, 26, 30), (20, 24, 28), (20, 24, 28)]),
    ("in words", "Ch 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 1, sc in next 5 sts, [ch 1, sk 1, sc in next st] one (two, three) time(s), sc in each st to end.", [(21, 25, 29), (20, 24, 28), (19, 22, 25)]),
    ("without the word times", "Ch 21 (25, 29).\nRow 1: Sc in 2nd ch from hook and in each ch, turn.\nRow 2: Ch 1, (sc in next st, 2 sc in next st) 3 (4, 5), sc in each st to end.", [(21, 25, 29), (20, 24, 28), (23, 28, 33)]),
]


@pytest.mark.parametrize(("text", "counts"), [s[1:] for s in SIZES], ids=[s[0] for s in SIZES])
def test_numbers_for_each_size_are_read_however_they_are_told(text: str, counts: list[tuple[int | None, ...]]) -> None:
    assert rows_of(text) == counts


@pytest.mark.parametrize("text", [
    "Ch 96 (106) 116 (128) 140.\nNext row: 95 (105) 115 (127) 139 sts", "dc in next (50, 54, 58) sts\nch (62, 66, 70)\nRow (22, 24, 26):", "zero (one, two) times", "90 {98}, in {18 dc}",
])
def test_lists_put_plainly_keep_the_length_of_the_text(text: str) -> None:
    assert len(plain_lists(text)) == len(text)


@pytest.mark.parametrize("text", ["sc in 2 (dc) 4 (6) 7", "(2 dc, ch 1)", "(6) 12 (18)", "Rnd 1: 6 sc. (6)\nRnd 2: 12 sc. (12)", "{band sts} sc"])
def test_what_is_no_list_of_sizes_stays_as_it_is(text: str) -> None:
    assert plain_lists(text) == text


ROWS: list[tuple[str, str, list[int]]] = [
    ("a count behind turn", FLAT + "Row 2: Ch 1, sc2tog, sc in each st to end, turn 20 sts.", [20]),
    ("a count behind what is left", FLAT + "Row 2: Ch 1, sc in next 15 sts, turn, leave remaining sts unworked 15 sts.", [15]),
    ("you will find", FLAT + "Row 2: Ch 1, sc2tog, sc in each st across. You will find that you make 20 sc.", [20]),
    ("a count before JOIN", RING + "Rnd 2: *2 dc in next st. Rep from * around. (24 dc) JOIN with sl st to first dc.\nRnd 3: Ch 1, sc in each st around. (24)", [24, 24]),
    ("not counting slip stitches", FLAT + "Row 2: Sl st in first 3 sts, ch 1, sc in each st to last 3 sts, turn - 15 sc (not counting beg sl sts).", [15]),
    ("a total before the join", FLAT + "Rows 2-10: Ch 1, sc in each st across, turn.\nRnd 1: Join yarn in any corner, work 20 sc on each long side and 10 sc on each short side - total of 60 sc. Sl st to first sc.", [*[21] * 9, 60]),
    ("one count a row of several", "Ch 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sts)\nRows 2-4: Ch 1, sc2tog, sc in each st across, turn. (20 sts)(19 sts)(18 sts)", [20, 19, 18]),
    ("in parts", FLAT + "Row 2: Hdc in 5 sts, dc in next 11 sts, hdc in next 5 sts, turn. Total 5 hdc BLO, 11 dc, 5 hdc.", [21]),
    ("in the last stitch", FLAT + "Row 2: Ch 1, 2 sc in first st, sc in each st to end, 2 sc in last st.", [23]),
    ("counts as your first", RING + "Rnd 2: Ch 3 (this counts as your first dc), sc in next st. *Dc in next st, sc in next st* around. Slip stitch to join.", [12]),
    ("one by one", RING + "Rnd 2: Ch 1, *1 sc, 1 sc, 1 sc, 2 sc. Repeat from * ss to join (15)", [15]),
    ("ranges before a verb", RING + "Round 2 ch1, sc around. (12)\nRound 3-5 repeat round 2", [12] * 4),
    ("repeat before a bracket", FLAT + "Row 2: Ch 1, sc in first st, repeat [ch 1, sk 1, sc in next st] across.", [11]),
    ("chains with a hyphen", FLAT + "Row 2: Ch-1, sc in 21 sts, ch-9. (30)\nRow 3: Sc in 2nd ch from hook and each across. (29)", [21, 29]),
    ("skips with a hyphen", FLAT + "Row 2: Ch-4, sk-2 sts, dc in next st, *ch-1, sk-next st, dc in next st; rep from * across.", [11]),
    ("another in the last", FLAT + "Row 2: Ch 4, tr in next st, [ch 2, skip 2, tr in next st], repeat between [ ] to end, work another tr in last st.", [9]),
    ("a stitch and spaces", FLAT + "Row 2: Ch 1, sc in first st, *ch 1, sk 1, sc in next st; rep from * across, turn.\nRow 3: Ch 1, sc in each st/ch-sp across.", [11, 21]),
    ("so many times in one", "Ch 20.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, dc 5 times in next ch, sk 2 ch, sc in next ch* rep across.", [19]),
    ("each of the following", "Ch 25. Turn. Work an sc in the second chain from the hook and in each of the following chains, turn.", [24]),
    ("a chain made of", "Take some DK yarn and create a foundation chain made of 22 chains.\nRow 1: Sc in 2nd ch from hook and in each ch. (21)", [22, 21]),
    ("from the hook along the row", RING + "Rnd 2: Ch 1, sc in same st, ch 3, *skip next dc, sc in 2nd dc from hook, ch 3; rep from * around, join.", [6]),
    ("more rows on so many", FLAT + "Row 2: Ch 1, sc in next 15 sts, turn. Work 4 more rows on 15 sc.", [15] * 5),
    ("numbered lines", RING + "2. Rnd 2: Ch 1, sc in each st around. (12)\n3. Rnd 3: Ch 1, 2 sc in each st around. (24)", [12, 24]),
    ("all around from the star", "Ch 24, join to form a ring.\nRnd 1: Ch 1, sc in each ch, join. (24)\nRnd 2: Ch 3, dc in next 3 sc, *ch 5, skip 4 sc, dc in next 4 sc; repeat all around from *, ch 5 and join.", [24, 12]),
    ("same and next", FLAT + "Row 2: Ch 1, sc in next 10 sts, sc2tog in same and next st, sc in each st to end. (21)", [21]),
    ("a space beside the join", RING + "Rnd 2: Ch 4, dc in same st, *sk 2, (dc, ch 1, dc) in next st; rep from * around; join in 3rd ch. (8 dc)\nRnd 3: Ch 4, dc in same ch-1 sp, (dc, ch 1, dc) in each ch-1 sp around; join in 3rd ch. (8 dc)", [8, 8]),
]


@pytest.mark.parametrize(("text", "counts"), [r[1:] for r in ROWS], ids=[r[0] for r in ROWS])
def test_rows_are_worked_with_their_counts(text: str, counts: list[int]) -> None:
    assert [c[0] for c in rows_of(text)][-len(counts) :] == counts


@pytest.mark.parametrize(("words", "counts"), [
    ("*hdc in next st, 2 hdc in next st* repeat between * * once more, hdc in next 4 sts. Repeat between * * 2 more times, hdc in each st to end", 25),  # 4 → 6, 4, 4 → 6, 9
    ("*2 hdc in next st, hdc in 2 sts* repeat between * * 3 times, hdc in each st to end", 25),  # told once and three times more
    ("*hdc in next st, ch 1**, 2 hdc in next st* rep a total of 3 times ending last rep at **, hdc in each st to end", 23),
    ("*hdc in next st, ch 1**, 2 hdc in next st* rep 3 times in all ending last rep at **, hdc in each st to end", 23),
])
def test_repeats_between_stars(words: str, counts: int) -> None:
    assert rows_of(FLAT + f"Row 2: Ch 1, {words}.")[-1] == (counts,)


OVALS = ["sc in each ch to end, 6 sc in last ch", "sc in each ch to last ch, 6 sc in last ch", "sc in each to end. 6 sc in last"]


@pytest.mark.parametrize("end", OVALS)
@pytest.mark.parametrize("begin", ["3 sc in beg st", "3 sc in first ch", "3 sc in same ch as first 3 sc", "3 sc in last ch"])
def test_an_oval_ends_where_it_began(end: str, begin: str) -> None:
    text = f"Rnd 1: Ch 11, 3 sc in 2nd ch from hook, {end}. Working up the opposite side of the chain, sc in each ch to end, {begin}. (28)"
    assert rows_of(text) == [(28,)]  # 3, 8, 6, 8, 3


MESH = [
    ("all of them", "Ch 19.\nRow 1: Beginning in 3rd ch from hook, *hdc2tog in next 2 ch, ch 1; repeat from *, hdc in last ch, turn. (17 sts)\nRow 2: Ch 2, [hdc2tog, ch 1] across, hdc in last st, turn 17 sts.\nRow 3: Rep Row 2.", [17, 17, 17]),
    ("the single ones", ("Ch 4. Join with sl st to form ring.\n1st row: Ch 3 (counts as dc), (5 dc, ch 2, 6 dc) in ring, turn. 12 dc.\n2nd row: Ch 3 (counts as dc), (ch 1, skip next dc, dc in next dc) twice, ch 1, skip next dc, (2 dc, ch 2, 2 dc) in next ch-2 sp, "
     "(ch 1, skip next dc, dc in next dc) 3 times, turn. 16 sts."), [None, 16]),  # 1, 2 and 3 chains, 4; 3 and 3 chains
]


@pytest.mark.parametrize(("text", "counts"), [m[1:] for m in MESH], ids=[m[0] for m in MESH])
def test_chains_that_the_printed_counts_have_among_the_stitches(text: str, counts: list[int | None]) -> None:
    report = work(read(Source.of(text), "us"))
    assert not [f for f in report.findings if f.code == "W001"]
    assert [None if r.with_chains is None else r.with_chains[0] for r in report.rows][-len(counts) :] == counts


@pytest.mark.parametrize("text", [
    "Round 7: Ch 2, *dc in next 5 sts, 2 dc in next st; repeat from * around, ss to join. (84)",
    "Row 1: Ch 1, sc in each st across. (84)",
    "1 ch, sc in each st around. (84)",
    "Next Row (RS): Ch 2 (does not count), sc in each st to last st, leaving last st unworked. (84)",
])
def test_rows_that_begin_on_stitches_told_elsewhere(text: str) -> None:
    assert rows_of(text) == [(84,)]


def test_chains_told_for_the_whole_are_no_row() -> None:
    text = "2 ch (counts as first dc here and throughout)\nRow 2: 2 ch, [1 dc in next 1ch-sp, 1 ch] 5 times, 1 dc in next ch. Turn. 12 sts\nCh1 does NOT count as stitch.\n"
    report = work(read(Source.of(text), "uk"))
    assert [(r.counts, r.with_chains) for r in report.rows] == [((7,), (12,))]


def test_a_wrong_count_is_still_found_where_chains_may_be_among_the_stitches() -> None:
    text = "Ch 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21)\nRow 2: Ch 1, sc in first st, *ch 1, sk 1, sc in next st; rep from * across, turn. (20 sts)\n"
    assert [f.code for f in work(read(Source.of(text), "us")).findings] == ["W001"]


@pytest.mark.parametrize(("text", "counts"), [
    ("Step 1: Ch 21\nStep 2: 20 sc across, ch 1, turn\nStep 3: repeat step 2 until there are 5 rows\nStep 4: sc2tog, sc across, turn", [(20,), (20,), (20,), (20,), (19,)]),
    (FLAT + "Row 2: Ch 1, sk ch just made, sl st in each front lp across, turn.\nRow 3: Ch 1, sk ch just made, sl st in front lp of each of first 16 sts, leaving rem sts unworked, turn.\nRow 4: Ch 1, sl st in each st across, turn.\n"
     "Row 5: Ch 1, sl st in front lp of each of first 16 sts, skip turning ch, drop down 2 rows to unworked sts, sl st in front lp of each of next unworked 5 sts, turn. (21 sts)\nRows 6-9: [Rep Rows 2-5 consecutively] once more.", [
         (21,), (16,), (16,), (21,), (21,), (16,), (16,), (21,)]),
    ("Row 1: Ch 21, ch 1 more, sl st in back bar of each ch across, turn.", [(21,)]),
    ("Row 1: Ch 26, sc in 2nd ch from hook (the first skipped ch counts as a sc), sc in each rem ch across, turn. (26 sc)", [(26,)]),
    (FLAT + "Row 2: Ch 3, *sk next 2 sts, dc in next 3 sts, working in front of sts just made, long dc (see Stitch Guide) in each sk st; rep from * across, turn. (13 dc, 8 long dc)", [(21,)]),
    (FLAT + "You will now work on the Left Front only.\nRow 1: Ch 1, sc2tog, sc in each st across, turn. (9)", [(9,)]),
])
def test_rows_as_a_bag_and_a_vest_tell_them(text: str, counts: list[tuple[int | None, ...]]) -> None:
    assert rows_of(text)[-len(counts) :] == counts
