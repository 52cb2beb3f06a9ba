"""Stitches worked into a row further down: which one it is, straight below the one of the row right below that stands in its place."""

from __future__ import annotations

from loopwright.model.fabric import Fabric

MOST = 12  # rows of chains above a stitch that was passed over


def straight_down(fabric: Fabric, stitch: int, rows: int) -> int:
    """The stitch so many rows below another; below a chain the one that the chains in its place passed over, however many rows there are."""
    if stitch >= 0 and _is_chain(fabric, stitch):
        return _passed(fabric, stitch)
    for _ in range(rows):
        below = fabric.into[stitch] if stitch >= 0 else -1
        stitch = below if below >= 0 else stitch
    return stitch


def _passed(fabric: Fabric, chain: int) -> int:
    """What lies under a chain between two stitches: what stands between those that they were worked into."""
    at = chain
    for _ in range(MOST):
        if not _is_chain(fabric, at):
            return at
        before, behind = at - 1, at + 1
        while before >= 0 and _is_chain(fabric, before):
            before -= 1
        while behind < len(fabric.kind) and _is_chain(fabric, behind):
            behind += 1
        if before < 0 or behind >= len(fabric.kind):
            break
        first, last = fabric.into[before], fabric.into[behind]
        if min(first, last) < 0 or abs(last - first) < 2:
            break  # nothing was passed over
        at = (first + last) // 2
    return chain


def _is_chain(fabric: Fabric, stitch: int) -> bool:
    return fabric.kinds[fabric.kind[stitch]] == "ch"
