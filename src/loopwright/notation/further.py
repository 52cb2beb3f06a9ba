"""Further places of a stitch or a group told before: "in next st and in each of next 3", "in same sp and in each ch-3 sp around"."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from loopwright.model.tree import ONE, Group, InTurn, Make, Mark, Node, Num, Place, Repeat, Skip
from loopwright.notation.after_places import END_WORDS
from loopwright.notation.cursor import Cursor
from loopwright.notation.extents import left_words, to_begin, up_to
from loopwright.notation.places import ordinal, place
from loopwright.notation.things import thing

NOTE_WORDS = 60


def denied(words: list[str]) -> bool:
    """Whether "counts" is said to be not so: "does not count", "doesn't count"."""
    return any(w in ("not", "never", "doesnt") or w.endswith(("n't", "n’t")) for w in words)


_PASSED = frozenset("sk skip skipped skipping missed miss unworked".split())
_INTO = frozenset("in into on under across around".split())
_LEADS = _INTO | frozenset("each every next following".split())


def _a_space(cur: Cursor) -> bool:
    """Whether "and" is followed by a space told by its chain: "sl st in next dc and ch-1 sp"."""
    mark = cur.at
    cur.at += 1
    found = thing(cur) if cur.kind() == "kind" and cur.token().value == "ch" else None  # type: ignore[union-attr]
    cur.at = mark
    return found is not None and found.kind in ("sp", "loop") and found.length is not None


_GATHERED = frozenset("cluster popcorn puff bobble dec".split())


def over_more(cur: Cursor, made: Make, start: int) -> Node | None:
    """ "Cluster over next 2 dc and ch-3 sp", "sc2tog over next sp, next sc and next sp": one stitch, and what it goes over besides; None elsewhere."""
    if made.kind not in _GATHERED and "tog" not in made.kind or made.n != ONE or cur.low() not in ("and", ",") or "over" not in cur.lows[start : cur.at]:
        return None
    besides: list[Node] = []
    while cur.low() == "and" or cur.low() == "," and cur.low(1) == "next":
        mark = cur.at
        cur.at += 1
        cur.skip("the", "next", "following", "over")
        n = cur.number() if cur.kind() == "num" and cur.kind(1) == "kind" else ONE
        found = thing(cur)
        if found is None or n is None:
            cur.at = mark
            break
        besides.append(Skip(n, found, span=cur.span_from(mark)))
    if besides and "tog" in made.kind and made.place is not None:  # one of its legs goes into each of them
        made = replace(made, place=None, taking=made.place.n.at(0) if made.place.n is not None else 1)
    return Repeat((made, *besides), "once", span=cur.span_from(start)) if besides else None


def _from_hook(made: Make, said: list[str]) -> Make:
    """ "Hdc in 2nd ch (skipped ch counts as hdc)": counted from the hook, though it does not say so; the stitch as it is elsewhere."""
    where = made.place
    if where is None or where.quant != "kth" or where.thing.kind != "ch" or where.of is not None or _PASSED.isdisjoint(said):
        return made
    return replace(made, place=replace(where, from_hook=True))


def _with_space(cur: Cursor, close: int) -> str:
    """ "(counts as dc, ch 2)", "(skipped chs count as dc and ch-1 sp)": of how many chains the space is that they are beside a stitch, "" where none is told."""
    for i in range(3, close):
        token, n = cur.token(i), cur.token(i + 1 + (cur.low(i + 1) == "-"))
        if token is not None and token.value == "ch" and cur.low(i - 1) in (",", "and", "+", "plus", "&") and n is not None and n.kind == "num":
            return f"space {n.value}"
    return ""


def more_places(cur: Cursor, made: Make, start: int) -> Node:
    """ "in next st and in each of next 3": the same stitch in further places."""
    parts: list[Node] = [made]
    skipped = ""
    if cur.kind() == "open":
        close = next((i for i in range(2, NOTE_WORDS) if cur.kind(i) == "close"), 0)
        said = any(cur.low(i).startswith("count") for i in range(1, close)) or close and cur.low(1) in ("is", "first", "1st", "makes")
        if close and said:
            text = [cur.low(i) for i in range(1, close)]
            made = parts[0] = _from_hook(made, text)
            if made.place is not None and made.place.from_hook:
                skipped = "no" if denied(text) else _with_space(cur, close) or "yes"
                parts.insert(0, Mark("skipped-counts", skipped))
            if cur.low(close + 1) == "and" or skipped:
                cur.at += close + 1
    at = made.place or Place("next")  # the place told last
    while made.place is not None and cur.low() == "and" and (cur.low(1) in _LEADS or made.place.quant == at.quant == "next" and _a_space(cur)):
        mark = cur.at
        cur.at += 1
        if cur.low() in ("across", "around") and place(cur) is None:
            cur.at += 1
            parts.append(replace(made, n=ONE, place=Place("each", None), span=cur.span_from(mark)))
            break
        more = place(cur, bare=cur.low() not in _INTO)
        if more is None or cur.low() in ("work", "make"):
            cur.at = mark
            break
        if made.place.quant == more.quant == "each" and more.thing.kind in ("sp", "ch") and more.left is None:
            more = replace(more, left=_kept_back(cur, mark))
        if made.place.quant == "each" and made.place.n is None and more.quant == "next" and more.thing.kind == "ch" and (more.n or ONE) != ONE:
            more = replace(more, quant="each", n=None)  # "in each dc and in each of the 6 ch": as they come
        parts.append(replace(made, place=more, span=cur.span_from(mark)))
        at = more
    last = parts[-1]
    also = _and_things(cur, last) if isinstance(last, Make) else []
    if also and len(parts) > 1:  # "in next dc and in each dc and ch-1 sp across"
        parts[-1] = InTurn((last, *also), cur.span_from(start))
        return Repeat(tuple(parts), "once", span=cur.span_from(start))
    parts += also
    if len(parts) == 1:
        return made
    places = [p.place for p in parts if isinstance(p, Make) and p.place is not None]
    if all(p.quant == "each" and p.n is None and (p.left is None or p is places[-1]) for p in places) and len({p.thing for p in places}) == len(parts):
        return InTurn(tuple(parts), cur.span_from(start))  # "in each st and in each ch": as they come
    return Repeat(tuple(parts), "once", span=cur.span_from(start))


def _and_things(cur: Cursor, made: Make) -> list[Make]:
    """ "in each st and ch around", "in each dc and ch-1 sp across to next corner": the same stitch in each of what is told behind "and"."""
    parts: list[Make] = []
    while made.place is not None and made.place.quant == "each" and made.place.n is None and cur.low() == "and":
        mark = cur.at
        cur.at += 1
        cur.skip("each", "the")
        also = thing(cur)
        cur.at += cur.low() in END_WORDS and cur.low(1) in ("to", "up")
        upto = up_to(cur) if cur.low() in ("to", "up") else None
        left = left_words(cur) if upto is None and cur.low() in ("to", "until") else None
        ended = upto is None and left is None and (cur.accept_words("to end") or cur.accept_words("to the end") or to_begin(cur))
        cur.skip("of", "row", "rnd", "round") if ended else None
        told = upto is not None or left is not None or ended or cur.low() in (*END_WORDS, ",", ";", ".", "", "join", "turn", "slip", "sl", "fasten") or cur.kind() in ("close", "star")
        if also is None or also.kind not in ("ch", "sp", "loop", "st", "row") and also.kind not in ("dc", "sc", "hdc", "tr") or not told:
            cur.at = mark
            break
        cur.skip(*END_WORDS)
        parts.append(replace(made, place=replace(made.place, thing=also, upto=upto, left=left[0] if left is not None else None), span=cur.span_from(mark)))
    return parts


def _kept_back(cur: Cursor, mark: int) -> Num | None:
    """ "and in each ch-1 sp to last 2 sts": what the words from a token on keep back; None where they keep nothing back."""
    end = cur.at
    cur.at = next((i for i in range(mark, end - 2) if cur.lows[i] in ("to", "until")), end)
    left = left_words(cur) if cur.at < end else None
    same, cur.at = cur.at == end, end
    return left[0] if left is not None and same and left[1].kind == "st" else None


def more_for_group(cur: Cursor, made: Group) -> Node:
    """ "(sc, ch 2, sc) in same sp and in each ch-3 sp around": the same group in further places."""
    start, parts = cur.at, [made]
    while made.place is not None and cur.low() == "and" and cur.low(1) in ("in", "into", "each"):
        mark = cur.at
        cur.at += 1
        more = place(cur, bare=cur.low() == "each")
        if more is None or cur.low() in ("work", "make"):
            cur.at = mark
            break
        parts.append(replace(made, place=more, span=made.span.cover(cur.span_from(mark))))
    return made if len(parts) == 1 else Repeat(tuple(parts), "once", span=made.span.cover(cur.span_from(start)))


def further_ordinals(cur: Cursor, out: list[Node]) -> None:
    """ "sc in 2nd, 3rd and 4th dc of next shell": the others, each counted on from the one before. Nothing taken elsewhere."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant not in ("kth", "first") or last.place.from_hook or last.place.of is not None:
        return
    start, told = cur.at, [1 if last.place.quant == "first" else last.place.k or 0]
    while (ahead := next((i for i in range(3) if cur.kind(i) == "ord"), 3)) < 3 and all(cur.low(i) in (",", "and", "&") for i in range(ahead)):
        cur.at += ahead
        told.append(int(cur.token().value))  # type: ignore[union-attr]
        found = ordinal(cur, last.place.loop)
    if len(told) < 2 or min(told) < 1 or told != sorted(set(told)):
        cur.at = start
        return
    span = cur.span_from(start)
    out[-1] = replace(last, place=replace(found, k=told[0], span=last.place.span))
    for before, k in pairwise(told):
        if k - before > 1:
            out.append(Skip(Num((k - before - 1,)), found.thing, span=span))
        out.append(replace(last, place=Place("next", ONE, found.thing, loop=found.loop, span=span), span=span))
