"""Films from the studio: plan, cards and what a log gives, made in processes of their own and kept; the kit as a run."""

from __future__ import annotations

from collections import OrderedDict
from pathlib import Path
from typing import Any

from loopwright.studio.folder import sum_of
from loopwright.studio.runs import Run, Runs
from loopwright.studio.workers import Workers
from loopwright.workshop.film.choice import Choice

PLAN, CARDS, TIMES, KIT, LISTEN = (f"loopwright.studio.filmed:{n}" for n in ("plan_of", "cards_of", "times_of", "kit_of", "heard"))
PATIENCE_S = 1.0  # outdated work may go on so long: what it remembers makes the next one quick
PLAN_S, CARDS_S, TIMES_S, LISTEN_S = 30.0, 60.0, 30.0, 30.0
MOST_CAPTIONS = 2_000_000  # characters
MOST_KEPT = 24_000_000  # characters of plans and cards
SHAPES = ("16x9", "9x16")

Shown = tuple[str, tuple[str, ...]]
"""What is told, as JSON, and drawings that belong to it, SVG."""


class NoFilmError(Exception):
    """There is no plan for this design and choice; the message says why, and the way out."""


class Filming:
    """What was made of films lately, and the runs."""

    def __init__(self, workers: Workers) -> None:
        """`workers`: who does the work."""
        self.workers = workers
        self.runs = Runs(workers)
        self._kept: OrderedDict[str, Shown] = OrderedDict()

    async def plan(self, window: str, design: str, text: str, choice: Choice) -> str:
        """The plan as JSON. Cards that this window still waits for are those of another one, and stopped.

        Raises NoFilmError where there is none, and what workers raise.
        """
        key = _key("plan", design, text, choice)
        self.workers.stop(f"film cards {design} {window}")
        if key not in self._kept:
            self._keep(key, (await self._asked(f"film plan {design} {window}", PLAN, PLAN_S, (design, text, choice)), ()))
        return self._kept[key][0]

    async def cards(self, window: str, design: str, text: str, choice: Choice, shape: str) -> tuple[str, str]:
        """The key under which the drawings are kept, and what each card is, as JSON. Raises as `plan` does."""
        key = _key(f"cards {shape}", design, text, choice)
        if key not in self._kept:
            self._keep(key, await self._asked(f"film cards {design} {window}", CARDS, CARDS_S, (design, text, choice, shape)))
        return key, self._kept[key][0]

    def drawing(self, key: str, number: int) -> str | None:
        """One card, SVG; None where it is not kept."""
        told, svgs = self._kept.get(key, ("", ()))
        return svgs[number] if told and 0 <= number < len(svgs) else None

    async def times(self, window: str, design: str, text: str, choice: Choice, log: str) -> str:
        """What a log gives, as JSON. Raises as `plan` does."""
        return str(await self._asked(f"film log {design} {window}", TIMES, TIMES_S, (design, text, choice, log)))

    async def listen(self, window: str, captions: str, name: str, terms: str | None) -> dict[str, Any]:
        """The draft of a lesson. Raises what workers raise."""
        found: dict[str, Any] = await self.workers.run(f"listen {window}", LISTEN, captions, name, terms, time_s=LISTEN_S)
        return found

    def begin(self, design: Path, choice: Choice, log: str | None, into: Path | None) -> Run:
        """Begins to make the kit; `into`: the folder, None for one file to take away."""
        return self.runs.begin(design.name, into, KIT, str(design), choice, log, None if into is None else str(into))

    async def _asked(self, kind: str, work: str, time_s: float, given: tuple[Any, ...]) -> Any:
        home = f"film cards {given[0]}" if work == CARDS else f"film {given[0]}"
        good, found = await self.workers.run(kind, work, *given, time_s=time_s, patience_s=PATIENCE_S, home=home)
        if not good:
            raise NoFilmError(found)
        return found

    def _keep(self, key: str, shown: Shown) -> None:
        self._kept[key] = shown
        while len(self._kept) > 1 and sum(len(t) + sum(map(len, s)) for t, s in self._kept.values()) > MOST_KEPT:
            self._kept.popitem(last=False)


def _key(what: str, design: str, text: str, choice: Choice) -> str:
    return sum_of(f"{what}\n{design}\n{sum_of(text)}\n{choice}")
