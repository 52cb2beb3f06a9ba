"""Lace in the round: one disc, arches and fans over what they were worked into, seams where rounds begin, slip stitches as dots."""

import math
import re
from itertools import pairwise

import pytest

from loopwright.drawing.chart import ChartOptions, charts
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.sections import sections
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.parts import parts
from tests.drawing.chart.svg_reading import overlaps, symbols

HEAD = "Terms: US\nGauge: 18 dc and 9 rows = 10 cm, 4 mm hook\nTurning chain: ch 3 counts as dc, ch 1 does not count as a st\n\n"
DOILY = "Small Doily\n" + HEAD + """Ch 6, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 15 dc in ring; join with sl st to top of ch-3. (16 dc)
Rnd 2: Ch 4 (counts as dc and ch 1), *dc in next st, ch 1; rep from * around; join with sl st to 3rd ch of ch-4. (16 dc and 16 ch-1 sps)
Rnd 3: Ch 1, sc in same st, ch 5, *sk next dc, sc in next dc, ch 5; rep from * to last dc, sk last dc; join with sl st to first sc. (8 sc)
Rnd 4: Ch 1, sc in same st, (3 dc, ch 2, 3 dc) in next ch-5 sp, *sc in next sc, (3 dc, ch 2, 3 dc) in next ch-5 sp; rep from * around;\
 join with sl st to first sc. (8 sc)
"""
SLANTED = "Flat Lace Round\n" + HEAD + """Ch 6, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring; join with sl st to first sc. (12 sc)
Rnd 2: Ch 1, sc in same st, ch 4, sk next st, *sc in next st, ch 4, sk next st; rep from * around; join with sl st to first sc. (6 sc)
Rnd 3: Sl st in next ch-4 sp, ch 3 (counts as dc), 5 dc in same sp, ch 2, *6 dc in next ch-4 sp, ch 2; rep from * around; join with sl st to top of ch-3. (36 dc)
"""
GRANNY = "Granny Square\n" + HEAD + """With A, ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join with sl st to top of ch-3. Fasten off A.
Rnd 2: Join B in any ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join.
Rnd 3: Join C in any ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1,\
 3 dc in next ch-1 sp, ch 1; rep from * twice more; join. (36 dc)
"""


def _aside(mark):
    """How far a symbol leans from the way outwards, radians."""
    (fx, fy), (x, y) = mark.feet[0], mark.top
    return abs((math.atan2(y - fy, x - fx) - math.atan2(fy, fx) + math.pi) % (2 * math.pi) - math.pi)


def test_a_doily_of_few_stitches_and_many_chains_is_one_disc(weave):
    """A round of 8 sc and 40 chains on one of 16 dc is no thumb: it goes all around."""
    fabric, sizes = weave(DOILY)
    (drawn,) = charts(fabric, sizes)
    assert (drawn.part, drawn.notes) == ("disc", ())
    assert overlaps(drawn.svg) == []
    across = next(d for d in dimensions(fabric, sizes) if d.name == "across")
    (disc,) = parts(fabric, courses(fabric, sizes))
    assert across.value_mm == 2 * disc.height_mm > 80.0


def test_fans_with_one_short_stitch_between_are_no_corners(weave):
    fabric, sizes = weave(DOILY)
    (section,) = sections(fabric, sizes, whole=True)
    assert section.sides == 0


def test_stitches_between_fans_stand_upright_on_theirs(weave):
    fabric, sizes = weave(DOILY)
    (section,) = sections(fabric, sizes, whole=True)
    between = [m for m in lay(fabric, section).marks if m.kind == "sc"]
    assert len(between) == 16
    assert max(map(_aside, between)) < math.radians(15)


def test_arches_of_a_round_bow_out(weave):
    fabric, sizes = weave(DOILY)
    (section,) = sections(fabric, sizes, whole=True)
    third = [m for m in lay(fabric, section).marks if fabric.rows[m.row].label == "Rnd 3" and fabric.part_of(m.stitch) == "edge"]
    reach = [math.hypot(*m.top) for m in third if m.kind == "ch"]
    assert min(reach[k + 2] - max(reach[k], reach[k + 4]) for k in range(0, 40, 5)) > 3.0


def test_a_round_that_begins_in_a_space_has_its_seam_there(weave):
    """The number and the join stand beside its first stitch, not where the round below began."""
    fabric, sizes = weave(GRANNY)
    (section,) = sections(fabric, sizes, whole=True)
    laid = lay(fabric, section)
    for line in laid.lines[1:]:
        row = fabric.rows[line.row]
        own = [m for m in laid.marks if m.row == line.row]
        first, join = own[2], own[-1]
        assert fabric.part_of(first.stitch) == "counts"
        assert math.dist(first.top, join.top) < 75.0, row.label
        chains = [m for m in own if m.kind == "ch" and fabric.part_of(m.stitch) == "edge"]
        last, groups = chains[-1], [m for m in own if m.kind == "dc"]
        near = sorted(math.dist(last.top, m.top) for m in (groups[-1], first))
        assert near[1] < 1.6 * near[0], row.label  # the last space lies midway between its groups
    assert max(math.dist(m.feet[0], m.top) for m in laid.marks if m.kind == "dc") < 1.5 * 62.0


def test_fans_on_a_ring_of_arches_stand_over_them(weave):
    fabric, sizes = weave(SLANTED)
    (section,) = sections(fabric, sizes, whole=True)
    laid = lay(fabric, section)
    at = {m.stitch: m for m in laid.marks}
    for m in (m for m in laid.marks if fabric.where(m.stitch) == "space" and m.kind == "dc"):
        xs, ys = zip(*(at[p].top for p in fabric.parents(m.stitch)), strict=True)
        assert math.dist(m.feet[0], (sum(xs) / len(xs), sum(ys) / len(ys))) < 28.0


def test_a_slip_stitch_on_the_way_is_a_dot_on_its_place(weave):
    blocks = "Ch 6.\nRow 1: Dc in 4th ch from hook and in next 2 ch, turn.\n"
    second = "Row 2: Ch 6, dc in 4th ch from hook and in next 2 ch, sl st in ch-3 sp of next block, ch 3, 3 dc in same sp, turn.\n"
    for text in (SLANTED, blocks + second):
        fabric, sizes = weave(text)
        dots = [s for c in charts(fabric, sizes, ChartOptions(grids=False)) for s in symbols(c.svg) if s.kind == "sl st"]
        assert dots
        for s in dots:
            xs, ys = zip(*(p for line in s.lines for p in line), strict=True)
            assert max(max(xs) - min(xs), max(ys) - min(ys)) < 6.0


HALF = HEAD.join(("Half Circle\n", """Ch 4, join with sl st to form a ring.
Row 1: Ch 3 (counts as dc), 8 dc in ring, turn. (9 dc)
Row 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st across, turn. (18 dc)
Row 3: Ch 4 (counts as dc and ch 1), dc in next st, *ch 1, dc in next st; rep from * across, turn. (18 dc and 17 ch-1 sps)
"""))


@pytest.mark.parametrize("ring", ["Ch 4, join with sl st to form a ring.\n", ""])
def test_rows_worked_back_and_forth_from_a_ring_fan_out(weave, ring):
    """Over half a turn: the first row begins at the right hand, the second where it ended; stitches lie radially."""
    text = HALF if ring else HALF.replace("Ch 4, join with sl st to form a ring.\n", "").replace("in ring", "in magic ring")
    fabric, sizes = weave(text)
    (section,) = sections(fabric, sizes, whole=True)
    assert section.fan == math.pi
    laid = lay(fabric, section)
    stems = [m for m in laid.marks if m.kind == "dc"]
    assert all(m.top[1] > -10.0 for m in stems)
    assert sorted(_aside(m) for m in stems)[len(stems) // 2] < math.radians(12)
    starts = {fabric.rows[n.row].label: n.tab[0] for n in laid.lines}
    assert starts["Row 1"] > 0 > starts["Row 2"]
    assert starts["Row 3"] > starts["Row 1"] + 60.0
    (drawn,) = charts(fabric, sizes)
    assert overlaps(drawn.svg) == []
    assert "Rows" in drawn.description


def test_a_triangle_from_its_tip_keeps_its_corner_in_the_middle_and_its_ring_round(weave):
    fabric, sizes = weave("Shawl\n" + HEAD + """Ch 4, join with sl st to form a ring.
Row 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, 3 dc in ring, turn. (6 dc and 1 ch-2 sp)
Row 2: Ch 3 (counts as dc), 2 dc in same st, dc in next 2 sts, (2 dc, ch 2, 2 dc) in ch-2 sp, dc in next 2 sts, 3 dc in last st, turn. (14 dc)
""")  # fmt: skip
    (section,) = sections(fabric, sizes, whole=True)
    assert section.fan == 0.0
    ring = [m for m in lay(fabric, section).marks if m.row == section.base]
    middles = [((m.feet[0][0] + m.top[0]) / 2, (m.feet[0][1] + m.top[1]) / 2) for m in ring]
    centre = tuple(sum(xs) / len(middles) for xs in zip(*middles, strict=True))
    assert max(math.dist(centre, p) for p in middles) - min(math.dist(centre, p) for p in middles) < 0.1


def test_a_row_of_loops_begins_with_a_loop_from_the_end_of_the_row_below(weave):
    """Of the nine chains before the first sc three lie below the first loop, one under its end, and five are the loop."""
    fabric, sizes = weave("Netting\n" + HEAD + """Ch 30.
Row 1: Sc in 10th ch from hook, *ch 5, sk next 3 ch, sc in next ch; rep from * across, turn. (6 sc)
Row 2: Ch 5, sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, turn.
Row 3: Ch 5, sc in next ch-5 sp, *ch 5, sc in next ch-5 sp; rep from * across, turn.
""")
    (section,) = sections(fabric, sizes, whole=True)
    laid = lay(fabric, section)
    at = {m.stitch: m for m in laid.marks}
    assert len([m for m in laid.marks if m.row == 0 and m.feet[0][1] == m.top[1] == 0.0]) == 25
    for first in (25, *(row.start for row in fabric.rows[2:])):
        assert min(math.dist(p, at[first - 1].top) for p in (at[first].feet[0], at[first].top)) < 15.0
    (drawn,) = charts(fabric, sizes, ChartOptions(whole=True))
    assert overlaps(drawn.svg) == []


def test_an_edging_of_fans_has_room_for_them_on_an_even_foundation(weave):
    fabric, sizes = weave("Edging\n" + HEAD + """Ch 32.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (31 sc)
Row 2: Ch 1, sc in first st, *ch 5, sk next 4 sts, sc in next st; rep from * across, turn. (7 sc and 6 ch-5 sps)
Row 3: Ch 1, sc in first sc, *6 dc in next ch-5 sp, sc in next sc; rep from * across. (36 dc and 7 sc)
""")
    (section,) = sections(fabric, sizes, whole=True)
    marks = lay(fabric, section).marks
    upright = [abs(m.top[0] - m.feet[0][0]) for m in marks if m.kind == "sc"]
    assert sum(upright) / len(upright) < 1.5
    assert max(upright) < 12.0  # of 22
    chain = sorted((m.top[0] + m.feet[0][0]) / 2 for m in marks if m.row == 0 and m.feet[0][1] == m.top[1])
    steps = [b - a for a, b in pairwise(chain)]
    assert max(steps) < 1.2 * min(steps)


def test_stitches_beside_the_seam_are_as_far_apart_as_elsewhere(weave):
    fabric, sizes = weave("Crown\n" + HEAD + """Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)
Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)
Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)
Rnd 4: Ch 1, *hdc in next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)
""")
    (section,) = sections(fabric, sizes, whole=True)
    laid = lay(fabric, section)
    for line in laid.lines[1:]:
        tops = [m.top for m in laid.marks if m.row == line.row and m.kind == "hdc"]
        apart = [math.dist(a, b) for a, b in pairwise(tops)]
        assert min(apart[0], apart[-1]) > 0.6 * sorted(apart)[len(apart) // 2]
        dots = [m.top for m in laid.marks if m.kind == "sl st"]
        assert not any(abs(n.tab[0] - x) < 9.0 and abs(n.tab[1] - y) < 9.0 for n in laid.lines for x, y in dots)


def test_numbers_of_rounds_about_a_chain_stand_apart(worked):
    fabric, sizes = worked
    for section in sections(fabric, sizes, whole=False):
        if section.ringed:
            tabs = [n.tab for n in lay(fabric, section).lines]
            assert not [(p, q) for p, q in pairwise(tabs) if abs(p[0] - q[0]) < 18.0 and abs(p[1] - q[1]) < 16.0]


def test_slip_stitches_are_dots_in_every_yarn(weave):
    """Drawn solid: the dotted or dashed line of a yarn would fray them."""
    fabric, sizes = weave(GRANNY)
    told = charts(fabric, sizes, ChartOptions(colours=True))[0].svg
    dots = re.findall(r'<path class="f (y[A-C])"', told)
    assert set(dots) == {"yA", "yB", "yC"}
    assert told.index("path.f[class*=y]{stroke-dasharray:none") > max(told.index(f"path.y{x}{{stroke-") for x in "BC")


def test_a_chain_to_turn_is_not_drawn_out_in_a_wide_round(weave):
    fabric, sizes = weave("Petals\n" + HEAD + """Ch 5, join with sl st to form a ring.
Rnd 1: Ch 1, (sc, ch 3) 6 times in ring; join with sl st to first sc. (6 sc and 6 ch-3 sps)
Rnd 2: Ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-3 sp around; join with sl st to first sc. (6 petals)
""")
    (section,) = sections(fabric, sizes, whole=True)
    turning = [m for m in lay(fabric, section).marks if fabric.part_of(m.stitch) == "turning"]
    assert len(turning) == 2
    assert all(math.dist(m.feet[0], m.top) < 13.0 for m in turning)


def test_chains_that_count_at_the_end_of_an_oval_stand_up_beside_the_stitches_in_the_same_chain(weave):
    fabric, sizes = weave("Oval Mat\n" + HEAD + """Ch 12.
Rnd 1: 3 dc in 4th ch from hook (counts as 4 dc), dc in each of next 7 ch, 6 dc in last ch; working along the other side of the ch,\
 dc in each of next 7 ch, 2 dc in same ch as first dc; join with sl st to top of ch-3. (26 dc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each of next 3 sts, dc in each of next 7 sts, 2 dc in each of next 6 sts,\
 dc in each of next 7 sts, 2 dc in each of next 2 sts; join with sl st to top of ch-3. (38 dc)
""")
    (section,) = sections(fabric, sizes, whole=True)
    marks = [m for m in lay(fabric, section).marks if m.row == section.base]
    lying = [m for m in marks if m.feet[0][1] == m.top[1] == 0.0]
    assert (len(lying), len(marks)) == (9, 12)
    (drawn,) = charts(fabric, sizes)
    assert overlaps(drawn.svg) == []


@pytest.mark.parametrize("opening", ["Ch 4, skip 4 sts for thumb, sc in each st around. (12)", "Ch 4, skip first 5 sc, sc in next 11 sc. (11)"])
def test_a_chain_that_begins_an_unrolled_round_lies_where_the_round_begins(weave, opening):
    """Not along a loop from where the round below ended: that is the other side of the sheet."""
    fabric, sizes = weave("Mitten\n" + HEAD + f"""Rnd 1: 8 sc in magic ring. (8)
Rnd 2: 2 sc in each sc around. (16)
Rnds 3-4: Sc in each st around. (16)
Rnd 5: {opening}
Rnd 6: Sc in each st around.
""")
    section = sections(fabric, sizes, whole=True)[-1]
    marks = [m for m in lay(fabric, section).marks if m.row == 4]
    chain = [m.top[0] for m in marks if m.kind == "ch"]
    stitches = [m.top[0] for m in marks if m.kind == "sc"]
    assert len(chain) == 4
    assert min(chain) > max(stitches) or max(chain) < min(stitches)
