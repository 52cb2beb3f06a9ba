"""One star that serves two counts, "*A; rep from * twice more, B, rep from * 3 times, B": the sides of an oval, or all four of a square."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("around", "row", "count"), [
    (28, "*sc in next 4 sts, dc in next st; rep from * once more, 3 dc in each of next 4 sts, rep from * twice, 3 dc in each of last 4 sts.", 44),
    (30, "*sc in next 3 sts, 2 sc in next st; rep from * 2 more times, (2 sc in next st) 3 times, rep from * 3 times, 2 sc in each of last 3 sts.", 42),
    (32, "*sc in next 3 sts, 2 sc in next st; rep from * 3 more times, ch 2, rep from * 4 times, ch 2, join.", 40),
    (24, "*sc in next st, 2 sc in next st; rep from * twice more, ch 3, rep from * 3 times, join.", 36),
])
def test_one_star_with_two_counts(around, row, count):
    assert last_rows([f"Rnd 1: {around} sc in magic ring. ({around})", f"Rnd 2: Ch 1, {row}"], "us")[-1].counts == (count,)
