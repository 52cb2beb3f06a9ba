"""One version out of a text: read, graded, worked and measured."""

from __future__ import annotations

from loopwright.findings.registry import severity
from loopwright.publishing.changes import Changes, GaugeFact, Worked, compare, version_of
from loopwright.source import Source
from loopwright.workshop.measure import Measured, Wanted, measure_source


def worked(source: Source, terms: str | None = None) -> Worked:
    """A text as a version. Never raises; what is wrong with it is counted in `errors`."""
    return of_measured(measure_source(source, Wanted(terms=terms)))


def of_measured(measured: Measured) -> Worked:
    """A version out of what was measured already."""
    found = measured.gauge.sizes
    gauge = None if found is None else GaugeFact(found.kind, found.width_mm, found.row_mm, found.guessed)
    return Worked(
        measured.document, measured.graded.report, measured.sizes, gauge, measured.cautions, version_of(measured.document),
        sum(severity(f) == "error" for f in measured.findings),
    )


def compare_sources(old: Source, new: Source, terms: str | None = None) -> Changes:
    """What changed between two texts. Never raises."""
    return compare(worked(old, terms), worked(new, terms))
