"""Stitch kinds as small numbers, so that a row is a byte string; heights, and how many places a decrease takes.

Not the terms of a language: kinds are US abbreviations here as everywhere inside.
"""

from __future__ import annotations

import re
from functools import lru_cache

from loopwright.trade.stitches import heights

CHAIN = 1
ANY = 2
_CODES: dict[str, int] = {"": 0, "ch": CHAIN, "st": ANY}
_NAMES: list[str] = ["", "ch", "st"]
_LIMIT = 255

# Chains that stand in for a stitch at the start of a row.
HEIGHT = heights()
CLOSED = frozenset(("cluster", "popcorn", "puff", "bobble"))  # each is one stitch, whatever it is made of

_TOG = re.compile(r"^(?:fp|bp)?([a-z]+?)(\d+)tog$")
_POST = re.compile(r"^(fp|bp)([a-z]+\d*t?o?g?)$")


def code(kind: str) -> int:
    """The small number of a kind; past 255 kinds in one run, further ones share the last number."""
    known = _CODES.get(kind)
    if known is None:
        if len(_NAMES) > _LIMIT:
            return _LIMIT
        known = _CODES[kind] = len(_NAMES)
        _NAMES.append(kind)
    return known


def name(number: int) -> str:
    """The kind of a small number."""
    return _NAMES[number]


@lru_cache(maxsize=1024)
def plain(kind: str) -> str:
    """The stitch a kind is a variant of: "fpdc" -> "dc", "dc3tog" -> "dc"."""
    tog = _TOG.match(kind)
    if tog:
        return tog.group(1)
    post = _POST.match(kind)
    return post.group(2) if post else kind


@lru_cache(maxsize=1024)
def height(kind: str) -> int | None:
    """Chains as tall as the kind; None where no custom is known."""
    return HEIGHT.get(plain(kind))


@lru_cache(maxsize=1024)
def legs(kind: str) -> int:
    """Places of the row below that one such stitch takes when nothing else is said: 2 for sc2tog and dec, else 1."""
    if kind in ("dec", "invdec"):
        return 2
    tog = _TOG.match(kind)
    return min(int(tog.group(2)), 99) if tog else 1
