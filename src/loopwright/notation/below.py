"""How many stitches are there before a row, told in brackets at its head: "(from 60)", "(48 sts so far)", "(35 before)".

Common practice, no source: the forms were met on pages of today, where rounds before are left out or only looked back at.
"""

from __future__ import annotations

from loopwright.model.tree import Mark
from loopwright.notation.cursor import Cursor, thing_word

_BEFORE = (("from",), ("starting", "from"), ("starting", "with"), ("beginning", "with"), ("begins", "with"), ("you", "have"), ("had",), ("out", "of"), ("over",), ("on",))
_BEHIND = (("so", "far"), ("before",), ("to", "start"), ("to", "begin"), ("to", "start", "with"), ("to", "begin", "with"), ("at", "start"), ("at", "the", "start"), ("round",), ("around",), ("now",), ("on", "hook"))
_MOST = 6  # words behind the number


def told_below(cur: Cursor, start: int) -> Mark | None:
    """A bracket just opened that tells how many stitches stand below; takes it with its closing one, else nothing."""
    begin = cur.at
    lead = next((words for words in _BEFORE if all(cur.low(i) == w for i, w in enumerate(words))), ())
    cur.at += len(lead)
    cur.skip("the")
    n = cur.number() if cur.kind() in ("num", "blank") else None
    if n is not None:
        named = cur.kind() == "kind" and cur.token().value != "ch" or thing_word(cur.low()) == "st"  # type: ignore[union-attr]
        cur.at += named
        stop = next((i for i in range(_MOST) if cur.kind(i) in ("close", "end")), 0)
        behind = tuple(cur.low(i) for i in range(stop))
        alone = named and not lead and not behind and (cur.kind(1) in ("kind", "star") or cur.low(1) in ("ch", "chain"))
        if cur.kind(stop) == "close" and (behind in _BEHIND or lead and not behind or alone):
            cur.at += stop + 1
            return Mark("below", n=n, span=cur.span_from(start))
    cur.at = begin
    return None
