"""Orders that alter the rows they name, written out from the tree alone: what is read back is the same order."""

from __future__ import annotations

import pytest

from loopwright.model.tree import Num, RowOrder, Swap
from loopwright.notation import read
from loopwright.notation.orders import order as read_order
from loopwright.source import Source
from loopwright.terms import dialect
from loopwright.wording import voice_for
from loopwright.wording.orders import order as said

ORDERS = [
    RowOrder("same-as", (3,), grow=1),
    RowOrder("same-as", (3,), grow=-1),
    RowOrder("same-as", (3,), untold=True),
    *(RowOrder("same-as", (3,), swap=swap) for swap in (
        Swap("dc", 5, 7), Swap("dc", 5, 7, "shell"), Swap("dc", 0, 7, "shell"), Swap("ch", 4, 5), Swap("ch", 0, 5), Swap("times", 3, 5), Swap("any", 3, 5),
        Swap("side", 0, 4), Swap("dc", 0, 0, other="sc"), Swap("anywhere", 0, 0, "sc", "dc"),
    )),
    RowOrder("continue", delta=Num((2,)), alternate="other"),
    RowOrder("continue", delta=Num((2,)), alternate="even"),
    RowOrder("continue", delta=Num((2,)), alternate="odd"),
]


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("told", ORDERS, ids=str)
def test_what_is_written_reads_as_the_same(told: RowOrder, terms: str):
    words = said(voice_for(read(Source.of("Ch 10.\n"), terms), terms), told, None, "around")
    again = read_order(words, 1, dialect(terms))
    assert again is not None
    parts = ("what", "rows", "delta", "alternate", "grow", "swap", "untold")
    assert [getattr(again, part) for part in parts] == [getattr(told, part) for part in parts], words
