"""Clusters and stitches worked together over stitches and spaces: "cluster over next 2 dc and ch-3 sp"."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows


@pytest.mark.parametrize(("each", "row", "count"), [
    ("sc", "Ch 1, *cluster over next sc and ch-3 sp, ch 4; rep from * around.", 6),
    ("2 sc", "Ch 1, *cluster over next 2 sc and ch-3 sp, ch 4; rep from * around.", 6),
    ("2 dc", "Ch 1, *dc3tog over next 2 dc and ch-3 sp, ch 5; rep from * around, join.", 6),
    ("sc", "Ch 1, *sc2tog over next sc and next sp, ch 4; rep from * around.", 6),
    ("3 sc", "Ch 1, *cluster over next 3 sc, ch 4, sc in ch-3 sp, ch 4; rep from * around.", 12),
])
def test_over_stitches_and_a_space(each, row, count):
    assert last_rows([f"Rnd 1: Ch 1, ({each} in magic ring, ch 3) 6 times, join.", f"Rnd 2: {row}"], "us")[-1].counts == (count,)


def test_the_start_chain_is_the_first_leg():
    lines = ["Rnd 1: Ch 3, dc in magic ring, ch 3, (2 dc in ring, ch 3) 5 times, join. (12 dc)",
             "Rnd 2: Ch 2, dc2tog over next dc and ch-3 sp, ch 4, *dc3tog over next 2 dc and ch-3 sp, ch 4; rep from * around, join. (6)"]
    assert last_rows(lines, "us")[-1].counts == (6,)
