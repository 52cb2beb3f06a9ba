"""Two counts of which one is wrong, and nobody can tell which: both are named."""

import pytest

from loopwright.workshop.check import check_text

START = "Ch 4, join to form a ring.\nRow 1: Ch 3, 9 dc in ring; do not join.\n"
ROWS = START + (
    "Row 2: Ch 3, turn, dc in next st, (dc in next st, 2 dc in next st) across. ({second} dc)\n"
    "Row 3: Ch 3, turn, (2 dc in next st, dc in next st) across to last st, dc in last st. ({third} dc)\n"
)


def _said(text):
    return [(f.code, f.severity) for f in check_text(text).findings if f.code in ("W001", "W016")]


def _of(text, code):
    return next(f for f in check_text(text).findings if f.code == code)


def test_counts_that_agree_are_left_alone():
    assert _said(ROWS.format(second=13, third=19)) == []


def test_a_start_chain_counted_in_one_row_and_not_in_the_next():
    text = ROWS.format(second=14, third=19)
    found = _of(text, "W016")
    assert (found.args["printed"], found.args["made"], found.args["other"], found.args["there"]) == (14, 13, "Row 3", 19)
    assert text[found.span.start : found.span.end] == "14 dc"
    assert "Row 3" in {f.args["label"] for f in check_text(text).findings if f.code == "W001"}


def test_mending_either_of_the_two_leaves_nothing_to_say():
    for second, third in ((13, 19), (14, 20)):
        assert _said(ROWS.format(second=second, third=third)) == []


@pytest.mark.parametrize("third", [24, 33])
def test_a_count_that_no_reading_makes_is_wrong_by_itself(third):
    text = ROWS.format(second=13, third=third)
    assert [code for code, _ in _said(text)] == ["W001"]


PETALS = "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: *Ch 5, {odd}sl st in next st; repeat from * 5 times more, making {petals} petals in all.\n"


@pytest.mark.parametrize("odd", ["", "wind the stem once about itself with care and even tension, "])
def test_a_repeat_told_by_its_times_tells_what_is_counted_whatever_its_words_mean(odd):
    assert _said(PETALS.format(odd=odd, petals=6)) == []
    text = PETALS.format(odd=odd, petals=7)
    found = _of(text, "W001")
    assert str(found.args["made"]) == "6"
    assert "warning" not in {severity for code, severity in _said(text) if code == "W001"}
