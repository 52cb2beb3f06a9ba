"""A number that was chosen, and all that is to be shown of it."""

from __future__ import annotations

from loopwright.grading.bodies import Body
from loopwright.record import record


@record
class Neighbour:
    """A legal number next to the chosen one and what it would make."""

    value: int
    achieved_mm: float


@record
class Number:
    """One blank in one size. The millimetres are None for a number that only follows from others.

    `name` says what is measured ("crown", "body"), `way` how: around, across, width, depth, length. `step_mm` is the
    distance between legal neighbours, `wanted` the exact number before rounding. `equal` is another number that would be
    just as near; `held` tells what keeps a nearer number out. `bodies`: the measurements the target is made of.
    `kept`: its sentence gives it for this size itself.
    """

    blank: str
    value: int
    name: str
    way: str
    unit: str
    target_mm: float | None
    achieved_mm: float | None
    step_mm: float | None
    wanted: float
    multiple: int
    neighbours: tuple[Neighbour, ...]
    reason: str
    equal: int | None = None
    held: str = ""
    bodies: tuple[tuple[str, Body], ...] = ()
    kept: bool = False

    @property
    def error_mm(self) -> float | None:
        """What is reached less what was wanted."""
        return None if self.achieved_mm is None or self.target_mm is None else self.achieved_mm - self.target_mm
