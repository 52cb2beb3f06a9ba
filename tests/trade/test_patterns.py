"""Stitch patterns: they load, are found by name, and are written out for so many repeats."""

import pytest

from loopwright.trade import patterns


def test_multiples():
    shell = patterns.Multiple(6, 1)
    assert (str(shell), shell.at(3), shell.repeats_in(19), shell.repeats_in(20), shell.repeats_in(1)) == ("6n + 1", 19, 3, None, None)
    assert str(patterns.Multiple(1, 0)) == "n"
    assert str(patterns.Multiple(2, -1)) == "2n - 1"


@pytest.mark.parametrize(("said", "key"), [("shell", "shell"), ("Griddle Stitch", "lemon-peel"), ("v st", "v-stitch"), ("linen stitch", "moss"), ("ripple 12", "ripple-12")])
def test_patterns_are_found_by_any_name(said, key):
    found = patterns.pattern(said)
    assert found is not None
    assert found.key == key


def test_no_name_belongs_to_two_patterns():
    names = [name.lower() for p in patterns.patterns() for name in {p.key.replace("-", " "), p.name, *p.also}]
    assert len(names) == len(set(names))
    assert patterns.pattern("seaweed") is None


def test_a_pattern_is_written_with_and_without_counts():
    rib = patterns.pattern("rib")
    assert rib is not None
    assert rib.written(5) == (
        "Ch 6.\nRow 1: Sc in 2nd ch from hook and in each ch across. (5 sts)\n"
        "Row 2: Ch 1, turn, sc in back loop only of each st across. (5 sts)"
    )  # fmt: skip
    assert "(" not in rib.written(5, counts=False)
