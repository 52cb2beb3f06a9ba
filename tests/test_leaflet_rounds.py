"""Rounds and rows as leaflets of 1935-60 tell them: popcorns by the hook's movements, repeats from the beginning, chains between stitches."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.line_by_line import first_counts

RING = "Ch 7, join. 1st rnd: Ch 3, 11 dc in ring. Join.\n"
LOOPS = "Ch 6, join. 1st rnd: Ch 1, 12 sc in ring, join.\n2nd rnd: Ch 3, d c in same place, * ch 5, skip 1 s c, 2 d c in next s c; repeat from * 4 times, ch 5, join.\n"
YOKE = "Ch 37. 1st row: Dc in 4th ch from hook, dc in next 6 ch, 2 dc in next ch, ch 1, 2 dc in next ch, dc in next 12 ch, 2 dc in next ch, ch 1, 2 dc in next ch, dc in last 11 ch. Ch 3, turn.\n"

TOLD: list[tuple[str, str, list[int]]] = [
    ("popcorns by slipping the loop off", RING + (
        "2nd Round—Ch 3, 5 d c in same space, slip loop off hook, insert it in third st of ch, draw loop through, ch 1 to tighten, * ch 2, 6 d c in next d c, "
        "drop loop off hook, insert in first of these d c and draw loop through, ch 1 to close (popcorn st), repeat from * around, ch 2, join.\n3rd Round—3 s c in each loop."), [12, 12, 36]),
    ("popcorns closed by a chain before their name", RING + (
        "2nd Round. Ch 3, 3 d c in same space, slip the loop off hook, insert in top of ch, draw loop through, ch 1 to fasten, * ch 3, 4 d c in next st, slip the loop off hook, "
        "insert in 1st d c, draw loop through, ch 1 (popcorn st); repeat from * all around, ch 3, join.\n3rd Round. 4 s c in each loop."), [12, 12, 48]),
    ("begun by a chain and a stitch in its place", "1st rnd: 30 sc in ring, join.\n2nd rnd. Ch 3, d c in same space, d c in each of next 3 s c, 2 d c in next s c, ch 2, repeat from beginning all around, join.", [30, 42]),
    ("begun by a chain and the stitches beside it", "1st rnd: 28 sc in ring, join.\n2nd rnd. Ch 3 (counts as 1 d c), d c in each of next 5 s c, 3 d c in next s c, repeat from beginning around, join.", [28, 36]),
    ("loops told twice and repeated", LOOPS + "3rd rnd: Sl st to 3rd ch of loop, ch 7, sc in next loop, ch 7, sc in next loop, repeat around, join.\n4th rnd: 4 s c in each loop.", [12, 12, 6, 24]),
    ("between two that stand alone", LOOPS + "3rd rnd: * Ch 4, s c in next loop, ch 4, s c between next 2 d c. Repeat from * around, ending with ch 4, join.\n4th rnd: 2 s c in each loop.", [12, 12, 11, 24]),
    ("a loop before each stitch", LOOPS + "3rd rnd: Ch 6, sc in loop, ch 6, sc between 2 dc, repeat around, join.\n4th rnd: 3 s c in each loop.", [12, 12, 11, 36]),
    ("chains between stitches by their name", RING + "2nd rnd: Ch 6 (to count as dc and ch-3), make dc in each dc around, with ch-3 between dc's, ending with ch 3, sl st in 3rd ch of ch-6.\n3rd rnd: 3 sc in each sp around.", [12, 12, 36]),
    ("the last of a list before the thread is cut", RING + "2nd rnd: * Ch 6, skip 1 dc, s c in next dc. Repeat from * around.\n3rd rnd: Over each loop 1 sc, 7 dc, 1 sc, cut Red.", [12, 6, 54]),
    ("the last stitches of a row, and then its chain", "Ch 35. Row 1: Sc in second ch from hook and in each ch.\nRow 2: Ch 1; 1 s c in first 9 sts; chain 5, skip 12 sts; 1 s c in last 13 sts. Ch 3, turn.", [34, 22]),
    ("rounds of single crochet not joined", "With dark color, ch 2. 1st rnd: 8 s c in second ch from hook (do not join s c rnds).\n2nd rnd: 2 s c in each s c around.", [8, 16]),
    ("which loop is picked up", "1st rnd: 10 sc in ring.\n2nd rnd: Picking up the back loop of each sc, make 2 sc in each sc around.", [10, 20]),
    ("how every row is turned", "Ch 44 and make 43 s c on it, ch 1 to turn all s c rows.\n2nd row: S c in each s c.", [43, 43]),
    ("behind the work", RING + "2nd rnd: * Ch 4, skip 1 dc, sc in next dc in back of work, repeat from * around.", [12, 6]),
    ("each up to the next corner", YOKE + "2nd row: * D c in each d c, 2 d c in ch-1 sp, ch 1, 2 d c in same sp, repeat from * across. Ch 3, turn.\n3rd row: * D c in each d c, 2 d c in ch-1 sp, ch 1, 2 d c in same sp, repeat from * across.", [39, 47, 55]),
    ("each up to the next corner, and the rest", YOKE + "2nd row: * D c in each d c to next sp, in sp make 2 d c, ch 1 and 2 d c; repeat from * across, ending with d c in each remaining d c.", [39, 47]),
    ("a chain for a sleeve, and what is worked on it", "Ch 26. Row 1: Sc in second ch from hook and in each ch.\nRow 2: S c in each s c; chain 12 sts at end of this row for a sleeve.\nRow 3: Sc in second ch from hook, sc in each chain st, sc in each st across back.", [25, 25, 36]),
    ("so many fewer across the row", "Ch 49. Row 1: Sc in second ch from hook and in each ch.\nNext row: Ch 1, turn; work across row in s c decreasing 8 sts across row (40 sts).\nCh 1, turn, work across row decreasing to 33 sts.", [48, 40, 33]),
    ("around a square made in rounds", "Ch 5, join. 1st rnd: Ch 3, 3 d c in ring, * ch 1, 4 d c in ring, repeat from * twice, ch 1, join.\n2nd rnd: Work a row of sc around whole square working 3 sc in each corner.", [16, 28]),
    ("even, and turned", "1st rnd: 72 sc in ring.\nWork 2 rnds even, sl st in next sc. Ch 1, turn, then work back and forth as follows:\n1st row: Sc in each of first 60 sc.", [72, 72, 72, 60]),
    ("clusters named in brackets, closed by a stitch", ("Ch 9, join, ch 4, 3 tr c in ring keeping last loop of each on hook, thread over and draw through all loops, * ch 5, 4 d c in ring, keeping last loop of each on hook, "
     "thread over and draw through all loops (d c cluster st), repeat from * 4 times, ch 2, d c in 1st cluster st.\n2nd Row—2 s c over d c, * ch 6, 2 s c in next loop; repeat from * all around, ch 6, join."), [6, 12]),
    ("a repeat within a loop", LOOPS + "3rd rnd: Over next loop work 2 s c, * ch 4, 2 s c, repeat from * 3 times, repeat from beginning all around, join.", [12, 12, 60]),
    ("no loop is lost round after round", LOOPS + "3rd rnd: Sl st to center of first loop, sc in same loop, * ch 6, sc in next loop. Repeat from * around. Join.\n4th and 5th rnds: Repeat 3rd rnd.\n6th rnd: 5 sc in each loop.", [12, 12, 6, 6, 6, 30]),
    ("the last loop of several is the one begun with", (LOOPS + "3rd rnd: Sl st to center of first loop, sc in same loop, * ch 4, in next loop make dc, ch 2 and dc, (ch 4, sc in next loop) twice. Repeat from * around. Join.\n"
     "4th rnd: 2 sc in each loop."), [12, 12, 8, 16]),
    ("on to the space between two popcorns", RING + "2nd rnd: * Popcorn st in next dc, ch 2; repeat from * around, join, (12 popcorn sts) sl st between popcorn sts, drop Rose.\n3rd rnd: 2 sc in each ch-2 sp.", [12, 12, 24]),
    ("what is made over what", RING + "2nd rnd: Ch 3, in same place make dc, ch 1 and 2 dc (shell made), * skip 2 dc, in next dc make 2 dc, ch 1, 2 dc (shell); repeat from * around, join.\n"
     "3rd rnd: Sl st in next dc and in sp, ch 3, dc, ch 1 and 2 dc in same sp (shell made over shell), * ch 3, 2 dc, ch 1, 2 dc in sp of next shell (another shell made over shell). Repeat from * around, ch 3, join.", [12, 16, 16]),
    ("clusters over several, each with a picot", RING + "2nd rnd: Sc in same place as sl st, * ch 5, leaving the last loop of each tr on hook, work tr in next 3 dc, yo and draw through all loops on hook (cluster made), ch 4, sl st in tip of cluster (picot made), ch 5; rep from * around. Join.", [12, 4]),
    ("clusters over several, and a stitch", RING + "2nd rnd: Sc in same dc, * ch 4, holding back the last loop of each dc on hook, make dc in next 2 dc, thread over and draw through all loops on hook; ch 4, sc in next dc. Repeat from * around. Join.", [12, 8]),
]


@pytest.mark.parametrize(("text", "counts"), [(text, counts) for _, text, counts in TOLD], ids=[name for name, _, _ in TOLD])
def test_rounds_and_rows_of_leaflets(text, counts):
    assert first_counts(text + "\n")[-len(counts) :] == counts


def test_a_picot_of_a_round_that_has_no_room_is_none():
    text = "1st rnd: 18 sc in ring, join.\n2nd rnd: Sc in same place, * ch 3, dc3tog over next 3 sc, ch 4, sl st in tip of cluster (picot made), ch 3, skip 1 sc, sc in next sc. Repeat from * around. Join.\n"
    made = work(read(Source.of(text), "us")).rows[-1].made
    assert made["picot"] == made["dc3tog"]
