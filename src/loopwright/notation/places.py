"""Places in words: "in each of next 3 sts", "in 2nd ch from hook", "in same sp", "in back loop of next sc", "around post of"."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from loopwright.model.tree import ONE, STITCH, Loop, Place, Quant, Thing
from loopwright.notation.after_places import END_WORDS, PREPOSITIONS, after_place
from loopwright.notation.crossed import each_so, skipped
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.pointing import POINTING, per, pointed
from loopwright.notation.things import is_space_number, loop_words, thing

_OPENING = frozenset("beg beginning starting initial standing".split())
LONGEST_LOOP = 20
MOST = 12  # prepositions before a place
LEAST_GROUP = 3  # stitches that are named as one group by their number
_IN_PAIRS = frozenset({"sc", "hdc", "dc", "tr"})
_PARTS = frozenset("top tip base end head back front side eye point".split())
_JUNK = frozenset("the of a an very immediately following previous prev preceding this that same-colored these those its indicated specified designated marked".split())


def place(cur: Cursor, *, bare: bool = False) -> Place | None:
    """A place with its preposition ("in next 3 sts"); with `bare` the preposition may be missing ("next 3 sts", "each st around").

    Takes nothing and gives None when no place stands here.
    """
    start = cur.at
    relation: Literal["in", "between", "around"] = "in"
    seen = False
    if cur.low() == "per" and (rated := per(cur)) is not None or cur.low() == "there" and (rated := pointed(cur, start)) is not None:
        return replace(after_place(cur, rated), span=cur.span_from(start))
    while cur.at - start < MOST and (cur.low() in PREPOSITIONS or cur.low() in ("worked", "work", "working") and cur.low(1) in PREPOSITIONS):
        if cur.low() in END_WORDS and _ends_here(cur):
            break
        word = cur.take().text.lower()
        relation = "between" if word == "between" else "around" if word in ("around", "round") and not seen else relation
        seen = True
    if not seen and not bare:
        cur.at = start
        return None
    if seen and cur.low() in POINTING and (shown := pointed(cur, start)) is not None:
        return replace(shown, span=cur.span_from(start))
    found = _quantified(cur, seen or cur.low() == "following")
    if found is None:
        if seen and cur.low(-1) in END_WORDS:
            cur.at = start
            return None
        cur.at = start
        return None
    if relation == "between" and found.thing.kind not in ("st", "sp", "loop", "ring") and (found.n is None or (found.n.at(0) or 1) == 2 or cur.low(-1).endswith("s") or cur.at == start + 2 and cur.low(-2) == "between"):
        pair = found.of is None and found.n is not None and found.thing.kind in _IN_PAIRS
        found = replace(found, n=ONE, thing=Thing("gap"), of=found.thing if pair else found.of)  # "between next 2 petals", "between 2 dc"
    if relation != "in" and found.relation == "in":
        found = replace(found, relation=relation)
    if cur.tokens[start].low == "under" and found.thing.kind == "ch" and not found.from_hook and cur.dialect.id != "us":
        found = replace(found, thing=Thing("sp"))  # "1 treble under the first chain"
    return replace(after_place(cur, found), span=cur.span_from(start))


def _ends_here(cur: Cursor) -> bool:
    return cur.kind(1) in ("end", "sep", "close", "star", "times") or cur.low(1) in ("row", "rnd", "and", "join", "rep", "repeat", "ending", "with", "(", "[", "*")


def _post(cur: Cursor) -> Loop | None:
    """ "post of", "stem of", "back post of": from the front where nothing is said (common practice, no source)."""
    start = cur.at
    cur.skip("the", "front", "back")
    if cur.low() in ("post", "stem", "bar", "posts"):
        behind = any(t.text.lower() == "back" for t in cur.tokens[start : cur.at])
        cur.at += 1
        cur.skip("of", "the")
        return "back-post" if behind else "front-post"
    cur.at = start
    return None


def _part_of(cur: Cursor) -> int:
    """ "top of", "top st of": so many words that name a part of what follows them; 0 where none stands."""
    if cur.low() not in _PARTS:
        return 0
    named = cur.low() in ("top", "tip") and cur.low(1) in ("st", "stitch", "ch", "chain", "loop")
    return 2 + named if cur.low(1 + named) == "of" else 0


def _quantified(cur: Cursor, seen: bool) -> Place | None:
    loop: Loop = loop_words(cur) or "both"
    if loop != "both" and cur.low() in ("in", "into") and cur.low(1) in ("each", "every", "all", "next", "ea"):
        cur.at += 1  # "in blo in each st"
    cur.skip(*_JUNK)
    loop = _post(cur) or loop
    if loop != "both" and cur.low() in ("across", "around"):
        return Place("each", None, STITCH, loop=loop)  # "sc in BLO across"
    if cur.low() == "corners" and cur.kind(1) in ("sep", "end"):
        cur.at += 1
        return Place("each", None, Thing("corner"), loop=loop)  # "sc in each dc, 3 sc in corners."
    if cur.low() == "top" and cur.kind(1) in ("sep", "end"):
        cur.at += 1
        return Place("last", ONE, Thing("tch"), loop=loop)  # "2 dc in top.": of the turning chain
    if (ahead := _part_of(cur)):
        base, top = cur.low() == "base", cur.low() == "top"
        cur.at += ahead
        cur.skip("the")
        if not base and cur.kind() == "num" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
            cur.at += 2  # "top of 3 ch": one chain that stands for a stitch, not three
            return Place("last", ONE, Thing("tch"))
        inner = _quantified(cur, True)
        if inner is None:
            return None
        if base and inner.thing.kind in ("tch", "ch", "sp"):
            return replace(inner, quant="same")
        if top and inner.quant == "next" and inner.thing == Thing("ch") and inner.n in (None, ONE):
            return Place("last", ONE, Thing("tch"))  # "2 dc in top of ch"
        if not base and inner.thing.kind == "sp" and cur.low(-1) not in ("sp", "space", "loop", "lp"):
            return replace(inner, quant="last", thing=Thing("tch"))  # "top of ch 3": the chain that stands for a stitch
        return inner
    word = cur.low()
    if word in _OPENING and cur.kind(1) == "kind" and cur.token(1).value != "ch":  # type: ignore[union-attr]
        cur.at += 1
        return Place("first", ONE, thing(cur) or STITCH, loop=loop)  # "top of beg puff", "standing dc"
    if (crossed := skipped(cur, loop)) is not None:
        return crossed
    if word in ("remaining", "rem") and cur.kind(1) == "num":
        cur.at += 1
        return _counted(cur, "next", loop)
    if word in ("each", "every", "all", "ea") or (word in ("remaining", "rem") and (thing_word(cur.low(1)) or cur.kind(1) == "kind") and cur.low(2) != "of"):
        return _each(cur, loop)
    if word in ("next", "nxt", "following") or word == "remaining" and cur.low(2) == "of":  # "into remaining loop of pineapple"
        cur.at += 1
        cur.skip("the", "adjoining", "free", "unworked", "available")
        if cur.kind() == "ord":
            k = cur.take().value
            return Place("kth", ONE, thing(cur) or STITCH, k, loop=loop)
        return _counted(cur, "next", loop)
    if word == "remainder" and cur.low(1) == "of":
        cur.at += 2
        cur.skip("the", "first", "1st", "same")
        return Place("same", ONE, thing(cur) or STITCH, loop=loop)
    if word in ("same", "joining"):
        cur.at += 1
        found = thing(cur)
        if found is None:
            cur.skip("place", "one", "hole")
        if cur.low() == "as":
            mark = cur.at
            _as_words(cur)
            if found is not None and found.kind == "ch" and any(t.text.lower() in ("first", "1st") for t in cur.tokens[mark : cur.at]):
                return Place("last", ONE, found, loop=loop)  # all round a foundation, its first chain comes last
        return Place("same", ONE, found or STITCH, loop=loop)
    if word == "st" and cur.accept_words("st at base of"):
        cur.skip("the", "turning", "beginning", "starting")
        thing(cur)
        return Place("same", ONE, STITCH, loop=loop)
    if word in ("last", "final", "end"):
        if word == "end" and thing_word(cur.low(1)) is None and cur.kind(1) != "kind":
            return None
        cur.at += 1
        return _counted(cur, "last", loop)
    if word == "marked":
        cur.at += 1
        thing(cur)
        return Place("next", ONE, Thing("marker"), loop=loop)
    if word == "any":
        cur.at += 1
        return _counted(cur, "any", loop)
    if word in ("center", "centre", "middle", "central", "centers"):
        return _centre(cur, loop)
    if cur.kind() == "ord":
        return ordinal(cur, loop)
    return _plain(cur, loop, seen)


def _as_words(cur: Cursor) -> None:
    """ "same place as sl st", "same st as joining", "same ch as first 2 sc"."""
    cur.at += 1
    cur.skip("the", "last", "a", "previous", "first", "turning", "beginning", "starting", "beg")
    if cur.kind() == "num" and cur.kind(1) == "kind":
        cur.at += 1
    if cur.kind() in ("kind", "word") and cur.low() not in ("and", "then"):
        cur.at += 1 + (cur.low() == "joining" and cur.kind(1) == "kind" and cur.token(1).value == "sl st")  # type: ignore[union-attr]


def _each(cur: Cursor, loop: Loop) -> Place | None:
    under = cur.dialect.id == "old" or cur.low(-1) in ("under", "over")
    cur.at += 1
    if (so := each_so(cur, loop, under=under)) is not None:
        return so
    cur.skip("of", "the", "single", "marked", *(("all", "those", "these") if cur.low(1) in ("all", "those", "these") else ()))
    if loop == "both" and cur.low() in ("front", "back", "third") and (told := loop_words(cur)) is not None:
        loop = told  # "each front loop around"
    if cur.low() == "other" and cur.low(-1) == "the" and cur.kind(1) == "num":
        cur.at += 1  # "in each of the other 11 sts"
    if cur.low() in ("other", "alternate", "second") and cur.low() != "second":
        cur.at += 1
        return Place("every", None, thing(cur) or STITCH, 2, loop=loop)
    if cur.kind() == "ord" and cur.token().value == 1 and cur.kind(1) == "num":  # type: ignore[union-attr]
        cur.at += 1
        return _counted(cur, "next", loop)
    if cur.kind() == "ord" and cur.low() != "first":
        k = cur.take().value
        return Place("every", None, thing(cur) or STITCH, k, loop=loop)
    one = cur.low() == "following" and not cur.low(1).endswith("s") and (cur.kind(1) == "kind" or thing_word(cur.low(1)) is not None)  # "each following chain"
    if one or cur.low() in ("following", "one") and (cur.low(1) in ("to", "until", "till", "around", "across", "") or cur.kind(1) in ("sep", "end")):
        cur.at += 1
        return Place("each", None, thing(cur) or STITCH, loop=loop)
    if cur.low() in ("next", "following", "first", "last", "of"):
        quant: Quant = "last" if cur.low() == "last" else "next"
        cur.at += 1
        cur.skip("remaining", "rem")
        return _counted(cur, quant, loop)
    cur.skip("remaining", "rem", "remain")
    n = cur.number() if cur.kind() in ("num", "blank") and not is_space_number(cur) else None
    if n is not None and cur.kind() == "ord" and cur.token().value == 1:  # type: ignore[union-attr]
        cur.at += 1  # "in each of the 2 first stitches"
        return Place("first", n, thing(cur) or STITCH, loop=loop)
    found = thing(cur)
    if found is None and n is None and cur.low() not in END_WORDS and cur.low() not in ("to", "of", "until", "and") and cur.kind() not in ("sep", "end", "close", "star", "open"):
        return None
    if n is not None:
        cur.skip("remaining", "rem")
        return Place("next", n, found or STITCH, loop=loop)
    return Place("each", None, Thing("any") if cur.low() in (",", "both") and _both(cur) else found or STITCH, loop=loop)


def _counted(cur: Cursor, quant: Quant, loop: Loop) -> Place:
    if cur.low() == "few":
        cur.at += 1
    n = None if is_space_number(cur) else cur.number()
    cur.skip("unworked", "free", "skipped", "remaining", "rem", "available", "corresponding", "matching", "single")
    if cur.low() in ("center", "centre", "corner") and (cur.kind(1) == "kind" or thing_word(cur.low(1))):
        corner = cur.low() == "corner"
        if corner:
            cur.at += 1
            thing(cur)
            return Place(quant, n or ONE, Thing("corner"), loop=loop)
        cur.at += 1
        return Place(quant, n or ONE, thing(cur) or STITCH, centre=True, loop=loop)
    found = thing(cur)
    return Place(quant, n or ONE, found or STITCH, loop=loop)


def _centre(cur: Cursor, loop: Loop) -> Place:
    cur.at += 1
    n = cur.number() if cur.kind() == "num" else None
    found = thing(cur)
    cur.skip("of", "the", "next", "each", "first", "1st", "last", "same") if cur.low() == "of" else None
    each = cur.low(-1) == "each"
    if (group := _group_of(cur)) is not None:
        return Place("each" if each else "next", None if each else n or ONE, group, of=group, centre=True, loop=loop)
    of = thing(cur) if cur.low(-1) in ("of", "next", "each", "the", "first", "1st", "last", "same") else None
    if of is not None and of.kind == "ch":
        of = Thing("sp")  # "in center st of next ch": of the loop that it makes
    return Place("each" if each else "next", None if each else n or ONE, of or found or STITCH, of=of, centre=True, loop=loop) if of else Place(
        "next", n or ONE, found or STITCH, centre=True, loop=loop
    )


def _group_of(cur: Cursor) -> Thing | None:
    """ "5 tr" in "centre tr of next 5 tr", "5-tr group": those that were made together; takes nothing when there is none."""
    dash = cur.low(1) == "-"
    many = cur.token()
    if many is None or many.kind != "num" or not isinstance(many.value, int) or many.value < LEAST_GROUP or cur.kind(1 + dash) != "kind" or cur.token(1 + dash).value == "ch":  # type: ignore[union-attr]
        return None
    cur.at += 1 + dash
    thing(cur)
    cur.skip("group", "groups")
    return Thing("group")


def ordinal(cur: Cursor, loop: Loop) -> Place:
    """ "2nd st", "3rd ch from hook", "4th dc of next shell", where an ordinal stands."""
    k = cur.take().value
    first = k == 1
    n = cur.number() if cur.kind() == "num" and not is_space_number(cur) else None
    found = thing(cur)
    if first and n is not None:
        return Place("first", n, found or STITCH, loop=loop)
    if cur.accept_words("from hook") or cur.accept_words("from your hook") or cur.accept_words("from needle") or cur.accept_words("from the hook") or cur.accept_words("from the needle"):
        return Place("kth", ONE, found or Thing("ch"), k, from_hook=True, loop=loop)
    of = None
    if cur.low() == "of":
        mark = cur.at
        cur.at += 1
        cur.skip("the", "next", "each", "same", "beginning", "beg", "first", "turning", "starting")
        if first and cur.kind() == "num" and cur.kind(1) == "kind" and cur.token(1).value != "ch":  # type: ignore[union-attr]
            cur.at += 1
            return Place("next", ONE, thing(cur) or STITCH, loop=loop)  # "1 dc into first of 9 tr"
        of = _group_of(cur) if (k or 0) > 1 else None
        of = of or thing(cur)
        if of is None:
            cur.at = mark
    if of is not None:
        if first and of.kind == "pineapple":
            return Place("next", ONE, found or STITCH, loop=loop)  # "first loop of pineapple"
        if of.kind == "tch" or cur.low(-1) == "turning":
            return Place("last", ONE, Thing("tch"), loop=loop)
        return Place("kth", ONE, found or STITCH, k, of=of, loop=loop)
    if first:
        return Place("first", ONE, found or STITCH, loop=loop)
    return Place("kth", ONE, found or STITCH, k, loop=loop)


def _plain(cur: Cursor, loop: Loop, seen: bool) -> Place | None:
    n = None if is_space_number(cur) else cur.number()
    if n is not None and not seen:
        return None
    found = thing(cur)
    if found is not None and found.kind == "ch" and n is not None and (cur.dialect.id == "old" or 1 < (n.at(0) or 0) < LONGEST_LOOP and _round_the(cur)):
        return Place("next", ONE, Thing("sp", n.at(0)), loop=loop)  # "in the 3 chain": in their loop
    if found is None:
        if n is not None and seen:
            return Place("next", n, STITCH, loop=loop)
        if loop != "both" and seen:
            return Place("next", ONE, STITCH, loop=loop)
        return None
    if found.kind == "ring":
        return Place("next", ONE, found, loop=loop)
    if found.kind == "sl st" and n is None:
        return Place("same", ONE, STITCH, loop=loop)  # "1 tr in s.s.": where the round was joined
    if found.kind == "tch":
        return Place("last", ONE, found, loop=loop)
    return Place("next", n or ONE, found, loop=loop)


def _round_the(cur: Cursor) -> bool:
    """ "1 tr round the 2 ch": whether a chain is worked round, which is its loop, not so many chains."""
    return cur.lows[max(0, cur.at - 4) : cur.at - 1][:1] in (["round"], ["around"]) and cur.low(-3) == "the"


def _both(cur: Cursor) -> bool:
    """ "in every stitch, both long and chain": into chains as into stitches; nothing taken elsewhere."""
    start = cur.at
    cur.skip(",")
    if cur.accept("both", "whether"):
        first = thing(cur)
        if first is not None and cur.accept("and", "or"):
            cur.skip("each", "the")
            second = thing(cur)
            if second is not None and "ch" in (first.kind, second.kind):
                return True
    cur.at = start
    return False
