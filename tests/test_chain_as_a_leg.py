"""A start chain that is the first leg of a stitch: "ch 2 (counts as first half of dc2tog), dc in next st"."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("row", "terms", "count"), [
    ("Ch 2 (counts as first half of dc2tog), dc in next st, *ch 3, dc2tog over next 2 sts; rep from * around, ch 3, join.", "us", 9),
    ("Ch 2 (counts as half of first dc2tog), dc in next st, (ch 4, dc2tog) 8 times, ch 4, join.", "us", 9),
    ("Ch 3 (counts as first leg of dc3tog), dc2tog over next 2 sts, *ch 5, dc3tog; rep from * around, ch 5, join.", "us", 6),
    ("2ch (counts as first half of tr2tog), 1tr in same st, *1ch, tr2tog in next st; rep from * to end, 1ch, ss to first tr.", "uk", 18),
    ("2ch (counts as part of first tr2tog), 1tr in same st, 2ch, (miss 1 st, tr2tog in next st, 2ch) 8 times, ss to join.", "uk", 9),
])
def test_a_chain_and_a_stitch_are_one(row, terms, count):
    first = "18 sc in magic ring." if terms == "us" else "18 dc in magic ring."
    assert last_rows([f"Rnd 1: {first} (18)", f"Rnd 2: {row}"], terms)[-1].counts == (count,)


def test_in_the_space_where_the_yarn_was_joined():
    lines = ["Rnd 1: 10 sc in magic ring. (10)", "Rnd 2: Ch 1, (sc in next st, ch 3, skip 1 st) 5 times, join. (5 sc)",
             "Rnd 3: Join B in any ch-3 sp, ch 2 (counts as first half of dc2tog), dc in same sp, ch 3, dc2tog in same sp, *(dc2tog, ch 3, dc2tog) in next sp; rep from * around, join."]
    assert last_rows(lines, "us")[-1].counts == (10,)
