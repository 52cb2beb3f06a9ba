"""Rows of shells that end in half a shell: the ending stands for the last shell, whatever the shells are made of."""

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


@pytest.mark.parametrize(("made", "skipped", "middle"), [(3, 1, "2nd dc"), (3, 1, "center dc"), (5, 2, "3rd dc"), (7, 3, "4th dc")])
@pytest.mark.parametrize("shells", [2, 3, 4, 7])
@pytest.mark.parametrize("ending", ["ending with", "end with", "ending last rep with"])
def test_half_a_shell_at_the_end(made: int, skipped: int, middle: str, shells: int, ending: str) -> None:
    half = made // 2
    text = (
        f"Ch {shells * (2 * skipped + 2) + 2}.\n"
        f"Row 1: Sc in 2nd ch from hook, *sk {skipped} ch, {made} dc in next ch, sk {skipped} ch, sc in next ch; rep from * across, turn.\n"
        f"Row 2: Ch 3, {half} dc in first sc, *sc in {middle} of next shell, {made} dc in next sc; rep from * across, {ending} {half + 1} dc in last sc, turn."
    )
    rows = work(read(Source.of(text), "us")).rows
    # the chain and half a shell, a stitch in each shell, a shell in each stitch between, the other half
    assert [row.counts[0] for row in rows[1:]] == [1 + shells * (made + 1), 1 + half + shells + (shells - 1) * made + half + 1]


@pytest.mark.parametrize("passed", ["sk hdc and dc", "sk next hdc and next dc", "skip 1 dc and 1 hdc", "sk dc and hdc", "sk 2 sts"])
def test_two_kinds_passed_over_in_whichever_order_they_are_met(passed: str) -> None:
    text = (
        "Ch 23.\nRow 1: (Hdc, dc) in 3rd ch from hook, *sk 2 ch, (sc, hdc, dc) in next ch; rep from * to last 2 ch, sk 1 ch, sc in last ch, turn.\n"
        f"Row 2: Ch 1, (hdc, dc) in first sc, *{passed}, (sc, hdc, dc) in next sc; rep from * to last 3 sts, sk 2 sts, sc in tch."
    )
    # two in the first, six groups of three, one at the end
    assert work(read(Source.of(text), "us")).rows[-1].counts == (2 + 6 * 3 + 1,)


def test_the_edges_of_granny_stripes() -> None:
    text = (
        "Ch 29.\nRow 1: Sc in 2nd ch from hook and in each ch across. (28)\n"
        "Row 2: Ch 3, dc in first st, *sk 2 sts, 3 dc in next st; rep from * to last 3 sts, sk 2 sts, 2 dc in last st.\n"
        "Row 3: Ch 3, 3 dc in each sp between groups across, dc in last st."
    )
    # two, eight threes and two; then a stitch, nine threes between them, a stitch
    assert [row.counts[0] for row in work(read(Source.of(text), "us")).rows] == [29, 28, 2 + 8 * 3 + 2, 1 + 9 * 3 + 1]
