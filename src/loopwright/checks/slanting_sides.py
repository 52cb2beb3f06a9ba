"""Flat pieces whose sides lean because only one end of the rows is shaped, or both ends against each other."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, reports, says, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice. A piece that says what it is shaped for is left alone, and one whose printed counts tell that it widens or narrows."""
    span = place(pattern, fault)
    if fault.what != "slant" or span is None or says("slanting", words(pattern, fault)):
        return
    if not fault.facts.get("both") and any(r.agrees for r in reports(pattern, fault)):
        return
    facts = {k: v for k, v in fault.facts.items() if k != "both"}
    yield Finding("M007", span, {"label": label(pattern, fault), **facts}, (fault.mend,))
