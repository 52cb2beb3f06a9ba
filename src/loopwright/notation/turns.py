"""Stitches worked in turn with what is worked instead at certain places: "sc in each dc, working 3 sc in each corner"."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    AtEnds,
    Chain,
    EdgeRun,
    Either,
    Evenly,
    Group,
    InTurn,
    Make,
    Node,
    Num,
    Place,
    Repeat,
)
from loopwright.notation import body
from loopwright.notation.at_corners import with_corners
from loopwright.notation.cursor import Cursor
from loopwright.notation.lists import one_place
from loopwright.notation.places import place
from loopwright.notation.things import thing

MOST = 20  # times that a row's "working" is followed up in vain


def working(cur: Cursor, before: list[Node]) -> Node | None:
    """ "1 sc in each dc, working 3 sc in each corner": what is worked instead where the second place comes."""
    if cur.working or cur.fruitless > MOST:  # one inside another would be read over and over
        return None
    if (ends := _both_ends(cur, before) or _after_every(cur, before)) is not None:
        return ends
    start, unknown, cur.working = cur.at, cur.unknown, True
    cur.at += 1
    inside = _but_so_many(cur, before)
    while not inside and not cur.done and cur.low() not in (".", ";") and cur.kind() not in ("close", "star") and (cur.kind() != "open" or not inside):
        if cur.low() in ("rep", "repeat", "join", "turn", "ending", "until"):
            break
        at = cur.at
        found = body.one(cur, inside)
        if found is not None:
            inside.append(found)
            one_place(inside, 0)
            if placed(found) is not None and cur.low() != "and":
                break
        if cur.at == at:
            cur.at += 1
    cur.working = False
    group = as_group(inside)
    if group is None or group.place is None or group.place.quant not in ("each", "next") or not isinstance(before[-1], (Make, Group, InTurn, EdgeRun, Repeat)):
        cur.at, cur.unknown, cur.fruitless = start, unknown, cur.fruitless + 1
        return None
    unpacked(before, len(before) - 1)
    base = before[-1]
    if isinstance(base, EdgeRun):
        whole = base.where in ("around", "outline")
    else:
        whole = isinstance(base, InTurn) or (there := placed(base)) is not None and there.quant == "each"
    if not whole:
        cur.at, cur.unknown = start, unknown
        return None
    _at_each(cur, group)
    before.pop()
    parts = base.parts if isinstance(base, InTurn) else (base,)
    return InTurn((*parts, replace(group, place=replace(group.place, quant="each", n=None))), span=cur.span_from(start))


def unpacked(nodes: list[Node], at: int) -> int:
    """ "sc in same st and in each dc around" as the two that it is: what follows is said of the second; gives where that one stands."""
    told = nodes[at]
    if not isinstance(told, Repeat) or told.mode != "once" or not told.nodes or not isinstance(told.nodes[-1], (Make, Group)):
        return at
    nodes[at : at + 1] = told.nodes
    return at + len(told.nodes) - 1


def _both_ends(cur: Cursor, before: list[Node]) -> Node | None:
    """ "sc in each st across, working 2 sc in first and last sts": one more at each end; nothing taken elsewhere."""
    base, start = before[-1], cur.at
    each = isinstance(base, Make) and base.place is not None and base.place.quant == "each" and base.place.n is None and base.place.left is None
    cur.at += 1
    n = cur.number()
    if each and n is not None and n.values == (2,) and cur.kind() == "kind" and isinstance(base, Make) and cur.take().value == base.kind and cur.accept("in", "into"):
        cur.skip("each", "of", "both", "the")
        if (cur.accept_words("first and last") or cur.accept_words("first and the last")) and cur.accept("st", "sts", "stitch", "stitches"):
            before.pop()
            return AtEnds("inc", ONE, 2, base.kind, base.span.cover(cur.span_from(start)))
    cur.at = start
    return None


def _but_so_many(cur: Cursor, before: list[Node]) -> list[Node]:
    """ "…, but 3 under the centre chain": of the stitch told before; nothing taken elsewhere."""
    start, last = cur.at, before[-1]
    told = last.parts[-1] if isinstance(last, InTurn) else last
    told = told.nodes[0] if isinstance(told, Group) and len(told.nodes) == 1 else told
    n = cur.number() if cur.kind() == "num" and cur.kind(1) == "word" else None
    where = place(cur) if n is not None else None
    if n is None or where is None or not isinstance(told, Make):
        cur.at = start
        return []
    return [Make(told.kind, n, where, span=cur.span_from(start))]


def _after_every(cur: Cursor, before: list[Node]) -> Node | None:
    """ "1 dc on each, with a picot of 5 ch after every fifth": so many, and that, over and over; nothing taken elsewhere."""
    base = before[-1]
    words = next((i for i in range(1, 12) if cur.kind(i) in ("sep", "star", "end", "open", "close")), 12)
    behind = next((i for i in range(1, words) if cur.low(i) in ("after", "between") and cur.low(i + 1) in ("every", "each") and cur.kind(i + 2) == "ord"), 0)
    if not behind or not isinstance(base, Make) or base.n.at(0) != 1 or base.place is None or base.place.quant != "each":
        return None
    if base.place.n is not None or base.place.left is not None:
        return None
    start, unknown, stop = cur.at, cur.unknown, cur.at + behind
    cur.at += 1
    inside: list[Node] = []
    while cur.at < stop:
        at = cur.at
        if (found := body.one(cur, inside)) is not None:
            inside.append(found)
        cur.at += cur.at == at
    if cur.at != stop or cur.unknown > unknown or not inside or any(not isinstance(n, (Chain, Make)) or getattr(n, "place", None) is not None for n in inside):
        cur.at, cur.unknown = start, unknown
        return None
    k = int(cur.tokens[stop + 2].value)
    cur.at = stop + 3
    thing(cur)
    before.pop()
    many = replace(base, place=Place("next", Num((k,)), base.place.thing, loop=base.place.loop))
    return Repeat((many, *inside), "end", span=base.span.cover(cur.span_from(start)))


def _at_each(cur: Cursor, group: Group) -> None:
    """ "at each corner", "at each of the 6 marked points" says only which places were meant."""
    cur.skip(",") if cur.low(1) == "at" else None
    if cur.low() == "at" and cur.low(1) in ("each", "all", "every", "the", "both"):
        cur.at += 2
        cur.skip("of", "the")
        cur.number()
        while cur.kind() in ("word", "kind") and cur.low() not in ("and", "join", "turn", "work"):
            cur.at += 1


def placed(node: Node) -> Place | None:
    """The place of a stitch or group, None for any other node."""
    return node.place if isinstance(node, (Make, Group)) else None


def as_group(nodes: list[Node]) -> Group | None:
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


def after_all(out: list[Node], star: int | None = None) -> None:
    """ "Sc in each sc around, 2 sc in ch-2 sp": where no such space is left behind the last stitch, in turn with the others.

    Behind a star ("* sc in each sc, 3 sc in ch-2 sp, …; repeat from *") each round goes up to its space.
    """
    base, last = out[-2], out[-1]
    here, there = placed(base), placed(last)
    if here is None or there is None or here.quant != "each" or here.n is not None or here.left is not None or here.upto is not None:
        return
    if there.n != ONE or there.thing.kind not in ("sp", "loop", "corner") or here.thing.kind in ("sp", "loop", "corner", "ch"):
        return
    if star is not None and star <= len(out) - 2 and there.thing.kind != "corner":
        out[-2] = replace(base, place=replace(here, upto=there.thing))  # type: ignore[arg-type]
        return
    group = as_group([last])
    if group is not None:
        turn = InTurn((base, replace(group, place=replace(there, quant="each", n=None))), span=base.span.cover(last.span))
        out[-2:] = [Either("in-turn", ((0.0, (base, last)), (0.3, (turn,))), turn.span)]


def in_turn(out: list[Node], star: int | None = None) -> None:
    """ "1 dc in each dc, 2 dc, ch 2, 2 dc in each ch-2 sp": the two are worked as their places come."""
    last = out[-1]
    if isinstance(last, Evenly) and last.n is not None and len(out) > 1 and isinstance(out[-2], AtEnds) and out[-2].op == last.op:
        ends = out[-2]  # "dec 1 st at each end and dec 10 more evenly": all in one row
        out[-2:] = [replace(last, n=Num(tuple((a or 0) + (ends.n.at(i) or 1) * ends.ends for i, a in enumerate(last.n.values))))]
        return
    there = placed(last)
    if there is not None and there.quant == "next" and len(out) > 1:
        after_all(out, star)
        return
    if there is None or there.quant != "each" or there.left is not None:
        return
    first = len(out) - 1
    while first > 0 and isinstance(out[first - 1], (Make, Chain)) and placed(out[first - 1]) is None:
        first -= 1
    while first < len(out) - 1 and isinstance(out[first], Chain):
        first += 1
    if first == 0:
        return
    first = unpacked(out, first - 1) + 1
    base = out[first - 1]
    if isinstance(base, Repeat) and there.thing.kind == "corner":
        corner = as_group(out[first:])
        sides = with_corners(out[: first - 1], base, corner) if corner is not None else None
        if sides is not None:
            out[first - 1 :] = [sides]
        return
    here = placed(base)
    sorts = base.parts if isinstance(base, InTurn) else (base,)
    whole = isinstance(base, InTurn) or isinstance(base, EdgeRun) and base.where in ("around", "outline") and there.thing.kind == "corner"
    if not whole and (here is None or here.quant != "each" or here.left is not None):
        return
    if any((placed(p) or there).thing == there.thing for p in sorts if not isinstance(p, EdgeRun)):
        return
    group = as_group(out[first:])
    if group is None:
        return
    out[first - 1 :] = [InTurn((*sorts, group), span=base.span.cover(group.span))]
