"""A row told once behind a star, with its turn, and worked again so many times.

"* Sc in each sc, ch 1, turn. Repeat from * 5 more times."

Common practice, no source: the form was met in leaflets.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Num, RowOrder
from loopwright.notation.orders import IN_WORDS, number
from loopwright.source.expressions import Expression

_STARRED = Expression(
    rf"\s*(?P<star>\*{{1,2}})\s*(?P<row>[^*()\[\]]{{8,160}}?\bturn\b)\s*[.;,]\s*rep(?:eat)?\.?\s+from\s+(?P=star)(?!\*)\s+(?:for\s+)?(?:(?P<n>\d{{1,3}}|{IN_WORDS})\s+(?:more\s+)?times|(?P<once>once|twice))(?:\s+more)?\s*[.,;]?\s*",
    re.IGNORECASE,
)
_LEAST = len("* sc in each sc, turn")


def starred_row(text: str, start: int, end: int, sizes: int) -> tuple[int, int, RowOrder] | None:
    """Where the row's own words begin and end, and how often it is worked again; None where the words are no such thing."""
    if end - start < _LEAST or "*" not in text[start : start + 4] or "turn" not in text[start:end].lower():
        return None
    m = _STARRED.fullmatch(text[start:end])
    again = None if m is None else number(m["n"] or m["once"], sizes) or Num((1,))
    return None if m is None or again is None else (start + m.start("row"), start + m.end("row"), RowOrder("repeat", last_n=1, times=again, more=True))
