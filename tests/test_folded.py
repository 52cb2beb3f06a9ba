"""Lines that were broken go on indented; quoted lines are told, not worked."""

import pytest

from loopwright.model.tree import HeadLine, Prose
from loopwright.notation import write
from loopwright.notation.folded import unfolded
from loopwright.source import Source
from loopwright.workshop.check import check_source
from tests.wording.law import facts, worked

LONG = "Rnd 2: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join with sl st. (12 hdc)"
FIRST = "Crown\nRnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)\n"


def broken(line: str, at: int, indent: int) -> str:
    cut = line.rindex(" ", 0, at)
    return f"{line[:cut]}\n{' ' * indent}{line[cut + 1 :]}"


@pytest.mark.parametrize("indent", [2, 4, 8])
@pytest.mark.parametrize("at", [56, 66, 76, 86])
def test_a_row_on_two_lines_is_one_row(at, indent):
    text = FIRST + broken(LONG, at, indent) + "\n"
    assert facts(worked(text).report) == facts(worked(FIRST + LONG + "\n").report)
    assert write(worked(text).document) == text


@pytest.mark.parametrize(
    "more",
    [
        "    Rnd 3: Ch 1, hdc around.", "    Next rnd: Ch 1, hdc around.", "  - a remark", "  • a remark", "    1. a remark", "\n    after an empty line",
        "no indent at all", " one space", "    Materials: wool", "  > quoted",
    ],
)
def test_what_begins_anew_does_not_go_on(more):
    text = f"{LONG}\n{more}\n"
    assert unfolded(text) == text


def test_after_a_short_line_nothing_goes_on():
    text = "Crown\n    Ch 1, 8 hdc in magic ring; join.\n"
    assert unfolded(text) == text


def test_offsets_stay():
    text = FIRST + broken(LONG, 70, 6)
    assert len(unfolded(text)) == len(text)
    assert unfolded(text).split() == text.split()


def test_quoted_rows_are_not_worked_and_not_lost():
    text = FIRST + "> Rnd 2: Ch 1, 2 hdc in each st around; join. (16)\n  > sc in each st\nRnd 2: Ch 1, hdc in each st around; join. (8)\n"
    made = worked(text)
    assert [r.counts[0] for r in made.report.rows] == [8, 8]
    assert write(made.document) == text
    assert sum(isinstance(i, Prose) and i.text.startswith(">") for i in made.document.items) == 2


def test_values_of_the_heading_are_on_one_line():
    text = "Marsh Hat\nYarn: a worsted yarn of wool and some other fibre, which the shop calls\n    by a name of its own\n" + FIRST
    head = next(i for i in worked(text).document.items if isinstance(i, HeadLine))
    assert head.value == "a worsted yarn of wool and some other fibre, which the shop calls by a name of its own"


BROKEN = """Starting at center, ch 10, join with sl st to form
ring. 1st rnd: Ch 1, 16 sc in ring, sl st in first
sc (16 sc). 2nd rnd: Ch 4, * skip next sc, dc in
next sc, ch 1. Repeat from * around, ending with
skip last sc, sl st in 3rd ch of ch-4 (8 sps). Next
rnd: Ch 1, 3 sc in each sp around, join (24 sc).
Break off.
"""


def test_a_text_broken_at_one_width_is_read_as_one():
    report = check_source(Source.of(BROKEN))
    assert [row.counts for row in report.rows][-3:] == [(16,), (8,), (24,)]
    assert [f.code for f in report.findings if f.code[0] in "WND"] == []
    assert len(unfolded(BROKEN)) == len(BROKEN)


def test_lines_that_end_where_they_like_are_left_alone():
    """One row a line, of any length: the longest has no room for the next word either, and still nothing goes on."""
    text = (
        "Hat\\nYarn: worsted weight, about 150 metres of it in all\\nhook 5 mm\\nRnd 1: 6 sc in magic ring.\\n"
        "Rnd 2: 2 sc in each st around. (12)\\nRnd 3: *Sc in next st, 2 sc in next st; rep from * around\\n(18)\\n"
    )
    assert unfolded(text) == text
