"""What the search keeps: the state after a row, the outcome of a row, and the chain of both. Nothing here decides."""

from __future__ import annotations

from dataclasses import field, replace
from typing import Any

from loopwright.model.moved import bare
from loopwright.model.tree import (
    Chain,
    EdgeRun,
    Either,
    Group,
    InTurn,
    Join,
    Make,
    Mark,
    Node,
    Repeat,
    Ring,
)
from loopwright.record import record
from loopwright.working.lower import row_named
from loopwright.working.rows import Made, from_hook
from loopwright.working.slots import Slots
from loopwright.working.steps import Step
from loopwright.working.view import View


@record
class State:
    """What one explanation knows after a row.

    `rows`: rows worked so far in the piece, where a row needs to know it; else 0 for none and 1 for any. `first_row`: stitches of the
    first of them where all were worked flat, and a row needs to know it; else 0. `family`: numbers of
    stitches that may have been there before the first row, where nobody can tell which. `frame`: what the rows begin
    and end with, for those that only go on.
    """

    view: View
    conventions: tuple[tuple[str, Any], ...] = ()
    pending: Chain | None = None
    kind: str = "sc"
    in_rounds: bool = False
    joined: bool = False
    rows: int = 0
    last_change: int | None = None
    unsure: bool = False
    free: int = 0
    family: tuple[int, ...] = ()
    frame: tuple[tuple[Node, ...], tuple[Node, ...]] = ((), ())
    first_row: int = 0


@record
class Outcome:
    """A row in one explanation: what was made, or why not."""

    step: Step
    made: Made | None
    cost: float
    agrees: bool | None
    problem: str | None = None
    facts: dict[str, Any] = field(default_factory=dict)
    assumed: tuple[tuple[str, Any], ...] = ()
    as_printed: int | None = None
    flipped: bool = False
    got: int = 0

    def of(self, step: Step) -> Outcome:
        """The same outcome of another step that tells the same."""
        return self if step is self.step else Outcome(
            step, self.made, self.cost, self.agrees, self.problem, self.facts, self.assumed, self.as_printed, self.flipped, self.got,
        )

    def as_made(self, made: Made) -> Outcome:
        """The same outcome with stitches that are the same, made elsewhere."""
        return self if made is self.made else replace(self, made=made)

    def also(self, assumed: tuple[tuple[str, Any], ...]) -> Outcome:
        """The same outcome with more that was assumed."""
        return replace(self, assumed=(*self.assumed, *assumed)) if assumed else self


class Same:
    """Something compared by what it holds, hashed once: for what is looked up again and again."""

    __slots__ = ("_hash", "what")

    def __init__(self, what: Any) -> None:
        self.what = what
        self._hash = hash(what)

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return self is other or isinstance(other, Same) and other.__class__ is self.__class__ and self._hash == other._hash and self.what == other.what


class Told(Same):
    """What a step tells: many rows tell the same, wherever they stand. `body`: the one of all that are equal, where it is known."""

    __slots__ = ("body",)

    def __init__(self, body: Body, step: Step) -> None:
        self.body = body
        super().__init__((body, step.printed, step.order))


class Body(Same):
    """The instructions of a row, and what is to be known of them."""

    __slots__ = ("around", "counts_rows", "depth", "frame", "lower")

    def look(self) -> Body:
        """Finds out what is to be known."""
        nodes: tuple[Node, ...] = self.what
        self.around = any(isinstance(n, EdgeRun) and n.where in ("around", "outline") for b in nodes for n in (b.parts if isinstance(b, InTurn) else (b,)))
        self.counts_rows = _counts_rows(nodes)
        self.depth = _depth(nodes)
        self.lower = row_named(nodes)
        self.frame = frame(nodes)
        return self


class Cloth(Same):
    """The stitches of a row as they are laid into the fabric, whatever else is known of it."""

    __slots__ = ("made",)

    def __init__(self, made: Made) -> None:
        into = Slots.of(made.into)
        super().__init__((
            made.out, into.start.tobytes(), into.end.tobytes(), bytes(into.how), made.origins.tobytes(), made.tape, made.base,
            made.joined, made.turned, made.in_rounds,
        ))
        self.made = made


@record
class Explanation:
    """A chain of outcomes with its cost: newest first, linked. `step`: whose outcome it is, equal to the one it was found for.

    `rows`: rows worked so far in the piece. `cost`: of all its rows.
    """

    state: State
    cost: float
    outcome: Outcome | None = None
    before: Explanation | None = None
    step: Step | None = None
    rows: int = 0

    def chain(self) -> list[tuple[Explanation, Outcome]]:
        """The explanations that have an outcome, from the first row to this one."""
        found: list[tuple[Explanation, Outcome]] = []
        at: Explanation | None = self
        while at is not None:
            if at.outcome is not None:
                found.append((at, at.outcome if at.step is None else at.outcome.of(at.step)))
            at = at.before
        return found[::-1]

    def first_row(self) -> int:
        """Stitches of the first row of the piece, where all its rows so far were worked flat and on a chain; else nought."""
        at: Explanation | None = self
        first = None
        for _ in range(self.rows):
            while at is not None and (at.outcome is None or at.outcome.made is None or not at.outcome.made.out):
                at = at.before
            if at is None or at.outcome is None or (first := at.outcome.made) is None or first.joined or first.in_rounds:
                return 0
            at = at.before
        return first.count if first is not None and first.base is not None and first.base.foundation else 0

    def outcomes(self) -> list[Outcome]:
        """The outcomes from the first row to this one."""
        return [outcome for _, outcome in self.chain()]


def frame(body: tuple[Node, ...]) -> tuple[tuple[Node, ...], tuple[Node, ...]]:
    """What a row begins and ends with beside its stitches: its start chain; its join, its turn. Both stand nowhere in the text."""
    begins = [n for n in body[:6] if not isinstance(n, Mark)]
    if len(begins) > 2 and isinstance(begins[0], Chain) and isinstance(begins[1], (Join, Ring)):
        del begins[:2]  # a ring is for the first round only
    lead = (begins[0],) if begins and isinstance(begins[0], Chain) and len(body) > 1 and not from_hook(body) else ()  # and so is a foundation
    ends = tuple(n for n in body[1:] if isinstance(n, Join) and (n.place is None or n.last_chain is None) or isinstance(n, Mark) and n.what == "turn")
    return bare(lead), bare(ends)


def _depth(nodes: tuple[Node, ...]) -> int:
    """How many repeats stand in one another."""
    return max((_depth(n.nodes) + isinstance(n, Repeat) for n in nodes if isinstance(n, (Repeat, Group))), default=0)


def _counts_rows(nodes: tuple[Node, ...]) -> bool:
    """Whether a row goes along row ends, of which the words need not tell the number."""
    return any(map(_along_rows, nodes))


def _along_rows(node: Node) -> bool:
    if isinstance(node, Make):
        return node.place is not None and node.place.thing.kind in ("row", "row-end")
    if isinstance(node, Either):
        return any(_counts_rows(nodes) for _, nodes in node.readings)
    if isinstance(node, InTurn):
        return any(p.place is not None and p.place.thing.kind == "corner" for p in node.parts if isinstance(p, (Make, Group))) or _counts_rows(node.parts)
    if isinstance(node, Repeat):
        return _counts_rows(node.nodes) or _counts_rows(node.ending)
    return isinstance(node, EdgeRun) or isinstance(node, Group) and _counts_rows(node.nodes)
