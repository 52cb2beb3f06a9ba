"""Phrases of printed books that several words make one instruction of: joins at a place, lists told place first, stitches worked in turn.

Each reader takes its words and gives a node, or takes nothing and gives None. Common practice, no source: the forms were met in
printed books and leaflets of 1840-1975.
"""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    Chain,
    EdgeRun,
    Group,
    InTurn,
    Make,
    Mark,
    Node,
    PatternRun,
    Place,
    Repeat,
    Thing,
)
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.edges import EDGES, each_side, work_along
from loopwright.notation.meshes import meshes
from loopwright.notation.olden import olden
from loopwright.notation.onward import ONWARD, onward
from loopwright.notation.places import place
from loopwright.notation.shapes import _HOLDS, _SHAPES, held, held_first, in_pattern, shape_of, shapes_across
from loopwright.notation.stitches import kind_before
from loopwright.notation.things import ROWS, thing
from loopwright.notation.turns import working

_JOINING = frozenset("sc hdc dc tr dtr".split())
_ROUNDS = frozenset("row rows rnd rnds round rounds".split())
_FREE_EDGES = frozenset("missed unworked held underarm opening thumb edge neck armhole lower upper".split())
_NO_TWIST = ("taking care not to twist", "being careful not to twist", "be careful not to twist", "careful not to twist", "making sure not to twist", "without twisting")
_CARE = frozenset(words.split()[0] for words in _NO_TWIST)


def _names_sides(lows: list[str]) -> bool:
    """Whether a row's words tell of the sides of a piece, by their corners or their length."""
    return "corner" in lows or "corners" in lows or "short" in lows and "long" in lows or "shorter" in lows and "longer" in lows


def phrase(cur: Cursor, before: list[Node]) -> Node | None:
    """The node of a phrase that starts here, None when none does."""
    low = cur.low()
    begin = cur.at
    if low in _CARE and any(cur.accept_words(words) for words in _NO_TWIST):
        cur.skip("the", "your", "it", "ch", "chain", "sts", "stitches", "work")
        return Mark("note", span=cur.span_from(begin))
    if low in ("working", "work") and (back := 1 + (cur.low(1) in ("at", "in", "on")) + (cur.low(2) == "the")) and cur.low(back) == "back" and cur.low(back + 1) == "of":
        cur.at += back
        low = "behind"  # "working at back of petals"
    if low == "behind" and (stop := next((i for i in range(1, 9) if cur.kind(i) in ("sep", "star", "end")), 0)) and not any(cur.kind(i) in ("num", "open") and cur.low(i - 1) not in _ROUNDS for i in range(stop)):
        cur.at += stop  # "working behind the petals of Rnd 3": the places say the same
        return Mark("note", span=cur.span_from(begin))
    if (cur.kind() in ("num", "blank") or low in ("work", "make") and cur.kind(1) == "num") and (filet := meshes(cur)) is not None:
        return filet
    if low == "work" and cur.low(1) == "to" and (rest := _to_the_end(cur, before)) is not None:
        return rest
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
    if low == "fill" and cur.low(1) in ("each", "every") and (filled := _filled(cur)) is not None:
        return filled
    if low in ("work", "working", "take", "taking") and (one := _as_one(cur)) is not None:
        return one
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
    if (low in ("work", "working", "make") or cur.kind() == "num") and "each" in cur.lows and _names_sides(cur.lows) and not any(isinstance(b, (Make, Group, Repeat)) for b in before) and (sides := each_side(cur)) is not None:
        return sides
    if (low in ("work", "make") or cur.kind() == "num" and any(isinstance(b, EdgeRun) for b in before)) and (edge := work_along(cur)) is not None:
        return edge
    if low == "working" and cur.low(1) in ("last", "the") and before and isinstance(before[-1], Repeat) and (closed := _last_in(cur, before[-1])) is not None:
        before[-1] = closed
        return Mark("note", span=cur.span_from(begin))
    if low == "to" and cur.low(1) == "turn" and len(before) == 1 and isinstance(before[0], Chain) and not cur.done and cur.kind(2) == "sep":
        cur.at += 2
        return Mark("note", span=cur.span_from(begin))  # "3 chain to turn, miss the first treble, …": the row begins with it
    if low == "the" and cur.low(1) == "last" and before and isinstance(before[-1], (Make, Repeat)) and (found := _the_last(cur, before)) is not None:
        return found
    if (low in ("working", "making", "with", "placing") or low == "but" and cur.kind(1) == "num") and before and isinstance(before[-1], (Make, Group, InTurn, Repeat, EdgeRun)):
        return working(cur, before)
    if low == "in" and cur.low(1) in ("pattern", "pat", "patt") and cur.kind(2) in ("sep", "end") and not any(isinstance(b, (Make, Group, Repeat)) for b in before):
        cur.at += 2
        return PatternRun(None, None, span=cur.span_from(cur.at - 2))
    if low in ONWARD and (far := onward(cur, before)) is not None:
        return far
    if low in ("work", "continue") and cur.low(1) in ("across", "over") and cur.kind(lead := 2 + (cur.low(2) == "the") + (cur.low(2 + (cur.low(2) == "the")) in ("first", "next"))) in ("num", "blank"):
        begin = cur.at
        cur.at += lead
        told = cur.number()
        named = thing(cur) is not None
        cur.skip("only") if named else None
        if named and cur.kind() in ("sep", "end", "close", "open"):
            return PatternRun(None, told, span=cur.span_from(begin))
        cur.at = begin
    if low in ("work", "working") and cur.low(1) in ("in", "even") and "pattern" in (cur.low(2), cur.low(3)):
        return in_pattern(cur)
    if cur.kind() == "kind" and str(cur.token().value) in _SHAPES and cur.low(1) == "of" and (made := shape_of(cur)) is not None:  # type: ignore[union-attr]
        return made
    if low in ("work", "make") or cur.kind() in ("num", "kind"):
        return shapes_across(cur)
    if low == "at" and any(isinstance(b, EdgeRun) for b in before) and cur.accept_words("at last corner"):
        cur.skip("work", "make", "working", "making")
        n = cur.number()
        cur.at += n is not None and cur.kind() == "kind"
        return Mark("note", span=cur.span_from(begin))  # "…, 3 sc in each corner; at last corner make 3 sc, ch 12": counted there
    if low == "at" and before and isinstance(before[-1], Chain) and cur.accept_words("at end of last"):
        cur.skip("row", "rnd", "round", "to", "turn")
        return Mark("last-row", span=cur.span_from(cur.at - 1))
    if low == "for" and before and isinstance(before[-1], Chain) and (as_kind := for_a_stitch(cur)) is not None:
        before[-1] = replace(before[-1], counts="yes", as_kind=as_kind)
        return Mark("note", span=cur.span_from(begin))
    if low in ("to", "standing", "serving", "counting", "stands", "serves") and before and isinstance(before[-1], Chain) and stands_for(cur, before):
        return Mark("note", span=cur.span_from(begin))
    if low in _HOLDS and before and isinstance(before[-1], (Make, Repeat)) and (one := held(cur, before)) is not None:
        return one
    if low in _HOLDS:
        return held_first(cur)
    return None


def _to_the_end(cur: Cursor, before: list[Node]) -> Node | None:
    """ "…, rep from * 3 times, work to end": the stitch named last, in each that is left; nothing taken elsewhere."""
    stop = 3 + (cur.low(2) == "the")
    if cur.low(stop - 1) != "end":
        return None
    if cur.low(stop) == "of" and (of := stop + 1 + (cur.low(stop + 1) in ("the", "this"))) and cur.low(of) in _ROUNDS:
        stop = of + 1
    kind = kind_before(before)
    if kind not in _JOINING or cur.kind(stop) not in ("sep", "end", "close"):
        return None
    cur.at += stop
    return Make(kind, ONE, Place("each", None, STITCH), span=cur.span_from(cur.at - stop))


def for_a_stitch(cur: Cursor) -> str | None:
    """ "3 chain for a treble", "ch 3 for first dc": what the chain stands for; nothing taken elsewhere."""
    at = 1
    while cur.low(at) in ("a", "the", "one", "1", "first", "1st"):
        at += 1
    if at == 1 or cur.kind(at) != "kind" or cur.token(at).value not in ("sc", "hdc", "dc", "tr", "dtr", "trtr"):  # type: ignore[union-attr]
        return None
    kind = str(cur.token(at).value)  # type: ignore[union-attr]
    cur.at += at + 1
    return kind


def _the_last(cur: Cursor, before: list[Node]) -> Node | None:
    """ "1 treble on each treble, the last on the top of the turning chain": where the last of them goes; nothing taken elsewhere."""
    start, last = cur.at, before[-1]
    cur.at += 2
    cur.skip("stitch", "one")
    cur.at += cur.kind() == "kind"
    cur.skip("coming", "to", "come", "being", "worked", "going")
    where = place(cur) if cur.low() in ("in", "into", "on", "over") else None
    if where is not None and isinstance(last, Repeat) and last.mode == "end":
        return Mark("note", span=cur.span_from(start))  # the repeat comes out there
    if where is None or where.thing.kind != "tch" or not isinstance(last, Make) or last.place is None or last.place.quant != "each" or last.place.left is not None:
        cur.at = start
        return None
    before[-1] = replace(last, place=replace(last.place, left=ONE))
    return Make(last.kind, ONE, where, span=cur.span_from(start))


def _last_in(cur: Cursor, told: Repeat) -> Repeat | None:
    """ "…; rep from * across, working last sc in turning ch-sp": where the last round's last stitch goes; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("the")
    last = told.nodes[-1] if told.nodes else None
    if cur.accept("last") and isinstance(last, Make) and cur.kind() == "kind" and cur.token().value == last.kind:  # type: ignore[union-attr]
        cur.at += 1
        where = place(cur)
        if where is not None and where.thing.kind == "tch":
            again = replace(last, place=replace(where, of=Thing("sp")), span=cur.span_from(start))
            return replace(told, ending=(*told.nodes[:-1], again), ending_mode="with-last")
    cur.at = start
    return None


_STANDS = ("stand for", "stand as", "serve as", "serve for", "count as", "form", "standing for", "serving as", "counting as", "stands for", "serves as", "take the place of")


def stands_for(cur: Cursor, before: list[Node]) -> bool:
    """ "3 ch to stand for 1st tr", "3 ch, to serve as a treble": said of the chain before; nothing taken elsewhere."""
    start = cur.at
    cur.skip("to", "(")
    if any(cur.accept_words(words) for words in _STANDS):
        cur.skip("the", "a", "an", "one", "1", "1st", "first")
        token = cur.token()
        if token is not None and token.kind == "kind" and isinstance(before[-1], Chain) and token.value != "ch":
            cur.at += 1
            before[-1] = replace(before[-1], counts="yes", as_kind=str(token.value))
            return True
    cur.at = start
    return False


def _attach(cur: Cursor) -> Node | None:
    """ "attach to same place as sl st", "join wool in any space"."""
    start = cur.at
    cur.at += 1
    if (first := _with_a_stitch(cur, start)) is not None:
        return first
    cur.skip("yarn", "thread", "wool", "cotton", "silk", "the", "with", "a", "sl", "st", "sl st", "slst", "ss")
    goes = next((i for i in range(1, 4) if cur.low(i) in ("to", "in", "at", "into", "between")), 0)
    if goes and cur.tokens[start].text.lower() != "fasten" and all(cur.kind(i) == "word" for i in range(goes)) and cur.low() not in ("to", "in", "at", "into", "on", "between"):
        cur.at += goes  # "attach dark green to …"
    if any(cur.accept_words(words) for words in ("to remaining sts", "to rem sts", "to remaining stitches", "to the remaining sts", "to the remaining stitches")):
        return Mark("attach", span=cur.span_from(start))  # behind those that were missed
    if cur.low() in ("to", "in", "at", "into", "on", "between"):
        words = next((i for i in range(1, 14) if cur.kind(i) in ("sep", "end", "close")), 0)
        if any(cur.low(i) in _FREE_EDGES for i in range(words)):
            cur.at += words  # on an edge that is told in words only: "in first missed st of the thumb opening"
            return Mark("attach", span=cur.span_from(start))
        mark = cur.at
        cur.at += cur.low() != "between"
        cur.skip("the")
        if _left_free(cur):
            return Mark("attach", "free", span=cur.span_from(start))
        cur.at = mark
        where = place(cur, bare=True) if cur.accept("to") else place(cur)
        if where is not None:
            if cur.low() == "with" and any(cur.kind(i) == "kind" and cur.token(i).value == "sl st" for i in (1, 2)):  # type: ignore[union-attr]
                cur.at += 2 + (cur.low(1) == "a")  # "join B to any corner space with a slip stitch"
            return Mark("attach", place=where, span=cur.span_from(start))
    if cur.low() in ("on", "at", "with", "in") and cur.tokens[start].text.lower() != "join":
        while not cur.done and cur.kind() not in ("sep", "close", "star") and not (cur.low() == "and" and (cur.low(1) in ("work", "make") or cur.kind(1) in ("num", "kind"))):
            cur.at += 1
        if cur.accept("and"):
            return Mark("attach", span=cur.span_from(start))
    if cur.kind() in ("sep", "end") and cur.low(-1) != "join":
        return Mark("attach", span=cur.span_from(start))
    cur.at = start
    return None


_LEFT = frozenset(("free", "unworked", "skipped", "unused"))


def _left_free(cur: Cursor) -> bool:
    """ "first skipped st of Rnd 3", "skipped sts", "any of the unused sts": stitches that a row before left, taken."""
    mark = cur.at
    cur.skip("first", "1st", "next", "any", "one", "of", "the")
    cur.number()
    if cur.low() not in _LEFT or thing_word(cur.low(1)) in ("sp", "loop") or cur.low(1) in ("ch", "chain", "chs", "chains"):
        cur.at = mark
        return False
    cur.at += 1
    thing(cur)
    if cur.low() in ("of", "on", "from") and cur.low(1) in ROWS:
        cur.at += 2
        cur.number()
    return True


def _with_a_stitch(cur: Cursor, start: int) -> Node | None:
    """ "join with a sc in any st": the yarn comes with the row's first stitch; nothing taken elsewhere."""
    mark = cur.at
    cur.skip("yarn", "thread", "wool", "cotton", "the", "new", "color", "colour", "mc", "cc")
    if cur.accept("with"):
        cur.skip("a", "an", "1", "one", "standing")
        if cur.kind() == "kind" and cur.token().value in _JOINING and (where := _in_place(cur)) is not None:  # type: ignore[union-attr]
            return Make(str(cur.tokens[where[0]].value), ONE, where[1], span=cur.span_from(start))
    cur.at = mark
    return None


def _in_place(cur: Cursor) -> tuple[int, Place] | None:
    """The stitch that stands here, by its number among the tokens, with the place told behind it."""
    at = cur.at
    cur.at += 1
    where = place(cur, bare=True) if cur.accept("to") else place(cur)
    return (at, where) if where is not None and where.thing.kind != "join" else None


def _filled(cur: Cursor) -> Node | None:
    """ "fill each 3 chain with 5 doubles": so many in each of them; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    where = place(cur, bare=True)
    if where is not None and cur.accept("with") and cur.kind() == "num":
        n = cur.number()
        if n is not None and cur.kind() == "kind":
            return Make(str(cur.take().value), n, where, span=cur.span_from(start))
    cur.at = start
    return None


def _as_one(cur: Cursor) -> Node | None:
    """ "work off next 2 sc as 1 sc", "take next 2 tr tog": a decrease over them; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("off", "the", "next", "together", "tog")
    n = cur.number() if cur.kind() == "num" else None
    if n is not None and (n.at(0) or 0) > 1 and cur.kind() in ("kind", "word"):
        kind = str(cur.token().value) if cur.kind() == "kind" else ""  # type: ignore[union-attr]
        if (kind in ("sc", "hdc", "dc", "tr") or cur.low() in ("sts", "stitches")) and cur.kind(1) != "end":
            cur.at += 1
            cur.skip(".", "off")
            one = cur.low(1) in ("1", "one") or cur.low(1) == "a" and (cur.kind(2) == "kind" or thing_word(cur.low(2)) == "st")  # not "into a ring"
            if cur.accept("tog", "together") or cur.low() in ("as", "into") and one:
                if cur.low() in ("as", "into"):
                    cur.at += 2
                    cur.at += cur.kind() == "kind" or thing_word(cur.low()) == "st"
                return Make(f"{kind}{n.at(0)}tog" if kind else "dec", ONE, span=cur.span_from(start))
    cur.at = start
    return None


_OF_ROUNDS = frozenset("square motif block circle medallion".split())  # what is made in rounds as often as in rows


def _a_row_of(cur: Cursor) -> Node:
    """ "work a row of sc all around": along an edge whose length nobody told, or over the row where no edge is named."""
    start = cur.at
    kind = str(cur.token(4).value)  # type: ignore[union-attr]
    cur.at += 5
    said = []
    while not cur.done and cur.kind() not in ("sep", "close", "open", "star") and cur.low() not in ("working", "making"):
        said.append(cur.take().text.lower())
    if {"around", "round"} & set(said) or EDGES & set(said):
        return EdgeRun(kind, None, "around" if _OF_ROUNDS & set(said) else "outline", span=cur.span_from(start))
    return Make(kind, ONE, Place("each", None, STITCH), span=cur.span_from(start))


def _together(cur: Cursor, before: list[Node]) -> Node | None:
    """ "dc in next 4 dc, worked off together as one cluster": one cluster over them."""
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
