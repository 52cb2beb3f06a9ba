"""Copied rounds are the same as rounds worked one by one; arithmetic on many items at once is plain arithmetic."""

from __future__ import annotations

from array import array
from dataclasses import fields

import pytest
from hypothesis import given
from hypothesis import strategies as st

from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import groups, tiles, work
from loopwright.working.lanes import add, mask_of, mirrored, shifted
from loopwright.working.slots import tiled

SHELLS = """Ch {width}.
Row 1: Sc in 2nd ch from hook and in each ch across, turn.
Row 2: Ch 3 (counts as dc), sk next st, *(2 dc, ch 1, 2 dc) in next st, sk 2 sts; rep from * to last 2 sts, dc in last st, turn.
Row 3: Ch 3 (counts as dc), *(2 dc, ch 1, 2 dc) in next ch-1 sp; rep from * across, dc in top of ch-3, turn.
Row 4: Ch 1, *sc in each of next 3 sts, (sc, ch 2, sc) in next st, sk next st; rep from * across, turn.
Row 5: Ch 1, *(sc in next st, ch 1) twice, sk 1 st; rep from * to last 3 sts, sc2tog, sc in last st.
"""


def same(a: Fabric, b: Fabric) -> bool:
    return all(getattr(a, f.name) == getattr(b, f.name) for f in fields(Fabric))


MIXED = """Rnd 1: {width} sc in magic ring, join.
Rnd 2: Ch 1, *dc in next st, 2 hdc in next st; rep from * around, join.
Rnd 3: Ch 1, *sc in each of next 4 sts, ch 1, 2 dc in next st, sk next st; rep from * around, join.
Rnd 4: Ch 1, *dc in next st, 2 hdc in next st; rep from * around, join.
Rnd 5: Ch 3 (counts as dc), (ch 2, dc) in each st around, join.
Rnd 6: Ch 1, *(hdc, ch 1, dc) in next st, sc in next st; rep from * around, join.
Rnd 7: Ch 1, *sc in next dc, 2 sc in next st; rep from * around, join.
"""


@pytest.mark.parametrize("width", [12, 42, 93, 241, 602, 903])
@pytest.mark.parametrize("text", [SHELLS, MIXED])
def test_copied_rounds_make_the_same_fabric(text: str, width: int, monkeypatch: pytest.MonkeyPatch) -> None:
    document = read(Source.of(text.format(width=width)))
    copied = work(document)
    monkeypatch.setattr(tiles, "FIRST_TRY", 10**9)
    monkeypatch.setattr(groups, "copied", lambda *_: False)
    worked = work(document)
    assert copied.rows == worked.rows
    a, b = copied.fabrics[0], worked.fabrics[0]
    assert a is not None
    assert b is not None
    assert same(a, b)


def test_a_row_of_thousands_of_stitches_is_worked() -> None:
    report = work(read(Source.of("Ch 9001.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (9000 sc)\n"
                                 "Row 2: Ch 1, *sc in each of next 8 sts, sc2tog; rep from * across, turn. (8100 sts)\n")))
    assert [r.counts for r in report.rows] == [(9001,), (9000,), (8100,)]
    assert not report.findings


def test_so_many_stitches_told_are_so_many_made() -> None:
    report = work(read(Source.of("Ch 7001.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (7000 sc)\n"
                                 "Row 2: Ch 1, sc in each of next 6000 sts, leave last 1000 sts unworked, turn. (6000 sc)\n"
                                 "Row 3: Ch 1, 5 sc in next st, ch 5000, sk 5000 sts, sc in each st across.\n")))
    assert [r.counts for r in report.rows] == [(7001,), (7000,), (6000,), (1004,)]


items = st.lists(st.integers(0, 10**6), max_size=80)


@given(items, st.integers(0, 10**6))
def test_adding_to_many(values: list[int], step: int) -> None:
    assert list(shifted(array("i", values), step)) == [v + step for v in values]


@given(st.lists(st.integers(-3, 10**6), max_size=80), st.integers(0, 10**6))
def test_items_below_zero_stay(values: list[int], step: int) -> None:
    assert list(shifted(array("i", values), step)) == [v + step if v >= 0 else v for v in values]


@given(st.lists(st.tuples(st.integers(0, 10**6), st.booleans()), max_size=80), st.integers(0, 10**6))
def test_adding_where_a_mask_says_so(pairs: list[tuple[int, bool]], step: int) -> None:
    values, flags = [v for v, _ in pairs], bytes(f for _, f in pairs)
    assert list(add(array("i", values), step, mask_of(flags))) == [v + step * f for v, f in pairs]


@given(st.lists(st.tuples(st.integers(0, 1000), st.booleans()), min_size=1, max_size=80))
def test_mirroring_where_a_mask_says_so(pairs: list[tuple[int, bool]]) -> None:
    values, flags = [v if f else -1 for v, f in pairs], bytes(f for _, f in pairs)
    assert list(mirrored(array("i", values), 1000, mask_of(flags))) == [1000 - v if f else -1 for v, f in pairs]


@given(st.lists(st.integers(0, 1000), min_size=1, max_size=9), st.integers(1, 40), st.integers(0, 50))
def test_tiling_is_adding_again_and_again(values: list[int], times: int, step: int) -> None:
    assert list(tiled(array("i", values), times, step)) == [v + step * (k + 1) for k in range(times) for v in values]
