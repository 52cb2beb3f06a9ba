"""Numbers per size that go up from size to size, but for one."""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from loopwright.checks.lists import PerSize, counts, measurements
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding

SMALL = 20  # rests and repeats below this go up and down by right


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Three sizes or more; only where the rest rise without a break once one number is left out, and it is off by more than a twentieth."""
    if len(pattern.document.sizes) < 3:
        return
    lists = [p for _, p in counts(pattern) if min(p.values) >= SMALL]
    seen: set[tuple[float, ...]] = set()
    for one in [*measurements(pattern), *lists]:
        if one.values in seen:
            continue
        seen.add(one.values)
        at = _odd_one(one)
        if at is not None:
            size = pattern.document.sizes[at]
            yield Finding("C020", one.span, {"size": size, "number": f"{_number(one, at)}"}, sizes=(size,))


def _odd_one(one: PerSize) -> int | None:
    values = one.values
    if _rises(values) or len(values) < 3:
        return None
    fits = [i for i in range(len(values)) if _rises(values[:i] + values[i + 1 :])]
    if len(fits) == 2 and fits[1] == fits[0] + 1:  # either of two neighbours: the one further from the line between its own
        fits = [max(fits, key=lambda i: _off(values, i))]
    return fits[0] if len(fits) == 1 and _off(values, fits[0]) > 0.05 else None


def _rises(values: tuple[float, ...]) -> bool:
    return all(a <= b for a, b in itertools.pairwise(values))


def _off(values: tuple[float, ...], at: int) -> float:
    """How far a number lies from the middle of its neighbours, as a share of it."""
    around = [values[i] for i in (at - 1, at + 1) if 0 <= i < len(values)]
    middle = sum(around) / len(around)
    return abs(values[at] - middle) / middle if middle else 0.0


def _number(one: PerSize, at: int) -> float | int:
    value = one.values[at]
    return int(value) if value == int(value) else value
