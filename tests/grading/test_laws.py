"""Laws over every design: her own size gives her own numbers, what is written reads back as what was graded, gauge scales counts."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from loopwright.findings.registry import severity
from loopwright.grading import Graded, grade, parse_gauge, written
from loopwright.model.report import Report
from loopwright.model.tree import FitLine
from loopwright.notation import read
from loopwright.source import Source
from loopwright.wording import write
from loopwright.working import work

DESIGNS = [p for p in sorted((Path(__file__).parents[2] / "designs").glob("*.txt")) if "{" in p.read_text(encoding="utf-8")]


@cache
def graded(path: Path, gauge: str | None = None) -> Graded:
    document = read(Source.of(path.read_text(encoding="utf-8"), path.name))
    return grade(document, work, parse_gauge(gauge) if gauge else None)


def counts(report: Report, size: int) -> list[tuple[str, int]]:
    """Labels and counts of the rows that were read."""
    return [(r.section or "", c) for r in report.rows if (c := r.counts[size]) is not None]


def ids(path: Path) -> str:
    return path.stem


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_every_blank_has_a_legal_number_in_every_size(path: Path) -> None:
    result = graded(path)
    fits = [i.blank for i in result.design.items if isinstance(i, FitLine)]
    assert list(result.values) == fits
    assert [f.code for f in result.findings if severity(f) == "error"] == []
    for size in result.sizes:
        for n in size.numbers:
            assert n.value >= 0
            assert n.reason
            if n.error_mm is not None and n.step_mm is not None:
                # no design is held away from its targets: half a step is the most that rounding can cost
                assert abs(n.error_mm) <= n.step_mm / 2 + 1e-6, (size.size, n.blank)


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_a_size_alone_reads_back_as_it_was_graded(path: Path) -> None:
    result = graded(path)
    assert result.report is not None
    for i in range(len(result.sizes)):
        alone = work(read(Source.of(written(result.document, result.values, i))))
        assert counts(alone, 0) == counts(result.report, i)
        assert [r.label for r in alone.rows if not r.read or r.agrees is False] == []


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_all_sizes_in_one_text_read_back_as_they_were_graded(path: Path) -> None:
    result = graded(path)
    assert result.report is not None
    together = work(read(Source.of(written(result.document, result.values))))
    assert together.sizes == tuple(s.size for s in result.sizes)
    for i in range(len(result.sizes)):
        assert counts(together, i) == counts(result.report, i)


@pytest.mark.parametrize("terms", ["us", "uk"])
@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_the_wording_of_every_size_reads_back_as_it_was_graded(path: Path, terms: str) -> None:
    result = graded(path)
    assert result.report is not None
    together = work(read(Source.of(write(result.document, result.report, terms=terms))))
    for i in range(len(result.sizes)):
        alone = work(read(Source.of(write(result.document, result.report, terms=terms, size=i))))
        assert counts(alone, 0) == counts(together, i) == counts(result.report, i)


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_every_row_of_every_size_is_read_and_no_printed_count_disagrees(path: Path) -> None:
    report = graded(path).report
    assert report is not None
    assert [(r.section, r.label) for r in report.rows if not r.read or r.agrees is False] == []


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_no_blank_is_left_in_the_text(path: Path) -> None:
    result = graded(path)
    assert "{" not in written(result.document, result.values)


@pytest.mark.parametrize("path", DESIGNS, ids=ids)
def test_twice_as_fine_takes_twice_as_many(path: Path) -> None:
    own = graded(path).gauge
    assert own is not None
    assert own.stitch_mm is not None
    assert own.row_mm is not None
    fine = graded(path, f"{200 / own.stitch_mm} sts and {200 / own.row_mm} rows = 10 cm")
    for a, b in zip(graded(path).sizes, fine.sizes, strict=True):
        for one, two in zip(a.numbers, b.numbers, strict=True):
            if one.target_mm is not None and two.target_mm is not None:
                assert one.target_mm == two.target_mm
                # each is within half a step of the target, so twice the one is within a step and a half of the other
                assert abs(2 * one.wanted - two.wanted) <= 6 + one.multiple, (one.blank, one.value, two.value)


def test_as_it_was_worked() -> None:
    """The hat as it came off the hook, in one size: the design in that size at that gauge says the same."""
    folder = DESIGNS[0].parent
    hers = work(read(Source.of((folder / "samphire-as-worked.txt").read_text(encoding="utf-8"))))
    ours = graded(folder / "samphire-beanie.txt")
    assert ours.report is not None
    child = [s.size for s in ours.sizes].index("child")
    assert [c for _, c in counts(ours.report, child)] == [c for _, c in counts(hers, 0)]
