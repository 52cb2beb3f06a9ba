"""How figures are taken: processor time, best of several runs, everything that is compared within one run of one program.

Processor time, not the clock on the wall: other work on the machine hardly changes it.
"""

from __future__ import annotations

import gc
import resource
import subprocess
import sys
import time
import tracemalloc
from collections.abc import Callable, Sequence


def best(work: Callable[[], object], runs: int = 5) -> float:
    """Seconds of processor time of the quickest of several runs."""
    found = []
    for _ in range(runs):
        gc.collect()
        begin = time.process_time()
        work()
        found.append(time.process_time() - begin)
    return min(found)


def side_by_side(*works: Callable[[], object], runs: int = 25) -> list[float]:
    """Seconds of processor time of the quickest run of each, taken in turns: a machine that slows down slows all of them."""
    found = [float("inf")] * len(works)
    for _ in range(runs):
        for at, work in enumerate(works):
            found[at] = min(found[at], best(work, 1))
    return found


def kept_bytes(work: Callable[[], object]) -> int:
    """Bytes that the result of `work` holds on to, by the interpreter's own book-keeping; what it used only in passing is not counted."""
    gc.collect()
    tracemalloc.start()
    try:
        held = work()
        gc.collect()
        size = tracemalloc.get_traced_memory()[0]
        del held
    finally:
        tracemalloc.stop()
    return size


def command(words: Sequence[str], runs: int = 15) -> float:
    """Seconds of processor time of the quickest of several runs of a whole command."""
    found = []
    for _ in range(runs):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run([sys.executable, *words], stdout=subprocess.DEVNULL, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        found.append(after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return min(found)
