"""Rounds from a centre as written text, any gain a round; and how they lie at a gauge."""

from __future__ import annotations

import itertools

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.flatness import faults, lies
from loopwright.model.fabric import Fabric
from loopwright.model.lies import LieFault
from loopwright.model.measures import RoundLies
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work


def disc(counts: list[int], kind: str = "sc") -> str:
    """A disc from a magic ring with these counts; what a round gains is spread evenly."""
    lines = [f"Rnd 1: {counts[0]} {kind} in magic ring. ({counts[0]})"]
    for n, (before, now) in enumerate(itertools.pairwise(counts), start=2):
        op = "increasing" if now > before else "decreasing"
        told = f"{kind} in each st around" if now == before else f"{kind} around, {op} {abs(now - before)} sts evenly"
        lines.append(f"Rnd {n}: {told}. ({now})")
    return "\n".join(lines) + "\n"


def fabric(text: str) -> Fabric:
    """The fabric of a text in US terms."""
    found = work(read(Source.of(text), "us")).fabrics[0]
    assert found is not None
    return found


def lie(text: str, sizes: StitchSizes) -> tuple[RoundLies, ...]:
    """How its rounds lie."""
    woven = fabric(text)
    return lies(woven, courses(woven, sizes), sizes)


def at_fault(text: str, sizes: StitchSizes) -> tuple[LieFault, ...]:
    """Its faults."""
    return faults(fabric(text), None, sizes)
