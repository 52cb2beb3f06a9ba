"""Charts as drawings of graphs, against neato and sfdp of graphviz: time, stress, crossings, stitches on one another.

The graph of a chart: a node for every symbol, an edge from each to the next of its row and to the stitch that it was worked into, as long
as symbols are wide and tall. Stitches in one space share out its chains in order, a start chain that counts is one node, and slip stitches
that only carry the yarn on to a new start are none. All get the same graph and lengths (neato as `len`; sfdp knows none).

Stress is that of Kamada and Kawai, "An algorithm for drawing general undirected graphs" (Information Processing Letters 31, 1989), as
Gansner, Koren and North minimise it ("Graph drawing by stress majorization", 2004; both from memory): the sum over pairs of
(distance - d)² / d², here over the number of pairs, after the one scale that makes it least. It is taken twice. With d the distance of two
stitches in the fabric as it lies relaxed, it tells how good a map of the fabric a drawing is. With d the shortest way along edges it is
what neato itself makes least, and neato is lower; that is printed too, as a target that is missed: once with edges as long as symbols are
wide and tall, once with edges as long as the gauge makes the stitches, both programs and we given the same lengths each time.
"""

from __future__ import annotations

import re
import resource
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import pairwise
from typing import Any, NamedTuple

import numpy as np

from benchmarks.clock import best
from benchmarks.figures import Lines, blanket, worked
from loopwright.drawing.chart.columns import GAP
from loopwright.drawing.chart.drawn import Laid, Mark
from loopwright.drawing.chart.laid import lay
from loopwright.drawing.chart.sections import sections
from loopwright.drawing.chart.symbols import AIR, height, width
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import RelaxOptions, relax
from loopwright.model.fabric import Fabric

SIZES = StitchSizes(5.0, 9.4, "dc")
CHAIN = 12.6
NEAR = 6.5  # units of the drawing; nearer than half a bar: two symbols on one another
RELAX_S = 20.0
LEAST = 0.5  # stitches that lie in one place have no distance
INCH = 72.0

SQUARE = (
    "Ch 4, join with sl st to form a ring.\n"
    "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, *3 dc in ring, ch 2; rep from * twice more; join with sl st to top of ch-3.\n"
    "Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, "
    "*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1; rep from * twice more; join.\n"
    + "".join(
        f"Rnd {n}: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, "
        f"(3 dc in next ch-1 sp, ch 1) {n - 2} times, "
        f"*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, (3 dc in next ch-1 sp, ch 1) {n - 2} times; rep from * twice more; join.\n"
        for n in range(3, 9)
    )
)
DISC = "Rnd 1: 12 dc in magic ring; join with sl st to first dc.\nRnd 2: 2 dc in each st around; join.\n" + "".join(
    f"Rnd {n}: *Dc in next {n - 2} sts, 2 dc in next st; rep from * around; join.\n" for n in range(3, 11)
)
SHELLS = (
    "Ch 74.\nRow 1 (RS): Sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * across, turn.\n"
    "Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; "
    "rep from * to last shell, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.\n"
    "Row 3: Ch 1, sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * across, turn.\n"
)
TEXTS = {"disc of dc": DISC, "motif of groups and spaces": SQUARE, "rows of shells": SHELLS, "blanket of sc": blanket(1_000)}


class Graph(NamedTuple):
    """A chart as a graph: our places of its n nodes (n × 2), its edges (m × 2) and how long each should be (m)."""

    points: Any
    edges: Any
    lengths: Any


def graph_of(fabric: Fabric, laid: Laid, *, gauge: bool = False) -> Graph:
    """The graph of a chart, and where we put its nodes; edges as long as symbols are, or as `gauge` makes the stitches."""
    marks = _marks(fabric, laid)
    at = {m.stitch: n for n, m in enumerate(marks)}
    kinds = [fabric.kinds[fabric.counts_as.get(m.stitch, fabric.kind[m.stitch])] if gauge else m.kind for m in marks]
    wide = [SIZES.width(k) if gauge else CHAIN if k == "ch" else width(k) + GAP for k in kinds]
    edges: dict[tuple[int, int], float] = {}
    ordered = sorted(at)
    for a, b in pairwise(ordered):
        if fabric.row[a] == fabric.row[b] and fabric.part_of(b) != "join":
            edges[at[a], at[b]] = (wide[at[a]] + wide[at[b]]) / 2
    together = Counter((fabric.row[s], fabric.parents(s)) for s in ordered if fabric.part_of(s) != "join")
    before: Counter[tuple[int, tuple[int, ...]]] = Counter()
    for s in ordered:
        below, place = [p for p in fabric.parents(s) if p in at], (fabric.row[s], fabric.parents(s))
        if below and fabric.part_of(s) != "join":
            chosen = below[before[place] * len(below) // together[place]]
            kind = fabric.kinds[fabric.counts_as.get(s, fabric.kind[s])]
            edges.setdefault((at[s], at[chosen]), SIZES.height(kind) if gauge else height(kind) + AIR)
            before[place] += 1
    points, pairs, lengths = np.array([m.top for m in marks]), np.array(list(edges)), np.array(list(edges.values()))
    drawn = np.mean(np.hypot(*(points[pairs[:, 0]] - points[pairs[:, 1]]).T))
    return Graph(points, pairs, lengths * drawn / np.mean(lengths) if gauge else lengths)


def _marks(fabric: Fabric, laid: Laid) -> list[Mark]:
    return [m for m in laid.marks if fabric.part_of(m.stitch) not in ("move", "stands")]


def against_graphviz() -> Lines:
    """Our layout against both programs on the same graphs; nothing, with a word, where graphviz is not installed."""
    if shutil.which("neato") is None or shutil.which("sfdp") is None:
        print("neato and sfdp of graphviz are not installed: charts are not compared with them", file=sys.stderr)
        return
    for name, text in TEXTS.items():
        yield from _compared(name, text)


def _compared(name: str, text: str) -> Iterator[tuple[str, float, str, float]]:
    fabric = worked(text).fabrics[0]
    section = sections(fabric, SIZES, whole=True)[0]
    seconds = best(lambda: lay(fabric, section), 3)
    laid = lay(fabric, section)
    graph = graph_of(fabric, laid)
    along, lying = _ways(graph), _lying(fabric, laid)
    times, points = zip(*(_graphviz(program, graph) for program in ("neato", "sfdp")), strict=True)
    ours, theirs, springs = (_stress(p, lying) for p in (graph.points, *points))
    edges, theirs_e = _stress(graph.points, along), _stress(points[0], along)
    crossed, neato, sfdp = (_crossings(p, graph.edges) for p in (graph.points, *points))
    close, *close_theirs = (_close(p, graph) for p in (graph.points, *points))
    yield f"chart of a {name}, {len(graph.points):,} symbols: laid out in ms", seconds * 1000, "<=", 300
    yield "    times as fast as neato", times[0] / seconds, ">=", 5
    yield "    times as fast as sfdp", times[1] / seconds, ">=", 1
    yield f"    stress {ours:.4f} (sfdp {springs:.4f}) as a share of neato's", ours / theirs, "<=", 1
    yield f"    stress along edges {edges:.4f} (neato {theirs_e:.4f}) as a share of neato's", edges / theirs_e, "<=", 1
    true = graph_of(fabric, laid, gauge=True)
    by_gauge, theirs_g = (_stress(p, _ways(true)) for p in (true.points, _graphviz("neato", true)[1]))
    yield f"      lengths of the gauge: {by_gauge:.4f} (neato {theirs_g:.4f})", by_gauge / theirs_g, "<=", 1
    yield f"    crossings (neato {neato}, sfdp {sfdp})", crossed, "<=", 0
    yield f"    stitches on one another (neato {close_theirs[0]}, sfdp {close_theirs[1]})", close, "<=", 0


def _lying(fabric: Fabric, laid: Laid) -> Any:
    """How far stitches lie from each other in the relaxed fabric, mm; 0 for those that have no place of their own there."""
    shape = relax(fabric, SIZES, RelaxOptions(budget_s=RELAX_S))
    node = np.array([shape.node_of[m.stitch] for m in _marks(fabric, laid)])
    points = shape.points[np.maximum(node, 0)]
    apart = np.linalg.norm(points[:, None] - points[None], axis=2)
    apart[node < 0] = 0
    apart[:, node < 0] = 0
    return apart


def _graphviz(program: str, graph: Graph) -> tuple[float, Any]:
    """Seconds of processor time of a program, and where it puts the nodes."""
    pairs = zip(graph.edges.tolist(), (graph.lengths / INCH).tolist(), strict=True)
    dot = "graph{node[shape=point];" + ";".join(f"{a}--{b}[len={long:.4f}]" for (a, b), long in pairs) + "}"
    done: list[str] = []

    def run() -> None:
        done.append(subprocess.run([program, "-Tplain"], input=dot, capture_output=True, text=True, check=True).stdout)

    seconds = _children(run)
    points = np.zeros_like(graph.points)
    for node, x, y in re.findall(r"(?m)^node (\d+) (\S+) (\S+)", done[-1]):
        points[int(node)] = float(x) * INCH, float(y) * INCH
    return seconds, points


def _children(run: Callable[[], None]) -> float:
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    run()
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def _ways(graph: Graph) -> Any:
    """The shortest way along edges between all nodes."""
    from scipy.sparse import coo_matrix
    from scipy.sparse.csgraph import shortest_path

    many = len(graph.points)
    matrix = coo_matrix((graph.lengths, graph.edges.T), shape=(many, many))
    return shortest_path(matrix.tocsr(), directed=False)


def _stress(points: Any, ways: Any) -> float:
    first, second = np.triu_indices(len(points), 1)
    d = ways[first, second]
    known = np.isfinite(d) & (d > LEAST)
    first, second, d = first[known], second[known], d[known]
    apart = np.hypot(*(points[first] - points[second]).T)
    scale = np.sum(apart / d) / np.sum((apart / d) ** 2)
    return float(np.mean((scale * apart / d - 1) ** 2))


def _crossings(points: Any, edges: Any) -> int:
    """Pairs of edges without a common node that cross."""
    a, b = points[edges[:, 0]], points[edges[:, 1]]
    found = 0
    for i in range(len(edges)):
        rest = slice(i + 1, None)
        p, q, r, s = a[i], b[i], a[rest], b[rest]
        apart = (edges[rest] != edges[i, 0]).all(axis=1) & (edges[rest] != edges[i, 1]).all(axis=1)
        one = _side(p, q, r) * _side(p, q, s) < 0
        found += int(np.sum(apart & one & (_side(r, s, p) * _side(r, s, q) < 0)))
    return found


def _side(a: Any, b: Any, c: Any) -> Any:
    return (b[..., 0] - a[..., 0]) * (c[..., 1] - a[..., 1]) - (b[..., 1] - a[..., 1]) * (c[..., 0] - a[..., 0])


def _close(points: Any, graph: Graph) -> int:
    """Pairs of nodes nearer than half a bar, where edges are on the mean as long as in our chart."""
    from scipy.spatial import cKDTree

    ours, theirs = (np.mean(np.hypot(*(p[graph.edges[:, 0]] - p[graph.edges[:, 1]]).T)) for p in (graph.points, points))
    return len(cKDTree(points * ours / theirs).query_pairs(NEAR))
