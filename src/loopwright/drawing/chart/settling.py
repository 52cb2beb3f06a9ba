"""Rows settled against each other: each column between what it stands on and what stands on it, so that stitches lean little.

A row laid on the row below alone must push its stitches aside wherever it grows. Here the rows below make room for those above them: block
after block (a row at a time, up and down the piece) the squared ways between feet and tops are brought to their least, each row by
least squares in order (`spread.in_order`).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from loopwright.drawing.chart.spread import in_order, smooth
from loopwright.drawing.chart.stood import Stood

SWEEPS = 12
BESIDE = 0.0  # how much even gaps count against standing over the feet
AGAIN = 1.0  # a pull that overshoots settles sooner
HOME = 0.002  # how much the place where a column stood counts: else what hangs together by nothing drifts apart
SHORT = 22.0  # a stitch so tall pulls with a weight of one


@dataclass(slots=True)
class _Row:
    """A row: how wide its columns are, where they stand and stood, and what each pulls at: columns of rows before it, with a weight."""

    wide: list[float]
    at: list[float]
    feet: list[list[tuple[int, int]]]
    weight: list[float]
    home: list[float] = field(default_factory=list)
    pulled: list[list[tuple[int, int]]] = field(default_factory=list)


def settle(base: Sequence[tuple[int, float, float]], rows: Sequence[Sequence[Stood]], *, fixed: bool = False) -> dict[int, float]:
    """U of every stitch.

    `base`: stitches the first row stands on, each with its u and its room, which stay where they are if `fixed`; `rows`: columns in order
    of u.
    """
    found = [_below(base)] if base else []
    where: dict[int, tuple[int, int]] = {s: (0, k) for k, (s, _, _) in enumerate(sorted(base, key=lambda b: b[1]))}
    for stood in rows:
        found.append(_row(stood, where, len(found)))
    for row in found:
        row.pulled, row.home = [[] for _ in row.at], list(row.at)
    for r, row in enumerate(found):
        for c, feet in enumerate(row.feet):
            for foot in feet:
                found[foot[0]].pulled[foot[1]].append((r, c))
    ways = [*range(len(found)), *range(len(found) - 2, -1, -1)]
    for _ in range(SWEEPS):
        for r in ways:
            if r or not fixed:
                _step(found, r)
    return {s: found[r].at[c] for s, (r, c) in where.items()}


def _below(base: Sequence[tuple[int, float, float]]) -> _Row:
    ordered = sorted(base, key=lambda b: b[1])
    return _Row([w for _, _, w in ordered], [u for _, u, _ in ordered], [[] for _ in ordered], [1.0] * len(ordered))


def _row(stood: Sequence[Stood], where: dict[int, tuple[int, int]], number: int) -> _Row:
    row = _Row([], [], [], [])
    own: dict[int, tuple[int, int]] = {}
    for k, s in enumerate(stood):
        row.wide.append(s.column.wide)
        row.at.append(s.u)
        stands = s.known and s.column.what in ("stitch", "stack") and s.column.place not in ("row-end", "none")
        row.feet.append(list(dict.fromkeys(where[p] for p in s.column.parents if p in where)) if stands else [])
        row.weight.append((SHORT / max(s.tall, SHORT)) ** 2)
        own.update(dict.fromkeys(s.column.stitches, (number, k)))
    where.update(own)
    return row


def _step(rows: Sequence[_Row], r: int) -> None:
    row = rows[r]
    aims, weights = list[float](), list[float]()
    for c, at in enumerate(row.at):
        pull, weight = HOME * (row.home[c] - at), HOME
        if row.feet[c]:
            pull += row.weight[c] * (sum(rows[q].at[k] for q, k in row.feet[c]) / len(row.feet[c]) - at)
            weight += row.weight[c]
        for q, k in row.pulled[c]:
            feet = rows[q].feet[k]
            share = rows[q].weight[k] / len(feet)
            pull += share * (rows[q].at[k] - sum(rows[f].at[j] for f, j in feet) / len(feet))
            weight += share / len(feet)
        aims.append(at + AGAIN * pull / weight)
        weights.append(weight)
    loose = [not row.feet[c] and not row.pulled[c] for c in range(len(aims))]
    _carry(aims, row.at, loose)
    row.at = in_order(smooth(aims, BESIDE), row.wide, weights=weights)


def _carry(aims: list[float], before: Sequence[float], loose: Sequence[bool]) -> None:
    """What nothing holds goes along with what stands beside it."""
    moved = [None if free else a - b for a, b, free in zip(aims, before, loose, strict=True)]
    known = [i for i, m in enumerate(moved) if m is not None]
    if not known:
        return
    near = 0
    for i, free in enumerate(loose):
        while near + 1 < len(known) and abs(known[near + 1] - i) <= abs(known[near] - i):
            near += 1
        if free:
            aims[i] = before[i] + (moved[known[near]] or 0.0)
