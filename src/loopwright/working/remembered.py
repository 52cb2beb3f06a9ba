"""What decoding remembers: rows decoded on states, each once for all that tell and know the same."""

from __future__ import annotations

from typing import Any

from loopwright.kept import kept
from loopwright.model.tree import Node
from loopwright.record import changed, record
from loopwright.working.beginnings import HORIZON
from loopwright.working.explanations import Body, Cloth, Explanation, Outcome, Same, State, Told
from loopwright.working.rows import Made
from loopwright.working.steps import Step

FOLLOWED = 4  # explanations that go on over one row
OTHERS = 1  # and so many more that come out at other numbers of stitches
HOPELESS = 6.0  # an explanation that costs so much more than the cheapest is followed no further: two wrong counts more
MOST_KEPT = 20_000  # of each kind, in a memo
DOUBT = 5  # unknown words from which a row's count is no safe ground for the next


@record
class Found:
    """The outcomes of a row on a state: the state after each, with the rows then worked beyond those before (None: none any more).

    `work`: what it took to find them. `alone`: true of this row with the rows that follow it, not of each that tells the same.
    """

    outcomes: tuple[tuple[State, int | None, Outcome], ...]
    work: int
    alone: bool = False


class Layer:
    """The explanations of the rows before one row that went on over it, the cheapest first: few, no two that leave the same."""

    __slots__ = ("_taken", "alike")

    def __init__(self) -> None:
        self._taken: list[Explanation] = []
        self.alike: list[tuple[Explanation, Explanation]] = []  # one taken, and one that leaves the same and is not gone on with

    def takes(self, new: Explanation, *, alone: bool = False) -> bool:
        """Whether one more goes on, which none of those before it was dearer than; with `alone` none but the first."""
        taken = self._taken
        if taken:
            if alone:
                return False
            left = _left(new.state)
            many = len(taken)
            if new.cost > taken[0].cost + HOPELESS or many >= FOLLOWED + OTHERS:
                return False
            same = next((e for e in taken if _left(e.state) == left), None)
            if same is not None:
                self.alike.append((same, new))
                return False
            if many >= FOLLOWED and any(e.state.view.stitches == new.state.view.stitches for e in taken):
                return False
        taken.append(new)
        return True


def _left(state: State) -> tuple[Any, ...]:
    return state.view, state.conventions, state.pending, state.in_rounds


class Remembered:
    """The tables of one decoding, out of the memo of earlier ones where there is one, and what it has worked so far."""

    def __init__(self, definitions: dict[str, tuple[Node, ...]], memo: dict[Any, Any] | None) -> None:
        self.definitions = definitions
        self.rows = kept(memo, "decoded", MOST_KEPT)
        self.followed = kept(memo, "followed", MOST_KEPT)
        self.tolds = kept(memo, "told", MOST_KEPT)
        self.same = kept(memo, "same", MOST_KEPT)
        self.worked = kept(memo, "worked", MOST_KEPT)  # ways of rows, whatever their printed counts
        self.cloths = kept(memo, "cloths", MOST_KEPT)
        self.names = self._one(Same(tuple(sorted(definitions.items()))))
        self.looked_ahead = self.brief = False
        self.family: tuple[int, ...] = ()  # numbers of stitches that the row just looked at may have stood on
        self.spent = 0
        self.charged: dict[int, Found] = {}

    def of_family(self, state: State) -> State:
        """A state in which nobody knows yet what the rows stand on, with the numbers that it may be."""
        family = () if state.view.items or state.view.ring else self.family
        return state if state.family == family else changed(state, family=family)

    def _charge(self, found: Found) -> None:
        """Counts the work of a row once, whether it was done now or for an earlier text."""
        if id(found) not in self.charged:
            self.charged[id(found)] = found
            self.spent += found.work

    def _which(self, step: Step, told: Told) -> tuple[Any, ...]:
        """What tells one step from another, but for where it stands."""
        number = step.number if step.number in (None, 1) else 2
        return self.brief, told, step.goes_on, step.kind, step.new_section, step.gap, step.awaits, number, step.side == "RS", step.doubt >= DOUBT

    def _ahead(self, steps: list[Step], at: int) -> tuple[Any, ...]:
        """What the rows ahead tell, as far as one looks."""
        first = steps[at]
        return tuple((*self._which(s, self.told(s)), bool(s.problem), s.side, s.item - first.item) for s in steps[at + 1 : at + HORIZON])

    def cloth(self, made: Made) -> Cloth:
        """The stitches of a row: the one of all that are equal."""
        held: tuple[Cloth, Made] | None = self.cloths.get(id(made))
        if held is None:
            held = self.cloths[id(made)] = self._one(Cloth(made)), made  # it keeps its id while this is kept
        return held[0]

    def told(self, step: Step) -> Told:
        """What a step tells: the one of all that are equal."""
        which = (id(step.body), id(step.printed), id(step.order))
        held: tuple[Told, Any] | None = self.tolds.get(which)
        if held is None:
            held = self._one(Told(self.body(step.body), step)), (step.body, step.printed, step.order)  # they keep their ids while this is kept
            self.tolds[which] = held
        return held[0]

    def body(self, nodes: tuple[Node, ...]) -> Body:
        """The instructions of a row: the one of all that are equal."""
        body = Body(nodes)
        known: Body | None = self.same.get(body)
        if known is None:
            known = self.same[body] = body.look()
        return known

    def _one(self, same: Any) -> Any:
        """The one of all that are equal."""
        known = self.same.get(same)
        if known is None:
            known = self.same[same] = same
        return known


def with_rows(before: State, state: State, outcome: Outcome) -> tuple[State, int | None, Outcome]:
    """A state after a row, and the rows it has beyond those of the state before; how many those are is not for the state to know."""
    if state.rows == 0:
        return state, None, outcome
    return changed(state, rows=1) if state.rows > 1 else state, state.rows - before.rows, outcome
