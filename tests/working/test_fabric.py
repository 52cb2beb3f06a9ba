"""What was worked into what: small patterns of our own, each stitch's parents told exactly."""

from __future__ import annotations

import pytest

from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.working.woven import edge, parents, row, told, woven

FLAT = """Ch 6.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (5 sc)
Row 2: Ch 1, sc in each st across, turn. (5 sc)
Row 3: Ch 1, sc2tog, sc in next st, 2 sc in next st, sc in last st. (5 sts)
"""


def test_a_flat_row_goes_back_along_the_row_below() -> None:
    fabric = woven(FLAT)
    assert parents(fabric, "Row 1") == [(4,), (3,), (2,), (1,), (0,)]
    first = edge(fabric, "Row 1")
    assert parents(fabric, "Row 2") == [(s,) for s in reversed(first)]


def test_a_decrease_has_two_parents_and_an_increase_shares_one() -> None:
    fabric = woven(FLAT)
    e, d, c, b, a = reversed(edge(fabric, "Row 2"))
    assert (a, b, c, d, e) == tuple(edge(fabric, "Row 2"))
    assert parents(fabric, "Row 3") == [(e, d), (c,), (b,), (b,), (a,)]


def test_sides_follow_the_turns_and_said_sides_settle_the_rest() -> None:
    fabric = woven(FLAT)
    assert [row(fabric, f"Row {i}").right_side for i in (1, 2, 3)] == [True, False, True]
    said = woven(FLAT.replace("Row 2:", "Row 2 (RS):"))
    assert [row(said, label).right_side for label in ("Row 1", "Row 2", "Row 3")] == [False, True, False]


def test_joined_rounds_are_not_turned_and_close_into_their_first_stitch() -> None:
    fabric = woven("Rnd 1: 6 sc in magic ring; join with sl st to first sc.\nRnd 2: Ch 1, 2 sc in each st around; join. (12)\n")
    first = edge(fabric, "Rnd 1")
    assert [fabric.where(s) for s in first] == ["ring"] * 6
    assert parents(fabric, "Rnd 2") == [(s,) for s in first for _ in range(2)]
    second = row(fabric, "Rnd 2")
    assert [fabric.part_of(s) for s in (second.start, second.end - 1)] == ["turning", "join"]
    assert fabric.parents(second.end - 1) == (edge(fabric, "Rnd 2")[0],)
    assert second.right_side
    assert not second.turned_before


def test_a_spiral_goes_on_without_chain_or_join() -> None:
    fabric = woven("Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: (Sc in next st, inc) 6 times. (18)\n")
    assert len(fabric) == 36
    second = edge(fabric, "Rnd 2")
    assert parents(fabric, "Rnd 3")[:3] == [(second[0],), (second[1],), (second[1],)]
    assert [fabric.round[s] for s in edge(fabric, "Rnd 3")] == [i // 3 + 1 for i in range(18)]


def test_a_start_chain_that_counts_stands_on_the_first_stitch() -> None:
    fabric = woven("Ch 7.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (5 dc)\n"
                   "Row 2: Ch 3 (counts as dc), dc in each of next 3 sts, dc in top of ch-3, turn. (5 dc)\n")
    assert row(fabric, "Row 1").borrowed == (6,)  # the top of the three chains that were skipped
    assert told(fabric, "Row 2") == [("dc", (10,), "top"), ("dc", (9,), "top"), ("dc", (8,), "top"), ("dc", (7,), "top"), ("dc", (6,), "top")]
    assert fabric.counted(row(fabric, "Row 2")) == {"dc": 5}
    assert [fabric.part_of(s) for s in range(11, 14)] == ["stands", "stands", "counts"]


def test_a_ring_of_chains_and_shells_in_chain_spaces() -> None:
    fabric = woven("Ch 4, join with sl st to form a ring.\n"
                   "Rnd 1: Ch 3 (counts as dc), dc in ring, ch 2, (2 dc in ring, ch 2) 3 times; join with sl st to top of ch-3. (8 dc)\n"
                   "Rnd 2: Sl st in next dc and in next ch-2 sp, ch 3 (counts as dc), (dc, ch 1, 2 dc) in same sp, "
                   "*(2 dc, ch 1, 2 dc) in next ch-2 sp; rep from * twice more; join with sl st to top of ch-3. (16 dc)\n")
    assert {fabric.parents(s) for s in edge(fabric, "Rnd 1") if fabric.where(s) == "ring"} == {(0, 1, 2, 3)}
    chains = [s for s in edge(fabric, "Rnd 1") if fabric.name(s) == "ch" and s not in fabric.counts_as]
    pairs = [tuple(chains[i : i + 2]) for i in range(0, 8, 2)]
    assert parents(fabric, "Rnd 2") == [p for p in pairs for _ in range(4)]
    assert {fabric.where(s) for s in edge(fabric, "Rnd 2") if fabric.parents(s)} == {"space"}


def test_a_v_stitch_shares_its_stitch_and_chains_hang_in_the_air() -> None:
    fabric = woven("Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
                   "Row 2: Ch 3 (counts as dc), *sk 1 st, (dc, ch 1, dc) in next st, sk 1 st; rep from * once more, dc in last st, turn.\n")
    below = edge(fabric, "Row 1")[::-1]
    assert told(fabric, "Row 2") == [
        ("dc", (below[0],), "top"),
        ("dc", (below[2],), "top"), ("ch", (), "none"), ("dc", (below[2],), "top"),
        ("dc", (below[5],), "top"), ("ch", (), "none"), ("dc", (below[5],), "top"),
        ("dc", (below[7],), "top"),
    ]


def test_posts_and_loops() -> None:
    fabric = woven("Ch 6.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (4 dc)\n"
                   "Row 2: Ch 3 (counts as dc), fpdc around next st, bpdc around next st, dc in top of ch-3, turn. (4 sts)\n"
                   "Row 3: Ch 1, sc in back loop of each of next 2 sts, sc in front loop of next st, sc in last st, turn. (4 sc)\n")
    assert [place for _, _, place in told(fabric, "Row 2")] == ["top", "front-post", "back-post", "top"]
    assert [place for _, _, place in told(fabric, "Row 3")] == ["back", "back", "front", "top"]


def test_a_spike_goes_into_the_stitch_rows_below_its_own() -> None:
    fabric = woven("Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)\nRow 2: Ch 1, sc in each st across, turn. (4 sc)\n"
                   "Row 3: Ch 1, *sc in next st, spike sc in next st 2 rows below; rep from * across, turn.\n")
    first, second = edge(fabric, "Row 1"), edge(fabric, "Row 2")
    # the second stitch of Row 3 stands over Row 2's third, which stands on Row 1's second
    assert parents(fabric, "Row 3") == [(second[3],), (first[1],), (second[1],), (first[3],)]


def test_an_oval_goes_back_along_the_other_side_of_its_chain() -> None:
    fabric = woven("Ch 7.\nRnd 1: Sc in 2nd ch from hook, sc in each of next 4 ch, 3 sc in last ch; working along the other side of the ch, "
                   "sc in each of next 4 ch, 2 sc in last ch; join with sl st to first sc. (14 sc)\n")
    assert parents(fabric, "Rnd 1") == [(5,), (4,), (3,), (2,), (1,), (0,), (0,), (0,), (1,), (2,), (3,), (4,), (5,), (5,)]
    assert [p for _, _, p in told(fabric, "Rnd 1")] == ["chain"] * 8 + ["underside"] * 6


def test_a_thumb_opening_is_bridged_by_chains_that_the_next_round_works_into() -> None:
    fabric = woven("Ch 12, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. (12 sc)\n"
                   "Rnd 2: Ch 1, sc in each of next 4 sts, ch 3, sk 3 sts, sc in each of next 5 sts; join.\n"
                   "Rnd 3: Ch 1, sc in each of next 4 sts, sc in each of next 3 ch, sc in each of next 5 sts; join. (12 sc)\n")
    first, second = edge(fabric, "Rnd 1"), edge(fabric, "Rnd 2")
    assert parents(fabric, "Rnd 2") == [(s,) for s in first[:4] + first[7:]]
    assert parents(fabric, "Rnd 3") == [(s,) for s in second]
    assert [p for _, _, p in told(fabric, "Rnd 3")][3:8] == ["top", "chain", "chain", "chain", "top"]


def test_stitches_left_unworked_keep_their_tops_free() -> None:
    fabric = woven("Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
                   "Row 2: Ch 1, sc in each of next 5 sts, leave last 3 sts unworked, turn. (5 sc)\nRow 3: Ch 1, sc in each st across. (5 sc)\n")
    first, second = edge(fabric, "Row 1"), edge(fabric, "Row 2")
    assert parents(fabric, "Row 2") == [(s,) for s in first[:2:-1]]
    assert parents(fabric, "Row 3") == [(s,) for s in second[::-1]]
    assert free(fabric, "Row 1") == first[:3]


def free(fabric: Fabric, label: str) -> list[int]:
    used = {p for s in range(len(fabric)) for p in fabric.parents(s)}
    return [s for s in edge(fabric, label) if s not in used]


def test_slip_stitches_back_along_a_chain_made_in_the_row() -> None:
    fabric = woven("Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)\n"
                   "Row 2: Ch 1, sc in each of next 2 sts, ch 5, sl st in 2nd ch from hook and in each of next 3 ch, sc in each of next 2 sts.\n")
    r = row(fabric, "Row 2")
    chains = [s for s in range(r.start, r.end) if fabric.part_of(s) == "base"]
    slips = [s for s in range(r.start, r.end) if fabric.name(s) == "sl st"]
    assert [fabric.parents(s) for s in slips] == [(c,) for c in reversed(chains[:-1])]
    assert fabric.parents(r.end - 1) == (edge(fabric, "Row 1")[0],)


def test_a_tie_is_a_chain_with_slip_stitches_along_it() -> None:
    fabric = woven("Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)\nFasten off.\nTie\n"
                   "Ch 10, sl st in 2nd ch from hook and in each ch across. Fasten off.\n")
    last = fabric.rows[-1]
    assert last.piece == 1
    chains = list(range(fabric.rows[-2].start, fabric.rows[-2].end))
    assert [fabric.parents(s) for s in range(last.start, last.end)] == [(c,) for c in reversed(chains[:-1])]


def test_every_stitch_knows_the_words_that_made_it() -> None:
    text = "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)\nRow 2: Ch 1, *sc in next st, 2 sc in next st; rep from * across.\n"
    fabric = woven(text)
    said = [text[slice(*fabric.words(s))] for s in edge(fabric, "Row 2")]
    assert said == ["sc in next st", "2 sc in next st", "2 sc in next st"] * 2
    assert text[slice(*fabric.words(0))] == "Ch 5"
    assert text[slice(*fabric.words(row(fabric, "Row 2").start))] == "Ch 1"


def test_counts_are_those_of_the_report_in_every_row_of_a_design() -> None:
    text = FLAT + "Row 4: Ch 3 (counts as dc), dc in next st, ch 1, sk 1 st, dc in each of last 2 sts, turn. (4 dc)\n"
    report = work(read(Source.of(text)))
    fabric = report.fabrics[0]
    assert fabric is not None
    for r in report.rows[1:]:
        made = {k: v[0] for k, v in r.made.items() if k not in ("ch-sp", "group", "repeat")}
        assert fabric.counted(row(fabric, r.label)) == made


def colours(fabric: Fabric, label: str) -> str:
    r = row(fabric, label)
    return " ".join(fabric.colours[fabric.colour[s]] for s in range(r.start, r.end) if fabric.part_of(s) != "turning")


def test_colours_as_told_before_after_and_between_the_stitches() -> None:
    fabric = woven("Yarn: DK, in A (stone), B (mauve) and C (sage)\n\nWith A, ch 5.\n"
                   "Row 1: Sc in 2nd ch from hook and in each ch across, changing to B in last st, turn. (4 sc)\n"
                   "Row 2: Ch 1, sc in next st, with A sc in next st, sc in next st with C, sc in last st, turn. (4 sc)\n"
                   "Row 3 (B): Ch 1, *sc in next st, with A sc in next st; rep from * across, turn. (4 sc)\n"
                   "Row 4: Join mauve in first st, ch 1, sc in each st across, turn. (4 sc)\n"
                   "Row 5: With white, rep Row 4.\n")
    assert {fabric.colours[fabric.colour[s]] for s in range(5)} == {"A"}
    assert [colours(fabric, f"Row {i}") for i in range(1, 5)] == ["A A A A", "B A C C", "B A B A", "mauve mauve mauve mauve"]
    assert colours(fabric, "Row 5") == "white white white white"


def test_a_start_chain_among_stitches_in_one_place_is_made_with_the_yarn_joined_there() -> None:
    fabric = woven("With A, ch 4, join with sl st to form a ring.\n"
                   "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3. Fasten off A.\n"
                   "Rnd 2: Join B in any ch-2 sp, (ch 3, 2 dc, ch 2, 3 dc) in same sp, ((3 dc, ch 2, 3 dc) in next ch-2 sp) 3 times; join.\n")
    assert set(colours(fabric, "Rnd 2").split()) == {"B"}


RECTANGLE = """Ch 5.
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (4 sc)
Rows 2-4: Ch 1, sc in each st across, turn. (4 sc)
Row 5: Ch 1, sc in each st across, do not turn. (4 sc)
"""


def test_an_edging_goes_down_one_side_along_the_chain_up_the_other_side_and_over_the_top() -> None:
    fabric = woven(RECTANGLE + "Edging\nRnd 1: Ch 1, sc in end of each of the 5 rows, sc in other side of next 4 ch, "
                   "sc in end of each of the 5 rows, sc in each st across; join. (18 sc)\n")
    rows = {i: edge(fabric, f"Row {i}") for i in range(1, 6)}
    near = [rows[5][-1], rows[4][0], rows[3][-1], rows[2][0], rows[1][-1]]
    far = [rows[1][0], rows[2][-1], rows[3][0], rows[4][-1], rows[5][0]]
    assert parents(fabric, "Rnd 1") == [(s,) for s in [*near, 0, 1, 2, 3, *far, *rows[5]]]
    places = [p for _, _, p in told(fabric, "Rnd 1")]
    assert places == ["row-end"] * 5 + ["underside"] * 4 + ["row-end"] * 5 + ["top"] * 4


def test_more_stitches_than_row_ends_are_spread_over_them() -> None:
    fabric = woven(RECTANGLE + "Row 6: Ch 1, 2 sc in end of each row across.\n")
    ends = parents(fabric, "Row 6")
    assert len(ends) == 10
    assert ends[::2] == ends[1::2]


def test_stitches_of_an_earlier_row_that_were_left_free_are_worked_later() -> None:
    fabric = woven("Ch 9.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (8 sc)\n"
                   "Row 2: Ch 1, sc in each of next 5 sts, leave last 3 sts unworked, turn. (5 sc)\nRow 3: Ch 1, sc in each st across, turn. (5 sc)\n"
                   "Row 4: Ch 1, sc in each of next 5 sts, sc in each of the 3 unworked sts of Row 1. (8 sc)\n")
    first, third = edge(fabric, "Row 1"), edge(fabric, "Row 3")
    assert parents(fabric, "Row 4") == [(s,) for s in third[::-1] + first[2::-1]]


def test_a_thumb_goes_round_its_opening_over_missed_stitches_and_under_the_chain() -> None:
    fabric = woven("Ch 12, join with sl st to form a ring.\nRnd 1: Ch 1, sc in each ch around; join. (12 sc)\n"
                   "Rnd 2: Ch 1, sc in each of next 4 sts, ch 3, miss next 3 sts, sc in each of next 5 sts; join.\n"
                   "Rnd 3: Ch 1, sc in each of next 4 sts, sc in each of next 3 ch, sc in each of next 5 sts; join. (12 sc)\nFasten off.\n\nThumb\n"
                   "Rnd 1: Join yarn in first missed st of the thumb opening, ch 1, sc in each of the 3 missed sts, "
                   "sc in the other side of each of the 3 ch; join with sl st to first sc. (6 sc)\n")
    r = fabric.rows[-1]
    first = [s for s in range(fabric.rows[1].start, fabric.rows[1].end) if fabric.part_of(s) == "edge"]
    chains = [s for s in range(fabric.rows[2].start, fabric.rows[2].end) if fabric.name(s) == "ch" and fabric.part_of(s) == "edge"]
    thumb = [s for s in range(r.start, r.end) if fabric.part_of(s) == "edge"]
    assert r.section == "Thumb"
    assert [fabric.parents(s) for s in thumb] == [(s,) for s in first[4:7] + chains[::-1]]
    assert [fabric.where(s) for s in thumb] == ["top"] * 3 + ["underside"] * 3


def test_a_motif_joined_as_you_go_goes_into_the_corners_of_the_finished_one() -> None:
    motif = "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch {0}, {1}; join with sl st to top of ch-3. (12 dc)\n"
    text = ("First square\n" + motif.format(2, "(3 dc in ring, ch 2) 3 times") + "Fasten off.\n\nJoined square\n"
            + motif.format("1, sl st in corner sp of first square, ch 1",
                           "3 dc in ring, ch 1, sl st in next corner sp of first square, ch 1, (3 dc in ring, ch 2) twice"))
    fabric = woven(text)
    first, second = (r for r in fabric.rows if r.label == "Rnd 1")
    chains = [s for s in range(first.start, first.end) if fabric.name(s) == "ch" and fabric.part_of(s) == "edge"]
    slips = [s for s in range(second.start, second.end) if fabric.name(s) == "sl st" and fabric.part_of(s) == "edge"]
    assert [fabric.parents(s) for s in slips] == [tuple(chains[:2]), tuple(chains[-2:])]
    assert [fabric.where(s) for s in slips] == ["space", "space"]
    assert (first.piece, second.piece) == (0, 1)


def test_an_edging_goes_down_the_side_where_its_first_stitches_came_to_and_turns_the_corners():
    f = woven(
        "Ch 5.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn.\nRows 2-4: Ch 1, sc in each st across, turn.\n"
        "Edging: Ch 1, sc in next 4 sts, work 4 sc down side, 2 sc in corner, work 4 sc along bottom, 2 sc in corner, 4 sc up side; join.\n"
    )
    last = f.rows[-1]
    made = [s for s in range(last.start, last.end) if f.name(s) == "sc"]
    into = [f.parents(s)[0] for s in made]
    first, second, third, fourth = (edge(f, f"Row {n}") for n in (1, 2, 3, 4))
    assert into[:4] == fourth[::-1]
    assert into[4:8] == [fourth[0], third[-1], second[0], first[-1]]  # down the side on which row 4 began
    assert into[8:10] == [first[-1]] * 2
    assert into[10:14] == [f.parents(s)[0] for s in first[::-1]]  # the other side of the chains that row 1 went into
    assert into[14:16] == [into[13]] * 2
    assert into[16:] == [first[0], second[-1], third[0], fourth[-1]]
    assert {f.where(s) for s in made[10:16]} == {"underside"}
    assert {f.where(s) for s in (*made[4:10], *made[16:])} == {"row-end"}


@pytest.mark.parametrize(("chains", "hook", "gap", "said"), [(26, 6, 1, ""), (26, 6, 1, " (skipped ch count as dc and ch 1)"), (26, 8, 2, "")])
def test_half_of_what_is_skipped_beyond_the_stitch_lies_below_the_first_space(chains: int, hook: int, gap: int, said: str) -> None:
    """ "Dc in 8th ch, *ch 2, sk 2": three chains stand as a dc, two are its space, two lie under that."""
    fabric = woven(f"Ch {chains}.\nRow 1: Dc in {hook}th ch from hook{said}, *ch {gap}, sk next {gap} ch, dc in next ch; rep from * across, turn.\n"
                   f"Row 2: Ch {3 + gap} (counts as dc and ch {gap}), sk next ch-{gap} sp, dc in next dc, *ch {gap}, sk next ch-{gap} sp, dc in next dc; "
                   f"rep from * to last ch-{gap} sp, ch {gap}, dc in 3rd ch of turning ch, turn.\n")
    first = chains - hook
    assert row(fabric, "Row 1").borrowed == (first + gap + 3,)
    assert parents(fabric, "Row 2")[-1] == (first + gap + 3,)
