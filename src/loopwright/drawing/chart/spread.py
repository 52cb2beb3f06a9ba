"""Where the columns of a row stand along it: over their feet, evenly, in order, none nearer than it is wide.

Least squares on a line: a tridiagonal system pulls every column to its foot and every gap to its neighbours', then pool-adjacent-violators
(the isotonic regression of Ayer and others, 1955) gives the nearest places in order with room for each.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise


def smooth(aims: Sequence[float], pull: float) -> list[float]:
    """Places that stay near `aims` with even gaps; the ends are free.

    Minimises the squared way from the aims plus `pull` times the squared change of the way between neighbours.
    """
    n = len(aims)
    if n < 3 or pull <= 0:
        return list(aims)
    even = [aims[0] + (aims[-1] - aims[0]) * i / (n - 1) for i in range(n)]
    off = [a - e for a, e in zip(aims, even, strict=True)]
    upper, right = [0.0] * n, [0.0] * n
    for i in range(n):
        ends = 1 if i in (0, n - 1) else 2
        under = -pull * upper[i - 1] if i else 0.0
        pivot = 1 + ends * pull + under
        upper[i] = pull / pivot
        right[i] = (off[i] + (pull * right[i - 1] if i else 0.0)) / pivot
    for i in range(n - 2, -1, -1):
        right[i] += upper[i] * right[i + 1]
    return [e + r for e, r in zip(even, right, strict=True)]


def in_order(
    aims: Sequence[float], wide: Sequence[float], low: float | None = None, high: float | None = None, weights: Sequence[float] = (),
) -> list[float]:
    """The places nearest to `aims` (least squares, by `weights`) with room for each column, between `low` and `high` if they fit."""
    offsets, at = [], 0.0
    for i, w in enumerate(wide):
        at += (wide[i - 1] + w) / 2 if i else 0.0
        offsets.append(at)
    blocks: list[list[float]] = []  # weighted sum, weight, count
    for aim, offset, weight in zip(aims, offsets, weights or [1.0] * len(aims), strict=True):
        blocks.append([weight * (aim - offset), weight, 1])
        while len(blocks) > 1 and blocks[-2][0] * blocks[-1][1] > blocks[-1][0] * blocks[-2][1]:
            last = blocks.pop()
            for k, more in enumerate(last):
                blocks[-1][k] += more
    least = None if low is None else low + wide[0] / 2
    most = None if high is None else high - wide[-1] / 2 - offsets[-1]
    found: list[float] = []
    for total, heavy, count in blocks:
        value = total / heavy
        if most is not None:
            value = min(value, most)
        if least is not None:
            value = max(value, least)
        found.extend([value] * int(count))
    return [v + o for v, o in zip(found, offsets, strict=True)]


def filled(known: Sequence[float | None], wide: Sequence[float], otherwise: float) -> list[float]:
    """Aims for columns that stand on nothing: evenly between their neighbours, side by side at the ends, from `otherwise` if all are so."""
    n = len(known)
    found = list(known)
    sure = [i for i, k in enumerate(known) if k is not None]
    if not sure:
        found, sure = [otherwise] + [None] * (n - 1), [0]
    for i in range(sure[0] - 1, -1, -1):
        found[i] = (found[i + 1] or 0.0) - (wide[i] + wide[i + 1]) / 2
    for i in range(sure[-1] + 1, n):
        found[i] = (found[i - 1] or 0.0) + (wide[i] + wide[i - 1]) / 2
    for a, b in pairwise(sure):
        if b - a > 1:
            _between(found, wide, a, b)
    return [f or 0.0 for f in found]


def _between(found: list[float | None], wide: Sequence[float], a: int, b: int) -> None:
    start, end = found[a] or 0.0, found[b] or 0.0
    whole = sum((wide[i] + wide[i + 1]) / 2 for i in range(a, b))
    at = 0.0
    for i in range(a + 1, b):
        at += (wide[i - 1] + wide[i]) / 2
        found[i] = start + (end - start) * at / whole
