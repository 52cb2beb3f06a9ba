"""Squares, blankets, borders and dishcloths as they are written today: each wording with the counts that a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop.check import check_source

GRANNY = (
    "Ch 5; join with sl st to form a ring.\nRnd 1: Ch 4, tr in ring, ch 3, (2 tr in ring, ch 3) 3 times; join with sl st to top of beg ch-4. (8 tr)\n"
    "Rnd 2: Join with sl st in any ch-3 sp; ch 4, (tr, ch 3, 2 tr) in same sp, ch 1, *(2 tr, ch 3, 2 tr) in next ch-3 sp, ch 1; rep from * around; join with sl st to top of beg ch-4. (16 tr)\n"
)
SHELLS = (
    "Special Stitches\nShell = (tr, [ch 1, tr] 3 times) all in indicated st.\n\n"
    "Ch 22.\nRow 1: Sc in 2nd ch from hook, *ch 5, skip next 4 ch, sc in next ch; repeat from * across; turn 4 ch-5 spaces.\n"
    "Row 2: Ch 4 (counts as tr), shell in each of next 4 ch-5 spaces, tr in last st; turn 4 shells.\n"
)
RIPPLE = (
    "- beginning shell = (ch 4, 2 tr, ch 2, 3 tr) - shell = (3 tr, ch 2, 3 tr) - v-st = (1 tr, ch 2, 1 tr)\n\n"
    "Rnd 1: Ch 4, 12 tr in 4th ch from hook. Join with sl st to first tr. (12 tr)\nRnd 2: Ch 1, sc in same tr as joining st, ch 3, *sc in next tr, ch 3. Repeat from * around. Join.\n"
    "Rnd 3: Sl st in next ch-3 space, beginning shell in same ch-3 space, skip next ch-3 space, ch 1. *Shell in next ch-3 space, skip next ch-3 space, ch 1. Repeat from * around. Join.\n"
)
GROWN = "Rnd 4: Sl st in next 2 tr, ch 4, shell in next shell, tr in next tr, skip next 2 tr, tr in ch-1 sp, skip next 2 tr, *tr in next tr, shell in next shell, tr in next tr, skip next 2 tr, tr in ch-1 sp, skip next 2 tr; rep from * around; join.\n"
LOOPED = "Ch 5, join with sl st to form a ring.\nRnd 1: Ch 3, 2 dc in ring, (ch 3, 3 dc in ring) 3 times, ch 1, join with hdc to top of beginning ch 3 to form the last loop.\n"
LOBES = (
    "Ch 8. Join with sl st to form ring.\n1st rnd: Ch 4, 23 tr in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 6, skip 2 tr, sc in next tr. Repeat from * around. Join.\n"
    "3rd rnd: Sl st in next loop, ch 4, 4 tr in same loop, * in next loop make tr, ch 7 and tr; 5 tr in next loop. Repeat from * around. Join.\n"
)
PEAKS = "Small Shell (SS): 3 dc into one st (used where nothing is increased).\nWide Peak (WP): 2 dc into one st, 3 dc into one st, 2 dc into one st\nDec 3: dc leaving 2 loops on hook, pass over 1 st, dc leaving 2 loops on hook, take yarn through all (3 sts become 1 st)\n\n"
CLUSTERS = (
    "Ch 34.\nRow 1: (Cluster, ch 3, cluster) in 7th ch from hook, skip next 2 ch, tr in next ch, *skip next 2 ch, (cluster, ch 3, cluster) in next ch, skip next 2 ch, tr in next ch; rep from * across; turn - 5 cluster groups.\n"
    "Row 2: Ch 4, (cluster, ch 3, cluster) in next ch-3 sp, *fptr around next tr, (cluster, ch 3, cluster) in next ch-3 sp; rep from * to last st; tr in top of beg ch; turn.\n"
    "Row 3: Ch 4, (cluster, ch 3, cluster) in next ch-3 sp, *bptr around next st, (cluster, ch 3, cluster) in next ch-3 sp; rep from * to last st; tr in top of ch-4; turn.\n"
)
EIGHT = "Work 7 ch with crochet hook size 3 mm and Cotton and form a ring with 1 sl st in first ch.\nROUND 1: 4 ch (= 1 dtr), * 3 ch, 1 dtr in ring *, repeat from *-* a total of 6 times and finish with 3 ch and 1 sl st in 4th ch from beg of round.\n"

US: list[tuple[str, str, list[int]]] = [
    ("each dc and ch-1 sp up to a corner", GRANNY + "Rnd 3: Ch 1, sc in same st and in next tr, (sc, ch 3, sc) in next corner ch-3 sp, *sc in next tr and in each tr and ch-1 sp across to next corner ch-3 sp, (sc, ch 3, sc) in corner ch-3 sp; rep from * twice more, sc in next 2 tr and in last ch-1 sp; join.", [8, 16, 28]),
    ("a count behind turn; next space of the same shell", SHELLS + "Row 3: Ch 1, hdc in first st, *hdc in 2nd ch-1 space of next shell, ch 3, hdc in next ch-1 space of same shell; repeat from * across, hdc in last st; turn.", [5, 18, 10]),
    ("definitions with bullets", RIPPLE, [12, 12, 36]),
    ("a shell whose first stitches are worked into", RIPPLE + GROWN, [36, 54]),
    ("definitions with abbreviations", PEAKS + "Rnd 1: 14 dc in magic ring. Join.\nRnd 2: 28 dc (2 dc in each st) (28 sts)\nRnd 3: (WP, sk 1) 7 times (49 sts) (7 points)\nRnd 4: (SS, dc in next 6 sts) 7 times (63 sts)\nRnd 5: (WP, dc3, dec 3) 7 times (77 sts)", [14, 28, 49, 63, 77]),
    ("around the stitch that joins, and back in its loop", LOOPED + "Rnd 2: Ch 3, dc around the hdc joining, skip next dc, dc in next dc, *skip next dc, (2 dc, ch 3, 2 dc) in next ch 3 sp, skip next dc, dc in next dc* Repeat from * to * 2 times, skip next dc, 2 dc in next ch 1 sp; ch 1, join with hdc to top of beg ch 3.", [12, 20]),
    ("a loop is no gap", LOBES + "4th rnd: Sl st in next 2 tr, ch 7, tr in same place as last sl st, * in next loop make 4 tr, ch 3 and 4 tr; in center tr of next group make tr, ch 3 and tr. Repeat from * around. Join to 4th ch of ch-7.", [24, 8, 28, 40]),
    ("round posts of either side", CLUSTERS + "Rows 4-9: Rep Rows 2 and 3 three (3) times.", [16, 16, 16, 16, 16, 16, 16, 16, 16]),
    ("skip a stitch and another before a mark", "Ch 12.\nRow 1: Sc in 2nd ch from hook and in next ch, (hdc in next ch, dc in next ch, sc in next 2 ch) twice, sc in last ch; turn. (11 sts)\nRow 2: Ch 1, sc in first 3 sc, *ch 2, skip next dc and hdc **, sc in next 2 sc; rep from * across ending last rep at **, sc in last 2 sc.", [11, 7]),
    ("the last stitch is worked, not counted", "Ch 13.\n1st row: 1 hdc in 3rd ch from hook (counts as 2 hdc). 1 hdc in each ch to end of ch. Turn. 12 hdc.\n2nd row: Ch 2. *1 dcfp around each of next 2 sts. 1 dcbp around each of next 2 sts. Rep from * to last 3 sts. 1 dcfp around each of next 2 sts. 1 hdc in last st. Turn.\n3rd row: Ch 2. 1 hdc in each st to end of row. Turn.", [12, 12, 12]),
    ("a space by its chain and no dash", "Ch 6; join to form a ring.\nRnd 1: Ch 1, (sc in ring, ch 5) 6 times; join. (6 sc)\nRnd 2: join in any 5 ch space; ch 1, [sc, 3 dc, sc] into 5 ch space, *[sc, 3 dc, sc] into next 5 ch space. Repeat from * 4 more times; join.", [6, 30]),
    ("chsp in one word", "Ch 6; join to form a ring.\nRnd 1: Ch 1, (sc in ring, ch 3) 6 times; join. (6 sc)\nRnd 2: Sl st in first chsp, ch 3, 2 dc in same sp, 3 dc in each chsp around; join.", [6, 18]),
    ("told with its yarn and a dash", "Ch 11.\nRow 1) With MC - sc in 2nd ch from hook and across – 10 sc\nRow 2) With CC - Ch 1, dc in 1st st, dc in next 8 sts, dc in last st – 10 dc\nRow 3) With MC – Repeat row 2\nRow 4) Ch 1, sc in every st across and tie off – 10 sc", [10, 10, 10, 10]),
    ("two letters the wrong way round", "Rnd 1: 12 sc in magic cirlce. (12)\nRnd 2: 2 sc in enxt st, sc in enxt 11 sts.", [12, 13]),
    ("a count before the join", "Rnd 1: Ch 3, 11 dc in ring; join. (12 dc)\nRnd 2: Ch 2 (counts as 1 hdc), hdc in same st, 2 hdc in each dc of previous round (24 hdc); join with a sl st in 2nd ch of 2 ch.", [12, 24]),
    ("a note among the rows", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn. (10)\nNOTE: Loose workers may like ch 1 better than ch 2 at the turns.\nRow 2: Ch 2, dc in first st and in each st across. Turn.", [10, 10]),
    ("stitches and spaces between two marks", "Ch 12.\nRow 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * to end. Turn. (6 sc)\nRow 2: Ch 1, *sc in each sc and ch1 space* to end of row. Turn.", [6, 11]),
    ("so many times around", "Ch 5, join to form a ring.\nRnd 1: (1 sc, ch 4) into ring 6 times. (6 sc)\nRnd 2: 5 sc into each loop. (30 sc)\nRnd 3: (1 sc into center of 5 sc, ch 6) around six times\nRnd 4: 7 sc into each of all those ch6 loops", [6, 30, 6, 42]),
    ("the last repeat of a bracket ends otherwise", "Rnd 1: 24 sc in magic ring; join. (24)\nRnd 2: Ch 1, 1 sc in first st, (ch 1, skip next st, 2 dc in next st, ch 1, skip next st, 1 sc in each of next 3 sts) 4 times, ending last rep with 1 sc in each of next 2 sts; join.", [24, 20]),
    ("a name within the brackets of a repeat", "Ch 6, join to form a circle.\nRnd 1: Ch 4, leaving last loop of each tr on hook, make 3 tr into circle, yo and draw through all 4 loops on hook (3 tr cluster formed), [ch 5, leaving last loop of each tr on hook, make 4 tr into circle, yo and draw through all 5 loops on hook (4 tr cluster formed)] 5 times, ch 5, sl st to top of first ch 4. (6 ch-5 sps)\nRnd 2: Sl st in first ch-5 sp, ch 1, 7 sc in same sp, 7 sc in each ch-5 sp to end; join.", [6, 42]),
    ("which of a group is told in brackets", "Ch 12.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (10 dc)\nRow 2: Ch 1, sc in first st, skip next st, *sc in next st (2nd st of group), tr in next st, sc in next st **, ch 2, skip next 2 sts; rep from * across, ending last rep at **; turn.", [10, 7]),
    ("over spaces two rows below", "Ch 17.\nRow 1: Sc in 2nd ch from hook and in next 3 ch, *ch 2, sk next 2 ch, sc in next 4 ch; rep from * once more, turn. (12 sc)\nRow 2: Ch 2 (counts as hdc), hdc in each sc and in each ch, turn. (16 hdc)\nRow 3: Ch 1, sc in first 4 hdc, 2 dc in ch-2 sp on 2nd row below; on working row, sk next 2 hdc (behind dc just made), sc in next 4 hdc, 2 dc in next ch-2 sp on 2nd row below; on working row, sk next 2 hdc (behind dc just made), sc in last 4 hdc, turn.", [12, 16, 16]),
    ("the last stitch in the first corner", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRow 2: Ch 1, sc in each st across. (10 sc)\nRnd 3: Join in any corner, ch 1, 2 sc in same st, [10 sc evenly across to next corner, 3 sc in next corner] 3 times; 10 sc evenly across, sc in first corner; join.", [10, 10, 52]),
    ("a note in a row", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across. (10)\nRow 2: Note: all post sts go around post sts from here on. Ch 1, turn, sc in each st.", [10, 10]),
    ("regarded as a stitch", "Ch 6, join.\nRnd 1: Ch 4 (regard as 1 tr now and throughout), 2 tr in ring, ch 2, [3 tr in ring, ch 2] 4 times; join. \nRnd 2: Ch 4, tr in next tr and in each tr around; join.", [15, 15]),
]

UK: list[tuple[str, str, list[int]]] = [
    ("a total of so many times", EIGHT, [7]),
    ("the first replaced by chains", EIGHT + "ROUND 2: 3 tr (replace first tr on round with 3 ch) in first ch-loop, * 3 ch, 3 tr in next ch-loop *, repeat from *-* a total of 6 times and finish with 3 ch and 1 sl st in 3rd ch from beg of round.", [7, 21]),
    ("crocheted together, and round a chain", EIGHT + "ROUND 2: 3 tr (replace first tr on round with 3 ch) in first ch-loop, * 3 ch, 3 tr in next ch-loop *, repeat from *-* a total of 6 times and finish with 3 ch and 1 sl st in 3rd ch from beg of round.\nROUND 3: * 3 tr crochet tog – see above, 5 ch, 1 dtr round the 3 ch from previous round, 5 ch *, repeat from *-* a total of 7 times and finish with 1 sl st at the top of first tr-group.", [7, 21, 14]),
]


@pytest.mark.parametrize(("terms", "text", "counts"), [*(("us", *w[1:]) for w in US), *(("uk", *w[1:]) for w in UK)], ids=[w[0] for w in US + UK])
def test_it_is_worked_as_it_is_meant(terms: str, text: str, counts: list[int]) -> None:
    report = work(read(Source.of(text), terms))
    assert [r.counts[0] if r.counts else None for r in report.rows if r.label][-len(counts) :] == counts


def test_a_definition_with_a_long_name_is_no_row() -> None:
    text = "- Dropped Tr (Dropped Treble Crochet): Keeping the chain loops behind the hook, work 1 tr in free hdc 3 rows below\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across. Turn. 11 sc.\n"
    report = work(read(Source.of(text), "us"))
    assert [r.label for r in report.rows] == [None, "Row 1"] or len(report.rows) == 2
    assert not [f for f in check_source(Source.of(text)).findings if f.code.startswith("N")]


def test_a_wrong_count_before_a_join_is_found() -> None:
    text = "Rnd 1: 12 sc in magic ring; join. (12)\nRnd 2: Ch 1, 2 sc in each st around (25 sc); join with a sl st in first sc.\n"
    assert [f.code for f in check_source(Source.of(text)).findings if f.code == "W001"] == ["W001"]


def test_a_stitch_that_nobody_knows_makes_no_error() -> None:
    text = "Rnd 1: 12 sc in magic ring; join. (12)\nRnd 2: Ch 1, 1 zx into first st, (2 sc into next st, 1 sc into next st) 5 times, 2 sc into next st; join. (18)\n"
    assert [f.severity for f in check_source(Source.of(text)).findings if f.code == "W001"] != ["error"]


def test_what_a_block_is_made_of_is_no_part_of_the_row() -> None:
    text = "Row 1. Ch 8, tr in 5th ch from hook, tr in next 3 chs. Turn. 1 block; each block consists of a ch 4 and 4 tr throughout.\nRow 2. Ch 8, tr in 5th ch from hook, tr in next 3 chs, sl st into the ch-4 space of the Row 1 block, ch 4, 4 tr in same space. Turn. 2 blocks made.\n"
    report = work(read(Source.of(text), "us"))
    assert [(r.printed, r.agrees) for r in report.rows] == [((1,), True), ((2,), True)]
