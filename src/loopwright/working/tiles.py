"""Working a repeat fast: where two rounds took and made the same and the row below goes on the same way, copy the round.

What the copies skip is checked first: no choice was met, nothing but places, stitches, groups and chain spaces changed, and the
items, chain spaces and groups below repeat with the same period; kinds and groups only where the words may ask for them. The last rounds are always worked stitch by stitch, since a
repeat often ends differently.
"""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass
from itertools import repeat
from typing import Any

from loopwright.model.tree import Chain, Group, Join, Make, Node, Repeat, Skip
from loopwright.working.kinds import ANY, CHAIN
from loopwright.working.run import MAX_ITEMS, Point, Run
from loopwright.working.seeking import STITCHES
from loopwright.working.slots import Slots, tiled
from loopwright.working.tape import Note
from loopwright.working.view import Group as MadeGroup
from loopwright.working.view import Slot, groups_again, runs_again

LAST_ROUNDS = 4  # a repeat may be cut short by some rounds after all: those are never copies
FIRST_TRY = 3
_STITCH_OR_CHAIN = bytes(CHAIN if kind == CHAIN else ANY for kind in range(256))  # all that tells one item from another for "next st"


@dataclass(slots=True)
class Before:
    """What must not change in a round that is copied, and what changes by the same amount."""

    log: int
    sticky: int
    cost: float
    unsure: float
    repeats: int
    picots: int
    rest: tuple[Any, ...]

    @classmethod
    def of(cls, run: Run) -> Before:
        """The state of a run at the start of a round."""
        named = {k: v for k, v in run.named.items() if k != "picot"}
        rest = (
            id(run.view), run.start, run.end, run.joined, run.turned, run.left_said, run.loop, run.half_loop, run.slip_row, run.tch_item,
            run.row_inc, run.sub is None, tuple(named.items()),
        )
        return cls(len(run.log), len(run.sticky), run.cost, run.unsure, run.repeats, run.named.get("picot", 0), rest)


class Points:
    """The points after each round, those of copied rounds worked out when asked for."""

    __slots__ = ("_all",)

    def __init__(self, first: Point) -> None:
        self._all: list[Point | tuple[Point, Point, int]] = [first]

    def append(self, point: Point) -> None:
        """After one more round."""
        self._all.append(point)

    def tile(self, base: Point, last: Point, times: int) -> None:
        """After all but the last of `times` copied rounds, each moving on as the round from `base` to `last` did."""
        self._all.extend(zip(repeat(base), repeat(last), range(1, times)))

    def __len__(self) -> int:
        return len(self._all)

    def __getitem__(self, index: int) -> Point:
        found = self._all[index]
        return found if isinstance(found, Point) else _further(*found)


def _further(base: Point, last: Point, k: int) -> Point:
    """The point `k` rounds after `last`, where a round goes from `base` to `last`."""
    step = last.pos - base.pos
    slot = last.last
    moved = slot._replace(start=slot.start + step * k, end=slot.end + step * k) if slot is not None and slot.start >= 0 else slot
    return Point(
        last.pos + step * k, last.items + (last.items - base.items) * k, last.groups + (last.groups - base.groups) * k,
        last.runs + (last.runs - base.runs) * k, moved, last.worked + (last.worked - base.worked) * k, last.bracket, last.tape,
    )


def copies(run: Run, a: Point, b: Point, before: Before, keep: tuple[int, int] | None, limit: int, *, plainly: bool = False) -> int:
    """How many further rounds are just like the last two (a … b … now), 0 where that is not sure.

    `keep`: stitches and spaces that must be left over; None where the number of rounds is told. `limit`: at most so many. `plainly`: the
    round goes from stitch to stitch, whatever groups they stand in.
    """
    now = Before.of(run)
    if (now.log, now.sticky, now.cost, now.unsure, now.rest) != (before.log, before.sticky, before.cost, before.unsure, before.rest):
        return 0
    if run.view.markers:
        return 0
    made, step = len(run.out) - b.items, run.pos - b.pos
    if made <= 0 or step < 0 or made != b.items - a.items or step != b.pos - a.pos or run.view.open_end:
        return 0
    if not _alike(run, a, b, step):
        return 0
    room = min(limit, (MAX_ITEMS - len(run.out)) // made - LAST_ROUNDS)
    if step:
        room = min(room, _periods(run, b.pos, step, plainly=plainly) - LAST_ROUNDS)
        room = min(room, _kept(run, b.pos, step, keep)) if keep is not None else room
    elif keep is not None:
        return 0
    return max(0, room)


def _alike(run: Run, a: Point, b: Point, step: int) -> bool:
    """Whether the round a … b and the round b … now made the same, each stitch `step` places further on."""
    end, made = len(run.out), len(run.out) - b.items
    if run.out[a.items : b.items] != run.out[b.items :]:
        return False
    if run.out[b.items - 1] == CHAIN == run.out[b.items]:
        return False
    for column in (run.into.start, run.into.end):
        if tiled(column[a.items : b.items], 1, step).tobytes() != column[b.items : end].tobytes():
            return False
    if run.into.how[a.items : b.items] != run.into.how[b.items : end]:
        return False
    first, second = run.tape[a.tape : b.tape], run.tape[b.tape :]
    if any(n.slot is not None for n in second) or _since(first, a.items) != _since(second, b.items):
        return False
    if [MadeGroup(s + made, e + made, g) for s, e, g in run.groups[a.groups : b.groups]] != run.groups[b.groups :]:
        return False
    return [(s + made, e + made) for s, e in run.runs[a.runs : b.runs]] == run.runs[b.runs :]


def _since(notes: list[Note], begin: int) -> list[tuple[Any, ...]]:
    """What was noted of a round that began at an item, rounds of repeats aside."""
    return [(n.at - begin, *n[1:5]) for n in notes if n.what != "round"]


def _periods(run: Run, begin: int, step: int, *, plainly: bool) -> int:
    """How many whole periods of the row below follow the cursor that are like the one from `begin` on."""
    items = run.view.items.translate(_STITCH_OR_CHAIN) if plainly else run.view.items
    end = min(run.end, len(items))
    if begin + step > end:
        return 0
    end = begin + step + _same_prefix(items[begin : end - step], items[begin + step : end])
    if not run.view.index.in_order:
        return 0
    runs, groups = run.view.runs, run.view.groups
    end = _as_before(runs, [(s + step, e + step) for s, e in _between(runs, begin, end - step)], begin + step, end)
    if plainly:
        return (end - begin - step) // step
    end = _as_before(groups, [MadeGroup(s + step, e + step, g) for s, e, g in _between(groups, begin, end - step)], begin + step, end)
    return (end - begin - step) // step


def _between(spans: tuple[Any, ...], begin: int, end: int) -> tuple[Any, ...]:
    """The spans that begin in a range."""
    return spans[bisect_left(spans, (begin,)) : bisect_left(spans, (end,))]


def _as_before(spans: tuple[Any, ...], moved: list[Any], begin: int, end: int) -> int:
    """How far the spans from `begin` on are those of one period before, `moved` on by a period."""
    here = list(_between(spans, begin, end))
    if here == moved:
        return end
    at = next((i for i, (a, b) in enumerate(zip(here, moved, strict=False)) if a != b), min(len(here), len(moved)))
    return min([end, *(int(s[0]) for s in (*here[at : at + 1], *moved[at : at + 1]))])


def _same_prefix(a: bytes, b: bytes) -> int:
    """Length of the beginning that two byte strings share."""
    if a == b:
        return len(a)
    low, high = 0, min(len(a), len(b))
    while low < high:
        middle = (low + high + 1) // 2
        if a[:middle] == b[:middle]:
            low = middle
        else:
            high = middle - 1
    return low


def _kept(run: Run, begin: int, step: int, keep: tuple[int, int]) -> int:
    """How many rounds leave over what the rest of the row needs, with some to spare."""
    stitches = step if run.view.foundation or run.view.ring else step - run.view.items.count(CHAIN, begin, begin + step)
    spaces = len(_between(run.view.runs, begin, begin + step))
    room = MAX_ITEMS
    if stitches:
        room = min(room, (run.stitches_left() - keep[0]) // stitches - LAST_ROUNDS)
    if spaces and keep[1]:
        room = min(room, (len(_between(run.view.runs, run.pos, len(run.view.items))) - keep[1]) // spaces - LAST_ROUNDS)
    return room


def copy_rounds(run: Run, b: Point, before: Before, times: int, first: int, outer: bool) -> None:
    """Copies the round from `b` to now `times` times. `first`: number of the first copy."""
    made, step = len(run.out) - b.items, run.pos - b.pos
    end = len(run.out)
    notes = [n for n in run.tape[b.tape :] if not (n.what == "round" and n.word == _word(outer))]
    groups, runs = run.groups[b.groups :], run.runs[b.runs :]
    run.out += run.out[b.items :] * times
    run.into.tile(b.items, times, step)
    run.origins.extend(run.origins[b.items :] * times)
    run.tape.append(Note(end, "round", times, _word(outer), None, run.origin, first, made))
    run.groups.extend(groups_again(groups, made, times))
    run.runs.extend(runs_again(runs, made, times))
    if notes:
        run.tape.extend(n._replace(at=n.at + k) for k in range(made, made * times + 1, made) for n in notes)
    run.worked += (run.worked - b.worked) * times
    run.repeats += (run.repeats - before.repeats) * times
    picots = run.named.get("picot", 0) - before.picots
    if picots:
        run.named["picot"] += picots * times
    run.pos += step * times
    if run.last is not None and run.last.start >= 0:
        run.last = Slot(run.last.start + step * times, run.last.end + step * times, run.last.how)


class Copier:
    """Watches the rounds of one repeat and copies them as soon as that is sure."""

    def __init__(self, run: Run, keep: tuple[int, int] | None, nodes: tuple[Node, ...]) -> None:
        self.run, self.keep = run, keep
        self.plainly = all(_is_plain(n, run) for n in nodes)
        self.outer = run.inside == 0
        first = nodes[0] if nodes and keep == (0, 0) else None
        self.centred = self.outer and isinstance(first, (Make, Group)) and first.place is not None and first.place.centre
        self.points = Points(run.point())
        self.try_at = FIRST_TRY
        self.before: Before | None = None

    def begin(self) -> None:
        """Before each round."""
        number = len(self.points)
        self.run.note("round", 1, _word(self.outer), first=number)
        self.before = Before.of(self.run) if number == self.try_at else None

    def end(self, limit: int = MAX_ITEMS) -> int:
        """After each round: keeps its point, and copies it as often as is sure, at most `limit` times. How many copies."""
        run, points = self.run, self.points
        if len(points) == 1 and self.centred:
            _comes_back(run, points[0])
        points.append(run.point())
        if self.before is None:
            return 0
        self.try_at *= 2
        number = len(points) - 1
        a, b, last = points[number - 2], points[number - 1], points[number]
        times = copies(run, a, b, self.before, self.keep, limit, plainly=self.plainly)
        if times < 1:
            return 0
        copy_rounds(run, b, self.before, times, number + 1, self.outer)
        points.tile(b, last, times)
        points.append(run.point())
        self.try_at = len(points) + FIRST_TRY - 1
        return times


def _comes_back(run: Run, point: Point) -> None:
    """A round whose first stitch stands in the centre of a group goes on to what lies before that group, past the end."""
    slot = run.into[point.items] if not point.items and len(run.into) else None
    if slot is None or point.pos or run.start or not (run.in_rounds or run.view.joined) or run.end != len(run.view.items):
        return
    before = next((g.start for g in run.view.groups if g.start <= slot.start < g.end), 0)
    run.end += before
    run.named["came-back"] = before


def _is_plain(node: Node, run: Run) -> bool:
    """Whether a node goes from stitch to stitch and asks for nothing else."""
    if isinstance(node, Repeat):
        return node.mode in ("times", "more", "once") and not node.ending and all(_is_plain(n, run) for n in node.nodes)
    if isinstance(node, (Chain, Skip)):
        return isinstance(node, Chain) or node.thing.kind in STITCHES and not node.first
    if isinstance(node, Join):
        return node.place is None and node.via in (None, "sl st")
    if isinstance(node, Group):
        if not all(isinstance(n, Chain) or isinstance(n, Make) and n.place is None and _is_plain(n, run) for n in node.nodes):
            return False
    elif not isinstance(node, Make) or node.kind in run.definitions or node.kind == "sl st":
        return False
    place = node.place
    return place is None or (
        place.quant == "next" and place.thing.kind in STITCHES and place.relation == "in" and not place.rows_below and not place.of_row
        and place.k is None and place.of is None and not place.centre and not place.from_hook
    )


def round_begins(run: Run, number: int) -> None:
    """Notes that a round of the repeat at hand begins; 0: the repeat is over, what follows is in no round of it."""
    run.note("round", 1, _word(run.inside == 0), first=number)


def _word(outer: bool) -> str:
    return "outer" if outer else "inner"


__all__ = ["LAST_ROUNDS", "Copier", "Points", "Slots", "round_begins"]
