"""Motifs, lace and leaflets as they are worded: each wording with the counts that a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

TRIANGLE = (
    "Rnd 1: Ch 4, join with sl st to form ring; ch 3 (counts as dc), 3 dc in ring, ch 3, (4 dc in ring, ch 3) twice; join. (12)\n"
    "Rnd 2: Ch 3, dc in next 3 dc, *(3 dc, ch 3, 3 dc) in ch-3 sp, dc in next 4 dc; rep from * once, (3 dc, ch 3, 3 dc) in ch-3 sp; join. (30)\n"
)
SQUARE = (
    "Ch 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12)\n"
    "Rnd 2: Sl st to ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more, join. (24)\n"
)
LOOPS = (
    "Ch 6, join with sl st to form ring.\nRnd 1: Ch 1, 12 sc in ring, join. (12)\n"
    "Rnd 2: Ch 1, sc in same st, *ch 5, sk 1 sc, sc in next sc; rep from * around, ending with ch 2, dc in first sc. (6)\n"
)
TREBLES = "Commence with 8 ch., join with a s.s. to form a ring.\n1st row: 3 ch., 27 tr. into ring, 1 s.s. into 3rd of 3 ch.\n"
FLOWER = (
    "Rnd 1: 12 sc in magic ring, join. (12)\nRnd 2: Ch 1, sc in same st, *ch 3, sk next sc, sc in next sc; rep from * 4 more times, ch 3, sk last sc, join. (6)\n"
    "Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around, join. (6 petals)\n"
)
V = "Ch 20.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (19)\n"

BAND = "Make 11 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end. 10 dc.\n"
BAND_US = "Ch 11.\n1st row: S c in 2nd ch from hook and in each ch across (10 s c). Ch 1, turn.\n"

US: list[tuple[str, str, list[int]]] = [
    ("an ending that stands for the end of a round, 1", TRIANGLE + "Rnd 3: Ch 3, dc in next 6 dc, *(3 dc, ch 3, 3 dc) in ch-3 sp, dc in next 10 dc; rep from * around, ending with dc in last 3 dc, join.", [12, 30, 48]),
    ("an ending that stands for the end of a round, 2", TRIANGLE + "Rnd 3: Ch 3, dc in next 6 dc, *(3 dc, ch 3, 3 dc) in ch-3 sp, dc in next 10 dc; rep from * around, ending last rep with dc in last 3 dc, join.", [12, 30, 48]),
    ("up to the next corner", SQUARE + "Rnd 3: Ch 1, sc in same st as join, sc in next 2 dc, *5 sc in corner sp, sc in each dc and ch-1 sp to next corner; rep from * around, join.", [12, 24, 48]),
    ("to the stitch before a space", (
        "Row 1: Ch 3 (counts as dc), (3 dc, ch 2, 4 dc) in magic ring, turn. (8)\n"
        "Row 2: Ch 3 (counts as dc), dc in first st, *ch 1, sk next st, dc in next st; rep from * to last st before ch-2 sp, sk next st, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in each st to end, turn.\n"
        "Row 3: Ch 1, sc in each dc to 2 sts before ch-2 sp, sk 2 sts, 2 sc in ch-2 sp, sc in each dc to end."), [8, 11, 11]),
    ("spaces before the last stitches", V + "Row 2: Ch 3 (counts as dc), dc in next sc, *sk next sc, (dc, ch 1, dc) in next sc, sk next sc; rep from * to last 2 sc, dc in last 2 sc, turn.\nRow 3: Ch 3, dc in next dc, 3 dc in each ch-1 sp across to last 2 sts, dc in last 2 sts.", [19, 14, 19]),
    ("definitions that name no place", "Shell: (2 dc, ch 2, 2 dc) in place named. Beg shell: (ch 3, dc, ch 2, 2 dc) in place indicated.\n\n" + V + "Row 2: Beg shell in first sc, *sk 5 sc, shell in next sc; rep from * across, turn.\nRow 3: Sl st in next dc and in ch-2 sp, beg shell in same sp, *shell in next ch-2 sp; rep from * across.", [19, 16, 16]),
    ("counts that tell which spaces", "Ch 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 3, (3 dc in ring, ch 3) 3 times, join. (12 dc, 4 ch-3 corner sps)", [12]),
    ("the main colour", "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: *With MC sc in next st, with CC 2 sc in next st; rep from * around.\nRnd 3: *MC: 2 sc in next st; CC: sc in next 2 sts; rep from * around.", [8, 12, 16]),
    ("several stitches worked together in one", "Bobble: 5 dc worked together in one stitch.\n\n" + V + "Row 2: Ch 1, sc in first st, *bobble in next st, sc in next st; rep from * across.", [19, 19]),
    ("the loop just made, 1", LOOPS + "Rnd 3: Ch 1, sc in same loop, *ch 6, sc in next loop; rep from * around, ch 6, join.", [12, 6, 6]),
    ("the loop just made, 2", LOOPS + "Rnd 3: Ch 3 (counts as dc), 4 dc in loop just made, ch 1, *5 dc in next loop, ch 1; rep from * around, join.", [12, 6, 30]),
    ("into the stitch that closed the round", LOOPS + "Rnd 3: *Ch 5, sc in next loop; rep from * around, ending with ch 2, dc in dc.\nRnd 4: Ch 1, 3 sc in same loop, *5 sc in next loop; rep from * around, join.", [12, 6, 5, 28]),
    ("the chain is the first leg", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 3, dc3tog over next 3 sts, *ch 7, dc4tog over next 4 sts; rep from * around, ch 7, join.", [12, 3]),
    ("loops held before the stitches are told", "Ch 6, join with sl st to form ring.\nRnd 1: Ch 3, 15 dc in ring, join.\nRnd 2: Ch 3, holding back on hook the last loop of each dc, make 1 dc in each of next 3 dc, thread over and draw through all loops on hook, *ch 5, 4-dc cluster over next 4 dc; rep from * around, ch 5, join.", [16, 4]),
    ("in the same stitch and each, working others", "Rnd 1: Ch 3, 2 dc in magic ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12)\nRnd 2: Ch 1, sc in same st and in each dc around, working 3 sc in each ch-2 sp, join.", [12, 24]),
    ("an order with loops before it", V + "Row 2: Ch 1, 2 sc in first st, sc in each st across, turn.\nRow 3: Working in back loops only, rep Row 2.", [19, 20, 21]),
    ("so many in a colour", "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: *Sc 2 in CC, sc 2 in MC; rep from * around.", [8, 8]),
    ("a cluster by another name", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, *dc3tog over next 3 sts, ch 5; rep from * around, join.\nRnd 3: Ch 1, *7 sc in next ch-5 sp, sc in next cluster; rep from * around, join.", [12, 4, 32]),
    ("a decrease is one of its kind", "Rnd 1: 18 sc in magic ring. (18)\nRnd 2: (Sc in next sc, sc2tog) 6 times. (12)\nRnd 3: Ch 4 (counts as dc, ch 1), sk 1 sc, *dc in next sc, ch 1, sk 1 sc; rep from * around, join in 3rd ch of ch-4.", [18, 12, 6]),
    ("to the last fan", "Ch 26.\nRow 1: Sc in 2nd ch from hook, *sk 3 ch, 7 tr in next ch, sk 3 ch, sc in next ch; rep from * across, turn. (3 fans)\nRow 2: Ch 5 (counts as dc, ch 2), dc in first sc, *ch 3, sk 3 tr, sc in next tr, ch 3, (dc, ch 2, dc) in next sc; rep from * to last fan, ch 3, sk 3 tr, sc in center tr of last fan, ch 3, (dc, ch 2, dc) in last sc.", [25, 11]),
    ("an ending behind stitches up to a corner", SQUARE + "Rnd 3: Ch 3, dc in next 2 dc, *(2 dc, ch 2, 2 dc) in corner sp, dc in each dc to next corner; rep from * around, ending with dc in last 3 dc, join.", [12, 24, 40]),
    ("between any two groups", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, *3 dc in next dc, sk next dc; rep from * around, join. (18)\nRnd 3: Join new color between any two 3-dc groups. Ch 3 (counts as dc), 4 dc in same space, *5 dc in next space between groups; rep from * around, join.", [12, 18, 30]),
    ("so many worked off as one", V + "Row 2: Ch 1, sc in first sc, *sc in next sc, work off next 2 sc as 1 sc; rep from * across.", [19, 13]),
    ("popcorns told by the hook", "Rnd 1: Ch 3 (counts as dc), 15 dc in magic ring, join. (16)\nRnd 2: Ch 1, *5 dc in next dc, drop loop from hook, insert hook in first dc of group and draw loop through (popcorn made), ch 3, skip 1 dc; repeat from * around, join.", [16, 8]),
    ("the last stitch in the turning space", "Ch 22.\nRow 1: Sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn.\nRow 2: Ch 2, sc in first ch-1 sp, *ch 1, sk 1 sc, sc in next ch-1 sp; rep from * across, working last sc in turning ch-sp, turn.", [10, 10]),
    ("one more between the increases", "Rnd 1: 6 s c in magic ring. (6)\nRnd 2: 2 s c in each s c around. (12)\nRnd 3: * S c in next s c, 2 s c in next s c; rep from * around. (18)\nRnds 4 and 5: Continue in this manner, having 1 s c more between incs on each rnd.", [6, 12, 18, 24, 30]),
    ("rounds of another motif", "Sea Pea Coaster\n\nFirst Motif\nRnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each sc around. (16)\nRnd 3: Sc in each sc around.\nSecond Motif\nRnds 1-2: Work same as first motif.", [8, 16, 16, 8, 16]),
    ("behind what is left of the turning chain", "Ch 23.\nRow 1: Dc in 8th ch from hook, *ch 2, skip 2 ch, dc in next ch; rep from * across. Ch 5, turn.\nRow 2: Skip first dc, dc in next dc, *ch 2, dc in next dc; rep from * across, ending with ch 2, skip 2 ch of turning ch, dc in next ch.", [7, 7]),
    ("rounds further down, 1", FLOWER + "Rnd 4: Ch 1, working behind petals of Rnd 3, bpsc around post of next sc of Rnd 2, *ch 5, bpsc around next sc of Rnd 2; rep from * around, ch 5, join.\nRnd 5: In each ch-5 sp work (sc, hdc, 5 dc, hdc, sc); join.", [12, 6, 42, 6, 54]),
    ("rounds further down, 2", FLOWER + "Rnd 4: Working behind petals, ch 1, sc around post of first sc on Rnd 2, *ch 6, sc around post of next sc on Rnd 2; rep from * around, ending with ch 6, join.\nRnd 5: Ch 1, (sc, hdc, 5 dc, hdc, sc) in each ch-6 loop around; join.\nRnd 6: Behind the petals, *ch 7, sc around next sc of Rnd 4; rep from * around.", [12, 6, 42, 6, 54, 6]),
    ("a chain told again behind the repeat", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, sc in same st, *ch 4, sk 3 sts, sc in next st; rep from * around, ending with ch 4, sl st in first sc.\nRnd 3: (Sc, 3 dc, sc) in each ch-4 loop around. Sl st to finish.", [12, 3, 15]),
    ("past the last corner", "Rnd 1: *3 sc in magic ring; rep from * 3 more times, join. (12)\nRnd 2: *3 sc in next st, sc in next 2 sts; rep from * around, join. (20)\nRnd 3: Ch 1, sc in first st, *3 sc in next st (corner), sc in each st to next corner st; rep from * around, join.", [12, 20, 28]),
    ("what blocks and spaces are made of", "Ch 18.\n1st row: Dc in 4th ch from hook, dc in next 2 ch (1 bl), * ch 2, skip 2 ch, dc in next ch (1 sp). Repeat from * 2 more times, dc in next 3 ch (1 bl). Ch 3, turn.", [10]),
    ("with double strand", "With double strand and H hook, ch 4, join with sl st to form ring.\nRnd 1: Ch 2 (counts as hdc), 11 hdc in ring, join to top of ch-2.", [12]),
    ("a border told side by side", V + "Rnd 2: Work 20 sc evenly along each side with 3 sc in each corner, join.", [19, 92]),
    ("long sides and short sides", V + "Rnd 2: Working around entire rug work 3 sc in each corner st, 19 sc across each long side and 7 sc across each short side.", [19, 64]),
    ("in the same space and then in each", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, sc in same st, ch 3, sk 1 st, *sc in next st, ch 3, sk 1 st; rep from * around, join.\nRnd 3: Sl st in first ch-3 sp, [ch 3, dc, ch 2, 2 dc] in same sp, [2 dc, ch 2, 2 dc] in each ch-3 sp around; join.", [12, 6, 24]),
    ("in each loop, the first of them slipped into", "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, sc in same st, *ch 5, sk 2 sts, sc in next st; rep from * around, ch 5, join.\nRnd 3: Sl st in first 2 chs, ch 1, 4 sc in each ch-5 loop around. (16 sc)", [12, 4, 16]),
    ("an ending of another number", "Ch 4, join with sl st to form ring.\nRow 1: Ch 4 (counts as dc, ch 1), (dc, ch 1) 5 times in ring, dc in ring, turn.\nRow 2: Ch 3 (counts as dc), 2 dc in first ch-1 sp, *ch 1, 2 dc in next ch-1 sp; rep from * across, ending with dc in 3rd ch of turning ch, turn.\nRow 3: Ch 4 (counts as dc, ch 1), dc in first st, *(dc, ch 1, dc) in next ch-1 sp; rep from * across, dc in last st.", [7, 14, 13]),
    ("a beginning popcorn is one of them", "Special stitches:\nBeginning popcorn (beg pc): ch 3, 4 dc in same st, drop loop, insert hook in top of ch-3, pull dropped loop through.\nPopcorn (pc): 5 dc in same st, drop loop from hook, insert hook in first dc, pull dropped loop through.\n\nRnd 1: 16 dc in magic ring, join. (16)\nRnd 2: Beg pc in same st as join, ch 2, sk next st, *pc in next st, ch 2, sk next st; rep from * around; join in top of beg pc. (8 pc, 8 ch-2 sps)", [16, 8]),
    ("the first rounds of another part", "Sea Campion\n\nFLOWER: Ch 4, join to form a ring, work 8 sc in ring.\nRnd 2: 2 sc in each sc around.\nRnd 3: Sc in each sc around.\nCENTER: Work 1st 2 rnds same as flower.\nRnd 3: (Sc in next sc, 2 sc in next sc) 8 times.", [8, 16, 16, 8, 16, 24]),
    ("even, and then finished off", "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each sc around. (16)\nWork 2 rnds even. Sl st in next sc. Break off.", [8, 16, 16, 16]),
    ("between petals", "Rnd 1: 12 sc in magic ring, join. (12)\nRnd 2: *Ch 4, sk 1 sc, sc in next sc; rep from * around.\nRnd 3: In each loop make sc, 5 dc and sc.\nRnd 4: *Ch 7, sc in back loop of sc between petals; rep from * around.", [12, 6, 42, 6]),
    ("a chain for the next row behind straight work", BAND_US + "2nd row: Work even. Ch 1, turn.\n3rd and 4th rows: Work even. Ch 3, turn.\n5th row: Skip first s c, d c in each s c across.", [10, 10, 10, 10, 10]),
    ("so many in every second stitch", "Rnd 1: 6 s c in magic ring. (6)\nRnd 2: 2 s c in each s c around. (12)\nRnd 3: Inc 1 s c in every 2nd s c.", [6, 12, 18]),
    ("one fewer over the next two", BAND_US + "2nd row: Dec 1 s c over next 2 s c, s c in each of next 8 s c. Ch 1, turn.\n3rd row: S c in each s c to last 3 s c, dec 2 s c over next 3 s c.", [10, 9, 7]),
    ("stitches left at both ends", BAND_US + "2nd row: Sl st in first 2 s c, s c in each s c to within last 2 s c. Ch 1, turn.\n3rd row: S c in each s c across.", [10, 6, 6]),
    ("a part of a row, 1", BAND_US + "2nd row: 1 s c in each of 4 s c, ch 1, turn.\n3rd row: S c in each s c.", [10, 4, 4]),
    ("a part of a row, 2", BAND_US + "2nd row: Work 4 s c, ch 1, turn.\n3rd row: S c in each s c.", [10, 4, 4]),
    ("half a shell is a name", "Ch 20.\nRow 1: Sc in 2nd ch from hook, *skip 2 ch, shell of 5 dc in next ch, skip 2 ch, sc in next ch; rep from * across. Turn.\nRow 2: Ch 3, 2 dc in first sc (half shell), *sc in center dc of next shell, shell of 5 dc in next sc; rep from * across, ending with sc in center dc of last shell, 3 dc in last sc.", [19, 19]),
    ("to the first space", "Ch 6, join.\n1st rnd: 12 s c in ring, join.\n2nd rnd: Ch 5, skip 1 s c, * d c in next s c, ch 2, skip 1 s c; rep from * around, join to 3rd st of ch-5.\n3rd rnd: Sl st to the first sp, s c in same sp, * ch 7, s c in next sp; rep from * around, ch 7, join to first s c.", [12, 6, 6]),
    ("without the chain at the last row's end", "Ch 9.\n1st row: D c in 4th ch from hook and in each ch across (7 d c). Ch 3, turn.\n2nd row: Skip first d c, d c in each d c across, d c in top of turning ch. Ch 3, turn.\nRep 2nd row twice, omitting ch 3 at end of last row. Ch 1, turn.\nNext row: S c in each d c across.", [7, 7, 7, 7, 7]),
    ("in the space of the next shell, and of the last", "Ch 6, join.\n1st rnd: Ch 3, 2 d c in ring, * ch 2, 3 d c in ring; repeat from * 4 more times, ch 2, join with sl st to top of ch-3.\n2nd rnd: Sl st in next 2 d c and in next sp, ch 3, in same sp make d c, ch 2 and 2 d c; * ch 3, in next ch-2 sp make 2 d c, ch 2 and 2 d c (shell made); repeat from * around, ending with ch 3, join to top of ch-3.\n3rd rnd: Sl st in next d c and in next sp, ch 3, in same sp make d c, ch 2 and 2 d c; * ch 2, 8 tr in sp of next shell, ch 2, in sp of next shell make 2 d c, ch 2 and 2 d c; repeat from * around, ending with 8 tr in sp of last shell, ch 2, join.", [18, 24, 36]),
    ("in the space of the next V", "Ch 7, join.\n1st rnd: Ch 1, 16 s c in ring, join.\n2nd rnd: Ch 5, d c in same place as joining, * ch 2, skip next s c, in next s c make d c, ch 2 and d c (V st made); rep from * around, ch 2, join with sl st in 3rd ch of ch-5.\n3rd rnd: Sl st in next sp, ch 3, 4 d c in same sp, * ch 1, 5 d c in sp of next V st; rep from * around, ch 1, join.", [16, 16, 40]),
    ("slip stitches and stitches left shape both ends", BAND_US + "2nd row: Sl st across 2 sts, s c across to within 2 sts of end. Ch 1, turn.\n3rd row: S c in each st across.", [10, 6, 6]),
    ("straight on in rounds", "Rnd 1: 6 s c in magic ring. (6)\nRnd 2: 2 s c in each s c around. (12)\nRnd 3: Work without increase.\nRnd 4: Work around without increasing.", [6, 12, 12, 12]),
    ("a slip stitch to the chain behind a repeat, 1", "Ch 4, join with sl st to form ring.\n1st rnd: Ch 3, 15 d c in ring, sl st in top of ch-3.\n2nd rnd: Ch 3, 2 d c in next d c, * d c in next d c, 2 d c in next d c; rep from * around, sl st in 3rd ch.", [16, 24]),
    ("a slip stitch to the chain behind a repeat, 2", "Ch 4, join with sl st to form ring.\n1st rnd: Ch 3, 15 d c in ring, sl st in top of ch-3.\n2nd rnd: Ch 5, * d c in next d c, ch 2; rep from * around, sl st in 3rd ch at beg of rnd.", [16, 16]),
]
UK: list[tuple[str, str, list[int]]] = [
    ("rep. with a stop", "Make 22 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch. to end, turn.\n2nd row: 3 ch., miss first d.c., * 1 ch., miss 1 d.c., 1 tr. into next d.c.; rep. from * to last 2 d.c., 1 tr. into each of last 2 d.c.", [21, 12]),
    ("ending last rep. with", "Make 43 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch. to end, turn.\n2nd row: 3 ch., 1 tr. into first d.c., * 1 tr. into each of next 5 d.c., miss 2 d.c., 1 tr. into each of next 5 d.c., 2 tr. into each of next 2 d.c.; rep. from * ending last rep. with 2 tr. into last d.c.", [42, 42]),
    ("one slip stitch into the chain", TREBLES + "2nd row: 4 ch., * 1 tr. into next tr., 1 ch.; rep. from * to end, 1 s.s. into 3rd of 4 ch.", [28, 28]),
    ("omitting at the end of the last repeat", TREBLES + "2nd row: 1 d.c. into same place as s.s., * 5 ch., miss 3 tr., 1 d.c. into next tr.; rep. from * omitting 1 d.c. at end of last rep., 1 s.s. into first d.c.", [28, 7]),
    ("a chain that stands for a stitch, 1", "Commence with 8 ch., join with a s.s. to form a ring.\n1st row: 3 ch. (to stand for 1st tr.), 23 tr. into ring, 1 s.s. into 3rd of 3 ch.", [24]),
    ("a chain that stands for a stitch, 2", "Commence with 8 ch., join round.\n1st round: 3 ch. to serve as a treble, 15 tr. into the circle, join with a slip stitch.", [16]),
    ("loops left on the hook", TREBLES + "2nd row: 3 ch., leaving last loop of each on hook work 1 tr. into each of next 6 tr., thread over and draw through all loops on hook (a cluster made), * 9 ch., a 7 tr. cluster over next 7 tr.; rep. from * ending with 9 ch., 1 s.s. into first cluster.", [28, 4]),
    ("the centre of so many", "Make 20 ch.\n1st row: 1 d.c. into 2nd ch. from hook, * miss 2 ch., 5 tr. into next ch., miss 2 ch., 1 d.c. into next ch.; rep. from * to end, turn.\n2nd row: 3 ch., 2 tr. into first d.c., * 1 d.c. into centre tr. of next 5 tr., 5 tr. into next d.c.; rep. from * ending with 3 tr. into last d.c., turn.", [19, 19]),
    ("the middle of each group of so many", "Make 14 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch. to end, turn.\n2nd row: 1 ch., 1 d.c. into each of first 6 d.c., 3 d.c. into next d.c., 1 d.c. into each d.c. to end, turn.\n3rd row: 3 ch., miss first d.c., 1 tr. into each d.c., working 3 tr. into centre d.c. of each group of 3 d.c., turn.", [13, 15, 17]),
    ("rows in a stitch, shaping with stops", "Make 14 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch. to end, turn.\nWork 2 rows in d.c.\nNext row: Dec. 1 st. at each end.", [13, 13, 13, 11]),
    ("into so manieth of the turning chain", "Make 16 ch.\n1st row: 1 tr. into 4th ch. from hook, 1 tr. into each ch. to end, turn.\n2nd row: 3 ch., 1 tr. into first tr., 1 tr. into each tr. to last st., 2 tr. into 3rd of 3 ch.", [14, 16]),
    ("the turning chain counted with them", "Make 22 ch.\n1st row (right side): 1 tr. in 4th ch. from hook, 1 tr. in each ch. to end, 3 ch., turn. (20 tr. including turning ch.)\n2nd row: Miss 1st tr., 1 tr. in each tr. to end, working last tr. in top of 3 ch.; 3 ch., turn.", [20, 20]),
    ("as another row, behind a dash", BAND + "2nd row.—1 ch, 1 dc in each dc.\n3rd row.—As 2nd row.\n4th row.—Repeat the second row.\n5th row—The same as 2nd row.", [10, 10, 10, 10, 10]),
    ("as given for another row", BAND + "2nd row: 1 ch, 1 dc in first dc, 1 dc in each dc to last dc, 2 dc in last dc.\n3rd row: Work as given for 2nd row.", [10, 11, 12]),
    ("numbered rows of a pattern", BAND + "1st patt row: 1 ch, 1 dc in each dc to end.\n2nd patt row: 1 ch, 1 dc in each of first 4 dc, miss 1 dc, 1 dc in each of last 5 dc.", [10, 10, 9]),
    ("on in pattern by the tape", BAND + "2nd row: 3 ch, miss first dc, 1 tr in each dc to end.\nCont in patt until work measures 30 cm.", [10, 10, 10]),
    ("number words beyond twelve", BAND + "2nd row: 1 ch, 1 dc in each dc.\nRepeat 2nd row fourteen times.", [10] * 16),
    ("so many further rows", BAND + "Work 2 rows straight in dc.\nWork a further 3 rows in dc.\nWork another 2 rows.", [10] * 8),
    ("each following chain, one missed below the chain", "Commence with 14 chain.\n1st row.—1 treble into the fourth chain from the hook, 1 treble in each following chain.\n2nd row.—3 chain, miss 1, 1 treble in each of the next 11.", [12, 12]),
    ("into the round", "6 chain, join round.\n1st round.—3 chain, 15 treble into the round, join to the top of the 3 chain.", [16]),
    ("each stitch and chain to the end", BAND + "2nd row: 1 ch, 1 dc in each of first 3 dc, 4 ch, miss 4 dc, 1 dc in each of last 3 dc.\n3rd row: 1 ch, 1 dc in each dc and ch to end.", [10, 6, 10]),
    ("to the turning chain, then into it", "Make 4 ch.\n1st row: 2 tr in 4th ch from hook, turn. (3)\n2nd row: 3 ch, 1 tr in first tr, 1 tr in next tr, 2 tr in top of turning ch, turn. (5)\n3rd row: 3 ch, 1 tr in first tr, 1 tr in each tr to turning ch, 2 tr in top of turning ch, turn.", [3, 5, 7]),
    ("an ending instead of a part of the last round", "Make 20 ch.\n1st row: 1 dc in 2nd ch from hook, * miss 2 ch, 5 tr in next ch, miss 2 ch, 1 dc in next ch; rep from * to end, turn.\n2nd row: 3 ch, 2 tr in first dc, * miss 2 tr, 1 dc in next tr, miss 2 tr, 5 tr in next dc; rep from * to end, ending with 3 tr in last dc instead of 5 tr, turn.", [19, 19]),
    ("where the last stitch comes", "Make 14 chain.\n1st row: 1 double crochet in the second chain, * miss 2, 5 treble in the next, miss 2, 1 double crochet in the next; repeat from * to end, turn.\n2nd row: 3 chain, 2 treble on the first double crochet, * 1 double crochet on the centre treble of the shell, 5 treble on the next double crochet; repeat from * to the last shell, 1 double crochet on the centre of the last shell, 3 treble on the last double crochet, turn.\n3rd row: 1 chain, 1 double crochet on the first treble, * 5 treble on the next double crochet, 1 double crochet on the centre treble of the next shell; repeat from * to the end, the last double crochet coming on the top of the 3 chain.", [13, 13, 13]),
    ("the chains that remain", "Make 12 chain.\n1st row: Miss 3 chain, 1 treble into each of the 9 chain remaining.\n2nd row: 3 chain, miss first stitch, 1 treble into each of the next 8 treble, 1 treble into the top of the 3 chain.", [10, 10]),
    ("yarn joined again to what remains", BAND + "2nd row: 1 ch, 1 dc in each of next 4 dc, turn.\nDec 1 st at neck edge on next row.\nMiss next 2 dc, rejoin yarn to rem sts, 1 ch, 1 dc in same dc, 1 dc in each dc to end.", [10, 4, 3, 4]),
    ("until there are so many", "6 chain, and join into a ring with single crochet.\n1st round.—4 chain, 1 treble in the ring, * 1 chain, 1 treble in the ring; repeat from * until there are 12 treble in all counting the chain as one, 1 chain, join to third of 4 chain.", [12]),
    ("decreased by missing", "6 chain, join.\n1st round.—3 chain (for a treble), 11 treble in the round, join to the top of the 3 chain with a single crochet.\n2nd round.—1 double crochet in each treble.\n3rd round.—Decrease by missing every fourth stitch.", [12, 12, 9]),
    ("decreased by working together", "Commence with 13 chain.\n1st row: 1 treble into the fourth chain from the hook, 1 treble in each chain to end.\n2nd row: 3 chain, miss the first, decrease by working 2 treble together, 1 treble in every treble until 3 remain, 2 treble together, 1 treble in the last.", [11, 9]),
    ("a chain to turn with, the last on the turning chain", "Commence with 14 chain.\n1st row.—1 treble into the fourth chain from the hook, 1 treble in each following chain.\n2nd row.—3 chain to turn, miss the first treble, 1 treble on each treble to the end, the last on the top of the turning chain.", [12, 12]),
    ("a chain that counts before a double crochet", "Make 14 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end, turn.\n2nd row: 3 ch (counts as 1 tr), miss first dc, * 1 dc in next dc, 1 tr in next dc; rep from * to end, turn.\n3rd row: 1 ch, 1 dc in first tr, * 1 tr in next dc, 1 dc in next tr; rep from * to end, working last dc in top of 3 ch, turn.\n4th row: 3 ch, miss first dc, * 1 dc in next tr, 1 tr in next dc; rep from * to end, turn.", [13, 13, 13, 13]),
    ("divided, the second side behind the centre", "Make 25 ch.\n1st row: 1 dc in 2nd ch from hook, 1 dc in each ch to end.\nDivide for neck: Next row: 1 ch, 1 dc in each of next 10 dc, turn and work on these sts only.\nDec 1 st at neck edge on next and foll alt row.\nMiss next 4 dc at centre, rejoin yarn to rem sts, 1 ch, 1 dc into same dc, 1 dc into each dc to end.", [24, 10, 9, 9, 8, 10]),
    ("joined round, a chain for a treble", "8 chain, join round with a single crochet.\n1st round.—3 chain for a treble, 15 treble in the ring, join with a single crochet to the top of the 3 chain.\n2nd round.—4 chain, 1 treble in the next treble, * 1 chain, 1 treble in the next treble; repeat from * all round, 1 chain, join with single crochet to the third of the 4 chain.\n3rd round.—2 double crochet under each 1 chain, join with single crochet.", [16, 16, 32]),
]

WHEEL = "Make a chain of 8, join it round.\n1st round.—3 chain, work 23 treble in the ring; join with a single to the 3rd chain.\n2nd round.—5 chain, miss 1, * 1 treble in the next, 2 chain, miss 1; repeat from *, join to the 3rd of the 5 chain.\n"
OLD: list[tuple[str, str, list[int]]] = [
    ("under each of so many chain", WHEEL + "3rd round.—3 double crochet under each 2 chain all round.", [24, 12, 36]),
    ("in each loop, a list", WHEEL + "3rd round: In each loop 1 d.c., 1 h.tr., 3 tr., 1 h.tr., 1 d.c.", [24, 12, 84]),
    ("the two first, and the third", "Make a chain of 6, unite.\n1st round—Work 2 double crochet in each chain.\n2nd round—1 double crochet in each of the 2 first stitches, 2 in the 3rd; repeat.", [12, 16]),
    ("into each stitch, increasing", "Make a chain of 6, unite.\n1st round—Work 2 double crochet in each chain.\n2nd round—D.C. into each stitch, increasing 6 in the round.", [12, 18]),
    ("a chain that bridges, repeated", "Make a chain of 6, unite.\n1st round—Work 3 double crochet in each chain.\n2nd round—5 chain, miss 2, 1 double crochet in the 3rd stitch; repeat all round.\n3rd round—5 chain, 1 double crochet in the centre of each 5 chain.", [18, 6, 6]),
    ("in the first stitch of each round of a repeat", WHEEL + "3rd round.—3 double crochet under each 2 chain all round.\n4th round.—* 1 double crochet in the first stitch, 5 chain, miss 2; repeat from * to the end of the round.\n5th round.—In each loop of 5 chain work 1 double crochet, 5 treble, 1 double crochet.", [24, 12, 36, 12, 84]),
    ("as another row, with more between", "Make a chain of 6, unite.\n1st round—Work 2 double crochet in each chain.\n2nd round—* 1 double crochet in the next, 2 in the next; repeat from *.\n3rd round—Like the 2nd, with 2 double crochet between the widenings.", [12, 18, 24]),
    ("back into the loop it began in", "Make a chain of 6, unite.\n1st round—Work 2 double crochet in each chain.\n2nd round—* 5 ch., miss 1, 1 d.c. in the next; repeat from * all round.\n3rd round—Slip to the centre of the first loop, * 5 ch., 1 d.c. in the next loop; repeat from * all round.", [12, 6, 6]),
    ("at the corners, ending with one", "Chain 5, join in a ring.\n1. Chain 3, 2 trebles in ring, * chain 2, 3 trebles in ring, repeat from * twice, chain 2, join to top of 3 chain.\n2. Chain 3, a treble in each of 2 trebles, * 2 trebles, 2 chain, 2 trebles in the 2 chain at corner, a treble in each of 3 trebles, repeat from * around, ending with corner, join.", [12, 28]),
    ("in the 6th stitch of the chain", "Make a chain of 21.\n1st row—1 treble in 6th stitch of chain, 1 treble in each following stitch; turn.\n2nd row—1 chain, 1 double in each treble, and 1 in the chain at the end.", [17, 17]),
    ("each chain filled", "Chain 8, join.\n1. Chain 4, (1 treble in ring, chain 1) 11 times, join to 3d of 4 chain.\n2. Fill each 1 chain with 3 doubles, join.", [12, 36]),
    ("under the chain", "Commence with 7 ch., join round.\n1st round: 3 ch. to serve as a treble, 15 tr. into the circle, join with a slip stitch.\n2nd round: 4 ch., * 1 tr. on the next tr., 1 ch.; repeat from * all round, join to the 3rd of the 4 ch.\n3rd round: 3 ch., 1 tr. under the first ch., * 1 tr. on the tr., 1 tr. under the ch.; repeat from * to the end, join.", [16, 16, 32]),
]


def counted(text: str, terms: str) -> list[int | None]:
    document = read(Source.of(text + "\n"), terms)
    assert write(document) == text + "\n"
    report = work(document)
    assert not [f.code for f in report.findings if f.severity == "error"]
    return [r.counts[0] for r in report.rows if not r.read or r.made and set(r.made) != {"ch"}]


@pytest.mark.parametrize(("name", "text", "expected"), US, ids=[n for n, _, _ in US])
def test_us(name: str, text: str, expected: list[int]) -> None:
    assert counted(text, "us") == expected


@pytest.mark.parametrize(("name", "text", "expected"), UK, ids=[n for n, _, _ in UK])
def test_uk(name: str, text: str, expected: list[int]) -> None:
    assert counted(text, "uk") == expected


@pytest.mark.parametrize(("name", "text", "expected"), OLD, ids=[n for n, _, _ in OLD])
def test_old(name: str, text: str, expected: list[int]) -> None:
    assert counted(text, "old") == expected


def test_a_layer_is_worked_into_the_round_it_names() -> None:
    report = work(read(Source.of(FLOWER + "Rnd 4: Ch 1, working behind petals, *bpsc around next sc of Rnd 2, ch 5; rep from * around, join.\n"), "us"))
    fabric = report.fabrics[0]
    second, fourth = fabric.rows[-3], fabric.rows[-1]
    made = [i for i in range(fourth.start, fourth.end) if fabric.kinds[fabric.kind[i]] == "bpsc"]
    assert len(made) == 6
    assert all(second.start <= fabric.into[i] < second.end for i in made)


def test_a_round_that_sits_in_its_stitches_is_worked_to_its_end() -> None:
    text = "Rnd 1: 8 sc in magic ring, join. (8)\nRnd 2: *Ch 2, (dc, ch 2, sl st) in same st, sl st in next st; rep from * around. (8 petals)\n"
    report = work(read(Source.of(text + "Rnd 3: Ch 1, working behind the petals, *sc in the back of next petal, ch 2; rep from * around, join.\n"), "us"))
    assert report.rows[1].made["dc"] == (8,)
    assert report.rows[2].counts == (8,)
    assert not [f.code for f in report.findings if f.severity == "error"]


@pytest.mark.parametrize("sizes", ["Small (Medium-Large)", "S (M-L)"])
def test_sizes_with_hyphens_between(sizes: str) -> None:
    report = work(read(Source.of(f"Sizes: {sizes}\nCh 21 (23-25).\nRow 1: S c in 2nd ch from hook and in each ch across: 20 (22-24) s c.\nWork 2 (2-3) rows even.\n"), "us"))
    assert report.rows[1].counts == (20, 22, 24)
    assert not report.findings
