"""Rows and rounds as they lie: what is along the top, what it stands on, how tall it is."""

from __future__ import annotations

import itertools

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.corners import corners
from loopwright.measuring.courses import Course, courses
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

SIZES = StitchSizes(5.0, 10.0, "dc")


def fabric(text: str) -> Fabric:
    found = work(read(Source.of(text), "us")).fabrics[0]
    assert found is not None
    return found


def laid(text: str, sizes: StitchSizes = SIZES) -> list[Course]:
    return courses(fabric(text), sizes)


def test_rows_on_a_chain():
    chain, first, second = laid("Ch 12.\nRow 1: Dc in 4th ch from hook (skipped chs count as dc) and in each ch across, turn. (10 dc)\nRow 2: Ch 3 (counts as dc), dc in each st across. (10 dc)\n")
    assert (chain.way, chain.chains) == ("chain", 12)
    assert (first.way, first.stitches, first.kinds, first.top_mm, first.height_mm) == ("row", 10, {"dc": 10}, 50.0, 10.0)
    assert (second.below, second.uses, second.skipped) == (1, 10, 0)


def test_rounds_from_a_ring():
    first, second = laid("Rnd 1: Ch 3 (counts as dc), 11 dc in magic ring; join. (12 dc)\nRnd 2: Ch 3, dc in same st, 2 dc in each st around; join. (24 dc)\n")
    assert (first.way, first.from_ring, first.stitches) == ("round", True, 12)
    assert (second.below, second.uses, second.top_mm) == (0, 12, 120.0)


def test_a_turning_chain_and_a_join_are_no_part_of_the_top():
    first, second = laid("Rnd 1: Ch 1, 6 sc in magic ring; join. (6 sc)\nRnd 2: Ch 1, 2 sc in each st around; join. (12 sc)\n")
    assert (first.places, second.places) == (6, 12)
    assert first.height_mm == 5.0  # half a dc by the table of heights


def test_unworked_stitches_are_skipped_ones():
    *_, last = laid("Rnd 1: 8 sc in magic ring. (8)\nRnd 2: 2 sc in each st around. (16)\nRow 3: Ch 1, sc in next 10 sts, leave remaining sts unworked, turn. (10)\n")
    assert (last.uses, last.skipped) == (10, 6)


def test_a_loop_longer_than_what_it_spans_stands_up():
    flat = laid("Ch 22.\nRow 1: Sc in 2nd ch from hook, *ch 2, sk 2 ch, sc in next ch; rep from * across. (8 sc)\n")[-1]
    arched = laid("Ch 22.\nRow 1: Sc in 2nd ch from hook, *ch 6, sk 2 ch, sc in next ch; rep from * across. (8 sc)\n")[-1]
    assert flat.height_mm == 5.0
    assert arched.height_mm > flat.height_mm


def test_along_row_ends():
    *_, last = laid(
        "Ch 11.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (10 sc)\nRows 2-10: Ch 1, sc in each st across, turn. (10 sc)\n"
        "Do not turn. Ch 1, work 10 sc evenly along the row ends.\n"
    )
    assert (last.way, last.row_ends) == ("along", 10)


def test_corners_of_a_granny_square():
    text = (
        "Ch 4, join to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join. (12 dc)\n"
        "Rnd 2: Sl st to ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * 2 more times, ch 1; join. (24 dc)\n"
    )
    woven = fabric(text)
    found = corners(woven, courses(woven, SIZES)[-1])
    assert [c.chained for c in found] == [True] * 4
    assert [round(b.at - a.at, 2) for a, b in itertools.pairwise(found)] == [0.25, 0.25, 0.25]


def test_a_row_of_vs_has_no_corners():
    text = "Ch 34.\nRow 1: Dc in 4th ch from hook, *sk 2 ch, (dc, ch 1, dc) in next ch; rep from * to last 3 ch, sk 2 ch, dc in last ch.\n"
    woven = fabric(text)
    assert corners(woven, courses(woven, SIZES)[-1]) == ()


def test_three_in_one_at_the_corners_of_a_square():
    text = "Rnd 1: 8 sc in magic ring. (8)\nRnd 2: *3 sc in next st, sc in next st; rep from * around. (16)\nRnd 3: Sc in next st, *3 sc in next st, sc in next 3 sts; rep from * 2 more times, 3 sc in next st, sc in next 2 sts. (24)\n"
    woven = fabric(text)
    assert len(corners(woven, courses(woven, SIZES)[-1])) == 4
