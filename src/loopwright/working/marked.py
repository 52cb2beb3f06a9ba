"""Markers: where they are placed, carried up from row to row, and looked for."""

from __future__ import annotations

from loopwright.working.kinds import CHAIN
from loopwright.working.run import Run
from loopwright.working.view import Slot

Markers = tuple[tuple[int, bool], ...]


def carried(run: Run) -> Markers:
    """The markers of the row that was made: those it places itself, else those below it where they have come to stand."""
    placed = tuple(dict.fromkeys((max(0, n.at - (n.word == "st")), n.word == "st") for n in run.tape if n.what == "marker" and n.at <= len(run.out)))
    below = run.view.markers
    if not below or run.named.get("no-markers") or len(placed) >= len(below):
        return placed
    moved = {m for at, inside in below if (m := _above(run, at, inside)) is not None}
    return tuple(sorted(moved | set(placed)))


def _above(run: Run, at: int, inside: bool) -> tuple[int, bool] | None:
    """Where a marker of the row below stands in this one; None where nothing is worked into its stitch."""
    n = max(1, len(run.view.items))
    if inside:
        there = [i for i, slot in enumerate(run.into) if slot is not None and slot.start >= 0 and slot.start % n <= at < slot.start % n + max(1, slot.end - slot.start)]
        return ((there[0] + there[-1]) // 2, True) if there else None
    first = next((i for i, slot in enumerate(run.into) if slot is not None and slot.start >= at), len(run.out))
    while first and run.out[first - 1] == CHAIN and (first < 2 or run.out[first - 2] == CHAIN):
        first -= 1
    return first, False


def next_marker(run: Run, pos: int) -> Slot | None:
    """The next marker from a place on that has not been come to before in this row; None where there is none."""
    done = run.named.get("marker", -1)
    for at, inside in run.view.markers:
        if at >= pos and at > done and at < run.end + (not inside):
            return Slot(at, at + inside)
    return None
