"""Plain forms as written patterns, and what is read off their shapes."""

from __future__ import annotations

from itertools import pairwise

import numpy as np

from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import Graph, Shape, stitch_graph
from loopwright.measuring.relax.curvature import angle_deficits, inner_nodes
from loopwright.model.fabric import Fabric
from tests.working.woven import woven

WIDTH_MM = 10.0
# Height over width at ordinary gauge, from examples of gauge published for each stitch (trade/data/stitches.toml); tr from memory.
USUAL = {"sc": 0.92, "hdc": 1.30, "dc": 1.88, "tr": 2.65}
FOUNDATION = {"sc": (1, "2nd"), "hdc": (2, "3rd"), "dc": (2, "4th")}


def sizes(kind: str, height: float | None = None) -> StitchSizes:
    """Stitches 10 mm wide; `height` in widths."""
    return StitchSizes(WIDTH_MM, WIDTH_MM * (USUAL[kind] if height is None else height), kind)


def disc(kind: str, rate: int, rounds: int, even: int = 0) -> str:
    """So many more stitches each round, the increases of one round not over those of the last; then even rounds."""
    lines = [f"Rnd 1: {rate} {kind} in magic ring; join with sl st to first {kind}."]
    for n in range(2, rounds + 1):
        before = int((n - 2) * ((n * 0.618) % 1))
        after = n - 2 - before
        parts = [f"{kind} in next {before} sts"] * (before > 0) + [f"2 {kind} in next st"] + [f"{kind} in next {after} sts"] * (after > 0)
        lines.append(f"Rnd {n}: *{', '.join(parts)}; rep from * around; join.")
    lines += [f"Rnd {n}: {kind} in each st around; join." for n in range(rounds + 1, rounds + even + 1)]
    return "\n".join(lines)


def rounds(counts: list[int], kind: str = "sc") -> str:
    """Rounds of these counts, increases and decreases spread evenly."""
    lines = [f"Rnd 1: {counts[0]} {kind} in magic ring; join with sl st to first {kind}."]
    for n, (have, want) in enumerate(pairwise(counts), 2):
        how = "increasing" if want > have else "decreasing"
        body = f"{kind} in each st around" if want == have else f"Ch 1, {kind} around, {how} {abs(want - have)} sts evenly"
        lines.append(f"Rnd {n}: {body}; join.")
    return "\n".join(lines)


def tube(kind: str, around: int, tall: int) -> str:
    return (
        f"Ch {around}, join with sl st to form a ring.\nRnd 1: {kind} in each ch around; join with sl st to first {kind}.\n"
        f"Rnds 2-{tall}: {kind} in each st around; join."
    )


def rectangle(kind: str, wide: int, tall: int) -> str:
    more, first = FOUNDATION[kind]
    turn = {"sc": "Ch 1", "hdc": "Ch 2 (counts as hdc)", "dc": "Ch 3 (counts as dc)"}[kind]
    counts = "" if kind == "sc" else f" (counts as 2 {kind})" if kind == "dc" else " (skipped chs count as hdc)"
    return (
        f"Ch {wide + more}.\nRow 1: {kind} in {first} ch from hook{counts} and in each ch across, turn.\n"
        f"Rows 2-{tall}: {turn}, {kind} in each st across, turn."
    )


def granny(many: int) -> str:
    lines = [
        "Ch 4, join with sl st to form a ring.",
        "Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times; join with sl st to top of ch-3.",
    ]
    for i in range(2, many + 1):
        side = f", (3 dc in next ch-1 sp, ch 1) {i - 2} times" if i > 2 else ""
        lines.append(
            f"Rnd {i}: Sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1{side}, "
            f"*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1{side}; rep from * twice more; join with sl st to top of ch-3."
        )
    return "\n".join(lines)


def oval(straight: int, many: int) -> str:
    """Sc around both sides of a chain, six more each round, in the middle of the sixths of the ends."""
    lines = [
        f"Ch {straight + 3}.",
        (
            f"Rnd 1: 2 sc in 2nd ch from hook, sc in each of next {straight} ch, 3 sc in last ch; working along the other side of the ch, "
            f"sc in each of next {straight} ch, sc in same ch as first 2 sc; join with sl st to first sc."
        ),
        (
            f"Rnd 2: Ch 1, 2 sc in each of first 2 sts, sc in each of next {straight} sts, 2 sc in each of next 3 sts, "
            f"sc in each of next {straight} sts, 2 sc in last st; join."
        ),
    ]
    for n in range(3, many + 1):
        before, after = (n - 2) // 2, n - 2 - (n - 2) // 2
        grow = ", ".join([f"sc in each of next {before} sts"] * (before > 0) + ["2 sc in next st", f"sc in each of next {after} sts"])
        lines.append(
            f"Rnd {n}: Ch 1, ({grow}) twice, sc in each of next {straight} sts, ({grow}) 3 times, sc in each of next {straight} sts, {grow}; join."
        )
    return "\n".join(lines)


MITT = (
    "Ch 28, join with sl st to form a ring.\nRnd 1: Ch 1, hdc in each ch around; join with sl st to first hdc. (28 hdc)\n"
    "Rnds 2-9: Ch 1, hdc in each st around; join. (28 hdc)\n"
    "Rnd 10: Ch 1, hdc in each of next 2 sts, ch 6, skip next 6 sts, hdc in each st to end; join. (28 sts, the ch counted)\n"
    "Rnd 11: Ch 1, hdc in each st and in each ch around; join. (28 hdc)\nRnds 12-18: Ch 1, hdc in each st around; join. (28 hdc)\n"
    "Rnd 19: Ch 1, (hdc in next 5 sts, hdc2tog) 4 times; join. (24 hdc)\nRnd 20: Ch 1, (hdc in next 4 sts, hdc2tog) 4 times; join. (20 hdc)\n"
    "Rnd 21: Ch 1, (hdc in next 3 sts, hdc2tog) 4 times; join. (16 hdc)\nRnd 22: Ch 1, (hdc in next 2 sts, hdc2tog) 4 times; join. (12 hdc)\n"
    "Fasten off.\n\nThumb\n"
    "Rnd 1: Join yarn in first missed st of the thumb opening, ch 1, hdc in each of the 6 missed sts, hdc in the other side of each of the "
    "6 ch; join with sl st to first hdc. (12 hdc)\nRnds 2-7: Ch 1, hdc in each st around; join. (12 hdc)\n"
)


def made(text: str) -> Fabric:
    return woven(text)


def ring(graph: Graph, row: int) -> np.ndarray:
    """The nodes along a row's top."""
    return graph.along.node[graph.along.start[row] : graph.along.start[row + 1]]


def around_mm(shape: Shape, graph: Graph, row: int) -> float:
    p = shape.points[ring(graph, row)]
    return float(np.linalg.norm(p - np.roll(p, -1, axis=0), axis=1).sum())


def across_mm(shape: Shape, graph: Graph, row: int) -> float:
    """Twice the mean distance of a round from its middle."""
    p = shape.points[ring(graph, row)]
    return float(2 * np.linalg.norm(p - p.mean(axis=0), axis=1).mean())


def triangles(shape: Shape) -> np.ndarray:
    f = shape.faces
    return np.concatenate([f[:, :3], f[f[:, 3] >= 0][:, [0, 2, 3]]])


def edge_lengths(tris: np.ndarray, x: np.ndarray) -> np.ndarray:
    """(t, 3) lengths of the edges 01, 12, 20 as they lie."""
    return np.stack([np.linalg.norm(x[tris[:, i]] - x[tris[:, (i + 1) % 3]], axis=1) for i in range(3)], axis=1)


def curvature(shape: Shape) -> float:
    """Total curvature inside: the angle deficits of all nodes that are not on a rim."""
    tris = triangles(shape)
    return float(angle_deficits(tris, edge_lengths(tris, shape.points), len(shape.points)).sum())


def turning(shape: Shape) -> float:
    """Turning of the rim: pi less the angles of the faces at each node of the rim."""
    tris, n = triangles(shape), len(shape.points)
    sides = edge_lengths(tris, shape.points)
    a, b, c = sides[:, 1], sides[:, 2], sides[:, 0]
    corners = np.arccos(np.stack([(b * b + c * c - a * a) / (2 * b * c), (c * c + a * a - b * b) / (2 * c * a), (a * a + b * b - c * c) / (2 * a * b)], axis=1))
    total = np.bincount(tris.ravel(), weights=corners.ravel(), minlength=n)
    rim = ~inner_nodes(tris, n)
    rim[np.setdiff1d(np.arange(n), tris)] = False
    return float((np.pi - total[rim]).sum())


def flatness(shape: Shape) -> float:
    """Root mean square height over the best plane, as a share of the length."""
    p = shape.points - shape.points.mean(axis=0)
    _, _, axes = np.linalg.svd(p, full_matrices=False)
    return float(np.sqrt(np.square(p @ axes[2]).mean()) / np.ptp(p @ axes[0]))


def graph_of(text: str, kind: str) -> Graph:
    return stitch_graph(made(text), sizes(kind))
