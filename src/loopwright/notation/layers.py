"""Stitches that close a piece which was folded flat: "3 sc through both layers" takes six of its stitches."""

from __future__ import annotations

from loopwright.model.tree import ONE, Either, Make, Node, Num, Repeat
from loopwright.notation.cursor import Cursor

_LAYERS = frozenset("layers layer sides thicknesses thickness edges pieces sets ends halves openings".split())
_FOLDED = frozenset("fold folded folding flatten flattened flattening pinch pinched press pressed flat squash squashed half".split())
_CLOSED = frozenset("close closed shut closing together".split())
_FURTHER = 8
THROUGH = frozenset("going work working crocheting inserting through thru".split())
"""Words that such a phrase begins with."""


def through_both(cur: Cursor) -> bool:
    """ "through both layers", "going through both sides of the opening"; takes nothing where it is not said."""
    start = cur.at
    cur.skip(",", *THROUGH)
    through = cur.low(-1) in ("through", "thru")
    if not through and not cur.accept("into", "in") or not cur.accept("both") and not (through and cur.low() in ("the", "two", "all")):
        cur.at = start
        return False
    cur.skip("the", "two", "all", "top", "remaining")
    if cur.low() not in _LAYERS:
        cur.at = start
        return False
    cur.at += 1
    if cur.low() == "of":
        while cur.kind() in ("word", "kind") and cur.low() not in ("across", "to", "and"):
            cur.at += 1
    return True


def closes(cur: Cursor, n: Num | None) -> bool:
    """Whether so many stitches close a piece that the row's words fold flat before: "fold flat, sc 4 across top to close"."""
    if n is None or _FOLDED.isdisjoint(cur.lows[: cur.at]):
        return False
    return any(cur.low(i) in _CLOSED for i in range(-_FURTHER, _FURTHER) if cur.at + i >= 0)


def layered(cur: Cursor, made: Make, n: Num | None, start: int) -> Node:
    """Stitches through both layers: each takes one of either, where the piece is folded; else they lie along one edge."""
    folded = n is not None or not _FOLDED.isdisjoint(cur.lows[:start])
    span = cur.span_from(start)
    one = Make(made.kind, n or ONE, None, made.loop, taking=2, span=span)
    half: Node = one if n is not None else Repeat((one,), "end", span=span)
    return Either("layers", ((0.0 if folded else 0.4, (half,)), (0.4 if folded else 0.0, (made,))), span)
