"""Forms of needlework books before about 1930: colours named for stitches, "in the 12 double crochet work 24 treble", "Treble." alone.

Each reader takes its words and gives a node, or takes nothing and gives None. Common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    AtEnds,
    Chain,
    Divided,
    Either,
    Evenly,
    EveryKth,
    Group,
    Join,
    Make,
    Mark,
    Node,
    Num,
    Place,
    Repeat,
    Skip,
    Spread,
    Thing,
    Unknown,
)
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.places import place
from loopwright.notation.scanner import words
from loopwright.notation.shaping import shaping

_OVER = frozenset("on over above upon".split())
_AGAIN = frozenset("the a an of in last next same underneath under below round row row's previous preceding".split())
_LETTERS = frozenset((*"ABCDEFGH", "MC", "CC"))
_BESIDES = frozenset("passing slipping pushing sliding threading drawing using changing keeping".split())  # what is done with beads and wools
_MADE_SO = frozenset("makes forms completes finishes gives".split())
LONGEST_LOOP = 16  # chains of a loop; more are a foundation
_TURNS = {"hdc": 2, "dc": 3, "tr": 4, "dtr": 5}  # chains that stand for a stitch
ANY = Thing("any")


def colours() -> frozenset[str]:
    """Words that name a colour."""
    return frozenset(words()["colours"])


def yarn_letter(cur: Cursor, ahead: int) -> bool:
    """Whether a yarn's letter stands there behind stitches and nothing follows: "3 sc A, 3 sc B", "[1 A, 5 MC]"."""
    token = cur.token(ahead)
    return token is not None and token.text in _LETTERS and (token.text != "MC" or "cc" in cur.lows) and cur.kind(ahead + 1) in ("sep", "close", "end", "star", "times")


def olden(cur: Cursor, before: list[Node]) -> Node | None:
    """The node of an old form that starts here, None when none does."""
    low = cur.low()
    if cur.kind() == "num" and (cur.low(1) in colours() or yarn_letter(cur, 1)):
        return _coloured(cur, before)
    if low in _OVER and (found := _over_first(cur)) is not None:
        return found
    if low == "this" and cur.low(1) in _MADE_SO and before:
        cur.at += next((i for i in range(2, 20) if cur.kind(i) in ("sep", "star", "end", "open", "close")), 2)
        return Mark("note", span=cur.span_from(cur.at - 2))  # "this forms 8 leaves"
    if low in ("finish", "end", "ending") and cur.low(1) == "with" and (single := 2 + (cur.low(2) in ("a", "1", "one"))) and cur.low(single).startswith("single"):
        cur.at += single + 1
        return Join(None, "sl st", span=cur.span_from(cur.at - 1))  # "finish with a single crochet"
    if low in ("both", "these") and before:
        return _said_after(cur, before)
    if low in ("increasing", "decreasing") and cur.kind(1) == "num" and cur.low(2) in ("in", "on", "each"):
        return _increasing(cur)
    if cur.dialect.id == "old" or cur.dialect.id == "uk" and cur.kind() == "kind":
        return _whole_row(cur, before)
    return None


def _coloured(cur: Cursor, before: list[Node]) -> Node | None:
    """ "9 white", "3 blue on the 2 underneath", "4 white, 2 blue, 4 white over the 4 white and one blue"."""
    start = cur.at
    n = cur.number()
    colour = cur.take().text.lower()
    if n is None or cur.low() in ("yarn", "thread", "wool", "silk", "cotton", "loops", "rows", "rounds"):
        cur.at = start
        return None
    mark = cur.at
    cur.skip(",")
    if cur.low() in _OVER:
        cur.at += 1
        told, over = _under(cur, n.at(0) or 1)
        if told:
            total = n
            while before and isinstance(before[-1], Make) and before[-1].kind == "st" and before[-1].place is None:
                total = Num(((total.at(0) or 0) + (before[-1].n.at(0) or 0),))
                before.pop()
            return Spread("st", total, over, colour, cur.span_from(start))
    cur.at = mark
    return Make("st", n, None, span=cur.span_from(start))


def _under(cur: Cursor, made: int) -> tuple[bool, Num | None]:
    """What stitches lie under: whether that was told, and how many; None where the words leave it to the eye."""
    total, told, open_ = 0, False, False
    while not cur.done:
        while cur.low() in ("the", "of"):
            cur.at += 1
        if cur.kind() == "num":
            n = cur.number()
            total, told = total + (n.at(0) or 0 if n is not None else 0), True
            cur.skip(*colours())
        elif cur.kind() == "ord" or cur.low() in ("last", "next") and cur.low(1) not in ("round", "row"):
            cur.at += 1
            total, told = total + 1, True
            cur.skip(*colours())
        elif cur.low() in colours():
            cur.at += 1
            told = True
            total += 1
            open_ = open_ or made > 1
        else:
            break
        while cur.low() in _AGAIN and cur.kind() == "word" and not (cur.low() == "the" and cur.low(1) in colours()):
            cur.at += 1
        if not cur.accept("and"):
            break
    return told, None if open_ or not told else Num((total,))


def _over_first(cur: Cursor) -> Node | None:
    """ "over the 5th blue and 6 white work 8 white"."""
    start = cur.at
    cur.at += 1
    told, over = _under(cur, 2)
    if not told or cur.low() not in ("work", "make"):
        cur.at = start
        return None
    cur.at += 1
    n = cur.number()
    if n is None or cur.low() not in colours():
        cur.at = start
        return None
    return Spread("st", n, over, cur.take().text.lower(), cur.span_from(start))


def divided(nodes: list[Node]) -> list[Node]:
    """A row told by what lies over what is told for one division of it, and meant for all."""
    said = [n for n in nodes if not isinstance(n, (Unknown, Mark))]
    if not said or not any(isinstance(n, Spread) for n in said) or any(not isinstance(n, (Spread, Make)) for n in said):
        return nodes
    if any(isinstance(n, Make) and (n.kind != "st" or n.place is not None) for n in said):
        return nodes
    parts = tuple(n if isinstance(n, Spread) else Spread("st", n.n, None, "", n.span) for n in said if isinstance(n, (Spread, Make)))
    return [Divided(parts, parts[0].span.cover(parts[-1].span)), *(n for n in nodes if isinstance(n, Mark))]


def counted(nodes: list[Node], dialect: str) -> list[Node]:
    """ "7 plain, miss 3": old books count chains with the stitches; the worker finds out whether they do here."""
    said = [n for n in nodes if not isinstance(n, (Unknown, Mark))]
    if dialect == "old" and len(said) == 1 and isinstance(said[0], Repeat) and (told := _counted_round(said[0])) is not None:
        return [told if n is said[0] else n for n in nodes]
    if dialect != "old" or not any(isinstance(n, Make) for n in said) or any(not isinstance(n, (Make, Skip, Chain)) for n in said):
        return nodes
    if not any(isinstance(n, Skip) or isinstance(n, Make) and (n.n.at(0) or 1) > 1 for n in said) or any(isinstance(n, Make) and n.place is not None for n in said):
        return nodes
    other = tuple(
        replace(n, thing=ANY) if isinstance(n, Skip) else replace(n, n=ONE, place=Place("next", n.n, ANY)) if isinstance(n, Make) else n
        for n in nodes
    )
    span = said[0].span.cover(said[-1].span)
    again, others = Repeat(tuple(nodes), "end", span=span), Repeat(other, "end", span=span)
    if len(said) > 1 and isinstance(said[-1], Skip):  # nothing is missed but before more of it
        return [Either("chains-are-stitches", ((0.0, (others,)), (1.0, (again,)), (2.5, tuple(nodes))), span)]
    return [Either("chains-are-stitches", ((0.0, tuple(nodes)), (0.5, (others,)), (0.6, (again,))), span)]


def _counted_round(told: Repeat) -> Either | None:
    """ "1 long, 2 chain, miss 2; repeat": the same, told as a repeat; None where a place is told, or nothing is missed at its end."""
    if told.mode != "end" or told.upto is not None or told.ending or not told.nodes or not isinstance(told.nodes[-1], Skip):
        return None
    inner = counted(list(told.nodes), "old")
    return inner[0] if len(inner) == 1 and isinstance(inner[0], Either) else None


def _said_after(cur: Cursor, before: list[Node]) -> Node | None:
    """ "2 treble, 4 chain, 2 treble; all these are worked in the 2 chain": the place told afterwards."""
    start = cur.at
    i = 0
    while i < 14 and cur.low(i) not in (".", ";", "") and not (cur.low(i) in ("worked", "made") and cur.low(i + 1) in ("in", "into", "under", "on")):
        i += 1
    if cur.low(i) not in ("worked", "made") or not any(cur.low(j) in ("these", "all", "both") for j in range(i)):
        return None
    cur.at += i + 1
    where = place(cur)
    first = len(before)
    while first > 0 and isinstance(before[first - 1], (Make, Chain)) and getattr(before[first - 1], "place", None) is None:
        first -= 1
    if where is None or len(before) - first < 2:
        cur.at = start
        return None
    inside = tuple(before[first:])
    del before[first:]
    return Group(inside, where, span=inside[0].span.cover(cur.span_from(start)))


def _increasing(cur: Cursor) -> Node | None:
    """ "increasing 3 in the round": so many more, where they best come."""
    start = cur.at
    op = "inc" if cur.low() == "increasing" else "dec"
    cur.at += 1
    n = cur.number()
    cur.skip("in", "the", "round", "row", "on", "each")
    return Evenly(op, n, span=cur.span_from(start)) if n is not None else None  # type: ignore[arg-type]


def _whole_row(cur: Cursor, before: list[Node]) -> Node | None:
    """ "Treble.", "Dc. all round", "Black.": one stitch named for a whole row; it goes into every stitch and chain."""
    start = cur.at
    if before and _on_chain(cur, before):
        return Make(str(cur.take().value), ONE, Place("each", None, STITCH), span=cur.span_from(start))
    if before:
        return None
    kind = None
    cur.at += cur.low() == "all" and cur.low(1) in colours()  # "All blue."
    if cur.kind() == "kind" and str(cur.token().value) in ("sc", "dc", "tr", "hdc", "dtr"):  # type: ignore[union-attr]
        kind = str(cur.take().value)
        cur.at += 2 * (cur.low() in (",", "in", "with") and cur.low(1) in colours() and cur.kind(2) in ("sep", "end"))  # "Double crochet, white."
    elif cur.low() in colours():
        cur.at += 1
        cur.skip("silk", "wool", "cotton", "thread", "only")
        cur.skip(",")
        kind = str(cur.take().value) if cur.kind() == "kind" else "*same*"
    if kind is None:
        return None
    cur.skip("only", "all", "round", "around", "across", "along", "throughout", "the", "row", "every", ".", ",")
    if cur.low() in (";", "turn") and all(cur.low(i) in (";", "turn", "the", "work", ".", ",", "") for i in range(len(cur.tokens) - cur.at)):
        cur.skip(";", "turn", "the", "work", ".", ",")
    if cur.low() == "and" and cur.low(1) in ("fasten", "break", "join"):
        cur.at += 1
    if cur.low() in _BESIDES and not any(cur.kind(i) in ("num", "kind", "star", "open") for i in range(1, len(cur.tokens) - cur.at)):
        cur.at = len(cur.tokens)  # "slipping a bead down with each stitch"
    if not cur.done and cur.low() not in ("fasten", "break", "increasing", "join") or not cur.done and cur.low() == "increasing" and cur.kind(1) == "num":
        cur.at = start
        return None
    if cur.low() == "increasing":
        return _increased_so(cur, kind, start)
    return Make(kind, ONE, Place("each", None, ANY), span=cur.span_from(start))


def _on_chain(cur: Cursor, before: list[Node]) -> bool:
    """Whether a stitch is named, and no number, behind a foundation chain: "Chain 40, double crochet, taking the back loop"."""
    said = [n for n in before if not isinstance(n, (Unknown, Mark))]
    plain = cur.kind() == "kind" and str(cur.token().value) in ("sc", "dc", "tr", "hdc", "dtr")  # type: ignore[union-attr]
    alone = plain and cur.kind(1) in ("sep", "end") and cur.low(-1) in (",", ";", ".")
    return alone and len(said) == 1 and isinstance(said[0], Chain) and (said[0].n.at(0) or 0) > 5 and not any(k in ("num", "star") for k in cur.kinds[cur.at :])


def _increased_so(cur: Cursor, kind: str, start: int) -> Node:
    """ "Double crochet, increasing in every stitch", "in every 3rd", "as necessary": the last nobody can count."""
    cur.at += 1
    if cur.accept("in") and cur.accept("every", "each") and thing_word(cur.low()) in ("st", "loop"):
        cur.at += 1
        return Make(kind, Num((2,)), Place("each", None, STITCH), span=cur.span_from(start))
    cur.at = next(i for i in range(start, len(cur.tokens)) if cur.lows[i] == "increasing")
    shaped = shaping(cur)
    if isinstance(shaped, (EveryKth, AtEnds, Evenly)):
        return replace(shaped, kind=kind, span=cur.span_from(start))
    cur.at = len(cur.tokens)
    return Unknown("increasing", 4, cur.span_from(start))


def spread(cur: Cursor, made: Make, start: int) -> Node:
    """ "5 treble on the 2 treble": so many over so many, not so many in each."""
    where = made.place
    if where is not None and where.quant in ("last", "first", "next") and where.thing.kind in (made.kind, "st", "ch") and where.n is not None and where.n.values == made.n.values and where.left is None:
        several = (where.n.at(0) or 0) > 2 and "each" not in {t.low for t in cur.tokens[start : cur.at]}
        return replace(made, n=ONE) if several else made  # "4 treble on the last 4"
    if where is None or where.n is None or where.quant != "next" or where.left is not None or where.relation != "in":
        return made
    over, n = where.n.at(0) or 1, made.n.at(0) or 1
    said = [t.text.lower() for t in cur.tokens[start : cur.at]]
    if over == 1 < n and len(said) == 4 and said[2] in _OVER and where.thing.kind == made.kind:
        return replace(made, n=ONE, place=replace(where, n=made.n))  # "5 treble on treble": one on each
    if over < 2 or n < 2 or "each" in said or "every" in said or where.thing.kind in ("ring", "sp", "loop", "ch"):
        return made
    if not any(w in _OVER for w in said) or n == over and "on" not in said and "over" not in said:
        return made
    return Spread(made.kind, made.n, where.n, span=made.span)


def in_order(out: list[Node]) -> None:
    """ "3 treble on the 1st double, 1 treble on the 2nd, 2 on the 3rd": counted on, so each is the next one."""
    last = out[-1]
    if not isinstance(last, Make) or last.place is None or last.place.quant != "kth" or last.place.from_hook or last.place.of is not None:
        return
    k = last.place.k or 1
    seen = 0
    for node in out[:-1]:
        told = node.readings[0][1][0] if isinstance(node, Either) and node.readings[0][1] else node
        where = told.place if isinstance(told, (Make, Group)) else None
        if isinstance(told, Skip):
            seen = told.n.at(0) or 0 if not seen else seen + (told.n.at(0) or 0)
        elif where is not None and where.quant in ("kth", "first"):
            seen = where.k or (where.n.at(0) if where.n is not None else 1) or 1
        elif where is not None and where.quant == "next":
            many = where.n.at(0) or 1 if where.n is not None else 1
            seen += many if seen or many > 1 else 0  # "1 on each of 3, 2 on the 4th"
    if k >= 2 and seen == k - 1:
        out[-1] = replace(last, place=replace(last.place, quant="next", k=None))


def behind_skip(out: list[Node]) -> None:
    """ "sk 2, 5 dc in 3rd ch": the one behind those passed over, which are counted with it."""
    last = out[-1]
    skip = next((n for n in reversed(out[:-1]) if not isinstance(n, Chain) and not (isinstance(n, Make) and n.place is None)), None)  # "sk 2, 2 dc, ch 2, sc in 3rd ch"
    where = last.place if isinstance(last, (Make, Group)) else None
    if not isinstance(last, (Make, Group)) or where is None or not isinstance(skip, Skip) or skip.first or skip.to or where.quant != "kth" or where.from_hook or where.of is not None:
        return
    if where.k and where.k == (skip.n.at(0) or 0) + 1 and len(set(skip.n.values)) == 1:
        out[-1] = replace(last, place=replace(where, quant="next", k=None))


def every_with_chain(out: list[Node], dialect: str) -> None:
    """ "5 chain, and 2 plain in every stitch": the chain is made before each of them."""
    last = out[-1]
    if dialect == "us" or not isinstance(last, Make) or last.place is None or last.place.quant not in ("each", "every") or len(out) < 2:
        return
    chain = out[-2]
    if isinstance(chain, Chain) and last.span.start - chain.span.end < 2 and 1 < (chain.n.at(0) or 0) < LONGEST_LOOP and last.place.thing.kind != "ring":
        out[-2:] = [Group((chain, replace(last, place=None)), last.place, span=chain.span.cover(last.span))]  # "3 ch 1 tr into each d.c.", without a stop
        return
    if dialect == "us" or dialect == "uk" and last.place.quant != "every":
        return
    if last.place.thing != ANY and isinstance(chain, Chain) and _TURNS.get(last.kind, 1) < (chain.n.at(0) or 0) < LONGEST_LOOP and all(isinstance(n, (Unknown, Mark)) for n in out[:-2]):
        out[-2:] = [Group((chain, replace(last, place=None)), last.place, span=chain.span.cover(last.span))]
