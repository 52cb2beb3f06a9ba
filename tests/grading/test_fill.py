"""Blanks out, numbers in: in the tree, and in the words."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from loopwright.grading import fill, pick, written
from loopwright.grading.structure import blanks_in
from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

TEXT = """Tern Ring
Sizes: small, medium, large
Terms: US
Turning chain: ch 1 does not count as a st

Ring
Ch {sts}, join to form a ring.
Rnd 1: Ch 1, sc in each ch around; join. ({sts} sc)
Rnds 2-{rounds}: Ch 1, sc in each st around; join. ({sts} sc)
Work even for {more} rnds. ({sts} sc)
Next rnd: Ch 1, (sc2tog, sc in each of next {side} sts) {times} times, sc in each st to end; join.
Strip
Ch {sts} + 1.
Row 1: Sc in 2nd ch from hook and in each ch across. ({sts} sc)
"""
VALUES = {"sts": (12, 16, 16), "rounds": (1, 2, 4), "more": (0, 1, 2), "side": (2, 2, 2), "times": (1, 2, 3)}


def document() -> Document:
    return read(Source.of(TEXT))


def counts(report: Report, size: int) -> list[int]:
    return [c for r in report.rows if (c := r.counts[size]) is not None]


def test_every_size_works_its_own_rows() -> None:
    filled = fill(document(), VALUES)
    assert not list(blanks_in(filled.items))
    report = work(filled)
    assert counts(report, 0) == [12, 12, 11, 13, 12]
    assert counts(report, 1) == [16, 16, 16, 16, 14, 17, 16]
    assert counts(report, 2) == [16, 16, 16, 16, 16, 16, 16, 13, 17, 16]
    assert [r.label for r in report.rows if not r.read or r.agrees is False] == []


def test_the_words_of_all_sizes() -> None:
    text = written(fill(document(), VALUES), VALUES)
    assert "Rnds 2-– (2, 4): Ch 1" in text
    assert "Ch 12 (16, 16), join" in text
    assert "Ch 13 (17, 17)." in text
    assert "each of next 2 sts) 1 (2, 3) times" in text


def test_the_words_of_one_size() -> None:
    filled = fill(document(), VALUES)
    small, medium = written(filled, VALUES, 0), written(filled, VALUES, 1)
    assert "Rnds 2" not in small
    assert "Work even" not in small
    assert "sts) once," in small
    assert "Rnd 2: Ch 1" in medium
    assert "Work even for 1 rnd." in medium
    for i in range(3):
        assert counts(work(read(Source.of(written(filled, VALUES, i)))), 0) == counts(work(filled), i)


def test_unknown_blanks_stay_and_lists_must_be_whole() -> None:
    some = fill(document(), {"sts": (12, 16, 16)})
    assert {n.blank for n in blanks_in(some.items)} == {"rounds", "more", "side", "times"}
    assert fill(document(), {}) == document()
    with pytest.raises(ValueError, match="2 numbers for 3 sizes"):
        fill(document(), {"sts": (12, 16)})


def test_some_sizes_out_of_all() -> None:
    filled = fill(document(), VALUES)
    report = work(filled)
    two = pick(filled, [2, 0])
    assert two.sizes == ("large", "small")
    assert [counts(work(two), i) for i in range(2)] == [counts(report, 2), counts(report, 0)]


@given(st.integers(4, 40), st.integers(1, 6), st.integers(0, 5))
@settings(max_examples=40, deadline=None)
def test_one_size_or_three_alike(sts: int, rounds: int, more: int) -> None:
    values = {"sts": (sts,) * 3, "rounds": (rounds,) * 3, "more": (more,) * 3, "side": (1,) * 3, "times": (1,) * 3}
    report = work(fill(document(), values))
    assert counts(report, 0) == counts(report, 1) == counts(report, 2)
    assert counts(report, 0)[1 : 1 + rounds + more] == [sts] * (rounds + more)
