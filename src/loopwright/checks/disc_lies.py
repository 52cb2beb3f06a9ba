"""Discs, crowns, ovals and motifs that cup or ruffle at the pattern's own gauge, where they are to lie flat."""

from __future__ import annotations

from collections.abc import Iterator

from loopwright.checks.meant import label, place, says, toy, words
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault

MEANT = 0.25  # a piece further from flat than this is to be so, unless its name says that it is flat


def rule(pattern: Pattern, fault: LieFault) -> Iterator[Finding]:
    """Advice. A crown that goes on as a hat is to turn down, so only its ruffles are told; nothing of toys, frills and bowls."""
    span = place(pattern, fault)
    if fault.what not in ("cups", "ruffles") or span is None or toy(pattern):
        return
    said = words(pattern, fault)
    flat = says("flat", said)
    if fault.what == "cups" and (says("cupped", said) and not (flat and not fault.follows) or fault.follows and not says("bottoms", said)):
        return
    if fault.what == "ruffles" and says("full", said) or abs(fault.off) > MEANT and not flat:
        return
    code = "M001" if fault.what == "cups" else "M002"
    yield Finding(code, span, {"label": label(pattern, fault), **fault.facts}, (fault.mend,))
