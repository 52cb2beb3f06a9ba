"""What a printed count is of: stitches, or the shapes that are counted by themselves. Common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeVar

from loopwright.trade.stitches import heights

_PLAIN = frozenset({"st", "sts", "ch", "ch-sp", "mesh"})
T = TypeVar("T")


def counted(made: Mapping[str, T], noun: str | None, stitches: T) -> T:
    """What of a row's makings a printed count is of: what it names; groups or rounds of a repeat where that is no stitch; else stitches.

    Shells told as "5 dc in next st", petals told as movements: they have no name of their own in what was made.
    """
    if not noun or noun in made:
        return made.get(noun, stitches) if noun else stitches
    shapes = noun not in _PLAIN and noun not in heights()
    return made.get("group") or made.get("repeat") or stitches if shapes else stitches
