"""Places that are pointed at, not named: "to last st, 2 sc in that one", "until last 2 tr, 1 tr in each of these", "2 dc there", "one sc per st".

Common practice, no source: the forms were met on pages of today.
"""

from __future__ import annotations

import re

from loopwright.model.tree import ONE, STITCH, Num, Place, Thing
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.scanner import words
from loopwright.notation.things import thing

POINTING = frozenset(("that", "it", "these", "those", "them", "there", "each", "both"))
_ONES = frozenset("one place spot".split())
_ENDS = frozenset("and then turn join to until".split())
_NO_PLACES = frozenset("row rnd round side repeat inch cm".split())
_STOPPED = re.compile(r"(?:to|until|till|before) (?:the )?(?:last|final|end) (?:(?P<n>\d{1,3}|two|three|four|five|six) )?[a-z]+$")
BEHIND = 12  # tokens: as far as a place that is pointed at may stand


def per(cur: Cursor) -> Place | None:
    """ "one sc per st", "2 dc per ch-2 loop": each of them; nothing taken elsewhere."""
    start = cur.at
    cur.at += 1
    found = None if cur.low() in _NO_PLACES and cur.low(1) not in ("end", "ends") else thing(cur)
    if found is None:
        cur.at = start
        return None
    return Place("each", None, found)


def pointed(cur: Cursor, start: int) -> Place | None:
    """ "that one", "there", "each of these" behind the preposition at `start`: where the words before came to; nothing taken elsewhere."""
    begin, word = cur.at, cur.low()
    several = word in ("these", "those", "them")
    if word in ("each", "both"):
        ahead = 1 + (cur.low(1) == "of")
        several = cur.low(ahead) in ("these", "those", "them") or word == "both"
        cur.at += ahead if several and word == "each" else 0
    if not several and word == "each":
        return None
    cur.at += 1
    named = None
    if word == "that" or several:
        cur.accept("same")
        named = STITCH if cur.accept(*_ONES) else thing(cur)
        cur.accept("place")
    if named is None and cur.kind() not in ("sep", "end", "close", "open", "star") and cur.low() not in _ENDS:
        cur.at = begin
        return None
    found = _came_to(cur, start, named, several=several, word=word)
    if found is None:
        cur.at = begin
    return found


def _came_to(cur: Cursor, start: int, named: Thing | None, *, several: bool, word: str) -> Place | None:
    """Where the words before an instruction with its preposition at `start` came to."""
    at = start
    while at > 0 and (cur.kinds[at - 1] in ("kind", "num") or cur.lows[at - 1] in ("work", "make", "a", "an", "put", "also")):
        at -= 1
    while at > 0 and (cur.kinds[at - 1] == "sep" or cur.lows[at - 1] in ("and", "then")):
        at -= 1
    before = cur.lows[max(0, at - BEHIND) : at]
    stopped = _STOPPED.search(" ".join(before))
    if stopped is not None:
        many = int(words()["numbers"].get(stopped["n"], 0) or stopped["n"]) if stopped["n"] else 1
        return Place("last", Num((many,)), named or STITCH)
    if several:
        return None
    if named is not None:
        return Place("same", ONE, named)
    behind = [t for t in reversed(cur.lows[max(0, start - BEHIND) : start]) if thing_word(t) is not None]
    of = thing_word(behind[0]) if behind else None
    if of == "ring":
        return Place("next", ONE, Thing("ring"))
    if word == "it":
        return None
    return Place("same", ONE, Thing("sp") if of in ("sp", "loop") else STITCH)
