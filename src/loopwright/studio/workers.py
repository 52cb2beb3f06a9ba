"""Heavy work in processes of its own, so that typing never waits: the newest of a kind runs, the outdated one is stopped."""

from __future__ import annotations

import asyncio
import multiprocessing
import signal
from collections.abc import Callable
from dataclasses import dataclass
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from typing import Any

TIME_S = 60.0
_LOOK_S = 0.02


class WorkerError(Exception):
    """Work that came to nothing."""


class OutdatedError(WorkerError):
    """The work was stopped, as newer work of its kind was asked for."""


class TookTooLongError(WorkerError):
    """The work was stopped, as it took longer than it may."""


class WorkFailedError(WorkerError):
    """The work ended with a fault of ours; the message says which."""


@dataclass(slots=True, eq=False)
class _Worker:
    process: BaseProcess
    pipe: Connection


class Workers:
    """At most `most` processes, kept warm between pieces of work; one piece to each kind. Stopping kills the process."""

    def __init__(self, most: int = 2) -> None:
        """`most`: processes at once."""
        self._room = asyncio.Semaphore(most)
        self._idle: list[_Worker] = []
        self._newest: dict[str, int] = {}
        self._context = multiprocessing.get_context("spawn")
        self._count = 0

    async def run(self, kind: str, work: Callable[..., Any], *given: Any, time_s: float = TIME_S) -> Any:
        """Does the work and gives what it gives. Raises OutdatedError, TookTooLongError, WorkFailedError.

        `work`: a function that another process can import; `given`: arguments that can be sent to it. Work of the same `kind` that is
        still going on is stopped.
        """
        self._count += 1
        mine = self._newest[kind] = self._count
        async with self._room:
            if self._newest[kind] != mine:
                raise OutdatedError
            worker = await self._worker()
            fine = False
            try:
                await asyncio.to_thread(worker.pipe.send, (work, given))
                outcome = await self._outcome(worker, kind, mine, time_s)
                fine = True
            finally:
                if fine:
                    self._idle.append(worker)
                else:
                    _end(worker)
        good, value = outcome
        if not good:
            raise WorkFailedError(value)
        return value

    async def _outcome(self, worker: _Worker, kind: str, mine: int, time_s: float) -> tuple[bool, Any]:
        loop = asyncio.get_running_loop()
        until = loop.time() + time_s
        while not worker.pipe.poll():
            if self._newest[kind] != mine:
                raise OutdatedError
            if loop.time() > until:
                raise TookTooLongError
            if not worker.process.is_alive() and not worker.pipe.poll():
                raise WorkFailedError("it ended without a word")
            await asyncio.sleep(_LOOK_S)
        try:
            outcome: tuple[bool, Any] = await asyncio.to_thread(worker.pipe.recv)
        except EOFError:
            raise WorkFailedError("it ended without a word") from None
        return outcome

    async def _worker(self) -> _Worker:
        while self._idle:
            worker = self._idle.pop()
            if worker.process.is_alive():
                return worker
            _end(worker)
        mine, theirs = self._context.Pipe()
        process = self._context.Process(target=_serve, args=(theirs,), daemon=True)
        await asyncio.to_thread(process.start)
        theirs.close()
        return _Worker(process, mine)

    def stop(self, kind: str) -> None:
        """Stops the work of a kind, if there is any."""
        self._count += 1
        self._newest[kind] = self._count

    def close(self) -> None:
        """Ends all processes that wait for work."""
        while self._idle:
            _end(self._idle.pop())


def _end(worker: _Worker) -> None:
    if worker.process.is_alive():
        worker.process.kill()
    worker.pipe.close()


def _serve(pipe: Connection) -> None:
    """What a process does: one piece of work after the other, until nobody asks any more."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    while True:
        try:
            work, given = pipe.recv()
        except (EOFError, OSError):
            return
        try:
            outcome = True, work(*given)
        except Exception as e:  # noqa: BLE001 - told to whoever waits for it
            outcome = False, f"{type(e).__name__}: {e}"
        try:
            pipe.send(outcome)
        except (BrokenPipeError, OSError):
            return
