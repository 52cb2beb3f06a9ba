"""Whole pieces in the wording of today, each count of them worked out by hand: all are read, all agree, and nothing is said against them.

The texts are our own, in forms that are common practice (no source)."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

PIECES = {
    "a doily": (
        "Rnd 1: Ch 6, join. Ch 4, (dc in ring, ch 1) 11 times, join with sl st in 3rd ch of ch-4. (12 dc, 12 ch-1 sps)\n"
        "Rnd 2: Sl st in ch-1 sp, ch 3, dc in same sp, ch 1, (2 dc, ch 1) in each ch-1 sp around, join. (24 dc)\n"
        "Rnd 3: Sl st in next dc and ch-1 sp, ch 1, sc in same sp, *ch 5, sc in next ch-1 sp; rep from * around, ending with ch 2, dc in first sc. (12 loops)\n"
        "Rnd 4: Ch 1, sc in same loop, *ch 6, sc in next loop; rep from * around, ending ch 6, join with sl st in first sc. (12 ch-6 loops)\n"
        "Rnd 5: (Sc, hdc, 3 dc, ch 3, 3 dc, hdc, sc) in each ch-6 loop around, join. (12 points)\n"
    ),
    "legs joined to a body": (
        "LEGS (make 2)\n"
        "R1: mr, 6 sc (6)\n"
        "R2: inc around (12)\n"
        "R3-6: sc around (12)\n"
        "Fasten off first leg. Do not fasten off second leg.\n"
        "\n"
        "BODY\n"
        "R7: ch 3, join to first leg with a sc, sc 11 around first leg, sc 3 along ch, sc 12 around second leg, sc 3 along other side of ch (30)\n"
        "R8-12: sc around (30)\n"
        "R13: [sc 3, dec] x 6 (24)\n"
    ),
    "a head and its ears": (
        "HEAD\n"
        "Rnd 1: 6 sc in MR [6]\n"
        "Rnd 2: (inc) x 6 [12]\n"
        "Rnd 3: (sc 1, inc) x 6 [18]\n"
        "Rnd 4: (sc 2, inc) x 6 [24]\n"
        "Rnds 5-8: sc around [24]\n"
        "Rnd 9: (sc 2, dec) x 6 [18]\n"
        "Rnd 10: (sc 1, dec) x 6 [12]\n"
        "Stuff.\n"
        "Rnd 11: dec x 6 [6]\n"
        "Fasten off, leaving a long tail. Weave the tail through the front loops of the remaining 6 sts and pull tight.\n"
        "\n"
        "EAR (make 2)\n"
        "Rnd 1: 4 sc in MR [4]\n"
        "Rnd 2: (sc 1, inc) x 2 [6]\n"
        "Rnd 3: (sc 2, inc) x 2 [8]\n"
        "Rnd 4: sc around [8]\n"
        "Flatten and sc 4 across through both layers [4]\n"
        "FO.\n"
    ),
    "an oval base": (
        "Rnd 1: Ch 11, 2 sc in 2nd ch from hook, sc in next 8 ch, 4 sc in last ch; working along other side of foundation, sc in next 8 ch, 2 sc in last ch, join. (24 sc)\n"
        "Rnd 2: Ch 1, 2 sc in each of first 2 sts, sc in next 8, 2 sc in each of next 4 sts, sc in next 8, 2 sc in each of last 2 sts, join. (32 sc)\n"
    ),
    "a bag with handles": (
        "Ch 80, join. Rnd 1: ch 1, sc in each ch around, join. (80 sc)\n"
        "Rnd 2: Ch 1, sc in first 20 sts, ch 40, sk 20 sts for handle, sc in next 20 sts, ch 40, skip 20 sts for handle, join. (40 sc, 2 ch-40 sps)\n"
        "Rnd 3: Ch 1, sc in each sc, 45 sc in each ch-40 sp, join. (130 sc)\n"
    ),
    "a flower in two layers": (
        "Rnd 1: Ch 5, join to form ring, ch 1, 12 sc in ring, join. (12 sc)\n"
        "Rnd 2: *Ch 3, sk 1 sc, sl st in next sc; rep from * around. (6 ch-3 loops)\n"
        "Rnd 3: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 loop around, join. (6 petals)\n"
        "Rnd 4: Working behind petals, *ch 5, sl st around post of next sl st of Rnd 2; rep from * around. (6 ch-5 loops)\n"
        "Rnd 5: (Sc, hdc, 5 dc, hdc, sc) in each loop around, join. (6 petals)\n"
    ),
    "slippers": (
        "Rnd 1: MR, 8 dc in ring, join. (8)\n"
        "Rnd 2: Ch 2, 2 dc in each st, join. (16)\n"
        "Rnd 3: Ch 2, [dc in 1, 2 dc in next] around, join. (24)\n"
        "Rnd 4-8: Ch 2, dc in each st, join. (24)\n"
        "FOOT: now work in rows.\n"
        "Row 9: Ch 2, dc in first 18, turn. (18)\n"
        "Row 10-16: Ch 2, dc in each across, turn. (18)\n"
        "Fold in half and sc last row together through both layers. (9)\n"
        "CUFF\n"
        "Rnd 1: Ch 1, sc 38 evenly around, join. (38)\n"
        "Rnd 2: Ch 2, [fpdc, bpdc] around, join. (38)\n"
    ),
    "clusters in spaces": (
        "Ch 53.\n"
        "Row 1: Sc in 2nd ch from hook, *ch 2, sk 2 ch, sc in next ch; rep from * across. (17 ch-2 sps)\n"
        "Row 2: Ch 4 (counts as dc, ch 1), turn, *3-dc cluster in next ch-2 sp, ch 2; rep from * to last sp, 3-dc cl in last sp, ch 1, dc in last sc. (17 clusters)\n"
        "Row 3: Ch 1, turn, sc in first dc, *ch 2, sc in next ch-2 sp; rep from * across, ending ch 2, sc in 3rd ch of beg ch-4. (17 ch-2 sps)\n"
    ),
    "a net bag": (
        "Rnd 1: Ch 4, 11 dc in 4th ch from hook, join. (12 dc)\n"
        "Rnd 2: Ch 3, dc in base of ch, 2 dc in each st around, join. (24)\n"
        "Rnd 3: *Ch 4, sk 1, sc in next; rep from * to last 2 sts, ch 1, sk 1, dc in first ch of rnd. (12 loops)\n"
        "Rnds 4-12: *Ch 5, sc in next ch-loop; rep from * around, ending with ch 2, dc in base of first ch-5. (12 loops)\n"
        "Rnd 13: Ch 1, 3 sc in each loop around, join. (36 sc)\n"
    ),
    "a snowflake": (
        "Round 1: Ch 6, sl st to form ring. Ch 3 (counts as dc), dc in ring, [ch 3, 2 dc in ring] five times, ch 3, join to top of ch-3. (12 dc, 6 ch-3 sp)\n"
        "Round 2: Sl st in next dc and in ch-3 sp, (ch 3, dc, ch 3, 2 dc) in same sp, *(2 dc, ch 3, 2 dc) in next ch-3 sp; rep from * around, join. (24 dc)\n"
        "Round 3: Sl st to ch-3 sp, *(sc, ch 3, sc, ch 5, sc, ch 3, sc) in ch-3 sp, ch 2; rep from * 5 more times, sl st to first sc. (24 sc)\n"
    ),
    "a hat in three sizes": (
        "Sizes: S (M, L)\n"
        "\n"
        "Rnd 1: Ch 2, 8 hdc in 2nd ch from hook, join. (8 hdc)\n"
        "Rnd 2: Ch 1, 2 hdc in each st around, join. (16 hdc)\n"
        "Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around, join. (24 hdc)\n"
        "Rnd 4: Ch 1, *hdc in next 2 sts, 2 hdc in next st; rep from * around, join. (32 hdc)\n"
        "Rnd 5: Ch 1, *hdc in next 3 sts, 2 hdc in next st; rep from * around, join. (40 hdc)\n"
        "Sizes M and L only:\n"
        "Rnd 6: Ch 1, *hdc in next 4 sts, 2 hdc in next st; rep from * around, join. (48 hdc)\n"
        "Size L only:\n"
        "Rnd 7: Ch 1, *hdc in next 5 sts, 2 hdc in next st; rep from * around, join. (56 hdc)\n"
        "All sizes:\n"
        "Next 8 (9, 10) rnds: Ch 1, hdc in each st around, join. [40 (48, 56) hdc]\n"
        "Brim: Ch 1, sc in each st around, join. Fasten off. [40 (48, 56) sc]\n"
    ),
    "a back with two shoulders": (
        "BACK\n"
        "Row 1: Fhdc 50, turn. (50 hdc)\n"
        "Row 2: Ch 2 (does not count), hdc in each st across, turn. (50 hdc)\n"
        "Rows 3-20: Rep Row 2.\n"
        "Shape armholes\n"
        "Row 21: Sl st in first 4 sts, ch 2, hdc in each st to last 4 sts, turn, leave rem 4 sts unworked. (42 hdc)\n"
        "Row 22: Ch 2, hdc2tog, hdc in each st to last 2 sts, hdc2tog, turn. (40 hdc)\n"
        "Rows 23-25: Rep Row 22. (34 hdc)\n"
        "Rows 26-30: Rep Row 2. (34 hdc)\n"
        "Right shoulder\n"
        "Row 31: Ch 2, hdc in first 10 sts, turn. (10 hdc)\n"
        "Row 32: Ch 2, hdc in each st. Fasten off. (10 hdc)\n"
        "Left shoulder\n"
        "Row 31: Sk next 14 sts for neck, join yarn in next st, ch 2, hdc in same st and in next 9 sts, turn. (10 hdc)\n"
        "Row 32: Ch 2, hdc in each st across. Fasten off. (10 hdc)\n"
    ),
    "a mitten": (
        "Rnd 1: Ch 28, join with sl st to form a ring. Ch 1, sc in each ch around. (28 sc)\n"
        "Rnds 2-8: Sc in each st around. (28 sc)\n"
        "Rnd 9: Sc in next 4 sts, ch 6, sk next 6 sts, sc in next 18 sts. (22 sc, 6 ch)\n"
        "Rnd 10: Sc in each st and ch around. (28 sc)\n"
        "Rnds 11-15: Sc in each st around. (28 sc)\n"
        "Rnd 16: [Sc2tog, sc in next 5 sts] 4 times. (24 sc)\n"
        "THUMB\n"
        "Rnd 1: Join yarn in first skipped st of Rnd 8, sc in next 6 skipped sts, sc in 6 ch. (12 sc)\n"
        "Rnds 2-6: Sc around. (12 sc)\n"
        "Rnd 7: Sc2tog around. (6 sc)\n"
    ),
    "blocks from corner to corner": (
        "Row 1: Ch 6, dc in 4th ch from hook and in next 2 ch. (1 block)\n"
        "Row 2: Ch 6, turn, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of next block, ch 3, 3 dc in same sp. (2 blocks)\n"
        "Row 3: Ch 6, turn, dc in 4th ch from hook and in next 2 ch, *sl st in ch-3 sp of next block, ch 3, 3 dc in same sp; rep from * across. (3 blocks)\n"
        "Rows 4-10: Rep Row 3. (10 blocks)\n"
        "Row 11: Turn, sl st in next 3 dc and in ch-3 sp, ch 3, 3 dc in same sp, *sl st in next ch-3 sp, ch 3, 3 dc in same sp; rep from * to last block, sl st in ch-3 sp of last block. (9 blocks)\n"
        "\n"
    ),
    "a triangle": (
        "Row 1: Ch 4, (2 dc, ch 2, 3 dc) in 4th ch from hook. (6 dc)\n"
        "Row 2: Ch 3, turn, 2 dc in first st, dc in each st to ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in each st to last st, 3 dc in last st.\n"
        "Rows 3-6: Rep Row 2.\n"
    ),
    "pairs of stitches": (
        "Ch 20.\n"
        "Row 1: (Sc, dc) in 2nd ch from hook, *sk next ch, (sc, dc) in next ch; rep from * to last 2 ch, sk next ch, sc in last ch. (19 sts)\n"
        "Row 2: Ch 1, turn, (sc, dc) in first st, *sk next st, (sc, dc) in next st; rep from * to last 2 sts, sk next st, sc in last st. (19 sts)\n"
        "Rows 3-9: Rep Row 2. (19 sts)\n"
    ),
    "shells and half shells": (
        "Ch 38.\n"
        "Row 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across. (6 shells)\n"
        "Row 2: Ch 3, turn, 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * across, ending with 3 dc in last sc.\n"
        "Row 3: Ch 1, turn, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across, ending with sc in top of tch. (6 shells)\n"
        "Rows 4-7: Rep Rows 2 and 3.\n"
    ),
    "woven rows in turn": (
        "Ch 24.\n"
        "Row 1: Sc in 2nd ch from hook, *ch 1, sk next ch, sc in next ch; rep from * across. (12 sc)\n"
        "Row 2: Ch 1, turn, sc in first sc, sc in next ch-1 sp, *ch 1, sk next sc, sc in next ch-1 sp; rep from * to last sc, sc in last sc. (13 sc)\n"
        "Row 3: Ch 1, turn, sc in first sc, *ch 1, sk next sc, sc in next ch-1 sp; rep from * to last 2 sc, ch 1, sk next sc, sc in last sc. (12 sc)\n"
        "Rows 4-9: Rep Rows 2 and 3.\n"
    ),
    "bobbles": (
        "Ch 22.\n"
        "Row 1: Sc in 2nd ch from hook and in each ch across. (21 sc)\n"
        "Row 2 (WS): Ch 1, turn, sc in first 2 sts, *bo in next st, sc in next 3 sts; rep from * to last 3 sts, bo in next st, sc in last 2 sts. (21 sts)\n"
        "Row 3: Ch 1, turn, sc in each st across. (21 sc)\n"
        "Row 4: Ch 1, turn, sc in first 4 sts, *bo in next st, sc in next 3 sts; rep from * to last st, sc in last st. (21 sts)\n"
        "Rows 5-9: Rep Rows 3-4 then Row 3.\n"
    ),
    "a cap": (
        "Round 1: Ch 4, 11 dc in 4th ch from hook, sl st in top of beg ch. (12 dc)\n"
        "Round 2: Ch 3 (counts as first dc), dc in same st, 2 dc in each st around, join. (24 dc)\n"
        "Round 3: Ch 3, 2 dc in next st, *dc in next st, 2 dc in next st; repeat from * around, join. (36 dc)\n"
        "Round 4: Ch 3, dc in next st, 2 dc in next st, *dc in next 2 sts, 2 dc in next st; repeat from * around, join. (48 dc)\n"
        "Rounds 5-10: Ch 3, dc in each st around, join. (48 dc)\n"
        "Round 11: Ch 1, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * around, join. (8 shells)\n"
    ),
}


@pytest.mark.parametrize("name", PIECES)
def test_every_row_is_read_and_agrees(name: str):
    report = check_source(Source.of(PIECES[name]), "us")
    assert [(r.label, r.counts) for r in report.rows if r.agrees is False] == []
    assert [f.code for f in report.findings if f.code[0] in "WN"] == []
    assert any(r.agrees for r in report.rows)


TOLD = (
    "The pattern is worked over a multiple of 8 sts, and lies flat.\n"
    "Rounds 1 and 2. Make a magic ring and work 8 sc into it. On the next round put 2 sc in every stitch, so that you finish up with 16 stitches.\n"
    "Round 3. Work one sc in the first stitch, then two in the next, and keep alternating like this all the way to your marker. You now have 24 stitches.\n"
    "Round 4. This time it's a sc in each of 2 stitches and then two in the next, eight times altogether. You now have 32 stitches.\n"
    "Rounds 5 to 7. Keep going in the same way, with one more plain stitch between the increases each time. You now have 56 stitches.\n"
    "Round 8. Work 10 sc, 6 chain, skip 6 stitches, work 22 sc, 6 chain, skip 6 stitches and work 12 sc. (44 sc)\n"
    "Round 9. Work one sc in each sc, and 6 sc into each of the handle loops. You're back to 56 stitches.\n"
)


def test_a_piece_told_as_one_would_say_it():
    report = check_source(Source.of(TOLD), "us")
    assert [r.counts for r in report.rows] == [(8,), (16,), (24,), (32,), (40,), (48,), (56,), (44,), (56,)]
    assert [f.code for f in report.findings if f.code[0] in "WN"] == []


SPOKEN = (
    "Chain 61. That's any even number plus one.\n"
    "Row 1: starting in the second chain from the hook, single crochet all the way across. You'll have 60.\n"
    "Row 2: chain 1, turn your work, single crochet in the first stitch, then double crochet in the next, and alternate single crochet, double crochet all the way to the end. (60)\n"
    "Row 3: chain 1, turn, and do exactly the same again. (60)\n"
    "Rows 4 to 20: keep repeating row 3.\n"
)


def test_a_piece_as_it_is_spoken():
    report = check_source(Source.of(SPOKEN), "us")
    assert [r.counts for r in report.rows] == [(61,), *[(60,)] * 20]
    assert [f.code for f in report.findings if f.code[0] in "WN"] == []
