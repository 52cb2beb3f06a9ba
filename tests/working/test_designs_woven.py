"""The fabric of every design, in every size, counts what the report counts, and every stitch stands where it can."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
GROUPS = ("ch", "ch-sp", "group", "repeat", "picot", "pattern", "sl st")


def counted(fabric: Fabric) -> dict[tuple[int, str], dict[str, int]]:
    return {(r.item, r.label): fabric.counted(r) for r in fabric.rows}


def own_label(label: str, rows: dict[tuple[int, str], dict[str, int]], item: int) -> str:
    """What a row that is "Rnd 40-48" over all sizes is called in this one: the last number of that item."""
    kind, _, span = label.rpartition(" ")
    first, dash, last = span.partition("-")
    if not dash:
        return label
    numbers = [int(n.rpartition(" ")[2]) for i, n in rows if i == item]
    assert int(first) <= max(numbers) <= int(last), label
    return f"{kind} {max(numbers)}"


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_counts_of_the_fabric_are_those_of_the_report(path: Path) -> None:
    report = work(read(Source.of(path.read_text(encoding="utf-8"))))
    for size, fabric in enumerate(report.fabrics):
        assert fabric is not None
        rows = counted(fabric)
        for r in report.rows:
            made = {k: v[size] for k, v in r.made.items() if v[size] and k in fabric.kinds and k not in GROUPS}
            got = rows.get((r.item, own_label(r.label, rows, r.item)), {})
            if r.read and made:
                assert {k: got.get(k) for k in made} == made, (r.label, size)


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_parents_were_made_before_or_in_the_same_row_and_columns_are_of_one_length(path: Path) -> None:
    fabric = work(read(Source.of(path.read_text(encoding="utf-8")))).fabrics[0]
    assert fabric is not None
    columns = (fabric.row, fabric.into, fabric.many, fabric.place, fabric.role, fabric.colour, fabric.origin, fabric.origin_end, fabric.round, fabric.inner)
    assert {len(c) for c in columns} == {len(fabric)}
    for s in range(len(fabric)):
        row = fabric.rows[fabric.row[s]]
        assert row.start <= s < row.end
        assert all(0 <= p < row.end and p != s for p in fabric.parents(s))
