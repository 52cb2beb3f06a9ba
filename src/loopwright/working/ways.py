"""The few ways a row can be meant on what lies below it, the likeliest first, each worked once.

Which ways there are is met while working: every choice that a row leaves open is noted, and the others are forced in turn. Which of
the pattern's conventions a row asked for is noted too, so that what was found holds wherever those are the same.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Sequence
from typing import Any

from loopwright.model.tree import COUNT_OR_WORK, Count, Node
from loopwright.record import changed, record
from loopwright.working.openings import as_asked
from loopwright.working.rows import DISAGREES, Made, work_row
from loopwright.working.run import CannotWork, Choice
from loopwright.working.tally import agrees
from loopwright.working.view import View

MOST = 7
LONG, LONGER = (150, 6), (2_000, 4)  # a row of so many stitches is looked at in so few ways
WINDOW = 3.0
SURE, NEARBY = 0.3, 1.1
ROW_WORK = 40_000  # instructions worked in all readings of a row: what keeps a row under a quarter of a second
EXCUSE = 1.5  # what a reading may cost more than the cheapest clean one to make a printed count true
ODD_START = 1.1  # and less for a start chain read in a way it hardly ever is
_UNTOLD = object()
_Other = tuple[Sequence[Choice], int, int]  # the choices before one, which that is, the option it is to take


class Conventions(dict[str, Any]):
    """The conventions of a pattern as one row meets them. `asked`: which of them the row, in any of its ways, asked for or settled."""

    __slots__ = ("asked",)

    def __init__(self, held: Any = (), asked: set[str] | None = None) -> None:
        super().__init__(held)
        self.asked = set() if asked is None else asked

    def copy(self) -> Conventions:
        """For another way of the same row: its own conventions, noted in the same place."""
        return Conventions(self, self.asked)

    def get(self, key: str, default: Any = None) -> Any:
        """As of any dict, noted."""
        self.asked.add(key)
        return super().get(key, default)

    def __getitem__(self, key: str) -> Any:
        self.asked.add(key)
        return super().__getitem__(key)

    def __contains__(self, key: object) -> bool:
        self.asked.add(str(key))
        return super().__contains__(key)

    def setdefault(self, key: str, default: Any = None) -> Any:
        """As of any dict, noted."""
        self.asked.add(key)
        return super().setdefault(key, default)

    def __setitem__(self, key: str, value: Any) -> None:
        self.asked.add(key)
        super().__setitem__(key, value)


@record
class Row:
    """A row's words and what they are worked on; `rows`, `free` and `first_row` as in State."""

    view: View
    body: tuple[Node, ...]
    printed: tuple[Count, ...]
    definitions: dict[str, tuple[Node, ...]]
    kind: str
    in_rounds: bool
    rows: int
    free: int
    first_row: int


@record
class Failed:
    """Why a way could not be worked, as CannotWork tells it."""

    reason: str
    facts: dict[str, Any]
    got: int
    log: tuple[Choice, ...]
    work: int


@record
class Tried:
    """What came of the ways of a row: those that could be worked, why others could not, what it took to find out.

    `asked`: the conventions that it depends on, and what they were (_UNTOLD where the pattern had not told). `by_choices`: what came of
    each way that is the same whatever count is printed, by the choices that were forced.
    """

    made: tuple[Made, ...]
    failed: tuple[Failed, ...]
    work: int
    asked: tuple[tuple[str, Any], ...]
    by_choices: dict[tuple[int, ...], Made | Failed]

    def holds(self, held: dict[str, Any]) -> bool:
        """Whether all that it asked for is the same under those conventions."""
        return all(held.get(name, _UNTOLD) == value for name, value in self.asked)

    def under(self, held: dict[str, Any]) -> list[Made]:
        """The same under other conventions that agree in all that was asked for."""
        names = {name for name, _ in self.asked}
        return [changed(m, conventions=_sorted({**held, **{k: v for k, v in m.conventions if k in names}})) for m in self.made]


class Alike:
    """Ways of rows already worked, by what they were worked on and the conventions they asked for."""

    def __init__(self) -> None:
        self._held: dict[Any, list[tuple[Tried, Any]]] = {}

    def clear(self) -> None:
        """Forgets all: another row comes."""
        self._held.clear()

    def get(self, which: Any, held: dict[str, Any]) -> Tried | None:
        """What was found where all that it asked for was as it is in `held`; None where that was never met."""
        known = self._held.get(which, ())
        return next((t for t, _ in known if t.holds(held)), None)

    def put(self, which: Any, tried: Tried, keep: Any) -> None:
        """Keeps what was found; `keep` is what `which` names by its id."""
        self._held.setdefault(which, []).append((tried, keep))


def ways(row: Row, conventions: Conventions, before: Tried | None = None, *, brief: bool = False) -> Tried:
    """Works a row in the likeliest of its ways. Each choice costs what its option costs; ways far dearer than the best are not worked.

    `before`: what came of the same row with another count printed, under conventions that agree in all that it asked for. `brief`: where
    the likeliest way is a clean one, no other is looked at.
    """
    made_so: list[Made] = []
    failed: list[Failed] = []
    queue: list[tuple[float, int, _Other]] = [(0.0, 0, ((), 0, 0))]
    runs, best, serial, work = 0, 1e9, 0, 0
    window = WINDOW
    most = next((number for stitches, number in (LONGER, LONG) if len(row.view.items) >= stitches), MOST)
    endless = 0
    known = {} if before is None else dict(before.by_choices)
    if before is not None:
        conventions.asked.update(name for name, _ in before.asked)
    while queue and runs < most and work < ROW_WORK and endless < 2:
        bound, _, (before_it, at, other) = heapq.heappop(queue)
        if bound >= best + window or brief and best <= SURE:
            break
        forced = (*[c.taken for c in before_it[:at]], other) if serial else ()
        runs += 1
        one = known.get(forced) or _worked(row, forced, conventions, known)
        work += one.work
        if isinstance(one, Failed):
            endless += one.reason == "too-many"
            failed.append(one)
        else:
            verdict = agrees(one, row.printed) if row.printed and not one.from_print and not _worked_count(one) else None
            best = min(best, one.cost + (DISAGREES if verdict is False else 0.0))
            if verdict and one.cost <= SURE:
                window = NEARBY  # cheap and as printed: only what is nearly as cheap may still matter
            made_so.append(changed(one, agrees=verdict))
        for cost, way in _others(one.log, len(forced)):
            serial += 1
            heapq.heappush(queue, (cost, serial, way))
    asked = tuple((name, dict.get(conventions, name, _UNTOLD)) for name in sorted(conventions.asked))
    return Tried(tuple(made_so), tuple(failed), work, asked, known)


def _worked(row: Row, forced: tuple[int, ...], conventions: Conventions, known: dict[tuple[int, ...], Made | Failed]) -> Made | Failed:
    """The row worked in one way; noted in `known` where it is the same whatever count is printed."""
    printed = as_asked(row.printed)
    one: Made | Failed
    try:
        one = work_row(row.view, row.body, forced, conventions, row.definitions, row.kind, row.in_rounds, row.rows, row.free, row.first_row, printed)
    except CannotWork as why:
        one = Failed(why.reason, why.facts, why.got, why.log, why.work)  # the exception itself would keep the whole run
    if not printed.asked:
        known[forced] = one
    return one


def _others(log: Sequence[Choice], forced: int) -> Iterator[tuple[float, _Other]]:
    """What the choices behind the forced ones may be otherwise, each with what it costs together with those before it."""
    base = sum(c.costs[c.taken] for c in log[:forced])
    for i in range(forced, len(log)):
        yield from ((base + cost, (log, i, j)) for j, cost in enumerate(log[i].costs) if j != log[i].taken)
        base += log[i].costs[log[i].taken]


def _sorted(conventions: dict[str, Any]) -> tuple[tuple[str, Any], ...]:
    return tuple(sorted(conventions.items(), key=lambda kv: kv[0]))


def excused(made: Made) -> float:
    """What a reading may cost more than the cheapest clean one."""
    odd = any(c.key.startswith("start-") and c.costs[c.taken] > ODD_START for c in made.log)
    return ODD_START if odd else EXCUSE


def _worked_count(made: Made) -> bool:
    """Whether the words of the count were taken for an instruction: then there is no printed count."""
    return any(c.key.startswith(COUNT_OR_WORK) and c.taken for c in made.log)
