"""The words of a row to nodes: recursive descent over tokens. What cannot be read becomes `Unknown` and reading goes on."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    Chain,
    Define,
    EdgeRun,
    Either,
    Group,
    InTurn,
    Join,
    Loop,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Ring,
    Skip,
    Spread,
    Thing,
    Unknown,
)
from loopwright.notation.cursor import FILLER, Cursor, thing_word
from loopwright.notation.olden import every_with_chain, in_order, spread
from loopwright.notation.phrases import between, in_turn, phrase
from loopwright.notation.places import END_WORDS, PREPOSITIONS, is_space_number, left_words, loop_words, place, thing, underside_words
from loopwright.notation.shaping import absorbed, plainly, shaping

MAX_DEPTH = 12
NOTE_WORDS = 60
LEFT_FREE = frozenset("missed skipped free unworked held remaining unused sleeve".split())
SHAPES = frozenset("shell fan scallop cluster popcorn puff bobble picot v-st cross-st petal".split())
SKIPS = frozenset("skip sk skp miss omit".split())
REMARKS = frozenset("increased decreased made completed formed".split())
QUIET = FILLER | frozenset("and with for so from hook yarn this rnd row round counting made last ending".split())


def numbers_only(cur: Cursor) -> list[Node]:
    """ "1, 1, 2 around": so many stitches in each next place, over and over. Empty, and nothing taken, where other words stand."""
    start = cur.at
    made: list[Node] = []
    while cur.kind() == "num":
        n = cur.number()
        if n is None:  # a decimal, which counts nothing
            break
        made.append(Make("st", n, Place("next"), span=cur.span_from(cur.at - 1)))
        cur.skip(",", "then", "and")
    if len(made) < 2 or not (cur.done or cur.low() in END_WORDS and cur.kind(1) in ("end", "sep")):
        cur.at = start
        return []
    around = not cur.done
    cur.at = len(cur.tokens) if around and cur.kind(1) == "end" else cur.at + around
    return [Repeat(tuple(made), "end", span=cur.span_from(start))] if around else made


def nodes_until(cur: Cursor, *ends: str) -> list[Node]:
    """Nodes up to a closing bracket (`ends` has "close"), a closing star ("star") or the end; the closing token is left standing."""
    out: list[Node] = []
    stars: list[int] = []
    cur.depth += 1
    cur.first_star.pop(cur.depth, None)
    while not cur.done and cur.kind() not in ends:
        at = cur.at
        if cur.low() in ("then", "rep", "repeat", "from", "*", "work", "and") and any(isinstance(n, Repeat) and n.stop_at is not None for n in out) and _to_mark(cur, out):
            pass
        elif cur.kind() == "star":
            _star(cur, out, stars)
        elif out and _late_place(cur, out, stars[-1] if stars else 0):
            pass
        elif cur.low() in ("and", "so") and (cur.accept_words("and so on") or cur.accept_words("so on")):
            cur.at -= 1
            _repeat_from(cur, out, stars)
        elif cur.low() in ("rep", "repeat", "rept", "r") and cur.low(1) in ("from", "between", "around", "across", "to", "*") or cur.low() in ("rep", "repeat"):
            _repeat_from(cur, out, stars)
        else:
            found = one(cur, out)
            if isinstance(found, Mark) and found.what == "underside" and out and cur.tokens[at - 1].kind != "sep":
                out.insert(len(out) - 1, found)  # "27 dc on the other side": said after the stitches
            elif found is not None:
                out.append(found)
                in_turn(out)
                in_order(out)
                every_with_chain(out, cur.dialect.id)
                _one_place(out, stars[-1] if stars else 0)
                if cur.swept == cur.at and not stars:
                    _swept(out)
                _in_each(out, cur)
                _over_each(out)
        if cur.at == at:
            cur.at += 1
    cur.depth -= 1
    return out


def _late_place(cur: Cursor, out: list[Node], floor: int) -> bool:
    """ "2 dc, ch 2, 2 dc, all in next sp": a place told after the list it is for; nothing taken where there is none."""
    start = cur.at
    cur.skip("all")
    if cur.low() not in ("in", "into") or not isinstance(out[-1], (Make, Chain)) or isinstance(out[-1], Make) and out[-1].place is not None:
        cur.at = start
        return False
    first = len(out)
    while first > floor and _listed(out[first - 1]):
        first -= 1
    while first < len(out) and isinstance(out[first], Chain):
        first += 1
    where = place(cur) if first < len(out) else None
    if where is None or where.from_hook or cur.low() in ("work", "make"):
        cur.at = start
        return False
    out[first:] = [Group(tuple(out[first:]), where, span=out[first].span.cover(cur.span_from(start)))]
    return True


def _swept(out: list[Node]) -> None:
    """ "sc in next 2 sts, inc around": the whole list over and over, or only its last instruction; the worker finds out which."""
    last = out[-1].readings[0][1][-1] if isinstance(out[-1], Either) and out[-1].readings[0][1] else out[-1]
    first = len(out) - 1
    while first > 0 and _sweeps(out[first - 1]):
        first -= 1
    if not isinstance(last, Make) or len(out) - first < 2 and not isinstance(out[-1], Either):
        return
    shapes = last.kind in ("inc", "dec", "invdec") or last.place is not None and last.place.quant == "next"
    once = replace(last, place=None if _to_the_end(last) else last.place)
    listed = (*out[first:-1], *(out[-1].readings[0][1][:-1] if isinstance(out[-1], Either) else ()), once)
    if len(listed) < 2:
        return
    again = Repeat(listed, "end", span=listed[0].span.cover(last.span))
    costs = (0.0, 0.8) if shapes else (0.6, 0.0)
    readings = sorted([(costs[0], (again,)), (costs[1], tuple(out[first:]))], key=lambda r: r[0])
    out[first:] = [Either("list-around", tuple(readings), again.span)]


def _sweeps(node: Node) -> bool:
    return isinstance(node, (Skip, Repeat)) or isinstance(node, Make) and node.kind != "sl st" and not _to_the_end(node)


def _to_the_end(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None and node.place.quant in ("each", "every", "last")


def _one_place(out: list[Node], floor: int) -> None:
    """ "2 dc, ch 1, 2 dc in next st": all in one place, or each in its own; the worker finds out which."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant not in ("next", "same", "kth", "first", "last", "any") or last.place.left:
        return
    if last.place.n is None or last.place.n.at(0) != 1 or last.place.from_hook:
        return
    first = len(out) - 1
    while first > floor and _listed(out[first - 1]):
        first -= 1
    while first < len(out) - 1 and isinstance(out[first], Chain):
        first += 1
    run = out[first:]
    if len(run) < 2:
        return
    together = Group((*run[:-1], replace(last, place=None)), last.place, span=run[0].span.cover(last.span))
    told = [n.kind for n in run if isinstance(n, Make)]
    if any(isinstance(g, Group) and g.name and [n.kind for n in g.nodes if isinstance(n, Make)] == told for g in out[:first]):
        out[first:] = [together]  # as in the group that was named before
        return
    chains = any(isinstance(n, Chain) for n in run)
    alike = all(isinstance(n, Make) and n.kind == last.kind for n in run) and not chains
    costs = (0.0, 0.6) if chains else (1.0, 0.0) if alike else (0.15, 0.25)
    readings = sorted([(costs[0], (together,)), (costs[1], tuple(run))], key=lambda r: r[0])
    out[first:] = [Either("list-then-place", tuple(readings), together.span)]


def _over_each(out: list[Node]) -> None:
    """ "4 dc, ch 1, 4 dc over each loop": the whole list in each of them."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant != "each" or last.place.thing.kind not in ("sp", "loop"):
        return
    first = len(out) - 1
    while first > 0 and _listed(out[first - 1]):
        first -= 1
    while first < len(out) - 1 and isinstance(out[first], Chain):
        first += 1
    run = out[first:]
    kinds = {n.kind for n in run if isinstance(n, Make)}
    if len(run) > 2 and (isinstance(run[1], Chain) or len(kinds) > 1):
        out[first:] = [Group((*run[:-1], replace(last, place=None)), last.place, span=run[0].span.cover(last.span))]


def _in_each(out: list[Node], cur: Cursor) -> None:
    """ "1 sc and 1 dc in each of next 2 sts": both in each of them."""
    last = out[-1]
    if len(out) < 2 or not isinstance(last, Make) or last.place is None or last.place.quant != "next" or last.place.n is None or (last.place.n.at(0) or 1) < 2:
        return
    before = out[-2]
    if last.place.thing.kind in ("sp", "loop") and isinstance(before, Chain):
        return
    if not isinstance(before, Make) or not _listed(before) or before.kind == last.kind or (before.n.at(0) or 1) > 4:
        return
    said = [t.text.lower() for t in cur.tokens[: cur.at] if before.span.end <= t.start < last.span.end]
    if said[:1] == ["and"] and "each" in said:
        out[-2:] = [Group((before, replace(last, place=None)), last.place, span=before.span.cover(last.span))]


def _listed(node: Node) -> bool:
    return isinstance(node, Chain) or isinstance(node, Make) and node.place is None and node.kind not in ("inc", "dec", "sl st") and "tog" not in node.kind


def one(cur: Cursor, before: list[Node]) -> Node | None:
    """The next node, None when the words make none (separators, filler)."""
    kind, low, start = cur.kind(), cur.low(), cur.at
    if kind in ("sep", "close", "punct"):
        cur.at += 1
        return None
    if kind == "open":
        return _bracket(cur, before)
    told = phrase(cur, before)
    if told is not None:
        return told
    if low in SKIPS:
        return _skip(cur)
    if low in ("turn", "turning"):
        cur.at += 1
        return Mark("turn", span=cur.span_from(start))
    if low in ("join", "unite", "close") or low == "sl" and cur.low(1) == "to":
        return _join(cur, before)
    if low == "fo":
        cur.at += 1
        return Mark("fasten-off", span=cur.span_from(start))
    if low in ("fasten", "finish", "break", "cut", "end") and cur.low(1) in ("off", "yarn", "thread"):
        cur.at += 2
        return Mark("fasten-off", span=cur.span_from(start))
    if low in ("leave", "leaving") and (left := _leave(cur)) is not None:
        return left
    if low == "do" and cur.low(1) == "not":
        what = {"join": "no-join", "turn": "no-turn"}.get(cur.low(2), "note")
        cur.at += 3
        return Mark(what, span=cur.span_from(start))
    shaped = shaping(cur) or plainly(cur)
    if shaped is not None:
        return absorbed(before, shaped)
    if kind == "kind" or kind in ("num", "blank") and _kind_follows(cur):
        return _first_chain(_make(cur), before)
    if kind == "num" and cur.low(1) in ("in", "into", "on", "each") and (known := _kind_before(before)) is not None:
        n = cur.number()
        return Make(known, n or ONE, place(cur), span=cur.span_from(start))
    if low in ("magic", "mr", "mc", "adjustable"):
        found = thing(cur)
        if found is not None:
            if cur.kind() == "num" and cur.kind(1) == "end" and (n := cur.number()) is not None:  # "MR 6"
                return Make("st", n, Place("next", ONE, found), span=cur.span_from(start))
            return Ring(True, span=cur.span_from(start))
    if low == "or" and any(isinstance(b, (Make, Group, Repeat)) for b in before) and cur.kind(1) != "end":
        cur.at = len(cur.tokens)  # another way to do the same
        return Mark("note", span=cur.span_from(start))
    if low in PREPOSITIONS:
        first = _place_first(cur)
        if first is not None:
            return first
    if underside_words(cur):
        return Mark("underside", span=cur.span_from(start))
    loop = loop_words(cur)
    if loop is not None:
        return Mark("loops", loop=loop, span=cur.span_from(start))
    cur.at = start
    token = cur.take()
    if token.kind == "word" and low not in QUIET and low not in END_WORDS:
        cur.unknown += 1
        return Unknown(token.text, 1, cur.span_from(start))
    return None


def _leave(cur: Cursor) -> Node | None:
    """ "leave the last 4 sts (unworked)", "leaving rem sts unworked"."""
    start = cur.at
    cur.at += 1
    cur.skip("the", "last", "remaining", "rem", "next")
    n = cur.number()
    found = thing(cur)
    if n is None and found is None:
        cur.at = start
        return None
    cur.skip("unworked", "free", "un-worked", "un", "-", "worked")
    return Mark("leave", n=n, span=cur.span_from(start))


def _first_chain(node: Node, before: list[Node]) -> Node:
    """ "sc in 2nd ch" as a row's first stitch means from the hook."""
    inner = node.nodes[0] if isinstance(node, Repeat) and node.nodes else node
    if not isinstance(inner, Make) or inner.place is None or inner.place.thing.kind not in ("ch", "st") or any(isinstance(b, (Make, Group, Repeat)) for b in before):
        return node
    where = inner.place
    if where.quant != "kth" or where.from_hook or where.of is not None or where.thing.kind != "ch":
        return node
    fixed = replace(inner, place=replace(where, from_hook=True))
    return replace(node, nodes=(fixed, *node.nodes[1:])) if isinstance(node, Repeat) else fixed


def _kind_before(nodes: list[Node] | tuple[Node, ...]) -> str | None:
    """The stitch named last: "2 dc in next, 1 in next" means it."""
    for node in reversed(nodes):
        if isinstance(node, Make):
            return node.kind
        if isinstance(node, (Repeat, Group)):
            return _kind_before(node.nodes)
        if isinstance(node, Either):
            return _kind_before(node.readings[0][1])
    return None


def _kind_follows(cur: Cursor) -> bool:
    start = cur.at
    n = cur.number()
    cur.skip("more", "-", ".")
    ok = n is not None and cur.kind() == "kind"
    cur.at = start
    return ok


def _make(cur: Cursor) -> Node:
    start = cur.at
    n = cur.number()
    cur.skip("more", "-", ".")
    kind = str(cur.take().value)
    if n is None and cur.kind() in ("num", "blank") and (kind == "ch" or cur.kind(1) != "kind" or _number_after(cur)):
        n = cur.number()
    if kind == "ch" and n is None and cur.low() == "of" and cur.kind(1) in ("num", "blank"):
        cur.at += 1
        n = cur.number()
    if kind == "ch":
        plus = 0
        if n is not None and cur.low() in ("+", "plus") and cur.kind(1) == "num" and cur.kind(2) in ("sep", "end", "close", "word"):
            cur.at += 1
            plus = int(cur.take().value)
        return Chain(n or ONE, plus=plus, span=cur.span_from(start))
    if kind == "sl st" and n is None and (joined := _slip_join(cur, start)) is not None:
        return joined
    loop = loop_words(cur) or "both"
    chains = between(cur)
    if cur.low() in ("in", "into") and (edge := _along(cur, kind, n, start)) is not None:
        return edge
    if "tog" in kind and (again := _decreases(cur, kind, n, loop, start)) is not None:
        return again
    where = place(cur)
    if where is None and cur.low() in END_WORDS and (n is None or (n.at(0) or 0) < 4):
        cur.at += 1
        cur.swept = cur.at
        where = Place("each", None, STITCH, loop=loop)
        if (left := left_words(cur)) is not None:
            where = replace(where, left=left[0])
    elif where is None and cur.low() in ("each", "next", "every"):
        where = place(cur, bare=True)
    if where is None and cur.low() == "to" and (left := left_words(cur)) is not None:
        where = Place("each", None, STITCH, left=left[0])
    if loop == "both":
        loop = loop_words(cur) or "both"
    chains = chains or (between(cur) if where is not None else 0)
    wide = where.n.at(0) if where is not None and where.n is not None and where.quant == "next" else None
    if kind == "cluster" and n in (None, ONE) and wide and wide > 1 and any(t.text.lower() == "over" for t in cur.tokens[start : cur.at]):
        return Make(kind, ONE, None, taking=wide, parts=wide, span=cur.span_from(start))
    made = Make(kind, n or ONE, where, loop if loop != "both" else where.loop if where else "both", between=chains, span=cur.span_from(start))
    over = spread(cur, made, start)
    return _more_places(cur, made, start) if over is made else over


def _along(cur: Cursor, kind: str, per: Num | None, start: int) -> Node | None:
    """ "in each of the 5 missed sts", "in the other side of each of the 5 ch": an edge left free before; nothing taken else."""
    mark = cur.at
    cur.at += 1
    cur.skip("the")
    under = cur.accept_words("other side of") or cur.accept_words("opposite side of")
    cur.skip("each", "of", "the", "next")
    many = cur.number() if cur.kind() in ("num", "blank") else None
    left = [w for w in (cur.low(), cur.low(1)) if w in LEFT_FREE]
    across = any(cur.low(i) == "of" and cur.low(i + 1) in ("opposite", "other") and cur.low(i + 2) == "side" for i in (1, 2))
    if many is None or per is not None and per.at(0) != 1 or not (under or left or across):
        cur.at = mark
        return None
    cur.skip(*LEFT_FREE)
    thing(cur)
    if cur.accept("of"):
        cur.skip("the", "foundation", "opposite", "other")
        cur.at += cur.kind() == "word"
    return EdgeRun(kind, many, "underside" if under else "free", span=cur.span_from(start))


def _decreases(cur: Cursor, kind: str, n: Num | None, loop: Loop, start: int) -> Node | None:
    """ "sc2tog 6 times", "sc2tog {n} times", "sc2tog around": one after the other; nothing taken where none of it is said."""
    one = Make(kind, ONE, None, loop, span=cur.span_from(start))
    if cur.kind() == "times" and n is None:
        times, more = cur.take().value
        return Repeat((one,), "more" if more else "times", Num((times,)), span=cur.span_from(start))
    if n is not None and cur.low() in ("times", "time"):
        cur.at += 1
        return Repeat((one,), "times", n, span=cur.span_from(start))
    if n is None and cur.low() in ("around", "across") and cur.low(1) in ("", ",", ";", "."):
        cur.at += 1
        return Repeat((one,), "end", span=cur.span_from(start))
    return None


def _number_after(cur: Cursor) -> bool:
    """Whether this row says "sc 5 inc sc 8", the number behind the stitch, without stops between."""
    stops = ("sep", "close", "end", "star", "times")
    tokens = cur.tokens
    after = sum(1 for i in range(1, len(tokens)) if tokens[i].kind == "num" and tokens[i - 1].kind == "kind" and (i + 1 == len(tokens) or tokens[i + 1].kind in stops))
    before = sum(1 for i in range(len(tokens) - 1) if tokens[i].kind == "num" and tokens[i + 1].kind == "kind" and (i == 0 or tokens[i - 1].kind in (*stops, "open")))
    return after > before


def _slip_join(cur: Cursor, start: int) -> Node | None:
    """ "sl st to form ring", "sl st to first dc", "sl st in top of ch 3": a join; nothing taken when it is none."""
    if cur.low() == "to":
        if cur.low(1) in ("close", "join") and cur.low(2) in ("", ".", ",", ";", ")", "rnd", "round", "turn") and start > 3:
            cur.at += 2 + (cur.low(2) in ("rnd", "round"))
            return Join(None, "sl st", span=cur.span_from(start))  # "…, sl st to join": a round that ends, no ring
        if cur.low(1) in ("form", "make", "ring", "close", "join"):
            while cur.low() in ("to", "form", "make", "ring", "a", "loop", "circle", "close", "join"):
                cur.at += 1
            return Ring(False, span=cur.span_from(start))
        cur.at += 1
        where = place(cur, bare=True)
        if where is not None and (where.quant == "first" or where.thing.kind in ("tch", "join")):
            return Join(where, "sl st", span=cur.span_from(start))
        return Make("sl st", ONE, where, span=cur.span_from(start)) if where else Join(None, "sl st", span=cur.span_from(start))
    mark = cur.at
    where = place(cur)
    closes = cur.done or cur.low() in (".", ";", ",", ")") and cur.low(1) in ("", "turn", "ch", "fasten", "do", "not", "cut", ".")
    if where is not None and closes and start > 3 and (where.quant == "first" or where.thing.kind == "tch" or where.of is not None and where.of.kind in ("tch", "ch", "sp")):
        return Join(where, "sl st", span=cur.span_from(start))
    if where is None and start > 3 and (cur.done or cur.low() in (".", ";", ",") and (cur.kind(1) == "end" or cur.low(1) in ("turn", "ch", "fasten", "do"))):
        return Join(None, "sl st", span=cur.span_from(start))
    cur.at = mark
    return None


def _more_places(cur: Cursor, made: Make, start: int) -> Node:
    """ "in next st and in each of next 3": the same stitch in further places."""
    parts: list[Node] = [made]
    skipped = ""
    if cur.kind() == "open":
        close = next((i for i in range(2, NOTE_WORDS) if cur.kind(i) == "close"), 0)
        said = any(cur.low(i).startswith("count") for i in range(1, close)) or close and cur.low(1) in ("is", "first", "1st", "makes")
        if close and said:
            text = [cur.low(i) for i in range(1, close)]
            if made.place is not None and made.place.from_hook:
                skipped = "no" if "not" in text or "never" in text else "yes"
                parts.insert(0, Mark("skipped-counts", skipped))
            if cur.low(close + 1) == "and" or skipped:
                cur.at += close + 1
    while made.place is not None and cur.low() == "and" and cur.low(1) in ("in", "into", "each", "across", "around"):
        mark = cur.at
        cur.at += 1
        if cur.low() in ("across", "around") and place(cur) is None:
            cur.at += 1
            parts.append(replace(made, n=ONE, place=Place("each", None), span=cur.span_from(mark)))
            break
        more = place(cur, bare=cur.low() == "each")
        if more is None or cur.low() in ("work", "make"):
            cur.at = mark
            break
        parts.append(replace(made, place=more, span=cur.span_from(mark)))
    while len(parts) == 1 and made.place is not None and made.place.quant == "each" and made.place.n is None and cur.low() == "and":
        mark = cur.at
        cur.at += 1
        cur.skip("each", "the")
        also = thing(cur)  # "in each st and ch around"
        if also is None or also.kind not in ("ch", "sp", "st") and also.kind not in ("dc", "sc", "hdc", "tr") or cur.low() not in (*END_WORDS, ",", ";", ".", "") and cur.kind() != "close":
            cur.at = mark
            break
        cur.skip(*END_WORDS)
        parts.append(replace(made, place=replace(made.place, thing=also), span=cur.span_from(mark)))
    if len(parts) == 1:
        return made
    places = [p.place for p in parts if isinstance(p, Make) and p.place is not None]
    if all(p.quant == "each" and p.n is None and p.left is None for p in places) and len({p.thing for p in places}) == len(parts):
        return InTurn(tuple(parts), cur.span_from(start))  # "in each st and in each ch": as they come
    return Repeat(tuple(parts), "once", span=cur.span_from(start))


def _skip(cur: Cursor) -> Node:
    start = cur.at
    cur.at += 1
    skips = [_one_skip(cur, start)]
    while (more := _skips_more(cur)) is not None:
        skips.append(more)
    return skips[0] if len(skips) == 1 else Repeat(tuple(skips), "once", span=cur.span_from(start))


def _skips_more(cur: Cursor) -> Node | None:
    """ ", the next 5 sts and the next ch-2 sp" after a skip; nothing taken when it does not go on."""
    mark = cur.at
    while cur.low() in (",", "and"):
        cur.at += 1
    begin = cur.at
    if cur.at > mark and cur.low() == "next" and cur.low(-1) == "and" and (cur.kind(1) == "kind" or thing_word(cur.low(1)) == "st") and cur.low(2) in (",", ";", "."):
        return _one_skip(cur, begin)  # "skip joined st and next sc"
    if cur.at > mark and cur.low() == "the":
        cur.skip("the", "next", "following")
        number = cur.kind() in ("num", "blank") and (is_space_number(cur) or thing_follows(cur))
        space = cur.kind() == "kind" and cur.low() in ("ch", "chain") and cur.low(1) == "-"
        if number or space or thing_word(cur.low()) is not None:
            cur.at = begin
            return _one_skip(cur, begin)
    cur.at = mark
    return None


def thing_follows(cur: Cursor) -> bool:
    """Whether a number and a thing come next: "5 sts"."""
    mark = cur.at
    found = cur.number() is not None and thing(cur) is not None
    cur.at = mark
    return found


def _one_skip(cur: Cursor, start: int) -> Node:
    ahead = 1 if cur.low() in ("the", "over") else 0
    first = cur.kind(ahead) == "ord" and cur.token(ahead).value == 1  # type: ignore[union-attr]
    cur.at += ahead + first
    cur.skip("the", "next", "first", "last", "over", "following", "joined", "joining")
    n = None if is_space_number(cur) else cur.number()
    found = thing(cur)
    if found is not None and cur.low() == "of" and (cur.low(1) in ("ch", "chain", "foundation") or cur.low(1) == "the" and cur.low(2) in ("ch", "chain")):
        cur.at += 2 + (cur.low(1) == "the")
    if cur.low() == "of" and cur.low(1) in ("next", "same", "each", "the") and (thing_word(cur.low(2)) == "group" or cur.kind(2) == "kind"):
        cur.at += 2
        thing(cur)
        first = False
    if cur.low() == "of" and cur.low(1) in ("each", "every", "the") and cur.low(2) in ("row", "rnd", "round"):
        cur.at += 3
    return Skip(n or ONE, found or STITCH, cur.span_from(start), first)


def _join(cur: Cursor, before: list[Node]) -> Node:
    start = cur.at
    cur.at += 1
    via = None
    last_chain: int | None = None
    if cur.low() == "last" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        cur.at += 1
        joined = thing(cur)  # "join last ch-3 to …": the chain is there already
        last_chain = joined.length if joined is not None else None
    if cur.low() == "with" or cur.kind() == "open" and cur.low(1) == "with":
        cur.at += 1 + (cur.kind() == "open")
        cur.skip("a")
        if cur.kind() == "kind":
            via = str(cur.take().value)
        cur.skip(")", "single")
    if cur.low() in ("to", "in", "into") and cur.low(1) in ("form", "a", "ring", "make"):
        while cur.low() in ("to", "in", "into", "form", "a", "ring", "make", "loop", "circle"):
            cur.at += 1
        return Ring(False, span=cur.span_from(start))
    where = None
    if cur.accept_words("as before"):
        last_chain = last_chain or -1
    where = place(cur, bare=True) if cur.accept("to") else place(cur)
    if where is not None and where.thing.kind == "ring":
        return Ring(False, span=cur.span_from(start))
    chains = [b for b in before if not isinstance(b, (Mark, Unknown))]
    if len(chains) == 1 and isinstance(chains[0], Chain) and (chains[0].n.at(0) or 0) > 2 and (where is None or where.thing.kind in ("ch", "st") and where.quant in ("kth", "first", "next")):
        return Ring(False, span=cur.span_from(start))  # "ch 30, join": the foundation closed
    if not before:
        return Mark("attach", place=where, span=cur.span_from(start))
    return Join(where, via, last_chain, cur.span_from(start))


def _place_first(cur: Cursor) -> Node | None:
    """ "in next sp work 2 dc, ch 1 and 2 dc": the list up to a stop goes into one place."""
    start = cur.at
    where = place(cur)
    this = where is None and cur.low(1) == "this" and cur.low(2) in ("work", "make") or where is None and cur.accept_words("in this ring")
    if this:
        cur.at += 2
        where = Place("next", ONE, Thing("ring"))
    if where is None or cur.low() not in ("work", "make", ":"):
        cur.at = start
        return None
    said = {t.text.lower() for t in cur.tokens[start : cur.at]}
    cur.at += 1
    inside: list[Node] = []
    while not cur.done and cur.low() not in (";", ".") and cur.kind() not in ("close", "star"):
        if cur.low() in ("rep", "repeat", "join", "turn", "ending"):
            break
        at = cur.at
        last = cur.low() == "and"
        if last:
            cur.at += 1
        found = one(cur, inside)
        if found is not None:
            inside.append(found)
            if last:
                break
        if cur.at == at:
            cur.at += 1
        if cur.kind() == "times":
            break
    if cur.kind() == "times":
        n, more = cur.take().value
        inside = [Repeat(tuple(inside), "more" if more else "times", Num((n,)), span=cur.span_from(start))]
    total = where.n.at(0) if where.n is not None else None
    if total and total > 1 and where.quant == "next" and not said & {"each", "every"} and len(inside) == 1 and isinstance(inside[0], Make) and inside[0].place is None and (inside[0].n.at(0) or 1) > 1:
        return Spread(inside[0].kind, inside[0].n, where.n, span=cur.span_from(start))  # "in the 8 dc work 16 treble"
    return Group(tuple(inside), where, span=cur.span_from(start))


def _bracket(cur: Cursor, before: list[Node]) -> Node | None:
    start = cur.at
    cur.at += 1
    if cur.depth >= MAX_DEPTH:
        return Unknown("(", 1, cur.span_from(start))
    said = _note(cur, before, start)
    if said:
        return None
    unknown = cur.unknown
    inside = tuple(nodes_until(cur, "close"))
    counted = cur.tokens[cur.at - 1] if cur.kind() == "close" and cur.tokens[cur.at - 1].kind == "times" else None
    if cur.kind() == "close":
        cur.at += 1
    if counted is not None and len(inside) > 0 and cur.kind() != "times":  # "(3 ch and 1 dc in the ring 7 times)"
        return Repeat(inside, "more" if counted.value[1] else "times", Num((counted.value[0],)), span=cur.span_from(start))
    if not before and len(inside) == 1 and isinstance(inside[0], Chain) and cur.kind() not in ("times", "star"):
        return inside[0]
    if len(inside) == 2 and isinstance(inside[0], Make) and isinstance(inside[1], Unknown) and inside[1].text.lower() in ("st", "sts", "stitch"):
        inside = inside[:1]
    only_unknown = all(isinstance(n, (Unknown, Mark)) for n in inside)
    if only_unknown:
        cur.unknown = unknown
        return Mark("note", span=cur.span_from(start)) if inside else None
    if cur.low() in ("rep", "repeat") and cur.kind(1) not in ("times", "num", "blank") and cur.low(1) not in ("around", "across"):
        return Repeat(inside, "once", span=cur.span_from(start)) if not _names(inside, before) else Define(str(inside[0].kind), span=cur.span_from(start))  # type: ignore[union-attr]
    cur.skip("*", "rep", "repeat", "worked")
    if cur.kind() == "times":
        n, more = cur.take().value
        again = Repeat(inside, "more" if more else "times", Num((n,)), span=cur.span_from(start))
        if cur.low() in ("in", "into") and not any(isinstance(x, Make) and x.place is not None for x in inside) and (where := place(cur)) is not None:
            return Group((again,), where, span=cur.span_from(start))  # "(3 dc, ch 2) twice in next space"
        return again
    if cur.kind() in ("num", "blank"):
        mark, n2 = cur.at, cur.number()
        if cur.low() in ("times", "time", "x"):
            cur.at += 1
            return Repeat(inside, "more" if cur.accept("more") else "times", n2, span=cur.span_from(start))
        cur.at = mark
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind == "pattern" and inside[0].place is None:
        return Define("pattern", span=cur.span_from(start)) if _name(before, "pattern") else Mark("note", span=cur.span_from(start))
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind in SHAPES and inside[0].place is None and _name(before, inside[0].kind):
        return Define(inside[0].kind, span=cur.span_from(start))
    if cur.low() == "all" and cur.low(1) in PREPOSITIONS:
        cur.at += 1  # "(3 dc, 1 tr) all in this dc"
    where = place(cur)
    if where is None and cur.low() in ("each", "every"):
        where = place(cur, bare=True)
    if where is not None:
        called = _called(cur, before, start)
        return Group(inside, where, called, span=cur.span_from(start))
    if cur.low() in END_WORDS or cur.low() == "to":
        return _to_end(cur, inside, start)
    if len(inside) == 1 and isinstance(inside[0], Make) and inside[0].place is None and inside[0].n.at(0) not in (None, 1):
        return Group(inside, Place("next", ONE), span=cur.span_from(start))
    return Repeat(inside, "once", span=cur.span_from(start))


def _names(inside: tuple[Node, ...], before: list[Node]) -> bool:
    """Whether a bracket only gives a name to what stands before it."""
    return len(inside) == 1 and isinstance(inside[0], Make) and inside[0].kind in SHAPES and inside[0].place is None and _name(before, inside[0].kind)


def _called(cur: Cursor, before: list[Node], start: int) -> str | None:
    """ "shell (3 dc, ch 1, 3 dc) in next sp": the name told right before the bracket; it is taken off the nodes before."""
    last = before[-1] if before else None
    if isinstance(last, Make) and last.kind in SHAPES and last.place is None and start and cur.tokens[start - 1].kind == "kind":
        before.pop()
        return last.kind
    return None


def _name(before: list[Node], name: str) -> bool:
    """ "(shell)" after what a shell is made of: gives the name; False when nothing stands there to be named."""
    if not before:
        return False
    last = before[-1]
    if isinstance(last, Group):
        before[-1] = replace(last, name=name)
        return True
    if isinstance(last, Either) and any(isinstance(n, Group) for _, r in last.readings for n in r):
        group = next(n for _, r in last.readings for n in r if isinstance(n, Group))
        before[-1] = replace(group, name=name)
        return True
    first = len(before)
    while first > 0 and (isinstance(before[first - 1], Chain) or isinstance(before[first - 1], Make) and _same_place(before[first - 1])):
        first -= 1
    while first < len(before) and isinstance(before[first], Chain):
        first += 1
    run = before[first:]
    if sum(isinstance(n, Make) for n in run) > 1:  # "cl in same sp, ch 3, cl in same sp (shell)"
        place_ = next(n.place for n in run if isinstance(n, Make))
        before[first:] = [Group(tuple(replace(n, place=None) if isinstance(n, Make) else n for n in run), place_, name, span=run[0].span.cover(run[-1].span))]
        return True
    return isinstance(last, Make)


def _same_place(node: Node) -> bool:
    return isinstance(node, Make) and node.place is not None and node.place.quant == "same"


def _note(cur: Cursor, before: list[Node], start: int) -> bool:
    """ "(counts as dc)", "(does not count as a st)": said of the chain before; takes the whole bracket."""
    words: list[str] = []
    i = 0
    while cur.kind(i) not in ("close", "end") and i < NOTE_WORDS:
        words.append(cur.low(i))
        i += 1
    text = " ".join(words)
    defines = len(words) > 3 and ":" in words[1:4]
    if defines:
        cur.at += i + int(cur.kind(i) == "close")
        return True
    if words and (words[-1] in REMARKS or words[0] in ("is", "makes", "made", "this", "these") or "inc point" in text or words[-1] in ("row", "rnd", "round") and {"inc", "dec", "increase", "decrease"} & set(words)):
        cur.at += i + int(cur.kind(i) == "close")
        return True
    if "count" not in text:
        return False
    if "turning" in words and {"space", "mesh", "loop", "sp"} & set(words):
        before.append(Mark("note", "tch-space", span=cur.span_from(start)))
    if before and isinstance(before[-1], Join) and len(before) < 3 and "not" not in words:
        kind = next((str(cur.token(j).value) for j in range(i) if cur.kind(j) == "kind"), None)  # type: ignore[union-attr]
        if kind is not None:
            before.append(Make(kind, ONE, Place("first", ONE, STITCH), span=cur.span_from(start)))  # a join that counts as a stitch
    if before and isinstance(before[-1], Chain):
        no = "not" in words or "never" in words
        as_kind = next((str(cur.token(j).value) for j in range(i) if cur.kind(j) == "kind"), None)  # type: ignore[union-attr]
        before[-1] = replace(before[-1], counts="no" if no else "yes", as_kind=None if no else as_kind)
    cur.at += i + int(cur.kind(i) == "close")
    return True


def _to_end(cur: Cursor, inside: tuple[Node, ...], start: int) -> Node:
    cur.skip("around", "across", "round", "along", "the", "row", "rnd", "entire", "ch", "chain", "all")
    left = left_words(cur)
    if left is not None:
        return Repeat(inside, "left", left=left[0], span=cur.span_from(start))
    cur.skip("to", "end", "of", "the", "row", "rnd", "round")
    return Repeat(inside, "end", span=cur.span_from(start))


def _star(cur: Cursor, out: list[Node], stars: list[int]) -> None:
    """A mark: opens a repeat, or closes one where times, "around" or a repeat follow ("*…* 6 times")."""
    token = cur.take()
    if len(token.text) == 1 and stars and cur.low() == "to" and cur.kind(1) == "star":
        cur.at += 2
        begin = stars.pop()
        inside = tuple(out[begin:])
        del out[begin:]
        out.append(_stopped(_counted_repeat(cur, inside, cur.at - 3)))
        return
    if len(token.text) > 1 and stars:
        out.append(Mark("stop-mark", token.text))
        return
    closing = bool(stars) and len(token.text) == 1 and (
        cur.kind() in ("times", "end") or cur.low() in END_WORDS or cur.low() in ("rep", "repeat", ",", ";", ".", "to", "each", "join", "sl", "slst")
        or cur.kind() == "kind" and cur.token().value == "sl st"  # type: ignore[union-attr]
        or cur.kind() == "open" and cur.kind(1) == "star" and cur.low(2) == "to"
    ) and len(out) > stars[-1]
    if not closing:
        cur.first_star.setdefault(cur.depth, len(out))
        stars.append(len(out))
        return
    begin = stars.pop()
    inside = tuple(out[begin:])
    del out[begin:]
    start = cur.at - 1
    if cur.kind() == "open" and cur.kind(1) == "star":
        cur.at += 2
        while cur.low() in ("to", *END_WORDS) or cur.kind() in ("star", "open") and cur.kind(1) == "end":
            cur.at += 1
    cur.skip(",", ";", ".", "rep", "repeat") if cur.kind(1) != "end" else None
    if cur.low() in ("from", "between"):
        _from_star(cur)
    out.append(_stopped(_counted_repeat(cur, inside, start)))


def _stopped(made: Node) -> Node:
    """A repeat whose nodes hold a second mark (**): remembered as the place where its last round may stop."""
    if not isinstance(made, Repeat):
        return made
    at = next((i for i, n in enumerate(made.nodes) if isinstance(n, Mark) and n.what == "stop-mark"), None)
    if at is None:
        return made
    return replace(made, nodes=tuple(n for n in made.nodes if not (isinstance(n, Mark) and n.what == "stop-mark")), stop_at=at)


def _to_mark(cur: Cursor, out: list[Node]) -> bool:
    """ "then from * to ** once more": the part before the second mark of a repeat told before."""
    start = cur.at
    cur.skip("then", "rep", "repeat", "work", "and", ",", ";")
    if not (cur.low() == "from" and cur.kind(1) == "star" and cur.low(2) == "to" and cur.kind(3) == "star"
            or cur.kind() == "star" and cur.low(1) == "to" and cur.kind(2) == "star" and len(cur.low(2)) > 1 and cur.low(0) != cur.low(2)):
        cur.at = start
        return False
    told = next((n for n in reversed(out) if isinstance(n, Repeat) and n.stop_at is not None), None)
    if told is None:
        cur.at = start
        return False
    cur.at += 4 if cur.low() == "from" else 3
    times = cur.take().value[0] if cur.kind() == "times" else 1
    out.append(Repeat(told.nodes[: told.stop_at], "times", Num((times,)), span=cur.span_from(start)))
    return True


def _counted_repeat(cur: Cursor, inside: tuple[Node, ...], start: int) -> Node:
    """ "6 times", "twice more", or to the end."""
    if cur.kind() == "times":
        n, more = cur.take().value
        return Repeat(inside, "more" if more else "times", Num((n,)), span=cur.span_from(start))
    return _to_end(cur, inside, start)


def _from_star(cur: Cursor) -> None:
    """ "from *", "between *'s", "from * to *", "from first *": where the repeat begins; "to last 4 sts" is left standing."""
    cur.skip("from", "between", "the")
    cur.skip("first", "1st", "last", "beg", "beginning", "second") if cur.kind(1) == "star" or cur.low() in ("beg", "beginning") else None
    if cur.kind() == "star":
        cur.at += 1
        cur.skip("'s", "s", "’s")
        if cur.low() in ("to", "and") and cur.kind(1) == "star":
            cur.at += 2


def _until_made(cur: Cursor) -> Num | None:
    """ "until 4 groups are made", "until there are 40 shells": how many; nothing taken when it is not told so."""
    start = cur.at
    if not cur.accept("until"):
        return None
    there = cur.accept_words("there are") or cur.accept_words("you have")
    n = cur.number()
    words = [cur.low(i) for i in range(9)]
    if n is None or "remain" in words or "left" in words or not (there or {"made", "completed", "worked", "formed"} & set(words)):
        cur.at = start
        return None
    while not cur.done and cur.kind() not in ("sep", "close", "open", "star"):
        cur.at += 1
    return n


def _repeat_from(cur: Cursor, out: list[Node], stars: list[int]) -> None:
    """ "rep from * around", "rep from * to last 3 sts", "rep from * 5 times (more)"."""
    start = cur.at
    cur.at += 1
    _from_star(cur)
    if cur.kind() == "times" and cur.low(1) == "from" and cur.kind(2) == "star":  # "repeat 4 times from *"
        cur.tokens.insert(cur.at + 3, cur.take())
        cur.at += 2
    begin = stars.pop() if stars else 0
    if not begin and not stars and cur.low(-1) == "*" and cur.depth in cur.first_star:
        begin = min(cur.first_star[cur.depth], len(out))  # one * serves two repeats: "repeat from 1st *"
    lead = 0
    while begin == 0 and lead < len(out) and isinstance(out[lead], (Chain, Mark)) and not stars and lead == 0:
        lead += 1
    if lead and not begin and cur.low(-1) in ("beg", "beginning") and isinstance(out[0], Chain) and (out[0].n.at(0) or 0) > 4:
        lead = 0  # "ch 7, …, repeat from beginning": the loop is part of it
    begin = begin or (lead if start and not any(t.kind == "star" for t in cur.tokens[:start]) else 0)
    inside = tuple(out[begin:])
    del out[begin:]
    cur.skip("all", "the", "way") if cur.low() == "all" else None
    if cur.kind() == "times":
        n, more = cur.take().value
        in_all = cur.accept_words("in all")
        made = Repeat(inside, "times" if in_all else "more" if more else "star-times", Num((n,)), span=cur.span_from(start))
    elif cur.kind() in ("num", "blank"):
        n2 = cur.number()
        cur.skip("times", "time")
        more, in_all = cur.accept("more"), cur.accept_words("in all")
        made = Repeat(inside, "times" if in_all else "more" if more else "star-times", n2, span=cur.span_from(start))
    elif (many := _until_made(cur)) is not None:
        made = Repeat(inside, "until", many, span=cur.span_from(start))
    else:
        if cur.low() in ("last", "until"):
            cur.at -= 0
        found = _to_end(cur, inside, start)
        made = found if isinstance(found, Repeat) else Repeat(inside, "end")
    stopped = _stopped(made)
    made = stopped if isinstance(stopped, Repeat) else made
    cur.skip(",", ";")
    at_mark = next((i for i in range(1, 8) if cur.kind(i) == "star" and len(cur.low(i)) > 1), None)
    if cur.low() in ("ending", "end", "finishing") and at_mark and made.stop_at is not None and any(cur.low(i) in ("at", "with") for i in range(1, at_mark)):
        cur.at += at_mark + 1
        made = replace(made, ending_mode="at")
    elif cur.low() in ("ending", "end", "finishing") and cur.low(1) == "to" and cur.low(2).startswith("corr"):
        cur.at += 3
        made = replace(made, ending_mode="correspond")
    elif cur.low() in ("ending", "end") and cur.low(1) in ("with", "last", "in", "rep"):
        last = any(cur.low(i) in ("last", "rep", "repeat") for i in range(1, 4))
        cur.skip("ending", "end", "with", "last", "rep", "repeat", "by", "in")
        tail: list[Node] = []
        while not cur.done and cur.low() not in (";", "."):
            at = cur.at
            if cur.low() in ("turn", "join") or cur.kind() == "close":
                break
            found_node = one(cur, tail)
            if found_node is not None:
                tail.append(found_node)
                _one_place(tail, 0)
            if cur.at == at:
                cur.at += 1
        made = replace(made, ending=tuple(tail), ending_mode="with-last" if last else "with")
    out.append(made)
