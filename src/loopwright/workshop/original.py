"""Back from the reader's English to what the designer wrote: places, words and mends of a pattern in another language."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace

from loopwright.findings import Edit, Finding, Fix
from loopwright.model.cautions import CautionDue
from loopwright.model.report import Report
from loopwright.model.translated import Translated
from loopwright.model.tree import Document, Row, Section
from loopwright.source import Source, Span

_MADE_LABEL = re.compile(r"(?:Rnd|Row|R) (\d+)$")


def line_of(document: Document, source: Source) -> Callable[[int], int]:
    """From an offset in the document's text to the line of what was written, from 1."""
    own = document.translated
    return source.line_of if own is None else lambda at: source.line_of(own.back(Span(at, at + 1)).start)


def in_original(document: Document, report: Report) -> Report:
    """The report with all places, quoted words, labels and mends in the designer's own text; itself for a pattern in English."""
    own = document.translated
    if own is None:
        return report
    labels = _labels(document, own)
    titles = {i.title: own.words(i.span).rstrip(": ") for i in document.items if isinstance(i, Section)}
    rows = tuple(
        replace(r, span=own.back(r.span), label=_label(r.label, r.item, document, labels), section=titles.get(r.section or "", r.section))
        for r in report.rows
    )
    return replace(
        report, language=own.language, rows=rows, findings=findings_in_original(document, report.findings),
        assumptions=tuple(replace(a, span=own.back(a.span)) for a in report.assumptions),
        cautions=None if report.cautions is None else cautions_in_original(document, report.cautions),
    )


def findings_in_original(document: Document, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Findings with their places, quoted words and mends in the designer's own text. A mend that would write English is left out."""
    own = document.translated
    if own is None:
        return tuple(findings)
    labels = _labels(document, own)
    return tuple(
        replace(f, span=own.back(f.span), args=_args(f, own, labels), fix=_fix(f.fix, own) if f.fix else None) for f in findings
    )


def cautions_in_original(document: Document, due: Iterable[CautionDue]) -> tuple[CautionDue, ...]:
    """Cautions with the places of their figures in the designer's own text."""
    own = document.translated
    if own is None:
        return tuple(due)
    return tuple(replace(c, figures=tuple(replace(f, span=own.back(f.span)) for f in c.figures)) for c in due)


def _labels(document: Document, own: Translated) -> dict[str, str]:
    """What each label of the reader's English was written as."""
    return {i.label.text: _written(i, own) for i in document.items if isinstance(i, Row) and i.label is not None and i.label.text}


def _written(row: Row, own: Translated) -> str:
    return own.words(row.label.span if row.label else row.span).strip(" :.-—–)").split("(")[0].strip()


def _label(label: str, item: int, document: Document, labels: Mapping[str, str]) -> str:
    """A row's label as written; of a row in a range the word that is written, and its number ("Rd 6" of "5.-7. Rd")."""
    if label in labels:
        return labels[label]
    row = document.items[item] if item < len(document.items) else None
    made = _MADE_LABEL.match(label)
    if made is None or not isinstance(row, Row) or row.label is None:
        return label
    word = re.search(r"[^\W\d_]{2,}|[^\W\d_]", labels.get(row.label.text, ""))
    return f"{word.group()} {made[1]}" if word else label


def _args(found: Finding, own: Translated, labels: Mapping[str, str]) -> dict[str, object]:
    """The arguments of a message, words of the pattern as they were written."""
    quoted = own.made[found.span.start : found.span.end]
    said = {quoted: own.words(found.span), **labels}
    return {key: said.get(value, value) if isinstance(value, str) else value for key, value in found.args.items()}


def _fix(fix: Fix, own: Translated) -> Fix | None:
    """A mend in the designer's text; None where it would change or put in other than figures and signs."""
    edits = []
    for edit in fix.edits:
        if own.kept(edit.span) and not any(c.isalpha() for c in edit.text):
            edits.append(Edit(own.back(edit.span), edit.text))
            continue
        old, new = own.made[edit.span.start : edit.span.end], edit.text
        while old and new and old[0] == new[0]:
            old, new = old[1:], new[1:]
        start = edit.span.start + len(edit.text) - len(new)
        while old and new and old[-1] == new[-1]:
            old, new = old[:-1], new[:-1]
        span = Span(start, start + len(old))
        if any(c.isalpha() for c in old + new) or not old or not own.kept(span):
            return None
        edits.append(Edit(own.back(span), new))
    return replace(fix, edits=tuple(sorted(edits, key=lambda e: e.span.start)))
