"""The demonstration: the hat as it was worked in one size, its reasons, every size at two gauges, each checked, the texts in a folder."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from loopwright.findings.registry import severity
from loopwright.model.report import Report
from loopwright.record import record
from loopwright.source import Source
from loopwright.workshop.check import check_source
from loopwright.workshop.designs import find
from loopwright.workshop.files import make_folder, write_whole
from loopwright.workshop.grade import Sized, grade_design, stitches, tables
from loopwright.workshop.propose import MadeDesign, Wanted, evidence, propose_design

AS_WORKED = "samphire-as-worked"
GAUGES = ("17 hdc and 13 rnds = 10 cm, 4 mm hook", "14 hdc and 11 rnds = 10 cm, 5 mm hook")
TITLES = ("at her own gauge", "at a thicker yarn's gauge")


@record
class Checked:
    """A design graded at one gauge; `reports` are its sizes, each read again from its own text and worked."""

    gauge: str
    sized: Sized
    reports: tuple[Report, ...]

    @property
    def faults(self) -> int:
        """Errors in all sizes together, those of grading with them."""
        found = [*self.sized.findings, *(f for r in self.reports for f in r.findings)]
        return sum(severity(f) == "error" for f in found)


def demo(out: Path) -> Iterator[str]:
    """Runs the demonstration and gives its paragraphs one by one. Raises CannotSave where the folder cannot be written."""
    shipped = find(AS_WORKED)
    if shipped is None:
        raise FileNotFoundError(AS_WORKED)
    source = Source.of(shipped.text, f"{AS_WORKED}.txt")
    report = check_source(source)
    yield _as_worked(report)
    made = propose_design(source, Wanted())
    yield _proposed(made)
    make_folder(out)
    files = [("samphire-beanie.txt", made.text)]
    for title, gauge in zip(TITLES, GAUGES, strict=True):
        checked = graded(Source.of(made.text, "samphire-beanie.txt"), gauge)
        yield _table(title, checked)
        files += _texts(checked, "" if gauge == GAUGES[0] else ", 5 mm hook")
    for name, text in files:
        write_whole(out / name, text)
    yield (
        f"{len(files)} texts are in {out}: the design, all sizes, and each size alone, at both gauges.\n"
        f"Edit a Fit sentence there, then:  loopwright grade {out / 'samphire-beanie.txt'}"
    )


def graded(design: Source, gauge: str) -> Checked:
    """A design in all its sizes at a gauge, each size checked from its own text."""
    sized = grade_design(design, gauge=gauge)
    reports = tuple(check_source(Source.of(text, f"{s.size}.txt")) for s, text in zip(sized.graded.sizes, sized.texts, strict=True))
    return Checked(gauge, sized, reports)


def _as_worked(report: Report) -> str:
    counted = [r for r in report.rows if r.printed]
    agree = sum(r.agrees is True for r in counted)
    made = sum(r.counts[0] or 0 for r in report.rows)
    return (
        f"1. {report.title}: one size, {report.sizes[0]}\n"
        f"   {len(report.rows)} rounds worked stitch by stitch, {made:,} stitches; {agree} of {len(counted)} printed counts agree."
    )


def _proposed(made: MadeDesign) -> str:
    lines = evidence(made).split("\n")
    return "\n".join(["2. Why its numbers are what they are (the first reason goes into the design):", "", *(f"   {x}" for x in lines)])


def _table(title: str, checked: Checked) -> str:
    graded_ = checked.sized.graded
    number = 3 + GAUGES.index(checked.gauge)
    lead = f"{number}. {len(graded_.sizes)} sizes {title}: {checked.gauge} (lengths in cm)"
    return "\n".join([lead, "", tables(graded_), "", _checks(checked)])


def _checks(checked: Checked) -> str:
    """One line per size: rounds, last count, all stitches, printed counts that agree, errors."""
    rows = [("size", "rounds", "edge", "stitches", "counts that agree", "errors")]
    for i, (size, report) in enumerate(zip(checked.sized.graded.sizes, checked.reports, strict=True)):
        counted = [r for r in report.rows if r.printed]
        agree = sum(r.agrees is True for r in counted)
        edge = next((r.counts[0] for r in reversed(report.rows) if r.counts[0]), None)
        errors = sum(severity(f) == "error" for f in report.findings)
        made = f"{stitches(checked.sized.graded, i):,}"
        rows.append((size.size, str(len(report.rows)), str(edge or "?"), made, f"{agree} of {len(counted)}", str(errors)))
    return _aligned(rows) + f"\nerrors in all sizes: {checked.faults}"


def _aligned(rows: Sequence[tuple[str, ...]]) -> str:
    wide = [max(len(r[i]) for r in rows) for i in range(len(rows[0]))]
    lines = [[f"{c:>{w}}" if i else f"{c:<{w}}" for i, (c, w) in enumerate(zip(r, wide, strict=True))] for r in rows]
    return "\n".join("  ".join(line).rstrip() for line in lines)


def _texts(checked: Checked, at: str) -> list[tuple[str, str]]:
    """File names and texts: all sizes in one, and each alone."""
    sized = checked.sized
    alone = [(f"{s.size}{at}.txt", text) for s, text in zip(sized.graded.sizes, sized.texts, strict=True)]
    return [(f"all sizes{at}.txt", sized.text), *alone]
