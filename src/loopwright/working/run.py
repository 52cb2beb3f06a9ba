"""One reading of one row: a cursor over the row below, what was made so far, and the choices met on the way.

A run is deterministic: the same row, view, conventions and forced choices give the same result. The search replays it
with other choices; so nothing is copied inside a row and every choice has a name.
"""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Any

from loopwright.model.tree import Node
from loopwright.working.kinds import CHAIN
from loopwright.working.slots import Slots
from loopwright.working.tape import Note
from loopwright.working.view import Group, Slot, View

MAX_ITEMS = 20_000
SWITCH_COST = 3.0


class CannotWork(Exception):
    """The row cannot be worked here. `reason` names it, `facts` hold the figures for the message."""

    def __init__(self, reason: str, **facts: Any) -> None:
        super().__init__(reason)
        self.reason = reason
        self.facts = facts
        self.log: tuple[Choice, ...] = ()
        self.got = 0  # stitches made until then
        self.work = 0  # instructions worked and stitches made until then


class RunsOut(CannotWork):
    """The row asks for a place that is not there."""

    def __init__(self, thing: str, **facts: Any) -> None:
        super().__init__("runs-out", thing=thing, **facts)


@dataclass(slots=True)
class Printed:
    """The printed count of a row, 0 for none. `asked`: whether what was worked depends on it. `of_all`: of stitches, not of one kind of them."""

    number: int = 0
    asked: bool = False
    of_all: bool = True

    def ask(self) -> int:
        """The number, noted."""
        self.asked = True
        return self.number


@dataclass(slots=True)
class Choice:
    """A choice met: its name, the option taken, the options' costs."""

    key: str
    taken: int
    costs: tuple[float, ...]


@dataclass(slots=True)
class Point:
    """Where a run stood, to go back to."""

    pos: int
    items: int
    groups: int
    runs: int
    last: Slot | None
    worked: int
    bracket: int
    tape: int = 0


@dataclass(slots=True)
class Run:
    """State of the row in progress. `pos` … `end` are items of the view still ahead, counted on past a full turn."""

    view: View
    forced: tuple[int, ...]
    conventions: dict[str, Any]
    definitions: dict[str, tuple[Node, ...]]
    main_kind: str
    in_rounds: bool
    printed: Printed = field(default_factory=Printed)
    pos: int = 0
    start: int = 0
    end: int = 0
    cost: float = 0.0
    out: bytearray = field(default_factory=bytearray)
    into: Slots = field(default_factory=Slots)
    origins: array[int] = field(default_factory=lambda: array("i"))
    tape: list[Note] = field(default_factory=list)
    groups: list[Group] = field(default_factory=list)
    runs: list[tuple[int, int]] = field(default_factory=list)
    last: Slot | None = None
    log: list[Choice] = field(default_factory=list)
    sticky: dict[str, Any] = field(default_factory=dict)
    named: dict[str, int] = field(default_factory=dict)
    worked: int = 0
    repeats: int = 0
    reserve: int = 0
    reserve_spaces: int = 0
    start_chain: tuple[int, str] | None = None
    tch_item: bool = False
    tch_length: int = 0
    joined: bool = False
    turned: bool = False
    left_said: bool = False
    loop: str = "both"
    origin: int = 0
    steps: int = 0
    placed: int = 0  # instructions in groups, worked into one place
    own_chain: int = 0
    sub: Run | None = None
    used_spaces: bool = False
    unsure: float = 0.0
    row_inc: int = 0
    half_loop: bool = False
    following: Sequence[Node] = ()
    beyond: Sequence[Node] = ()  # what follows the repeat that is worked, where it stands in no other
    edges: list[int] | None = None
    between: list[tuple[int, int]] | None = None
    skipped_said: str = ""  # "yes"/"no" where the words tell whether the chains skipped at the foundation are a stitch
    slipped: bool = False  # the hook was moved to stitch `last` by slip stitches: a start chain stands there
    slip_row: bool = False  # a row of slip stitches: they are its stitches
    uneven: tuple[int, int] | None = None  # a repeat to the end that did not come out even: what a round takes, what there was
    skips: list[tuple[int, int]] = field(default_factory=list)  # what was passed over, for crossed stitches to go back to
    crossed: list[tuple[int, int]] = field(default_factory=list)  # which of it was gone back to: number of the stitch made, place
    around: bool = False  # a post is looked for
    inside: int = 0  # depth of repeats: "the first stitch" there is the next one

    def __post_init__(self) -> None:
        self.end = len(self.view.items)

    @property
    def work(self) -> int:
        """What it took so far, in instructions."""
        return self.steps + self.placed // 2 + len(self.out) // 4

    # --- choices -------------------------------------------------------------------------------------------------

    def choose(self, key: str, options: tuple[tuple[float, Any], ...]) -> Any:
        """Takes the forced option, or the first cheapest; logs it so that the search can try the others."""
        at = len(self.log)
        costs = tuple(cost for cost, _ in options)
        taken = self.forced[at] if at < len(self.forced) else costs.index(min(costs))
        if taken >= len(options):
            taken = 0
        self.log.append(Choice(key, taken, costs))
        self.cost += costs[taken]
        return options[taken][1]

    def once(self, key: str, options: tuple[tuple[float, Any], ...]) -> Any:
        """A choice made once in a row and kept."""
        if key not in self.sticky:
            self.sticky[key] = self.choose(key, options)
        return self.sticky[key]

    def convention(self, key: str, options: tuple[tuple[float, Any], ...]) -> Any:
        """A choice shared by all rows: free once made, switching costs."""
        if key in self.sticky:
            return self.sticky[key]
        if key in self.conventions:
            held = self.conventions[key]
            options = tuple((0.0 if value == held else SWITCH_COST, value) for _, value in options)
            if held not in [value for _, value in options]:
                options = ((0.0, held), *options)
        value = self.sticky[key] = self.choose(key, options)
        self.conventions[key] = value
        return value

    # --- where we are --------------------------------------------------------------------------------------------

    def item(self, index: int) -> int:
        """The kind of the view's item; indexes go on round the view."""
        items = self.view.items
        return items[index % len(items)]

    def point(self) -> Point:
        """Where the row stands, to come back to."""
        return Point(self.pos, len(self.out), len(self.groups), len(self.runs), self.last, self.worked, 0, len(self.tape))

    def back_to(self, point: Point) -> None:
        """Forgets what was made since a point."""
        self.pos, self.last, self.worked = point.pos, point.last, point.worked
        if "picot" in self.named and len(self.tape) > point.tape:
            self.named["picot"] -= sum(note.n if note.what == "picot" else 1 for note in self.tape[point.tape :] if note.what in ("picot", "close"))
        del self.out[point.items :]
        del self.into[point.items :]
        del self.origins[point.items :]
        del self.groups[point.groups :], self.runs[point.runs :], self.tape[point.tape :]
        if self.runs and self.runs[-1][1] > point.items:
            self.runs[-1] = (self.runs[-1][0], point.items)  # the chain had gone on

    def stitches_left(self) -> int:
        """Stitches of the row below still ahead."""
        if self.view.ring and not self.view.items:
            return 0
        if self.view.foundation or self.view.ring:
            return max(0, self.end - self.pos)
        return self._count_ahead()

    def _count_ahead(self) -> int:
        n = len(self.view.items)
        if not n or self.pos >= self.end:
            return 0
        if self.sticky.get("chains-taken"):
            return self.end - self.pos
        first, last = self.pos, self.end
        if last <= n:
            return last - first - self.view.items.count(CHAIN, first, last)
        if first >= n:
            return last - first - self.view.items.count(CHAIN, first - n, last - n)
        head = n - first - self.view.items.count(CHAIN, first, n)
        return head + (last - n) - self.view.items.count(CHAIN, 0, last - n)

    def note(self, what: str, n: int = 0, word: str = "", slot: Slot | None = None, at: int | None = None, first: int = 0) -> None:
        """Puts on the tape what the items do not tell."""
        if n > MAX_ITEMS:
            raise CannotWork("too-many", limit=MAX_ITEMS)
        self.tape.append(Note(len(self.out) if at is None else at, what, n, word, slot, self.origin, first))

    # --- making --------------------------------------------------------------------------------------------------

    def make(self, kind: int, slot: Slot | None, times: int = 1) -> None:
        """Appends a stitch worked into a slot, or so many of them into the same."""
        if len(self.out) + times > MAX_ITEMS:
            raise CannotWork("too-many", limit=MAX_ITEMS)
        if times == 1:
            self.out.append(kind)
            self.into.append(slot)
            self.origins.append(self.origin)
        else:
            self.out.extend(bytes((kind,)) * times)
            self.into.alike(slot, times)
            self.origins.extend(array("i", (self.origin,)) * times)
        self.worked += times
        self.own_chain = 0

    def make_each(self, kinds: bytes, starts: Sequence[int], ends: Sequence[int]) -> None:
        """Appends a stitch after the other, each worked into the tops of its own places."""
        if len(self.out) + len(kinds) > MAX_ITEMS:
            raise CannotWork("too-many", limit=MAX_ITEMS)
        self.out.extend(kinds)
        self.into.tops(starts, ends)
        self.origins.extend(array("i", (self.origin,)) * len(kinds))
        self.worked += len(kinds)
        self.own_chain = 0

    def chain(self, length: int) -> None:
        """Appends a run of chains; a run right after another one is a run of its own only after a stitch."""
        if len(self.out) + length > MAX_ITEMS:
            raise CannotWork("too-many", limit=MAX_ITEMS)
        begin = len(self.out)
        self.out.extend(bytes([CHAIN]) * length)
        self.into.nothing(length)
        self.origins.extend(array("i", (self.origin,)) * length)
        if self.runs and self.runs[-1][1] == begin:
            self.runs[-1] = (self.runs[-1][0], begin + length)
        else:
            self.runs.append((begin, begin + length))
        self.own_chain = self.runs[-1][1] - self.runs[-1][0]
