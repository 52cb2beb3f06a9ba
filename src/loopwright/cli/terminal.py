"""What a terminal is asked before it is written to."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import TextIO


def coloured(stream: TextIO) -> bool:
    """Whether colour is welcome: on a terminal, unless the user says no (the NO_COLOR convention)."""
    return stream.isatty() and "NO_COLOR" not in os.environ and os.environ.get("TERM") != "dumb"


class Progress:
    """One line on the terminal that says which size is being relaxed and how far it is."""

    def __init__(self) -> None:
        self.last = 0.0
        self.wide = 0

    def __call__(self, what: str, share: float) -> None:
        """So much of it is done, from 0 to 1."""
        now = time.monotonic()
        if now - self.last < 0.1 and share < 1:
            return
        self.last = now
        line = f"{what}: {100 * share:.0f} %"
        self.wide = max(self.wide, len(line))
        print(f"\r{line:<{self.wide}}", end="", file=sys.stderr, flush=True)

    def done(self) -> None:
        """Clears the line."""
        print("\r" + " " * self.wide + "\r", end="", file=sys.stderr, flush=True)


@contextmanager
def watched() -> Iterator[Callable[[str, float], None] | None]:
    """Somebody to tell how far the work is, where standard error is a terminal; the line is cleared at the end, whatever happens."""
    progress = Progress() if sys.stderr.isatty() else None
    try:
        yield progress
    finally:
        if progress is not None:
            progress.done()
