"""Labels of the rows of a range that is longer in some sizes than in others."""

from __future__ import annotations

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

HEAD = "Sizes: small, medium, large\n\nRnd 1: 6 sc in magic ring.\nRnd 2: 2 sc in each st. (12)\n"


def labels(text: str) -> list[tuple[str, tuple[int | None, ...]]]:
    return [(r.label, r.counts) for r in work(read(Source.of(HEAD + text))).rows[2:]]


def test_the_last_row_of_a_range_has_the_numbers_of_all_sizes():
    assert labels("Rnds 3-4 (5, 6): sc in each st.\n") == [
        ("Rnd 3", (12, 12, 12)), ("Rnd 4", (None, 12, 12)), ("Rnd 5", (None, None, 12)), ("Rnd 4-6", (12, 12, 12)),
    ]


def test_a_row_of_one_number_keeps_its_label():
    assert labels("Rnds 3-5: sc in each st.\nNext rnd: sc in each st.\n") == [(name, (12, 12, 12)) for name in ("Rnd 3", "Rnd 4", "Rnd 5", "Next rnd")]
