"""Rounds from group to group that pass over what stands between. Counts worked by hand; common practice, no source."""

import pytest

from tests.line_by_line import first_counts


def groups(n):
    """A ring of n groups of five dc with one sc between two of them."""
    return f"Ch 10, join.\nRnd 1: Ch 3, 4 dc in ring, (ch 1, sc in ring, ch 1, 5 dc in ring) {n - 1} times, ch 1, sc in ring, ch 1, join.\n"


FIRST = {
    "told": "Ch 2, dc4tog over next 4 dc",
    "in movements": "Ch 2 (to count as dc), holding back on hook the last loop of each dc, dc in next 4 dc, thread over, draw through all loops (cluster made)",
    "without a chain": "Cluster over next 5 dc",
}


@pytest.mark.parametrize("n", [6, 8, 10, 12])
@pytest.mark.parametrize("first", FIRST)
def test_a_cluster_over_so_many_dc_passes_over_the_sc_between(n, first):
    more = "dc5tog" if first == "told" else "cluster"
    text = f"{groups(n)}Rnd 2: {FIRST[first]}, * ch 7, {more} over next 5 dc. Repeat from * around, ch 7, join.\nRnd 3: * 9 sc in next loop. Repeat from * around.\n"
    assert first_counts(text)[-2:] == [n, 9 * n]


@pytest.mark.parametrize("n", [6, 7, 10])
def test_plain_stitches_from_group_to_group(n):
    assert first_counts(f"{groups(n)}Rnd 2: Ch 3, dc in next 4 dc, * ch 3, dc in next 5 dc. Repeat from * around, ch 3, join.\n")[-2:] == [6 * n, 5 * n]
