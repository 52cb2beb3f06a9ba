"""Designs gathered for filming, each once in a run."""

import pytest

from loopwright.filming.shots import plan
from loopwright.source import Source
from loopwright.workshop.designs import find
from loopwright.workshop.film.gather import gather


def _text(name):
    found = find(name)
    assert found is not None
    return found.text


@pytest.fixture(scope="session")
def filmed():
    """Facts of a shipped design in a size, terms and language; each made once."""
    kept = {}

    def of(name, size=None, **how):
        key = (name, size, tuple(sorted(how.items())))
        if key not in kept:
            kept[key] = gather(Source.of(_text(name), name), size, **how)
        return kept[key]

    return of


@pytest.fixture(scope="session")
def hat(filmed):
    return filmed("samphire-beanie", "child")


@pytest.fixture(scope="session")
def hat_plan(hat):
    return plan(hat.facts)
