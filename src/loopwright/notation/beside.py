"""What a space lies between: "in next sp between groups", "in sp between each dc", "between first and second st"."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import Place, Thing
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.things import thing

_TURNING = ("tch", "t-ch", "turning")
_WHICH_TWO = ("the", "first", "next", "last")


def beside_told(cur: Cursor) -> bool:
    """Whether "between" goes on with what a space lies between: groups, stitches, "first 2 hdc", "first and second st"."""
    at = 1
    while cur.low(at) in (*_WHICH_TWO, "each"):
        at += 1
    if cur.kind(at) == "num":
        at += 1 + (cur.low(at + 1) == "-")
    if cur.low(at) == "and" and (cur.kind(at + 1) == "ord" or cur.low(at + 1) in ("second", "next")):
        at += 2
    return cur.kind(at) == "kind" or thing_word(cur.low(at)) in ("group", "st") or cur.low(at) in _TURNING


def beside(cur: Cursor, found: Place) -> Place:
    """The space with what it lies between, "between" and the words behind it taken."""
    apart = cur.low() == "between"
    cur.at += 1
    each = cur.accept("each")
    cur.skip(*_WHICH_TWO)
    cur.number()
    cur.skip("-")
    if cur.low() == "and":
        cur.at += 2  # "between first and second st"
    what = thing(cur)
    if thing_word(cur.low()) == "group":
        cur.at += 1  # "between 2-tr pairs"
        what = None
    cur.skip("'s", "’s")
    if what is not None and what.kind == "tch" or _two_sorts(cur):
        return replace(found, thing=Thing("sp"))
    found = replace(found, quant="each", n=None) if each and found.quant == "next" else found
    if what is not None and what.kind in ("sc", "hdc", "dc", "tr", "dtr", "popcorn", "cluster", "puff", "bobble"):
        return replace(found, relation="between", of=what)
    return replace(found, thing=Thing("gap", None if apart else 0)) if found.thing.length is None else found


def _two_sorts(cur: Cursor) -> bool:
    """ "between first dc and next group": what stands on the other side, taken."""
    start = cur.at
    if cur.accept("and"):
        cur.skip(*_WHICH_TWO)
        other = thing(cur)
        if other is not None and other.kind not in ("sp", "ch"):
            return True
    cur.at = start
    return False
