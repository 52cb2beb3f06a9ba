"""Kinds of stitch that are put together out of others: several worked together, around a post, into one loop, with a chain of their own.

Keys are US abbreviations ("sc2tog", "fpdc", "bpdc2tog", "blsc", "fdc"); this is the one place that takes them apart.
"""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

from loopwright.trade.stitches import heights

MOST_LEGS = 99  # more worked together is no stitch; nothing may be reckoned for ever

_FORM = re.compile(r"^(?P<post>fp|bp)?(?P<kind>[a-z].*?)(?:(?P<legs>\d+)tog)?$")
_LOOP = re.compile(r"^(?P<loop>fl|bl)(?P<kind>[a-z ]+)$")
_FOUNDATION = re.compile(r"^f(?P<kind>sc|hdc|dc|tr)$")


class Composed(NamedTuple):
    """A kind taken apart: `plain` is the stitch it is made of, `legs` how many are worked together (1 for no decrease).

    `post`: "fp", "bp" or ""; `loop`: "fl", "bl" or ""; `foundation`: worked with a chain of its own.
    """

    plain: str
    legs: int = 1
    post: str = ""
    loop: str = ""
    foundation: bool = False


@cache
def composed(kind: str) -> Composed:
    """What a kind is put together of; a kind that is not put together is its own plain stitch."""
    m = _FORM.match(kind)
    if m is None:
        return Composed(kind)
    legs = min(int(m["legs"]), MOST_LEGS) if m["legs"] else 1
    own = _FOUNDATION.match(m["kind"])
    if own:
        return Composed(own["kind"], legs, m["post"] or "", foundation=True)
    loop = _LOOP.match(m["kind"])
    if loop and loop["kind"] in heights():  # "blsc", but not "block"
        return Composed(loop["kind"], legs, m["post"] or "", loop["loop"])
    return Composed(m["kind"], legs, m["post"] or "")
