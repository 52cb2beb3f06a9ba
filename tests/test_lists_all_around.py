"""A list told once for the whole round, and places told before what goes into them. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize("said", [", around", "; around", " - around", ", all around", " - repeat around", ", all the way around"])
def test_around_behind_a_list_is_all_of_it(said):
    text = f"Rnd 1: 7 sc in magic ring.\nRnd 2: Inc in each.\nRnd 3: 1 sc, 2 sc in next{said}.\nRnd 4: sc in next 2, inc{said}.\nRnd 5: sc 2, dec{said}. 21\n"
    assert first_counts(text) == [7, 14, 21, 28, 21]


FLOWER = "Ch 5, join to form a ring.\nRnd 1: Ch 1, 10 sc in ring, join.\nRnd 2: Ch 1, sc in same st, ch 4, sk 1, *sc in next sc, ch 4, sk 1* 4 times, join.\n"


@pytest.mark.parametrize("lead", ["in each loop: ", "In each ch-4 loop: ", "in each ch-4 loop work: ", "into each ch-4 sp: "])
def test_petals_told_behind_a_colon(lead):
    assert first_counts(f"{FLOWER}Rnd 3: {lead}sc, hdc, 4 dc, hdc, sc.\n")[-1] == 5 * 8


@pytest.mark.parametrize("second", ["in next loop 3 sc*", "3 sc in next loop*", "in next loop 3 sc; rep from * around"])
def test_a_loop_before_the_only_stitches_that_go_into_it(second):
    """Loops in turn: 4 and 3 stitches, over six of them."""
    ring = "Ch 5, join to form a ring.\nRnd 1: Ch 1, 12 sc in ring, join.\nRnd 2: Ch 1, sc in same st, ch 4, sk 1, *sc in next sc, ch 4, sk 1* 5 times, join.\n"
    assert first_counts(f"{ring}Rnd 3: *In next loop: dc, ch 2, 3 dc; {second}\n")[-1] == 3 * (4 + 3)


@pytest.mark.parametrize(("chain", "kind", "many"), [(4, "dc", 11), (3, "hdc", 9), (5, "tr", 15)])
def test_the_first_chain_of_a_short_one_is_the_farthest_from_the_hook(chain, kind, many):
    """The chains passed over stand for a stitch, as its printed count tells."""
    for where in ("first ch", f"{chain}{'th' if chain > 3 else 'rd'} ch from hook"):
        assert first_counts(f"Rnd 1: Ch {chain}, {many} {kind} in {where}; sl st to top of ch. ({many + 1} {kind})\n") == [many + 1]


@pytest.mark.parametrize("first", ["skip 1", "skip 1 st", "skip first st", "sk next st"])
def test_nobody_skips_twice(first):
    """The stitch that the chain stands on is passed over, then one in each pair."""
    row = f"Row 2: Ch 3, {first}, *skip 1, dc in next, dc in skipped st; rep from * to last st, dc in last.\n"
    assert first_counts(f"Row 1: Ch 25, sc in 2nd ch and in each ch across.\n{row}") == [24, 24]
