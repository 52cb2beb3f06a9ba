"""The beanie in ten sizes: her own size gives her own numbers, and every size works."""

from __future__ import annotations

from pathlib import Path

import pytest

from loopwright.grading import Graded, grade, parse_gauge, written
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

DESIGN = Path(__file__).parents[2] / "designs" / "samphire-beanie.txt"


def _graded(gauge: str | None = None, sizes: tuple[str, ...] | None = None) -> Graded:
    document = read(Source.of(DESIGN.read_text(encoding="utf-8"), DESIGN.name))
    return grade(document, work, parse_gauge(gauge) if gauge else None, sizes)


def test_her_own_size_and_gauge_give_her_own_numbers() -> None:
    child = _graded(sizes=("child",)).sizes[0].blanks
    # as worked: ten crown rounds, the last of them to 80 stitches, rounds 11-22, four rounds of band
    assert child == {"crown rounds": 9, "body sts": 80, "body rounds": 12, "band rounds": 4}


def test_ten_sizes_are_worked_to_the_last_row() -> None:
    graded = _graded()
    assert graded.report is not None
    assert len(graded.sizes) == 10
    assert [r.label for r in graded.report.rows if not r.read or r.agrees is False] == []
    assert graded.findings == ()


def test_half_the_gauge_halves_the_stitches() -> None:
    fine, coarse = _graded("20 hdc and 16 rnds = 10 cm"), _graded("10 hdc and 8 rnds = 10 cm")
    for a, b in zip(fine.values["body sts"], coarse.values["body sts"], strict=True):
        assert abs(a / 2 - b) <= 4


def test_a_size_alone_reads_clean() -> None:
    graded = _graded(sizes=("newborn",))
    text = written(graded.document, graded.values, 0)
    assert "{" not in text
    assert "Size: newborn" in text
    assert "Rnds 4-5: Continue as established" in text


@pytest.mark.parametrize("gauge", ["17 hdc and 13 rnds = 10 cm", "14 hdc and 10 rnds = 4 in", "20 hdc and 12 rnds = 10 cm", "12 hdc and 13 rnds = 10 cm"])
def test_the_round_fits_at_any_gauge_and_the_crown_gives_way(gauge: str) -> None:
    graded = _graded(gauge)
    assert graded.report is not None
    assert [r.label for r in graded.report.rows if not r.read or r.agrees is False] == []
    for size in graded.sizes:
        body = next(n for n in size.numbers if n.blank == "body sts")
        assert body.error_mm is not None
        assert body.step_mm is not None
        assert abs(body.error_mm) <= body.step_mm / 2 + 1e-6
        assert 8 * size.blanks["crown rounds"] <= body.value
