"""How it looks, chains to begin with, turning chains, balls of another yarn: what is said comes from the fabric."""

import pytest

from loopwright.answering import LOOKS, LooksAsked, balls_of_another, chain_is, chained, it_looks, turned_by, turning_chain
from loopwright.model.measures import Measures, YarnNeed
from loopwright.workshop.asked import Asked, CannotAnswerError, Question
from loopwright.workshop.check import check_text

DISC = (
    "Reed Hat\n\nCrown\nRnd 1: 6 sc in magic ring. (6 sc)\nRnd 2: 2 sc in each st around. (12 sc)\n"
    "Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)\nRnd 4: Sc in each st around. (18 sc)\n"
)
FLAT = "Reed Cowl\n\nBody\nCh 21.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (20 sc)\nRow 2: Ch 1, sc in each st across, turn. (20 sc)\n"


def row_after(chains: int, words: str) -> str:
    return f"Ch {chains}.\nRow 1: {words}\nRow 2: Ch 3 (counts as dc), dc in next st and in each st across, turn.\n"


@pytest.mark.parametrize(("words", "made"), [
    ("Sc in 2nd ch from hook and in each ch across, turn.", 56),
    ("Hdc in 3rd ch from hook and in each ch across, turn.", 55),
    ("Dc in 4th ch from hook (counts as dc) and in each ch across, turn.", 55),
])
def test_what_57_chains_come_to(words, made):
    """The trade's rule: one less for sc in the 2nd chain, two less for hdc in the 3rd; for a dc in the 4th whose chains count, two less."""
    report = check_text(row_after(57, words))
    assert chained(report, 1, 0) == 57
    found = chain_is(report, 1, 0, 57)
    assert found.heading == "57 chains are right"
    assert f"makes {made} " in found.facts[0]


def test_chains_too_few_or_many_are_told_with_what_they_come_to():
    report = check_text(FLAT)
    few, many = chain_is(report, 1, 0, 20), chain_is(report, 1, 0, 23)
    assert "comes to 19 sc" in few.text.replace("would come", "comes")
    assert "Chain anew" in few.text
    assert "two too many" in many.text
    assert "pick them out" in many.text


def test_a_row_that_is_on_no_chain_is_told():
    with pytest.raises(ValueError, match="not worked into a chain"):
        chain_is(check_text(FLAT), 2, 0, 20)


def test_a_turning_chain_counts_or_not_as_the_pattern_has_it():
    counts = turning_chain(check_text(row_after(22, "Dc in 4th ch from hook and in each ch across, turn.")), 2, 0)
    assert counts.heading == "The ch 3 counts"
    assert "second stitch" in counts.text
    report = check_text(FLAT)
    assert turned_by(report, 2, 0) == (1, False)
    found = turning_chain(report, 2, 0, "uk")
    assert found.heading == "The ch 1 does not count"
    assert "20 dc without it" in found.text
    assert "comes to 21" in found.text


def test_in_a_ring_there_is_no_stitch_to_begin_in():
    report = check_text("Rnd 1: Ch 2 (counts as hdc), 7 hdc in magic ring; join. (8 hdc)\nRnd 2: Ch 2 (counts as hdc), hdc in same st; join.\n")
    assert "second stitch" not in turning_chain(report, 0, 0).text


@pytest.mark.parametrize("look", LOOKS)
def test_every_look_has_causes_with_a_way_to_see_and_to_mend(look):
    found = it_looks(check_text(DISC), LooksAsked(look, 0, "Crown", 5.0, 5.0))
    assert found.causes
    assert all(c.title and c.see and c.mend and "{" not in c.title + c.see + c.mend for c in found.causes)
    assert found.text.startswith("Thank you for asking.")


def test_a_round_that_grows_is_told_with_the_rate_at_which_it_lies_flat():
    found = it_looks(check_text(DISC), LooksAsked("ruffles", 0, "Crown", 5.0, 5.0))
    assert found.facts[0] == "Crown grows by 6 stitches in each round, up to Rnd 3, which makes 18."
    assert "about 6.3 more in each round" in found.facts[1]  # 2 pi at stitches as wide as tall
    assert "After Rnd 3 it no longer grows" in found.facts[2]


def test_rounds_are_not_told_of_edges():
    assert "joined into its second stitch" in it_looks(check_text(DISC), LooksAsked("narrows", 0, "Crown")).text
    rows = it_looks(check_text(FLAT), LooksAsked("narrows", 0, "Body"))
    assert rows.causes[0].mark == "last"


def test_a_section_that_there_is_none_of_is_told():
    with pytest.raises(ValueError, match="no such"):
        it_looks(check_text(DISC), LooksAsked("cups", 0, "Brim"))


def need(high_m: float, colour: str = "") -> YarnNeed:
    return YarnNeed(colour, high_m * 0.8, high_m * 0.6, high_m, None)


@pytest.mark.parametrize(("high_m", "ball_m", "balls"), [(1690, 124, 14), (124, 124, 1), (125, 124, 2), (0.5, 124, 1)])
def test_balls_are_rounded_up_from_the_length(high_m, ball_m, balls):
    """5 x 338 m are 14 balls of 124 m: the trade's example."""
    found = balls_of_another((Measures("one size", yarn=(need(high_m),)),), 0, ball_m)
    assert found.heading == f"{balls} {'ball' if balls == 1 else 'balls'}"


def test_each_colour_gets_its_own_balls():
    found = balls_of_another((Measures("one size", yarn=(need(130, "A"), need(20, "B"))),), 0, 124)
    assert found.heading == "3 balls"
    assert "Of A" in found.text
    assert "Of B" in found.text


@pytest.mark.parametrize(("question", "word"), [
    (Question("looks", look="shines"), "how it looks"), (Question("looks", look="cups", measure=("Sleeve", "")), "no rows"),
    (Question("chain", row=2, have=20), "chain"), (Question("chain", row=99), "no such row"), (Question("chain", row=1, have=-1), "whole number"),
    (Question("turning", row=1), "no chain"), (Question("balls"), "metres"), (Question("balls", ball_m=100), "gauge"),
])
def test_what_cannot_be_answered_has_a_word(question, word):
    with pytest.raises(CannotAnswerError, match=word):
        Asked(FLAT).answer(question)
