"""Where something stops before the row's end: "sc to 1 st before next marker", "to last st before ch-2 sp", "to the sc3tog"."""

from __future__ import annotations

from loopwright.model.tree import ONE, Num, Thing
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.things import is_space_number, thing

_UP_TO = frozenset("to until till up".split())
_LEAD = frozenset("the next first following second each last".split())
_ENDS = frozenset("end row rnd round ch chain foundation turning previous".split())
_SPACES = ("sp", "loop", "corner")


def stop_before(cur: Cursor) -> tuple[Num | None, Thing] | None:
    """ "to marker", "to 1 st before the sc3tog": how many are left, and before what; nothing taken elsewhere."""
    start = cur.at
    if cur.low() not in _UP_TO:
        return None
    if (spaced := _before_a_space(cur)) is not None:
        return spaced
    cur.skip("up", "to", "until", "till", "the", "you", "reach")
    left = None
    if cur.kind() in ("num", "blank"):
        left = cur.number()
        thing(cur)
        if left is None or cur.low() not in ("before", "prior"):
            cur.at = start
            return None
    before = cur.accept("before", "prior")
    cur.skip("to")
    cur.skip(*_LEAD)
    stop = _stop(cur, before)
    if stop is None or left is not None and not before:
        cur.at = start
        return None
    return left, stop


def _stop(cur: Cursor, before: bool) -> Thing | None:
    if cur.low() in _ENDS:
        return None
    if cur.low() in ("marker", "markers", "m", "marked"):
        marked = cur.take().low == "marked"
        if marked:
            thing(cur)
        return Thing("marker")
    if cur.low() in ("centre", "center", "middle") and before:
        cur.at += 1
        thing(cur)
        return Thing("centre")
    if cur.kind() == "kind" and ("tog" in str(cur.token().value) or cur.token().value in ("dec", "invdec")) or before and cur.kind() == "kind" or before and (thing_word(cur.low()) in ("sp", "corner") or cur.kind() == "num"):  # type: ignore[union-attr]
        return thing(cur)
    return None


def _before_a_space(cur: Cursor) -> tuple[Num, Thing] | None:
    """ "to last st before ch-2 sp", "to 1 st before next corner", "to within 1 st of ch-2 sp": what is left before such a place; nothing taken elsewhere."""
    start = cur.at
    cur.skip("up", "to", "until", "within", "the", "last")
    n = cur.number() if not is_space_number(cur) else None
    found = thing(cur)
    if found is None or cur.low() not in ("before", "of") or n is None and cur.low() == "of":
        cur.at = start
        return None
    cur.at += 1
    cur.skip("the", "next", "following", "center", "centre", "middle")
    stop = thing(cur)
    if stop is None or stop.kind not in _SPACES or found.kind in (*_SPACES, "group"):
        cur.at = start
        return None
    return n or ONE, stop
