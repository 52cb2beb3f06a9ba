"""Relaxing: every part that hangs together by itself, then all laid side by side."""

from __future__ import annotations

import time
from collections.abc import Callable

import numpy as np

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax.energy import strains
from loopwright.measuring.relax.flat import lay_flat
from loopwright.measuring.relax.graph import stitch_graph
from loopwright.measuring.relax.part import parts_of
from loopwright.measuring.relax.pose import posed
from loopwright.measuring.relax.shape import RelaxOptions, Shape
from loopwright.measuring.relax.solve import ALL_STEPS, Solver
from loopwright.measuring.relax.tops import Floats
from loopwright.model.fabric import Fabric


def relax(fabric: Fabric, sizes: StitchSizes, options: RelaxOptions | None = None) -> Shape:
    """The relaxed shape of a fabric at her sizes of stitches. Never raises for what the worker made; `why` says what went amiss.

    Parts that do not hang together are relaxed one by one and laid side by side along x. Deterministic for a seed, unless time runs out.
    """
    options = options or RelaxOptions()
    until = time.monotonic() + options.budget_s
    graph = stitch_graph(fabric, sizes, options.drawn)
    parts = parts_of(graph)
    points = np.zeros((len(graph), 3))
    words: list[str] = []
    done, edge_mm = 0, 0.0
    for part in parts:
        solver = Solver(part, options, until, _progress(options, done, len(part), len(graph)))
        lying = lay_flat(solver) if options.flat else posed(part, solver.run())
        points[part.nodes], edge_mm = _beside(lying * part.unit_mm, edge_mm, 2 * part.unit_mm)
        words.append(solver.why)
        done += len(part)
    why = next((w for w in words if w), "" if parts else "no stitches")
    if options.progress is not None:
        options.progress(1.0)
    return Shape(
        points, graph.node_of, graph.pairs, graph.rest_mm, strains(points, graph.pairs, graph.rest_mm), graph.faces, graph.face_stitch,
        graph.piece, not why, why, graph.ends, graph.end_mm,
    )


def _beside(points: Floats, edge_mm: float, gap_mm: float) -> tuple[Floats, float]:
    """Moved so that it stands to the right of what is there, and its own right edge with a gap."""
    moved = points - np.array([float(points[:, 0].min()) - edge_mm, 0.0, 0.0])
    return moved, float(moved[:, 0].max()) + gap_mm


def _progress(options: RelaxOptions, done: int, size: int, total: int) -> Callable[[int], None] | None:
    tell = options.progress
    if tell is None:
        return None

    def each(step: int) -> None:
        tell((done + size * min(1.0, step / ALL_STEPS) ** 0.5) / total)

    return each
