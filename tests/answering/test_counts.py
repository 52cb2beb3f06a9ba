"""A count that is off: what is said of it comes from the fabric, the likeliest cause first, and the way on comes to the pattern's count."""

import pytest

from loopwright.answering import CountAsked, count_is_off
from loopwright.workshop.check import check_text

HAT = (
    "Rnd 1: Ch 1, 8 hdc in magic ring; join with sl st to first hdc. (8 hdc)\n"
    "Rnd 2: Ch 1, 2 hdc in each st around; join. (16 hdc)\n"
    "Rnd 3: Ch 1, *hdc in next st, 2 hdc in next st; rep from * around; join. (24 hdc)\n"
    "Rnd 4: Ch 1, *hdc in next 2 sts, 2 hdc in next st; rep from * around; join. (32 hdc)\n"
    "Rnd 5: Ch 1, hdc in each st around; join. (32 hdc)\n"
)
COUNTED = (
    "Row 1: Ch 22, dc in 4th ch from hook and in each ch across, turn. (20 dc)\n"
    "Row 2: Ch 3 (counts as dc), dc in next st and in each st across, turn. (20 dc)\n"
    "Row 3: Ch 3 (counts as dc), dc in next st and in each st across, turn. (20 dc)\n"
)
NOT_COUNTED = (
    "Row 1: Ch 21, sc in 2nd ch from hook and in each ch across, turn. (20 sc)\n"
    "Row 2: Ch 1 (does not count as a st), sc in each st across, turn. (20 sc)\n"
    "Row 3: Ch 1 (does not count as a st), sc in each st across, turn. (20 sc)\n"
)
SIZED = (
    "Sizes: small (medium, large)\n\nRnd 1: 6 (7, 8) sc in magic ring. (6, 7, 8 sc)\nRnd 2: 2 sc in each st around. (12, 14, 16 sc)\n"
    "Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18, 21, 24 sc)\n"
)


def asked(text, row, have, *, size=0, before=None, terms="us"):
    return count_is_off(check_text(text), CountAsked(row, size, have, before, terms))


@pytest.mark.parametrize(("text", "row", "have", "mark"), [
    (HAT, 3, 33, "join"), (HAT, 3, 31, "first"), (COUNTED, 1, 19, "last"), (COUNTED, 1, 21, "first"), (NOT_COUNTED, 1, 19, "first"),
    (NOT_COUNTED, 1, 21, "chain"),
])
def test_one_off_is_sought_at_the_join_and_at_the_ends_first(text, row, have, mark):
    assert asked(text, row, have).causes[0].mark == mark


def test_a_right_count_has_no_cause():
    found = asked(HAT, 3, 32)
    assert found.causes == ()
    assert "32 is right" in found.text


def test_what_was_said_of_the_row_before_comes_first():
    first = asked(HAT, 3, 31, before=23).causes[0]
    assert first.mark == "row before"
    assert "Rnd 3 had 23 instead of 24" in first.title


def test_a_row_before_that_was_right_is_no_cause():
    assert "row before" not in [c.mark for c in asked(HAT, 3, 31, before=24).causes]


def test_the_count_of_another_size_is_recognised():
    first = asked(SIZED, 2, 24).causes[0]
    assert first.mark == "other size"
    assert "large" in first.title


def test_the_count_of_the_next_row_is_recognised():
    assert asked(HAT, 2, 32).causes[0].mark == "other row"


def test_increases_too_many_are_counted_from_the_fabric():
    found = next(c for c in asked(HAT, 3, 34).causes if c.mark == "increase")
    assert found.title == "Two increases too many: 10 instead of 8."


def test_the_way_on_comes_to_the_count_of_the_next_row():
    found = asked(HAT, 2, 25)
    assert "in Rnd 4 work 1 hdc instead of 2 at one increase" in found.causes[0].mend
    assert "It comes to 32, as the pattern says" in found.causes[0].mend


def test_many_stitches_off_are_not_evened_out():
    assert all("go on without" not in c.mend for c in asked(HAT, 3, 39).causes)


def test_uk_terms_hold_throughout():
    found = asked(HAT, 3, 31, terms="uk")
    said = " ".join([found.text, *(c.title + c.see + c.mend for c in found.causes)])
    assert "htr" in said
    assert "hdc" not in said


@pytest.mark.parametrize(("row", "size"), [(99, 0), (0, 99)])
def test_rows_and_sizes_that_there_are_none_of_are_told(row, size):
    with pytest.raises(IndexError):
        asked(HAT, row, 5, size=size)


def test_a_count_below_nought_is_none():
    with pytest.raises(ValueError, match="no count"):
        asked(HAT, 0, -1)
