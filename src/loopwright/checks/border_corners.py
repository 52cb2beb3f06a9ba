"""Borders whose rounds gain too few or too many stitches to turn four corners flat."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, says, toy, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice. Sides that are to stand up are left alone."""
    span = place(pattern, fault)
    if fault.what != "border" or span is None or toy(pattern) or says("standing", words(pattern, fault)):
        return
    yield Finding("M005", span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
