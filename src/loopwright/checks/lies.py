"""The rules over what was measured of a fabric: each takes the pattern and the faults, and says which of them matter. Not a rule.

A fault is what the stitches show; whether it is meant, the words tell: a toy's ear is to cup, a frill is to ruffle. Where they leave it
open, nothing is said.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence

from loopwright.checks import (
    border_corners,
    disc_lies,
    edging_count,
    ripple_balance,
    row_end_rate,
    slanting_sides,
    stacked_corners,
)
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.lies import LieFault

LIE_RULES: tuple[Callable[[Pattern, LieFault], Iterable[Finding]], ...] = (
    border_corners.rule,
    disc_lies.rule,
    edging_count.rule,
    ripple_balance.rule,
    row_end_rate.rule,
    slanting_sides.rule,
    stacked_corners.rule,
)


def lie_findings(pattern: Pattern, faults: Sequence[LieFault]) -> Iterator[Finding]:
    """The findings of all these rules. What two pieces worked alike have both is said once."""
    told: set[tuple[str, tuple[tuple[str, object], ...]]] = set()
    for fault in faults:
        for rule in LIE_RULES:
            for found in rule(pattern, fault):
                key = found.code, tuple((k, v) for k, v in found.args.items() if k != "label")
                if key not in told:
                    told.add(key)
                    yield found


__all__ = ["LIE_RULES", "lie_findings"]
