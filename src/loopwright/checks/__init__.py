"""The technical editor's work: rules over a document and its report, one rule, one file. The worker's own findings are not repeated."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from loopwright.checks import materials, repeat_divides, repeat_times, row_numbers, sizes_unequal
from loopwright.checks.pattern import Pattern, look
from loopwright.findings import Finding
from loopwright.model.report import Report
from loopwright.model.tree import Document

RULES: tuple[Callable[[Pattern], Iterable[Finding]], ...] = (
    repeat_divides.rule, repeat_times.rule, row_numbers.rule, sizes_unequal.rule, materials.rule,
)


def check(document: Document, report: Report) -> tuple[Finding, ...]:
    """The findings of all rules, in the order of the text. Accepts any document and its report; never raises for what they hold."""
    pattern = look(document, report)
    found = [f for rule in RULES for f in rule(pattern)]
    return tuple(sorted(found, key=lambda f: (f.span.start, f.code)))


__all__ = ["RULES", "check"]
