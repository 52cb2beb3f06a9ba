"""Stitches in words: number, kind, places, joins by slip stitch."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    Chain,
    EdgeRun,
    Either,
    Group,
    Join,
    Loop,
    Make,
    Node,
    Num,
    Place,
    Repeat,
    Thing,
)
from loopwright.notation.after_places import END_WORDS
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.edges import all_around, along, at_a_rate, one_of_sides, with_rate
from loopwright.notation.extents import left_words, swept_to
from loopwright.notation.further import more_places, over_more
from loopwright.notation.layers import THROUGH, closes, layered, through_both
from loopwright.notation.moves import LEFT_FREE, along_chain, on_part, on_second
from loopwright.notation.olden import spread, yarn_letter
from loopwright.notation.open_chains import open_length
from loopwright.notation.places import place
from loopwright.notation.scanner import Token
from loopwright.notation.shapes import between
from loopwright.notation.slip_joins import onto_another, slip_join
from loopwright.notation.stops import stop_before
from loopwright.notation.things import LOOPS_ONLY, loop_behind, loop_words, rows_down, thing

_OPENS = frozenset("starting beginning opening".split())
_GROUPS = frozenset("shell fan scallop v-st cluster popcorn puff bobble".split())
UNSEEN = frozenset({"inv", "invisible", "seamless", "chainless", "standing"}) | _OPENS  # joins and starts that do not show


def standing(cur: Cursor, before: list[Node]) -> Node | None:
    """ "chainless starting dc", "standing dc in any st", "invisible join" before any stitch: the first stitch, made without a chain."""
    if any(isinstance(b, (Make, Chain, Group, Repeat)) for b in before):
        return None
    start, token = cur.at, cur.token(1)
    if cur.low() in _OPENS and (token is None or token.kind != "kind" or token.value not in _GROUPS):
        return None
    cur.at += 1
    joined = cur.accept("join")
    told = joined or cur.accept("start", "starting", "beginning")
    kind = "st"
    if cur.kind() == "kind" and not joined:
        kind = str(cur.take().value)
    elif not told:
        cur.at = start
        return None
    return Make(kind, ONE, place(cur) or Place(), span=cur.span_from(start))


def first_chain(node: Node, before: list[Node], *, leads: bool) -> Node:
    """ "sc in 2nd ch" as a row's first stitch means from the hook; where its words lead the row, "in 6th stitch of chain" does too."""
    inner = node.nodes[0] if isinstance(node, Repeat) and node.nodes else node
    if not isinstance(inner, Make) or inner.place is None or inner.place.thing.kind not in ("ch", "st") or any(isinstance(b, (Make, Group, Repeat)) for b in before):
        return node
    where = inner.place
    if where.quant == "first" and where.thing.kind == "ch" and where.of is None and (inner.n.at(0) or 0) >= _ROUND and (k := _in_a_ring(before)):
        return replace(inner, place=replace(where, quant="kth", k=k, from_hook=True))
    of_chain = leads and where.thing.kind == "st" and where.of is not None and where.of.kind == "ch"  # "in 6th stitch of chain"
    if where.quant != "kth" or where.from_hook or not of_chain and (where.of is not None or where.thing.kind != "ch"):
        return node
    fixed = replace(inner, place=replace(where, from_hook=True, thing=Thing("ch"), of=None))
    return replace(node, nodes=(fixed, *node.nodes[1:])) if isinstance(node, Repeat) else fixed


_ROUND = 7  # so many stitches in one chain begin a round


def _in_a_ring(before: list[Node]) -> int:
    """ "Ch 4, 11 dc in first ch": which chain that is, counted from the hook; 0 where the row does not begin with a short chain alone."""
    chain = before[0] if len(before) == 1 else None
    length = (chain.n.at(0) or 0) if isinstance(chain, Chain) else 0
    return length if 3 <= length <= 6 else 0


def kind_before(nodes: list[Node] | tuple[Node, ...]) -> str | None:
    """The stitch named last: "2 dc in next, 1 in next" means it."""
    for node in reversed(nodes):
        if isinstance(node, Make):
            return node.kind
        if isinstance(node, (Repeat, Group)):
            return kind_before(node.nodes)
        if isinstance(node, Either):
            return kind_before(node.readings[0][1])
    return None


def kind_follows(cur: Cursor) -> bool:
    """Whether a number and then a stitch come next."""
    start = cur.at
    n = cur.number()
    cur.skip("more", "-", ".")
    ok = n is not None and cur.kind() == "kind"
    cur.at = start
    return ok


def make(cur: Cursor) -> Node:
    """A stitch with its number before or after it, its place, and what the words make of both: a join, an edge, a list of places."""
    start = cur.at
    n = cur.number()
    cur.skip("more", "-", ".")
    kind = str(cur.take().value)
    if (shaped := _shaped(cur, kind, n, start)) is not None:
        return shaped
    if n is not None and kind != "ch" and (cur.accept_words("into the round") or cur.dialect.id != "us" and cur.accept_words("in the round")):  # old books' word for the ring
        return Make(kind, n, Place("next", ONE, Thing("ring")), span=cur.span_from(start))
    if kind == "ch" and n is None and cur.low() == "-" and cur.kind(1) in ("num", "blank") and cur.kind(2) != "kind" and thing_word(cur.low(2)) is None and cur.low(2) != "-":
        cur.at += 1  # "ch-3, turn"
    down = rows_down(cur) if kind != "ch" else None
    if n is None and down is None and (cur.kind() in ("num", "blank") and (kind == "ch" or cur.kind(1) != "kind" or _number_after(cur)) or cur.sizes > 1 and cur.low() in ("-", "–", "—")):
        n = cur.number()
    if kind == "ch" and n is None and cur.low() == "-" and cur.kind(1) == "num" and cur.kind(2) in ("sep", "end", "close"):
        cur.at += 1  # "ch-16, join"
        n = cur.number()
    if kind == "ch" and n is None and cur.low() == "of" and cur.kind(1) in ("num", "blank"):
        cur.at += 1
        n = cur.number()
    if kind == "ch" and n is None and cur.kind() == "word" and (untold := open_length(cur)) is not None:
        return Chain(untold[0], plus=untold[2], every=untold[1], span=cur.span_from(start))
    if kind == "ch":
        plus = 0
        if n is not None and cur.low() in ("+", "plus") and cur.kind(1) == "num" and cur.kind(2) in ("sep", "end", "close", "word", "open"):
            cur.at += 1
            plus = int(cur.take().value)
        return Chain(n or ONE, plus=plus, span=cur.span_from(start))
    if kind == "sl st" and start > 3 and n is not None and n.values == (1,) and (cur.done or cur.kind() == "sep" and cur.kind(1) == "end"):
        return Join(None, "sl st", span=cur.span_from(start))  # ", 1 sl st." at a round's end closes it
    if kind == "sl st" and start and (fixed := onto_another(cur, start)) is not None:
        return fixed
    if kind == "sl st" and (n is None or start > 3 and n.values == (1,)) and (joined := slip_join(cur, start)) is not None:
        return joined
    cur.at += yarn_letter(cur, 0) or 2 * (cur.low() in ("in", "with") and yarn_letter(cur, 1))
    loop = loop_words(cur) or "both"
    if loop != "both" and n is None and cur.kind() in ("num", "blank") and cur.kind(1) != "kind":
        n = cur.number()  # "sc blo 5"
    chains = between(cur)
    cur.at += n is not None and cur.low() == "across" and cur.low(1) in THROUGH  # "sc 4 across through both layers"
    both = cur.layered or through_both(cur) or closes(cur, n)
    cur.at += bool(both) and cur.low() in ("for", "over") and cur.low(1) in ("next", "the")  # "through all layers for next 4 sts"
    if n is None and kind not in ("sl st", "inc", "dec", "invdec") and "tog" not in kind and (twice := _twice(cur)) is not None:
        n = twice
    if n is not None and (n.at(0) or 0) > 1 and kind != "sl st":
        if before_a_chain(cur) and along_chain(cur):
            return Make(kind, ONE, Place("next", n, Thing("ch")), loop, span=cur.span_from(start))
        if on_part(cur):
            return Make(kind, n, None, loop, span=cur.span_from(start))
    if cur.low() in ("in", "into") and (edge := _along(cur, kind, n, start)) is not None:
        return edge
    if (edge := one_of_sides(cur, kind, n, start) or along(cur, kind, n, start) or all_around(cur, kind, n, start)) is not None:
        return with_rate(cur, edge, start)
    if (edge := at_a_rate(cur, kind, n, start)) is not None:
        return edge
    if "tog" in kind and (again := _decreases(cur, kind, n, loop, start)) is not None:
        return again
    second = start > 3 and n is None and on_second(cur)
    where = None if second else place(cur)
    if second or start > 3 and where is not None and where.quant == "each" and n is None and on_second(cur):
        return EdgeRun(kind, None, "free", span=cur.span_from(start))  # "… across first leg, ch 4, … across second leg"
    if where is not None and (n is not None and (n.at(0) or 0) > 3) and where.quant == "next" and cur.low(-1) in LOOPS_ONLY and where.loop in ("back", "front", "third"):
        loop, where = where.loop, None  # "16 sc in BLO": in so many stitches
    cur.at += where is not None and yarn_letter(cur, 0)
    if where is not None and where.quant == "each" and where.thing.kind == "ch" and (under := _bottom(cur, kind, n, start)) is not None:
        return under
    if down is None:
        down = rows_down(cur)
    if down is not None:
        where = replace(where, rows_below=down) if where is not None else Place("next", n or ONE, rows_below=down)
        n = None if where.n is n else n
    elif where is None and cur.low() in END_WORDS and (n is None or (n.at(0) or 0) < 4):
        cur.at += 1
        cur.swept = cur.at
        where = Place("each", None, STITCH, loop=loop)
        if (stop := swept_to(cur)) is not None:
            where = replace(where, upto=stop)
        elif (left := left_words(cur)) is not None:
            where = replace(where, left=left[0])
    elif where is None and (cur.low() in ("each", "next", "nxt", "every") or cur.low() in ("last", "first") and cur.kind(1) == "num" and n is None):
        where = place(cur, bare=True)
    if where is None and cur.low() in ("to", "until", "till", "up") and (short := stop_before(cur)) is not None:
        where = Place("each", None, STITCH, left=short[0], upto=short[1])
    if where is None and n is None and kind != "sl st" and (stop := swept_to(cur)) is not None:
        where = Place("each", None, STITCH, loop=loop, upto=stop)
    if where is None and cur.low() in ("to", "until", "till") and (left := left_words(cur)) is not None:
        where = Place("each", None, STITCH, left=left[0])
    elif where is None and n is None and (cur.accept_words("to end") or cur.accept_words("to the end")):
        where = Place("each", None, STITCH, loop=loop)
        cur.skip("of", "the", "row", "rnd", "round")
    if where is not None and where.loop in _POSTS:
        kind, where = kind if kind.startswith(("fp", "bp")) else _POSTS[where.loop] + kind, replace(where, loop="both")
    if loop == "both":
        loop = loop_behind(cur) or "both"
    chains = chains or (between(cur) if where is not None else 0)
    wide = where.n.at(0) if where is not None and where.n is not None and where.quant == "next" else None
    if kind in ("cluster", "cross-st") and n in (None, ONE) and wide and wide > 1 and any(t.text.lower() == "over" for t in cur.tokens[start : cur.at]):
        where = where if where is not None and where.thing.kind in _PLAIN else None  # "cluster over next 5 dc" passes over the sc between
        made = Make(kind, ONE, where, taking=wide, parts=wide, span=cur.span_from(start))
        return over_more(cur, made, start) or made
    made = Make(kind, n or ONE, where, loop if loop != "both" else where.loop if where else "both", between=chains, span=cur.span_from(start))
    if kind in ("dec", "invdec") and n is None and where is not None and (pairs := _in_pairs(made, where)) is not None:
        return pairs
    if both or through_both(cur):
        return layered(cur, made, n, start)
    over = spread(cur, made, start)
    if where is not None and where.quant == "same" and cur.low() == "and" and cur.low(1) in ("in", "into") and made.n == ONE and (edge := _and_free(cur, kind, start)) is not None:
        return edge
    return over_more(cur, made, start) or more_places(cur, made, start) if over is made else over


_ALONG = frozenset(("along", "across", "on", "of", "around"))


def _bottom(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """ "in each ch along bottom", "across the foundation edge": the other side of the foundation; nothing taken elsewhere."""
    words = 0
    while cur.kind(words) in ("word", "kind") and words < 8:
        words += 1
    said = {cur.low(i) for i in range(words)} | ({"foundation"} if "foundation" in (cur.low(-1), cur.low(-2)) else set())
    along = cur.low() in _ALONG or cur.low(-1) in _ALONG
    if n is not None and n.at(0) != 1 or not along or not said & {"bottom", "foundation", "opposite", "underside", "lower"}:
        return None
    cur.at += words
    return EdgeRun(kind, None, "underside", span=cur.span_from(start))


def _shaped(cur: Cursor, kind: str, n: Num | None, start: int) -> Node | None:
    """ "hdc inc", "8 hdc-inc", "dc dec", "8 inc (hdc)": an increase or decrease in a stitch that is told; nothing taken elsewhere."""
    dash = cur.low() == "-" and cur.tokens[cur.at - 1].end == cur.tokens[cur.at].start  # "8 sc - inc": one after the other
    op = cur.token(dash)
    if kind in _PLAIN and op is not None and op.kind == "kind" and op.value in ("inc", "dec"):
        cur.at += 1 + dash
        op_kind, of = str(op.value), kind
    elif kind in ("inc", "dec") and cur.kind() == "open" and cur.kind(1) == "kind" and cur.token(1).value in _PLAIN and cur.kind(2) == "close":  # type: ignore[union-attr]
        op_kind, of = kind, str(cur.token(1).value)  # type: ignore[union-attr]
        cur.at += 3
    else:
        return None
    n = n or (cur.number() if cur.kind() in ("num", "blank") and cur.kind(1) != "kind" else None)
    where = place(cur) or (place(cur, bare=True) if cur.low() in ("each", "next", "every") else None)
    if where is None and not dash and (n is not None or op_kind == "dec") and kind in _PLAIN and cur.kind() in ("close", "star") and cur.kind(1) == "times":  # "(1sc inc) x 6", "*2 sc dec* x 6": both, where no comma tells them apart
        n = n or ONE
        shaped = Make(f"{of}2tog", n, None) if op_kind == "dec" else Make(of, Num((2,)), Place("next", n))
        span = cur.span_from(start)
        readings = ((0.0, (replace(shaped, span=span),)), (0.5, (Make(kind, n, span=span), Make(op_kind, ONE, span=span))))
        return Either("stitch-then-shaping", readings, span)
    if op_kind == "dec" and n is None and where is None and (around := _decreases(cur, f"{of}2tog", n, "both", start)) is not None:
        return around
    if op_kind == "dec" and n is None and where is not None and where.quant in ("each", "every") and where.n is None and where.left is None and where.thing == STITCH:
        return Repeat((Make(f"{of}2tog", ONE, span=cur.span_from(start)),), "end", span=cur.span_from(start))  # "sc dec in each st around": one after the other
    if where is None and cur.low() in END_WORDS and cur.kind(1) in ("sep", "end", "close"):
        cur.at += 1
        where = Place("each", None, STITCH)
    if op_kind == "dec":
        return Make(f"{of}2tog", n or ONE, where, span=cur.span_from(start))
    return Make(of, Num((2,)), where or Place("next", n or ONE), span=cur.span_from(start))


_PLAIN = frozenset("sc hdc dc tr dtr esc".split())
_POSTS = {"front-post": "fp", "back-post": "bp"}
_OFF = frozenset("of on along".split())


def _along(cur: Cursor, kind: str, per: Num | None, start: int) -> Node | None:
    """ "in each of the 5 missed sts", "in the other side of each of the 5 ch": an edge left free before; nothing taken else."""
    mark = cur.at
    cur.at += 1
    cur.skip("the")
    under = cur.accept_words("other side of") or cur.accept_words("opposite side of") or cur.accept_words("underside of")
    cur.skip("each", "of", "the", "next")
    many = cur.number() if cur.kind() in ("num", "blank") else None
    left = [w for w in (cur.low(), cur.low(1)) if w in LEFT_FREE and not (w == "remaining" and cur.low() in ("ch", "chain"))]
    across = any(cur.low(i) in _OFF and "side" in (cur.low(i + 2), cur.low(i + 3)) and {"opposite", "other"} & {cur.low(i + 1), cur.low(i + 2)} for i in (1, 2))
    if many is None or per is not None and per.at(0) != 1 or not (under or left or across):
        cur.at = mark
        return None
    cur.skip(*LEFT_FREE)
    thing(cur)
    under = under or across and cur.low() != "of"
    if cur.low() in _OFF:
        cur.at += 1
        cur.skip("the", "foundation", "opposite", "other")
        cur.at += cur.kind() == "word"
        if across and cur.accept("of"):
            cur.skip("the", "foundation", "starting", "beginning", "original")
            thing(cur)
    return EdgeRun(kind, many, "underside" if under else "free", span=cur.span_from(start))


def _and_free(cur: Cursor, kind: str, start: int) -> Node | None:
    """ "in same st and in next 5 skipped sts": the first of them is the one where the yarn was joined."""
    mark = cur.at
    cur.at += 1
    edge = _along(cur, kind, None, start)
    if isinstance(edge, EdgeRun) and edge.where == "free" and edge.n is not None and edge.n.at(0):
        return replace(edge, n=Num(tuple(v + 1 if v is not None else None for v in edge.n.values)))
    cur.at = mark
    return None


def _same_and_next(cur: Cursor) -> bool:
    """ "sc2tog in same st and next st", "working in same and next sts": one leg where the last stitch is, one in the next. Takes the words."""
    mark = cur.at
    cur.skip("working", "worked", "in", "into", "over", "using", "the")
    if cur.at > mark and cur.accept("same"):
        cur.skip("st", "as", "last", "stitch")
        if cur.accept("and"):
            cur.skip("in", "into", "the")
            if cur.accept("next"):
                cur.skip("st", "sts", "stitch")
                return True
    cur.at = mark
    return False


def _in_pairs(made: Make, where: Place) -> Node | None:
    """ "dec around", "invdec in each st to last 2 sts": one after the other; None for other places."""
    if where.quant not in ("each", "every") or where.thing != STITCH or where.n is not None or where.upto is not None or where.of is not None:
        return None
    one = replace(made, place=None)
    return Repeat((one,), "end", span=made.span) if where.left is None else Repeat((one,), "left", left=where.left, span=made.span)


def _decreases(cur: Cursor, kind: str, n: Num | None, loop: Loop, start: int) -> Node | None:
    """ "sc2tog 6 times", "sc2tog {n} times", "sc2tog around": one after the other; nothing taken where none of it is said."""
    one = Make(kind, ONE, None, loop, span=cur.span_from(start))
    if n is None and kind.endswith("2tog") and _same_and_next(cur):
        return Make(kind, ONE, Place("same"), loop, parts=2, span=cur.span_from(start))
    if cur.kind() == "times" and n is None:
        times, more = cur.take().value
        return Repeat((one,), "more" if more else "times", Num((times,)), span=cur.span_from(start))
    if n is not None and cur.low() in ("times", "time"):
        cur.at += 1
        return Repeat((one,), "times", n, span=cur.span_from(start))
    if n is None and cur.low() in ("around", "across"):
        mark = cur.at
        cur.at += 1
        if cur.low() in ("", ",", ";", "."):
            return Repeat((one,), "end", span=cur.span_from(start))
        if (left := left_words(cur)) is not None:
            return Repeat((one,), "left", left=left[0], left_of=left[1], span=cur.span_from(start))
        cur.at = mark
    elif n is None and cur.low() in ("to", "until", "all"):
        mark = cur.at
        if cur.accept_words("to end") or cur.accept_words("to the end") or cur.accept_words("all around") or cur.accept_words("all across"):
            cur.skip("of", "the", "row", "rnd", "round")
            return Repeat((one,), "end", span=cur.span_from(start))
        if (left := left_words(cur)) is not None:
            return Repeat((one,), "left", left=left[0], left_of=left[1], span=cur.span_from(start))
        cur.at = mark
    return None


def _number_after(cur: Cursor) -> bool:
    """Whether this row says "sc 5 inc sc 8", the number behind the stitch, without stops between."""
    if cur.numbers_behind is None:
        cur.numbers_behind = _told_behind(cur.tokens)
    return cur.numbers_behind


def _told_behind(tokens: list[Token]) -> bool:
    stops = ("sep", "close", "end", "star", "times")
    after = sum(1 for i in range(1, len(tokens)) if tokens[i].kind == "num" and tokens[i - 1].kind == "kind" and (i + 1 == len(tokens) or tokens[i + 1].kind in stops))
    before = sum(1 for i in range(len(tokens) - 1) if tokens[i].kind == "num" and tokens[i + 1].kind == "kind" and (i == 0 or tokens[i - 1].kind in (*stops, "open")))
    return after > before


def before_a_chain(cur: Cursor) -> bool:
    """Whether the row's words make a chain before, not to work back over: "ch 3, join to first leg, … 3 sc along the chain"."""
    return "hook" not in cur.lows[: cur.at] and any(t.kind == "kind" and t.value == "ch" and cur.tokens[i + 1].kind == "num" for i, t in enumerate(cur.tokens[: max(0, cur.at - 3)]))


def _twice(cur: Cursor) -> Num | None:
    """ "sc twice in next st", "dc 3 times in each st": so many in a place; nothing taken where no single place follows."""
    mark = cur.at
    if cur.kind() != "times" or cur.low(1) not in ("in", "into"):
        return None
    many, more = cur.take().value
    end = cur.at
    where = place(cur)
    cur.at = end
    if where is None or more or where.quant not in ("next", "same", "each", "first", "last") or where.quant != "each" and (where.n.at(0) if where.n else 1) != 1:
        cur.at = mark
        return None
    return Num((many,))
