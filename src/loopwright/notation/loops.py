"""Rounds of loops told by their chain alone: "work 8 rnds even, making ch-7 loops throughout", "5th to 8th rnds: Work in ch-6 loops".

Common practice, no source: the forms were met in leaflets.
"""

from __future__ import annotations

import re

from loopwright.model.tree import ONE, Chain, Label, Make, Node, Num, Place, Repeat, Thing
from loopwright.notation.orders import IN_WORDS, number
from loopwright.source import Span
from loopwright.source.expressions import Expression

_LOOPS = Expression(
    rf"(?:work|make|continue)\s+(?:(?P<n>\d{{1,3}}|{IN_WORDS})\s+(?:more\s+)?(?:rnds|rounds)\s+)?(?:even\s*,?\s*)?(?:(?:making|of|with|in)\s+)?"
    r"(?:ch[- ]?(?P<c>\d{1,2})|(?P<d>\d{1,2})[- ]?ch)[- ]loops\b(?:\s+(?:throughout|around|all\s+around|on\s+each\s+rnd|as\s+before))?\s*\.?\s*$", re.IGNORECASE)


def loop_rounds(words: str, label: Label | None, at: Span) -> tuple[Label | None, tuple[Node, ...]] | None:
    """The label and the body of such rounds; None where the words are others, or tell neither how many rounds nor which."""
    if "loops" not in words and "LOOPS" not in words or (m := _LOOPS.match(words)) is None or label is None and m["n"] is None or label is not None and label.kind == "row":
        return None
    many = number(m["n"], 1) if m["n"] else None
    if many is not None:
        label = Label("none", how_many=many, text="" if label is None else label.text) if label is None or label.first is None else label
    stitch = Make("sc", ONE, Place("next", ONE, Thing("loop"), span=at), span=at)
    return label, (Repeat((Chain(Num((int(m["c"] or m["d"]),)), span=at), stitch), "end", span=at),)
