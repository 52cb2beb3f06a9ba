"""The design's text: her pattern with blanks in it, a heading for all sizes, one Fit sentence per blank."""

from __future__ import annotations

import re
from collections.abc import Sequence

from loopwright.findings import Edit
from loopwright.grading.propose.blanks import Proposed
from loopwright.model.tree import Document, HeadLine, Row, Section
from loopwright.record import record
from loopwright.source import Span

_AS_WORKED = re.compile(r",?\s*(?:as (?:first )?worked|in one size)\s*$", re.IGNORECASE)


@record
class Head:
    """What the heading of the design says: its sizes, the one that was worked, another gauge in words."""

    sizes: tuple[str, ...]
    worked_in: str
    gauge: str | None = None


def design_text(document: Document, edits: Sequence[Edit], proposed: Sequence[Proposed], head: Head) -> str:
    """The whole text of the design."""
    changes = [*edits, *_heading(document, head, [e.text for e in edits])]
    at = _fit_at(document)
    heads = any(isinstance(i, HeadLine) for i in document.items)
    above = "\n" if heads and not document.text[:at].endswith("\n\n") else ""
    changes.append(Edit(Span(at, at), above + _fit(proposed)))
    return applied(document.text, changes)


def applied(text: str, edits: Sequence[Edit]) -> str:
    """The text with its edits made; an insertion comes before what is replaced at the same place, and after earlier insertions there."""
    order = sorted(range(len(edits)), key=lambda i: (edits[i].span.start, edits[i].span.end, i), reverse=True)
    for e in (edits[i] for i in order):
        text = text[: e.span.start] + e.text + text[e.span.end :]
    return text


def _fit(proposed: Sequence[Proposed]) -> str:
    lines = [f"{{{p.blank.name}}}: {p.reasons[0].sentence}" for p in proposed if p.reasons]
    return "\n".join(["Fit", *lines]) + "\n\n"


def _fit_at(document: Document) -> int:
    """Before the first section or row."""
    first = next((i.span.start for i in document.items if isinstance(i, (Section, Row))), len(document.text))
    return document.text.rfind("\n", 0, first) + 1


def _heading(document: Document, head: Head, texts: Sequence[str]) -> list[Edit]:
    """Sizes and the size that was worked; gauge and terms where the pattern does not tell them; "inc" explained; the title."""
    heads = {i.name: i for i in document.items if isinstance(i, HeadLine)}
    edits, gauge = [], head.gauge
    told = f"Sizes: {', '.join(head.sizes)}" + ("" if "worked in" in heads else f"\nWorked in: {head.worked_in}")
    own = heads.get("sizes") or heads.get("size")
    new = [] if own else [told]
    if own:
        edits.append(Edit(own.span, told))
    if gauge and not (heads.keys() & {"gauge", "tension"}):
        new.append(f"{'Tension' if document.terms == 'uk' else 'Gauge'}: {gauge}")
    elif gauge:
        line = heads.get("gauge") or heads["tension"]
        edits.append(Edit(line.value_span, gauge))
    if "terms" not in heads:
        new.append(f"Terms: {document.terms.upper() if document.terms != 'old' else 'old'}")
    if new and heads:
        at = min(h.span.start for h in heads.values())
        edits.append(Edit(Span(at, at), "\n".join(new) + "\n"))
    elif new:
        at = _fit_at(document)
        above = "\n" if at and not document.text[:at].endswith("\n\n") else ""
        edits.append(Edit(Span(at, at), above + "\n".join(new) + "\n\n"))
    short = heads.get("abbreviations")
    if short and not re.search(r"\binc\b", short.value) and re.search(r"\binc\b", " ".join(texts)):
        edits.append(Edit(Span(short.span.end, short.span.end), ", inc = increase"))
    title = _AS_WORKED.search(document.title or "")
    if title and document.title and document.text.startswith(document.title):
        edits.append(Edit(Span(title.start(), title.end()), ""))
    return edits
