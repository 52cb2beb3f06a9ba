"""A granny square as it is written everywhere: groups into corner spaces and into the spaces between groups, which have no chain."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import instructions, voice_for
from loopwright.working import work

SQUARE = """Terms: US
Square
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 1, *3 dc in ring, ch 1; rep from * 2 times more; join with sl st to top of ch-3. (12 dc)
Rnd 2: Join with sl st in any ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp, *(3 dc, ch 1, 3 dc) in next ch-1 sp; rep from * 2 times more; join. (24 dc)
"""
CORNER, BEGINS = "(3 dc, ch 1, 3 dc) in next ch-1 sp", "Join with sl st in any ch-1 sp, ch 3, (2 dc, ch 1, 3 dc) in same sp"


@pytest.mark.parametrize("side", [
    "3 dc in next sp between groups", "3 dc in sp between groups", "3 dc in next space between 3-dc groups", "3 dc between next 2 groups",
])
@pytest.mark.parametrize("row", [
    "{begins}, {side}, *{corner}, {side}; rep from * 2 times more; join. (36 dc)",
    "{begins}, {side}, *{corner}, {side}; rep from * around; join. (36 dc)",
    "{begins}, *{side}, {corner}; rep from * 2 times more, {side}; join. (36 dc)",
])
def test_groups_into_the_spaces_between_groups(row, side):
    report = work(read(Source(f"{SQUARE}Rnd 3: {row.format(begins=BEGINS, corner=CORNER, side=side)}\n", "text")))
    assert [r.counts[0] for r in report.rows] == [4, 12, 24, 36]
    assert report.findings == ()


def test_spaces_with_chains_between_groups_are_found_too():
    text = SQUARE.replace("*(3 dc, ch 1, 3 dc) in next ch-1 sp;", "ch 1, *(3 dc, ch 1, 3 dc) in next ch-1 sp, ch 1;")
    text += f"Rnd 3: {BEGINS}, ch 1, *3 dc in next sp between groups, ch 1, {CORNER}, ch 1; rep from * 2 times more, 3 dc in next sp between groups, ch 1; join. (36 dc)\n"
    report = work(read(Source(text, "text")))
    assert [r.counts[0] for r in report.rows] == [4, 12, 24, 36]


@pytest.mark.parametrize("terms", ["us", "uk"])
def test_what_is_written_reads_back_as_the_same_square(terms):
    document = read(Source(f"{SQUARE}Rnd 3: {BEGINS}, *3 dc in next sp between groups, {CORNER}; rep from * 2 times more, 3 dc in next sp between groups; join. (36 dc)\n", "text"))
    report = work(document)
    said = "\n".join(s.text.strip() for s in instructions(voice_for(document, terms, 0), document, report))
    again = work(read(Source(f"Terms: {terms.upper()}\nSquare\n{said}", "again")))
    assert [r.counts[0] for r in again.rows] == [4, 12, 24, 36], said


def test_the_last_space_of_such_a_repeat_is_one_between_groups_too() -> None:
    text = """Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3, 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join with sl st to top of ch-3. (12 dc)
Rnd 2: Sl st to ch-2 sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, join. (24 dc)
Rnd 3: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in next sp between groups, (3 dc, ch 2, 3 dc) in next corner sp; rep from * around, ending with 3 dc in last sp, join. (36 dc)
Rnd 4: Sl st to corner sp, ch 3, (2 dc, ch 2, 3 dc) in same sp, *3 dc in each sp between groups to corner, (3 dc, ch 2, 3 dc) in corner sp; rep from * around, ending with 3 dc in each of last 2 sps, join. (48 dc)
"""
    assert [(r.counts[0], r.agrees) for r in work(read(Source.of(text))).rows if r.label] == [(12, True), (24, True), (36, True), (48, True)]
