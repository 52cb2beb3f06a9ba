"""Whole small pieces in the words of today, our own: each row's count told here by hand, none of them printed in the text."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

# name, text, counts of the rows that make stitches, in order; worked out by hand (a slip stitch that holds a loop is no stitch of its row)
PIECES = [
    ("ball", """R1: 6 sc in MR
R2: inc x 6
R3: (sc, inc) x 6
R4: (2 sc, inc) x 6
R5-8: sc in each st around
R9: (2 sc, dec) x 6
R10: (sc, dec) x 6
Stuff firmly.
R11: dec x 6
Fasten off, leaving a long tail for sewing.""", [6, 12, 18, 24, 24, 24, 24, 24, 18, 12, 6]),
    ("arm", """Rnd 1: Start with a magic ring, 5 sc into the ring.
Rnd 2: 2 sc in each stitch.
Rnds 3-6: sc in each stitch around.
Rnd 7: sc2tog, sc in next 8.
Rnd 8: sc around.""", [5, 10, 10, 10, 10, 10, 9, 9]),
    ("oval body", """Ch 8.
Rnd 1: Starting in the 2nd ch from the hook, sc 6, 3 sc in the last ch, turn to work on the other side of the chain, sc 5, 2 sc in the last ch.
Rnd 2: inc, sc 5, inc 3, sc 5, inc 2.""", [16, 22]),
    ("granny square", """Ch 4, sl st to form a ring.
Rnd 1: Ch 3 (counts as dc here and throughout), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of beg ch-3.
Rnd 2: Sl st to corner ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * 2 more times; join.
Rnd 3: Sl st to corner ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next corner sp, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around; join.
Rnd 4: Ch 1, sc in same st as join, sc in each dc and in each ch-1 sp around, working (sc, ch 2, sc) in each corner sp; join.""", [12, 24, 36, 52]),
    ("solid square", """Rnd 1: In a magic ring, ch 3, 2 dc, ch 2, *3 dc, ch 2; rep from * 2 more times, sl st to top of ch-3.
Rnd 2: Ch 3, dc in next 2 dc, (2 dc, ch 2, 2 dc) in corner sp, *dc in next 3 dc, (2 dc, ch 2, 2 dc) in corner sp; rep from * around, sl st to join.""", [12, 28]),
    ("circle dc", """Rnd 1: Ch 4, join; ch 3, 11 dc in ring, join to top of ch 3.
Rnd 2: Ch 3, dc in same st, 2 dc in each st around, join.
Rnd 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, join.
Rnd 4: Ch 3, dc in next st, 2 dc in next st, *dc in each of next 2 sts, 2 dc in next st; rep from * around, join.""", [12, 24, 36, 48]),
    ("mesh", """Ch 24.
Row 1: Dc in 6th ch from hook (counts as dc, ch 1), *ch 1, sk 1 ch, dc in next ch; rep from * across, turn.
Row 2: Ch 4 (counts as dc, ch 1), sk first ch-1 sp, dc in next dc, *ch 1, dc in next dc; rep from * across, working last dc in 3rd ch of turning ch, turn.""", [11, 11]),
    ("v-stitch", """Ch 19.
Row 1: (Dc, ch 1, dc) in 5th ch from hook, *sk 2 ch, (dc, ch 1, dc) in next ch; rep from * to last 2 ch, sk 1 ch, dc in last ch, turn.
Row 2: Ch 3, (dc, ch 1, dc) in each ch-1 sp across, dc in top of turning ch, turn.""", [12, 12]),
    ("shells", """Ch 32.
Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 3, 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last shell, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.
Row 3: Ch 1, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across, working last sc in top of ch-3.""", [31, 31, 31]),
    ("ripple", """Ch 41.
Row 1: Sc in 2nd ch from hook, sc in next 3 ch, *3 sc in next ch, sc in next 4 ch, sk 1 ch, sc in next 4 ch; rep from * 2 more times, 3 sc in next ch, sc in last 5 ch, turn.""", [45]),
    ("ripple dc2tog", """Ch 42.
Row 1: 2 dc in 4th ch from hook, *dc in next 3 ch, (dc2tog) twice, dc in next 3 ch, (2 dc in next ch) twice; rep from * to last 2 ch, dc in next ch, 2 dc in last ch.""", [42]),
    ("basketweave", """Ch 22.
Row 1: Dc in 4th ch from hook and in each ch across, turn.
Row 2: Ch 2 (counts as st), *fpdc around each of next 3 sts, bpdc around each of next 3 sts; rep from * to last st, hdc in top of turning ch, turn.""", [20, 20]),
    ("hdc hat", """Rnd 1: Ch 2 (does not count as st), 8 hdc in magic circle, join.
Rnd 2: Ch 1, 2 hdc in each st, join.
Rnd 3: Ch 1, *2 hdc in next st, hdc in next st; repeat from * around, join.
Rnd 4: Ch 1, *2 hdc in next st, hdc in next 2 sts; repeat from * around, join.
Rnds 5-9: Ch 1, hdc in each st around, join.
Rnd 10: Ch 1, *fphdc around next st, bphdc around next st; rep from * around; join.""", [8, 16, 24, 32, 32, 32, 32, 32, 32, 32]),
    ("thumb hole", """Rnd 1: Fsc 32, join to form a ring.
Rnd 2: Ch 1, sc in each st around, join.
Rnd 3: Ch 1, sc in first 2 sts, ch 5, skip next 5 sts, sc in each remaining st, join.
Rnd 4: Ch 1, sc in each st and ch around, join.""", [32, 32, 27, 32]),
    ("triangle", """Row 1: Ch 4, 2 dc in 4th ch from hook, turn.
Row 2: Ch 3, dc in same st, dc in next st, 2 dc in top of ch-3, turn.
Row 3: Ch 3, dc in same st, dc in each st to last st, 2 dc in last st, turn.""", [3, 5, 7]),
    ("decrease triangle", """Ch 11.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.
Rows 3-5: Rep Row 2.""", [10, 8, 6, 4, 2]),
    ("raglan", """Ch 41.
Row 1: Dc in 4th ch from hook, dc in next 5 ch, (dc, ch 1, dc) in next ch, dc in next 6 ch, (dc, ch 1, dc) in next ch, dc in next 10 ch, (dc, ch 1, dc) in next ch, dc in next 6 ch, (dc, ch 1, dc) in next ch, dc in last 6 ch, turn.
Row 2: Ch 3, *dc in each st to next ch-1 sp, (dc, ch 1, dc) in ch-1 sp; rep from * 3 more times, dc in each st to end, turn.""", [43, 51]),
    ("border", """Ch 11.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Rows 2-10: Ch 1, sc in each st across, turn.
Border: Ch 1, 3 sc in first st, sc in next 8 sts, 3 sc in last st, work 8 sc evenly down side, 3 sc in corner, 8 sc along bottom, 3 sc in corner, 8 sc evenly up side; join.""", [10] + [10] * 9 + [44]),
    ("brim up", """Ch 9.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)
Rows 2-60: Ch 1, sc in back loop only of each st across, turn.""", [8] * 60),
    ("picot edge", """Rnd 1: 24 sc in ring, join.
Rnd 2: Ch 1, *sc in next 3 sts, ch 3, sl st in 3rd ch from hook (picot made); rep from * around; join.""", [24, 24]),
    ("bobble row", """Ch 21.
Row 1: Sc in 2nd ch from hook and in each ch across.
Row 2: Ch 1, sc in first 2 sts, *bobble in next st, sc in next 3 sts; rep from * to last 2 sts, bobble in next st, sc in last st.""", [20, 20]),
    ("heel", """Rnd 1: 24 sc in magic ring, join.
Row 2: Ch 1, sc in next 12 sts, turn, leaving remaining 12 sts unworked.
Row 3: Ch 1, sk first st, sc in next 10 sts, turn.""", [24, 12, 10]),
    ("pairs", """Ch 20.
Row 1: (Sc, dc) in 2nd ch from hook, *sk 1 ch, (sc, dc) in next ch; rep from * across, turn.
Row 2: Ch 1, (sc, dc) in each sc across, turn.""", [20, 20]),
    ("moss", """Ch 22.
Row 1: Sc in 2nd ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn.
Row 2: Ch 1, sc in first sc, *sc in next ch-1 sp, ch 1; rep from * to last ch-1 sp, sc in last ch-1 sp, sc in last sc, turn.""", [11, 12]),
    ("flower", """Ch 5, join with sl st to form ring.
Rnd 1: Ch 1, 10 sc in ring, join.
Rnd 2: *Ch 3, sk 1 sc, sl st in next sc; rep from * around.
Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 loop around.""", [10, 0, 35]),
    ("star toes uk", """Round 1: 6 dc into a magic ring, ss to join.
Round 2: 1 ch, 2 dc in each st, ss to first dc.
Round 3: 1 ch, *1 dc in next st, 2 dc in next st; repeat from * to end, ss.
Round 4: 3 ch (counts as 1 tr), 1 tr in each of next 2 sts, 2 tr in next st, *1 tr in each of next 2 sts, 2 tr in next st, rep from * to last 2 sts, miss 2 sts, ss in 3rd of 3 ch.""", [6, 12, 18, 21]),
]


@pytest.mark.parametrize(("name", "text", "counts"), PIECES, ids=[p[0] for p in PIECES])
def test_piece(name: str, text: str, counts: list[int]) -> None:
    report = work(read(Source.of(text + "\n", name), "uk" if "uk" in name else "us"))
    rows = [r for r in report.rows if not (set(r.made) <= {"ch"} and r.read)]
    got = [r.counts[0] if r.read else r.why_not for r in rows]
    assert len(got) == len(counts), [(r.label, r.counts, r.why_not) for r in report.rows]
    assert got == counts
