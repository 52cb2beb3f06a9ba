"""The shipped designs, worked once, with what drawings need of them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

import pytest

from loopwright.grading import grade
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGNS = sorted(p.stem for p in (Path(__file__).parents[2] / "designs").glob("*.txt"))


class Worked(NamedTuple):
    fabrics: tuple[Fabric | None, ...]
    sizes: StitchSizes
    names: tuple[str, ...]
    title: str


@pytest.fixture(scope="session")
def worked() -> Callable[[str], Worked]:
    known: dict[str, Worked] = {}

    def of(name: str) -> Worked:
        if name not in known:
            text = (Path(__file__).parents[2] / "designs" / f"{name}.txt").read_text(encoding="utf-8")
            graded = grade(read(Source.of(text), None), work, None, None)
            sizes = stitch_sizes(graded.document, None).sizes
            assert graded.report is not None
            assert sizes is not None
            known[name] = Worked(tuple(graded.report.fabrics), sizes, graded.document.sizes or ("one size",), graded.document.title or "")
        return known[name]

    return of


@pytest.fixture(params=DESIGNS)
def design(request, worked) -> Worked:
    found: Worked = worked(request.param)
    return found
