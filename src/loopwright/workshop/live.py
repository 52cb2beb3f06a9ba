"""A text while it is being written: after every change what was read, worked and found, by characters as editors count them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from typing import Any

from loopwright.checks import check
from loopwright.checks.follow_ups import without_follow_ups
from loopwright.checks.mends import with_mends
from loopwright.findings import Finding, in_order
from loopwright.findings.registry import hints, message, severity, title
from loopwright.grading import GaugeError, Graded, grade, parse_gauge
from loopwright.grading.gauge import StitchSizes, stitch_sizes
from loopwright.measuring.flatness import faults
from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Chain, Document, FitLine, HeadLine, Make, Node, Prose, Row, Section, SpecialStitch
from loopwright.notation import read
from loopwright.publishing.document.words import worked_in
from loopwright.source import Source, Span
from loopwright.working import work
from loopwright.workshop import cautions
from loopwright.workshop.left import open_and_left, place_of, stops

_BLANK = re.compile(r"\{([^{}\n]+)\}")
_TITLES = ("fit", "abbreviations", "notes", "special stitches")
_MOST_MEMO = 4000  # entries; beyond this what was remembered is let go
WORDS = {"error": "stops", "warning": "look", "advice": "thought"}


@dataclass(slots=True)
class Live:
    """One text that is being written. Keeps what earlier readings made, so that the next is quick."""

    name: str
    terms: str | None = None
    memo: dict[Any, Any] = field(default_factory=dict)

    def see(self, text: str, gauge: str | None = None) -> Seen:
        """Reads, grades and works the text and looks for faults. Never raises for a text; a gauge that cannot be used is left out."""
        source = Source.of(text, self.name)
        if len(self.memo) > _MOST_MEMO:
            self.memo.clear()
        document = read(source, self.terms, self.memo)
        given = None
        if gauge:
            try:
                given = parse_gauge(gauge)
            except GaugeError:
                given = None
        graded = grade(document, None, given) if any(isinstance(i, FitLine) for i in document.items) else None
        filled = graded.document if graded is not None else document
        stitches = stitch_sizes(filled, given).sizes
        report = cautions.with_cautions(filled, work(filled, self.memo), stitches)
        at = worked_in(filled) or 0
        fabric = report.fabrics[at] if stitches is not None and not stitches.guessed and at < len(report.fabrics) else None
        lies = () if fabric is None or stitches is None else faults(fabric, None, stitches)
        found = in_order((*(graded.findings if graded else ()), *with_mends(filled, report), *check(filled, report, lies)))
        found = without_follow_ups(report, found)
        found, left = open_and_left(document, found)
        return Seen(source, document, filled, graded, replace(report, findings=found), at, stitches, left)


@dataclass(frozen=True, slots=True)
class Seen:
    """A text as it was seen once. `document`: as written; `filled`: with its blanks filled. `sample`: index of the size worked in.

    `left`: findings that the designer leaves as they are, each with her reason; `report` has the others.
    """

    source: Source
    document: Document
    filled: Document
    graded: Graded | None
    report: Report
    sample: int
    stitches: StitchSizes | None = None
    left: tuple[tuple[Finding, str], ...] = ()

    def as_wire(self) -> dict[str, Any]:
        """All that a sheet shows, with places in UTF-16 units from the beginning of the text."""
        at = _Places(self.source)
        graded = self.graded.gauge if self.graded is not None else None
        return {
            "title": self.document.title, "terms": self.document.terms, "sizes": list(self.report.sizes), "sample": self.sample,
            "gauge": graded.text if graded is not None else _told(self.document, "gauge", "tension"),
            "version": _told(self.document, "version"), "sections": list(_sections(self.document, at)),
            "rows": list(_rows(self.document, self.report, at)), "blanks": _blanks(self, at), "marks": list(_marks(self, at)),
            "findings": [{**_finding(f, at), "place": place_of(self.document, f.span.start)} for f in self.report.findings],
            "left": [{**_finding(f, at), "place": place_of(self.document, f.span.start), "because": why} for f, why in self.left],
            "assumptions": [{**at.of(a.span), "message": a.message} for a in self.report.assumptions],
            "cautions": [{"text": c.text, "told": c.told, "hidden": c.hidden, "sizes": list(c.sizes)} for c in self.report.cautions or ()],
        }


class _Places:
    """Offsets in UTF-16 units; a text without letters beyond the basic plane needs no counting."""

    def __init__(self, source: Source) -> None:
        self.source = source
        self.plain = source.text.isascii() or max(source.text, default="") <= "\uffff"

    def one(self, offset: int) -> int:
        return offset if self.plain else self.source.utf16(offset)

    def of(self, span: Span) -> dict[str, int]:
        return {"from": self.one(span.start), "to": self.one(span.end), "line": self.source.line_of(span.start)}


def _told(document: Document, *names: str) -> str | None:
    return next((i.value for i in document.items if isinstance(i, HeadLine) and i.name in names), None)


def _sections(document: Document, at: _Places) -> Iterator[dict[str, Any]]:
    for item in document.items:
        if isinstance(item, Section) and item.span.end:
            yield {**at.of(item.span), "title": item.title, "copies": item.copies}


def _rows(document: Document, report: Report, at: _Places) -> Iterator[dict[str, Any]]:
    """One entry per written row, with its first and last count where it stands for several."""
    worked: dict[int, list[RowReport]] = {}
    for row in report.rows:
        worked.setdefault(row.item, []).append(row)
    for item, rows in worked.items():
        last = rows[-1]
        counts = [_last(rows, i) for i in range(len(report.sizes))]
        labels = [_span_of(rows, i) for i in range(len(counts))]
        node = document.items[item] if item < len(document.items) else None
        span = node.span if isinstance(node, Row) else last.span
        yield {
            **at.of(span), "item": item, "section": last.section, "label": labels[0] if len(set(labels)) == 1 else _span_of(rows),
            "labels": labels, "series": series(rows), "first": list(rows[0].counts), "counts": counts,
            "times": [sum(r.counts[i] is not None for r in rows) for i in range(len(counts))],
            "printed": list(last.printed) if last.printed else None, "agrees": _agree(rows), "read": all(r.read for r in rows),
            "why": next((r.why_not for r in rows if r.why_not), None),
            "made": {k: list(v) for k, v in last.made.items()},
        }


def series(rows: list[RowReport]) -> list[list[int | None]] | None:
    """The counts of every row that one written row stands for, where they are not all alike; None where they are.

    The first is each size's own first; sizes with fewer rows end in None.
    """
    by_size = [[r.counts[i] for r in rows if r.counts[i] is not None] for i in range(len(rows[0].counts))]
    if all(len(set(counts)) < 2 for counts in by_size):
        return None
    most = max(len(counts) for counts in by_size)
    return [[counts[n] if n < len(counts) else None for counts in by_size] for n in range(most)]


def _span_of(rows: list[RowReport], size: int | None = None) -> str:
    """What several rows are called together, in one size or in any: "Rnds 4-9". The trade's plural, from the first and the last."""
    mine = rows if size is None else [r for r in rows if r.counts[size] is not None]
    first, last = rows[0].label, rows[-1].label
    if not first or first == last or not mine:
        return first
    word, _, number = first.rpartition(" ")
    if not word or not last.startswith(f"{word} "):
        return f"{first} to {last}"
    from_, to = number.partition("-")[0], last.rpartition(" ")[2].rpartition("-")[2]
    if size is not None and "-" in last and from_.isdigit():  # sizes end with different rows: each has its own last one
        to = str(int(from_) + len(mine) - 1)
    return f"{word}s {from_}-{to}" if to != from_ else f"{word} {from_}"


def _last(rows: list[RowReport], size: int) -> int | None:
    return next((r.counts[size] for r in reversed(rows) if r.counts[size] is not None), None)


def _agree(rows: list[RowReport]) -> bool | None:
    said = [r.agrees for r in rows if r.agrees is not None]
    return all(said) if said else None


def _blanks(seen: Seen, at: _Places) -> list[dict[str, Any]]:
    """Where a blank stands and what fills it in every size."""
    values = seen.graded.values if seen.graded is not None else {}
    found = []
    for m in _BLANK.finditer(seen.source.text):
        name = " ".join(m[1].split())
        filled = values.get(name)
        found.append({**at.of(Span(m.start(), m.end())), "name": name, "values": list(filled) if filled else None})
    return found


def _marks(seen: Seen, at: _Places) -> Iterator[list[Any]]:
    """What the reader took words for, as [from, to, what]: for the eye, not for counting."""
    for item in seen.document.items:
        titled = isinstance(item, Prose) and item.text.strip().rstrip(":").lower() in _TITLES
        if titled or isinstance(item, Section) and item.span.end:
            yield [at.one(item.span.start), at.one(item.span.end), "section"]
        elif isinstance(item, HeadLine):
            yield [at.one(item.span.start), at.one(item.span.start) + len(item.name) + 1, "name"]
        elif isinstance(item, FitLine):
            yield [at.one(item.sentence_span.start), at.one(item.sentence_span.end), "fit"]
        elif isinstance(item, SpecialStitch) and item.span.end:
            yield [at.one(item.span.start), at.one(item.span.start) + len(item.name), "special"]
        elif isinstance(item, Row):
            if item.label is not None and item.label.span.end:
                yield [at.one(item.label.span.start), at.one(item.label.span.end), "label"]
            for count in item.printed:
                yield [at.one(count.span.start), at.one(count.span.end), "count"]
            yield from _stitches(item.body, at)


def _stitches(nodes: Iterable[Node], at: _Places) -> Iterator[list[Any]]:
    for node in nodes:
        if isinstance(node, (Make, Chain)) and node.span.end:
            yield [at.one(node.span.start), at.one(node.span.end), "stitch", node.kind if isinstance(node, Make) else "ch"]
        inner = getattr(node, "nodes", None)
        if inner:
            yield from _stitches(inner, at)
        readings = getattr(node, "readings", None)
        if readings:
            yield from _stitches(readings[0][1], at)


def _word(found: Finding) -> str:
    return WORDS["warning" if severity(found) == "error" and not stops(found) else severity(found)]


def _finding(found: Finding, at: _Places) -> dict[str, Any]:
    fix = found.fix
    return {
        **at.of(found.span), "code": found.code, "name": title(found), "severity": severity(found), "word": _word(found),
        "message": message(found), "hints": list(hints(found)), "sizes": list(found.sizes) if found.sizes else None,
        "fix": None if fix is None else {
            "title": fix.title, "safe": fix.safe,
            "edits": [{"from": at.one(e.span.start), "to": at.one(e.span.end), "text": e.text} for e in fix.edits],
        },
    }
