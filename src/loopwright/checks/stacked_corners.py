"""Increases one above the other that make a round disc a polygon."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, says, toy, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice, for pieces that end as a disc; a piece that is to have corners is left alone."""
    span = place(pattern, fault)
    if fault.what != "corners" or span is None or toy(pattern) or says("cornered", words(pattern, fault)):
        return
    if says("spread", words(pattern, fault, title=False)):  # the places are left to the maker
        return
    yield Finding("M003", span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
