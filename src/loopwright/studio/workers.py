"""Heavy work in processes of its own, so that typing never waits: the newest of a kind runs, the outdated one is stopped."""

from __future__ import annotations

import asyncio
import gc
import importlib
import multiprocessing
import os
import signal
import threading
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection, wait
from multiprocessing.process import BaseProcess
from typing import Any

TIME_S = 60.0
IDLE_S = 120.0  # a process that has had nothing to do for so long ends
_LOOK_S = 0.02
_END_S = 2.0
_YOUNG = 5_000, 20, 1_000  # the old generation is gone through while there is nothing to do: that takes longer than a keystroke may
_REST_S = 2.0


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
    home: str = ""
    since: float = 0.0


@dataclass(slots=True, eq=False)
class _Piece:
    """One piece of work and how long it may take. `fresh`: tells whether it is still wanted."""

    fresh: Callable[[], bool]
    time_s: float
    patience_s: float


class Workers:
    """At most `most` processes, kept warm between pieces of work; one piece to each kind. Stopping kills the process."""

    def __init__(self, most: int = 2, *, nice: int = 0) -> None:
        """`most`: processes at once; `nice`: by how much they stand back behind others of the machine."""
        self._nice = nice
        self._most = most
        self._room = asyncio.Semaphore(most)
        self._idle: list[_Worker] = []
        self._all: set[_Worker] = set()
        self._newest: dict[str, int] = {}
        self._homes: dict[str, tuple[asyncio.Lock, int]] = {}
        self._context = multiprocessing.get_context("spawn")
        self._threads = ThreadPoolExecutor(2 * most + 2, "workers")
        self._count = 0

    async def run(
        self, kind: str, work: Callable[..., Any] | str, *given: Any, time_s: float = TIME_S, patience_s: float = 0.0, home: str = "",
        fresh: Callable[[], bool] = lambda: True,
    ) -> Any:
        """Does the work and gives what it gives. Raises OutdatedError, TookTooLongError, WorkFailedError.

        `work`: a function that another process can import, or its name as "module:function", which this process then need not load;
        `given`: arguments that can be sent to it. Work of the same `kind` that is still going on is stopped, once it has taken
        `patience_s`; so is work that is no longer `fresh`. Pieces of one `home` are done one after the other, in the same process where
        that is possible, so that it can use again what it remembers.
        """
        self._count += 1
        mine = self._newest[kind] = self._count
        piece = _Piece(lambda: self._newest.get(kind) == mine and fresh(), time_s, patience_s)
        try:
            async with self._at_home(home), self._room:
                if not piece.fresh():
                    raise OutdatedError
                good, value = await self._done(piece, home, work, given)
        finally:
            if self._newest.get(kind) == mine:
                del self._newest[kind]
        if not good:
            raise WorkFailedError(value)
        return value

    def _at_home(self, home: str) -> _Turn:
        return _Turn(self._homes, home)

    async def _done(self, piece: _Piece, home: str, work: Callable[..., Any] | str, given: tuple[Any, ...]) -> tuple[bool, Any]:
        worker = await self._worker(home)
        fine = False
        try:
            outcome = await self._outcome(worker, piece, (work, given))
            fine = True
        finally:
            if fine:
                worker.home, worker.since = home, asyncio.get_running_loop().time()
                self._idle.append(worker)
            else:
                self._end(worker)
        return outcome

    async def _outcome(self, worker: _Worker, piece: _Piece, asked: Any) -> tuple[bool, Any]:
        loop = asyncio.get_running_loop()
        began = loop.time()
        answer = loop.run_in_executor(self._threads, _asked, worker.pipe, asked)
        answer.add_done_callback(lambda a: None if a.cancelled() else a.exception())  # of work that was stopped, nobody asks
        while True:
            done, _ = await asyncio.wait({answer}, timeout=_LOOK_S)
            if done:
                try:
                    return answer.result()
                except (EOFError, OSError):
                    raise WorkFailedError("it ended without a word") from None
            taken = loop.time() - began
            if taken > piece.time_s:
                raise TookTooLongError
            if taken >= piece.patience_s and not piece.fresh():
                raise OutdatedError

    async def _worker(self, home: str) -> _Worker:
        """The process that is at home there, else an idle one, else a new one."""
        for gone in [w for w in self._idle if not w.process.is_alive()]:
            self._idle.remove(gone)
            self._end(gone)
        at_home = next((w for w in self._idle if home and w.home == home), None)
        free = at_home or next((w for w in self._idle if not w.home), None)
        if free is None and len(self._all) >= self._most and self._idle:
            free = self._idle[0]
        if free is not None:
            self._idle.remove(free)
            return free
        return await asyncio.get_running_loop().run_in_executor(self._threads, self._started)

    def _started(self) -> _Worker:
        mine, theirs = self._context.Pipe()
        process = self._context.Process(target=_serve, args=(theirs, self._nice), daemon=True)
        process.start()
        theirs.close()
        worker = _Worker(process, mine)
        self._all.add(worker)
        return worker

    def stop(self, kind: str) -> None:
        """Stops the work of a kind, if there is any."""
        self._newest.pop(kind, None)

    def rest(self, keep: int = 1) -> None:
        """Ends processes that have been idle for long, but for the last `keep` that were used."""
        now = asyncio.get_running_loop().time()
        for worker in self._idle[: max(0, len(self._idle) - keep)]:
            if now - worker.since > IDLE_S:
                self._idle.remove(worker)
                self._end(worker)

    def close(self) -> None:
        """Ends all processes."""
        self._idle.clear()
        for worker in list(self._all):
            self._end(worker)
        self._threads.shutdown(wait=False, cancel_futures=True)

    def _end(self, worker: _Worker) -> None:
        """Kills a process and waits until it is gone: whoever waits for its answer hears the pipe end."""
        self._all.discard(worker)
        worker.process.kill()
        worker.process.join(_END_S)
        with suppress(OSError):
            worker.pipe.close()


class _Turn:
    """Waits for one's turn in a home; the lock is let go of with the last who waits for it."""

    def __init__(self, homes: dict[str, tuple[asyncio.Lock, int]], home: str) -> None:
        self.homes, self.home = homes, home

    async def __aenter__(self) -> None:
        if self.home:
            lock, waiting = self.homes.get(self.home, (asyncio.Lock(), 0))
            self.homes[self.home] = lock, waiting + 1
            try:
                await lock.acquire()
            except BaseException:
                self._leave()
                raise

    async def __aexit__(self, *_exception: object) -> None:
        if self.home:
            self.homes[self.home][0].release()
            self._leave()

    def _leave(self) -> None:
        lock, waiting = self.homes[self.home]
        if waiting > 1:
            self.homes[self.home] = lock, waiting - 1
        else:
            del self.homes[self.home]


def _asked(pipe: Connection, asked: Any) -> tuple[bool, Any]:
    pipe.send(asked)
    outcome: tuple[bool, Any] = pipe.recv()
    return outcome


def _serve(pipe: Connection, nice: int) -> None:
    """What a process does: one piece of work after the other, until nobody asks any more."""
    with suppress(AttributeError, OSError):  # not everywhere
        os.nice(nice)
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()
    gc.set_threshold(*_YOUNG)
    while True:
        try:
            if not pipe.poll(_REST_S):
                gc.collect()
            work, given = pipe.recv()
        except (EOFError, OSError):
            return
        try:
            outcome = True, _function(work)(*given)
        except Exception as e:  # noqa: BLE001 - told to whoever waits for it
            outcome = False, f"{type(e).__name__}: {e}"
        try:
            pipe.send(outcome)
        except (BrokenPipeError, OSError):
            return


def _function(work: Callable[..., Any] | str) -> Callable[..., Any]:
    if not isinstance(work, str):
        return work
    module, _, name = work.partition(":")
    found: Callable[..., Any] = getattr(importlib.import_module(module), name)
    return found


def _end_with_parent() -> None:
    """However the studio ends, no work goes on without it."""
    parent = multiprocessing.parent_process()
    if parent is not None:
        wait([parent.sentinel])
        os._exit(0)
