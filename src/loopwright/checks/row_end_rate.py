"""Stitches along row ends that make the edge wave or pull in."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, says, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice. An edge that is to draw in or to flare is left alone."""
    span = place(pattern, fault)
    if fault.what != "row ends" or span is None or says("drawn", words(pattern, fault)):
        return
    yield Finding("M004", span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
