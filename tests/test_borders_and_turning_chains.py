"""Corners told first, chains left on a ring, and both ends of a row that grows. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize(
    "border",
    [
        "Ch 1, 3 sc in corner, 40 sc along each long side, 3 sc in each corner and 30 sc along each short side.",
        "Ch 1, 3 sc in the same corner, 40 sc along each long side, 30 sc along each short side and 3 sc in each corner.",
        "Ch 1, 40 sc along each long side, 30 sc along each short side and 3 sc in each corner.",
        "Ch 1, 3 sc in each corner, 40 sc along each long side and 30 sc along each short side.",
    ],
)
def test_a_border_by_its_sides_has_four_corners(border):
    assert first_counts(f"Rnd 1: Join yarn in any corner. {border}\n") == [2 * 40 + 2 * 30 + 4 * 3]


@pytest.mark.parametrize("stop", ["; rep from * around to last 2 ch", "; rep from * to last 2 ch", "; rep from * to last 2 sts", " * around to last 2 ch"])
def test_chains_left_at_the_end_of_a_ring(stop):
    """A place in every third of 48 chains: 16 of them, two chains after each."""
    rest = ", sk 2 ch, join to 3rd ch of ch 4."
    assert first_counts(f"Ch 48, join.\nRnd 1: Ch 4, dc in same ch, *sk 2 ch, (dc, ch 1, dc) in next ch{stop}{rest}\n") == [48, 32]


@pytest.mark.parametrize("top", ["top of tch", "top of ch", "top of the chain", "top of turning ch", "top of ch 3"])
def test_both_ends_increase(top):
    rows = f"Row 2: Ch 3, turn, dc in first dc, dc in next 11, 2 dc in {top}.\n"
    assert first_counts(f"Ch 15.\nRow 1: Dc in 4th ch from hook and each across, turn.\n{rows}") == [15, 13, 15]


@pytest.mark.parametrize("name", ["Shell of ", "Fan of ", "Shell (", "shell consisting of "])
def test_a_shell_of_what_stands_behind_it(name):
    name = name if name.endswith("(") else name + "("
    text = f"Ch 6, join.\nRow 1: Ch 3, (2 dc, ch 2, 3 dc) in ring, turn.\nRow 2: Ch 3, {name}3 dc, ch 2, 3 dc) in ch-2 sp, dc in top of tch, turn.\n"
    assert first_counts(text)[-2:] == [6, 8]
