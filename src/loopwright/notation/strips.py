"""A chain and what is worked on it to a length: "make 9 ch. and work in d.c. until strap measures 40 cm". Common practice, no source."""

from __future__ import annotations

import re

from loopwright.model.tree import ONE, STITCH, Count, Make, Num, Place, Row
from loopwright.source import Span
from loopwright.source.expressions import Expression
from loopwright.terms import Dialect

_ON_CHAIN = Expression(
    r"(?<=ch|in)(?:\.,|[.,]|)\s+(?:and\s+|then\s+)?work(?:ing)?\s+(?:straight\s+)?in\s+(?:rows\s+of\s+)?(?P<stitch>[a-z]\.?\s?[a-z]{0,2}\.?|trebles?|double\s+crochet)"
    r"(?P<told>\s*\((?P<n>\d{1,3})\s[^()]{1,12}\s(?:to|in|on)\s+(?:each|every|a)\s+row\))?\s+(?:until|till|for|to\s+fit)\b(?!\s*\d{1,3}\s*(?:rows?|rounds?)\b)", re.IGNORECASE,
)


def strip_on(text: str, start: int, end: int, which: Dialect) -> tuple[int, Row] | None:
    """Where the words of the chain end, and a row as all of the strip has them; None where none is told so."""
    words = text[start:end]
    m = _ON_CHAIN.search(words) if " in " in words and "ork" in words else None
    kind = which.kind_of(" ".join(m["stitch"].replace(".", " ").split()).lower()) if m is not None else None
    if m is None or kind not in ("sc", "hdc", "dc", "tr") or re.search(r"\d\s*ch(?:ain)?\b|\bch(?:ain)?\s*\d", words[: m.start()], re.IGNORECASE) is None:
        return None
    span = Span(start + m.start("stitch"), start + m.end("stitch"))
    counts = (Count(Num((int(m["n"]),)), kind, span=Span(start + m.start("told"), start + m.end("told"))),) if m["n"] else ()
    return start + m.start(), Row(None, (Make(kind, ONE, Place("each", None, STITCH), span=span),), counts, span=Span(start + m.start(), end))
