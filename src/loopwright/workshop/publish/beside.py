"""A process beside this one, which draws the cover, and charts where there are many, while this one goes on."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import Future, ProcessPoolExecutor
from multiprocessing import current_process, get_context
from typing import ParamSpec, Self, TypeVar

from loopwright.workshop.publish.cover import bring

_P = ParamSpec("_P")
_R = TypeVar("_R")


class Beside:
    """Does one piece of work at a time in a process of its own; here and at once, where no process can or shall be started."""

    def __init__(self, *, own_process: bool = True) -> None:
        """`own_process`: it is started, and brings what drawing needs, while this one reads the design."""
        self._last: Future[object] | None = None
        self._pool = None
        if own_process and not current_process().daemon:
            self._pool = ProcessPoolExecutor(max_workers=1, mp_context=get_context("spawn"))
            self._pool.submit(bring)

    @property
    def free(self) -> bool:
        """Whether it would begin at once, without holding up this process."""
        return self._pool is not None and (self._last is None or self._last.done())

    def submit(self, work: Callable[_P, _R], *args: _P.args, **named: _P.kwargs) -> Future[_R]:
        """Begins a piece of work; the result holds what it gives or raises."""
        begun: Future[_R]
        if self._pool is not None:
            begun = self._pool.submit(work, *args, **named)
        else:
            begun = Future()
            try:
                begun.set_result(work(*args, **named))
            except Exception as error:  # noqa: BLE001 - as a process would, it is raised where the result is asked for
                begun.set_exception(error)
        self._last = begun  # type: ignore[assignment]
        return begun

    def close(self) -> None:
        """Ends what was begun."""
        if self._pool is not None:
            self._pool.shutdown(wait=False, cancel_futures=True)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_error: object) -> None:
        self.close()
