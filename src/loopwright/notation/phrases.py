"""Phrases of printed books that several words make one instruction of: joins at a place, lists told place first, stitches worked in turn.

Each reader takes its words and gives a node, or takes nothing and gives None. Common practice, no source: the forms were met in
printed books and leaflets of 1840-1975.
"""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    AtEnds,
    Chain,
    EdgeRun,
    Either,
    Evenly,
    Filet,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    Num,
    PatternRun,
    Place,
    Repeat,
    Spread,
    Thing,
)
from loopwright.notation import body
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.lists import one_place
from loopwright.notation.olden import olden
from loopwright.notation.places import place
from loopwright.notation.things import thing

_LIST_END = frozenset(("rep", "repeat", "join", "turn", "ending", "unite", "cut", "break", "attach", "fasten", "working", "making"))
_HOLDS = frozenset(("keeping", "holding", "leaving", "retaining", "keep", "hold"))

_OPEN_MESH = frozenset("sp sps space spaces".split())
_FREE_EDGES = frozenset("missed unworked held underarm opening thumb edge neck armhole lower upper".split())

_NO_TWIST = ("taking care not to twist", "being careful not to twist", "be careful not to twist", "careful not to twist", "making sure not to twist", "without twisting")


def phrase(cur: Cursor, before: list[Node]) -> Node | None:
    """The node of a phrase that starts here, None when none does."""
    low = cur.low()
    begin = cur.at
    if any(cur.accept_words(words) for words in _NO_TWIST):
        cur.skip("the", "your", "it", "ch", "chain", "sts", "stitches", "work")
        return Mark("note", span=cur.span_from(begin))
    if cur.kind() in ("num", "blank") and (meshes := _meshes(cur)) is not None:
        return meshes
    found = olden(cur, before)
    if found is not None:
        return found
    if low in ("attach", "rejoin", "reattach", "fasten") and cur.kind(1) != "end":
        return _attach(cur)
    if low == "join" and not any(isinstance(b, (Make, Group, Repeat, Chain, PatternRun)) for b in before):
        return _attach(cur)
    if low.startswith("dec") and cur.low(1) in ("in", "over") and cur.kind(2) == "ord" and cur.low(3) == "and" and cur.kind(4) == "ord":
        cur.at += 5  # "dec in 5th and 6th sc": the two that come next
        thing(cur)
        return Make("dec", ONE, span=cur.span_from(cur.at - 5))
    if low in ("working", "work") and cur.low(1) in ("off", "them") and before and isinstance(before[-1], Make):
        return _together(cur, before)
    if low in ("work", "worked", "continue", "complete", "made") and cur.low(1) == "same" and cur.low(2) == "as":
        begin = cur.at
        while not cur.done and cur.low() not in (";", ".") and cur.kind() not in ("close", "open"):
            cur.at += 1
        return PatternRun(None, None, span=cur.span_from(begin))
    if low == "complete" and cur.low(1) in ("row", "rnd", "round", "the") and "pattern" in (cur.low(3), cur.low(4)):
        cur.at += 4 + (cur.low(3) != "pattern")
        return PatternRun(None, None, span=cur.span_from(cur.at - 4))
    if low in ("work", "make") and cur.low(1) in ("a", "1", "one") and cur.low(2) in ("row", "rnd", "round") and cur.low(3) == "of" and cur.kind(4) == "kind":
        return _a_row_of(cur)
    if (low in ("work", "make") or cur.kind() == "num" and any(isinstance(b, EdgeRun) for b in before)) and (edge := _edge(cur)) is not None:
        return edge
    if low in ("working", "making", "with") and before and isinstance(before[-1], (Make, Group, InTurn, Repeat)):
        return _working(cur, before)
    if low == "in" and cur.low(1) in ("pattern", "pat", "patt") and cur.kind(2) in ("sep", "end") and not any(isinstance(b, (Make, Group, Repeat)) for b in before):
        cur.at += 2
        return PatternRun(None, None, span=cur.span_from(cur.at - 2))
    if low in ("work", "continue") and cur.low(1) in ("across", "over") and cur.kind(2) in ("num", "blank"):
        begin = cur.at
        cur.at += 2
        told = cur.number()
        if thing(cur) is not None and cur.kind() in ("sep", "end", "close", "open"):
            return PatternRun(None, told, span=cur.span_from(begin))
        cur.at = begin
    if low in ("work", "working") and cur.low(1) in ("in", "even") and "pattern" in (cur.low(2), cur.low(3)):
        return _in_pattern(cur)
    if cur.kind() == "kind" and str(cur.token().value) in _SHAPES and cur.low(1) == "of" and (made := _shape_of(cur)) is not None:  # type: ignore[union-attr]
        return made
    if low in ("work", "make") or cur.kind() in ("num", "kind"):
        return _shapes_across(cur)
    if low == "at" and before and isinstance(before[-1], Chain) and cur.accept_words("at end of last"):
        cur.skip("row", "rnd", "round", "to", "turn")
        return Mark("last-row", span=cur.span_from(cur.at - 1))
    if low == "for" and before and isinstance(before[-1], Chain) and cur.kind(1) == "ord" and cur.token(1).value == 1 and cur.kind(2) == "kind":  # type: ignore[union-attr]
        before[-1] = replace(before[-1], counts="yes", as_kind=str(cur.token(2).value))  # type: ignore[union-attr]
        cur.at += 3
        return Mark("note", span=cur.span_from(cur.at - 3))
    if low in _HOLDS and before and isinstance(before[-1], (Make, Repeat)):
        return _held(cur, before)
    return None


def _meshes(cur: Cursor) -> Node | None:
    """ "15 sps", "3 bls" in a row of filet, which has blocks in it or says so twice; nothing taken elsewhere."""
    start = cur.at
    n = cur.number()
    word = cur.low()
    block = cur.kind() == "kind" and cur.token().value == "block"  # type: ignore[union-attr]
    ends = cur.kind(1) in ("sep", "end", "close") or cur.low(1) in (",", ";", ".", "turn", "and")
    if n is None or not ends or not (block or word in _OPEN_MESH):
        cur.at = start
        return None
    said = [t.text.lower() for t in cur.tokens]
    filet = sum(w in _OPEN_MESH for w in said) + 2 * sum(t.value == "block" for t in cur.tokens) >= 2
    named = cur.kind(1) == "close" and start > 0 and cur.tokens[start - 1].kind == "open"  # "3 dc (1 bl)": what that makes
    if not filet:
        cur.at = start
        return None
    cur.at += 1
    if named:
        return Mark("note", span=cur.span_from(start))
    return Filet(n, block, cur.span_from(start))


def _attach(cur: Cursor) -> Node | None:
    """ "attach to same place as sl st", "join wool in any space"."""
    start = cur.at
    cur.at += 1
    cur.skip("yarn", "thread", "wool", "cotton", "silk", "the", "with", "sl", "st")
    goes = next((i for i in range(1, 4) if cur.low(i) in ("to", "in", "at", "into")), 0)
    if goes and cur.tokens[start].text.lower() != "fasten" and all(cur.kind(i) == "word" for i in range(goes)) and cur.low() not in ("to", "in", "at", "into", "on"):
        cur.at += goes  # "attach dark green to …"
    if cur.low() == "to" or cur.low() in ("in", "at", "into", "on"):
        words = next((i for i in range(1, 14) if cur.kind(i) in ("sep", "end", "close")), 0)
        if any(cur.low(i) in _FREE_EDGES for i in range(words)):
            cur.at += words  # on an edge that is told in words only: "in first missed st of the thumb opening"
            return Mark("attach", span=cur.span_from(start))
        mark = cur.at
        cur.at += 1
        if cur.low() in ("first", "1st", "next") and cur.low(1) in ("free", "unworked", "skipped"):
            cur.at += 2
            thing(cur)
            return Mark("attach", "free", span=cur.span_from(start))
        cur.at = mark
        where = place(cur, bare=True) if cur.accept("to") else place(cur)
        if where is not None:
            return Mark("attach", place=where, span=cur.span_from(start))
    if cur.low() in ("on", "at", "with", "in") and cur.tokens[start].text.lower() != "join":
        while not cur.done and cur.kind() not in ("sep", "close", "star"):
            cur.at += 1
    if cur.kind() in ("sep", "end") and cur.low(-1) != "join":
        return Mark("attach", span=cur.span_from(start))
    cur.at = start
    return None


_EDGES = frozenset("side sides edge edges section sections neck neckline armhole armholes front fronts seam sleeve end bottom top".split())


def _edge(cur: Cursor) -> Node | None:
    """ "work 47 s c down side", "work 32 d c across lower edge": so many along an edge that is no row."""
    start = cur.at
    cur.at += cur.kind() != "num"
    n = cur.number()
    if n is None or cur.kind() != "kind" or str(cur.token().value) == "ch":  # type: ignore[union-attr]
        cur.at = start
        return None
    kind = str(cur.take().value)
    if cur.low() not in ("down", "up", "along", "across", "around", "round", "over", "on", "evenly"):
        cur.at = start
        return None
    i = 0
    said: list[str] = []
    while i < 9 and cur.kind(i) not in ("sep", "end", "close", "open", "star", "num") and cur.low(i) not in ("and", "join", "turn"):
        said.append(cur.low(i))
        i += 1
    if not _EDGES & set(said):
        cur.at = start
        return None
    cur.at += i
    span = cur.span_from(start)
    once = EdgeRun(kind, n, "edge", span=span)
    if "each" in said:
        return Either("edge-each", ((0.0, (once,)), (0.3, (once, once))), span)
    return once


def _a_row_of(cur: Cursor) -> Node:
    """ "work a row of sc all around": along an edge whose length nobody told, or over the row where no edge is named."""
    start = cur.at
    kind = str(cur.token(4).value)  # type: ignore[union-attr]
    cur.at += 5
    said = []
    while not cur.done and cur.kind() not in ("sep", "close", "open", "star"):
        said.append(cur.take().text.lower())
    if {"around", "round"} & set(said) or _EDGES & set(said):
        return EdgeRun(kind, None, "around", span=cur.span_from(start))
    return Make(kind, ONE, Place("each", None, STITCH), span=cur.span_from(start))


def _together(cur: Cursor, before: list[Node]) -> Node | None:
    """ "tr in next 5 tr, working off together as for a cluster": one cluster over them."""
    start, last = cur.at, before[-1]
    i = 1
    while i < 8 and cur.kind(i) not in ("sep", "end", "close", "star"):
        i += 1
    said = [cur.low(j) for j in range(i)]
    many = last.place.n.at(0) if isinstance(last, Make) and last.place is not None and last.place.n is not None else None
    if "together" not in said and "tog" not in said or not many or many < 2:
        return None
    cur.at += i
    before.pop()
    return Make("cluster", ONE, None, parts=many, taking=many, span=cur.span_from(start))


def _working(cur: Cursor, before: list[Node]) -> Node | None:
    """ "1 sc in each dc, working 3 sc in each corner": what is worked instead where the second place comes."""
    if cur.working:  # one inside another would be read over and over
        return None
    start, unknown, cur.working = cur.at, cur.unknown, True
    cur.at += 1
    inside: list[Node] = []
    while not cur.done and cur.low() not in (".", ";") and cur.kind() not in ("close", "star", "open"):
        if cur.low() in ("rep", "repeat", "join", "turn", "ending", "until"):
            break
        at = cur.at
        found = body.one(cur, inside)
        if found is not None:
            inside.append(found)
            one_place(inside, 0)
            if _placed(found) is not None and cur.low() != "and":
                break
        if cur.at == at:
            cur.at += 1
    cur.working = False
    group = _as_group(inside)
    if group is None or group.place is None or group.place.quant not in ("each", "next") or not isinstance(before[-1], (Make, Group, InTurn)):
        cur.at, cur.unknown = start, unknown
        return None
    base = before[-1]
    if not isinstance(base, InTurn) and (_placed(base) is None or _placed(base).quant != "each"):  # type: ignore[union-attr]
        cur.at, cur.unknown = start, unknown
        return None
    _at_each(cur, group)
    before.pop()
    parts = base.parts if isinstance(base, InTurn) else (base,)
    return InTurn((*parts, replace(group, place=replace(group.place, quant="each", n=None))), span=cur.span_from(start))


def _at_each(cur: Cursor, group: Group) -> None:
    """ "at each corner", "at each of the 4 inc points" says only which places were meant."""
    cur.skip(",") if cur.low(1) == "at" else None
    if cur.low() == "at" and cur.low(1) in ("each", "all", "every", "the", "both"):
        cur.at += 2
        cur.skip("of", "the")
        cur.number()
        while cur.kind() in ("word", "kind") and cur.low() not in ("and", "join", "turn", "work"):
            cur.at += 1


def _placed(node: Node) -> Place | None:
    return node.place if isinstance(node, (Make, Group)) else None


def _as_group(nodes: list[Node]) -> Group | None:
    """A list with one place at its end as a group into that place."""
    if not nodes:
        return None
    last = nodes[-1]
    if len(nodes) == 1 and hasattr(last, "readings"):
        last = next((n for _, r in last.readings for n in r if isinstance(n, Group)), last)
        return last if isinstance(last, Group) else None
    if isinstance(last, Group):
        return last if len(nodes) == 1 else None
    if not isinstance(last, Make) or last.place is None:
        return None
    if any(not isinstance(n, (Make, Chain)) or getattr(n, "place", None) is not None for n in nodes[:-1]):
        return None
    return Group((*nodes[:-1], replace(last, place=None)), last.place, span=nodes[0].span.cover(last.span))


def in_turn(out: list[Node]) -> None:
    """ "1 dc in each dc, 2 dc, ch 2, 2 dc in each ch-2 sp": the two are worked as their places come."""
    last = out[-1]
    if isinstance(last, Evenly) and last.n is not None and len(out) > 1 and isinstance(out[-2], AtEnds) and out[-2].op == last.op:
        ends = out[-2]  # "dec 1 st at each end and dec 10 more evenly": all in one row
        out[-2:] = [replace(last, n=Num(tuple((a or 0) + (ends.n.at(i) or 1) * ends.ends for i, a in enumerate(last.n.values))))]
        return
    there = _placed(last)
    if there is None or there.quant != "each" or there.left is not None:
        return
    first = len(out) - 1
    while first > 0 and isinstance(out[first - 1], (Make, Chain)) and _placed(out[first - 1]) is None:
        first -= 1
    while first < len(out) - 1 and isinstance(out[first], Chain):
        first += 1
    if first == 0:
        return
    base = out[first - 1]
    here = _placed(base)
    sorts = base.parts if isinstance(base, InTurn) else (base,)
    if not isinstance(base, InTurn) and (here is None or here.quant != "each" or here.left is not None):
        return
    if any((_placed(p) or there).thing == there.thing for p in sorts):
        return
    group = _as_group(out[first:])
    if group is None:
        return
    out[first - 1 :] = [InTurn((*sorts, group), span=base.span.cover(group.span))]


def _in_pattern(cur: Cursor) -> Node | None:
    """ "work in pattern across next 14 sts", "work even in pattern to last 3 sts"."""
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
    from loopwright.notation.places import left_words

    left = left_words(cur)
    if left is not None:
        return PatternRun(None, None, left=left[0], span=cur.span_from(start))
    cur.skip("to", "end", "of", "the", "row", "rnd", "round", "across", "around", "all")
    return PatternRun(None, None, span=cur.span_from(start))


_SHAPES = frozenset("shell fan cluster popcorn puff bobble v-st pattern block scallop petal cross-st loop-st knot-st".split())


def _shapes_across(cur: Cursor) -> Node | None:
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
    if cur.low() in ("in", "into", "over", "on", "around", "from") and cur.low(1) != "row" or cur.kind() == "num" and n is None:
        cur.at = start
        return None
    across = cur.low() in ("across", "along") or cur.low() in ("all", "around") and cur.low(1) in ("around", "row", "across", "", ",", ".")
    while cur.low() in ("across", "along", "all", "around", "row", "the", "this", "round", "rnd"):
        cur.at += 1
    if not (across or said and n is not None):
        cur.at = start
        return None
    return PatternRun(name, n, parts=(size,) if size is not None else (), span=cur.span_from(start))


def _shape_of(cur: Cursor) -> Node | None:
    """ "shell of 3 trebles, 2 chain and 3 trebles in next stitch": what the shape is made of, and where."""
    start, unknown = cur.at, cur.unknown
    name = str(cur.take().value)
    cur.at += 1
    inside: list[Node] = []
    while not cur.done and cur.low() not in (".", ";") and cur.kind() not in ("close", "star", "open") and len(inside) < 12:
        at = cur.at
        found = body.one(cur, inside)
        if found is not None:
            inside.append(found)
            if _placed(found) is not None or not isinstance(found, (Make, Chain)):
                break
        if cur.at == at:
            cur.at += 1
    group = _as_group(inside)
    if group is None:
        cur.at, cur.unknown = start, unknown
        return None
    return replace(group, name=name, span=cur.span_from(start))


def _held(cur: Cursor, before: list[Node]) -> Node | None:
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
    where = last.place if isinstance(last, Make) else None
    across = isinstance(last, Repeat) or where is not None and (where.n is not None and (where.n.at(0) or 1) > 1 or where.quant == "each")
    before.pop()
    kind = last.kind if isinstance(last, Make) else _legs_kind(last)
    if across or where is None:
        return Make("cluster", ONE, None, taking=parts, parts=parts, span=cur.span_from(start))
    del kind
    return Make("cluster", ONE, where, parts=parts, span=cur.span_from(start))


def _legs(node: Node) -> int:
    if isinstance(node, Make):
        n = node.n.at(0) or 1
        many = node.place.n.at(0) if node.place is not None and node.place.n is not None else 1
        return n * (many or 1)
    if isinstance(node, Repeat) and node.mode == "once":
        return sum(_legs(x) for x in node.nodes)
    return 0


def _legs_kind(node: Node) -> str:
    return next((x.kind for x in getattr(node, "nodes", ()) if isinstance(x, Make)), "dc")


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
            return n.at(0) or 1
    cur.at = start
    return 0


__all__ = ["STITCH", "Join", "Num", "Spread", "Thing", "between", "in_turn", "phrase"]
