"""Ties, loops and holes of things for small children whose length lies where a limit says it must not."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.cautions import due
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.cautions import CautionDue, CautionFigure
from loopwright.trade.cautions import in_words

MOST = 3  # kinds of holes told at once


def rule(pattern: Pattern) -> Iterator[Finding]:
    """One finding for each cord, with all its sizes, and one for all holes. A limit known from memory alone advises.

    Cords of a blank are left to grading, which tells them.
    """
    for caution in due(pattern):
        found: dict[tuple[int, int], list[CautionFigure]] = {}
        for figure in caution.figures:
            if figure.over and "{" not in pattern.document.text[figure.span.start : figure.span.end]:
                place = (0, 0) if figure.what == "opening" else (figure.span.start, figure.span.end)
                found.setdefault(place, []).append(figure)
        for figures in found.values():
            yield _finding(pattern, caution, figures)


def _finding(pattern: Pattern, caution: CautionDue, figures: list[CautionFigure]) -> Finding:
    worst = max(figures, key=lambda f: f.by_mm)
    sizes = tuple(s for s in pattern.document.sizes if any(f.size == s for f in figures))
    told = list(dict.fromkeys(in_words(f) for f in sorted(figures, key=lambda f: -f.by_mm)))[:MOST]
    found = "; ".join(told) if worst.what == "opening" else in_words(worst)
    facts = {"what": worst.what, "found": found, "limit": caution.limit, "from_memory": "from memory" if caution.weak else ""}
    named = sizes if len(pattern.document.sizes) > 1 else None
    return Finding("C061", worst.span, facts, (caution.text, caution.defer), named, severity="advice" if caution.weak else None)
