"""What a row told by another has otherwise: "as 7th row, having 6 loops instead of 7", "like the 5th, but with 5 treble in each shell".

Common practice, no source.
"""

from __future__ import annotations

from loopwright.model.otherwise import Instead
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.notation.scanner import scan
from loopwright.terms import Dialect

_OTHERWISE = frozenset("but having with working making except having".split())
_INTO = frozenset("in into to on under for".split())
UNTOLD = Instead(None, None, 0)  # something is otherwise, and nobody knows what


def instead(words: str, which: Dialect) -> tuple[Instead, ...]:
    """What is otherwise by the words behind "as 7th row"; `UNTOLD` where they tell numbers that are not understood."""
    cur = Cursor(scan(words, 0, len(words), which), which)
    first = next((i for i, low in enumerate(cur.lows) if low in _OTHERWISE), None)
    if first is None or not any(k == "num" for k in cur.kinds[first:]):
        return ()
    stands = [i for i in range(first, len(cur.tokens)) if cur.lows[i : i + 2] == ["instead", "of"] or cur.lows[i : i + 3] == ["in", "place", "of"]]
    found = tuple(_swapped(cur, first, at, at + 2 + (cur.lows[at] == "in")) or UNTOLD for at in stands)
    return found or (_in_each(cur, first) or UNTOLD,)


def _swapped(cur: Cursor, first: int, at: int, behind: int) -> Instead | None:
    """ "6 dc" and "5 dc" on both sides of "instead of"."""
    new = next((i for i in range(at - 1, first, -1) if cur.kinds[i] == "num"), None)
    old = behind if cur.kinds[behind] == "num" else None
    if new is None or old is None or at - new > 6:
        return None
    kind = _kind(cur, new + 1) or _kind(cur, old + 1)
    return Instead(kind, cur.tokens[old].value, cur.tokens[new].value)


def _in_each(cur: Cursor, first: int) -> Instead | None:
    """ "with 5 treble in each shell"."""
    cur.at = first
    cur.skip(*_OTHERWISE)
    n, kind = cur.at, _kind(cur, cur.at + 1)
    if cur.kinds[n] != "num" or kind is None or cur.lows[n + 2] not in _INTO:
        return None
    cur.at = n + 3
    cur.skip("each", "every", "the")
    told = cur.at > n + 3 and (cur.kind() == "kind" or thing_word(cur.low()) in ("group", "sp", "loop", "corner"))
    return Instead(kind, None, cur.tokens[n].value) if told and all(k != "num" for k in cur.kinds[cur.at :]) else None


def _kind(cur: Cursor, at: int) -> str | None:
    at += cur.lows[at] == "-"
    return str(cur.tokens[at].value) if cur.kinds[at] == "kind" else None
