"""Star stitch and crocodile stitch as written: loops drawn up in many places, stitches down one post and up the next."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

STARS = """
Star panel

Ch 24.
Row 1: Pull up a loop in 2nd ch from hook and in each of next 4 chs, yo and draw through all 6 loops, ch 1 to close (eye made), *pull up a loop in eye of last star, in side of last loop of star, in same ch as last loop, and in each of next 2 chs, yo and draw through all 6 loops, ch 1; rep from * across, hdc in last ch, turn. (10 stars)
Row 2: Ch 2, 2 hdc in each eye across, hdc in top of turning ch. (21 hdc)
Row 3: Ch 3, turn, pull up a loop in 2nd ch from hook, in next ch and in each of first 3 hdc, yo and draw through all 6 loops, ch 1, *pull up a loop in eye, in side of last loop of star, in same st as last loop, and in each of next 2 sts, yo and draw through all 6 loops, ch 1; rep from * across, hdc in last st. (10 stars)
"""
NAMED = """
Star panel

Special stitches: Star st: pull up a loop in eye of last star, in side of last star, in same st as last loop of star and in each of next 2 sts (6 loops on hook), yo and draw through all 6 loops, ch 1 (eye).
Beginning star: pull up a loop in 2nd ch from hook and in each of next 4 chs, yo and draw through all 6 loops, ch 1.

Ch 24.
Row 1: Beginning star, star st across, ending with hdc in last ch, turn. (10 star sts)
Row 2: Ch 2, 2 hdc in eye of each star, hdc in top of turning ch, turn. (21 hdc)
"""
SCALES = """
Scaled mitt back

Ch 28.
Row 1: Dc in 4th ch from hook, *ch 1, sk 2 chs, dc in next ch, ch 1, sk 2 chs, 2 dc in next ch; rep from * across, turn. (14 dc)
Row 2: *5 dc around the post of next dc, ch 1, 5 dc around the post of next dc, sl st in next dc; rep from * across. (50 dc)
Row 3: Ch 4, *2 dc in next sl st, ch 1, dc in middle of next scale, ch 1; rep from * across. (13 dc)
"""
LADDER = """
Ladder of scales

Ch 21.
Row 1: 2 dc in 6th ch from hook, sk 2 chs, dc in next ch, *sk 2 chs, 2 dc in next ch, sk 2 chs, dc in next ch; rep from * to end, turn.
Row 2: Ch 1, *5 dc around post of first dc of next pair, 5 dc around post of second dc of pair, sl st in next dc; rep from * to end, turn. (30 dc)
"""


@pytest.mark.parametrize(("text", "counts"), [(STARS, [24, 11, 21, 11]), (NAMED, [24, 11, 21]), (SCALES, [28, 14, 50, 13]), (LADDER, [21, 10, 30])])
def test_they_count(text: str, counts: list[int]) -> None:
    report = work(read(Source.of(text), "us"))
    assert report.findings == ()
    assert [row.counts[0] for row in report.rows] == counts


def test_a_scale_is_worked_around_two_posts() -> None:
    fabric = work(read(Source.of(SCALES), "us")).fabrics[0]
    assert fabric is not None
    second = [i for i in range(len(fabric.row)) if fabric.row[i] == 2 and fabric.name(i) == "fpdc"]
    posts = [fabric.parents(i)[0] for i in second]
    assert len(posts) == 50
    assert len(set(posts)) == 10
    assert [posts.count(p) for p in dict.fromkeys(posts)] == [5] * 10


def test_the_next_row_goes_into_the_middle_of_a_scale() -> None:
    fabric = work(read(Source.of(SCALES), "us")).fabrics[0]
    assert fabric is not None
    third = [i for i in range(len(fabric.row)) if fabric.row[i] == 3 and fabric.name(i) == "dc"]
    into = [fabric.name(fabric.parents(i)[0]) for i in third]
    assert into == ["sl st", "sl st", "ch"] * 4
