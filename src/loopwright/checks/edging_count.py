"""An edging with far fewer or more stitches than the edge that it is worked on."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, says, toy, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice, for stitches worked "evenly". An edge that is to draw in or to flare is left alone."""
    span = place(pattern, fault)
    said = words(pattern, fault)
    if fault.what != "edging" or span is None or toy(pattern) or says("drawn", said) or says("shaped", said):
        return
    if not says("spread", words(pattern, fault, title=False)):
        return
    yield Finding("M008", span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
