"""Shapes as verbs and in pattern: "work 4 shells across", "work in pattern", stitches held on the hook and closed as one."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    Chain,
    Group,
    Make,
    Mark,
    Node,
    PatternRun,
    Place,
    Repeat,
)
from loopwright.notation import body
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.places import place
from loopwright.notation.things import thing
from loopwright.notation.turns import as_group, placed

_OF_STITCHES = frozenset(("shell", "fan", "scallop", "petal"))  # so many stitches in one place, not one stitch
_HOLDS = frozenset(("keeping", "holding", "leaving", "retaining", "keep", "hold"))


def in_pattern(cur: Cursor) -> Node | None:
    """ "work in pattern over next 20 sts", "work even in pattern to last 3 sts"."""
    start = cur.at
    cur.at += 1
    cur.skip("even")
    if not cur.accept("in"):
        cur.at = start
        return None
    cur.skip("the", "same", "yoke", "shell", "as", "established")
    if cur.low() not in ("pattern", "pat", "patt"):
        cur.at = start
        return None
    cur.at += 1
    cur.skip("st", "stitch", "as", "established", "before")
    mark = cur.at
    if cur.low() in ("across", "over", "on", "along", "for"):
        cur.at += 1
        while cur.low() in ("the", "next", "last", "first", "remaining", "rem", "1st", "following"):
            cur.at += 1
        told = cur.number()
        if told is not None and (thing(cur) is not None or cur.kind() in ("sep", "end", "close")):
            return PatternRun(None, told, span=cur.span_from(start))
    cur.at = mark
    where = place(cur)
    counted = where is not None and where.n is not None and bool(where.n.values)
    if where is not None and counted and (where.quant == "last" or (where.left is None and where.quant in ("next", "first", "each"))):
        return PatternRun(None, where.n, span=cur.span_from(start))
    from loopwright.notation.extents import left_words

    left = left_words(cur)
    if left is not None:
        return PatternRun(None, None, left=left[0], span=cur.span_from(start))
    cur.skip("to", "end", "of", "the", "row", "rnd", "round", "across", "around", "all")
    return PatternRun(None, None, span=cur.span_from(start))


_SHAPES = frozenset("shell fan cluster popcorn puff bobble v-st pattern block scallop petal cross-st loop-st knot-st".split())


def shapes_across(cur: Cursor) -> Node | None:
    """ "work 4-dc shells across row", "work 5 patterns", "shells across": a shape worked all along, or so many times."""
    start = cur.at
    said = cur.low() in ("work", "make")
    if said:
        cur.at += 1
        cur.skip("a", "another", "further")
    n = cur.number() if cur.kind() == "num" else None
    cur.skip("more", "-")
    size = None
    if cur.kind() == "kind" and str(cur.token().value) in ("dc", "tr", "sc", "hdc", "dtr") and cur.kind(1) == "kind" and str(cur.token(1).value) in _SHAPES:  # type: ignore[union-attr]
        size, n = Make(str(cur.take().value), n or ONE), None
    if cur.kind() != "kind" or str(cur.token().value) not in _SHAPES:  # type: ignore[union-attr]
        cur.at = start
        return None
    name = str(cur.take().value)
    cur.skip("st", "sts")
    if size is not None and name in _OF_STITCHES and (cur.low() in ("in", "into") or cur.kind() in ("sep", "close", "end")):
        where = place(cur) if cur.low() in ("in", "into") else None
        return Group((size,), where or Place("next", ONE), name=name, span=cur.span_from(start))  # "5-dc shell in next st"
    apart = cur.low() in ("with", "having") and "between" in (cur.low(3), cur.low(4))  # "work 2 clusters with ch 3 between in next loop"
    if apart or cur.low() in ("in", "into", "over", "on", "around", "from") and cur.low(1) != "row" or cur.kind() == "num" and n is None:
        cur.at = start
        return None
    across = cur.low() in ("across", "along") or cur.low() in ("all", "around") and cur.low(1) in ("around", "row", "across", "", ",", ".")
    while cur.low() in ("across", "along", "all", "around", "row", "the", "this", "round", "rnd"):
        cur.at += 1
    if not (across or said and n is not None):
        cur.at = start
        return None
    return PatternRun(name, n, parts=(size,) if size is not None else (), span=cur.span_from(start))


def shape_of(cur: Cursor) -> Node | None:
    """ "fan of 4 trebles, 1 chain and 4 trebles in next stitch": what the shape is made of, and where."""
    if cur.shaping:  # one inside another would be read over and over
        return None
    start, unknown, cur.shaping = cur.at, cur.unknown, True
    name = str(cur.take().value)
    cur.at += 1
    inside: list[Node] = []
    while not cur.done and cur.low() not in (".", ";") and cur.kind() not in ("close", "star", "open") and len(inside) < 12:
        at = cur.at
        found = body.one(cur, inside)
        if found is not None:
            inside.append(found)
            if placed(found) is not None or not isinstance(found, (Make, Chain)):
                break
        if cur.at == at:
            cur.at += 1
    cur.shaping = False
    group = as_group(inside)
    if group is None:
        cur.at, cur.unknown = start, unknown
        return None
    return replace(group, name=name, span=cur.span_from(start))


def held(cur: Cursor, before: list[Node]) -> Node | None:
    """ "3 dc in next st keeping last loop of each on hook, yo and draw through all loops": one stitch of so many legs."""
    start = cur.at
    cur.at += 1
    cur.skip("back", "on", "hook", "the", "a")
    if not (cur.low() in ("last", "final") and thing_word(cur.low(1)) in ("loop", "sp")) and thing_word(cur.low()) != "loop":
        cur.at = start
        return None
    through = next((i for i in range(40) if cur.low(i) in ("all", "remaining") and cur.low(i + 1) in ("loops", "remaining", "lps", "the")), None)
    stop = next((i for i in range(40) if cur.low(i) == "." or cur.kind(i) in ("star", "close", "end")), 40)
    cur.at = min(len(cur.tokens), cur.at + (through if through is not None and through < stop else stop))
    while not cur.done and cur.low() not in (",", ";", ".") and cur.kind() not in ("open", "close", "star"):
        cur.at += 1
    last = before[-1]
    parts = _legs(last)
    if parts < 2:
        return Mark("note", span=cur.span_from(start))
    before.pop()
    return _closed(last, parts, cur, start)


def held_first(cur: Cursor) -> Node | None:
    """ "leaving last loop of each on hook work 1 tr into each of next 6 tr, thread over and draw through all loops on hook": one stitch too."""
    start, unknown = cur.at, cur.unknown
    last = next((i for i in range(1, 8) if cur.low(i) in ("last", "final") and thing_word(cur.low(i + 1)) == "loop"), None)
    if last is None:
        return None
    cur.at += last + 2
    while cur.low() in _EACH_HELD and not (cur.kind() == "kind" and cur.low(1) in ("in", "into")) or cur.kind() == "kind" and cur.low(-1) in ("each", "every", "a"):
        cur.at += 1
    inside: list[Node] = []
    while not cur.done and cur.low() not in (".", ";") and cur.kind() not in ("close", "star") and not inside:
        found = body.one(cur, inside)
        if found is not None and not isinstance(found, Mark):
            inside.append(found)
    through = next((i for i in range(16) if cur.low(i) in ("all", "remaining", "both") or cur.low(i) == "as" and cur.low(i + 1) in ("1", "one") or cur.low(i) == "." or cur.kind(i) in ("star", "close", "open", "end")), 16)
    if not inside or _legs(inside[0]) < 2 or cur.low(through) not in ("all", "remaining", "both", "as"):
        cur.at, cur.unknown = start, unknown
        return None
    cur.at += through
    while not cur.done and cur.low() not in (",", ";", ".") and cur.kind() not in ("open", "close", "star"):
        cur.at += 1
    return _closed(inside[0], _legs(inside[0]), cur, start)


_EACH_HELD = frozenset("of each every on hook the a st stitch work make tr , worked".split())


def _closed(last: Node, parts: int, cur: Cursor, start: int) -> Make:
    """The stitches of so many legs that are closed as one: over several places, or in one."""
    where = last.place if isinstance(last, Make) else None
    across = isinstance(last, Repeat) or where is not None and (where.n is not None and (where.n.at(0) or 1) > 1 or where.quant == "each")
    if across or where is None:
        return Make("cluster", ONE, None, taking=parts, parts=parts, span=cur.span_from(start))
    return Make("cluster", ONE, where, parts=parts, span=cur.span_from(start))


def _legs(node: Node) -> int:
    if isinstance(node, Make):
        n = node.n.at(0) or 1
        many = node.place.n.at(0) if node.place is not None and node.place.n is not None else 1
        return n * (many or 1)
    if isinstance(node, Repeat) and node.mode == "once":
        return sum(_legs(x) for x in node.nodes)
    return 0


def between(cur: Cursor) -> int:
    """ "with ch 2 between": chains between stitches of one place; 0 and nothing taken when it is not said."""
    start = cur.at
    if cur.kind() == "open" and cur.low(2) in ("times", "over") or cur.kind() == "open" and cur.kind(1) == "times":
        close = next((i for i in range(2, 12) if cur.kind(i) == "close"), None)
        if close is not None and cur.low(close + 1) in ("with", "having"):
            cur.at += close + 1
    if cur.low() in ("with", "having"):
        cur.at += 1
        cur.skip("always", "a")
        n = None
        if cur.kind() == "kind" and cur.token().value == "ch":  # type: ignore[union-attr]
            cur.at += 1
            cur.accept("-")
            n = cur.number() or ONE
        elif cur.kind() == "num" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
            n = cur.number()
            cur.at += 1
        if n is not None and cur.accept("between"):
            if cur.low() in ("each", "every", "the", "them"):
                cur.at += 1
                cur.skip("of", "2", "two")
                thing(cur)
            elif cur.kind() == "kind":
                cur.at += 1
                cur.skip("'", "’", "s")  # "with ch 3 between d tr's"
            return n.at(0) or 1
    cur.at = start
    return 0
