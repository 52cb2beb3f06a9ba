"""A plain pattern becomes a design: read, worked, its reasons proposed, graded back to its own size and to all others."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from loopwright.findings import Finding, in_order
from loopwright.findings.render_json import as_json as findings_json
from loopwright.grading import Gauge, GaugeError, grade, parse_gauge
from loopwright.grading.propose import Item, Proposal, Task, item_of, propose
from loopwright.model.tree import Document, HeadLine
from loopwright.notation import read
from loopwright.record import record
from loopwright.source import Source, Span
from loopwright.trade import sizes as body_sizes
from loopwright.working import work
from loopwright.workshop.grade import Sized, grade_design

TOP = Span(0, 0)
TRIES = 12


@record
class Wanted:
    """What a design is to be made for; what is None is taken from the pattern, or from what is usual for the item."""

    worked_in: str | None = None
    sizes: tuple[str, ...] | None = None
    gauge: str | None = None
    terms: str | None = None


@record
class MadeDesign:
    """The proposal, its text, and the design graded to all its sizes. `own` are the numbers graded back to her own size."""

    source: Source
    proposal: Proposal
    text: str
    own: dict[str, int]
    sized: Sized
    findings: tuple[Finding, ...]


class CannotPropose(Exception):  # noqa: N818 (read as a sentence: "except CannotPropose")
    """A pattern that no design can be made of as asked; the message says the way out."""


def propose_design(source: Source, wanted: Wanted) -> MadeDesign:
    """The design. Raises CannotPropose where a size or a gauge is neither told nor found, GaugeError for a gauge that cannot be used."""
    document = read(source, wanted.terms)
    gauge, words = _gauge(document, wanted.gauge)
    worked_in = wanted.worked_in or _head(document, "worked in", "size", "sizes")
    if not worked_in:
        raise CannotPropose("say which size the pattern was worked in, for example: --worked-in child")
    if "," in worked_in:
        raise CannotPropose(f"the pattern has several sizes ({worked_in}): give the numbers of one alone, and name it with --worked-in")
    if len(document.sizes) > 1:
        raise CannotPropose(f"the pattern has numbers for {len(document.sizes)} sizes, as in 60 (64, 72): give those of one size alone")
    item = item_of(f"{document.title or ''}\n{document.text[:2000]}")
    if item.habits:
        _known(wanted.sizes or ())
    task = Task(worked_in, sizes_for(item, worked_in, wanted.sizes), gauge, measures_of(worked_in), words, _in_inches(gauge))
    report = work(document)
    broken = _broken(source, report.findings)
    proposal, own = _settled(propose(document, report, task))
    sized = grade_design(Source.of(proposal.text(), f"{source.name} as a design"))
    for _ in range(TRIES):
        weak = _weak(proposal, sized, broken)
        if weak is None:
            break
        fewer, own_then = _settled(proposal.without(*weak))
        then = grade_design(Source.of(fewer.text(), sized.source.name))
        if len(_at_fault(fewer, then, broken)) >= len(_at_fault(proposal, sized, broken)):
            break
        proposal, own, sized = fewer, own_then, then
    text = proposal.text()
    return MadeDesign(source, proposal, text, own, sized, in_order((*proposal.findings, *_differences(proposal, own, worked_in))))


def _known(sizes: Sequence[str]) -> None:
    """Sizes of an item that goes by the body must be in the chart."""
    for size in sizes:
        try:
            body_sizes.chart("trade").find(size)
        except body_sizes.UnknownNameError as e:
            raise CannotPropose(f"--sizes: {e}") from None


def _gauge(document: Document, asked: str | None) -> tuple[Gauge, str | None]:
    told = _head(document, "gauge", "tension")
    if told is None and asked is None:
        asked = _anywhere(document.text, "gauge", "tension")
    if asked is None and told is None:
        raise GaugeError("G001")
    return parse_gauge(asked or told or ""), asked


def _head(document: Document, *names: str) -> str | None:
    return next((i.value for n in names for i in document.items if isinstance(i, HeadLine) and i.name == n), None)


def _anywhere(text: str, *names: str) -> str | None:
    """A "Name: value" line wherever it stands, for patterns whose heading does not come first."""
    m = re.search(rf"^(?:{'|'.join(names)})\s*:\s*(\S.*)$", text, re.IGNORECASE | re.MULTILINE)
    return m[1].strip() if m else None


def _in_inches(gauge: Gauge) -> bool:
    return any(w in gauge.text.lower() for w in (" in", '"', "inch")) and "cm" not in gauge.text.lower()


class _Measures:
    """The measurements of one size of the trade's chart; None for one that it does not know."""

    def __init__(self, size: str) -> None:
        try:
            self._size: body_sizes.Size | None = body_sizes.chart("trade").find(size)
        except body_sizes.UnknownNameError:
            self._size = None

    @property
    def known(self) -> bool:
        """Whether the chart has the size."""
        return self._size is not None

    def __call__(self, what: str) -> float | None:
        if self._size is None:
            return None
        try:
            return float(self._size.measure(what).mm)
        except body_sizes.UnknownNameError:
            return None


def measures_of(size: str) -> _Measures:
    """Looks up the measurements of a size: by name, in mm."""
    return _Measures(size)


def sizes_for(item: Item, worked_in: str, asked: Sequence[str] | None) -> tuple[str, ...]:
    """The sizes of the design, the worked one at its place among them; those usual for the item unless others are asked for."""
    sizes = list(asked or (_usual(item, worked_in) if measures_of(worked_in).known else ()))
    same = {body_sizes.size_name(s): s for s in sizes}
    if worked_in in sizes:
        return tuple(sizes)
    twin = same.get(body_sizes.size_name(worked_in))
    if twin is not None:
        return tuple(worked_in if s == twin else s for s in sizes)
    order = {s.name: i for i, s in enumerate(body_sizes.chart("trade").sizes)}
    rank = order.get(body_sizes.size_name(worked_in), len(order))
    at = next((i for i, s in enumerate(sizes) if order.get(body_sizes.size_name(s), -1) > rank), len(sizes))
    return (*sizes[:at], worked_in, *sizes[at:])


def _usual(item: Item, worked_in: str) -> tuple[str, ...]:
    """The range of sizes that the worked one belongs to, or is nearest to."""
    order = {s.name: i for i, s in enumerate(body_sizes.chart("trade").sizes)}
    own = order.get(body_sizes.size_name(worked_in))
    if own is None:
        return item.sizes

    def away(sizes: tuple[str, ...]) -> int:
        ranks = [order[name] for s in sizes if (name := body_sizes.size_name(s)) in order]
        return 0 if own in ranks else min((abs(own - r) + 1 for r in ranks), default=len(order))

    return min((item.sizes, *item.other_sizes), key=away)


def _settled(proposal: Proposal) -> tuple[Proposal, dict[str, int]]:
    """The proposal with reasons that bring her numbers back together; where a number differs its next reason is tried."""
    own = _graded_back(proposal)
    tried: dict[str, int] = {}
    for _ in range(TRIES):
        wrong = [p for p in proposal.blanks if own.get(p.blank.name) != p.blank.value and tried.get(p.blank.name, 1) < len(p.reasons)]
        if not wrong:
            break
        name = wrong[0].blank.name
        tried[name] = tried.get(name, 1) + 1
        changed = proposal.next_reason(name)
        now = _graded_back(changed)
        if _wrong(changed, now) <= _wrong(proposal, own):
            proposal, own = changed, now
    return proposal, own


def _broken(source: Source, findings: Sequence[Finding]) -> frozenset[str]:
    """The rows that have a fault, by their words without the numbers."""
    return frozenset(_words(source, f) for f in findings if f.code.startswith("W"))


def _words(source: Source, finding: Finding) -> str:
    line = source.line_text(source.line_of(finding.span.start)).partition(":")[2]
    return " ".join(re.findall(r"[A-Za-z]+", re.sub(r"\{[^{}]*\}", " ", line)))[:60]


def _at_fault(proposal: Proposal, sized: Sized, broken: frozenset[str]) -> list[Finding]:
    """Faults of rows in other sizes than hers, of rows that have none in her own text."""
    own = proposal.task.worked_in
    others = [f for f in sized.findings if f.code.startswith("W") and f.sizes and own not in f.sizes]
    return [f for f in others if _words(sized.source, f) not in broken]


def _weak(proposal: Proposal, sized: Sized, broken: frozenset[str]) -> tuple[str, str] | None:
    """The latest count of stitches before the first row that does not work out in other sizes, with that row; None where all do.

    A row that fails in her own text or her own size too fails for another reason: nothing is gained by leaving a blank out.
    """
    at_fault = _at_fault(proposal, sized, broken)
    if not at_fault:
        return None
    line = sized.source.line_of(at_fault[0].span.start)
    lines = sized.source.text.split("\n")[:line]
    rows = "\n".join(lines[next((i for i, x in enumerate(lines) if x == "Fit"), 0) :].copy())
    rows = rows.partition("\n\n")[2]
    stitches = [p.blank.name for p in proposal.blanks if p.blank.role != "link" and p.blank.unit == "sts" and f"{{{p.blank.name}}}" in rows]
    return (stitches[-1], f"line {line} does not work out in {', '.join(at_fault[0].sizes or ())}") if stitches else None


def _wrong(proposal: Proposal, own: dict[str, int]) -> int:
    return sum(own.get(name) != value for name, value in proposal.values.items())


def _graded_back(proposal: Proposal) -> dict[str, int]:
    """The numbers that the design gives for its own size at its own gauge."""
    document = read(Source.of(proposal.text()))
    graded = grade(document, None, proposal.task.gauge, [proposal.task.worked_in])
    return graded.sizes[0].blanks if graded.sizes else {}


def _differences(proposal: Proposal, own: dict[str, int], size: str) -> list[Finding]:
    found = [
        Finding("G043", TOP, {"size": size, "blank": name, "now": own.get(name, "nothing"), "was": value})
        for name, value in proposal.values.items() if own.get(name) != value
    ]
    if not measures_of(size).known and proposal.item.habits:
        found.append(Finding("G042", TOP, {"size": size}))
    return found


def as_json(made: MadeDesign) -> dict[str, Any]:
    """The command's JSON: the design, each blank with its sentence, evidence and alternatives, best first."""
    task = made.proposal.task
    return {
        "version": 1, "title": made.sized.graded.document.title, "text": made.text, "worked_in": task.worked_in, "sizes": list(task.sizes),
        "item": made.proposal.item.name, "source_of_habits": made.proposal.item.source,
        "blanks": [_blank(made, i) for i in range(len(made.proposal.blanks))],
        "kept": list(made.proposal.kept), "findings": findings_json(made.source, made.findings),
    }


def _blank(made: MadeDesign, index: int) -> dict[str, Any]:
    p = made.proposal.blanks[index]
    reasons = [
        {"sentence": r.sentence, "evidence": r.because, "target_mm": _mm(r.target_mm), "achieved_mm": _mm(r.achieved_mm)} for r in p.reasons
    ]
    return {
        "name": p.blank.name, "unit": p.blank.unit, "value": p.blank.value, "graded_back": made.own.get(p.blank.name),
        "facts": list(p.blank.facts), "reasons": reasons,
    }


def _mm(value: float | None) -> float | None:
    return None if value is None else round(value, 2)


def evidence(made: MadeDesign) -> str:
    """For reading: each blank with her number, the sentence, why, and what else it might be."""
    lines: list[str] = []
    for p in made.proposal.blanks:
        best = p.reasons[0] if p.reasons else None
        lines.append(f"{{{p.blank.name}}} = {p.blank.value} {p.blank.unit}: {best.sentence if best else 'no reason found'}")
        because = [*([best.because] if best else []), *p.blank.facts]
        lines += [f"    {'because' if i == 0 else '       '} {b}" for i, b in enumerate(because)]
        lines += [f"    or      {r.sentence}" for r in p.reasons[1:]]
    lines += [f"kept: {k}" for k in made.proposal.kept]
    return "\n".join(lines)
