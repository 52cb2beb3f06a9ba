"""Starts that no words tell: found by trying, within bounds."""

from __future__ import annotations

import pytest

from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import beginnings, rows, work

LONG = "*2 dc in next st, turn; rep from * around, 19999 shells across, 3 sc in next 3 sts.\n"


def tried(text: str, monkeypatch: pytest.MonkeyPatch) -> int:
    """On how many starts the rows of a text are tried."""
    original, numbers = rows.work_row, []

    def counted(*args: object, **named: object) -> object:
        numbers.append(args)
        return original(*args, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(beginnings, "work_row", counted)
    work(read(Source.of(text)))
    return len(numbers)


def test_a_row_that_makes_very_much_is_tried_on_few_starts(monkeypatch: pytest.MonkeyPatch) -> None:
    assert 0 < tried(LONG, monkeypatch) < 12


def test_a_row_that_makes_little_is_tried_on_all(monkeypatch: pytest.MonkeyPatch) -> None:
    assert tried("Sc in next 2 sts, *sk 1 st, 5 dc in next st, sk 1 st, sc in next st; rep from * to last st, sc in last st.\n", monkeypatch) > 5


def test_the_start_of_such_a_row_is_a_family() -> None:
    report = work(read(Source.of("Row 7: *Sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st; rep from * across.\n")))
    assert "any multiple of 6" in str([f.args for f in report.findings])
