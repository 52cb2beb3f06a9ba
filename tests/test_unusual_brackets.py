"""Groups in bars, pointed and slanted brackets, waves: "|inc, sc in next 6| x5"."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("opened", "closed"), ["||", "<>", "//", "«»", "~~", "^^", "{}", "[]"])
@pytest.mark.parametrize("behind", ["x5", "x 5", "5 times", "repeat 5 times", "around"])
def test_a_group_in_unusual_brackets(opened, closed, behind):
    lines = ["Rnd 1: 35 sc in magic ring. (35)", f"Rnd 2: {opened}inc, sc in next 6{closed} {behind}"]
    assert last_rows(lines, "us")[-1].counts == (40,)


def test_in_british_terms_with_more_behind():
    lines = ["Rnd 1: 20 dc in magic ring. (20)", "Rnd 2: <1dc in next 3 dc, 2dc in next dc> 4 times, 1dc in next 4 dc. (24)"]
    assert last_rows(lines, "uk")[-1].counts == (24,)
