"""A fabric's columns as numpy arrays: the tops of its rows in order, which rows close to a ring, which chains are no part of the shape."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import PLACES, ROLES, Fabric, FabricRow

Ints = NDArray[np.int64]
Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]

LIVE = tuple(ROLES.index(r) for r in ("edge", "counts", "assumed"))
BASE, JOIN, PICOT = (ROLES.index(r) for r in ("base", "join", "picot"))
RING, SPACE, UNDERSIDE, CHAIN, ROW_END = (PLACES.index(p) for p in ("ring", "space", "underside", "chain", "row-end"))
# A foundation made longer by the turning chain ends in at most so many chains that nothing is worked into (common practice, no source).
TURNING_CHAINS = 4


@dataclass(slots=True)
class Tops:
    """The fabric as arrays. n stitches, r rows, t places along all tops.

    `row`, `place`, `into`, `many`, `role`: (n,) the fabric's columns. `width_mm`, `height_mm`: (n,). `is_chain`: (n,) a chain that stands
    for no stitch. `live`: (n,) has a place in the shape. `base`: (n,) a chain worked back over. `order`: (t,) the stitches along the tops,
    row after row; row i has order[start[i]:start[i + 1]]. `closed`: (r,) the row is a ring. `stands_on`: {stitch: stitch} where a skipped
    start chain stands on a chain of the foundation. `piece`: (r,).
    """

    row: Ints
    place: Ints
    into: Ints
    many: Ints
    role: Ints
    width_mm: Floats
    height_mm: Floats
    is_chain: Flags
    live: Flags
    base: Flags
    order: Ints
    start: Ints
    closed: Flags
    piece: Ints
    stands_on: dict[int, int]
    extra: dict[int, tuple[int, ...]]

    def top(self, row: int) -> Ints:
        """The stitches along a row's top, in the order of making."""
        return self.order[self.start[row] : self.start[row + 1]]

    def hanging(self) -> tuple[Ints, Ints]:
        """First chains of rows of chains, and the stitches that they hang from: in the air within a piece they go on from the last one."""
        hung: list[int] = []
        held: list[int] = []
        for row in range(1, len(self.closed)):
            own, before = self.top(row), self.top(row - 1)
            if not len(own) or not len(before) or self.piece[row] != self.piece[row - 1] or not self.is_chain[own].all():
                continue
            if (self.into[own] < 0).all() and not self.closed[row]:
                hung.append(int(own[0]))
                held.append(int(before[-1]))
        return np.array(hung, np.int64), np.array(held, np.int64)


def tops_of(fabric: Fabric, sizes: StitchSizes) -> Tops:
    """The arrays of a fabric; empty ones for a fabric without stitches."""
    n, rows = len(fabric), fabric.rows
    kind = _column(fabric.kind, np.uint8)
    for stitch, stood in fabric.counts_as.items():
        kind[stitch] = stood
    role = _column(fabric.role, np.uint8)
    widths = np.array([_positive(sizes.width(k), sizes.width_mm) for k in fabric.kinds] or [1.0])
    heights = np.array([max(0.0, sizes.height(k)) for k in fabric.kinds] or [1.0])
    chains = np.array([k == "ch" for k in fabric.kinds] or [False])
    live = np.isin(role, LIVE)
    found = Tops(
        _column(fabric.row, np.intc), _column(fabric.place, np.uint8), _column(fabric.into, np.intc), _column(fabric.many, np.int16), role,
        widths[kind], heights[kind], chains[kind], live, role == BASE, np.zeros(0, np.int64), np.zeros(len(rows) + 1, np.int64),
        np.zeros(len(rows), bool), np.array([r.piece for r in rows], np.int64), {}, fabric.extra,
    )
    if n:
        used = _used(found)
        top_row = _borrowed(found, rows, used)
        _trim(found, rows, used)
        _lay_out(found, top_row, len(rows))
        _close(found, rows)
        _gather(found, rows)
    return found


def _column(values: object, kind: type) -> Ints:
    data = np.frombuffer(values, dtype=kind) if len(values) else np.zeros(0, kind)  # type: ignore[arg-type, call-overload]
    return np.asarray(data, dtype=np.int64).copy()  # a copy: the fabric's columns must stay free to grow


def _positive(value: float, otherwise: float) -> float:
    return value if value > 0 and np.isfinite(value) else otherwise


def _used(tops: Tops) -> Flags:
    """Which stitches something is worked into: the ends of a run of parents are enough for a foundation."""
    used = np.zeros(len(tops.row), bool)
    has = tops.into >= 0
    last = np.clip(tops.into + tops.many, 0, len(used) - 1)
    used[tops.into[has]] = True
    used[last[has]] = True
    for more in tops.extra.values():
        used[list(more)] = True
    return used


def _borrowed(tops: Tops, rows: list[FabricRow], used: Flags) -> Ints:
    """Row whose top each stitch belongs to: the start chains skipped in a foundation belong to the row above and stand on its end."""
    top_row = tops.row.copy()
    for i, r in enumerate(rows):
        for top in r.borrowed:
            if not 0 <= top < len(top_row):
                continue
            top_row[top] = i
            tops.live[top] = used[top] = True
            begun = [s for s in range(r.start, min(r.end, r.start + 8)) if tops.into[s] >= 0]
            first = int(tops.into[begun[0]]) if begun else top
            between = range(min(first, top) + 1, max(first, top))
            if tops.row[first] != tops.row[top] or len(between) > 2 * TURNING_CHAINS:
                continue
            tops.live[list(between)] = False
            if between:
                foot = between[0] if top > first else between[-1]
                tops.live[foot] = used[foot] = True
                tops.stands_on[top] = foot
            else:
                tops.stands_on[top] = first
    return top_row


def _trim(tops: Tops, rows: list[FabricRow], used: Flags) -> None:
    """The last chains of a foundation that only turned: no part of the shape."""
    for r in rows:
        if r.end <= r.start or not tops.is_chain[r.start] or tops.into[r.start] >= 0:
            continue
        if not (tops.is_chain[r.start : r.end].all() and (tops.into[r.start : r.end] < 0).all()):
            continue
        taken = np.flatnonzero(used[r.start : r.end])
        if len(taken) and r.end - r.start - 1 - taken[-1] <= TURNING_CHAINS:
            tops.live[r.start + taken[-1] + 1 : r.end] = False


def _lay_out(tops: Tops, top_row: Ints, rows: int) -> None:
    at = np.flatnonzero(tops.live)
    tops.order = at[np.lexsort((at, top_row[at]))]
    tops.start = np.searchsorted(top_row[tops.order], np.arange(rows + 1)).astype(np.int64)


def _close(tops: Tops, rows: list[FabricRow]) -> None:
    """Which rows are rings: joined ones, spirals, chains joined to a ring that a round goes around."""
    last_of: dict[int, int] = {}
    for i, r in enumerate(rows):
        top = tops.top(i)
        if not len(top):
            continue
        below = last_of.get(r.piece, -1)
        air = bool((tops.into[top] < 0).all() and (tops.place[top] != RING).all())
        tops.closed[i] = _is_ring(tops, r, top, below, in_air=air)
        if tops.closed[i]:
            _turn_to_group(tops, i)
            if below >= 0 and _chain_ring(tops, below, i):
                tops.closed[below] = True
        last_of[r.piece] = i


def _is_ring(tops: Tops, row: FabricRow, top: Ints, below: int, *, in_air: bool) -> bool:
    if len(top) < 2:
        return False
    word = row.label.split(" ", 1)[0].lower()
    along = int((tops.place[top] == ROW_END).sum()) * 2 > len(top)
    if row.joined and not (in_air and below < 0):
        return True
    if word in ("row", "rows") or along or (in_air and below < 0 and not word.startswith("r")):
        return False
    if word.startswith(("rnd", "round")) or "rnd" in row.label.lower() or "round" in row.label.lower():
        return True
    return not row.turned and not row.turned_before and below >= 0 and bool(tops.closed[below])


def _chain_ring(tops: Tops, below: int, row: int) -> bool:
    """Whether a foundation was closed before a round was worked into it: all around, and not along both its sides."""
    chain, top = tops.top(below), tops.top(row)
    if not (tops.is_chain[chain].all() and (tops.into[chain] < 0).all()) or (tops.place[top] == UNDERSIDE).any():
        return False
    parents = tops.into[top]
    return bool(np.isin(parents, chain).sum() * 3 > 2 * len(top))


def _turn_to_group(tops: Tops, row: int) -> None:
    """A round may begin in the middle of a group that shares a parent: its order is turned so that the group stands together."""
    top = tops.top(row)
    solid = np.flatnonzero(tops.into[top] >= 0)
    if not len(solid) or tops.place[top[solid[0]]] == RING:
        return
    parents = tops.into[top[solid]]
    other = np.flatnonzero(parents != parents[0])
    if not len(other) or other[-1] == len(parents) - 1:
        return
    begin = solid[other[-1] + 1]
    tops.order[tops.start[row] : tops.start[row + 1]] = np.roll(top, -begin)


def _gather(tops: Tops, rows: list[FabricRow]) -> None:
    """A round that no words of its own made ("repeat until 8 sts remain") stands on the round before, over the rounds between."""
    last: dict[int, list[int]] = {}
    for i, r in enumerate(rows):
        top = tops.top(i)
        if not len(top):
            continue
        before = last.setdefault(r.piece, [])
        alone = bool((tops.into[top] < 0).all()) and not tops.is_chain[top].all() and not (tops.place[top] == RING).any()
        if alone and before and tops.closed[i] and tops.closed[before[-1]]:
            below = tops.top(before[-1])
            ends = np.arange(len(top) + 1) * len(below) // len(top)
            first = np.minimum(ends[:-1], len(below) - 1)
            tops.into[top] = below[first]
            tops.many[top] = np.maximum(ends[1:] - 1 - first, 0)
            tops.place[top] = 0
            grew = len(tops.top(before[-2])) - len(below) if len(before) > 1 else 0
            between = (len(below) - len(top)) / grew if grew > 0 and len(below) > len(top) else 1.0
            tops.height_mm[top] *= max(1.0, between)
        before.append(i)
