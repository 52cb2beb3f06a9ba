"""Fabrics for charts: every demo design in its first size, every stitch pattern over three repeats."""

from functools import cache
from pathlib import Path
from typing import Any

import pytest

from loopwright.grading import grade
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.notation import read
from loopwright.source import Source
from loopwright.trade.patterns import pattern, patterns
from loopwright.working import work

DESIGNS = Path(__file__).parents[3] / "designs"
NAMES = sorted(p.stem for p in DESIGNS.glob("*.txt")) + [f"pattern {p.key}" for p in patterns()]


@cache
def fabric_of(name):
    """The fabric of a design or stitch pattern, and the sizes of its stitches."""
    if name.startswith("pattern "):
        stitch: Any = pattern(name.removeprefix("pattern "))
        return woven(stitch.text.replace("{chain}", str(stitch.chain.at(3))))
    return woven((DESIGNS / f"{name}.txt").read_text(encoding="utf-8"))


@cache
def report_of(name):
    """The report of a design, worked in all its sizes."""
    graded: Any = grade(read(Source.of((DESIGNS / f"{name}.txt").read_text(encoding="utf-8"))), work)
    return graded.report


def woven(text):
    graded: Any = grade(read(Source.of(text)), work)
    return graded.report.fabrics[0], stitch_sizes(graded.document).sizes or StitchSizes(8.0, 9.0)


@pytest.fixture(params=NAMES)
def worked(request):
    return fabric_of(request.param)


@pytest.fixture
def weave():
    return woven
