"""Places to go back to: what was passed over just before, for crossed stitches."""

from __future__ import annotations

from loopwright.model.tree import ONE, STITCH, Loop, Num, Place
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.things import is_space_number, thing

_PASSED = ("skipped", "missed")


def skipped(cur: Cursor, loop: Loop) -> Place | None:
    """ "skipped st", "first skipped st", "each of 2 skipped sts", "st just skipped": what was passed over just before."""
    mark, k = cur.at, None
    n: Num | None = ONE
    if cur.low() in ("each", "ea", "both"):
        cur.at += 1
        cur.skip("of", "the")
        n = None
    if cur.kind() == "ord":
        k = cur.take().value
    elif cur.low() in ("first", "last"):
        k = 1 if cur.low() == "first" else -1
        cur.at += 1
    elif cur.low() == "next" and (cur.low(1) in _PASSED or cur.kind(1) == "num" and cur.low(2) in _PASSED):
        k = 0  # the next of them
        cur.at += 1
    if cur.kind() in ("num", "blank") and not is_space_number(cur):
        n = cur.number()
    cur.skip("just")
    if cur.low() in _PASSED or cur.low() in ("sk", "skip") and thing_word(cur.low(1)) == "st":
        cur.at += 1
        found = thing(cur)
        if found is not None or cur.kind() in ("sep", "end", "close"):
            return Place("skipped", n, found or STITCH, k, loop=loop)
    elif n is not None and cur.kind() in ("kind", "word") and (found := thing(cur)) is not None:
        cur.skip("that", "you", "was", "were", "just")
        if cur.low() in _PASSED and cur.kind(1) in ("sep", "end", "close", "star"):
            cur.at += 1
            return Place("skipped", n, found, k, loop=loop)
    cur.at = mark
    return None


def each_so(cur: Cursor, loop: Loop, *, under: bool) -> Place | None:
    """ "under each 2 chain": each space of them; "in each following stitch"."""
    if under and cur.kind() == "num" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        return Place("each", None, thing(cur) or STITCH, loop=loop)
    if cur.low() == "following" and thing_word(cur.low(1)) == "st" and not cur.low(1).endswith("s"):
        cur.at += 1
        return Place("each", None, thing(cur) or STITCH, loop=loop)
    return None
