"""The shipped designs against themselves: nothing changed, other spaces, other terms, the design and the pattern written from it."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from loopwright.publishing.changes import Worked, compare
from loopwright.source import Source
from loopwright.workshop.compare.versions import worked
from loopwright.workshop.grade import grade_design

FOLDER = Path(__file__).parents[2] / "designs"
DESIGNS = sorted(p.stem for p in FOLDER.glob("*.txt"))


@cache
def text_of(name: str) -> str:
    return (FOLDER / f"{name}.txt").read_text(encoding="utf-8")


@cache
def design(name: str) -> Worked:
    return worked(Source.of(text_of(name)))


@cache
def written(name: str, terms: str) -> Worked:
    return worked(Source.of(grade_design(Source.of(text_of(name)), terms=terms).text))


@pytest.mark.parametrize("name", DESIGNS)
def test_a_design_and_itself(name):
    changes = compare(design(name), worked(Source.of(text_of(name))))
    assert changes.identical
    assert changes.none


@pytest.mark.parametrize("name", DESIGNS)
def test_lines_and_spaces_laid_out_anew(name):
    text = re.sub(r"\. (?=[A-Z])", ".  ", text_of(name)).replace("\n\n", "\n\n\n").replace("'", "’")
    changes = compare(design(name), worked(Source.of(text)))
    assert changes.none, [(c.what, c.label, c.old_text, c.new_text) for c in changes.changes]
    assert not changes.identical


@pytest.mark.parametrize("name", DESIGNS)
def test_other_terms_are_words_alone(name):
    us, uk = written(name, "us"), written(name, "uk")
    for changes in (compare(us, uk), compare(uk, us)):
        assert changes.wording_only, [(c.what, c.section, c.label, c.was, c.now) for c in changes.changes]
        assert any(c.heading == "terms" for c in changes.changes)


@pytest.mark.parametrize("name", DESIGNS)
def test_a_design_and_the_pattern_written_from_it(name):
    changes = compare(design(name), written(name, "us"))
    assert [c for c in changes.changes if c.severity != "wording"] == []
    assert changes.lengths == ()
    assert changes.yarn == ()


def test_the_plain_hat_and_the_design_made_of_it_make_the_same_in_the_size_worked():
    changes = compare(design("samphire-as-worked"), design("samphire-beanie"))
    assert changes.sizes == ("child",)
    assert not [c for c in changes.changes if c.severity == "count"]
    assert not [c for c in changes.changes if c.what not in ("heading", "caution", "sizes", "wording")]
