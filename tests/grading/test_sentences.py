"""Fit sentences: those of the designs, the ways people vary them, and those that cannot be read."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.grading.fit import Fit
from loopwright.grading.sentence import NotUnderstoodError, parse_fit
from loopwright.model.tree import FitLine
from loopwright.notation import read
from loopwright.source import Source

DESIGNS = sorted((Path(__file__).parents[2] / "designs").glob("*.txt"))


def said(fit: Fit) -> str:
    """A sum in short: "1/3 head circumference - 30 mm"."""
    words = []
    for factor, atom in fit.target.terms:
        what = {"one": "", "length": f"({', '.join(f'{x:g}' for x in atom.lengths_mm)})", "blank": f"{{{atom.name}}}", "measure": atom.name}[atom.kind]
        words.append(f"{factor} {what}".strip())
    return " + ".join(words)


@pytest.mark.parametrize("path", DESIGNS, ids=lambda p: p.stem)
def test_every_sentence_of_the_designs_is_understood(path: Path) -> None:
    for item in read(Source.of(path.read_text(encoding="utf-8"), path.name)).items:
        if isinstance(item, FitLine):
            parse_fit(item.blank, item.sentence)


@pytest.mark.parametrize(("sentence", "unit", "way", "total"), [
    ("rnds until crown measures a third of head circumference less 1 cm across", "row", "until", "1/3 head circumference + -1 (10)"),
    ("sts to go around head circumference less 3 cm, multiple of 4", "st", "around", "1 head circumference + -1 (30)"),
    ("stitches to go round the head circumference minus 3cm", "st", "around", "1 head circumference + -1 (30)"),
    ("sts to fit around chest plus 6 cm of ease", "st", "around", "1 chest + 1 (60)"),
    ("sts to go around head circumference less 10%", "st", "around", "9/10 head circumference"),
    ("sts to go around head circumference less 10 % ease, multiple of 4", "st", "around", "9/10 head circumference"),
    ("sts to go around 90% of head circumference", "st", "around", "9/10 head circumference"),
    ("sts to go around chest plus 5 percent plus 2 cm", "st", "around", "21/20 chest + 1 (20)"),
    ("as many rows as needed to measure 15 (17, 19, 22) cm, multiple of 2", "row", "measure", "1 (150, 170, 190, 220)"),
    ("ch to measure 4 cm", "ch", "measure", "1 (40)"),
    ("chains to measure 8 in", "ch", "measure", "1 (203.2)"),
    ('sts to measure 5½" wide, even', "st", "measure", "1 (139.7)"),
    ("half of {body sts} less {back neck} less twice {yoke rows}", "st", "number", "1/2 {body sts} + -1 {back neck} + -2 {yoke rows}"),
    ("{front sts} less 2, divided by 3", "st", "number", "1/3 {front sts} + -2/3"),
    ("four fifths of {back sts}, multiple of 3 plus 2", "st", "number", "4/5 {back sts}"),
    ("3/4 of {back sts}", "st", "number", "3/4 {back sts}"),
    ("same as {body sts}", "st", "number", "1 {body sts}"),
    ("the same number as {body sts} plus 1", "st", "number", "1 {body sts} + 1"),
    ("8 times {back rounds}", "st", "number", "8 {back rounds}"),
    ("eight times {back rounds} plus two", "st", "number", "8 {back rounds} + 2"),
    ("repeats to measure 30 cm", "repeat", "measure", "1 (300)"),
    ("rows until the piece measures armhole depth plus 1.5 cm from the beginning", "row", "until", "1 armhole depth + 1 (15)"),
    ("a quarter of chest less 2 cm", "st", "measure", "1/4 chest + -1 (20)"),
    ("enough sts to go around the head with 3 cm of negative ease", "st", "around", "1 head + -1 (30)"),
    ("sts to go around chest with 5 cm ease, divisible by 4", "st", "around", "1 chest + 1 (50)"),
    ("as many sts as go around the head", "st", "around", "1 head"),
    ("multiple of 4 sts to go around head circumference less 3 cm", "st", "around", "1 head circumference + -1 (30)"),
    ("rnds until crown measures head circumference divided by 3 less 1 cm across", "row", "until", "1/3 head circumference + -1 (10)"),
    ("rounds until hat is as tall as hat height less 4 cm", "row", "until", "1 hat height + -1 (40)"),
    ("the number of sts nearest to 40 cm", "st", "measure", "1 (400)"),
    ("sts to fit the foot circumference less 10 per cent", "st", "around", "9/10 foot circumference"),
    ("ch long enough to go around the neck plus 20 cm", "ch", "around", "1 neck + 1 (200)"),
    ("sts to go around a head of 52 cm", "st", "around", "1 (520)"),
])
def test_what_a_sentence_says(sentence: str, unit: str, way: str, total: str) -> None:
    fit = parse_fit("n sts" if unit == "st" else "n", sentence)
    assert (fit.unit, fit.way, said(fit)) == (unit, way, total)


def test_clauses() -> None:
    fit = parse_fit("n", "sts to measure 40 cm, multiple of 6 plus 2, at least 20, at most {body sts} less 4, rounded up")
    assert (fit.multiple, fit.rest, fit.rounding) == (6, 2, "up")
    assert fit.at_least[0].terms[0][0] == Fraction(20)
    assert fit.at_most[0].blanks() == {"body sts"}
    assert parse_fit("n", "sts to measure 4 cm, odd").rest == 1
    assert parse_fit("n", "sts to measure 4 cm, an even number").multiple == 2
    assert parse_fit("n", "a fifth of {body sts}, divides {body sts}").divides == ("body sts",)
    assert parse_fit("n", "sts to measure 4 cm, multiple of 6 + 1").rest == 1
    across = parse_fit("n", "rnds until crown measures 14 cm across")
    assert (across.across, across.subject) == (True, "crown")
    assert parse_fit("n", "rnds until hat measures 17 cm from the centre").from_centre


@pytest.mark.parametrize("sentence", [
    "", "whatever looks nice, please", "sts to measure", "sts to measure 4 cm, multiple of", "sts to measure 4 cm, multiple of 0", "rows until it is long enough",
    "sts to measure 4 cm, divided by 0", "twice", "half of", "sts to go around head circumference less", "sts to measure 15 (17, 19 cm", "{a} {b}",
])
def test_sentences_that_cannot_be_read(sentence: str) -> None:
    with pytest.raises(NotUnderstoodError):
        parse_fit("n", sentence)


WORDS = "sts rnds rows ch to go around measure until crown measures a third of head circumference less plus 3 cm 15 ( ) , % multiple 4 {a} twice divided by at least even across".split()


@given(st.lists(st.sampled_from(WORDS), max_size=14).map(" ".join) | st.text(max_size=80))
def test_any_sentence_is_read_or_refused(sentence: str) -> None:
    try:
        fit = parse_fit("n", sentence)
    except NotUnderstoodError:
        return
    assert fit.multiple >= 1


def test_every_sentence_in_the_guide_is_understood() -> None:
    guide = (Path(__file__).parents[2] / "docs" / "grading.md").read_text(encoding="utf-8")
    told = [line.split("`")[1] for line in guide.splitlines() if line.startswith("| `")]
    told += [line.split(": ", 1)[1] for line in guide.splitlines() if line.startswith("{")]
    assert len(told) == 25
    rows = [line for line in guide.splitlines() if line.startswith("| `")]
    others = [said for line in rows for said in line.split("`")[3::2] if said.split()[0] in ("sts", "ch", "rows", "rnds")]
    assert len(others) == 3
    told += others
    for sentence in told:
        parse_fit("n", sentence)
