"""The choice of whole numbers: no other legal set of numbers brings the measured dimensions nearer their targets.

What is minimised: the sum of the errors of one size, in millimetres times their weight; between equals, the larger
numbers are taken. Sizes are tied by order: where a target does not fall from one size to the next, what is reached may not fall.
Proof of nearness: candidates come out of `_candidates` in order of their error, so the first legal one is nearest; over the
sizes, a chain is final only when no candidate not yet looked at could make a better one.
"""

from __future__ import annotations

import heapq
import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import field, replace
from fractions import Fraction
from math import ceil, floor, lcm
from typing import Literal

from loopwright.grading.room import room, rooms
from loopwright.record import record

MAX_TRIED = 6_000
LARGEST = 100_000
_EXACT = 1_000_000


@record
class Sum:
    """`const` plus so many times each named number."""

    const: Fraction = Fraction(0)
    parts: tuple[tuple[str, Fraction], ...] = ()
    _whole: tuple[int, int, tuple[tuple[str, int], ...]] = field(init=False, repr=False, compare=False, default=(1, 0, ()))

    def __post_init__(self) -> None:
        below = lcm(self.const.denominator, *(f.denominator for _, f in self.parts))
        whole = tuple((n, int(f * below)) for n, f in self.parts)  # whole numbers over one number: tried thousands of times
        object.__setattr__(self, "_whole", (below, int(self.const * below), whole))

    def above(self, values: Mapping[str, int]) -> int:
        """Its value times `below`. Raises KeyError for a number not chosen yet."""
        total = self._whole[1]
        for name, factor in self._whole[2]:
            total += factor * values[name]
        return total

    @property
    def below(self) -> int:
        """What its parts are whole multiples of a fraction of: 2 where halves are in it."""
        return self._whole[0]

    def at(self, values: Mapping[str, int]) -> Fraction:
        """Its value. Raises KeyError for a number not chosen yet."""
        return Fraction(self.above(values), self.below)

    @property
    def names(self) -> frozenset[str]:
        """The numbers in it."""
        return frozenset(n for n, _ in self.parts)


@record
class Run:
    """Rows that a number tells, `per` * number + `more` of them, with heights that come in turn, mm."""

    name: str
    turn_mm: tuple[float, ...]
    per: int = 1
    more: int = 0

    def mm(self, values: Mapping[str, int]) -> float:
        """How tall they are together. Raises KeyError for a number not chosen yet."""
        rows = max(0, self.per * values[self.name] + self.more)
        turns, rest = divmod(rows, len(self.turn_mm))
        return turns * sum(self.turn_mm) + sum(self.turn_mm[:rest])


@record
class Sought:
    """A number that is chosen: `(number + before) * step_mm` is to be near `target_mm`, number = multiple * n + rest.

    Where it tells rows, `runs` are these and the ones before them that other numbers tell, and `const_mm` is what all others measure:
    then their sum is to be near the target, and `step_mm` is the mean of what one more brings. `const_mm` counts for stitches too.
    `weight`: how much its error counts beside those of numbers it is tied to. `kept`: the number that it is to be, legal or none at all.
    """

    name: str
    step_mm: float
    target_mm: float
    multiple: int = 1
    rest: int = 0
    low: int = 0
    high: int = LARGEST
    before: Sum = Sum()
    weight: int = 1
    runs: tuple[Run, ...] = ()
    const_mm: float = 0.0
    kept: int | None = None

    def reached_mm(self, values: Mapping[str, int]) -> float:
        """What the numbers make of it."""
        if self.runs:
            return self.const_mm + sum(run.mm(values) for run in self.runs)
        before = self.before.above(values) / self.before.below if self.before.parts or self.before.const else 0
        return (values[self.name] + before) * self.step_mm + self.const_mm

    @property
    def needs(self) -> frozenset[str]:
        """The other numbers that what it reaches stands on."""
        return (self.before.names | {run.name for run in self.runs}) - {self.name}

    def wanted(self, values: Mapping[str, int]) -> float:
        """The number before rounding, the others being what they are; exact where all its rows are alike."""
        return values[self.name] + (self.target_mm - self.reached_mm(values)) / self.step_mm

    def cost(self, values: Mapping[str, int]) -> int:
        """The error as a whole number of nanometres, so that equal is equal; so many times its weight."""
        return round(abs(self.reached_mm(values) - self.target_mm) * _EXACT) * self.weight


@record
class Linked:
    """A number that follows from others, rounded to a legal one. `kept`: the number that it is to be instead, legal or none at all."""

    name: str
    formula: Sum
    multiple: int = 1
    rest: int = 0
    rounding: Literal["nearest", "down", "up"] = "nearest"
    whole: bool = False
    kept: int | None = None

    def value(self, values: Mapping[str, int]) -> int | None:
        """The number; None where it must come out whole and does not."""
        if self.kept is not None:
            return self.kept if (self.kept - self.rest) % self.multiple == 0 else None
        exact = self.formula.at(values)
        if self.whole and exact.denominator != 1:
            return None
        return nearest_legal(exact, self.multiple, self.rest, self.rounding)


@record
class Limit:
    """A sum that must not be below zero, or (with `divisor`) a number that must divide `of`."""

    sum: Sum
    why: str = ""
    divisor: str = ""
    of: str = ""

    @property
    def names(self) -> frozenset[str]:
        """The numbers it ties."""
        return frozenset((self.divisor, self.of)) if self.divisor else self.sum.names

    def holds(self, values: Mapping[str, int]) -> bool:
        """Whether the numbers keep it."""
        if self.divisor:
            return values[self.divisor] > 0 and values[self.of] % values[self.divisor] == 0
        return self.sum.above(values) >= 0


@record
class Problem:
    """One size: what is sought, what follows, what must hold."""

    sought: tuple[Sought, ...]
    linked: tuple[Linked, ...] = ()
    limits: tuple[Limit, ...] = ()


def nearest_legal(exact: Fraction, multiple: int, rest: int, rounding: str = "nearest") -> int:
    """The legal number nearest to an exact one; of two equally near the larger."""
    n = (exact - rest) / multiple
    k = floor(n) if rounding == "down" else ceil(n) if rounding == "up" else floor(n + Fraction(1, 2))
    return k * multiple + rest


def candidates(s: Sought, values: Mapping[str, int], limits: Sequence[Limit] = ()) -> Iterator[tuple[int, int]]:
    """Legal numbers for one blank with their errors, nearest first, the larger of two equals first.

    `limits`: those that the others, where they are chosen, set to it are kept to.
    """
    low, high = room((s.low, s.high), s.name, values, limits)
    low += (s.rest - low) % s.multiple
    high -= (high - s.rest) % s.multiple
    if low > high:
        return
    trial = dict(values)
    if s.kept is not None:
        if low <= s.kept <= high and (s.kept - s.rest) % s.multiple == 0:
            yield s.cost({**trial, s.name: s.kept}), s.kept
        return
    up = min(max(_first_over(s, trial, low), low), high)
    down = up - s.multiple

    def cost(n: int) -> int:
        trial[s.name] = n
        return s.cost(trial)

    while up <= high or down >= low:
        if down < low or (up <= high and cost(up) <= cost(down)):
            yield cost(up), up
            up += s.multiple
        else:
            yield cost(down), down
            down -= s.multiple


def _first_over(s: Sought, trial: dict[str, int], low: int) -> int:
    """The least legal number that reaches the target, limits apart."""
    if not s.runs:
        return nearest_legal(Fraction((s.target_mm - s.const_mm) / s.step_mm) - s.before.at(trial), s.multiple, s.rest, "up")
    trial[s.name] = low
    found = max(low, nearest_legal(Fraction(s.wanted(trial)), s.multiple, s.rest, "up"))
    trial[s.name] = found
    while s.reached_mm(trial) < s.target_mm:  # the mean step may be off by a turn of rows
        trial[s.name] += s.multiple
    while trial[s.name] > low and s.reached_mm({**trial, s.name: trial[s.name] - s.multiple}) >= s.target_mm:
        trial[s.name] -= s.multiple
    return trial.pop(s.name)


def assignments(problem: Problem, most: int = MAX_TRIED) -> Iterator[tuple[int, dict[str, int]]]:
    """All legal sets of numbers of one size in the order of their errors. Stops after `most` partial sets were looked at."""
    order = _in_order(problem)
    serial = itertools.count()
    start = _settled(problem, {}, {})
    if start is None:
        return
    left = rooms({s.name: (s.low, s.high) for s in order}, problem.limits, start)
    if any(low > high for low, high in left.values()):
        return
    ahead = _least_ahead(order, left, start)
    queue: list[tuple[int, tuple[int, ...], int, dict[str, int], Iterator[tuple[int, int]] | None, dict[str, int], int]] = []

    def push(cost: int, key: tuple[int, ...], before: dict[str, int], at: int, tries: Iterator[tuple[int, int]]) -> None:
        for extra, n in tries:
            after = _settled(problem, before, {order[at].name: n}) or {}
            heapq.heappush(queue, (cost + extra + ahead[at], (*key, -n), next(serial), before, tries, after, at))
            return

    if not order:
        yield 0, start
        return
    push(0, (), start, 0, candidates(order[0], start, problem.limits))
    tried = 0
    while queue and tried < most:
        cost, key, _, before, tries, after, at = heapq.heappop(queue)
        tried += 1
        cost -= ahead[at]
        spent = cost - order[at].cost({**before, order[at].name: -key[-1]})
        if tries is not None:
            push(spent, key[:-1], before, at, tries)
        if not after:
            continue
        if at + 1 == len(order):
            yield cost, after
        else:
            push(cost, key, after, at + 1, candidates(order[at + 1], after, problem.limits))


def _least_ahead(order: Sequence[Sought], left: Mapping[str, tuple[int, int]], start: Mapping[str, int]) -> list[int]:
    """For each of the sought numbers the least error that those after it have, whatever the others are."""
    least = []
    for s in order:
        low, high = left[s.name]
        free = not s.needs - start.keys()
        least.append(next(candidates(replace(s, low=low, high=high), start), (0, 0))[0] if free else 0)
    return [sum(least[at + 1 :]) for at in range(len(order))]


def _settled(problem: Problem, before: dict[str, int], new: dict[str, int]) -> dict[str, int] | None:
    """The numbers with all that follows from them; None where a limit is broken."""
    values = {**before, **new}
    grown = True
    while grown:
        grown = False
        for linked in problem.linked:
            if linked.name not in values and linked.formula.names <= values.keys():
                value = linked.value(values)
                if value is None:
                    return None
                values[linked.name] = value
                grown = True
    fresh = values.keys() - before.keys()
    for limit in problem.limits:
        if limit.names <= values.keys() and (limit.names & fresh or not before) and not limit.holds(values):
            return None
    return values


def _in_order(problem: Problem) -> list[Sought]:
    """The sought numbers, each after those that its own target stands on."""
    needs = {x.name: x.formula.names for x in problem.linked}
    left, done, order = list(problem.sought), set[str](), list[Sought]()
    while left:
        for s in left:
            if all(_reachable(n, needs, done) for n in s.needs):
                order.append(s)
                done.add(s.name)
                left.remove(s)
                break
        else:
            return order + left
    return order


def _reachable(name: str, needs: Mapping[str, frozenset[str]], done: set[str]) -> bool:
    return name in done or (name in needs and all(_reachable(n, needs, done) for n in needs[name]))


def split(problem: Problem) -> list[Problem]:
    """The parts of a problem that share no number: each is chosen by itself."""
    groups: list[set[str]] = []
    links = [{x.name, *x.needs} for x in problem.sought] + [{x.name, *x.formula.names} for x in problem.linked]
    links += [set(x.names) for x in problem.limits]
    for link in links:
        touching = [g for g in groups if g & link]
        groups = [g for g in groups if not g & link] + [set().union(link, *touching)]
    return [
        Problem(tuple(x for x in problem.sought if x.name in g), tuple(x for x in problem.linked if x.name in g),
                tuple(x for x in problem.limits if x.names & g))
        for g in groups if g
    ]


Chosen = dict[str, int]


def choose(sizes: Sequence[Problem]) -> list[Chosen | None]:
    """Numbers for every size of one part, nearest under all limits and in order over the sizes; None where there are none."""
    streams = [assignments(p) for p in sizes]
    found: list[list[tuple[int, Chosen]]] = [list(itertools.islice(s, 1)) for s in streams]
    live = [i for i, f in enumerate(found) if f]
    if all(_in_step(sizes[a], sizes[b], found[a][0][1], found[b][0][1]) for a, b in itertools.pairwise(live)):
        return [f[0][1] if f else None for f in found]
    many = 8
    while True:
        done = [_fill_up(found[i], streams[i], many) for i in range(len(sizes))]
        best = _best_chain(sizes, found, live)
        if best is not None and (all(done[i] for i in live) or best[0] <= _next_possible(found, live, done)):
            break
        if all(done[i] for i in live) or many > 4096:
            break
        many *= 4
    if best is None:
        return [f[0][1] if f else None for f in found]
    result: list[Chosen | None] = [None] * len(sizes)
    for i, chosen in zip(live, best[1], strict=True):
        result[i] = chosen
    return result


def _fill_up(have: list[tuple[int, Chosen]], stream: Iterator[tuple[int, Chosen]], many: int) -> bool:
    """Takes more candidates; True when there are no more."""
    have.extend(itertools.islice(stream, max(0, many - len(have))))
    return len(have) < many


def _next_possible(found: list[list[tuple[int, Chosen]]], live: list[int], done: list[bool]) -> int:
    """The least that a chain with a candidate not yet looked at could cost."""
    least = sum(found[i][0][0] for i in live)
    return min((least - found[i][0][0] + found[i][-1][0] for i in live if not done[i]), default=least)


def _best_chain(sizes: Sequence[Problem], found: list[list[tuple[int, Chosen]]], live: list[int]) -> tuple[int, list[Chosen]] | None:
    """The cheapest sequence of candidates in which no size is out of order with the one before."""
    chains: list[tuple[int, list[Chosen]]] = [(c, [v]) for c, v in found[live[0]]]
    for before, here in itertools.pairwise(live):
        grown = []
        for cost, values in found[here]:
            fits = [c for c in chains if _in_step(sizes[before], sizes[here], c[1][-1], values)]
            if fits:
                cheapest = min(fits, key=lambda c: c[0])
                grown.append((cheapest[0] + cost, [*cheapest[1], values]))
        chains = grown
    return min(chains, key=lambda c: c[0]) if chains else None


def _in_step(a: Problem, b: Problem, one: Chosen, two: Chosen) -> bool:
    """Whether what is reached goes the way the targets go."""
    other = {s.name: s for s in b.sought}
    for s in a.sought:
        t = other.get(s.name)
        if t is None or s.kept is not None or t.kept is not None:
            continue  # what was chosen by hand stands as it is, and moves no other size
        rise = t.target_mm - s.target_mm
        change = t.reached_mm(two) - s.reached_mm(one)
        if (rise >= 0 and change < -1e-9) or (rise <= 0 and change > 1e-9):
            return False
    return True
