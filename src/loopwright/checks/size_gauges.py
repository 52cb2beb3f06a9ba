"""Counts and measurements of the sizes that ask for a different gauge in each size."""

from __future__ import annotations

import re
from collections.abc import Iterator
from statistics import median

from loopwright.checks.arithmetic import flow
from loopwright.checks.gauges import gauge
from loopwright.checks.lists import PerSize, counts, measurements
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.model.tree import Repeat

_AROUND = re.compile(r"\b(?:around|circumference|chest|bust|round|wide|width|across)\b", re.IGNORECASE)
SPREAD = 0.07  # rates that differ by less are rounding
NEAR = 0.15  # a count belongs to a measurement when its rate is so near to the gauge told


def rule(pattern: Pattern) -> Iterator[Finding]:
    """The rate of stitches over the measurement, size by size, with room for rounding each count to whole repeats."""
    told = gauge(pattern)
    rate = told.stitches / 100 if told and told.stitches else None
    lists = [c for row, c in counts(pattern) if row.label is not None and min(c.values) > 0]
    for measure in measurements(pattern):
        if not _AROUND.search(measure.noun) or min(measure.values) <= 0:
            continue
        counted = _belonging(measure, lists, rate)
        if counted is not None and _differ(counted, measure, _step(pattern)):
            rates = [100 * c / m for c, m in zip(counted.values, measure.values, strict=True)]
            facts = {"low": f"{min(rates):.1f}", "high": f"{max(rates):.1f}"}
            yield Finding("C021", counted.span, facts)


def _belonging(measure: PerSize, lists: list[PerSize], rate: float | None) -> PerSize | None:
    """The count that is worked over the measurement: near the gauge told, or the largest when no gauge is told."""
    if rate is None:
        return max(lists, key=lambda c: c.values, default=None)
    near = [(abs(_rate(c, measure) / rate / share - 1), c) for c in lists for share in (1, 0.5)]  # a back is half of what goes around
    best = min(near, key=lambda p: p[0], default=None)
    return best[1] if best and best[0] < NEAR else None


def _rate(counted: PerSize, measure: PerSize) -> float:
    return median(c / m for c, m in zip(counted.values, measure.values, strict=True))


def _differ(counted: PerSize, measure: PerSize, step: int) -> bool:
    """True when the rates lie apart and no single rate explains all counts as rounded to steps."""
    pairs = list(zip(counted.values, measure.values, strict=True))
    rates = [c / m for c, m in pairs]
    low = max((c - step / 2) / m for c, m in pairs)
    high = min((c + step / 2) / m for c, m in pairs)
    return max(rates) / min(rates) > 1 + SPREAD and low > high


def _step(pattern: Pattern) -> int:
    """The largest whole repeat of any row: counts are rounded to it."""
    steps = [1]
    for _, row in pattern.rows():
        for node in row.body:
            one = flow(node.nodes) if isinstance(node, Repeat) and node.mode in ("end", "left") else None
            steps += [one.takes, one.gives] if one else []
    return max(steps)
