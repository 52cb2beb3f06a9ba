"""Motifs joined and a border around them: the size of the whole, and a shape that comes to rest."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from loopwright.grading import grade
from loopwright.grading.gauge import stitch_sizes
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.relax import RelaxOptions, relax
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

TEXT = (Path(__file__).parents[2] / "designs" / "sea-lavender-blanket.txt").read_text(encoding="utf-8")


@pytest.fixture(scope="module")
def blanket() -> Any:
    return grade(read(Source.of(TEXT)), work)


def test_the_whole_is_as_large_as_the_heading_says(blanket: Any) -> None:
    """Its own words: "74 (94, 124) x 94 (124, 154) cm with the border", to the whole centimetre."""
    head = re.search(r"^Finished size: (.*)$", TEXT, re.MULTILINE)
    assert head is not None
    told = [[int(n) for n in re.findall(r"\d+", side)] for side in head[1].split(" x ")]
    sizes = stitch_sizes(blanket.document).sizes
    assert sizes is not None
    for at, fabric in enumerate(blanket.report.fabrics):
        found = {d.name: d.value_mm for d in dimensions(fabric, sizes) if d.section == "Border"}
        assert [round(found[name] / 10) for name in ("width", "length")] == [side[at] for side in told]


def test_its_shape_comes_to_rest(blanket: Any) -> None:
    sizes = stitch_sizes(blanket.document).sizes
    assert sizes is not None
    assert sizes is not None
    shape = relax(blanket.report.fabrics[0], sizes, RelaxOptions(budget_s=60.0))
    assert shape.settled
    assert shape.why == ""
    assert shape.measures().strain_mean < 0.05
