"""What a row told by another one does otherwise: "as Row 5, but making 7 dc instead of 5", "as Rnd 3, having one more group on each side".

Common practice, no source: the forms were met in printed leaflets and on pages of today.
"""

from __future__ import annotations

import re

from loopwright.model.tree import Otherwise
from loopwright.notation.scanner import words as tables
from loopwright.source.expressions import Expression
from loopwright.terms import Dialect

_N = rf"(?:\d{{1,3}}|{'|'.join(sorted(set(tables()['numbers']) - {'another', 'a', 'an'}, key=len, reverse=True))})\b"
_STITCH = r"(?:[a-z]{1,3}\.\s?c\.?|[a-z]+[.]?)"
_CLAUSE = Expression(r"\b(?:but|except(?:ing)?|having|making|working|with|adding|you\s+(?:will\s+)?add|instead)\b\s*(?P<what>[^;]*)", re.IGNORECASE)
_INSTEAD = Expression(
    rf"(?:(?P<new>{_N})\s*)?(?:(?P<newkind>{_STITCH})\s+)?(?:(?:sts?|stitches)\s+)?(?:instead\s+of|in\s+place\s+of)\s+(?:the\s+)?(?:(?P<old>{_N})\s*)?(?P<oldkind>{_STITCH})?", re.IGNORECASE)
_OTHER_NUMBER = Expression(r"\b(?:more|less|fewer|extra|additional|instead|in\s+place\s+of|between)\b|\bover\s+\d|\badd\b|\b\d+\s+(?:groups?|shells?|[sd]\.?\s?c|h?tr|hdc)\b", re.IGNORECASE)


def otherwise(tail: str, which: Dialect | None) -> Otherwise | None:
    """What the words behind "as Row 3" change in it: one number or stitch for another where they tell that, else that something is changed."""
    clause = _CLAUSE.search(tail)
    if clause is None or _OTHER_NUMBER.search(clause["what"]) is None:
        return None
    told = _INSTEAD.search(clause["what"])
    if told is None:
        return Otherwise()
    old, new = _number(told["old"]), _number(told["new"])
    kinds = tuple(_kind(told[name], which) for name in ("oldkind", "newkind"))
    if old is not None and new is not None:
        return Otherwise((old, new), kinds[0] or kinds[1])
    return Otherwise(kinds=(kinds[0], kinds[1])) if old is None and new is None and kinds[0] and kinds[1] else Otherwise()


def _number(text: str | None) -> int | None:
    if not text:
        return None
    return int(text) if text.isdigit() else int(tables()["numbers"][text.lower()])


def _kind(text: str | None, which: Dialect | None) -> str | None:
    return which.kind_of(" ".join(text.lower().replace(".", " ").split())) if text and which is not None else None
