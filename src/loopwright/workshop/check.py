"""Read, work and check one pattern, and lay the result out as the command's JSON."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from loopwright.checks import check
from loopwright.checks.follow_ups import without_follow_ups
from loopwright.checks.mends import with_mends
from loopwright.findings import in_order
from loopwright.findings.render_json import as_json as findings_json
from loopwright.grading import grade
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.measuring.flatness import faults
from loopwright.model.lies import LieFault
from loopwright.model.report import Assumption, Report, RowReport
from loopwright.model.tree import Document, FitLine, HeadLine
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work
from loopwright.workshop import cautions
from loopwright.workshop.left import open_and_left
from loopwright.workshop.original import in_original


def check_text(text: str, name: str = "pattern", terms: str | None = None) -> Report:
    """The report of a pattern given as text."""
    return check_source(Source.of(text, name), terms)


def check_source(source: Source, terms: str | None = None, memo: dict[Any, Any] | None = None) -> Report:
    """The report of a pattern as written, with the findings of the worker and of the rules.

    A `memo` kept between calls makes the next one quicker: lines that stay as they are are not read again, nor worked again.
    """
    return check_document(read(source, terms, memo), memo)


def check_document(document: Document, memo: dict[Any, Any] | None = None) -> Report:
    """The report of a pattern that was read, with the findings of the worker and of the rules.

    A design's blanks are filled first, from its Fit sentences, for every size at its own gauge.
    """
    fits = [i for i in document.items if isinstance(i, FitLine)]
    graded = grade(document, memo=memo) if fits else None
    document = graded.document if graded else document
    stitches = stitch_sizes(document).sizes
    report = cautions.with_cautions(document, work(document, memo), stitches)
    lies = _lies(document, report, stitches)
    found = in_order((*(graded.findings if graded else ()), *with_mends(document, report), *check(document, report, lies)))
    found, _ = open_and_left(document, without_follow_ups(report, found))
    filled = (
        (Assumption(fits[0].span, "the blanks were filled for every size, from the Fit sentences and the gauge"),)
        if graded and graded.values
        else ()
    )
    return in_original(document, replace(report, findings=found, assumptions=(*filled, *report.assumptions)))


def _lies(document: Document, report: Report, stitches: StitchSizes | None) -> tuple[LieFault, ...]:
    """How the fabric lies, in one size: the one that was worked, else the first. Nothing without a gauge that was measured."""
    if stitches is None or stitches.guessed or not report.fabrics:
        return ()
    worked = next((i.value.lower() for i in document.items if isinstance(i, HeadLine) and i.name == "worked in"), "")
    size = next((i for i, name in enumerate(document.sizes) if name.lower() == worked), 0)
    fabric = report.fabrics[size] if size < len(report.fabrics) else None
    return () if fabric is None else faults(fabric, None, stitches)


def as_json(source: Source, report: Report) -> dict[str, Any]:
    """One file's entry: rows, assumptions, findings."""
    return {
        "file": source.name,
        "title": report.title,
        "terms": report.terms,
        "language": report.language,
        "sizes": list(report.sizes),
        "rows": [_row(source, r) for r in report.rows],
        "assumptions": [{"line": source.line_of(a.span.start), "message": a.message} for a in report.assumptions],
        "findings": findings_json(source, report.findings),
        "cautions": cautions.as_json(source, report.cautions or ()),
    }


def _row(source: Source, row: RowReport) -> dict[str, Any]:
    return {
        "section": row.section,
        "label": row.label,
        "line": source.line_of(row.span.start),
        "read": row.read,
        "counts": list(row.counts),
        "with_chains": list(row.with_chains) if row.with_chains else None,
        "confirmed": row.confirmed,
        "made": {k: list(v) for k, v in row.made.items()},
        "printed": list(row.printed) if row.printed else None,
        "agrees": row.agrees,
    }
