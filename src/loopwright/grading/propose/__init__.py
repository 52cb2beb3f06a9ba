"""From a plain one-size pattern to a design: why its numbers are what they are, as Fit sentences with their evidence.

`propose` finds; the workshop grades the result back and asks for the next reason where her own numbers do not come out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from loopwright.findings import Edit, Finding
from loopwright.grading.discs import flat_rate, lies
from loopwright.grading.gauge import Gauge, stitch_sizes
from loopwright.grading.heights import rows_of_items
from loopwright.grading.propose.assemble import Head, design_text
from loopwright.grading.propose.blanks import Blank, Proposed, Reason
from loopwright.grading.propose.candidates import Ground, Item, item_of, reasons_for
from loopwright.grading.propose.facts import lines_of
from loopwright.grading.propose.search import search
from loopwright.model.report import Report
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.source import Span

__all__ = ["Blank", "Item", "Proposal", "Proposed", "Reason", "Task", "item_of", "propose"]

_BLANK = re.compile(r"\{([^{}]+)\}")


@record
class Task:
    """What is wanted: the size the pattern was worked in, the sizes of the design, its gauge; `words` when the gauge is to be written."""

    worked_in: str
    sizes: tuple[str, ...]
    gauge: Gauge
    measure: Callable[[str], float | None]
    words: str | None = None
    inches: bool = False


@record
class Proposal:
    """A design out of a plain pattern: blanks with their reasons, what was kept as it is, and the text."""

    document: Document
    task: Task
    item: Item
    blanks: tuple[Proposed, ...]
    edits: tuple[Edit, ...]
    kept: tuple[str, ...]
    findings: tuple[Finding, ...] = ()

    @property
    def values(self) -> dict[str, int]:
        """Her own numbers by blank."""
        return {p.blank.name: p.blank.value for p in self.blanks}

    def text(self) -> str:
        """The design, with the best reason of each blank."""
        return design_text(self.document, self.edits, self.blanks, Head(self.task.sizes, self.task.worked_in, self.task.words))

    def without(self, name: str, why: str) -> Proposal:
        """The same with a blank, and those that hang on it, put back to her numbers."""
        gone = {name}
        while more := {p.blank.name for p in self.blanks if p.reasons and _named(p.reasons[0].sentence) & gone} - gone:
            gone |= more
        values = self.values
        edits = tuple(
            replace(e, text=_filled(e.text, {g: values[g] for g in gone})) for e in self.edits
            if not _named(e.text) or _named(e.text) - gone
        )
        kept = tuple(p for p in self.blanks if p.blank.name not in gone)
        return replace(self, blanks=kept, edits=edits, kept=(*self.kept, f"{', '.join(sorted(gone))}: as worked, {why}"))

    def next_reason(self, name: str) -> Proposal:
        """The same with the next reason of one blank put first, and the first put last."""
        changed = tuple(replace(p, reasons=(*p.reasons[1:], *p.reasons[:1])) if p.blank.name == name else p for p in self.blanks)
        return replace(self, blanks=changed)


def propose(document: Document, report: Report, task: Task) -> Proposal:
    """Blanks and reasons for a pattern that was read and worked in one size.

    Never raises: what has no reason stays as it is, and is told.
    """
    item = item_of(f"{document.title or ''}\n{document.text[:2000]}")
    ground = Ground(task.gauge, task.worked_in, task.measure, item, task.inches, len(task.sizes))
    if item.scaled:
        note = Finding("G044", Span(0, 0), {"item": item.name})
        return Proposal(document, task, item, (), (), (), (note,))
    sizes = stitch_sizes(document, task.gauge if task.words else None).sizes
    worked = report.fabrics[0] if report.fabrics else None
    tall = rows_of_items(worked, sizes) if worked is not None and sizes is not None else {}
    row_mm = sizes.row_mm if sizes is not None else task.gauge.row_mm or 0.0
    found = search(lines_of(document, report, tall, row_mm), _called(document, item), task.gauge.row_mm)
    blanks = tuple(Proposed(_with_flatness(b, task.gauge), reasons_for(b, ground)) for b in found.blanks)
    dumb = [p.blank.name for p in blanks if not p.reasons]
    notes = tuple(Finding("G041", Span(0, 0), {"blank": name}) for name in dumb)
    if not blanks:
        notes += (Finding("G040", Span(0, 0), {}),)
    proposal = Proposal(document, task, item, blanks, tuple(found.edits), tuple(found.kept), notes)
    for name, why in found.fixed.items():
        proposal = proposal.without(name, why)
    return proposal


def _with_flatness(blank: Blank, gauge: Gauge) -> Blank:
    """A disc's blank with what its rate does at this gauge among its facts."""
    if not blank.gain or gauge.row_mm is None or gauge.stitch_mm is None:
        return blank
    flat = flat_rate(gauge.stitch_mm, blank.rows_mm[0] if blank.rows_mm is not None else gauge.row_mm)
    does = {"flat": "lies flat", "cups": "cups a little", "ruffles": "ruffles a little"}[lies(blank.gain, flat)]
    return replace(blank, facts=(*blank.facts, f"a flat circle gains {flat:.1f} at this gauge, so it {does}"))


def _named(text: str) -> frozenset[str]:
    return frozenset(_BLANK.findall(text))


def _filled(text: str, values: dict[str, int]) -> str:
    for name, value in values.items():
        text = text.replace(f"{{{name}}}", str(value))
    return text


def _called(document: Document, item: Item) -> str:
    """What the whole is called in a sentence: the item's own word in the title, "piece" where there is none."""
    title = (document.title or "").lower()
    named = [w for w in item.words if w in title]
    general = item.name if item.habits else "piece"
    return general if general in ("hat", "piece") or not named else named[0]


def order_of(sizes: Sequence[str], worked_in: str) -> tuple[str, ...]:
    """The sizes with the worked one among them."""
    return tuple(sizes) if worked_in in sizes else (*sizes, worked_in)
