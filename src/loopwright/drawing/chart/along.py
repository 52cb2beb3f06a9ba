"""Where the columns of a row stand along it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from loopwright.drawing.chart.planes import Around, Plane, Rim, Ring, Strip
from loopwright.drawing.chart.spread import filled, in_order, smooth
from loopwright.drawing.chart.stood import FAN, Stood

if TYPE_CHECKING:
    from loopwright.drawing.chart.laying import Laying

SPREAD = 5.0  # between the feet of many stitches in one space
PULL_ROW, PULL_OVAL, PULL_ROUND = 0.15, 8.0, 4.0  # how much evenness counts against standing over the feet
STACK_ASIDE = 6.0  # that a start chain stands beside a stitch in the same place
BESIDE_LEG = 9.0  # of a turning chain, from the outermost leg of a decrease beside it
LEAN = 0.8  # of its height that a stitch of a round may go aside
NEAR = 1.0  # a way in u that tells how far apart things lie there
FAN_KEY = 3  # parts of the key of a stitch in a fan: the place, its own foot, how many stand there
AIRY = 3  # a round of lace has a chain to so many stitches
OVER_SEAM = 12  # stitches beyond the seam that those beside it are smoothed with
SLACK = 1.06  # times as far round as it needs that a round of lace goes, so that no fan pushes what stands beside it
PITCH = 18.0  # between two chains of a foundation


def _pull(plane: Plane) -> float:
    if isinstance(plane, Around):
        return PULL_OVAL
    return PULL_ROUND if isinstance(plane, Ring) and not plane.sides else PULL_ROW


def _is_lace(plane: Plane, stood: Sequence[Stood]) -> bool:
    """Whether a round of a circle is worked in spaces or has many chains: its stitches stand over what they were worked into."""
    if not isinstance(plane, Ring) or plane.sides:
        return False
    chains = sum(s.column.what == "chain" for s in stood)
    standing = [s for s in stood if s.known and s.column.what == "stitch"]
    return bool(standing) and (AIRY * chains >= len(standing) or any(s.column.place == "space" for s in standing))


def _same(one: Stood, two: Stood) -> bool:
    """Whether both stand in one place."""
    return bool(one.column.parents) and one.column.parents == two.column.parents


def along(laying: Laying, stood: list[Stood], way: int) -> None:
    """Sets the u of every column of a row, and the heights of a round that must reach further out to have room."""
    plane, closed = laying.plane, laying.plane.closed
    line = _line(laying, stood)
    fan = isinstance(plane, Ring) and not closed
    laying.line = line
    _siblings(laying, stood, line)
    wide = [s.column.wide for s in stood]
    aims = [(plane.length(sum(s.aims) / len(s.aims), line) if s.aims and s.column.what != "join" else None) for s in stood]
    around = plane.span(line)
    if closed and not any(a is not None for a in aims):
        _first(laying, stood, aims, around)
    if fan and not any(a is not None for a in aims):
        _over_sector(laying, stood, aims)
    lone = not closed and all(a is None for a in aims)
    room = [max(PITCH, w) if lone and s.column.what == "chain" else w for s, w in zip(stood, wide, strict=True)]
    places = filled(aims, room, 0.0)
    low, high = _bounds(laying, stood, places, around, way)
    filled_up = _fill(laying, stood, places, around, way)
    _even_out(laying, stood, places, around if filled_up else 0.0)
    if closed or fan:
        _upright(laying, stood, places, around)
    if isinstance(plane, Strip) and plane.wave:
        _ripple(plane, stood, places)
    if laying.hints and not plane.closed:
        places = [laying.hints.get(s.column.stitches[0], p) if s.column.stitches else p for s, p in zip(stood, places, strict=True)]
    for s, at in zip(stood, in_order(places, wide, low, high), strict=True):
        s.u = plane.place(at, line)
    if isinstance(plane, Strip) and len(stood) > 1:
        _clear_of_legs(stood[0], stood[1], -1)
        _clear_of_legs(stood[-1], stood[-2], 1)


def _line(laying: Laying, stood: Sequence[Stood]) -> float:
    """The height that lengths along a row are counted at; a round, or a fan, is raised to where it has room."""
    plane = laying.plane
    standing = [s for s in stood if s.column.what in ("stitch", "stack") and s.tall]
    standing = [s for s in standing if s.column.kind != "sl st"] or standing  # a slip stitch stays where it was worked
    lows = [s.high for s in standing if not (isinstance(plane, Rim) and s.column.turning)] or [laying.level + 10]
    line = min(lows)
    if not (plane.closed or isinstance(plane, Ring)):
        return line
    need = sum(s.column.wide for s in stood) * (SLACK if _is_lace(plane, stood) else 1.0) + 4
    turn = 1.0 if plane.closed else laying.sector[1] / (2 * math.pi)
    line = max(line, 0.0 if isinstance(plane, Rim) else plane.reach(need / turn))
    for s in standing:
        if s.column.turning and isinstance(plane, Ring):  # a chain to turn is not drawn out
            lift = max(0.0, line - s.high) / 2
            s.low, s.high = s.low + lift, s.high + lift
        else:
            s.high = max(s.high, line)
    return line


def _even_out(laying: Laying, stood: Sequence[Stood], places: list[float], around: float) -> None:
    """Smooths the places of a row; `around`: of a round that fills the whole turn, else 0."""
    pull = PULL_ROW if _is_lace(laying.plane, stood) else _pull(laying.plane)
    body = [i for i, s in enumerate(stood) if s.column.what in ("stitch", "chain")]
    if around:
        body = [i for i, s in enumerate(stood) if i in body or s.column.what == "stack" and not s.column.turning]
    known = [places[i] for i in body]
    seam = sum(s.column.wide for i, s in enumerate(stood) if i not in body)
    even = _evened(known, around - seam, pull) if around else smooth(known, pull)
    for i, e in zip(body, even, strict=True):
        places[i] = e
    if around and isinstance(laying.plane, Ring):
        _at_seam(stood, places, body, around)


def _evened(places: list[float], around: float, pull: float) -> list[float]:
    """Smoothed as a ring whose seam takes no room: the stitches at its two sides are neighbours too."""
    many = min(len(places), OVER_SEAM)
    before, after = [p - around for p in places[-many:]], [p + around for p in places[:many]]
    return smooth([*before, *places, *after], pull)[many : many + len(places)]


def _at_seam(stood: Sequence[Stood], places: list[float], body: Sequence[int], around: float) -> None:
    """What lies at the seam of a round, its number, a chain to turn, its join: side by side there, from the number on and from the end."""
    number = next(i for i, s in enumerate(stood) if s.column.what == "tab")
    way = 1 if number < body[0] else -1
    ordered = range(len(stood)) if way > 0 else range(len(stood) - 1, -1, -1)
    at, end = places[number] - way * stood[number].column.wide / 2, places[number] + way * (around - stood[number].column.wide / 2)
    for i in (i for i in ordered if way * i < way * body[0 if way > 0 else -1]):
        places[i] = at + way * stood[i].column.wide / 2
        at += way * stood[i].column.wide
    for i in (i for i in reversed(ordered) if way * i > way * body[-1 if way > 0 else 0]):
        places[i] = end - way * stood[i].column.wide / 2
        end -= way * stood[i].column.wide


def _ripple(plane: Strip, stood: Sequence[Stood], places: list[float]) -> None:
    """Rows of a ripple shift along it by whole stitches."""
    stands = [i for i, s in enumerate(stood) if s.column.what == "stitch" or (s.column.what == "stack" and not s.column.turning)]
    if len(stands) == len(plane.wave):
        for i, (at, _) in zip(stands, plane.wave, strict=True):
            places[i] = at
        for i, j, way_ in ((stands[0], stands[1], -1), (stands[-1], stands[-2], 1)):
            if stood[i].column.what == "stack" and (stood[i].column.counts_as or _same(stood[i], stood[j])):
                places[i] += way_ * STACK_ASIDE


def _upright(laying: Laying, stood: Sequence[Stood], places: list[float], around: float) -> None:
    """Draws in what evenness alone would make lean: a stitch of a round goes no further aside than a share of its height."""
    for i, s in enumerate(stood):
        if s.column.what != "stitch" or not s.known or len(s.column.parents) != 1 or s.column.place in ("space", "ring"):
            continue
        foot = laying.plane.length(laying.foot(s)[0], laying.line)
        foot += round((places[i] - foot) / around) * around
        most = LEAN * s.tall
        places[i] = max(foot - most, min(foot + most, places[i]))


def _clear_of_legs(chain: Stood, beside: Stood, way: int) -> None:
    """A turning chain or a join at the end of a row stands outside the legs of a decrease: they reach further than its top."""
    if (chain.column.turning or chain.column.what == "join") and len(beside.aims) > 1:
        chain.u = way * max(way * chain.u, way * max(beside.aims, key=lambda u: way * u) + BESIDE_LEG)


def _first(laying: Laying, stood: Sequence[Stood], aims: list[float | None], around: float) -> None:
    """A first round about the middle: evenly; in a polygon what lies at the seam takes no room, so that the corners are as far apart."""
    polygon = isinstance(laying.plane, Ring) and laying.plane.sides > 0
    body = [i for i, s in enumerate(stood) if s.column.what in ("stitch", "chain") or (s.column.what == "stack" and not s.column.turning)]
    seam = 0.0 if polygon else sum(s.column.wide for i, s in enumerate(stood) if i not in body)
    free = (around - seam - sum(stood[i].column.wide for i in body)) / max(1, len(body))
    before = 0.0 if polygon else sum(s.column.wide for s in stood[: body[0]]) - stood[0].column.wide / 2 if body else 0.0
    for i in body:
        half = (stood[i].column.wide + free) / 2
        aims[i] = before + half
        before += 2 * half


def _over_sector(laying: Laying, stood: Sequence[Stood], aims: list[float | None]) -> None:
    """A first row about a ring: evenly over the sector of its fan."""
    start, turn = (laying.line * x for x in laying.sector)
    free = (turn - sum(s.column.wide for s in stood)) / max(1, len(stood))
    for i, s in enumerate(stood):
        aims[i] = start + (s.column.wide + free) / 2
        start += s.column.wide + free


def _siblings(laying: Laying, stood: Sequence[Stood], line: float) -> None:
    """Stitches in one place, and chains between them, fan out over it."""
    i = 0
    while i < len(stood):
        j = last = i
        while stood[i].key is not None and j + 1 < len(stood):
            j += 1
            if stood[j].key == stood[i].key and stood[j].column.place != "row-end" and stood[i].column.kind != "sl st":
                last = j
            elif stood[j].column.what != "chain":
                break
        group = stood[i : last + 1]
        if len(group) > 1:
            _fan(laying, group, line)
        i = last + 1


def _fan(laying: Laying, group: Sequence[Stood], line: float) -> None:
    aims = group[0].aims
    foot = sum(aims) / len(aims)
    standing = [s for s in group if s.column.what != "chain"]
    step = 0.0
    if group[0].column.place == "space" and len(standing) > FAN:
        ends = [laying.tops[p][0] for p in group[0].column.parents if p in laying.tops]
        step = min(SPREAD, 0.6 * (laying.plane.length(max(ends), line) - laying.plane.length(min(ends), line)) / (len(standing) - 1))
    centre, at = laying.plane.length(foot, line), 0.0
    if isinstance(laying.plane, Rim):
        _drawn_in(laying.plane, group, foot, line)
    offsets = []
    for k, s in enumerate(group):
        at += (group[k - 1].column.wide + s.column.wide) / 2 if k else 0.0
        offsets.append(at)
    for s, offset in zip(group, offsets, strict=True):
        if s.column.what == "chain" or len(s.aims) == 1:
            s.u = laying.plane.place(centre + offset - offsets[-1] / 2, line)
            s.aims = [s.u]
    for k, s in enumerate(standing):
        s.key = (foot, laying.plane.place(centre + step * (k - (len(standing) - 1) / 2), line), len(standing))


def _drawn_in(plane: Rim, group: Sequence[Stood], foot: float, line: float) -> None:
    """Room at the height that places are counted at, for what stands higher over a corner, where all is further apart."""
    high = max((s.high for s in group if s.column.what != "chain"), default=line)
    one, two = (plane.length(foot + NEAR, v) - plane.length(foot - NEAR, v) for v in (line, high))
    for s in group if 0 < one < two else ():
        s.column.wide *= one / two


def _bounds(laying: Laying, stood: Sequence[Stood], places: list[float], around: float, way: int) -> tuple[float | None, float | None]:
    """Where a round may begin and end, lengths along it; its number goes to the seam if it begins there."""
    if not laying.plane.closed:
        return None, None
    firsts = [p for p, s in zip(places, stood, strict=True) if s.known and s.column.what != "join"]
    seam = laying.plane.length(laying.seam, laying.line) if way > 0 else around
    tab = next((i for i, s in enumerate(stood) if s.column.what == "tab"), None)
    if firsts:
        start = firsts[0] if way > 0 else firsts[-1]
        turns = round((start - seam) / around) * around
        head = next(s for s in (stood if way > 0 else reversed(stood)) if s.known and s.column.what != "join")
        elsewhere = laying.ends and not laying.ends.intersection(head.column.parents)
        if way > 0 and isinstance(laying.plane, Ring) and (elsewhere or laying.held and (_fans_out(head) or _is_lace(laying.plane, stood))):
            low, high = _own_seam(stood, places, around)
            laying.seam = laying.plane.place(places[0], laying.line)
            return low, high
        if elsewhere:
            middle = (places[0] + places[-1]) / 2
            return middle - around / 2, middle + around / 2
        for i in range(len(places)):
            places[i] -= turns
    start = seam if way > 0 else 0.0
    if tab is None:
        return start, start + around
    half = stood[tab].column.wide / 2
    places[tab] = seam
    return (start - half, start + around - half) if way > 0 else (half, around + half)


def _own_seam(stood: Sequence[Stood], places: list[float], around: float) -> tuple[float, float]:
    """Bounds of a round with a seam of its own: its number before its first stitch, its last chains over the way from the last stitch."""
    known = [i for i, s in enumerate(stood) if s.known and s.column.what in ("stitch", "stack")]
    first, last, low = places[known[0]], places[known[-1]], places[0] - stood[0].column.wide / 2
    at, gap = low + around, first + around - places[known[-1]]
    chains = [i for i in range(known[-1] + 1, len(stood)) if stood[i].column.what == "chain"]
    for i in range(len(stood) - 1, known[-1], -1):
        if stood[i].column.what == "join":
            at -= stood[i].column.wide
            places[i] = at + stood[i].column.wide / 2
    for k, i in enumerate(chains, 1):
        places[i] = last + gap * k / (len(chains) + 1)
    return low, low + around


def _fans_out(head: Stood) -> bool:
    """Whether a round begins with stitches in one space, over whose middle they stand: the seam lies before the first of them."""
    return head.column.place == "space" and isinstance(head.key, tuple) and len(head.key) == FAN_KEY and head.key[2] > 1


def _fill(laying: Laying, stood: Sequence[Stood], places: list[float], around: float, way: int) -> bool:
    """Stretches a round that begins at the seam over the whole turn: what lies at the seam stays as wide, not its angle.

    Whether it is such a round.
    """
    tab = next((i for i, s in enumerate(stood) if s.column.what == "tab"), None)
    start = laying.plane.length(laying.seam, laying.line) if way > 0 else 0.0
    seam = start if way > 0 else around
    cap = laying.plane.length(math.pi / 2, laying.line) if isinstance(laying.plane, Around) else around / 2
    known = [i for i, s in enumerate(stood) if s.column.what in ("stitch", "chain") or (s.column.what == "stack" and not s.column.turning)]
    turns_free = not laying.plane.closed or isinstance(laying.plane, Rim) or (isinstance(laying.plane, Ring) and laying.plane.sides)
    lace = laying.held and _is_lace(laying.plane, stood)
    if turns_free or tab is None or lace or len(known) < FAN or abs(places[tab] - seam) > 1e-6:
        return False
    first, last = known[0], known[-1]
    before, after = sum(s.column.wide for s in stood[:first]), sum(s.column.wide for s in stood[last + 1 :])
    half = stood[tab].column.wide / 2
    shift = start - half if way > 0 else half
    spare = (around - sum(s.column.wide for s in stood)) / len(known)
    low = shift + before + (stood[first].column.wide + spare) / 2
    high = shift + around - after - (stood[last].column.wide + spare) / 2
    a, b = places[first], places[last]
    one, two = start + cap, start + around - cap
    for i in known:
        if places[i] < one and one - a > 1.0:
            places[i] = one - (one - places[i]) * (one - low) / (one - a)
        elif places[i] > two and b - two > 1.0:
            places[i] = two + (places[i] - two) * (high - two) / (b - two)
    return True
