"""Granny stripes from the row on the chain, stitches with short names of their own, several stitches of one group told by their order."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from tests.line_by_line import first_counts

STRIPES = "Ch 27.\nRow 1: 2 dc in 4th ch from hook (skipped chs count as dc), *sk 2 ch, 3 dc in next ch; rep from * to last 2 ch, sk 1 ch, dc in last ch, turn.\n"


@pytest.mark.parametrize(("row", "count"), [
    ("*3 dc in sp between next 2 groups; rep from * across, dc in top of tch, turn.", 23),
    ("*3 dc in sp between groups; rep from * across, dc in top of tch, turn.", 23),
    ("3 dc in each sp between groups across, dc in top of tch, turn.", 23),
    ("*3 dc in next sp; rep from * across, dc in last dc, turn.", 29),  # beside the edge stitches too
    ("2 dc in sp between first dc and next group, *3 dc in next sp between groups; rep from * to last group, 2 dc in sp before tch, dc in top of tch.", 27),
    ("2 dc in sp before next group, *3 dc in next sp between groups; rep from * to last group, 2 dc in sp between last group and the turning ch, dc in top of tch.", 27),
])
def test_granny_stripes_on_the_first_row(row, count):
    assert first_counts(f"{STRIPES}Row 2: Ch 3 (counts as dc), {row}")[2] == count


@pytest.mark.parametrize(("stitch", "made"), [
    ("hhdc", "hhdc"), ("ldc", "dc"), ("wst", "wst"), ("herringbone hdc", "hdc"), ("linked dc", "dc"), ("split sc", "sc"), ("yo sl st", "sl st"),
    ("sctbl", "sc"), ("sc tbl", "sc"), ("hdcbl", "hdc"), ("blsc", "sc"), ("flhdc", "hdc"), ("sc in blo", "sc"), ("hdc in third loop", "hdc"),
])
def test_stitches_by_their_short_names(stitch, made):
    report = work(read(Source.of(f"Row 1: Ch 18, sc in 2nd ch from hook and in each ch across. (17)\nRow 2: Ch 1, turn, {stitch} in each st across.\n"), "us"))
    assert (report.rows[-1].counts, dict(report.rows[-1].made)) == ((17,), {made: (17,)})
    assert {f.code for f in report.findings} <= {"N006"}


@pytest.mark.parametrize("word", ["last", "first", "post", "disc", "most", "rest"])
def test_no_word_is_taken_for_a_stitch(word):
    report = work(read(Source.of(f"Row 2: Sc in the {word} in each st across.\n"), "us"))
    assert "N006" not in [f.code for f in report.findings]


@pytest.mark.parametrize(("places", "count"), [
    ("sc in 2nd, 3rd and 4th dc of next shell", 17), ("sc in 2nd and 4th dc of next shell", 13), ("sc in 1st, 3rd, and 5th dc of next shell", 17),
    ("sc in 3rd dc of next shell", 9),
])
def test_several_stitches_of_a_group(places, count):
    shells = "Ch 26.\nRow 1: Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch (shell made), sk 2 ch, sc in next ch; rep from * across, turn. (25)\n"
    assert first_counts(f"{shells}Row 2: Ch 3 (counts as dc), *{places}, dc in next sc; rep from * across, turn.")[2] == count
