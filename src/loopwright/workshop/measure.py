"""Measure one pattern in all its sizes, or some: dimensions, how rounds lie, yarn, time, cautions, shape."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import field, replace
from typing import TYPE_CHECKING

from loopwright.findings import Finding, in_order
from loopwright.grading import Graded, grade, parse_gauge
from loopwright.grading.bodies import NoMeasurementError, measure_of
from loopwright.grading.gauge import GaugeFound, StitchSizes, stitch_sizes
from loopwright.measuring.courses import courses
from loopwright.measuring.dimensions import dimensions
from loopwright.measuring.flatness import lies, notes
from loopwright.measuring.parts import parts
from loopwright.measuring.time import own_speed, time_need
from loopwright.measuring.worn import worn
from loopwright.measuring.yarn import (
    Calibration,
    FabricYarn,
    YarnKnown,
    calibration,
    copies_of,
    fabric_yarn,
    needs_of,
    sections_of,
    yarn_known,
)
from loopwright.model.cautions import CautionDue
from loopwright.model.fabric import Fabric
from loopwright.model.measures import Dimension, Measures, RoundLies
from loopwright.model.tree import Document, Section
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source
from loopwright.trade import ease
from loopwright.trade.cautions import cautions_due
from loopwright.trade.ease import Ease
from loopwright.working import work
from loopwright.workshop.original import cautions_in_original, findings_in_original

if TYPE_CHECKING:
    from loopwright.measuring.relax import Shape
    from loopwright.workshop.wear import OnForm

NOTHING_TO_GRADE, NO_GAUGE = "G034", "G001"  # measuring says these in its notes
MEANT = 2.0  # radians of curvature inside a round from which it is no disc any more (a judgement)


@record
class Measured:
    """A pattern measured: one `Measures` per size, what is known of gauge and yarn, what was assumed, what is due to be said, the findings.

    `worked_yarn`: the yarn of every row, per size. `shapes`: relaxed, per size, where asked for; `on_forms`: worn.
    """

    source: Source
    graded: Graded
    gauge: GaugeFound
    yarn: YarnKnown
    sizes: tuple[Measures, ...]
    cautions: tuple[CautionDue, ...]
    notes: tuple[str, ...]
    findings: tuple[Finding, ...]
    fabrics: tuple[Fabric | None, ...] = field(default=(), compare=False)
    worked_yarn: tuple[FabricYarn | None, ...] = field(default=(), compare=False)
    shapes: tuple[Shape | None, ...] = field(default=(), compare=False)
    on_forms: tuple[OnForm | None, ...] = field(default=(), compare=False)

    @property
    def document(self) -> Document:
        """The pattern with its blanks filled."""
        return self.graded.document


@record
class Wanted:
    """What is asked for: which sizes, at which gauge, in which terms the text is, whether shapes are relaxed and for how long."""

    sizes: Sequence[str] | None = None
    gauge: str | None = None
    terms: str | None = None
    shape: bool = False
    budget_s: float | None = None
    progress: Callable[[str, float], None] | None = None

    def with_progress(self, progress: Callable[[str, float], None] | None) -> Wanted:
        """The same, with somebody who is told what is being relaxed and which share of it is done, or nobody."""
        return replace(self, progress=progress)


@record
class _Setting:
    """What all sizes stand on."""

    document: Document
    sizes: StitchSizes
    yarn: YarnKnown
    item: Ease | None
    calibrated: Calibration


def measure_source(source: Source, wanted: Wanted | None = None) -> Measured:
    """Measures a design or a plain pattern. Raises GaugeError for a `gauge` that cannot be used; all else that is wrong is told in it."""
    want = wanted or Wanted()
    other = parse_gauge(want.gauge) if want.gauge is not None else None
    graded = grade(read(source, want.terms), work, other, want.sizes)
    document, report = graded.document, graded.report
    found, yarn = stitch_sizes(document, other), yarn_known(document)
    names = document.sizes or ("one size",)
    fabrics = tuple(report.fabrics) if report is not None else (None,) * len(names)
    nothing = not any(f is not None and len(f) for f in fabrics)
    remarks = [*(["nothing to measure: no row of it could be worked"] if nothing else []), *found.notes, *found.doubts]
    sizes, worked = _sizes(document, found.sizes, yarn, fabrics, names, remarks)
    findings = [f for f in (*graded.findings, *(report.findings if report is not None else ())) if f.code != NOTHING_TO_GRADE]
    return Measured(
        source, graded, found, yarn, sizes, cautions_in_original(document, cautions_due(document, found.sizes, fabrics)),
        tuple(dict.fromkeys(remarks)),
        in_order(findings_in_original(document, [*findings, *(f for f in found.findings if f.code != NO_GAUGE)])), fabrics, worked,
    )


def _sizes(
    document: Document, stitches: StitchSizes | None, yarn: YarnKnown, fabrics: Sequence[Fabric | None], names: Sequence[str],
    remarks: list[str],
) -> tuple[tuple[Measures, ...], tuple[FabricYarn | None, ...]]:
    if stitches is None:
        remarks.append("only stitches are counted; add a Gauge line, or the yarn and the hook")
        return tuple(_counted(n, f) for n, f in zip(names, fabrics, strict=True)), (None,) * len(names)
    worked = [None if f is None else fabric_yarn(f, stitches, yarn, copies_of(document, i)) for i, f in enumerate(fabrics)]
    weighed = {n.lower(): _metres(w) for n, w in zip(names, worked, strict=True) if w is not None} if yarn.samples else None
    calibrated = calibration(yarn, stitches, weighed)
    remarks.extend(calibrated.doubts)
    item = item_of(document)
    setting = _Setting(document, stitches, yarn, item, calibrated)
    bodies = bodies_of(document, item.measure or "chest", names) if item is not None else [None] * len(names)
    if calibrated != Calibration():
        worked = [None if f is None else fabric_yarn(f, stitches, yarn, copies_of(document, i), calibrated) for i, f in enumerate(fabrics)]
    each = enumerate(zip(names, fabrics, worked, strict=True))
    found = (_counted(n, f) if f is None or u is None else _size(n, f, u, setting, bodies[i], i) for i, (n, f, u) in each)
    return tuple(found), tuple(worked)


def _metres(worked: FabricYarn) -> float:
    return sum(row.total_mm for row in worked.rows) / 1000


def _counted(name: str, fabric: Fabric | None) -> Measures:
    if fabric is None:
        return Measures(name, notes=("this size could not be worked",))
    return Measures(name, stitches=made(fabric, {}))


def _size(name: str, fabric: Fabric, used: FabricYarn, setting: _Setting, body_mm: float | None, index: int) -> Measures:
    stitches = setting.sizes
    rows = courses(fabric, stitches)
    found: tuple[Dimension, ...] = dimensions(fabric, stitches, rows)
    if setting.item is not None and body_mm:
        found = (*found, *worn(found, parts(fabric, rows), stitches, body_mm, setting.item))
    copies = copies_of(setting.document, index)
    return Measures(
        name, found, tuple(_told(r) for r in lies(fabric, rows, stitches)), stitches=made(fabric, copies), notes=notes(rows),
        yarn=needs_of(used, stitches, setting.yarn, setting.calibrated),
        yarn_of_sections=tuple(sections_of(used, stitches, setting.yarn, setting.calibrated).items()),
        time=time_need(fabric, own_speed(setting.document), copies),
    )


def _told(r: RoundLies) -> RoundLies:
    """The same without a mend where the round is far from flat: a ball or a tube is meant to be."""
    return replace(r, mend="") if abs(r.curvature) > MEANT else r


def made(fabric: Fabric, copies: Mapping[str | None, int]) -> dict[str, int]:
    """Stitches by kind over all rows, as the trade counts them; sections that are made several times count so often."""
    total: dict[str, int] = {}
    for row in fabric.rows:
        for kind, n in fabric.counted(row).items():
            total[kind] = total.get(kind, 0) + n * copies.get(row.section, 1)
    return dict(sorted(total.items(), key=lambda kn: -kn[1]))


def item_of(document: Document) -> Ease | None:
    """What is made, by the words of the title, else of the text before the first section."""
    first = next((i.span.start for i in document.items if isinstance(i, Section)), min(len(document.text), 400))
    for text in (document.title or "", document.text[:first]):
        for known in sorted(ease.items(), key=lambda e: -max(map(len, (e.name, *e.also)))):
            if any(re.search(rf"\b{re.escape(n)}\b", text, re.IGNORECASE) for n in (known.name, *known.also)):
                return known
    return None


def bodies_of(document: Document, what: str, names: Sequence[str]) -> list[float | None]:
    """A body measurement per size, mm, from the pattern's chart or the trade's; None where none tells it."""
    measure = measure_of(document, [])
    found: list[float | None] = []
    for name in names:
        try:
            found.append(measure(name, what).mm)
        except NoMeasurementError:
            found.append(None)
    return found
