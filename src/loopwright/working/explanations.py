"""What the search keeps: the state after a row, the outcome of a row, and the chain of both. Nothing here decides."""

from __future__ import annotations

from dataclasses import field, replace
from typing import Any

from loopwright.model.tree import (
    Chain,
    EdgeRun,
    Group,
    Node,
    Repeat,
)
from loopwright.record import record
from loopwright.working.rows import Made
from loopwright.working.steps import Step
from loopwright.working.view import View


@record
class State:
    """What one explanation knows after a row."""

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

    def also(self, assumed: tuple[tuple[str, Any], ...]) -> Outcome:
        """The same outcome with more that was assumed."""
        return replace(self, assumed=(*self.assumed, *assumed)) if assumed else self


class Told:
    """What a step tells, hashed once: many rows tell the same."""

    __slots__ = ("_hash", "counts_rows", "depth", "what")

    def __init__(self, step: Step) -> None:
        self.what = (step.body, step.printed, step.order)
        self._hash = hash(self.what)
        self.counts_rows = _counts_rows(step.body)
        self.depth = _depth(step.body)

    def __hash__(self) -> int:
        return self._hash

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Told) and self.what == other.what


@record
class Explanation:
    """A chain of outcomes with its cost: newest first, linked."""

    state: State
    cost: float
    outcome: Outcome | None = None
    before: Explanation | None = None

    def outcomes(self) -> list[Outcome]:
        """The outcomes from the first row to this one."""
        found: list[Outcome] = []
        at: Explanation | None = self
        while at is not None:
            if at.outcome is not None:
                found.append(at.outcome)
            at = at.before
        return found[::-1]


def _depth(nodes: tuple[Node, ...]) -> int:
    """How many repeats stand in one another."""
    return max((_depth(n.nodes) + isinstance(n, Repeat) for n in nodes if isinstance(n, (Repeat, Group))), default=0)


def _counts_rows(body: tuple[Node, ...]) -> bool:
    """Whether a row goes along row ends of which it does not tell the number."""
    return any(isinstance(n, EdgeRun) or isinstance(n, Repeat) and (_counts_rows(n.nodes) or _counts_rows(n.ending)) for n in body)
