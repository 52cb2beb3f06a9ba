"""Lines that were broken go on indented; quoted lines are told, not worked."""

import pytest

from loopwright.model.tree import HeadLine, Prose
from loopwright.notation import write
from loopwright.notation.folded import unfolded
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
