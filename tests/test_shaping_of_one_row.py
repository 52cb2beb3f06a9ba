"""Shaping told for a round or row by its number alone: so many more or fewer, spread over it."""

import pytest

from tests.line_by_line import first_counts


@pytest.mark.parametrize(
    ("words", "made"),
    [
        ("inc 6 each round.", 24),
        ("increase 6 sts in this round.", 24),
        ("inc 6 per round.", 24),
        ("dec 6 in this round.", 12),
        ("dec 3 sts every round.", 15),
        ("dec 1 st each round.", 17),
        ("Sc in each st around, inc 6 sts each round.", 24),
    ],
)
def test_so_many_more_or_fewer_in_a_round(words: str, made: int) -> None:
    assert first_counts(f"Rnd 1: 18 sc in magic ring. (18 sc)\nRnd 2: {words}") == [18, made]


def test_rounds_that_grow_by_as_many_each() -> None:
    assert first_counts("Rnd 1: 12 sc in magic ring.\nRnds 2-5: inc 6 each round.\nRnd 6: dec 4 in this round.") == [12, 18, 24, 30, 36, 32]

