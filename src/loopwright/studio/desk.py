"""What is seen and drawn of the texts that lie open: made in processes of their own, each answer kept and shared by all windows."""

from __future__ import annotations

import asyncio
import itertools
from collections import OrderedDict
from collections.abc import Awaitable, Callable, Mapping
from typing import Any

from loopwright.studio.folder import sum_of
from loopwright.studio.workers import OutdatedError, Workers

SEE, VIEW, SUMMARY = (f"loopwright.studio.seeing:{name}" for name in ("see", "view", "summary"))  # loaded over there only
PROOF = "loopwright.studio.pieces:looked_at"
MOST_PROOFS = 500  # designs of a folder whose findings are kept
MOST_LOOKS = 2  # at designs of the folder at once
SEE_S = 20.0
VIEW_S = 30.0
PATIENCE_S = 8.0  # work on a text that has been outrun may go on so long: its process remembers what makes the next one quick
VIEW_PATIENCE_S = 1.0  # a view of it is wanted by nobody
MOST_KEPT = 16_000_000  # characters of answers


class Desk:
    """The open texts of a studio. Typing and views of a design are made in a process each, so that neither waits for the other."""

    def __init__(self, workers: Workers, heavy: Workers) -> None:
        """`workers`: the processes for texts that are open; `heavy`: those that stand back behind them."""
        self.workers, self.heavy = workers, heavy
        self._kept: OrderedDict[tuple[Any, ...], str] = OrderedDict()
        self._length = 0
        self._proofs: dict[tuple[str, str], tuple[bool, Any]] = {}
        self._numbers = itertools.count()
        self._looks = asyncio.Semaphore(MOST_LOOKS)
        self._flying: dict[tuple[Any, ...], asyncio.Future[str]] = {}

    async def see(self, window: int, name: str, text: str, gauge: str | None, fresh: Callable[[], bool]) -> str:
        """What is true of a text, as JSON. Raises what `Workers.run` raises."""
        async def make() -> str:
            given = name, text, gauge
            return str(await self.workers.run(
                f"see {window}", SEE, *given, time_s=SEE_S, patience_s=PATIENCE_S, home=f"see {name}", fresh=fresh,
            ))

        return await self._once(("see", name, sum_of(text), gauge), make, fresh)

    async def view(
        self, window: int, seen: tuple[str, str, str | None], what: str, size: int | None, asked: Mapping[str, Any],
        fresh: Callable[[], bool],
    ) -> str:
        """One view of a text (`seen`: name, text, gauge), as JSON. Raises what `Workers.run` raises."""
        name, text, gauge = seen

        async def make() -> str:
            return str(await self.workers.run(
                f"{what} {size} {window}", VIEW, name, text, gauge, what, size, dict(asked), time_s=VIEW_S,
                patience_s=VIEW_PATIENCE_S, home=f"views {name}", fresh=fresh,
            ))

        return await self._once((what, name, sum_of(text), gauge, size, *sorted(asked.items())), make, fresh)

    async def work(self, name: str, what: str, *given: Any, newest: bool = False, time_s: float = VIEW_S) -> Any:
        """What a function of studio/seeing.py gives for a design, in the process that knows its texts. Raises what `Workers.run` raises.

        `what`: the function's name; `newest`: where a newer piece of the same kind makes this one needless.
        """
        kind = f"{what} {name}" if newest else f"{what} {name} {next(self._numbers)}"
        return await self.workers.run(kind, f"loopwright.studio.{what}", name, *given, time_s=time_s, home=f"views {name}")

    async def summary(self, name: str, text: str) -> dict[str, Any]:
        """What is said of a design among others. Raises what `Workers.run` raises."""
        async with self._looks:
            made: dict[str, Any] = await self.heavy.run(f"summary {name} {sum_of(text)}", SUMMARY, name, text, time_s=SEE_S)
        return made

    async def proof(self, name: str, text: str) -> tuple[bool, Any]:
        """What the editing desk tells of a design among others; kept for its text. Raises what `Workers.run` raises."""
        key = name, sum_of(text)
        if key not in self._proofs:
            async with self._looks:
                made = await self.heavy.run(f"proof {key}", PROOF, name, text, time_s=SEE_S)
            while len(self._proofs) >= MOST_PROOFS:
                self._proofs.pop(next(iter(self._proofs)))
            self._proofs[key] = made
        return self._proofs[key]

    async def _once(self, key: tuple[Any, ...], make: Callable[[], Awaitable[str]], fresh: Callable[[], bool]) -> str:
        """The answer that is kept, or that somebody else is waiting for already, or a new one."""
        while True:
            if key in self._kept:
                self._kept.move_to_end(key)
                return self._kept[key]
            if key not in self._flying:
                return await self._made(key, make)
            await asyncio.wait({self._flying[key]})
            if not fresh():
                raise OutdatedError

    async def _made(self, key: tuple[Any, ...], make: Callable[[], Awaitable[str]]) -> str:
        landed: asyncio.Future[str] = asyncio.get_running_loop().create_future()
        self._flying[key] = landed
        try:
            made = await make()
            self._kept[key] = made
            self._length += len(made)
            while self._length > MOST_KEPT:
                self._length -= len(self._kept.popitem(last=False)[1])
        finally:
            del self._flying[key]
            landed.cancel()
        return made
