"""What may follow a place: "around", "to last 3 sts", "of next shell", "from hook", "2 rows below"."""

from __future__ import annotations

from dataclasses import replace

from loopwright.model.tree import ONE, Place, Quant, Thing
from loopwright.notation.beside import beside, beside_told
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.extents import left_words, row_words, up_to, up_to_turning_chain
from loopwright.notation.stops import stop_before
from loopwright.notation.things import ROWS, row_told, rows_down, thing, underside_words

_BEHIND_BEFORE = ("next", "each", "the", "first", "last", "tch", "t-ch", "turning")
PREPOSITIONS = frozenset("in into on over under around between through thru across along at onto inside round".split())
END_WORDS = frozenset("around across round along".split())
_OTHERS = frozenset("second other 2nd".split())
_BESIDE = frozenset("petal shell fan scallop".split())
SHAPED = frozenset("shell fan v-st scallop petal pineapple".split())


def _underside_next(cur: Cursor) -> bool:
    mark = cur.at
    there = underside_words(cur)
    cur.at = mark
    return there


def _where_made(cur: Cursor) -> int:
    """ "where next tr was made": so many words that only say which place is meant."""
    return next((i + 1 for i in range(1, 10) if cur.low(i) in ("made", "worked", "joined")), 0)


def after_place(cur: Cursor, found: Place) -> Place:
    """What may follow a place: "around", "to last 3 sts", "of next shell", "from hook", "2 rows below"."""
    for _ in range(4):
        if cur.low() in PREPOSITIONS and (_underside_next(cur) or (ahead := 1 + (cur.low(1) == "the")) and cur.low(ahead) in _OTHERS and cur.low(ahead + 1) not in ROWS):
            break
        if (cur.low() == "between" or cur.low() in ("before", "after") and cur.low(1) in _BEHIND_BEFORE) and found.thing.kind == "sp" and beside_told(cur):
            found = beside(cur, found)
        elif cur.low() == "where" and (many := _where_made(cur)):
            cur.at += many
        elif cur.accept_words("from your hook") or cur.accept_words("from hook") or cur.accept_words("from the hook") or cur.accept_words("from needle"):
            found = replace(found, from_hook=True, quant="kth", k=found.k or (found.n.at(0) if found.n else 1))
        elif cur.low() in END_WORDS and _tail_ok(cur):
            cur.at += 1
            cur.skip("the", "row", "rnd", "round", "ch", "entire", "chain", "edge")
            if found.quant == "next" and found.thing.kind != "ring":
                cur.swept = cur.at
        elif found.quant == "next" and found.thing.kind in ("sp", "gap") and found.n == ONE and (cur.accept_words("on each side") or cur.accept_words("along each side")):
            found = replace(found, quant="each", n=None)  # "3 dc in sp between groups on each side"
        elif cur.low() == "all" and cur.low(1) in ("around", "across", "round"):
            cur.at += 2
        elif cur.low() == "to" and cur.low(1) in ("end", "the") and (cur.low(1) == "end" or cur.low(2) == "end"):
            cur.at += 2 if cur.low(1) == "end" else 3
            cur.skip("of", "row", "rnd", "round", "ch", "the", "chain")
        elif cur.low() == "to" and found.quant == "each" and up_to_turning_chain(cur):
            found = replace(found, left=ONE)
        elif cur.low() in ("to", "up", "until") and found.quant == "each" and (short := stop_before(cur)) is not None:
            found = replace(found, upto=short[1], left=short[0])
        elif cur.low() in ("to", "up") and found.quant == "each" and (stop := up_to(cur)) is not None:
            found = replace(found, upto=stop)
        elif cur.low() in ("to", "until", "within", "till", "up", "except") and (left := left_words(cur)) is not None:
            if found.quant == "each" and found.thing.kind in ("sp", "loop") and left[1].kind not in ("sp", "loop", "mesh"):
                continue  # "in each ch-1 sp to last 2 sts": all of them lie before those
            found = replace(found, left=left[0], quant="each" if found.quant in ("each", "next") and (found.n is None or found.n == ONE or found.quant == "each") else found.quant)
        elif cur.low() == "of" and found.of is None and _of_next(cur, found) is not None:
            found = _of_next(cur, found, take=True) or found
        elif cur.low() in ("of", "on", "from", "in") and (number := row_told(cur)):
            found = replace(found, of_row=number)
        elif cur.low() in ("of", "on", "from", "in") and cur.low(1) in ("previous", "prev", "last", "the", "row", "rnd", "round", "foundation", "starting", "beginning", "beg", "ch", "chain") and row_words(cur):
            if cur.low(-1) in ("ch", "chain") and cur.low(-2) == "of" and found.of is None and found.quant in ("next", "each") and found.thing.kind == "st":
                found = replace(found, of=Thing("ch"))
            continue
        elif (down := rows_down(cur)) is not None:
            found = replace(found, rows_below=down)
        elif cur.low() == "between" and cur.kind(1) == "kind" and cur.low(1).endswith("s") and cur.kind(2) in ("sep", "end", "close", "word"):
            found = replace(found, of=Thing(str(cur.token(1).value)), relation="between") if cur.token(1).value in _BESIDE else found  # type: ignore[union-attr]
            cur.at += 2  # "in next sc between shells": says which it is
        elif cur.low() == "between" and found.quant == "next" and found.thing.kind in ("ch", "sp") and (many := _two_stitches(cur)):
            cur.at += many  # "sc in ch between next 2 sc": the chain is the space
            found = replace(found, thing=Thing("sp", found.thing.length), of=Thing(str(cur.tokens[cur.at - 1].value)), relation="between")
        elif found.thing.kind in ("row", "row-end") and cur.low() in ("down", "up", "along", "of", "on"):
            while cur.kind() == "word":  # "in each row end down the side"
                cur.at += 1
        elif cur.low() in ("at", "of", "in") and found.thing.kind in ("sp", "loop") and (cur.low(1) in ("corner", "corners") or cur.low(1) in ("the", "each") and cur.low(2) in ("corner", "corners")):
            cur.at += 2 + (cur.low(1) in ("the", "each"))  # "in the 2 chain at corner"
        elif found.thing.kind == "ch" and found.quant == "next" and (cur.accept_words("at the end") or cur.accept_words("at end")):
            found = Place("last", ONE, Thing("tch"), loop=found.loop)  # "and 1 in the chain at the end"
        elif cur.low() == "you" and cur.low(1) == "just" and cur.low(2) in ("made", "formed", "worked"):
            cur.at += 1
        elif cur.low() == "just" and cur.low(1) in ("made", "formed", "worked", "completed", "closed"):
            cur.at += 2
            found = replace(found, quant="same", n=ONE, thing=Thing("loop")) if found.quant == "next" and found.thing.kind in ("sp", "loop") else found
        elif cur.low() in ("following", "below", "made", "directly", "worked", "left", "free", "remaining"):
            cur.at += 1
        else:
            break
    return found


def _two_stitches(cur: Cursor) -> int:
    """How many tokens "between next 2 sc", "between the two dc" are; 0 for other words."""
    i = 1
    while cur.low(i) in ("the", "next", "following"):
        i += 1
    i += cur.low(i) in ("2", "two")
    return i + 1 if cur.kind(i) == "kind" and cur.low(i) in ("sc", "dc", "hdc", "tr", "htr", "dtr") and i > 1 else 0


def _tail_ok(cur: Cursor) -> bool:
    nxt = cur.low(1)
    return not (thing_word(nxt) in ("ring", "corner") or nxt in ("post", "stem") or nxt in ("next", "each", "corner"))


def _of_next(cur: Cursor, found: Place, take: bool = False) -> Place | None:
    start = cur.at
    cur.at += 1
    cur.skip("the", "each", "next", "same", "first", "last", "any")
    each = any(t.text.lower() == "each" for t in cur.tokens[start : cur.at])
    last = any(t.text.lower() == "last" for t in cur.tokens[start : cur.at])
    same = cur.low(-1) == "same" and found.quant == "next"
    inner = thing(cur)
    if inner is None or inner.kind in ("row", "ch"):
        cur.at = start
        return None
    end = cur.at
    cur.at = end if take else start
    if same and inner.kind in SHAPED:
        return found  # "in next ch-1 sp of same shell": where the work stands already
    quant: Quant = "each" if each else "last" if last else found.quant
    return replace(found, of=inner, quant=quant, n=None if quant == "each" else found.n)
