"""What the relaxed shape is timed and measured against. Each function gives lines: what it is, the figure, ">=" or "<=", the target."""

from __future__ import annotations

import contextlib
import math
import re
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import numpy as np

from benchmarks.bench_fabric import square
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import Graph, RelaxOptions, Shape, relax, stitch_graph
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

Lines = Iterator[tuple[str, float, str, float]]
DESIGNS = Path(__file__).parents[1] / "designs"
DOUBLE = StitchSizes(10.0, 18.8, "dc")
# A peer that has not come as far after so many seconds is counted as if it just had.
PATIENCE_S = 90.0
# Mean strain from which a first picture looks like the thing.
LOOKS_RIGHT = 0.012


def woven(text: str) -> Fabric:
    """The fabric of a written pattern."""
    fabric = work(read(Source.of(text), "us")).fabrics[0]
    if fabric is None:
        raise AssertionError("nothing was woven")
    return fabric


def disc(rate: int, rounds: int, even: int = 0) -> str:
    """Double crochet in rounds, so many more each round, then even."""
    lines = [f"Rnd 1: {rate} dc in magic ring; join with sl st to first dc.", "Rnd 2: 2 dc in each st around; join."]
    lines += [f"Rnd {n}: *dc in next {n - 2} sts, 2 dc in next st; rep from * around; join." for n in range(3, rounds + 1)]
    lines += [f"Rnd {n}: dc in each st around; join." for n in range(rounds + 1, rounds + even + 1)]
    return "\n".join(lines)


def blanket(side: int) -> str:
    """A square of so many double crochet by so many rows."""
    return (
        f"Ch {side + 2}.\nRow 1: Dc in 4th ch from hook (counts as 2 dc) and in each ch across, turn.\n"
        f"Rows 2-{side}: Ch 3 (counts as dc), dc in each st across, turn."
    )


def elapsed(run: Callable[[], Any], runs: int = 1) -> tuple[float, Any]:
    """Seconds on the wall of the quickest run, as the budget of a shape is kept on the wall; and its result."""
    best, result = math.inf, None
    for _ in range(runs):
        begin = time.perf_counter()
        result = run()
        best = min(best, time.perf_counter() - begin)
    return best, result


def edge_error(points: Any, graph: Graph) -> float:
    """Mean share by which edges are off their rest length, after the best scaling."""
    x = np.asarray(points, float)
    length = np.linalg.norm(x[graph.pairs[:, 0]] - x[graph.pairs[:, 1]], axis=1)
    length *= float(length @ graph.rest_mm) / max(float(length @ length), 1e-12)
    return float(np.abs(length / graph.rest_mm - 1).mean())


def ours(fabric: Fabric, budget_s: float = 60.0) -> tuple[float, Shape]:
    """Building and relaxing, to rest or for so many seconds."""
    return elapsed(lambda: relax(fabric, DOUBLE, RelaxOptions(budget_s=budget_s)), 2)


def layouts() -> Lines:
    """About 5,000 stitches against the layouts of igraph on the same graph; they take no lengths, so their error is no fault of theirs."""
    import igraph

    fabric = woven(disc(12, 28))
    graph = stitch_graph(fabric, DOUBLE)
    seconds, shape = ours(fabric)
    error = edge_error(shape.points, graph)
    web = igraph.Graph(n=len(graph), edges=graph.pairs.tolist())
    for name, layout in (("FR", "fruchterman_reingold_3d"), ("KK", "kamada_kawai_3d")):
        theirs, found = elapsed(lambda layout=layout: web.layout(layout))  # type: ignore[misc]
        yield f"{len(graph)} stitches relaxed, times as fast as igraph {name} in 3-D", theirs / seconds, ">=", 20
        yield f"    share of its edge error ({100 * error:.2f} %)", error / edge_error(found.coords, graph), "<=", 0.1


def spring_layout() -> Lines:
    """The first picture of about 20,000 stitches against graphviz sfdp in three dimensions."""
    program = shutil.which("sfdp")
    if program is None:
        print("sfdp of graphviz is not installed: not compared", file=sys.stderr)
        return
    fabric = woven(disc(12, 57))
    graph = stitch_graph(fabric, DOUBLE)
    seconds, shape = _until(fabric, LOOKS_RIGHT)
    dot = "graph{" + ";".join(f"{i}--{j}" for i, j in graph.pairs.tolist()) + "}"
    words = [program, "-Gdim=3", "-Gdimen=3", "-Tdot"]
    theirs, done = elapsed(lambda: subprocess.run(words, input=dot, capture_output=True, text=True, check=True))
    points = np.zeros((len(graph), 3))
    for node, place in re.findall(r'(?m)^\s*(\d+)\s*\[[^\]]*?pos="([^"]+)"', done.stdout):
        points[int(node)] = [float(v) for v in place.replace("!", "").split(",")[:3]]
    error = edge_error(shape.points, graph)
    yield f"first picture of {len(graph)} stitches, times as fast as sfdp in 3-D", theirs / seconds, ">=", 4
    yield f"    share of its edge error ({100 * error:.2f} %)", error / edge_error(points, graph), "<=", 0.1


def first_picture() -> Lines:
    """How long until there is something to look at, building included, on the wall: until edges are off by no more than a stated share."""
    for name, text, target in (
        ("hat of 20,000", disc(12, 20, 72), 1.5), ("blanket of 20,000", blanket(141), 1.5),
        ("hat of 100,000", disc(12, 40, 188), 8.0), ("blanket of 100,000", blanket(316), 8.0),
    ):
        fabric = woven(text)
        seconds, shape = _until(fabric, LOOKS_RIGHT)
        strain = 100 * shape.measures().strain_mean
        yield f"{name} stitches ({len(shape.points):,}) until the mean strain is {strain:.2f} % (1.2 or less), s", seconds, "<=", target
    seconds, _ = elapsed(lambda: stitch_graph(fabric, DOUBLE), 3)
    yield "    building the graph of the last, s", seconds, "<=", 1.0


def _until(fabric: Fabric, strain: float) -> tuple[float, Shape]:
    """Seconds of the shortest run whose mean strain is no more than that: each run is given two fifths longer than the last."""
    budget = 0.2
    while True:
        seconds, shape = ours(fabric, budget)
        if shape.measures().strain_mean <= strain or budget > PATIENCE_S or shape.settled:
            return seconds, shape
        budget *= 1.4


def plain_descent() -> Lines:
    """The same energy from the same start by the plain L-BFGS of scipy, until it is within 5 % of the best energy."""
    for text in (disc(12, 14, 20), disc(12, 20, 63), disc(16, 25)):
        seconds, theirs, n = _race(text)
        yield f"{n} stitches, times as fast as plain L-BFGS to 5 % of the best energy", theirs / seconds, ">=", 5


class Enough(Exception):  # noqa: N818 - no failure: the goal is reached
    """Ends a descent at its goal."""


class Watched:
    """An energy that ends the descent where it is low enough, or where patience ends."""

    def __init__(self, energy: Any, goal: float) -> None:
        self.energy, self.goal, self.begun = energy, goal, time.perf_counter()
        self.bending, self.laplacian = energy.bending, energy.laplacian

    def __call__(self, x: Any) -> tuple[float, Any]:
        """Energy and gradient."""
        value, gradient = self.energy(x)
        if value <= self.goal or time.perf_counter() - self.begun > PATIENCE_S:
            raise Enough
        return value, gradient

    def flat(self, x: Any) -> tuple[float, Any]:
        """The same for coordinates in a line."""
        value, gradient = self(x.reshape(-1, 3))
        return value, gradient.ravel()

    def timed(self, run: Callable[[], object]) -> float:
        """Seconds until the goal."""
        self.begun = time.perf_counter()
        with contextlib.suppress(Enough):
            run()
        return time.perf_counter() - self.begun


def _race(text: str) -> tuple[float, float, int]:
    """Seconds of ours, factoring included, and of scipy's; the number of nodes."""
    from scipy.optimize import minimize

    from loopwright.measuring.relax.descent import Factor, Limits, descend
    from loopwright.measuring.relax.part import parts_of
    from loopwright.measuring.relax.starts import by_distance

    part = parts_of(stitch_graph(woven(text), DOUBLE))[0]
    energy: Any = part.energy(RelaxOptions().bending)
    start = by_distance(part.pairs, part.rest, len(part)) + np.random.default_rng(1).normal(0, 0.02, (len(part), 3))
    watched: Any = Watched(energy, 1.05 * descend(energy, Factor(energy, start), start, Limits(1000)).energy)
    mine = min(watched.timed(lambda: descend(watched, Factor(energy, start), start, Limits(1000))) for _ in range(5))
    options = {"maxcor": 8, "maxiter": 100_000, "maxfun": 100_000, "ftol": 0.0, "gtol": 0.0}
    theirs = watched.timed(lambda: minimize(watched.flat, start.ravel(), jac=True, method="L-BFGS-B", options=options))
    return mine, theirs, len(part)


def strained() -> Lines:
    """Mean strain of what makers make."""
    from loopwright.grading import grade
    from loopwright.grading.gauge import sizes_from

    yield "mean strain of a disc of 12 rounds, %", 100 * relax(woven(disc(12, 12)), DOUBLE).measures().strain_mean, "<=", 1.2
    yield "mean strain of a hat, %", 100 * relax(woven(disc(12, 6, 8)), DOUBLE).measures().strain_mean, "<=", 1.2
    yield "mean strain of a granny square of 6 rounds, %", 100 * relax(woven(square(6)), DOUBLE).measures().strain_mean, "<=", 5
    for name, kind, target in (("avocet-bonnet", "hdc", 1.2), ("sandpiper-mitts", "hdc", 4), ("samphire-beanie", "hdc", 1.2)):
        document = read(Source.of((DESIGNS / f"{name}.txt").read_text(encoding="utf-8")))
        graded = grade(document, work)
        if graded.report is None or graded.gauge is None or graded.report.fabrics[1] is None:
            raise AssertionError(f"{name} was not graded")
        shape = relax(graded.report.fabrics[1], sizes_from(graded.gauge, kind))
        yield f"mean strain of {name}, %", 100 * shape.measures().strain_mean, "<=", target


FIGURES: dict[str, Callable[[], Lines]] = {
    "layouts": layouts, "sfdp": spring_layout, "picture": first_picture, "descent": plain_descent, "strain": strained,
}
