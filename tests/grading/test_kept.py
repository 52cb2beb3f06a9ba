"""Numbers that a Fit sentence gives for some sizes itself."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.findings.registry import message
from loopwright.grading import Graded, grade
from loopwright.grading.kept import kept_in, with_kept
from loopwright.grading.sentence import parse_fit
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HEAD = "Tern Cuff\nSizes: small, medium, large\nTerms: US\nGauge: 20 sc and 22 rows = 10 cm\n"
ROWS = "\nCuff\nCh {a}, join to form a ring.\nRnd 1: Ch 1, sc in each ch around. ({a} sc)\nRnds 2-{b}: Ch 1, sc in each st around. ({a} sc)\n"
A = "{a}: sts to measure 15 (18, 21) cm, multiple of 4"
B = "{b}: rnds to measure 6 cm"


def graded(*fit: str) -> Graded:
    return grade(read(Source.of(HEAD + "\nFit\n" + "\n".join(fit) + "\n" + ROWS)), work)


def test_a_kept_number_is_taken_and_the_others_stay() -> None:
    assert graded(A, B).values["a"] == (32, 36, 44)
    kept = graded(f"{A}, in medium: 40", B)
    assert kept.values["a"] == (32, 40, 44)
    number = kept.sizes[1].numbers[0]
    assert [x.numbers[0].kept for x in kept.sizes] == [False, True, False]
    assert [n.value for n in number.neighbours] == [36, 44]
    assert round(number.error_mm or 0.0) == 20
    assert "40 is given for this size" in number.reason
    assert kept.findings == ()
    assert kept.report is not None
    assert [r.counts for r in kept.report.rows][1] == (32, 40, 44)


def test_a_kept_number_moves_no_other_size() -> None:
    assert graded(f"{A}, in medium: 60", B).values["a"] == (32, 60, 44)


def test_a_kept_number_that_follows_from_others() -> None:
    links = ("{a}: twice {c}", "{c}: sts to measure 7 cm", B)
    assert graded(*links).values["a"] == (28, 28, 28)
    assert graded("{a}: twice {c}, in large: 30", *links[1:]).values["a"] == (28, 28, 30)


@pytest.mark.parametrize(("fit", "said"), [
    (f"{A}, in medium: 41", "41 is given for it, which is not a multiple of 4"), (f"{A}, at most 40, in large: 44", "44 is given for it"),
    ("{a}: twice {c}, multiple of 4, in large: 30", "30 is given for it, which is not a multiple of 4"),
])
def test_a_kept_number_keeps_the_rules(fit: str, said: str) -> None:
    more = ("{c}: sts to measure 7 cm",) if "{c}" in fit else ()
    found = [f for f in graded(fit, *more, B).findings if f.code == "G030"]
    assert len(found) == 1
    assert said in message(found[0])


def test_a_size_that_is_none_is_told() -> None:
    found = graded(f"{A}, in huge: 40", B)
    assert [f.code for f in found.findings] == ["G018"]
    assert found.values["a"] == (32, 36, 44)


@pytest.mark.parametrize(("sentence", "kept"), [
    ("sts to measure 40 cm, multiple of 4, in child: 84", (("child", 84),)), ("sts to measure 40 cm in size 3 months: 60 sts", (("3 months", 60),)),
    ("sts to measure 40 cm, in US 8: 60, and in adult  large: 72.", (("us 8", 60), ("adult large", 72))),
    ("8 times {back rounds}, in M/L: 40", (("m/l", 40),)), ("sts to measure 40 cm in width", ()), ("sts to measure 40 cm, same parity in all sizes", ()),
])
def test_reading(sentence: str, kept: tuple[tuple[str, int], ...]) -> None:
    assert parse_fit("a", sentence).kept == kept
    assert kept_in(sentence)[1] == kept


def test_writing_puts_in_changes_and_takes_out() -> None:
    once = with_kept("sts to measure 40 cm, multiple of 4.", "Child", 84)
    assert once == "sts to measure 40 cm, multiple of 4, in Child: 84."
    assert with_kept(once, "child", 88) == "sts to measure 40 cm, multiple of 4, in child: 88."
    assert with_kept(once, "child", None) == "sts to measure 40 cm, multiple of 4."


names = st.sampled_from(("child", "2 years", "adult large", "S", "M/L", "0-3 months", "38 in"))


@given(st.dictionaries(names, st.integers(0, 999), max_size=4), names)
def test_what_is_written_is_read_back(kept: dict[str, int], gone: str) -> None:
    sentence = "sts to go around head circumference less 3 cm, multiple of 4"
    said = sentence
    for size, n in kept.items():
        said = with_kept(said, size, n)
    assert dict(parse_fit("a", said).kept) == {k.lower(): n for k, n in kept.items()}
    assert dict(kept_in(with_kept(said, gone, None))[1]) == {k.lower(): n for k, n in kept.items() if k != gone}
