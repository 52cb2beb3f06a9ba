"""The designs that come with the product: complete headings, every blank explained, and the plain ones right to the last row."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from loopwright.model.tree import Document, FitLine
from loopwright.notation import read, write
from loopwright.source import Source
from loopwright.working import work

DESIGNS = Path(__file__).parents[2] / "designs"
FILES = sorted(DESIGNS.glob("*.txt"))
WORKED_WITHOUT_BLANKS = ("samphire-as-worked", "curlew-toy")
NEED_A_CAUTION = ("avocet-bonnet", "curlew-toy", "dunlin-booties", "plover-cardigan", "samphire-beanie", "sandpiper-mitts", "tideline-blanket")


def _read(path: Path) -> Document:
    return read(Source.of(path.read_text(encoding="utf-8"), path.name))


def _ids(path: Path) -> str:
    return path.stem


def test_thirteen_kinds_and_the_beanie_as_it_was_worked() -> None:
    assert len(FILES) == 14
    told = [f.stem for f in FILES if "\nTerms: UK\n" in f.read_text(encoding="utf-8")]
    assert len(told) >= 3


@pytest.mark.parametrize("path", FILES, ids=_ids)
def test_the_text_comes_back_as_it_was(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert write(_read(path)) == text


@pytest.mark.parametrize("path", FILES, ids=_ids)
def test_the_heading_is_complete(path: Path) -> None:
    head = path.read_text(encoding="utf-8").split("\n\n")[1]
    names = {line.partition(":")[0] for line in head.splitlines()}
    assert {"Terms", "Hook", "Yarn", "Turning chain", "Abbreviations"} <= names
    assert names & {"Size", "Sizes"}
    assert names & {"Gauge", "Tension"}


@pytest.mark.parametrize("path", FILES, ids=_ids)
def test_every_blank_has_its_sentence_and_every_sentence_its_blank(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    told = [i.blank for i in _read(path).items if isinstance(i, FitLine)]
    assert len(told) == len(set(told))
    rows = text.split("\nFit\n")[-1].split("\n\n", 1)[-1] if told else text
    used = set(re.findall(r"\{([^{}]+)\}", rows))
    sentences = set(re.findall(r"\{([^{}]+)\}", text)) - used
    assert used <= set(told)
    assert set(told) == used | sentences


@pytest.mark.parametrize("name", NEED_A_CAUTION)
def test_things_for_small_children_carry_a_caution(name: str) -> None:
    notes = [line for line in (DESIGNS / f"{name}.txt").read_text(encoding="utf-8").splitlines() if line.startswith("Notes:")]
    assert any(re.search(r"baby|babies|child|under three", line) for line in notes)


@pytest.mark.parametrize("name", WORKED_WITHOUT_BLANKS)
def test_a_design_without_blanks_is_right_to_the_last_row(name: str) -> None:
    report = work(_read(DESIGNS / f"{name}.txt"))
    assert [r.label for r in report.rows if not r.read or r.agrees is False] == []
    assert [f.code for f in report.findings] == []
