"""The printed sums, given one by one to the files that solve them."""

import math
import tomllib
from pathlib import Path

import pytest

HERE = Path(__file__).parent
EXAMPLES = tomllib.loads((HERE / "worked_examples.toml").read_text(encoding="utf-8"))["example"]


def pytest_generate_tests(metafunc):
    if "example" in metafunc.fixturenames:
        mine = [e for e in EXAMPLES if e["id"] in metafunc.module.SOLVERS]
        metafunc.parametrize("example", mine, ids=[e["id"] for e in mine])


@pytest.fixture
def as_printed(example):
    """Holds our values against the printed ones, each of them, within the example's tolerance."""

    def check(ours):
        assert set(ours) == set(example["expected"]), "every printed value is answered"
        for key, printed in example["expected"].items():
            _close(ours[key], printed, example["tolerance"])

    return check


def _close(ours, printed, tolerance):
    if isinstance(printed, list):
        for a, b in zip(ours, printed, strict=True):
            _close(a, b, tolerance)
    elif isinstance(printed, bool):
        assert ours is printed
    else:
        assert math.isclose(float(ours), printed, rel_tol=0, abs_tol=tolerance + 1e-9)
