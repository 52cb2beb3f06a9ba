"""Things in words: "ch-3 sp", "turning ch", "shell", "back loop", the other side of a chain; what places are made of."""

from __future__ import annotations

from loopwright.model.tree import Loop, Thing
from loopwright.notation.cursor import Cursor, thing_word

LOOP_WORDS: dict[str, Loop] = {
    "blo": "back", "bl": "back", "blp": "back", "flo": "front", "fl": "front", "tlo": "third", "tbl": "back", "tfl": "front",
}

LOOPS_ONLY = frozenset((*LOOP_WORDS, "only", "loop", "loops", "lp", "lps"))  # words a loop is told with, when no stitch is named behind it
_STITCHES = frozenset(("sc", "hdc", "dc", "tr", "dtr"))
_LOOPS = frozenset(("loop", "loops", "lp", "lps", "half", "thread", "threads", "strand", "halves"))


def loop_words(cur: Cursor) -> Loop | None:
    """ "back loop only", "blo", "front half of", "both loops of"; takes nothing when there is none."""
    start = cur.at
    if cur.low() == "under" and cur.low(1) in ("both", "the") and cur.low(2) in (*_LOOPS, "both"):
        cur.at += 1
    cur.skip("the", "picking", "up", "taking", "only", "working", "through", "in", "into", "just") if cur.low() in ("picking", "taking") else None
    if cur.low() == "the" and cur.low(2) in _LOOPS and cur.low(-1) in ("in", "into", "through", "thru", "using"):
        cur.at += 1
    if cur.low() == "the" and cur.low(1) in LOOP_WORDS:
        cur.at += 1
    word = cur.low()
    if word in LOOP_WORDS and not (word in ("bl", "fl") and cur.kind(1) == "num"):
        cur.at += 1
        cur.skip("only", "of")
        return LOOP_WORDS[word]
    side = {"back": "back", "front": "front", "third": "third", "3rd": "third", "both": "both", "rear": "back", "top": "both"}.get(word)
    cur.skip("the")
    if side and cur.low(1) in _LOOPS:
        cur.at += 2
        cur.skip("only", "of")
        return side  # type: ignore[return-value]
    cur.at = start
    return None


def loop_behind(cur: Cursor) -> Loop | None:
    """A loop told behind the place: "BLO", "through the back loop only"; takes nothing when there is none."""
    start = cur.at
    cur.skip("through", "thru", "in", "into", "using", "working") if cur.low() in ("through", "thru", "using") else None
    found = loop_words(cur)
    if found is None:
        cur.at = start
    return found


_SIDES = frozenset({"other", "opposite", "second", "under", "bottom", "unused", "free", "remaining", "unworked"})


def underside_words(cur: Cursor) -> bool:
    """ "(working) along the other side of the foundation chain", "in the free loops of beg ch"; takes nothing when there is none."""
    start = cur.at
    cur.skip("working", "work", "now", "rotate", "and", "continue", "continuing", "back")
    cur.skip("on", "along", "in", "into", "across", "around", "down", "to", "over", "up")
    cur.skip("the")
    side = cur.low() in _SIDES and (cur.low(1) in ("side", "edge") or cur.low(1) in ("loops", "lps", "loop") and cur.low(2) in ("of", "on", "along"))
    if cur.low() == "underside" or cur.low() == "bottom" and cur.low(1) == "of":
        side, cur.at = True, cur.at - 1
    if not side:
        cur.at = start
        return False
    cur.at += 2
    if cur.low() in ("of", "on", "along"):
        mark = cur.at
        cur.at += 1
        cur.skip("the", "foundation", "beginning", "beg", "starting", "original", "base", "initial", "first")
        if cur.low() in ("ch", "ch.", "chain", "chs", "foundation", "row", "cord"):
            cur.at += 1
        elif cur.low(-1) != "foundation":
            cur.at = mark
    return True


def main_colour(cur: Cursor) -> bool:
    """Whether "MC" is the main colour here: "with MC, sc in next st", "MC: 2 sc", in a row that has a CC too."""
    if cur.low() != "mc":
        return False
    told = cur.low(-1) in ("with", "in", "to", "using") and (cur.kind(1) in ("kind", "num") or cur.low(1) in (",", ":", "only"))
    return told or cur.low(1) in (":", "only") or "cc" in cur.lows


def thing(cur: Cursor) -> Thing | None:
    """A thing: "st", "ch-3 sp", "5-ch loop", "turning ch", "magic ring", "dc", "shell"; takes nothing when there is none."""
    start = cur.at
    if cur.low() == "corner" and (thing_word(cur.low(1)) in ("sp", "loop", "st") or cur.kind(1) == "kind" and cur.low(1) not in ("ch", "chain")):
        cur.at += 2
        return Thing("corner")
    numbered = cur.kind(1) == "num" and cur.low(2) == "-" and cur.kind(3) == "kind"  # "corner 2-ch sp"
    if thing_word(cur.low(1)) in ("sp", "loop") or cur.low(1) in ("ch", "chain") or numbered:
        cur.skip("corner", "large", "small", "little")
    if cur.low() == "side" and cur.low(1) in ("sp", "sps", "space", "spaces"):
        cur.at += 2
        return Thing("gap")  # "(3 dc, ch 2, 3 dc) in each corner, 3 dc in each side sp": between the groups, with or without a chain there
    if cur.low() in ("front", "back", "side") and (cur.low(1) in ("sp", "space") or cur.low(1) in ("ch", "chain") and cur.low(2) == "-" and cur.kind(3) == "num"):
        cur.at += 1  # "to back sp", "in front ch-2 sp"
    word = cur.low()
    if word in ("row", "rnd") and cur.low(1) in ("end", "ends"):
        cur.at += 2
        return Thing("row")
    if word in ("turning", "beg", "beginning", "starting", "initial", "t", "tch", "turn", "start", "t-ch", "begin", "end") and (cur.kind(1) == "kind" or cur.low(2) == "ch" or word == "tch"):
        while cur.low() in ("turning", "beg", "beginning", "starting", "initial", "t", "-", ".", "turn", "start", "begin", "end"):
            cur.at += 1
        if cur.low() in ("tch", "ch", "chain", "chs", "ch."):
            cur.at += 1
            _length(cur)
            cur.at += cur.low() == "-" and thing_word(cur.low(1)) in ("sp", "loop")
            cur.at += thing_word(cur.low()) in ("sp", "loop")  # "turning ch sp", "turning ch-sp"
            return Thing("tch")
        cur.at = start
    if word in ("magic", "adjustable", "sliding", "mr", "mc", "double", "slip"):
        if word == "mr" or word == "mc" and not main_colour(cur):
            cur.at += 1
            return Thing("ring")
        if cur.low(1) in ("ring", "circle", "loop"):
            cur.at += 2
            return Thing("ring")
    found = thing_word(word)
    if found:
        cur.at += 1
        if found == "st" and word == "foundation":
            return Thing("ch")
        if word in ("ring", "circle"):
            return Thing("ring")
        if word == "foundation" and cur.low() in ("ch", "chain"):
            cur.at += 1
        if found == "group" and cur.low() == "of" and cur.kind(1) == "num" and cur.kind(2) == "kind":
            cur.at += 3  # "each group of 3 dc"
        return Thing(found)
    if cur.kind() == "kind":
        return _kind_thing(cur)
    if cur.kind() == "num" and cur.low(1) in ("-", "ch", "chain") or cur.kind() == "num" and cur.kind(1) == "kind" and cur.token(1).value == "ch":  # type: ignore[union-attr]
        return _numbered_thing(cur)
    if word in cur.names:
        cur.at += 1
        cur.skip("st", "sts")
        return Thing(word)
    cur.at = start
    return None


def _length(cur: Cursor) -> int | None:
    """ "-3" or " 3" after "ch"."""
    if cur.low() == "-" and cur.kind(1) == "num":
        apart = cur.at and cur.tokens[cur.at].start > cur.tokens[cur.at - 1].end and cur.tokens[cur.at].end < cur.token(1).start  # type: ignore[union-attr]
        if apart and thing_word(cur.low(2)) not in ("sp", "loop"):
            return None  # "in last ch - 12 sts": a count
        cur.at += 1
    elif cur.at and cur.tokens[cur.at - 1].text.endswith(".") and cur.kind() == "num" and cur.kind(1) == "kind":
        return None  # "in 4th ch. 1 dc": a sentence ends
    elif cur.at > 1 and cur.kinds[cur.at - 2] == "num" and cur.kind() == "num" and cur.kind(1) == "kind":
        return None  # "into the 4 chain 1 double, 4 long": its number stands before it
    t = cur.token()
    if t is not None and t.kind == "num" and isinstance(t.value, int):
        cur.at += 1
        return t.value
    return None


def _kind_thing(cur: Cursor) -> Thing:
    t = cur.take()
    kind = str(t.value)
    if kind == "ch":
        if cur.low() == "-" and thing_word(cur.low(1)) in ("sp", "loop"):
            cur.at += 2
            return Thing("sp")  # "in ch-sp"
        length = _length(cur)
        cur.at += cur.low() == "corner" and thing_word(cur.low(1)) in ("sp", "loop")  # "ch-2 corner sp"
        if thing_word(cur.low()) in ("sp", "loop", "mesh"):
            cur.at += 1
            return Thing("sp", length)
        if cur.low() == "picot":
            cur.at += 1
            return Thing("picot")
        return Thing("sp", length) if length and length > 1 else Thing("sp", 1) if length else Thing("ch")
    dash = cur.low() == "-"
    if kind in _STITCHES and cur.low(dash) in ("group", "groups"):
        cur.at += 1 + dash
        return Thing("group")  # "first dc of next dc-group"
    if cur.low() in ("st", "sts", "stitch", "group", "groups", "cluster"):
        cur.at += 1
    return Thing(kind)


def _numbered_thing(cur: Cursor) -> Thing | None:
    start = cur.at
    number = cur.take().value
    cur.accept("-")
    if cur.kind() == "kind" and cur.token().value == "ch":  # type: ignore[union-attr]
        cur.at += 1
        cur.at += cur.low() in ("-", "corner") and thing_word(cur.low(1)) in ("sp", "loop")
        if thing_word(cur.low()) in ("sp", "loop", "mesh"):
            cur.at += 1
        elif cur.low() == "picot":
            cur.at += 1
            return Thing("picot")
        return Thing("sp", int(number))
    if cur.kind() == "kind" and thing_word(cur.low(1)) == "group":
        cur.at += 2
        return Thing("group")
    cur.at = start
    return None


def is_space_number(cur: Cursor) -> bool:
    """Whether the number that comes next counts no places: it is the length of a chain ("2-ch sp"), or tells a row ("2 rows below")."""
    if cur.low(1) in ("-", "ch") and cur.kind(2) == "kind" or cur.low(1) in ROWS and cur.low(2) in _LOWER:
        return True
    number, chain = cur.token(), cur.token(1)
    if number is None or chain is None or number.kind != "num" or chain.value != "ch":
        return False
    if chain.start != number.end:  # "any 2 ch. sp.", "into 5 ch space"; "next 2 ch sps" are two
        one = thing_word(cur.low(2)) in ("sp", "loop") and not cur.low(2).endswith("s")
        return one and (cur.dialect.id != "us" or (number.value or 0) > 2 or cur.low(-1) not in ("next", "first", "last"))
    return thing_word(cur.low(2)) in ("sp", "loop") or cur.low(2) == "-" and thing_word(cur.low(3)) in ("sp", "loop")  # "in next 2ch sp"


ROWS = frozenset("row rows rnd rnds round rounds".split())
_LOWER = frozenset("below down beneath underneath lower".split())


def row_told(cur: Cursor) -> int:
    """ "of Rnd 2", "on the first round": the number of a row; 0 and nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    cur.skip("the")
    if cur.low() in ROWS and cur.kind(1 + (cur.low(1) == ".")) == "num":
        cur.at += 1 + (cur.low(1) == ".")
        value = cur.take().value
        if isinstance(value, int) and cur.low() not in ("below", "down", "beneath", "more", "-", "–"):
            return value
    elif cur.kind() == "ord" and cur.low(1) in ROWS and cur.low(2) not in _LOWER:
        value = int(cur.take().value)
        cur.at += 1
        return value
    cur.at = start
    return 0


def _so_many_below(cur: Cursor) -> int | None:
    """ "on 2nd row below", "of the 3rd row down": counted from the row being worked; nothing taken elsewhere."""
    ahead = 1 + (cur.low(1) == "the")
    row = cur.token(ahead)
    if cur.low() not in ("on", "of", "in", "from") or row is None or row.kind != "ord" or cur.low(ahead + 1) not in ROWS or cur.low(ahead + 2) not in _LOWER:
        return None
    cur.at += ahead + 3
    return max(1, int(row.value) - 1)


def rows_down(cur: Cursor) -> int | None:
    """ "2 rows below", "over 2 rows": how far below the row that is worked into; nothing taken where none of it is said.

    Rows are counted from the one being worked; of "1 row below" only the row below that one can be meant (common practice, no source).
    """
    start = cur.at
    if (ordered := _so_many_below(cur)) is not None:
        return ordered
    over = cur.accept("over", "spanning")
    if cur.kind() != "num" or cur.low(1) not in ROWS or not (over or cur.low(2) in _LOWER):
        cur.at = start
        return None
    many = int(cur.take().value)
    cur.at += 1 if over and cur.low(1) not in _LOWER else 2
    if not over and cur.low() in ("next", "the", "same"):  # "1 row below next st": which one, said again
        again = cur.at
        cur.skip("the", "next", "same", "following")
        if thing(cur) is None:
            cur.at = again
    return max(1, many - 1)
