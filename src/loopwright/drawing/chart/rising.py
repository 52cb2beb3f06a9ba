"""How high a row stands: clear of everything below it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from loopwright.drawing.chart.planes import Rim, Strip
from loopwright.drawing.chart.stood import FAN, Stood, together
from loopwright.drawing.chart.symbols import AIR

if TYPE_CHECKING:
    from loopwright.drawing.chart.laying import Laying

LEAST_RISE = 0.7  # of its height that a stitch at the side of a fan still rises
TALL = 40.0  # only fans of taller stitches round their tops off
CROSSBAR, BESIDE = 0.72, 6.0  # where the bar of a short stitch crosses its stem, and how far from it a stem in the same place must stay
STRETCHED, MOST_STRETCHED = 1.1, 4.0


def rise(laying: Laying, stood: Sequence[Stood]) -> None:
    """Fans round their tops off; whatever would touch what lies below it goes up."""
    for s in stood:
        _bend(laying, s)
    if isinstance(laying.plane, Strip | Rim):
        _part(laying, stood)
    for group in together(stood):
        lift = 0.0
        for s in group:
            feet = laying.foot(s)
            if isinstance(laying.plane, Strip | Rim) and len(group) >= FAN and len(feet) == 1 and s.tall >= TALL:
                across = min(abs(_aside(laying, s, feet[0], s.low)), s.tall)
                s.high = s.low + max(LEAST_RISE * s.tall, math.sqrt(max(0.0, s.tall * s.tall - across * across)))
            lift = max(lift, laying.sky.need(_reach(laying, s, feet)))
        for s in group:
            s.high += lift
            s.low += lift


def _aside(laying: Laying, s: Stood, foot: float, v: float) -> float:
    """How far a top stands aside of its foot, as a length at height v."""
    return laying.plane.length(s.u, v) - laying.plane.length(foot, v)


def _part(laying: Laying, stood: Sequence[Stood]) -> None:
    """Where two short stitches in one place lean far to one side, the row grows until no bar touches the stem beside it."""
    short = [s for s in stood if s.column.what == "stitch" and 0 < s.tall < TALL]
    ways = [_aside(laying, s, laying.foot(s)[0], s.high) for s in short]
    grown = 1.0
    for (one, a), (two, b) in pairwise(zip(short, ways, strict=True)):
        tall, far = max(one.tall, two.tall), max(abs(a), abs(b))
        while laying.foot(one) == laying.foot(two) and CROSSBAR * grown * tall * abs(b - a) < BESIDE * math.hypot(far, grown * tall):
            if grown > MOST_STRETCHED:
                break
            grown *= STRETCHED
    for s in short:
        s.high = max(s.high, s.low + grown * s.tall)


def _bend(laying: Laying, s: Stood) -> None:
    """A stitch into a row further down goes aside into the gap beside its foot, up through it, and begins above what it passes."""
    if s.column.what != "stitch" or not s.known or len(s.aims) != 1 or all(p in laying.last for p in s.column.parents):
        return
    foot = laying.foot(s)[0]
    over = max(laying.sky.at(foot), laying.sky.at(foot + laying.half(s, 5.0)), laying.sky.at(foot - laying.half(s, 5.0)))
    if over < s.low:
        return
    aside = foot + laying.half(s, laying.pitch / 2) * (1 if s.u >= foot else -1)
    s.bend = (foot, s.low - AIR + 2.5, aside)
    s.aims, s.key = [aside], (s.column.stitches[0],)
    low, s.low = s.low, over + AIR - 2.5
    s.high = max(s.high, s.low + s.tall) if s.high - low > s.tall else s.low + s.tall


def _reach(laying: Laying, s: Stood, feet: Sequence[float]) -> list[tuple[float, float]]:
    """Places along its stems and bar that must be clear of what lies below."""
    if s.column.what == "join":
        return [(s.u, s.low)]
    half = laying.half(s, 6.5)
    found = [(s.u - half, s.high), (s.u + half, s.high)]
    for foot in feet:
        found += [(foot + (s.u - foot) * t, s.low + (s.high - s.low) * t) for t in (0.2, 0.35, 0.5, 0.65, 0.8, 1.0)]
    return found
