"""Slip stitches that close: a ring, a round, a band joined to an edge as it is worked."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import ONE, STITCH, Join, Make, Mark, Node, Place, Ring, Thing
from loopwright.notation.cursor import Cursor
from loopwright.notation.moves import on_another, to_a_ring
from loopwright.notation.places import place
from loopwright.notation.things import thing


def onto_another(cur: Cursor, start: int) -> Node | None:
    """ "sl st in next 2 sts of rnd 16": a band joined to an edge as it is worked, no stitch of the band; nothing taken elsewhere."""
    mark = cur.at
    where = place(cur, bare=True) if cur.accept("to") else place(cur)
    if where is not None and where.quant == "next" and on_another(cur):
        return Mark("note", span=cur.span_from(start))
    cur.at = mark
    return None


def slip_join(cur: Cursor, start: int) -> Node | None:
    """ "sl st to form ring", "sl st to first dc", "sl st in top of ch 3": a join; nothing taken when it is none."""
    if (picot := _picot(cur, start)) is not None:
        return picot
    if cur.low() in ("across", "over", "along") and cur.low(1) == "to" and (there := _across(cur, start)) is not None:
        return there
    if cur.low() in ("to", "into", "for") and cur.low(1) in ("a", "the") and to_a_ring(cur):
        return Ring(False, span=cur.span_from(start))
    if cur.low() == "to" or cur.low() == "top" and start > 3:
        return _slipped_to(cur, start)
    mark = cur.at
    where = None if start > 3 and _at_the_end(cur) else place(cur)
    if where is not None and where.quant == "first" and where.thing.kind in ("ch", "st") and (cur.done or cur.kind() == "sep") and _a_chain_alone(cur, start) and (cur.done or cur.kind(1) == "end" or "ring" in cur.lows[cur.at :]):
        return Ring(False, span=cur.span_from(start))  # "ch 48, sl st in first ch."
    if where is not None and to_a_ring(cur):
        return Ring(False, span=cur.span_from(start))
    if where is not None and cur.low() in ("at", "of") and cur.low(1) in ("beg", "beginning", "start"):
        cur.at += 2  # "sl st in 3rd ch at beg of rnd"
        cur.skip("of", "the", "row", "rnd", "round")
    if where is not None and cur.low() == "to" and cur.low(1) in ("join", "close") and cur.kind(2) in ("end", "sep"):
        cur.at += 2  # "slip st in top of beginning ch to join"
    closes = _ends_round(cur)
    if where is not None and closes and start > 3 and (where.quant == "first" or where.thing.kind == "tch" or where.of is not None and where.of.kind in ("tch", "ch", "sp")):
        return Join(where, "sl st", span=cur.span_from(start))
    if where is not None and closes and _of_first_chain(cur, where, start):
        return Join(where, "sl st", span=cur.span_from(start))
    bare = where is None and (start > 3 or start > 1 and _all_round(cur, start)) and (cur.done or cur.low() in (".", ";", ",", "–", "—", "-") and (cur.kind(1) == "end" or cur.low(1) in ("turn", "ch", "fasten", "do")))
    if bare or _next_round(cur, where, start):
        return Join(None, "sl st", span=cur.span_from(start))
    cur.at = mark
    return None


def _at_the_end(cur: Cursor) -> bool:
    """Whether "at the end", "at end of each rnd" stands behind a slip stitch; takes it."""
    ahead = 1 + (cur.low(1) in ("the", "each", "every"))
    if cur.low() != "at" or cur.low(ahead) != "end":
        return False
    cur.at += ahead + 1
    if cur.accept("of"):
        cur.skip("the", "each", "every", "this", "row", "rnd", "round")
    return True


def _a_chain_alone(cur: Cursor, start: int) -> bool:
    """Whether the row's words before a token make a chain of some length and nothing else."""
    said = [t for t in cur.tokens[:start] if t.kind not in ("sep", "num")]
    return len(said) == 1 and said[0].value == "ch" and any(t.kind == "num" and isinstance(t.value, int) and t.value > 3 for t in cur.tokens[:start])


def _picot(cur: Cursor, start: int) -> Node | None:
    """ "ch 3, sl st in last sc made", "… in sc just made", "… in first ch of ch-3": back where the chain began; nothing taken elsewhere."""
    mark = cur.at
    if not any(t.value == "ch" for t in cur.tokens[max(0, start - 4) : start]) or not cur.accept("in", "into", "to"):
        cur.at = mark
        return None
    cur.skip("the", "top", "of")
    if cur.low() in ("first", "1st") and cur.kind(1) == "kind" and cur.token(1).value == "ch" and cur.low(2) == "of":  # type: ignore[union-attr]
        cur.at += 3
        cur.skip("the", "these", "those")
        if thing(cur) is not None:
            return Make("sl st", ONE, Place("first", ONE, Thing("ch")), span=cur.span_from(start))
    last = cur.accept("last")
    if cur.kind() == "kind" and (last and cur.low(1) in ("made", "worked") or cur.low(1) == "just" and cur.low(2) in ("made", "worked")):
        cur.at += 2 + (cur.low(1) == "just")
        return Make("sl st", ONE, Place("same", ONE, STITCH), span=cur.span_from(start))
    cur.at = mark
    return None


def _across(cur: Cursor, start: int) -> Node | None:
    """ "sl st across to first ch-1 sp": the hook goes there; nothing taken elsewhere."""
    mark = cur.at
    cur.at += 2
    goal = place(cur, bare=True)
    if goal is not None and goal.thing.kind in ("sp", "loop", "corner"):
        return Make("sl st", ONE, replace(goal, quant="next"), span=cur.span_from(start))
    cur.at = mark
    return None


def _slipped_to(cur: Cursor, start: int) -> Node:
    """From "to" on: a ring, the end of a round, or the stitch that the hook goes to."""
    if cur.low(1) == "join" and sum(t.kind == "kind" for t in cur.tokens[:start]) == 1 and cur.tokens[0].value == "ch":
        cur.at += 2
        return Ring(False, span=cur.span_from(start))  # "ch 64 (72, 80), sl st to join"
    if cur.low(1) in ("close", "join") and cur.low(2) in ("", ".", ",", ";", ")", "rnd", "round", "turn") and start > 3:
        cur.at += 2 + (cur.low(2) in ("rnd", "round"))
        return Join(None, "sl st", span=cur.span_from(start))  # "…, sl st to join": a round that ends, no ring
    if cur.low(1) in ("form", "make", "ring", "close", "join"):
        while cur.low() in ("to", "form", "make", "ring", "a", "loop", "circle", "close", "join"):
            cur.at += 1
        return Ring(False, span=cur.span_from(start))
    cur.at += 1
    cur.skip("of") if cur.low(-1) == "top" else None  # "sl st top beg sc"
    where = place(cur, bare=True)
    if cur.low() == "to" and cur.low(1) in ("join", "close"):
        cur.at += 2  # "sl st to first ch to join"
        if where is not None and where.thing.kind in ("ch", "st") and where.quant in ("first", "kth") and [t.value for t in cur.tokens[:start] if t.kind == "kind"] == ["ch"]:
            return Ring(False, span=cur.span_from(start))
    if to_a_ring(cur) and {t.value for t in cur.tokens[:start] if t.kind == "kind"} == {"ch"}:
        return Ring(False, span=cur.span_from(start))  # "ch 4, sl st to first ch to form ring"
    if start < 3 and where is not None and where.quant == "first" and where.thing.kind in ("sp", "loop", "corner"):
        return Make("sl st", ONE, replace(where, quant="next"), span=cur.span_from(start))  # where the round begins
    of_chain = where is not None and (where.thing.kind == "ch" or where.thing == STITCH and where.of is not None and where.of.kind in ("ch", "sp"))
    third = where is not None and of_chain and where.quant == "kth" and not where.from_hook and start > 3  # of the chain that the round began with
    if where is not None and (third or where.quant == "first" or where.thing.kind in ("tch", "join")):
        return Join(where, "sl st", span=cur.span_from(start))
    moves = where is not None and not _next_round(cur, where, start) and not _own_chain(cur, where, start)
    return Make("sl st", ONE, where, span=cur.span_from(start)) if moves else Join(None, "sl st", span=cur.span_from(start))


def _own_chain(cur: Cursor, where: Place, start: int) -> bool:
    """Whether "sl st to ch 1" at a round's end means the chain that the round began with."""
    if where.thing.kind != "sp" or where.quant != "next" or where.thing.length is None or start < 4 or cur.tokens[0].value != "ch" or not _ends_round(cur):
        return False
    return bool(cur.tokens[1].value == where.thing.length)


def _of_first_chain(cur: Cursor, where: Place, start: int) -> bool:
    """Whether "sl st in 3rd ch" behind a repeat means the chain that the round began with."""
    if where.quant != "kth" or where.thing.kind != "ch" or where.from_hook or where.of is not None or start < 4:
        return False
    begun = cur.tokens[0].value == "ch" or cur.kinds[0] == "num" and cur.tokens[1].value == "ch"
    return begun and bool({"rep", "repeat"} & set(cur.lows[:start]))


def _ends_round(cur: Cursor) -> bool:
    """Whether nothing is worked behind what was read last."""
    return cur.done or cur.low() == "and" and cur.low(1) in ("fasten", "finish", "break", "cut", "fo") or cur.low() in (".", ";", ",", ")") and cur.low(1) in ("", "turn", "ch", "fasten", "fo", "do", "not", "cut", "break", "finish", ".")


_STITCHES = frozenset("st sc hdc dc".split())


def _next_round(cur: Cursor, where: Place | None, start: int) -> bool:
    """Whether a slip stitch at a round's end goes into the next round's first stitch."""
    return where is not None and where.quant == "next" and where.thing.kind in _STITCHES and start > 0 and _ends_round(cur) and _all_round(cur, start)


def _all_round(cur: Cursor, at: int) -> bool:
    """Whether the words before a token went all around: "sc in each st around. (12) Sl st …"."""
    at -= 1
    while at > 0 and cur.kinds[at] in ("sep", "close", "num", "open") or at > 1 and cur.kinds[at + 1] == "close":
        at -= 1
    return cur.tokens[at].low in ("around", "round")
