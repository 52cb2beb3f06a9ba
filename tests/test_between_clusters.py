"""Between clusters and beside them: "*2 sc between clusters, 2 sc in next cluster", "3 dc between next 2 clusters"."""

from __future__ import annotations

import pytest

from tests.line_by_line import last_rows

CLUSTERS = ["Rnd 1: 9 sc in magic ring. (9)", "Rnd 2: Ch 2, (dc3tog in next st, ch 2) 9 times, join. (9 clusters)"]


@pytest.mark.parametrize(("row", "count"), [
    ("Ch 1, * 2 sc between clusters, 2 sc in next cluster; rep from * around, join.", 36),
    ("Ch 1, * 3 sc between clusters, sc in next cluster; repeat around.", 36),
    ("Ch 1, * sc in next cluster, 2 sc between clusters; rep from * around, join.", 27),
    ("Ch 1, * 4 sc between next 2 clusters; rep from * around.", 36),
    ("Ch 3, 2 dc between clusters, *ch 1, 3 dc between next 2 clusters; rep from * around, ch 1, join.", 27),
])
def test_between_clusters_and_in_them(row, count):
    assert last_rows([*CLUSTERS, f"Rnd 3: {row}"], "us")[-1].counts == (count,)


def test_in_british_terms():
    lines = ["Rnd 1: 7 dc in magic ring. (7)", "Rnd 2: 2ch, (tr3tog in next dc, 3ch) 7 times, ss. (7 clusters)", "Rnd 3: 1ch, *3dc between clusters, 1dc in next cluster; rep from * to end. (28 dc)"]
    assert last_rows(lines, "uk")[-1].counts == (28,)
