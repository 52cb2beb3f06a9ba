"""Instructions that make no stitch: skips, joins of a round."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import (
    ONE,
    STITCH,
    Chain,
    Either,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    Num,
    Repeat,
    Ring,
    Skip,
    Unknown,
)
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.markers import skip_to_marker
from loopwright.notation.places import place
from loopwright.notation.things import is_space_number, thing

LEFT_FREE = frozenset("missed skipped free unworked held remaining unused sleeve".split())
_PIECES = frozenset("body leg hat crown brim hand foot sock mitt mitten sleeve yoke neckline neck opening armhole front piece bag base sweater cardigan collar edge".split())
_ACROSS = frozenset("across along around of on over".split())
_TWINS = frozenset("leg sleeve panel piece strip strap half front back shoulder cup".split())
_HELD_PARTS = frozenset("sleeve sleeves underarm armhole thumb".split())
_LIMBS = frozenset("leg legs arm arms ear ears foot feet body head".split())
_RING_MADE = frozenset("form make forming making work begin start continue".split())
_PLAIN = frozenset("sc hdc dc tr dtr".split())
MOST_WORDS = 6  # between "skip" and "to"
SKIPS = frozenset("skip sk skp miss omit".split())


def skip(cur: Cursor) -> Node:
    """ "sk next 2 sts", "skip 1 ch, miss 1 st": what is passed over."""
    start = cur.at
    cur.at += 1
    if (marked := skip_to_marker(cur, start)) is not None:
        return marked
    if cur.accept_words("all but"):
        cur.skip("the", "last")
        left = cur.number()
        if left is not None:
            cur.skip("free", "unworked", "remaining")
            thing(cur)
            return Mark("all-but", n=left, span=cur.span_from(start))
    if (passed := _to_a_space(cur)) is not None:
        return replace(passed, span=cur.span_from(start))
    if cur.low() == "all" and any(cur.low(i) in ("to", "until") for i in range(1, 9)):
        while not cur.done and cur.kind() not in ("sep", "close", "star"):
            cur.at += 1
        return Mark("note", span=cur.span_from(start))  # "skip all sts to next ch-2 sp": what comes next names the place
    if cur.low(-1) in ("omit", "omitting") and (chain := next((i for i in range(4) if cur.low(i) in ("ch", "chain")), -1)) >= 0 and "last" in (cur.low(i) for i in range(chain, chain + 7)):
        while not cur.done and cur.kind() not in ("sep", "close", "star"):
            cur.at += 1
        return Mark("note", span=cur.span_from(start))  # "ch 3, turn. Omit turning ch on last row."
    skips = [_one_skip(cur, start)]
    if cur.low() in ("at", "in") and cur.low(1 + (cur.low(1) == "the")) in ("centre", "center", "middle") and cur.kind(2 + (cur.low(1) == "the")) == "sep":
        cur.at += 2 + (cur.low(1) == "the")  # "miss next 8 dc at centre"
    if cur.low() == "behind":  # "fptr around dc below, skip st behind it": the place that the post stitch takes
        while not cur.done and cur.kind() not in ("sep", "close", "star"):
            cur.at += 1
        return Mark("note", span=cur.span_from(start))
    while (more := _skips_more(cur)) is not None:
        skips.append(more)
    if len(skips) > 1 and all(isinstance(s, Skip) and s.thing.kind in _PLAIN and s.n.at(0) == 1 and not s.first for s in skips):
        return Skip(Num((len(skips),)), span=cur.span_from(start))  # "sk hdc and dc": in whichever order they are met
    return skips[0] if len(skips) == 1 else Repeat(tuple(skips), "once", span=cur.span_from(start))


def _to_a_space(cur: Cursor) -> Skip | Mark | None:
    """ "skip all sleeve sts to next ch-2 sp, hdc in next st": it is passed over too, unless what comes next goes into it; nothing taken elsewhere."""
    start = cur.at
    if cur.low() in ("all", "the", "sts", "stitches", "next"):
        while cur.kind() == "word" and cur.low() not in ("to", "until", "till", "sts", "stitches") and cur.at - start < MOST_WORDS:
            cur.at += 1
        cur.skip("sts", "stitches", "sc", "dc", "hdc", "tr")
    told = cur.low() in ("to", "until", "till")
    cur.skip("up", "to", "until", "till", "the", "next", "second", "following")
    stop = thing(cur) if told else None
    ahead = [cur.low(i) for i in range(1, 12)]
    ahead = ahead[: ahead.index(",")] if "," in ahead else ahead
    if stop is None or stop.kind not in ("sp", "corner") or cur.kind() not in ("sep", "end"):
        cur.at = start
        return None
    if {"in", "into"} & set(ahead) and {"sp", "space", "corner", "same"} & set(ahead):
        return Mark("note")  # what comes next names the place
    return Skip(ONE, stop, to=True)


_TALL = {2: "hdc", 3: "dc", 4: "tr", 5: "dtr"}  # chains, and the stitch that they stand for


def base_passed(cur: Cursor, before: list[Node], node: Node) -> Node:
    """ "3 ch., miss 1 tr., 1 tr. into each tr.": British patterns so pass over the stitch that the chain stands on; the worker finds out."""
    before = [n for n in before if not (isinstance(n, Mark) and n.what == "turn")]
    chain = before[-1] if before else None
    twice = cur.kind(1) == "star" and cur.low(2) in SKIPS or cur.kind(1) == "open" and cur.low(2) in SKIPS
    if twice and isinstance(node, Skip) and node.n.at(0) == 1 and isinstance(chain, Chain) and len(before) == 1:
        return replace(node, first=True)  # "ch 3, skip 1, *skip 1, dc in next, …": nobody skips twice
    if cur.dialect.id == "us" or not isinstance(node, Skip) or node.first or node.n.at(0) != 1 or not isinstance(chain, Chain):
        return node
    if any(not isinstance(n, Mark) for n in before[:-1]) or cur.kind(-2) != "num" or cur.low() != "," or cur.low(3) not in ("in", "into", "on"):
        return node
    made = cur.token(2)
    if made is None or made.kind != "kind" or made.value != _TALL.get(chain.n.at(0) or 0) or cur.low(4) not in ("each", "every"):
        return node
    return Either("base-passed", ((0.0, (replace(node, first=True),)), (0.3, (node,))), node.span)


def _skips_more(cur: Cursor) -> Node | None:
    """ ", the next 5 sts and the next ch-2 sp" after a skip; nothing taken when it does not go on."""
    mark = cur.at
    while cur.low() in (",", "and"):
        cur.at += 1
    begin = cur.at
    if cur.at > mark and cur.low() == "next" and cur.low(-1) == "and" and (cur.kind(1) == "kind" or thing_word(cur.low(1)) == "st") and cur.low(2) in (",", ";", "."):
        return _one_skip(cur, begin)  # "skip joined st and next sc"
    if cur.at == mark + 1 and cur.low(-1) == "and":
        word = cur.token()
        named = word is not None and word.kind == "kind" and word.value in _PLAIN and cur.kinds[mark - 1] == "kind"  # "skip next hdc and sc"
        alone = (thing_word(cur.low()) in ("sp", "loop") or named) and (cur.low(1) in (",", ";", ".") or cur.kind(1) == "star")
        counted = cur.kind() == "num" and (cur.kind(1) == "kind" or thing_word(cur.low(1)) is not None) and cur.low(2) in (",", ";", ".")
        if alone or counted:
            return _one_skip(cur, begin)  # "skip next tr and sp", "skip next sp and 1 tr"
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
    cur.skip("a", "an", "the", "next", "first", "last", "over", "following", "joined", "joining", "center", "centre", "middle")
    n = None if is_space_number(cur) else cur.number()
    found = thing(cur)
    if found is not None and found.kind == "ch" and (cur.accept_words("of turning ch") or cur.accept_words("of the turning ch") or cur.accept_words("of turning chain")):
        return Skip(n or ONE, found, cur.span_from(start), first)
    if found is not None and cur.low() == "of" and (cur.low(1) in ("ch", "chain", "foundation") or cur.low(1) == "the" and cur.low(2) in ("ch", "chain")):
        cur.at += 2 + (cur.low(1) == "the")
    if cur.low() == "of" and cur.low(1) in ("next", "same", "each", "the") and (thing_word(cur.low(2)) == "group" or cur.kind(2) == "kind"):
        cur.at += 2
        thing(cur)
        first = False
    if cur.low() == "of" and cur.low(1) in ("each", "every", "the") and cur.low(2) in ("row", "rnd", "round"):
        cur.at += 3
    if cur.low() in ("of", "for", "at") and (part := next((i for i in (1, 2, 3) if cur.low(i) in _HELD_PARTS), 0)) and all(cur.low(i) in ("the", "each", "first", "second", "other") for i in range(1, part)):
        cur.at += part + 1  # "skip the 30 dc of other sleeve"
    return Skip(n or ONE, found or STITCH, cur.span_from(start), first)


def on_another(cur: Cursor) -> bool:
    """ "of rnd 16", "on the body": the piece or round that a band is joined to as it is worked; takes nothing elsewhere."""
    mark = cur.at
    if not cur.accept("of", "on", "from", "along"):
        return False
    cur.skip("the", "main")
    numbered = cur.low() in ("rnd", "round", "row", "rnds", "rounds") and cur.kind(1) == "num"
    if not numbered and cur.low() not in _PIECES:
        cur.at = mark
        return False
    while cur.kind() in ("word", "num") and cur.low() not in ("and", "then", "turn"):
        cur.at += 1
    return True


def _to_limb(cur: Cursor) -> bool:
    mark = cur.at
    if cur.accept("to", "in", "into", "on"):
        cur.skip("the", "first", "second", "other", "any", "st", "of", "on")
        if cur.low() in _LIMBS:
            cur.at += 1
            return True
    cur.at = mark
    return False


def on_part(cur: Cursor) -> bool:
    """ "9 sc around the leg", "on second leg": which part so many stitches are worked on; takes nothing elsewhere."""
    mark = cur.at
    if not cur.accept("around", "on", "along", "across", "over", "round"):
        return False
    cur.skip("the", "your", "this", "first", "second", "other", "same", "next", "left", "right", "1st", "2nd")
    if cur.at == mark + 1 and cur.low(-1) != "on" or cur.low() not in _LIMBS or cur.kind(1) not in ("sep", "end", "close", "open", "num") and cur.low(1) not in ("and", "then", "1", "2"):
        cur.at = mark
        return False
    cur.at += 1
    if cur.kind() == "num" and cur.kind(1) in ("sep", "end", "close", "open"):  # "on leg 2"
        cur.at += 1
    return True


def along_chain(cur: Cursor) -> bool:
    """ "3 sc along the chain", "across the other side of the ch-3": so many into its chains; takes nothing elsewhere."""
    mark = cur.at
    if not cur.accept("along", "across", "over", "on"):
        return False
    cur.skip("the", "other", "opposite", "second", "first", "side", "of", "back")
    if cur.low() not in ("ch", "chain", "chains", "chs"):
        cur.at = mark
        return False
    cur.at += 1
    if cur.low() == "-" and cur.kind(1) == "num":
        cur.at += 2
    if cur.kind() not in ("sep", "end", "close", "open"):
        cur.at = mark
        return False
    return True


def on_second(cur: Cursor) -> bool:
    """ "across second leg", "of the other sleeve": a piece made before, like the one at hand; takes nothing elsewhere."""
    mark = cur.at
    cur.skip(*_ACROSS)
    cur.skip("the")
    if cur.at == mark or cur.low() not in ("second", "other", "2nd") or cur.low(1) not in _TWINS:
        cur.at = mark
        return False
    cur.at += 2
    return True


def to_a_ring(cur: Cursor) -> bool:
    """ "to form a ring", "for a ring", "into a circle", taken where it stands next."""
    if cur.low() in ("to", "for", "into") and cur.low(1) in ("a", "the") and cur.low(2) in ("ring", "circle") and (cur.low(1) == "a" or cur.low() == "for") and cur.kind(3) in ("sep", "end", "close"):
        cur.at += 3
        return True
    if cur.low() not in ("to", "and") or cur.low(1) not in _RING_MADE:
        return False
    at = 2
    if cur.low(1) in ("work", "begin", "start", "continue"):  # "join to work in the round"
        at += cur.low(at) in ("work", "working")
        at += cur.low(at) == "in"
        at += cur.low(at) in ("the", "a")
        if cur.low(at) not in ("round", "rounds", "rnd", "rnds"):
            return False
        cur.at += at + 1
        return True
    while cur.low(at) in ("a", "the", "centre", "center", "starting", "small", "little"):
        at += 1
    if cur.low(at) not in ("ring", "loop", "circle"):
        return False
    cur.at += at + 1
    return True


def _round_on(cur: Cursor, before: list[Node]) -> bool:
    """ "sc in each st, join to first st to work in the round": a row whose ends are joined, no ring of chains; nothing taken elsewhere."""
    first = next((b for b in before if isinstance(b, (Make, InTurn, Repeat))), None)
    if first is None:
        return False
    inner = first if isinstance(first, Make) else next((n for n in (first.parts if isinstance(first, InTurn) else first.nodes) if isinstance(n, Make)), None)
    if inner is None or inner.place is None or inner.place.from_hook or inner.place.thing.kind == "ring":
        return False
    mark = cur.at
    if not to_a_ring(cur):
        where = place(cur, bare=True) if cur.accept("to") else place(cur)
        if where is None or not to_a_ring(cur):
            cur.at = mark
            return False
    if cur.low(-1) in ("ring", "loop", "circle"):
        cur.at = mark
        return False
    return True


def _with_stitch(cur: Cursor) -> None:
    """ "join into a ring with single crochet": what closes it, told last."""
    at = next((i for i in (1, 2) if cur.kind(i) == "kind"), 0)
    if cur.low() in ("with", "by") and at and cur.token(at).value in ("sc", "sl st"):  # type: ignore[union-attr]
        cur.at += at + 1


def _via(cur: Cursor) -> str | None:
    """The stitch of "join with sc", "join sl st to first sc", None where none is told."""
    via = None
    cur.at += (cur.kind() != "kind") + (cur.kind() == "open")
    cur.skip("a")
    if cur.kind() == "kind":
        british = cur.dialect.id != "us" and cur.low().startswith("single")  # what British books call a slip stitch
        via = "sl st" if british else str(cur.token().value)  # type: ignore[union-attr]
        cur.at += 1
    cur.skip(")", "single")
    return via


def _limb_with(cur: Cursor) -> str | None:
    """The stitch of "join to first leg with a sc"; None, and nothing taken, for other words or a slip stitch."""
    mark = cur.at
    via = _via(cur) if _to_limb(cur) and cur.low() in ("with", "by") else None
    if via in (None, "sl st"):
        cur.at = mark
        return None
    return via


_JOINED_WITH = ("first", "1st", "top", "beg", "beginning", "starting")


def _with_for_to(cur: Cursor) -> bool:
    """ "Join with first hdc", which is to it: "with" taken; nothing taken elsewhere."""
    told = cur.low() == "with" and cur.low(1 + (cur.low(1) == "the")) in _JOINED_WITH
    cur.at += told
    return told


def join(cur: Cursor, before: list[Node]) -> Node:
    """From "join" on: the end of a round, a ring made of a chain, or where the yarn is attached."""
    start = cur.at
    cur.at += 1
    via: str | None = None
    if cur.low() in ("round", "around") and (cur.low(1) in ("with", "by", ".", ",", ";", "") or cur.kind(1) == "sep"):
        cur.at += 1  # "6 chain, join round"
    last_chain: int | None = None
    if cur.low() == "last" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        cur.at += 1
        joined = thing(cur)  # "join last ch-3 to …": the chain is there already
        last_chain = joined.length if joined is not None else None
    if not (to_it := _with_for_to(cur)) and (cur.low() in ("with", "by") or cur.kind() == "open" and cur.low(1) == "with" or cur.kind() == "kind" and cur.token().value == "sl st"):  # type: ignore[union-attr]
        via = _via(cur)
        if via is not None and via != "sl st" and before and _to_limb(cur):
            return Make(via, ONE, None, span=cur.span_from(start))  # "ch 3, join with sc to first leg"
    if before and via is None and (made := _limb_with(cur)) is not None:
        return Make(made, ONE, None, span=cur.span_from(start))
    if cur.low() in ("to", "in", "into") and cur.low(1) in ("form", "a", "ring", "make", "round", "loop", "circle"):
        while cur.low() in ("to", "in", "into", "form", "a", "ring", "make", "loop", "circle", "round", "small", "little"):
            cur.at += 1
        _with_stitch(cur)
        return Ring(False, span=cur.span_from(start))
    if cur.accept_words("each rnd") or cur.accept_words("each round"):
        return Join(None, via, last_chain, cur.span_from(start))
    if cur.accept_words("as before"):
        last_chain = last_chain or -1
    if _round_on(cur, before):
        return Join(None, via, last_chain, cur.span_from(start))
    ring = to_a_ring(cur)
    where = None if ring else place(cur, bare=True) if to_it or cur.accept("to") else place(cur)
    _with_stitch(cur) if cur.dialect.id != "us" else None
    if ring or where is not None and where.thing.kind == "ring" or to_a_ring(cur):
        return Ring(False, span=cur.span_from(start))
    chains = [b for b in before if not isinstance(b, (Mark, Unknown))]
    if len(chains) == 1 and isinstance(chains[0], Chain) and (chains[0].n.at(0) or 0) > 2 and (where is None or where.thing.kind in ("ch", "st") and where.quant in ("kth", "first", "next")):
        return Ring(False, span=cur.span_from(start))  # "ch 30, join": the foundation closed
    if not before:
        return Mark("attach", place=where, span=cur.span_from(start))
    return Join(where, via, last_chain, cur.span_from(start))
