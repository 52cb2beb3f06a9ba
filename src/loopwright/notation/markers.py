"""Markers placed among the stitches, moved on and skipped to."""

from __future__ import annotations

from loopwright.model.tree import ONE, Group, Make, Mark, Node, Num, Skip, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.things import thing

_PLACES = frozenset("place put insert attach add".split())
_MOVES = frozenset("slip sl move moving moved slipping".split())
MARKER_VERBS = _PLACES | _MOVES | frozenset("pm sm slm rm remove removing".split())
LONGEST = 8
MOST = 10_000


def marker(cur: Cursor) -> Node | None:
    """ "pm", "place a marker", "place marker in last st made", "slip marker"; nothing taken elsewhere."""
    start, low = cur.at, cur.low()
    if low in ("sm", "slm", "rm") and cur.kind(1) in ("sep", "end", "close", "word"):
        cur.at += 1
        return Mark("note", span=cur.span_from(start))
    if low == "pm":
        cur.at += 1
        return _placed(cur, start)
    words = 1
    while words < LONGEST and cur.low(words) in ("a", "the", "stitch", "st", "your", "first", "second", "both", "all", "that", "these", "up") or cur.kind(words) in ("num", "ord"):
        words += 1
    if cur.low(words) not in ("marker", "markers"):
        return None
    if low in _PLACES:
        cur.at += words + 1
        return _placed(cur, start)
    if low in _MOVES or low in ("remove", "removing"):
        cur.at += words + 1
        while cur.kind() == "word" and cur.low() not in ("then", "work", "and"):
            cur.at += 1
        return Mark("no-markers" if low.startswith("remov") else "note", span=cur.span_from(start))
    return None


def bracketed(cur: Cursor, before: list[Node], start: int) -> Node | None:
    """ "3 sc in next ch (pm)", "(place marker in center st)": a marker within a bracket, just open; nothing taken elsewhere.

    Of several in one place it is the middle one that is marked.
    """
    mark = cur.at
    placed = marker(cur) if cur.low() in MARKER_VERBS else None
    if placed is None or cur.kind() != "close":
        cur.at = mark
        return None
    cur.at += 1
    last = before[-1] if before else None
    several = isinstance(last, Make) and (last.n.at(0) or 0) > 2 and last.place is not None and last.place.quant == "next" and last.place.n in (None, ONE)
    if isinstance(placed, Mark) and placed.what == "marker" and placed.text in ("gap", "st") and (several or isinstance(last, Group)):
        return Mark("marker", "centre", span=cur.span_from(start))
    return placed


def _placed(cur: Cursor, start: int) -> Node:
    """Where a marker was placed: in the stitch made last, else before the stitch that comes next."""
    inside = cur.low() in ("in", "into", "on", "around")
    first = False
    if inside:
        if (told := _in_which(cur)) is not None:
            return Mark("marker", told[0], told[1], span=cur.span_from(start))
        while cur.kind() in ("word", "ord", "kind", "num") and cur.low() not in ("and", "then"):
            first = first or cur.kind() == "ord"
            cur.at += 1
    elif cur.low() in ("for", "to", "at", "as"):  # what it is for
        while cur.kind() in ("word", "ord", "kind", "num"):
            cur.at += 1
        return Mark("note", span=cur.span_from(start))
    return Mark("note" if first else "marker", "st" if inside else "gap", span=cur.span_from(start))


def _in_which(cur: Cursor) -> tuple[str, Num | None] | None:
    """ "in 6th st", "in center st of 3-sc": which of the stitches made so far; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("the", "each", "this")
    token = cur.token()
    if token is not None and token.kind == "ord" and 1 < token.value < MOST:
        cur.at += 1
        if thing(cur) is not None:
            of = _of_group(cur)
            if _ends(cur):
                return "of-group" if of else "kth", Num((int(token.value),))
    elif cur.accept("center", "centre", "middle") and thing(cur) is not None:
        _of_group(cur)
        if _ends(cur):
            return "centre", None
    cur.at = start
    return None


def _of_group(cur: Cursor) -> bool:
    """ "of 3-sc", "of the 3 sc just made", "of shell": the group made last; nothing taken elsewhere."""
    mark = cur.at
    if not cur.accept("of"):
        return False
    cur.skip("the", "this", "each", "last")
    many = cur.number()
    cur.skip("-")
    if cur.low() in ("row", "rnd", "round") or thing(cur) is None and (many is None or not _ends(cur)):
        cur.at = mark
        return False
    cur.skip("group", "just", "made", "cluster", "inc", "increase")
    return True


def _ends(cur: Cursor) -> bool:
    return cur.kind() in ("sep", "end", "close") or cur.low() in ("and", "then", "turn")


def skip_to_marker(cur: Cursor, start: int) -> Node | None:
    """ "skip gusset sts", "skip all sts to next marker", "skip the sts between markers"; nothing taken elsewhere."""
    mark = cur.at
    said: list[str] = []
    while cur.kind() in ("word", "num") and len(said) < LONGEST:
        said.append(cur.take().low)
    if not {"marker", "markers"} & set(said) and not ("gusset" in said and {"st", "sts", "stitches"} & set(said)):
        cur.at = mark
        return None
    return Skip(Num((1,)), Thing("marker"), cur.span_from(start))
