"""Increases and decreases told for a whole row: evenly, every k-th, at the ends, in the centre, "one more between"."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from loopwright.model.tree import (
    ONE,
    AtEnds,
    Chain,
    Either,
    Evenly,
    EveryKth,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Unknown,
)
from loopwright.notation.cursor import Cursor
from loopwright.notation.places import place
from loopwright.notation.things import thing

Op = Literal["inc", "dec"]
_OPS: dict[str, Op] = {
    "inc": "inc", "increase": "inc", "increasing": "inc", "incr": "inc", "incs": "inc", "increases": "inc",
    "widen": "inc", "widening": "inc", "narrow": "dec", "narrowing": "dec",
    "dec": "dec", "decrease": "dec", "decreasing": "dec", "decr": "dec", "decs": "dec", "decreases": "dec",
}
_LEAD = frozenset("and while working but evenly by making".split())
_SPREAD = frozenset("spaced spacing space evenly around across over in on the row rnd round this each them apart as you go every per next".split())
_THAT_ROW = frozenset("each every per this next".split())
_EVERY = frozenset({"every", "each"})


def shaping(cur: Cursor) -> Node | None:
    """ "inc 8 sts evenly", "dec evenly to 54 sts", "inc in every 4th st", "dec 1 st at each end"; nothing taken when it is none."""
    start = cur.at
    cur.skip(*_LEAD) if cur.low() in _LEAD and any(cur.low(i) in _OPS for i in range(1, 3)) else None
    op = _OPS.get(cur.low().rstrip("."))
    n = None
    if op is None and cur.kind() in ("num", "blank") and _OPS.get(cur.low(1).rstrip(".")) is not None and cur.low(2) in ("evenly", "spaced"):
        n = cur.number()  # "6 increases evenly spaced"
        op = _OPS.get(cur.low().rstrip("."))
    if op is None:
        cur.at = start
        return None
    cur.at += 1
    if op == "dec" and cur.low() == "by" and cur.low(1) in ("working", "taking", "making"):
        cur.at += 2  # "decrease by working 2 tr together": what follows is the decrease
        return Mark("note", span=cur.span_from(start))
    made = _evenly(cur, op, n) or _every(cur, op) or _where(cur, op)
    if made is None:
        cur.at = start
        return None
    return replace(made, span=cur.span_from(start))


def _evenly(cur: Cursor, op: Op, n: Num | None) -> Evenly | None:
    mark = cur.at
    evenly = cur.accept("evenly")
    n = n or cur.number()
    if n is None and cur.kind() == "times":
        n = Num((cur.take().value[0],))
        evenly = evenly or cur.kind() in ("sep", "end") and (n.at(0) or 0) > 1 and cur.low(-2) in ("widen", "narrow", "increase", "decrease")  # "Widen 5 times."
    cur.skip("more") if n is not None else None
    named = thing(cur)
    alone = named is not None and mark == 1 and cur.lows[0] in ("increase", "decrease", "widen", "narrow") and n is not None and (n.at(0) or 0) > 1
    evenly = evenly or alone and (cur.kind() == "end" or cur.low() == "." and cur.kind(1) == "end")  # "3rd round.—Increase 8 stitches."
    cur.skip("times", "more")
    to = None
    twice = False
    while cur.low() in _SPREAD or cur.low() == "," and cur.low(1) in ("evenly", "spaced", "spacing"):
        one_row = cur.low() in _THAT_ROW and cur.low(1) in ("rnd", "round", "row")  # "inc 6 sc on each rnd", "dec 4 this row"
        evenly = evenly or cur.low() in ("evenly", "spaced", "spacing") or one_row and n is not None
        cur.at += 1
        twice = twice or cur.low() in ("end", "ends", "half") and cur.low(-1) == "each"
    if evenly and twice and n is not None:  # "increasing 3 sc evenly around each end": of the two
        cur.at += 1
        n = Num(tuple(v * 2 if v is not None else None for v in n.values), n.blank, n.span)
    cur.accept_words("as before") if evenly else None
    if evenly and cur.accept("to"):
        to = cur.number()
        thing(cur)
    if evenly and (n is not None or to is not None):
        return Evenly(op, n, to)
    cur.at = mark
    return None


def _every(cur: Cursor, op: Op) -> EveryKth | None:
    """ "in every 4th st", "in every other stitch", "every 3rd and 4th st" (two together)."""
    mark = cur.at
    if cur.accept("1", "one"):
        thing(cur)  # "inc 1 sc in every 2nd sc"
    cur.skip("in", "on", "st", "at", "into", "by", "missing", "skipping")
    if op == "inc" and cur.low() in ("working", "making"):
        cur.at += 1 + (cur.kind(1) == "times" or cur.low(1) in ("2", "two"))  # "by working twice into every tenth stitch"
        cur.at += cur.kind() == "kind"
        cur.skip("in", "into", "on")
    if cur.low() in _EVERY:
        cur.at += 1
        if cur.kind() == "ord":
            k = int(cur.take().value)
            if cur.low() in ("and", "&") and cur.kind(1) == "ord":
                cur.at += 1
                k = int(cur.take().value)
            thing(cur)
            if 1 < k < 1000:
                return EveryKth(op, k)
        elif cur.low() in ("other", "alternate", "second"):
            cur.at += 1
            thing(cur)
            return EveryKth(op, 2)
    cur.at = mark
    return None


def _where(cur: Cursor, op: Op) -> AtEnds | Evenly | InTurn | Make | None:
    mark = cur.at
    n = cur.number()
    named = thing(cur)
    if op == "dec" and n is not None and cur.low() == "over" and (taken := _over(cur, n)):
        kind = named.kind if named is not None and named.kind != "st" else ""
        return Make(f"{kind}{taken}tog" if kind or taken > 2 else "dec", ONE)
    if n is None and cur.low() not in ("at", "on", "in"):
        cur.at = mark
        return None
    ends = _ends(cur)
    if ends is not None:
        if cur.low() in ("on", "of", "in") and (row := next((i for i in (2, 3) if cur.low(i) in ("row", "rnd", "round")), 0)) and {cur.low(row - 1)} <= {"next", "this", "following"}:
            cur.at += row + 1  # "at neck edge on next row"
        _others(cur)
        return AtEnds(op, n or Num((1,)), ends)
    if n is not None and cur.low() in ("in", "at", "into") and cur.low(1) in ("the", "center", "centre", "middle"):
        cur.at += 1
        cur.skip("the", "center", "centre", "middle")
        thing(cur)
        return _in_centre(n) if op == "inc" and n.values else Evenly(op, n)
    cur.at = mark
    return None


def _over(cur: Cursor, n: Num) -> int:
    """ "dec 1 sc over next 2 sc": how many become that many fewer, as one; 0 and nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("the", "next")
    many = cur.number()
    thing(cur)
    fewer = n.at(0) or 0
    if many is None or many.at(0) != fewer + 1 or len(many.values) > 1 or not 0 < fewer < 9:
        cur.at = start
        return 0
    return fewer + 1


def _in_centre(n: Num) -> InTurn:
    """Each stitch once, the centre one so many times more."""
    more = Num(tuple(v + 1 if v is not None else None for v in n.values))
    return InTurn((Make("st", ONE, Place("each", None)), Group((Make("st", more),), Place("each", None, centre=True))))


_PARTS = frozenset("top back front bottom".split())


def _ends(cur: Cursor) -> int | None:
    """ "at each end", "at both ends", "at beg and end of row", "at armhole edge"."""
    start = cur.at
    cur.skip("at", "on", "the", "in")
    if cur.low() in ("each", "both") and cur.low(1) in ("end", "ends", "side", "sides", "edge", "edges"):
        cur.at += 2
        cur.skip("of", "row", "the", "needle", "every", "each")
        return 2
    if cur.low() in ("beg", "beginning", "start") and cur.low(1) in ("and", "&") and "end" in (cur.low(2), cur.low(3)):
        cur.at += 3 if cur.low(2) == "end" else 4
        cur.skip("of", "the", "row")
        return 2
    if cur.low() in _PARTS and cur.low(1) == "of" and cur.kind(2) == "word" and (cur.kind(3) in ("sep", "end") or cur.low(3) in ("on", "in", "of", "every", "each")):
        cur.at += 3  # "at back of head", "at top of sleeve"
        return 1
    if cur.low() in ("beg", "beginning", "start", "end") or cur.low(1) in ("edge", "end", "side") and (cur.kind() == "word" or cur.low() in ("one", "1")):
        cur.at += 1 if cur.low() in ("beg", "beginning", "start", "end") else 2
        cur.skip("of", "the", "row")
        return 1
    cur.at = start
    return None


def _others(cur: Cursor) -> None:
    """ ", sc in all other sts": what is worked even anyway."""
    mark = cur.at
    cur.skip(",", "and")
    if cur.kind() == "kind":
        cur.at += 1
        cur.skip("in", "all", "the", "each")
        if cur.low() in ("other", "others", "rest", "remaining"):
            cur.at += 1
            thing(cur)
            return
    cur.at = mark


def absorbed(before: list[Node], node: Node) -> Node:
    """ "sc in each st around, inc 6 evenly": one instruction; the plain stitches told before it are taken off `before`."""
    last = before[-1] if before else None
    if isinstance(node, AtEnds) and node.ends == 1 and before and not (isinstance(last, Make) and last.place is not None and last.place.quant == "each" and last.place.left is None):
        return Make(node.op, node.n, span=node.span)  # "…, dec 1 st at end": where the row has come to
    if isinstance(node, Evenly) and isinstance(last, Repeat) and last.mode == "once" and last.nodes:
        before[-1:] = last.nodes  # "sc in same st and in each st around, decreasing 4 sts evenly"
        last = before[-1]
    if not isinstance(node, (Evenly, EveryKth, AtEnds, InTurn)) or not isinstance(last, Make) or last.place is None:
        return node
    if last.place.quant != "each" or last.place.left is not None or last.n.at(0) != 1:
        return node
    before.pop()
    if isinstance(node, InTurn):
        return replace(node, parts=(last, *node.parts[1:]))
    return replace(node, kind=node.kind or last.kind)


def plainly(cur: Cursor) -> Node | None:
    """ "work twice into each st": two in each."""
    start = cur.at
    if cur.low() in ("twice", "thrice") and cur.low(1) in ("in", "into"):
        times = cur.take().value[0]
        where = place(cur)
        if where is not None:
            return Make("st", Num((times,)), where, span=cur.span_from(start))
    if cur.low() == "work" and cur.low(1) == "off" and cur.kind(2) == "num" or cur.low() == "work" and cur.low(1) == "off" and cur.low(2) == "last":
        return _worked_off(cur, start)
    cur.at = start
    return None


def _worked_off(cur: Cursor, start: int) -> Node | None:
    """ "work off 2 sc as 1": a decrease told in words."""
    cur.at += 2
    cur.skip("the", "next", "last", "first")
    n = cur.number()
    found = thing(cur)
    if n is None or cur.low() not in ("as", "together") or not 1 < (n.at(0) or 0) < 30:
        cur.at = start
        return None
    as_one = cur.low() == "as"
    cur.at += 1
    if as_one:
        cur.skip("1", "one", "a")
        thing(cur)
    kind = found.kind if found is not None and found.kind != "st" else "sc"
    return Make(f"{kind}{n.at(0)}tog", span=cur.span_from(start))


_SHORT = frozenset("st sc inc".split())
_PLAIN = frozenset("st sc hdc dc tr".split())


def every_kth(nodes: list[Node]) -> list[Node]:
    """ "2 sc in every 3rd st" alone: those between are worked too, so that it increases; or they are passed over, which the worker finds out."""
    said = [n for n in nodes if not isinstance(n, (Unknown, Mark, Join, Chain)) and not (isinstance(n, Make) and n.kind == "sl st")]
    made = said[0] if len(said) == 1 else None
    where = made.place if isinstance(made, Make) else None
    if not isinstance(made, Make) or where is None or where.quant != "every" or where.left is not None or where.upto is not None or where.thing.kind not in (*_PLAIN, "loop" if made.kind == "st" else ""):
        return nodes
    if made.n.at(0) != (1 if made.kind == "inc" else 2) or where.loop != "both" or where.relation != "in":
        return nodes
    kth = EveryKth("inc", where.k or 2, None if made.kind in ("inc", "st") else made.kind, span=made.span)
    increases = made.kind in _SHORT or made.kind == "st" or kth.k > 2
    first: tuple[Node, Node] = (kth, made) if increases else (made, kth)
    at = nodes.index(made)
    return [*nodes[:at], Either("every-kth", ((0.0, first[:1]), (0.6, first[1:])), made.span), *nodes[at + 1 :]]


def even_between(nodes: list[Node]) -> list[Node]:
    """ "Dec 1 st at each end, sc in each st across": what is worked between the ends is told with them, and is no second row."""
    at = next((i for i, n in enumerate(nodes[:-1]) if isinstance(n, AtEnds)), None)
    if at is None:
        return nodes
    ends, then = nodes[at], nodes[at + 1]
    even = isinstance(then, Make) and then.n.at(0) == 1 and then.place is not None and then.place.quant == "each" and then.place.left is None and then.place.upto is None
    if not even or not isinstance(ends, AtEnds) or any(isinstance(n, (Make, Repeat, Group)) for n in (*nodes[:at], *nodes[at + 2 :])):
        return nodes
    return [*nodes[:at], replace(ends, kind=ends.kind or then.kind), *nodes[at + 2 :]]  # type: ignore[union-attr]
