"""How far stitches go, told behind or before them: "until there are 257 sc", "work across to within last 9 sts", "work in dc, increasing in every 2nd st".

Each reader takes its words and gives a node, or takes nothing and gives None. Common practice, no source: the forms were met in leaflets.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from loopwright.model.tree import ONE, STITCH, Count, Make, Mark, Node, PatternRun, Place, Repeat, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.extents import left_words
from loopwright.notation.stars import until_made

ONWARD = frozenset("until for work continue".split())  # what such words begin with
_SHAPING = frozenset("increasing decreasing".split())
_PLAIN = frozenset("sc hdc dc tr dtr".split())


def onward(cur: Cursor, before: list[Node]) -> Node | None:
    """The node of such words that start here, None when they are others."""
    low, begin = cur.low(), cur.at
    last = before[-1] if before else None
    if low == "until":
        told = last.nodes if isinstance(last, Repeat) and last.mode == "once" else (last,)  # "sc in 2nd ch from hook and in each ch until …"
        made = _until_so_many(cur, told[-1]) if told and isinstance(told[-1], Make) else None
        if made is None:
            return None
        before[-1:] = [*told[:-1], made]
        return Mark("note", span=cur.span_from(begin))
    if low == "for":
        return Mark("note", span=cur.span_from(begin)) if isinstance(last, Make) and _for_picot(cur, before, last) else None
    if low == "work" and cur.low(1) == "in" and cur.low(3 + (cur.low(3) == ",")) in _SHAPING:
        token = cur.token(2)
        if token is None or token.kind != "kind" or token.value not in _PLAIN:
            return None
        cur.at += 3
        return Make(str(token.value), ONE, Place("each", None, STITCH), span=cur.span_from(begin))
    if cur.low(1) == "across" and (cur.kind(2) in ("sep", "end") or cur.low(2) in ("remaining", "rem", "the")) and _across(cur):
        return PatternRun(None, None, span=cur.span_from(begin))
    return _to_last(cur) if low == "work" and cur.low(1) in ("across", "even", "to") else None


def _until_so_many(cur: Cursor, told: Make) -> Repeat | None:
    """ "sc in each ch until there are 257 sc on row": one after the other until so many are made; nothing taken elsewhere."""
    start, where = cur.at, told.place
    if where is None or where.quant != "each" or where.left is not None or where.upto is not None or told.n != ONE:
        return None
    many = until_made(cur)
    if many is None or many[1].kind not in ("group", "st", told.kind):
        cur.at = start
        return None
    one = replace(told, place=replace(where, quant="next", n=ONE))
    return Repeat((one,), "until", many[0], left_of=Thing(told.kind), span=told.span.cover(cur.span_from(start)))


def told_until(nodes: tuple[Node, ...]) -> Iterator[Count]:
    """The count that a row is worked until, where it is told so in its words."""
    for node in nodes:
        if isinstance(node, Repeat) and node.mode == "until" and len(node.nodes) == 1 and isinstance(node.nodes[0], Make) and node.times is not None:
            yield Count(node.times, node.left_of.kind, span=node.times.span)


def _for_picot(cur: Cursor, before: list[Node], last: Make) -> bool:
    """ "ch 3, sc in 3rd ch from hook for p": a stitch that closes a picot is none of the row; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("a", "the", "first", "next", "last")
    if cur.low() not in ("p", "picot") or last.place is None or not last.place.from_hook or last.n != ONE:
        cur.at = start
        return False
    cur.at += 1
    before[-1] = replace(last, kind="sl st")
    return True


def _across(cur: Cursor) -> bool:
    """ "work across", "work across remaining sts": over what is left; nothing taken elsewhere."""
    start = cur.at
    cur.at += 2
    cur.skip("the", "remaining", "rem")
    cur.skip("sts", "stitches") if cur.low(-1) in ("remaining", "rem") else None
    if cur.kind() in ("sep", "end", "close"):
        return True
    cur.at = start
    return False


def _to_last(cur: Cursor) -> Node | None:
    """ "work across to within last 9 sts", "work to last 3 sts": as before, up to there; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("across", "even")
    left = left_words(cur) if cur.low() in ("to", "until") else None
    if left is None or left[1].kind not in ("st", *_PLAIN) or cur.kind() not in ("sep", "end", "close"):
        cur.at = start
        return None
    return PatternRun(None, None, left=left[0], span=cur.span_from(start))
