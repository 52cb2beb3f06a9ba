"""Rows as designers write them today: each wording with the counts that a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work


def ring(n: int) -> str:
    """A first round of so many."""
    return f"Rnd 1: {n} sc in magic ring. ({n})\n"


RIB = "Ch 7.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (6)\nRows 2-24: Ch 1, sc in BLO of each st across, turn. (6)\n"
SQUARE = (
    "Ch 4, join with sl st to form ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12)\n"
    "Rnd 2: Sl st to ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice more, join. (24)\n"
)
FLAT = "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"

FLATTENED = "Rnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st. (12)\nRnd 3: Sc in each st around. (12)\n"
TWO = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across, turn. (10)\n"
THREE = TWO + "Row 3: Ch 1, dc across, turn. (10)\n"

TODAY: list[tuple[str, str, list[int]]] = [
    ("so often behind a stitch, 1", ring(6) + "Rnd 2: 2 sc, inc x4 (10)", [6, 10]),
    ("so often behind a stitch, 2", ring(6) + "Rnd 2: 2 sc, inc 4x (10)", [6, 10]),
    ("so often behind a stitch, 3", ring(6) + "Rnd 2: 2 sc, inc 4 times (10)", [6, 10]),
    ("so often behind a stitch, 4", ring(6) + "Rnd 2: 4 sc, inc twice (8)", [6, 8]),
    ("so often behind a stitch, 5", ring(12) + "Rnd 2: 8 sc, dec x2 (10)", [12, 10]),
    ("so often behind a stitch, 6", ring(12) + "Rnd 2: 8 sc, invdec x2 (10)", [12, 10]),
    ("so often behind a stitch, 7", ring(12) + "Rnd 2: 4 sc, dec*4 (8)", [12, 8]),
    ("so often behind a stitch, 8", ring(6) + "Rnd 2: 2 sc, 2 sc in next st x4 (10)", [6, 10]),
    ("so often behind a stitch, 9", ring(6) + "Rnd 2: 2 sc, (inc) x4 (10)", [6, 10]),
    ("so often behind a stitch, 10", ring(12) + "Rnd 2: (sc, inc x2) x4 (20)", [12, 20]),
    ("so often behind a stitch, 11", ring(12) + "Rnd 2: sc x4, inc x4, sc x4 (16)", [12, 16]),
    ("so often behind a stitch, 12", ring(6) + "Rnd 2: inc x6 (12)", [6, 12]),
    ("so often behind a stitch, 13", ring(6) + "Rnd 2: inc x6 (12)\nRnd 3: (sc, inc) x6 (18)\nRnd 4: (2 sc, inc) x6 (24)\nRnd 5: sc x24", [6, 12, 18, 24, 24]),
    ("in one loop, 1", ring(16) + "Rnd 2: 16 sc in BLO (16)", [16, 16]),
    ("in one loop, 2", ring(12) + "Rnd 2: sc 12 in BLO (12)", [12, 12]),
    ("in one loop, 3", ring(16) + "Rnd 2: In BLO: 16 sc (16)", [16, 16]),
    ("in one loop, 4", ring(16) + "Rnd 2: Working in BLO: 16 sc (16)", [16, 16]),
    ("in one loop, 5", ring(12) + "Rnd 2: In FLO: inc x12 (24)", [12, 24]),
    ("in one loop, 6", ring(12) + "Rnd 2: In BLO, sc in each st around (12)", [12, 12]),
    ("in one loop, 7", ring(12) + "Rnd 2: sc in BLO of each st around (12)", [12, 12]),
    ("in one loop, 8", ring(12) + "Rnd 2: 12 sc in back loops only (12)", [12, 12]),
    ("rows by R and a number, 1", ring(6) + "R2: inc x6 (12)\nR3: sc around (12)\nR4: repeat R3", [6, 12, 12, 12]),
    ("rows by R and a number, 2", ring(6) + "R2: sc around (6)\nR3: rep R2 (6)", [6, 6, 6]),
    ("rows by R and a number, 3", ring(6) + "R2: inc x6 (12)\nR3: (sc, dec) x4 (8)\nR4: sc (8)\nR5-6: rep R4", [6, 12, 8, 8, 8, 8]),
    ("rows by R and a number, 4", ring(6) + "R2: sc around (6)\nR3: same as R2", [6, 6, 6]),
    ("edges closed, 1", RIB + "Sl st the short ends together.\nRnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 2", RIB + "Slip stitch the first and last rows together.\nRnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 3", RIB + "Join the short ends with sl st to form a ring.\nRnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 4", RIB + "Sl st to join the last row to the foundation row.\nRnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 5", RIB + "Seam the brim with sl sts.\nRnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 6", RIB + "Rnd 1: Ch 1, sc in the end of each row around. (24)", [24]),
    ("edges closed, 7", RIB + "Sew the short ends together.\nRnd 1: Ch 1, sc in the end of each row around, join. (24)", [24]),
    ("the spaces of a granny square, 1", SQUARE + "Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, 3 dc in next sp, *(3 dc, ch 2, 3 dc) in next corner sp, 3 dc in next sp; rep from * twice more, join. (36)", [36]),
    ("the spaces of a granny square, 2", SQUARE + "Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, 3 dc in each sp to next corner, *(3 dc, ch 2, 3 dc) in corner sp, 3 dc in each sp to next corner; rep from * twice more, join. (36)", [36]),
    ("up to a space, 1", "Ch 4, join with sl st to form ring.\nRow 1: Ch 4 (counts as dc + ch 1), 3 dc in ring, ch 2, 3 dc in ring, ch 1, dc in ring, turn. (8)\nRow 2: Ch 4, *3 dc in next ch-1 sp, ch 1; rep from * to ch-2 sp, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, 3 dc in next ch-1 sp, ch 1, dc in 3rd ch of tch, turn. [14]\nRow 3: Ch 4, *3 dc in next ch-1 sp, ch 1; rep from * to ch-2 sp, (3 dc, ch 2, 3 dc) in ch-2 sp, ch 1, *3 dc in next ch-1 sp, ch 1; rep from * to end, dc in 3rd ch of tch, turn. [20]", [8, 14, 20]),
    ("a stitch over several, 1", "Special stitches: Xdc = sk next st, dc in next st, dc in skipped st\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\nRow 2: Ch 3 (counts as dc), *Xdc; rep from * across, turn. (11)", [11, 11]),
    ("a stitch over several, 2", "Special stitches: Xdc = sk next st, dc in next st, dc in skipped st\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\nRow 2: Ch 3 (counts as dc), Xdc over next 2 sts 5 times, turn. (11)", [11, 11]),
    ("a stitch over several, 3", "Crossed dc (Xdc): skip next st, dc in next st, dc in skipped st.\n\nCh 12.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (11)\nRow 2: Ch 3 (counts as dc), *Xdc; rep from * across, turn. (11)", [11, 11]),
    ("a stitch over several, 4", "Special stitches: C4F = skip next 2 sts, fptr in next 2 sts, working in front fptr in 2 skipped sts\n\nCh 13.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (11)\nRow 2: Ch 2 (counts as hdc), hdc in next 3 sts, C4F over next 4 sts, hdc in next 3 sts, turn. (11)", [11, 11]),
    ("a heading that names a stitch, 1", FLAT + "Decrease\nRow 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18)", [20, 18]),
    ("a heading that names a stitch, 2", FLAT + "Decreases:\nRow 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18)", [20, 18]),
    ("a heading that names a stitch, 3", FLAT + "Picot edge\nRow 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18)", [20, 18]),
    ("a heading that names a stitch, 4", FLAT + "Decrease section\nRow 2: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn. (18)", [20, 18]),
    ("a slip stitch that ends the round, 1", ring(6) + "Rnd 2: sc around, sl st in next st, FO (6)", [6, 6]),
    ("a slip stitch that ends the round, 2", ring(6) + "Rnd 2: sc in each st around, sl st in next st. Fasten off. (6)", [6, 6]),
    ("slip stitches that count, 1", ring(12) + "Rnd 2: sl st 4, sc 4, sl st 4 (12)", [12, 12]),
    ("slip stitches that count, 2", ring(12) + "Rnd 2: sc 3, (hdc, dc, hdc) in next st, sl st, sc 7 (14)", [12, 14]),
    ("a second shoulder, 1", "Ch 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20)\nFirst Shoulder\nRow 2: Ch 1, sc in next 6 sts, turn. (6)\nRow 3: Ch 1, sc in each st across. (6)\nFasten off.\nSecond Shoulder\nRow 2: Sk next 8 sts, join yarn in next st, ch 1, sc in same st and in each st across, turn. (6)\nRow 3: Ch 1, sc in each st across. (6)", [20, 6, 6, 6, 6]),
    ("sizes with a sentence behind, 1", "Hat\nSize: S (M, L, XL). Instructions are given for size S with larger sizes in parentheses.\n\nCh 31 (33, 35, 37).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (30 (32, 34, 36))", [30]),
    ("shells of so many, 1", ring(6) + "Rnd 2: 3-dc shell in each st around (18)", [6, 18]),
    ("shells of so many, 2", ring(6) + "Rnd 2: 5-dc shell in next st, sc in next 5 sts (10)", [6, 10]),
    ("the stitch it began with, 1", "Rnd 1: Ch 3, (puff in ring, ch 1) 8 times, sl st in top of beg puff. (8)", [8]),
    ("the stitch it began with, 2", "Rnd 1: Ch 4, join to form ring.\nRnd 2: Ch 3 (counts as dc), dc in ring, (2 dc in ring) 5 times, join to top of standing dc. (12)", [12]),
    ("the stitch it began with, 3", "Ch 4, join to form ring.\nRnd 1: Standing dc in ring, 11 dc in ring, join to top of standing dc. (12)\nRnd 2: 2 dc in each st around, join to first dc. (24)", [12, 24]),
    ("a group that begins with a slip stitch, 1", SQUARE + "Rnd 3: (Sl st, ch 3, 2 dc, ch 2, 3 dc) in next ch-2 sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice more, join. (24)", [24]),
    ("increases of a named stitch, 1", ring(6) + "Rnd 2: hdc inc, sc in next 5 sts (7)", [6, 7]),
    ("increases of a named stitch, 2", ring(6) + "Rnd 2: hdc inc x 2, dc inc x 2, sc 2 (10)", [6, 10]),
    ("increases of a named stitch, 3", ring(8) + "Rnd 2: 8 hdc-inc (16)", [8, 16]),
    ("increases of a named stitch, 4", ring(8) + "Rnd 2: 8 inc (hdc) [16]", [8, 16]),
    ("increases of a named stitch, 5", ring(8) + "Rnd 2: dc inc in each st around (16)", [8, 16]),
    ("another n times, 1", ring(6) + "Rnd 2: sc in each st around. (6)\nRnd 3: 2 sc in first st, sc in each st around (7)\nRep Rnds 2-3 another 2 times.", [6, 7, 7, 8, 8, 9]),
    ("onwards, 1", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across, turn. (10)\nRow 3 onwards: Repeat Row 2 until you have 6 rows.", [10, 10, 10, 10, 10, 10]),
    ("onwards, 2", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across, turn. (10)\nRow 3+: Repeat Row 2 until you have 6 rows.", [10, 10, 10, 10, 10, 10]),
    ("onwards, 3", "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRow 2: Ch 1, sc in each st across, turn. (10)\nRep Row 2, changing color every 2 rows, until you have a total of 10 rows.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("hexagon, 1", ring(12) + "Rnd 2: Ch 3 (counts as dc), dc in same st, ch 1, *2 dc in next st, ch 1; rep from * around, join. (24)\nRnd 3: Sl st to ch-1 sp, ch 3, (dc, ch 1, 2 dc) in same sp, *(2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * around, join. (48)", [12, 24, 48]),
    ("brackets in brackets, 1", "Rnd 1: (2 dc, ch 2, [3 dc, ch 2] 3 times) in 4th ch from hook, join. (12)", [12]),
    ("each loop, 1", ring(12) + "Rnd 2: 2 hdc in each front loop around (24)", [12, 24]),
    ("letters, 1", "Ch 43.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (42)\nRow 2: Ch 1, [1 A, 5 B] 7 times, turn. (42)", [42, 42]),
    ("letters, 2", "R1: 6X in MR (6)\nR2: 6V (12)\nR3: (X, V)x6 (18)", [6, 12, 18]),
    ("counts in other signs, 1", ring(6) + "Rnd 2: 2 sc in each st around {12}", [6, 12]),
    ("counts in other signs, 2", ring(6) + "Rnd 2: 2 sc in each st around => 12", [6, 12]),
    ("counts in other signs, 3", ring(6) + "Rnd 2: 2 sc in each st around | 12 |", [6, 12]),
    ("signs before labels, 1", "**Rnd 1:** 6 sc in magic ring. (6)\n**Rnd 2:** inc x 6 (12)", [6, 12]),
    ("signs before labels, 2", "• Rnd 1: 6 sc in magic ring. (6)\n• Rnd 2: inc x 6 (12)", [6, 12]),
    ("signs before labels, 3", "- Rnd 1: 6 sc in magic ring. (6)\n- Rnd 2: inc x 6 (12)", [6, 12]),
    ("signs before labels, 4", "R1 6 sc in MR\nR2 inc x6\nR3-R5 sc*12", [6, 12, 12, 12, 12]),
    ("words that make nothing, 1", ring(12) + "Rnd 2: sc in the BLO of each st around (12)", [12, 12]),
    ("words that make nothing, 2", ring(12) + "Rnd 2: sc in each st around (12). Do not fasten off.", [12, 12]),
    ("words that make nothing, 3", "Ch 20, join with sl st to form a ring, taking care not to twist the chain.\nRnd 1: Sc in each ch around. (20)\nChange colors.\nRnd 2: Sc around with color B. (20)", [20, 20]),
    ("words that make nothing, 4", ring(12) + "Rnd 2: Ch 1, rotate, sc in each st of the previous round (12)", [12, 12]),
    ("told as one talks", ring(6) + (
        "Rnd 2: Place 2 sc in each stitch around. You will have 12 stitches.\n"
        "Rnd 3: Work 1 sc in the first stitch and 2 sc in the next stitch; repeat this all the way around. (18 stitches)\n"
        "Rnd 4: Sc in each of the next 2 sts, then 2 sc in the next one. Repeat from * to the end of the round for a total of 24 sts.\n"
        "Rnd 5: sc in next 3 sts, inc, repeat around, giving you 30 sts."), [6, 12, 18, 24, 30]),
    ("in the base of the chain, between the brackets", (
        "Rnd 1: Ch 3 (counts as 1st dc here & throughout), 11 dc in ring, sl st to top of ch-3. (12 dc)\n"
        "Rnd 2: Ch 3, dc in base of ch 3, 2 dc in each st around, sl st to top of ch-3. (24 dc)\n"
        "Rnd 3: Ch 3, 2 dc in next st, [dc in next st, 2 dc in next st] rep between [ ] around, join. (36 dc)"), [12, 24, 36]),
    ("a strip closed into a tube", (
        "Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\nRows 2-12: Ch 1, sc in each st across, turn. (8 sc)\n"
        "Do not fasten off. Sl st the last row to the foundation chain to form a tube.\n"
        "Rnd 1: Ch 1, sc in each row end around; join with sl st to first sc. (12 sc)"), [8, 8, 12]),
    ("a round pressed flat, 1", FLATTENED + "Row 4: Working through both layers, sc 6. (6)", [12, 12, 6]),
    ("a round pressed flat, 2", FLATTENED + "Row 4: Ch 1, sc in each st across through both layers. (6)", [12, 12, 6]),
    ("a round pressed flat, 3", FLATTENED + "Row 4: Sc through both thicknesses across. (6)", [12, 12, 6]),
    ("the yarn is joined further on, in a line of its own", (
        "Ch 22.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (21 sc)\n\nFirst side\n"
        "Row 2: Ch 1, sc in each of next 6 sts, turn, leaving remaining sts unworked. (6 sc)\nFasten off.\n\nSecond side\n"
        "With RS facing, skip next 9 sts and join yarn in next st.\nRow 2: Ch 1, sc in each st to end, turn. (6 sc)"), [21, 6, 6]),
    ("a first group made of the start chain", (
        "Ch 18, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. (18 sc)\n"
        "Rnd 2: Ch 4 (counts as dc and ch 1), dc in same st, sk 2 sts, *(dc, ch 1, dc) in next st, sk 2 sts; rep from * around; join with sl st to 3rd ch. (12 dc)"), [18, 12]),
    ("finishing", FLAT + "Row 2: Ch 1, sc in each st across. (20)\nFasten off. Close the opening with the tail. Block to measurements.", [20]),
    ("rep between the brackets", (
        "Rnd 1: 6 sc in ring. (6)\nRnd 2: 2 sc in each st. (12)\n"
        "Rnd 3: Sc in next 2 sts, (2 sc in next st, sc in next st), rep bet ( ) 5 times.\n"
        "Rnd 4: Sc in next 2 sts, [2 sc in next st, sc in next 2 sts], repeat between [ ] to end."), [6, 12, 17, 22]),
    ("shaping at one end", FLAT + (
        "Row 2: Ch 1, dec 1, sc across, turn. (19)\nRow 3: Ch 1, sc to last 2 sts, dec, turn. (18)\nRows 4-7: Rep Rows 2-3. (14)\n"
        "Row 8: Decrease 1 st at beginning of row, turn. (13)"), [19, 18, 17, 16, 15, 14, 13]),
    ("so many rows as another, 1", TWO + "Work a further 5 rows as Row 2.", [10, 10, 10, 10, 10, 10, 10]),
    ("so many rows as another, 2", TWO + "Work 5 more rows as row 2.", [10, 10, 10, 10, 10, 10, 10]),
    ("so many rows as another, 3", TWO + "Work another 5 rows as Row 2.", [10, 10, 10, 10, 10, 10, 10]),
    ("so many rows as another, 4", TWO + "Continue with row 2 until you have 8 rows.", [10, 10, 10, 10, 10, 10, 10, 10]),
    ("so many rows as another, 5", TWO + "Continue repeating Row 2 until Row 10.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 1", TWO + "Repeat Row 2, 5x.", [10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 2", TWO + "Repeat row 2 - 5 more times.", [10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 3", TWO + "Repeat Row 2 (5 more times).", [10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 4", TWO + "Rep row 2, 4 more times.", [10, 10, 10, 10, 10, 10]),
    ("so often more, 5", TWO + "Repeat Row 2 through Row 10.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 6", TWO + "Repeat Row 2 until you have completed 12 rows total.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 7", TWO + "Repeat Row 2 until you've got 12 rows.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 8", TWO + "Repeat Row 2 for the next 8 rows.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so often more, 9", THREE + "Rep rows 2 and 3, 3 more times.", [10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so many more rows, 1", TWO + "Repeat Row 2 for 8 more rows.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("so many more rows, 2", THREE + "Repeat Rows 2 & 3 for 8 more rows.", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("rows in turn, 1", THREE + "Rows 4-9: Alternate Rows 2 and 3.", [10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("rows in turn, 2", THREE + "Rows 4-9: Continue alternating Rows 2 and 3.", [10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("rows in turn, 3", THREE + "Rows 4-9: Repeat the pattern of Rows 2 and 3.", [10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("rows in turn, 4", THREE + "Rows 4-11: repeat [row 2-3] 4x", [10, 10, 10, 10, 10, 10, 10, 10, 10, 10, 10]),
    ("the remaining stitches, 1", ring(6) + "Rnd 2: 2 inc, sc in remaining 4 sts (8)", [6, 8]),
    ("the remaining stitches, 2", ring(6) + "Rnd 2: 2 inc, sc in the remaining 4 sts (8)", [6, 8]),
    ("the remaining stitches, 3", ring(6) + "Rnd 2: 2 inc, sc in rem 4 sts (8)", [6, 8]),
    ("brackets to the end, 1", ring(12) + "Rnd 2: (1 sc, inc) all the way around", [12, 18]),
    ("brackets to the end, 2", ring(12) + "Rnd 2: [1 sc, inc] until end", [12, 18]),
    ("brackets to the end, 3", ring(12) + "Rnd 2: [1 sc, inc] continue around", [12, 18]),
    ("a row in brackets, 1", "R1 [6sc in MR] <6>\nR2 [inc x6] <12>\nR3 [12sc] <12>", [6, 12, 12]),
    ("a row in brackets, 2", ring(12) + "Rnd 2: (12 sc) [12]", [12, 12]),
    ("a count behind a chain, 1", "Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring, sl st to 3rd ch. 12 dc\nRnd 2: Ch 1, sc around. (12)", [12, 12]),
    ("until so many are left, 1", TWO + "Row 3: Ch 1, dec, sc until last 2 sts, dec. (8)", [10, 8]),
    ("until so many are left, 2", TWO + "Row 3: Ch 1, dec, sc until 2 sts rem, dec. (8)", [10, 8]),
    ("until so many are left, 3", TWO + "Row 3: Ch 1, dec, sc in each st until there are 2 sts left, dec. (8)", [10, 8]),
    ("the last one left out, 1", "Rnd 1: (Sc, ch 3) 6 times in magic ring, join. (6 sc)\nRnd 2: Ch 1, sc in same st, *3 sc in next ch-3 sp, sc in next sc; rep from * around, omitting last sc; join. (24 sc)", [6, 24]),
    ("talk between rows, 1", ring(6) + "Now we are going to increase in every stitch.\nRnd 2: Inc in every st. (12)", [6, 12]),
    ("talk between rows, 2", ring(6) + "From now on you will decrease.\nRnd 2: Inc in every st. (12)", [6, 12]),
    ("talk between rows, 3", ring(6) + "In this round you'll work 9 sc.\nRnd 2: Inc in every st. (12)", [6, 12]),
    ("talk between rows, 4", ring(6) + "We will be working in sc from here.\nRnd 2: Inc in every st. (12)", [6, 12]),
    ("two rounds, 1", ring(6) + "Rnd 2: inc x 6 (12)\nRnd 3 + 4: sc around (12)", [6, 12, 12, 12]),
    ("from your hook, 1", "Ch 12.\nRow 1: Sc in the second chain from your hook and in each chain across. (11)", [11]),
    ("shaping on each of the next rows", FLAT + "Dec 1 st at beg of next 4 rows. (16)", [19, 18, 17, 16]),
    ("an oval whose other side is its bottom", (
        "Ch 6.\nRnd 1: hdc in 2nd ch from hook, hdc in next 3 ch, 3 hdc in last ch, working along the bottom of the chain, hdc in next 3 ch, "
        "2 hdc in the same ch as the first hdc. [12]"), [12]),
    ("an oval that is turned about", (
        "Ch 6.\nRnd 1: hdc in 2nd ch from hook, hdc in next 3 ch, 3 hdc in last ch; rotate, hdc in next 3 ch, 2 hdc in the same ch as the first hdc. [12]"), [12]),
    ("the stitch behind a post stitch", (
        "Rnd 1: 12 dc in magic ring, join. (12)\nRnd 2: Ch 1, sc in each st around. (12)\n"
        "Rnd 3: *sc in next 2 sts, fptr around dc of Rnd 1, sk sc behind; rep from * around (12)"), [12, 12, 12]),
    ("stitches told over several, in brackets behind the name", (
        "Special stitches\nCable (worked over 4 sts): Skip 2 sts, FPtr around each of next 2 sts, FPtr around each of the 2 skipped sts.\n\n"
        "Ch 16.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (14)\nRow 2: Ch 1, hdc in first 5 sts, Cable, hdc in last 5 sts, turn. (14)"), [14, 14]),
    ("a stitch told before the rows", "V-st: (dc, ch 1, dc) in indicated st or sp.\n\n" + FLAT, [21, 20]),
    ("terms told before the rows", "Hat\nUS terms. Ch 3 counts as dc throughout.\n" + FLAT, [21, 20]),
    ("up to and with a row", TWO + "Repeat Row 2 up to and including Row 10.", [10] * 10),
    ("you will now have", "Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around, join. You will (now) have 24 sts.", [12, 24]),
    ("a yarn on a line of its own", "Hat\n\nToe\nWith Color A\n" + ring(12) + "Rnd 2: sc around (12)", [12, 12]),
    ("a round that begins in the first corner", (
        "Granny\nRnd 1: Ch 3, 2 dc in magic ring, ch 2, (3 dc in ring, ch 2) 3 times, join. (12)\n"
        "Rnd 2: Ch 1, *3 sc in corner sp, sc in each dc to next corner; rep from * around, join. (24)"), [12, 24]),
    ("a first cluster with its chain", "Ch 4, join to form ring.\nRnd 1: Ch 3, dc2tog in ring (counts as first cluster), ch 3, (dc3tog in ring, ch 3) 5 times, join. (6 clusters)", [6]),
    ("V-stitches behind a turning chain", (
        "Special stitches: V-st = (dc, ch 1, dc) in one st\n\nCh 14.\nRow 1: V-st in 5th ch from hook, *sk 2 ch, V-st in next ch; rep from * to last 3 ch, "
        "sk 2 ch, dc in last ch, turn. (3 V-sts, 2 dc)\nRow 2: Ch 3, V-st in each V-st across, dc in top of tch, turn. (3 V-sts, 2 dc)"), [8, 8]),
    ("a part told as another", (
        "Bear\n\nHead\nRnd 1: 6 sc in magic ring (6)\nRnd 2: Inc in each st (12)\nFasten off.\n\nBody\nWork as for head.\nRnd 3: Sc around (12)"), [6, 12, 6, 12, 12]),
    ("so many rounds of another part", (
        "Mat\n\nFirst Motif\nRnd 1: 6 sc in magic ring (6)\nRnd 2: Inc in each st (12)\nRnd 3: (Sc, inc) 6 times (18)\n\n"
        "Second Motif\nWork as for First Motif until 2 rnds are completed.\nRnd 3: Sc around (12)"), [6, 12, 18, 6, 12, 12]),
    ("another part that is the title of the text", "First Motif\nRnd 1: 6 sc in magic ring (6)\nRnd 2: Inc in each st (12)\n\nSecond Motif\nWork as for First Motif.", [6, 12, 6, 12]),
    ("a pattern in brackets over so many", FLAT + "Row 2: Ch 1, sc in next 4 sts, (sc, dc) in pattern over next 12 sts, sc in last 4 sts.", [20, 20]),
    ("both sides of a chain, 1", "Ch 13.\nRnd 1: Sc in 2nd ch from hook and in each of next 11 ch; working along the other side of the ch, sc in each of next 12 ch. (24 sc)\nRnd 2: Sc in each st around. (24)", [13, 24, 24]),
    ("both sides of a chain, 2", "Ch 13.\nRnd 1: Sc in 2nd ch from hook and in each ch across, do not turn; working along the other side of the ch, sc in each ch across. (24 sc)", [13, 24]),
    ("both sides of a chain, 3", "Ch 13.\nRnd 1: Sc in 2nd ch from hook, sc in next 10 ch, 3 sc in last ch; working along the other side of the ch, sc in next 11 ch. (25 sc)", [13, 25]),
    ("picots closed in the stitch just made, 1", ring(12) + "Rnd 2: Ch 1, *sc in next 2 sts, ch 3, sl st in last sc made; rep from * around, join. (12 sc, 6 picots)", [12, 12]),
    ("picots closed in the stitch just made, 2", ring(12) + "Rnd 2: Ch 1, *sc in next 2 sts, ch 3, sl st in top of sc just made; rep from * around, join. (12 sc)", [12, 12]),
    ("picots closed in their first chain", ring(12) + "Rnd 2: Ch 1, *sc in next 2 sts, ch 3, sl st in first ch of ch-3; rep from * around, join. (12 sc)", [12, 12]),
    ("loops of one length among others", (
        "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (13 sc)\nRow 2: Ch 1, sc in first sc, *ch 5, sk 3 sc, sc in next sc; rep from * across, turn. (3 ch-5 loops)\n"
        "Row 3: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn. (2 ch-5 loops)"), [13, 4, 5]),
    ("in a front loop further down", TWO + "Row 3: Ch 1, sc in first 4 sts, dc in front loop 2 rows below, sc BLO in next 4 sts, sc in last st. (9 sc, 1 dc)", [10, 10, 10]),
    ("curls on a chain", ring(12) + "Rnd 2: (Ch 10, starting in 2nd ch from hook, 2 sc in each ch, sl st in next st) x 12 (216 sc)", [12, 216]),
    ("between the stars", (
        "Ch 14.\nRow 1: Sc in 2nd ch from hook, *sk 2 chs, 5 dc in next ch, sk 2 chs, sc in next ch; rep from * across, turn. (2 fans, 3 sc)\n"
        "Row 2: Ch 3 (counts as dc), 2 dc in same st, *sc in 3rd dc of fan, 5 dc in next sc*, rep between *'s to last fan, sc in 3rd dc of last fan, 3 dc in last sc, turn. (13 sts)"), [13, 13]),
    ("rounds told as those of another part", (
        "Bear\n\nHead\nRnd 1: 6 sc in magic ring (6)\nRnd 2: Inc in each st (12)\nFasten off.\n\nBody\nRnds 1-2: Same as Head. (12)\nRnd 3: Sc around (12)"), [6, 12, 6, 12, 12]),
    ("yarn joined with the first stitch, 1", ring(12) + "Rnd 2: Join B with a sc in any st, sc in next 11 sts, join. (12)", [12, 12]),
    ("yarn joined with the first stitch, 2", ring(9) + "Rnd 2: Join with dc in first st, 2 dc in next st, *dc in next st, 2 dc in next st; rep from * to last st, dc in last st. (13)", [9, 13]),
    ("yarn joined with the first stitch, 3", SQUARE + "Rnd 3: Join new color with a sc in any ch-2 sp, (ch 2, sc) in same sp, sc in next 6 dc, *(sc, ch 2, sc) in next ch-2 sp, sc in next 6 dc; rep from * around. (32)", [32]),
    ("so many of a stitch in one loop", ring(12) + "Rnd 2: 5 sc, 4 FLO hdc, 3 BLO sc (12)", [12, 12]),
    ("the number before the bracket, 1", ring(8) + "Rnd 2: 4 x (sc, inc) (12)", [8, 12]),
    ("the number before the bracket, 2", ring(8) + "Rnd 2: 2 sc, 3x[sc, inc] (11)", [8, 11]),
    ("the number before the bracket, 3", ring(8) + "Rnd 2: 4*(sc, inc) (12)", [8, 12]),
    ("the number before the bracket, 4", ring(8) + "Rnd 2: 2 x (sc, 2 x [hdc], inc) (10)", [8, 10]),
    ("the number in a bracket of its own", ring(8) + "Rnd 2: (sc, inc) [4 times] (12)", [8, 12]),
    ("a name and its abbreviation, 1", ring(10) + "Rnd 2: single crochet (sc) in next 4 stitches (sts), half double crochet (hdc) in next 6 sts (10)", [10, 10]),
    ("a name and its abbreviation, 2", "Rnd 1: Work 7 single crochet (sc) into a magic ring (MR). (7)\nRnd 2: Increase (inc) in each st around. (14)", [7, 14]),
    ("a name and its abbreviation, 3", "Row 1: Foundation single crochet (fsc) 15, turn. (15)\nRow 2: Ch 1, single crochet 2 together (sc2tog), sc in each st across. (14)", [15, 14]),
    ("a name and its abbreviation, 4", ring(12) + "Rnd 2: Ch 3, dc in each st around. (12)\nRnd 3: *Front post double crochet (FPdc) around next st, back post double crochet (BPdc) around next st; repeat (rep) from * around. (12)", [12, 12, 12]),
    ("braces for brackets", ring(15) + "Rnd 2: {sc2tog, sc in next 3 sts} 3 times (12)", [15, 12]),
    ("a chainless start by its letters", ring(10) + "Rnd 2: Csdc in first st, dc in same st, 2 dc in each st around. (20)", [10, 20]),
    ("a slip stitch to the next round's first stitch, 1", ring(9) + "Rnd 2: sc around, sl st to next st. Fasten off. (9)", [9, 9]),
    ("a slip stitch to the next round's first stitch, 2", ring(9) + "Rnd 2: hdc in each st around (9). Sl st to next st. Fasten off.", [9, 9]),
    ("a whole row of slip stitches, 1", ring(9) + "Rnd 2: 9 sl st (9)\nRnd 3: 2 sc in each st around (18)", [9, 9, 18]),
    ("a whole row of slip stitches, 2", FLAT + "Row 2: Ch 1, sl st in next 20 sts, turn. (20)\nRow 3: Ch 1, sc in each st across. (20)", [20, 20, 20]),
    ("so often in a stitch, 1", ring(8) + "Rnd 2: *hdc twice in next st, hdc in next st; rep from * around (12)", [8, 12]),
    ("so often in a stitch, 2", ring(8) + "Rnd 2: sc 3 times in each st around (24)", [8, 24]),
    ("the corner that the round began in comes last", SQUARE + "Rnd 3: Sl st to ch-2 sp, ch 3, 3 dc in same sp, *(4 dc, ch 2, 4 dc) in next ch-2 sp; rep from * twice more, 4 dc in first ch-2 sp, ch 2, join. (32)", [32]),
    ("the second stitch behind a chain that counts", FLAT + "Row 2: Ch 3 (counts as dc), dc in 2nd st and in each st across, turn. (20)", [20, 20]),
    ("a chain that doesn't count", FLAT + "Row 2: Ch 3 (doesn't count as a st), dc in first st and in each st across, turn. (20)", [20, 20]),
    ("a chain and a stitch for two together", FLAT + "Row 2: Ch 2, dc in next st (counts as dc2tog), dc in next 16 sts, dc2tog, turn. (18)", [20, 18]),
    ("a row joined to go on in rounds", FLAT + "Row 2: Ch 1, sc in next 8 sts, ch 3, sk 4 sts, sc in last 8 sts, turn. (16 sc)\nRow 3: Ch 1, sc in each st and ch across, join to first st to work in the round. (19)\nRnd 4: Ch 1, sc in each st around, join. (19)", [20, 16, 19, 19]),
    ("two kinds passed over", "Ch 10.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (9)\nRow 2: Ch 1, *(sc, hdc, dc) in next st, sk 2 sts; rep from * across, turn. (9)\nRow 3: Ch 1, *(sc, ch 1, dc) in next dc, sk next hdc and sc; rep from * across. (6)", [9, 9, 6]),
    ("a group in the same space and in each", ring(10) + "Rnd 2: Ch 1, *sc in next st, ch 3, sk next st; rep from * around, join. (5)\nRnd 3: Sl st in first ch-3 sp, ch 1, (sc, 2 dc, sc) in same sp and in each ch-3 sp around, join. (20)", [10, 5, 20]),
    ("worked instead in the spaces, 1", "Rnd 1: Ch 3 (counts as dc), 3 dc in magic ring, ch 1, (4 dc in ring, ch 1) 3 times, join. (16 dc, 4 ch-1 sps)\nRnd 2: Ch 1, sc in same st and in each dc around, working (sc, ch 2, sc) in each ch-1 sp, join. (24 sc)", [16, 24]),
    ("worked instead in the spaces, 2", (
        "Rnd 1: Ch 3 (counts as dc), dc in magic ring, ch 2, (2 dc in ring, ch 2) 3 times, join. (8)\n"
        "Rnd 2: Sl st to corner ch-2 sp, ch 3, (dc, ch 2, 2 dc) in same sp, ch 1, *(2 dc, ch 2, 2 dc) in next ch-2 sp, ch 1; rep from * 2 more times, join. (16)\n"
        "Rnd 3: Ch 1, sc in same st and in each dc around, working 1 sc in each ch-1 sp and 3 sc in each corner, join. (32)"), [8, 16, 32]),
    ("fewer evenly, behind the same stitch", ring(20) + "Rnd 2: Ch 1, sc in same st and in each st around, decreasing 5 sts evenly, join. (15)", [20, 15]),
    ("two in the first and in the last", FLAT + "Row 2: Ch 1, hdc in each st across, working 2 hdc in first and last sts, turn. (22)", [20, 22]),
    ("stitches and spaces up to the last two, 1", FLAT + "Row 2: Ch 1, *sc in next st, ch 1, sk next st; rep from * to last 2 sts, sc in last 2 sts, turn. (11)\nRow 3: Ch 1, sc in each sc and ch-1 sp to last 2 sts, sc2tog, turn. (19)", [20, 11, 19]),
    ("stitches and spaces up to the last two, 2", FLAT + "Row 2: Ch 1, *sc in next st, ch 1, sk next st; rep from * to last 2 sts, sc in last 2 sts, turn. (11)\nRow 3: Ch 1, sc in each sc and in each ch-1 sp to last st, 2 sc in last st, turn. (21)", [20, 11, 21]),
    ("the corners of a solid square", (
        "Rnd 1: 8 sc in magic ring, join. (8)\nRnd 2: Ch 1, *sc in next st, 3 sc in next st; rep from * around, join. (16)\n"
        "Rnd 3: Ch 1, *sc in each st to corner, 3 sc in corner st; rep from * around, sc in each rem st, join. (24)\n"
        "Rnd 4: Ch 1, *sc in each st to next corner, 3 sc in corner; rep from * around, join. (32)"), [8, 16, 24, 32]),
    ("the corner where the hook is", SQUARE + "Rnd 3: Sl st to ch-2 sp, ch 1, *(hdc, ch 2, hdc) in corner, hdc in each st to next corner; rep from * around, join. (32)", [32]),
    ("a marker in a stitch told by its number", FLAT + "Row 2: Ch 1, sc in each st across, place marker in 8th st, turn. (20)\nRow 3: Ch 1, sc to marked st, 3 sc in marked st, sc to end, turn. (22)", [20, 20, 22]),
    ("a marker in the middle of a group, 1", FLAT + "Row 2: Ch 1, sc in next 9 sts, 3 sc in next st, place marker in center st of 3-sc, sc in next 10 sts, turn. (22)\nRow 3: Ch 1, sc to marked st, 3 sc in marked st, sc to end. (24)", [20, 22, 24]),
    ("a marker in the middle of a group, 2", FLAT + "Row 2: Ch 1, sc in next 9 sts, 5 sc in next st, place marker in 3rd sc of the 5 sc just made, sc in next 10 sts, turn. (24)\nRow 3: Ch 1, sc to 1 st before marked st, sc3tog, sc to end. (22)", [20, 24, 22]),
    ("the last round ends otherwise, 1", ring(18) + "Rnd 2: Ch 1, sc in same st, *sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * around, ending last rep with sl st in first sc instead of sc. (18)", [18, 18]),
    ("the last round ends otherwise, 2", ring(10) + "Rnd 2: Ch 1, sc in same st, *ch 3, sk next st, sc in next st; rep from * around, ending with sl st in first sc instead of last sc. (5)", [10, 5]),
    ("a chain of the row below told by its length", (
        "Ch 18.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (17)\nRow 2: Ch 1, sc in first sc, *ch 5, sk 3 sc, sc in next sc; rep from * across, turn. (5)\n"
        "Row 3: Ch 5 (counts as dc and ch 2), sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, ch 2, dc in last sc, turn. (6)\n"
        "Row 4: Ch 1, sc in first dc, *ch 5, sc in next ch-5 sp; rep from * across, ch 5, sc in 3rd ch of beg ch-5, turn. (5)"), [17, 5, 6, 5]),
    ("the space that closes the round", (
        ring(15) + "Rnd 2: Ch 1, sc in same st, *ch 3, sk 2 sts, sc in next st; rep from * 3 more times, ch 1, sk 2 sts, hdc in first sc. (5)\n"
        "Rnd 3: Ch 1, sc in same sp, *ch 3, sc in next ch-3 sp; rep from * around, ch 3, join. (5)"), [15, 5, 5]),
    ("so often a single stitch", ring(12) + "Rnd 2: sc 6, 3 x dec (9)", [12, 9]),
    ("a stitch told by its number behind those passed over, 1", FLAT + "Row 2: Ch 1, sk first st, sc in 2nd st and in each st across, turn. (19)", [20, 19]),
    ("a stitch told by its number behind those passed over, 2", FLAT + "Row 2: Ch 3 (counts as dc), sk 1 st, dc in 3rd st and in each st across, turn. (19)", [20, 19]),
    ("a slip stitch to the next round's first stitch, 3", ring(9) + "Rnd 2: sc in each st around. Sl st to the next st and fasten off. (9)", [9, 9]),
    ("the corner that the round began in comes last, 2", SQUARE + "Rnd 3: Sl st to corner sp, ch 3, dc in same sp, *dc in each dc to next corner, (2 dc, ch 2, 2 dc) in corner; rep from * twice more, dc in each dc to first corner, 2 dc in first corner sp, ch 2, join. (40)", [40]),
]

UK: list[tuple[str, str, list[int]]] = [
    ("chain spaces without a hyphen, 1", "Round 1: (3tr, 2ch) 4 times into magic ring, ss to join. (12tr)\nRound 2: 1ch, *1dc in each of next 3tr, 3dc in next 2ch sp; rep from * to end, ss to join. (24dc)", [12, 24]),
    ("chain spaces without a hyphen, 2", "Round 1: (3tr, 2ch) 4 times into magic ring, ss to join. (12tr)\nRound 2: ss to 2ch sp, 3ch, (1tr, 2ch, 2tr) in same sp, *1tr in each of next 3tr, (2tr, 2ch, 2tr) in 2ch sp; rep from * twice, 1tr in each of next 3tr, ss to join. (28tr)", [12, 28]),
    ("chain spaces without a hyphen, 3", "Round 1: (3tr, 2ch) 4 times into magic ring, ss to join. (12tr)\nRound 2: 1ch, 5dc in each 2ch-sp around, ss to join. (20dc)", [12, 20]),
    ("chain spaces without a hyphen, 4", "Round 1: (3tr, 2ch) 4 times into magic ring, ss to join. (12tr)\nRound 2: 1ch, 5dc in each 2ch space around, ss to join. (20dc)", [12, 20]),
]


@pytest.mark.parametrize(("text", "counts"), [w[1:] for w in UK], ids=[w[0] for w in UK])
def test_uk_words_too(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(text), "uk"))
    assert [r.counts[0] for r in report.rows] == counts
    assert [f.code for f in report.findings if f.code[0] == "W"] == []


@pytest.mark.parametrize(("text", "counts"), [w[1:] for w in TODAY], ids=[w[0] for w in TODAY])
def test_it_is_worked_as_it_is_meant(text: str, counts: list[int]) -> None:
    document = read(Source.of(text), "us")
    report = work(document)
    assert [r.counts[0] if r.counts else None for r in report.rows][-len(counts) :] == counts
    assert [f.code for f in report.findings if f.code[0] == "W" or f.code == "N001"] == []
    assert write(document) == text


def test_shoulders_stand_on_the_stitches_that_were_left() -> None:
    text = FLAT + (
        "Row 2: Ch 1, sc in next 6 sts, turn, leaving remaining sts unworked. (6)\nRow 3: Ch 1, sc in each st across. (6)\nFasten off.\nSecond shoulder\n"
        "With RS facing, sk next 8 sts, join yarn in next st, ch 1, sc in same st and in each st across, turn. (6)\n"
    )
    report = work(read(Source.of(text), "us"))
    assert ([r.counts[0] for r in report.rows][2:], report.findings) == ([6, 6, 6], ())


def test_ribs_whose_rows_begin_and_end_with_slip_stitches_keep_their_count() -> None:
    text = (
        "Ch 31.\nRow 1: Sl st in 2nd ch from hook and next 4 ch, hdc in each remaining ch, turn. (30)\n"
        "Row 2: Ch 1, hdc in BLO of each st across to last 5 sts, sl st in BLO of last 5 sts, turn. (30)\n"
        "Row 3: Ch 1, sl st BLO in first 5 sts, hdc BLO in each remaining st, turn.\nRepeat Rows 2-3 until you have a total of 10 rows.\n"
    )
    assert [r.counts[0] for r in work(read(Source.of(text), "us")).rows][1:] == [30] * 10


def test_moss_stitch_with_a_turning_space_does_not_shrink() -> None:
    text = (
        "Ch 12.\nRow 1: Sc in 4th ch from hook, *ch 1, sk 1 ch, sc in next ch; rep from * across, turn. (5 sc)\n"
        "Row 2: Ch 2, sc in next ch-1 sp, *ch 1, sc in next ch-1 sp; rep from * across, ending with sc in turning ch sp, turn. (5 sc)\nRows 3-5: Rep Row 2.\n"
    )
    assert [r.counts[0] for r in work(read(Source.of(text), "us")).rows][1:] == [5] * 5


def test_counts_of_half_shells_and_of_each_end_are_left_aside() -> None:
    text = (
        "Ch 20.\nRow 1: Sc in 2nd ch from hook, *skip 2 ch, 5 dc in next ch, skip 2 ch, sc in next ch; rep from * across, turn. (3 shells)\n"
        "Row 2: Ch 3, 2 dc in first sc, *skip 2 dc, sc in next dc, skip 2 dc, 5 dc in next sc; rep from * across, ending with 3 dc in last sc. (2 shells, 2 half-shells)\n"
    )
    report = work(read(Source.of(text), "us"))
    assert ([r.counts[0] for r in report.rows], report.findings) == ([20, 19, 19], ())


@pytest.mark.parametrize(("words", "colours"), [
    ("Rows 2-7: Ch 1, sc in each st across, turn, working 2 rows each of B and C in turn. (20)\n", ["A", *"BBCCBB"]),
    ("Work 1 row each of B, C and A.\nRows 2-7: Ch 1, sc in each st across, turn. (20)\n", ["A", *"BCABCA"]),
    ("Rows 2-5: Ch 1, sc in each st across, turn, alternating B and A every two rows. (20)\n", ["A", *"BBAA"]),
    ("With B.\nRows 2-3: Ch 1, sc in each st across, turn. (20)\n", ["A", *"BB"]),
])
def test_colours_that_take_turns_and_colours_on_a_line_of_their_own(words: str, colours: list[str]) -> None:
    fabric = work(read(Source.of("With A, " + FLAT.replace("Ch 21", "ch 21") + words), "us")).fabrics[0]
    assert fabric is not None
    assert [fabric.colours[fabric.colour[r.start]] for r in fabric.rows if r.label] == colours


def test_letters_behind_stitches_are_their_yarns() -> None:
    text = ring(6) + "Rnd 2: 2 sc in each st around. (12)\nRnd 3: [1 A, 2 B] 4 times. (12)\nRnd 4: *2 sc A, 1 sc B* repeat around. (12)\n"
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    assert ["".join(fabric.colours[c] for c in fabric.colour[r.start : r.end]) for r in fabric.rows[-2:]] == ["ABB" * 4, "AAB" * 4]


@pytest.mark.parametrize("label", ["Row 2 and all WS rows", "Rows 2, 4", "Even rows", "Row 2 and every other even-numbered row"])
def test_rows_that_come_in_between_are_worked_in_between(label: str) -> None:
    text = (
        "Ch 16.\nRow 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (15 sc)\n" + f"{label}: Ch 1, hdc in each st across, turn.\n"
        "Row 3: Ch 1, 2 sc in first st, sc across to last st, 2 sc in last st, turn. (17 sc)\n"
        "Row 5: Ch 1, 2 sc in first st, sc across to last st, 2 sc in last st, turn. (19 sc)\n"
    )
    report = work(read(Source.of(text), "us"))
    fabric = report.fabrics[0]
    assert fabric is not None
    worked = [(r.label.rpartition(" ")[2], fabric.counted(r)) for r in fabric.rows if r.label]
    assert worked == [("1", {"sc": 15}), ("2", {"hdc": 15}), ("3", {"sc": 17}), ("4", {"hdc": 17}), ("5", {"sc": 19})]
    assert not [f for f in report.findings if f.code[0] == "W"]


@pytest.mark.parametrize(("said", "names"), [("0-3m (3-6m, 6-12m)", ("0-3m", "3-6m", "6-12m")), ("6-12 mos (1-2 yrs, 3-4 yrs)", ("6-12 mos", "1-2 yrs", "3-4 yrs"))])
def test_sizes_by_age(said: str, names: tuple[str, ...]) -> None:
    document = read(Source.of(f"Sizes: {said}\n\nCh 11 (13, 15).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. [10 (12, 14)]\n"), "us")
    assert (document.sizes, work(document).rows[-1].counts) == (names, (10, 12, 14))


def test_a_count_behind_a_colon_in_the_row_is_compared() -> None:
    report = work(read(Source.of(ring(12) + "Rnd 2: in back loops: 12 sc (15)\n"), "us"))
    assert [f.code for f in report.findings] == ["W001"]


def test_rows_of_a_list_that_are_still_due_come_at_the_end() -> None:
    text = "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10)\nRows 2, 4 and 6: Ch 1, hdc in each st, turn.\nRows 3 and 5: Ch 1, sc in each st, turn.\n"
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    assert fabric is not None
    assert [(r.label, *fabric.counted(r)) for r in fabric.rows if r.label] == [
        ("Row 1", "sc"), ("Row 2", "hdc"), ("Row 3", "sc"), ("Row 4", "hdc"), ("Row 5", "sc"), ("Row 6", "hdc"),
    ]
