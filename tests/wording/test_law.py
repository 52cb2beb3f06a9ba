"""Every demo design, in every size and way of saying it, reads back as what it was."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from law import WAYS, Worked, again, facts, graded, same  # type: ignore[import-not-found,unused-ignore]

from loopwright.grading import grade
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))
NAMES = [p.stem for p in DESIGNS]


@cache
def _design(name: str) -> Worked:
    path = next(p for p in DESIGNS if p.stem == name)
    return graded(path.read_text(encoding="utf-8"))


@pytest.mark.parametrize(("terms", "full", "spelled"), WAYS)
@pytest.mark.parametrize("name", NAMES)
def test_all_sizes(name: str, terms: str, full: bool, spelled: bool) -> None:
    first = _design(name)
    text, second = again(first, terms, None, full, spelled)
    assert same(first.report, second), text


@pytest.mark.parametrize(("terms", "full", "spelled"), [w for w in WAYS if (w[0] == "us") == (w[1] == w[2])])
@pytest.mark.parametrize("name", NAMES)
def test_one_size(name: str, terms: str, full: bool, spelled: bool) -> None:
    first = _design(name)
    for size in range(len(first.document.sizes)):
        text, second = again(first, terms, size, full, spelled)
        assert same(first.report, second, size), text


@pytest.mark.parametrize("name", NAMES)
def test_written_twice_is_written_once(name: str) -> None:
    """Text written from what was written is the same text: nothing creeps in or out."""
    first = _design(name)
    once = write(first.document, first.report, terms="uk")
    document = read(Source.of(once))
    assert write(document, None, terms="uk").split("\n\n", 2)[2:] == once.split("\n\n", 2)[2:]


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("name", NAMES)
def test_a_design_in_other_terms_is_graded_to_the_same_numbers(name: str, terms: str) -> None:
    path = next(p for p in DESIGNS if p.stem == name)
    document = read(Source.of(path.read_text(encoding="utf-8")))
    other = read(Source.of(write(document, None, terms=terms)))
    assert grade(other, None).values == grade(document, None).values


@pytest.mark.parametrize("name", NAMES)
def test_abbreviations_are_those_used(name: str) -> None:
    first = _design(name)
    for terms in ("us", "uk"):
        text = write(first.document, first.report, terms=terms)
        line = next(x for x in text.splitlines() if x.startswith("Abbreviations:"))
        foreign = {"us": ("htr", "miss"), "uk": ("hdc", "sc", "sk")}[terms]
        assert not any(f" {word} =" in line for word in foreign)
        assert facts(first.report)


def test_some_of_the_sizes_have_their_own_numbers_everywhere() -> None:
    path = next(p for p in DESIGNS if p.stem == "sea-lavender-blanket")
    made = grade(read(Source.of(path.read_text(encoding="utf-8"))), None, sizes=["pram", "throw"])
    text = write(made.document, None, terms="us")
    assert "Finished size: 74 (124) x 94 (154) cm" in text
    assert "Joined squares (make 62 (179))" in text
    assert "(536 (888) sc)" in text
