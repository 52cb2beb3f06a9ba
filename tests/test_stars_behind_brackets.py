"""A star behind a bracket, and a list named by both its marks. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize("gloss", ["(a sc)", "(first sc)", "(= sc)"])
def test_a_first_star_behind_a_bracket_opens_a_repeat(gloss):
    assert first_counts(f"Rnd 1: 20 dc in ring.\nRnd 2: ch1 {gloss} *ch 4, sk 3 dc, sc in next dc* rep * to * 3 more times, ch 4, join.\n")[-1] == 5


@pytest.mark.parametrize(("times", "made"), [("6 times", 8), ("6 more times", 8), ("5 times", 7)])
def test_from_mark_to_mark_so_many_times_more(times, made):
    assert first_counts(f"Rnd 1: Ch 4 (1 dc, ch 1), * dc in ring, ch 1 **; * to ** {times}. Sl st into 3rd ch of ch 4. ({made} dc)\n") == [made]


@pytest.mark.parametrize("begun", ["Ch 3, (first hdc and ch-1) hdc in same st.", "Ch 3 (hdc and ch 1), hdc in same st.", "Ch 3, (1st hdc plus ch 1) hdc in same st."])
def test_a_chain_that_is_a_stitch_and_a_space(begun):
    text = f"Ch 24, join.\nRnd 1: {begun} ** Skip next ch, (hdc, ch 1, hdc) in next ch. * Rep ** to * to end. Join to 2nd ch of first ch-3. (12 ch-1 spaces)\n"
    assert first_counts(text) == [24, 24]
