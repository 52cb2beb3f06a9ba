"""Cautions that a pattern brings up and does not tell: ties, small parts, sleep, toys, heat."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.pattern import Pattern
from loopwright.findings import Edit, Finding, Fix
from loopwright.model.cautions import CautionDue
from loopwright.source import Span
from loopwright.trade.cautions import cautions_due

_GRAVE = ("cord", "toy")


def due(pattern: Pattern) -> tuple[CautionDue, ...]:
    """The cautions that are due, those of the report where somebody looked for them with the gauge in hand."""
    found = pattern.report.cautions
    return cautions_due(pattern.document) if found is None else found


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Whole patterns only. One finding for all that is not told; what the heading hides is told by another rule."""
    if not pattern.whole:
        return
    shown = [c for c in due(pattern) if not c.hidden]
    untold = [c for c in shown if not c.told]
    if not untold:
        return
    why = dict.fromkeys(w for c in untold for w in c.why.split(", ") if w)
    facts = {"why": " and ".join(why), "names": ", ".join(c.name for c in untold)}
    hints = (*(f"{c.name}: {c.text}" for c in untold), untold[0].defer)
    sizes = None if any(not c.sizes for c in untold) else tuple(s for s in pattern.document.sizes if any(s in c.sizes for c in untold))
    code = "C060" if any(c.told for c in shown) else "C033"
    grave = any(c.sharp or code == "C033" and (not c.weak or c.topic in _GRAVE) for c in untold)
    yield Finding(code, _place(pattern, untold[0]), facts, hints, sizes, _fix(pattern, untold), "warning" if grave else "advice")


def _place(pattern: Pattern, caution: CautionDue) -> Span:
    """The word that brought it up; the beginning of the text where it stands otherwise."""
    text = pattern.document.text
    for word in caution.why.split(", "):
        m = re.search(rf"\b{re.escape(word)}\b", text, re.IGNORECASE) if word else None
        if m:
            return Span(m.start(), m.end())
    return Span(0, min(1, len(text)))


def _fix(pattern: Pattern, untold: Sequence[CautionDue]) -> Fix | None:
    """Notes of the cautions at the end of the heading. Not a safe mend: the designer words her own notes."""
    told = [t for t in pattern.told if t.span.end <= pattern.body_start()]
    if not told:
        return None
    end = told[-1].span.end
    lines = "".join(f"\nNotes: {c.text}" for c in untold) + f"\nNotes: {untold[0].defer}"
    return Fix("add the cautions to the notes", (Edit(Span(end, end), lines),), safe=False)
