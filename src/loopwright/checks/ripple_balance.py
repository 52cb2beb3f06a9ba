"""Ripples whose peaks gain more, or less, than their valleys lose."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, reports, says, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """A warning, unless printed counts tell the change: then it is meant."""
    span = place(pattern, fault)
    if fault.what != "ripple" or span is None or says("widening", words(pattern, fault)):
        return
    if any(r.agrees for r in reports(pattern, fault)):
        return
    yield Finding("M006", span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
