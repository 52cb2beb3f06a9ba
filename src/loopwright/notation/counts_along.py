"""Counts told one after the other as they lie along a row, "(4 hdc, 6 sc, 4 hdc)", and what each of the things counted is made of.

Common practice, no source: the form was met on pages of today.
"""

from __future__ import annotations

from itertools import pairwise

from loopwright.model.tree import Count, Num
from loopwright.notation.cursor import Cursor, thing_word
from loopwright.record import changed

LEAST = 3
"""So many counts at least, of which two are of one kind with another between them."""


def along_row(found: list[Count]) -> tuple[Count, ...]:
    """ "(4 hdc, 3 crosses, 4 hdc)": counts told one after the other along the row; those of one kind on both sides of another are one count."""
    if len(found) < LEAST or any(len(c.n.values) != 1 or c.n.values[0] is None for c in found):
        return tuple(found)
    nouns = [c.noun for c in found]
    twice = {n for n in nouns if n is not None and n != "ch-sp" and nouns.count(n) > 1}
    if not twice or any(a == b for a, b in pairwise(nouns)):
        return tuple(found)
    sums = {n: Num((sum(c.n.values[0] or 0 for c in found if c.noun == n),), None, found[nouns.index(n)].n.span) for n in twice}
    return tuple(changed(c, n=sums[c.noun]) if c.noun in twice else c for i, c in enumerate(found) if c.noun not in nouns[:i])


def made_of(cur: Cursor) -> None:
    """ "5 blocks of 3 dc", "5 petals of 7 sts", "3 groups of V-st": takes what each of them is made of."""
    if cur.low() == "of" and cur.kind(1) in ("num", "kind"):
        cur.at += 1 + (cur.kind(1) == "num")
        cur.at += cur.kind() == "kind" or thing_word(cur.low()) is not None
