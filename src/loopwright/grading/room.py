"""How much room limits leave a number: while the others are what they are, or wherever they may be."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil, floor
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from loopwright.grading.choose import Limit

Room = tuple[int, int]


def room(own: Room, name: str, values: Mapping[str, int], limits: Sequence[Limit]) -> Room:
    """The least and the largest number that limits leave it, the others being what they are; its own room where they are not known."""
    low, high = own
    for limit in limits:
        factor = 0 if limit.divisor else next((f for n, f in limit.sum.parts if n == name), 0)
        if not factor or not limit.names - {name} <= values.keys():
            continue
        bound = -limit.sum.at({**values, name: 0}) / factor
        low, high = (max(low, ceil(bound)), high) if factor > 0 else (low, min(high, floor(bound)))
    return low, high


def rooms(own: Mapping[str, Room], limits: Sequence[Limit], known: Mapping[str, int]) -> dict[str, Room]:
    """What limits leave of each number, the others being anywhere in their room. A least above a largest: nothing is left."""
    found = dict(own)
    for _ in own:
        for limit in limits:
            _narrow(limit, found, known)
    return found


def _narrow(limit: Limit, found: dict[str, Room], known: Mapping[str, int]) -> None:
    if limit.divisor or not limit.names <= found.keys() | known.keys():
        return
    ends = {n: (f * found[n][1], f * found[n][0])[f < 0] if n in found else f * known[n] for n, f in limit.sum.parts}
    most = limit.sum.const + sum(ends.values())
    for name, factor in limit.sum.parts:
        if name in found and factor:
            low, high = found[name]
            bound = -(most - ends[name]) / factor
            found[name] = (max(low, ceil(bound)), high) if factor > 0 else (low, min(high, floor(bound)))
