"""Designs gathered for publishing, each once in a run."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from loopwright.source import Source
from loopwright.workshop.measure import Wanted
from loopwright.workshop.publish.gather import Gathered, gather

DESIGNS = Path(__file__).parents[2] / "designs"
ALL = sorted(p.stem for p in DESIGNS.glob("*.txt"))


@cache
def _gathered(name: str) -> Gathered:
    path = DESIGNS / f"{name}.txt"
    return gather(Source.of(path.read_text(encoding="utf-8"), path.name), Wanted(), DESIGNS)


@pytest.fixture(scope="session")
def gathered():
    """A function from a design's name to what is gathered of it."""
    return _gathered


@pytest.fixture(params=ALL)
def design(request):
    """Each of the designs, gathered."""
    return _gathered(request.param)
