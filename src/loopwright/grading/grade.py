"""From a design to every size: sentences read, targets worked out, numbers chosen, blanks filled, the result worked."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from typing import Any

from loopwright.findings import Finding
from loopwright.grading.bodies import Measure, charts_told, known_to_trade, measure_of
from loopwright.grading.choose import Chosen, split
from loopwright.grading.cords import cords
from loopwright.grading.discs import flat_rate, lies
from loopwright.grading.explain import explained
from loopwright.grading.fill import fill, per_size, pick
from loopwright.grading.fit import Fit
from loopwright.grading.gauge import Gauge, GaugeError, GaugeFound, parse_gauge, stitch_sizes
from loopwright.grading.heights import by_fabric, by_words
from loopwright.grading.kept import unknown_sizes
from loopwright.grading.lengths import in_cm
from loopwright.grading.number import Number
from loopwright.grading.parity import choose_alike
from loopwright.grading.reach import Setting
from loopwright.grading.reasons import read_reasons
from loopwright.grading.structure import Structure, structure
from loopwright.grading.targets import impossible, problems
from loopwright.model.report import Report
from loopwright.model.tree import Document, FitLine, HeadLine
from loopwright.record import record
from loopwright.source import Span

TOP = Span(0, 0)
ROUNDS = 4  # so often numbers are chosen again because their rows, once worked, are not as tall as their words said


@record
class SizeGrade:
    """One size: its number for every blank, in the order of the Fit sentences."""

    size: str
    numbers: tuple[Number, ...]

    @property
    def blanks(self) -> dict[str, int]:
        """Values by blank."""
        return {n.blank: n.value for n in self.numbers}


@record
class Graded:
    """A design in its sizes. `document` has its blanks filled; `report` is that document worked; `design` the design in these sizes."""

    design: Document
    document: Document
    report: Report | None
    gauge: Gauge | None
    sizes: tuple[SizeGrade, ...]
    findings: tuple[Finding, ...]

    @property
    def values(self) -> dict[str, tuple[int, ...]]:
        """Numbers per size by blank, those that every size has."""
        if not self.sizes:
            return {}
        names = [n.blank for n in self.sizes[0].numbers]
        return {name: tuple(s.blanks[name] for s in self.sizes) for name in names if all(name in s.blanks for s in self.sizes)}


def grade(
    document: Document, work: Callable[[Document], Report] | None = None, gauge: Gauge | None = None,
    sizes: Sequence[str] | None = None, measure: Measure | None = None, memo: dict[Any, Any] | None = None,
) -> Graded:
    """Grades a design to its sizes, or to some of them. Never raises: what cannot be done is a finding.

    `work` works the filled document; None leaves that out. `measure` gives a body measurement in mm; unless told, the pattern's own
    size chart and the trade's. `memo` keeps between calls what was chosen and filled, for the next text that asks the same.
    """
    findings: list[Finding] = []
    design, order = _sizes_of(document, sizes, findings)
    plan = structure(design)
    asked = plan.spans or any(isinstance(i, FitLine) for i in design.items)
    if not asked:
        findings.append(Finding("G034", _line_of(document, "sizes", "size")))
    held = _held_gauge(document, gauge, findings if asked else [])
    fits = read_reasons(design, plan, findings)
    findings.extend(unknown_sizes(fits, design.sizes))
    setting: Setting | None = None
    if fits and held is not None:
        found = stitch_sizes(design, gauge)
        setting = _setting(design, held, plan, measure or measure_of(design, findings), (found, gauge is None))
    charts = charts_told(design) if measure is None else None
    choice = _Choice(design, order, held, work, tuple(findings), memo if charts is not None else None, charts)
    graded = choice.of(fits, setting)
    for _ in range(ROUNDS):
        worked = _as_worked(setting, graded, order) if setting is not None else None
        if worked is None:
            break
        again = choice.of(fits, worked, like=graded)
        setting, settled, graded = worked, again.values == graded.values, again
        if settled:
            break
    return graded


@record
class _Choice:
    """A design and what is worked of it: numbers chosen, blanks filled, the result worked.

    `order`: the sizes asked for, by index. `charts`: what the text says of size charts.
    """

    design: Document
    order: list[int]
    gauge: Gauge | None
    work: Callable[[Document], Report] | None
    findings: tuple[Finding, ...]
    memo: dict[Any, Any] | None = None
    charts: tuple[str, ...] | None = None

    def of(self, fits: Mapping[str, Fit], setting: Setting | None, like: Graded | None = None) -> Graded:
        """The whole, by how tall rows are now. `like`: what was graded before; where the numbers are the same it is not worked again."""
        findings = list(self.findings)
        numbers: list[tuple[Number, ...]] = [() for _ in self.design.sizes]
        if setting is not None:
            numbers = self._chosen(fits, setting, findings)
        sizes = tuple(SizeGrade(self.design.sizes[i], numbers[i]) for i in self.order)
        whole = self.order == list(range(len(self.design.sizes)))
        design = self.design if whole else pick(self.design, self.order)
        graded = Graded(design, design, None, self.gauge, sizes, _shown(findings, design.sizes))
        if like is not None and like.values == graded.values:
            return replace(graded, document=like.document, report=like.report)
        filled = fill(design, graded.values, self.memo)
        return replace(graded, document=filled, report=self.work(filled) if self.work is not None else None)

    def _chosen(self, fits: Mapping[str, Fit], setting: Setting, findings: list[Finding]) -> list[tuple[Number, ...]]:
        """The numbers of all sizes; where the last text asked the same, those that were found for it."""
        s = setting
        asked = dict(fits), s.sizes, s.gauge, s.plan, s.heights, s.rows_told, s.stitches_told, self.charts
        held = self.memo.get("chosen") if self.memo is not None else None
        if held is None or held[0] != asked:
            found: list[Finding] = []
            numbers, usable = _chosen(fits, setting, found)
            held = asked, numbers, usable, found
            if self.memo is not None:
                self.memo["chosen"] = held
        findings.extend(held[3])
        findings.extend(cords(held[2], setting.text, setting.sizes, held[1]))
        return list(held[1])


def _setting(design: Document, gauge: Gauge, plan: Structure, measure: Measure, known: tuple[GaugeFound, bool]) -> Setting:
    """The setting before anything is worked. `known`: sizes of stitches, and whether the pattern's own swatches hold."""
    found, own = known
    swatches = found.swatches if own and not found.guessed else ()
    rows = gauge.row_mm is not None or any(s.row_mm is not None for s in swatches)
    stitches = gauge.stitch_mm is not None or any(s.stitch_mm is not None for s in swatches)
    heights = () if found.sizes is None else (by_words(design, found.sizes),) * len(design.sizes)
    return Setting(design.sizes, gauge, plan, measure, design.text, heights, rows, stitches)


def _as_worked(setting: Setting, graded: Graded, order: Sequence[int]) -> Setting | None:
    """The setting with rows as tall as the worked ones are; None where that is what it says already, or nothing was worked."""
    if graded.report is None or not setting.heights:
        return None
    items, free, heights = setting.plan.items(), setting.plan.free(), list(setting.heights)
    for i, fabric in zip(order, graded.report.fabrics, strict=False):
        if fabric is not None:
            heights[i] = by_fabric(fabric, heights[i], free)
    if all(a.like(b, items) for a, b in zip(heights, setting.heights, strict=True)):
        return None
    return replace(setting, heights=tuple(heights))


def _shown(findings: Sequence[Finding], sizes: Sequence[str]) -> tuple[Finding, ...]:
    """The findings by place, without those of sizes that were not asked for."""
    kept = []
    for f in findings:
        named = tuple(s for s in f.sizes if s in sizes) if f.sizes is not None else None
        if named is None or named:
            kept.append(replace(f, sizes=named))
    return tuple(sorted(kept, key=lambda f: f.span.start))


def _chosen(fits: Mapping[str, Fit], setting: Setting, findings: list[Finding]) -> tuple[list[tuple[Number, ...]], dict[str, Fit]]:
    """The numbers of all sizes, and the sentences that could be used."""
    whole, usable = problems(fits, setting, findings)
    parts = [split(p) for p in whole]
    chosen: list[Chosen] = [{} for _ in whole]
    alike = [n for n, f in usable.items() if f.same_parity]
    for part in zip(*parts, strict=True):
        for i, found in enumerate(choose_alike(part, alike)):
            if found is None:
                findings.append(impossible(part[i], setting.sizes[i], usable))
            else:
                chosen[i].update(found)
    numbers = [tuple(explained(usable[n], whole[i], chosen[i], i, setting) for n in usable if n in chosen[i]) for i in range(len(whole))]
    findings.extend(_far(usable, numbers, setting))
    findings.extend(_not_flat(usable, setting))
    return numbers, usable


def _far(fits: Mapping[str, Fit], numbers: Sequence[Sequence[Number]], setting: Setting) -> list[Finding]:
    """Numbers held more than a whole step from their target, by a limit, a link or the order of the sizes."""
    held: dict[str, list[tuple[str, Number]]] = {}
    for size, found in zip(setting.sizes, numbers, strict=True):
        for n in found:
            if n.error_mm is not None and n.step_mm is not None and abs(n.error_mm) > n.step_mm and not n.kept:
                held.setdefault(n.blank, []).append((size, n))
    result = []
    for blank, cases in held.items():
        n = max((c[1] for c in cases), key=lambda n: abs(n.error_mm or 0.0))
        error = n.error_mm or 0.0
        facts = {"blank": blank, "error": in_cm(abs(error)), "way": "over" if error > 0 else "under", "why": n.held or n.reason}
        result.append(Finding("G032", fits[blank].span, facts, sizes=tuple(c[0] for c in cases)))
    return result


def _not_flat(fits: Mapping[str, Fit], setting: Setting) -> list[Finding]:
    """Crowns whose rounds grow by more or less than a flat circle does at this gauge."""
    found: list[Finding] = []
    if not setting.heights or not setting.rows_told or not setting.stitches_told:
        return found
    for blank, grows in setting.plan.grows.items():
        if blank in fits and fits[blank].across:
            item, heights = setting.plan.uses[blank].item, setting.heights[0]
            turn = heights.cycle(item)
            flat = flat_rate(heights.width((item,)), sum(turn) / len(turn))
            how = lies(grows, flat)
            if how != "flat":
                facts = {"blank": blank, "grows": grows, "flat": f"{flat:.1f}", "whole": round(flat), "how": how}
                found.append(Finding("G033", fits[blank].span, facts))
    return found


def _held_gauge(document: Document, given: Gauge | None, findings: list[Finding]) -> Gauge | None:
    """The gauge given; what it does not tell is taken from the design's own, and that is said. The design's own when none is given."""
    if given is None:
        return _own_gauge(document, findings)
    missing = [part for part, mm in (("row", given.row_mm), ("stitch", given.stitch_mm)) if mm is None]
    own = _own_gauge(document, []) if missing and given.repeat_mm is None else None
    if own is None or all(getattr(own, f"{part}_mm") is None for part in missing):
        return given
    findings.append(Finding("G007", _line_of(document, "gauge", "tension"), {"part": " and ".join(missing), "text": own.text}))
    stitch = given.stitch_mm if given.stitch_mm is not None else own.stitch_mm
    row = given.row_mm if given.row_mm is not None else own.row_mm
    kept = f"{100 / row:.4g} rows = 10 cm" if given.row_mm is None and row else f"{100 / stitch:.4g} sts = 10 cm" if stitch else ""
    return Gauge(stitch, row, None, given.stitch or own.stitch, f"{given.text}, {kept}")


def _own_gauge(document: Document, findings: list[Finding]) -> Gauge | None:
    """The gauge of the heading."""
    for item in document.items:
        if isinstance(item, HeadLine) and item.name in ("gauge", "tension"):
            try:
                return parse_gauge(item.value)
            except GaugeError as e:
                findings.append(Finding(e.code, item.value_span, e.facts))
                return None
    findings.append(Finding("G001", TOP))
    return None


def _sizes_of(document: Document, asked: Sequence[str] | None, findings: list[Finding]) -> tuple[Document, list[int]]:
    """The design with sizes put in that it does not list but the trade's chart knows, and the indexes of those asked for."""
    names = list(document.sizes)
    order: list[int] = []
    for name in asked or ():
        wanted = " ".join(name.lower().split())
        at = next((i for i, n in enumerate(names) if n.lower() == wanted), None)
        if at is None and known_to_trade(name) and not per_size(document):
            at = len(names)
            names.append(" ".join(name.split()))
        if at is None:
            findings.append(Finding("G020", _line_of(document, "sizes", "size"), {"size": name, "known": ", ".join(document.sizes)}))
        elif at not in order:
            order.append(at)
    return replace(document, sizes=tuple(names)), order or list(range(len(names)))


def _line_of(document: Document, *names: str) -> Span:
    return next((i.span for i in document.items if isinstance(i, HeadLine) and i.name in names), TOP)
