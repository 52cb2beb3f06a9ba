"""A list in stars whose last thing stands in brackets: "*sc in next 4, (2 sc in next st)* across"; the star closes the list, not the bracket."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("row", "count"), [
    ("*sc in next 3, (inc)* across.", 25),
    ("*sc in next 3, (2 sc in next st)* around.", 25),
    ("*sc in next 3 sts, (dec); rep from * around.", 16),
    ("*3 sc, (dec)* 4 times.", 16),
    ("*2 sc in next st (inc), sc in next 4 sts* around.", 24),
    ("*3 sc, (sc2tog)* around.", 16),
    ("(sc in next 3, inc) * around.", 25),
    ("*sc in next 4 sts, (sc, dc) in next st* 4 times.", 24),
])
def test_a_bracket_at_the_end_of_a_list_in_stars(row, count):
    assert last_rows(["Rnd 1: 20 sc in magic ring. (20)", f"Rnd 2: {row}"], "us")[-1].counts == (count,)


def test_a_name_behind_an_increase_stays_a_name():
    assert last_rows(["Rnd 1: 20 sc in magic ring. (20)", "Rnd 2: 2 sc in next st (inc), sc in next 18, 2 sc in next st (inc). (22)"], "us")[-1].counts == (22,)
