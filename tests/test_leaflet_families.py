"""Families of wordings in leaflets of 1930-75, several of each: with the counts that a maker would get, worked out by hand."""

from __future__ import annotations

import pytest

from loopwright.source import Source
from loopwright.workshop.check import check_source

DISC = "1st rnd: 8 sc in ring (8 sc).\n2nd rnd: 2 sc in each sc around (16 sc). "
FLAT = "Ch 41. Row 1: Sc in 2nd ch from hook and in each ch across (40 sc). Ch 1, turn.\n"

GRANNY = (
    "Ch 4, join. Rnd 1: Ch 3 (counts as 1 dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2. Join.\n"
    "Rnd 2: Join yarn in any ch-2 sp; ch 3, in same sp make 2 dc, ch 2 and 3 dc; * ch 1, in next ch-2 sp make 3 dc, ch 2 and 3 dc. Repeat from * around, ch 1. Join.\n"
    "Rnd 3: Join yarn in any corner sp; ch 3, 2 dc, ch 2, 3 dc in same sp, * ch 1, 3 dc in next ch-1 sp, ch 1, in corner sp make 3 dc, ch 2 and 3 dc. Repeat from * around, ending ch 1, 3 dc in last ch-1 sp, ch 1. Join. (36 dc)\n"
)

CLOSED = "1st rnd: Ch 1, 12 sc in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 5, skip next sc, sc in next sc. Repeat from * around, ending with ch 2, dc in first sc (6 loops).\n"

TOLD: list[tuple[str, str, list[int]]] = [
    ("joined in its top stitch", "Ch 6, join. 1st rnd: Ch 3, 15 dc in ring, sl st in top st of starting chain.\n2nd rnd: Ch 3, dc in next dc, * ch 2, dc in next 2 dc. Repeat from * around, ending with ch 2. Join to top ch of starting ch.\n3rd rnd: Sc in each dc around.", [16, 16, 16]),
    ("a title with its stop", "MAT. With Rose, ch 5, join with sl st. 1st rnd: Ch 3, 9 dc in ring, sl st in top stitch of turning chain.\n2nd rnd: Ch 3, dc in same place as sl st, 2 dc in each dc around. Join.", [10, 20]),
    ("a thread marks the round", "SOLE . . . Starting at toe, ch 4, join with sl st. 1st rnd: 6 s c in ring.\n2nd rnd: 2 s c in each s c around (12 s c). Do not join rnds; use a colored thread to mark beginning of rnds.\n3rd rnd: * S c in next s c, 2 s c in next s c. Rep from * around.", [6, 12, 18]),
    ("increasing evenly, with more between", DISC + "\n3rd rnd: Work in sc, increasing 8 sc evenly around, having 1 sc more between increases.\n4th rnd: Continue in sc, increasing 8 sc evenly around, having 2 sc between increases.", [24, 32]),
    ("so many on each round", DISC + "\n3rd to 5th rnds incl: Inc 8 sc on each rnd as before (40 sc on last rnd). Sl st in next sc. Break off.\n6th rnd: Attach Green and work 1 sc in each sc around. Join.", [24, 32, 40, 40]),
    ("so many on each round, joined", "Ch 4, join. 1st rnd: Ch 3, 11 dc in ring. Join.\n2nd and 3rd rnds: Inc 12 dc evenly on each rnd. Join each rnd (36 dc on 3rd rnd).", [12, 24, 36]),
    ("increasing in every so-manieth", "Ch 4, join. Rnd 1: Ch 3, 15 dc in ring, join.\nRnd 2: Work in dc, increasing in every 2nd st.\nRnd 3: Work in sc, increasing in every 3rd st (32 sc).\nRnds 4 and 5: Work even, joining each rnd with sl st.\nRnd 6: Sc in each st around. Do not join hereafter.", [16, 24, 32, 32, 32, 32]),
    ("at each end of an oval", "1st rnd: 24 sc in ring (24 sc).\n2nd rnd: Work in sc, increasing 2 sc evenly around each end (28 sc).", [24, 28]),
    ("instead of, in brackets", "Ch 28. Row 1: 2 sc in 2nd ch from hook, * sc in next 5 ch, skip next 2 ch, sc in next 5 ch, 3 sc in next ch. Repeat from * across, ending with 2 sc (instead of 3) in last ch.", [27]),
    ("shaping after rows worked even", FLAT + "Row 2: Sc in each sc across. Ch 1, turn. Rep Row 2 throughout. Inc. 1 s c at both ends of row every 3rd row 4 times.\nWork even for 3 inches, then dec 1 sc at both ends of every other row 3 times.", [46, 46, 48, 48, 48, 46, 46, 44, 44, 42]),
    ("a count behind a stop of dec", FLAT + "Dec. 1 s c at both ends of each of next 3 rows--34 s c.\nDec. 1 s c at neck edge every row 2 times. Break off.", [38, 36, 34, 33, 32]),
    ("across to within", ("Ch 32. Row 1: Half dc in 3rd ch from hook, half dc in each ch across--31 half dc, counting turning ch as 1 half dc. Ch 2, turn.\n"
     "Row 2: Skip first half dc, half dc in next half dc and in each half dc across, half dc in top of turning ch. Ch 2, turn.\nARMHOLE SHAPING: Work across to within last 6 sts. Ch 2, turn.\n"
     "Dec 1 st at arm edge of next 2 rows.\nWork even on 23 sts until armhole measures 5 inches.\nSHOULDER: Starting at arm edge, work to within last 8 sts. Break off."), [31, 31, 25, 24, 23, 23, 15]),
    ("the edge kept straight", FLAT + "Keeping side edge even, dec 1 sc at neck edge every other row 2 times--38 sts.\nShoulder: Sl st in first 8 sts, work across remaining sts. Break off.", [40, 39, 39, 38, 30]),
    ("until so many on the row", "Chain 60. 1st row: Dc in 4th ch from hook, dc in each ch across until there are 50 dc on row. Cut off excess chain. Ch 3, turn.", [50]),
    ("a picot's stitch", "1st row: 12 sc in ring, turn.\n2nd row: Sc in first sc, * ch 4, sc in 4th ch from hook for a picot, skip 1 sc, sc in next sc; repeat from * 4 times more.", [12, 6]),
    ("yarn attached and worked", "Ch 9. Row 1: Sc in 2nd ch from hook and in each ch across (8 sc). Ch 1, turn. Rows 2 to 20: Sc in each sc across. Ch 1, turn.\nTOP: Rnd 1: Attach wool at side seam and work 1 sc in end of each row around--20 sc.", [20]),
    ("one decreased, told apart", "1st rnd: 30 sc in ring (30 sc).\n2nd rnd: * S c in next 8 s c, dec 1 s c. Rep from * around.", [27]),
    ("an increase called by its part", ("Ch 22. 1st row: Dc in 4th ch from hook, dc in each ch across (20 dc, counting turning ch as 1 dc). Ch 3, turn.\n2nd row: Skip first dc, dc in next 4 dc, in next dc make dc, ch 1 and dc (corner inc), dc in next 8 dc, inc as before in next dc, "
     "dc in last 5 dc. Ch 3, turn.\n3rd row: Skip first dc, dc in each dc to first sp, dc in sp, ch 3, skip the 10 dc of sleeve, dc in next sp, dc in each dc to end."), [20, 22, 14]),
    ("a stitch explained in brackets", ("Ch 5, join. 1st rnd: Ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 3 times; ch 2, sl st in top st of starting chain (12 dc).\n"
     "2nd rnd: Ch 3, pc st in next dc (to make a pc st: 4 dc in st, drop loop from hook, insert hook in first dc of group and draw dropped loop through), dc in next dc, * in corner sp make dc, ch 2 and dc; dc in next dc, pc st in next dc, dc in next dc. "
     "Repeat from * around, ending with dc, ch 2 and dc in last sp. Join."), [12, 20]),
    ("legs held back, told first", "1st rnd: Ch 3, 23 dc in ring. Join (24 dc).\n2nd rnd: Ch 3, holding back on hook the last loop of each dc make dc in next dc, thread over and draw through all loops on hook; * ch 4, dc2tog over next 2 dc. Repeat from * around, ending with ch 4. Join.\n3rd rnd: 5 sc in each loop around.", [60]),
    ("loops of a pineapple", ("1st rnd: 5 sc in ring (5 sc).\n2nd rnd: In each sc make tr, (ch 1, tr) 4 times (base of pineapple).\n"
     "3rd rnd: * Ch 3, sc in first ch-1 sp of pineapple, (ch 3, sc in next ch-1 sp) 3 times. Repeat from * around."), [25, 20]),
    ("all but the last", "1st rnd: 40 sc in ring (40 sc).\n2nd rnd: Sc in first 6 sc, ch 4, skip all but last 6 sc, sc in last 6 sc (12 sc and 4 ch).\n3rd rnd: Sc in each sc and in each ch around (16 sc).", [12, 16]),
    ("a chain over a thumb", "1st rnd: 36 sc in ring (36 sc).\nNext rnd: Ch 3, skip first 8 sc, sc in each remaining sc around--28 sc and 3 ch.\nFollowing rnd: Sc in each ch and in each sc around.", [28, 31]),
    ("the turning chain left out at last", "Ch 22. 1st row: Dc in 4th ch from hook, dc in each ch across (20 dc). Ch 3, turn.\n2nd to 4th rows: Skip first dc, dc in each dc across, dc in top of turning ch. Ch 3, turn. Omit turning ch on last row. Break off.", [20, 20, 20, 20]),
    ("spaces called by their side", ("Starting at neck, ch 60, join with sl st. Rnd 1: Ch 3, dc in each ch around. Join.\nRnd 2: Ch 3, dc in next 28 dc, in next dc make dc, ch 2 and dc for center front; dc in next 29 dc, dc, ch 2 and dc in last dc. Join.\n"
     "Rnd 3: Ch 3, dc in each dc to center sp, in sp make dc, ch 2 and dc; dc in each dc to back sp, dc, ch 2 and dc in sp, dc in each remaining dc, if any. Join--66 dc."), [60, 62, 66]),
    ("sides between corners", ("Ch 4, join. Rnd 1: Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join.\nRnd 2: Join B in any sp. Ch 3, 2 dc, ch 2, 3 dc in same sp, (3 dc, ch 2, 3 dc) in each of next 3 sps. Join.\n"
     "Rnd 3: With C, (2 dc, ch 2, 2 dc) in each corner sp, 2 dc in sp between groups on each side. Join."), [12, 24, 24]),
    ("the last corner with a hanger", "Ch 21. Row 1: Sc in 2nd ch from hook and in each ch across (20 sc). Ch 1, turn. Rows 2 to 20: Sc in each sc across. Ch 1, turn.\nEDGING: Work 18 sc along each of the 4 sides and 3 sc in each corner; at last corner make 3 sc, ch 10, sl st in last sc made for hanger. Join.", [84]),
    ("what the model has", "1st rnd: Attach thread to any corner and make 3 sc in corner, sc evenly around, making 3 sc in each corner and having a multiple of 4 sc. Join.\n(There are 120 sc in all.)\n2nd rnd: Sc in same place as sl st, * ch 5, skip 3 sc, sc in next sc. Repeat from * around, ending with ch 5. Join.", [120, 30]),
    ("until so many loops", ("1st rnd: Ch 1, 16 sc in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 5, skip next sc, sc in next sc. Repeat from * around, ending with ch 5, join to first sc.\n"
     "3rd rnd: Sl st to center of first loop, sc in same loop, * ch 5, sc in same loop, ch 5, sc in next loop. Repeat from * around until there are 16 loops.\n4th rnd: * Ch 6, sc in next loop. Repeat from * around."), [16, 8, 16, 16]),
    ("the end of a round with its chain", ("1st rnd: Ch 1, 12 sc in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 4, skip next sc, sc in next sc. Repeat from * around, ending with ch 4. Join (6 loops).\n3rd rnd: In each loop make sc, hdc, 3 dc, hdc and sc. Join (6 petals).\n"
     "4th rnd: Sl st to center dc of 1st petal, sc in same st, * ch 5, sc between petals, ch 5, sc in center dc of next petal. Repeat from * around, ending with ch 5, sl st in 1st sc (12 loops)."), [42, 12]),
    ("the centre of the group behind", ("1st rnd: Ch 1, 10 sc in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 5, skip next sc, sc in next sc. Repeat from * around, ending with ch 5. Join (5 loops).\n3rd rnd: Ch 1, 5 sc in each loop around. Join.\n"
     "4th rnd: Sl st in next 2 sc, sc in same place as last sl st, * ch 7, sc in center sc of next 5-sc group. Repeat from * around, ending with ch 7. Join."), [25, 5]),
    ("the end of a row of shells", ("Ch 38. 1st row: Sc in 2nd ch from hook, * skip 2 ch, 5 dc in next ch (5-dc shell made), skip 2 ch, sc in next ch. Repeat from * across. Ch 3, turn.\n2nd row: 2 dc in first sc, * sc in center dc of next shell, shell in next sc. Repeat from * across, ending with sc in center dc of last shell, 3 dc in last sc. Ch 1, turn.\n"
     "3rd row: Sc in first dc, * shell in next sc, sc in center dc of next shell. Repeat from * across, ending with sc in top st of turning chain."), [37, 37, 37]),
    ("a group more on each side", GRANNY + "Rnd 4: Work as for Rnd 3, having one more 3-dc group on each side.\nRnd 5: Same as Rnd 4, having 1 group more on each side.", [36, 48, 60]),
    ("a loop less on each pineapple", ("1st row: 7 tr in ring, turn.\n2nd row: Ch 1, turn; sc in first tr, * ch 3, sc in next tr. Repeat from * across.\n3rd row: Ch 5, turn; sc in first ch-3 loop, (ch 3, sc in next ch-3 loop) 5 times.\n"
     "4th row: Same as 3rd row, having 1 loop less on pineapple.\nContinue in this manner, having 1 loop less on each pineapple on each row, until 1 loop remains."), [7, 6, 5, 4, 3, 2]),
    ("more stitches in each shell", ("1st row: 25 sc in ring, turn.\n2nd row: Ch 1, turn; sc in first sc, * skip 2 sc, 5 dc in next sc (shell made), skip 2 sc, sc in next sc. Repeat from * across.\n3rd row: Ch 1, turn; sc in each st across.\n"
     "4th row: Ch 1, turn; sc in first sc, * skip 2 sc, shell in next sc, skip 2 sc, sc in next sc. Repeat from * across.\n5th row: Ch 1, turn; sc in each st across.\n6th row: Same as 4th row, but making 7 dc instead of 5 dc in each shell."), [25, 25, 25, 25, 25, 33]),
    ("longer chains in each loop", ("1st rnd: 12 sc in ring. Join.\n2nd rnd: Sc in same place, * ch 3, skip next sc, sc in next sc. Repeat from * around, ending with ch 3. Join.\n3rd rnd: Sl st in next loop, sc in same loop, * ch 3, sc in next loop. Repeat from * around, ending with ch 3. Join.\n"
     "4th rnd: Same as 3rd rnd, having ch 6 in each loop.\n5th rnd: Sc in each sc and in each ch around."), [6, 6, 42]),
    ("a list up to its chain", ("1st rnd: Ch 1, 24 sc in ring. Join.\n2nd rnd: Sc in same place as sl st, * ch 4, skip 2 sc, sc in next sc. Repeat from * around, ending with ch 4. Join (8 loops).\n"
     "3rd rnd: Sl st to center of next loop, sc in same loop, * ch 2, in next loop make dc, (ch 1, dc) 3 times, ch 2, sc in next loop. Repeat from * around. Join."), [24, 8, 20]),
    ("rounds of loops", ("1st rnd: Ch 1, 12 sc in ring. Join.\n2nd rnd: * Ch 5, sc in next sc. Repeat from * around.\nWork 3 rnds even, making ch-6 loops throughout.\n6th and 7th rnds: Work in ch-7 loops.\n8th rnd: 3 sc in each loop around."), [12, 12, 12, 12, 12, 12, 12, 36]),
    ("but one shell", ("Ch 10. 1st row: In 6th ch from hook make 2 dc, ch 2 and 2 dc (shell made), ch 3, skip 3 ch, dc in last ch.\n2nd row: Ch 5, turn; shell in sp of shell, ch 4, turn.\n3rd row: Shell in sp of shell, ch 2, 9 dc in ch-5 loop."), [6, 4, 13]),
    ("so often instead", "1st row: 9 tr in ring, turn.\n2nd row: Ch 1, turn; sc in first tr, (ch 3, sc in next tr) 8 times.\n3rd row: Ch 4, turn; sc in first loop, (ch 3, sc in next loop) 7 times.\n4th row: As 3rd row, having 6 instead of 7 in brackets.", [9, 9, 8, 7]),
    ("repeated throughout in colors", FLAT + "2nd row: Sc in each sc across. Ch 1, turn.\nRep 2nd row throughout, working 2 rows Lemon, 2 rows White, until 20 rows in all have been completed.\nNext row: Dec 1 sc at each end.", [38]),
    ("in the loop just formed", CLOSED + "3rd rnd: Ch 3, in loop just formed make 2 dc, * ch 3, 3 dc in next loop. Repeat from * around, ending with ch 3. Join.", [6, 18]),
    ("a group in the loop just formed", CLOSED + "3rd rnd: Ch 3, in same loop make dc, ch 2 and 2 dc, * ch 1, in next loop make 2 dc, ch 2 and 2 dc. Repeat from * around, ending with ch 1. Join.", [6, 24]),
]


@pytest.mark.parametrize(("text", "counts"), [t[1:] for t in TOLD], ids=[t[0] for t in TOLD])
def test_it_comes_to_what_a_maker_gets(text: str, counts: list[int]) -> None:
    report = check_source(Source.of(text + "\n"), "us")
    assert [row.counts[0] for row in report.rows][-len(counts) :] == counts
    assert [f.code for f in report.findings if f.severity == "error"] == []
