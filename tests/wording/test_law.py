"""Every demo design, in every size and way of saying it, reads back as what it was."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from law import WAYS, Worked, again, same, worked  # type: ignore[import-not-found,unused-ignore]

DESIGNS = Path(__file__).parents[2] / "designs"
READY = ["samphire-as-worked", "curlew-toy"]


@cache
def _design(name: str) -> Worked:
    return worked((DESIGNS / f"{name}.txt").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("terms", "full", "spelled"), WAYS)
@pytest.mark.parametrize("name", READY)
def test_all_sizes(name: str, terms: str, full: bool, spelled: bool) -> None:
    first = _design(name)
    text, second = again(first, terms, None, full, spelled)
    assert same(first.report, second), text


@pytest.mark.parametrize(("terms", "full", "spelled"), WAYS)
@pytest.mark.parametrize("name", READY)
def test_one_size(name: str, terms: str, full: bool, spelled: bool) -> None:
    first = _design(name)
    for size in range(len(first.document.sizes)):
        text, second = again(first, terms, size, full, spelled)
        assert same(first.report, second, size), text
