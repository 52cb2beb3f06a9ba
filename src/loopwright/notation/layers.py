"""Stitches that close a piece which was folded flat: "3 sc through both layers" takes six of its stitches."""

from __future__ import annotations

from loopwright.model.tree import ONE, Either, Make, Node, Num, Repeat
from loopwright.notation.cursor import Cursor

_LAYERS = frozenset("layers layer sides thicknesses thickness edges pieces sets ends halves openings".split())
_FOLDED = frozenset("fold folded folding flatten flattened flattening pinch pinched press pressed flat squash squashed half".split())
_HELD = frozenset("holding hold held against".split())  # of another piece, which is not folded
_CLOSED = frozenset("close closed shut closing together".split())
_SINGLE = frozenset("first last same next".split())  # of a place that holds one stitch of either layer
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
    """Stitches through both layers: each takes one of either, where the piece is folded, two in one place share them; else they lie along one edge."""
    said = not _FOLDED.isdisjoint(cur.lows[:start])
    folded = said or n is not None and _HELD.isdisjoint(cur.lows[:start])
    span = cur.span_from(start)
    where = made.place
    in_each = where is not None and where.quant == "each"
    single = where.n if where is not None and where.quant in _SINGLE else None
    shared = made.n.at(0) == 2 and (in_each or single is not None and single.at(0) == 1)
    n = None if in_each else single if said and made.n.at(0) == 1 and single is not None else n  # "1 dc in each of next 6 sts"
    one = Make(made.kind, made.n if shared else n or ONE, None, made.loop, taking=1 if shared else 2, span=span)
    half: Node = one if n is not None else Repeat((one,), "end", span=span)
    return Either("layers", ((0.0 if folded else 0.4, (half,)), (0.4 if folded else 0.0, (made,))), span)
