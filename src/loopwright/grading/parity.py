"""One parity in all sizes: all even or all odd, whichever costs less, so that every size begins the next part on the same side.

Source of the habit: a designer's notes on grading, https://bananamoonstudio.com/pattern-grading/
"""

from __future__ import annotations

import itertools
from collections.abc import Collection, Sequence
from dataclasses import replace
from functools import lru_cache

from loopwright.grading.choose import Chosen, Problem, Sought, choose


def choose_alike(sizes: Sequence[Problem], alike: Collection[str]) -> list[Chosen | None]:
    """As `choose`, with each number named in `alike` even in every size or odd in every size; even where both cost the same.

    What was asked before is remembered: most changes of a text leave most of its numbers what they are.
    """
    return [None if c is None else dict(c) for c in _alike(tuple(sizes), frozenset(alike))]


@lru_cache(maxsize=512)
def _alike(sizes: tuple[Problem, ...], alike: frozenset[str]) -> list[Chosen | None]:
    free = sorted({s.name for p in sizes for s in p.sought if s.name in alike and s.multiple % 2})
    best: tuple[int, int, list[Chosen | None]] | None = None
    for odd in itertools.product((0, 1), repeat=len(free)):
        rests = dict(zip(free, odd, strict=True))
        held = [replace(p, sought=tuple(_held(s, rests) for s in p.sought)) for p in sizes]
        chosen = choose(held)
        missing = sum(c is None for c in chosen)
        cost = sum(s.cost(c) for p, c in zip(held, chosen, strict=True) if c is not None for s in p.sought)
        if best is None or (missing, cost) < best[:2]:
            best = (missing, cost, chosen)
    return best[2] if best is not None else []


def _held(s: Sought, rests: dict[str, int]) -> Sought:
    """The number kept to one parity: with an odd multiple every second legal number has it."""
    if s.name not in rests:
        return s
    rest = s.rest if s.rest % 2 == rests[s.name] else s.rest + s.multiple
    return replace(s, multiple=2 * s.multiple, rest=rest)
