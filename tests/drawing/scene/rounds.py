"""Bodies to draw: rounds worked by the worker, placed on surfaces whose form is known (disc, tube, sphere, cap)."""

import itertools
import math
from collections.abc import Sequence

import numpy as np

from loopwright.drawing.scene.body import Body, strains
from loopwright.model.fabric import Fabric
from loopwright.notation import read
from loopwright.source import Source
from loopwright.working import work

WIDE_MM, TALL_MM = 5.0, 5.0


def fabric_of(counts: Sequence[int], stitch: str = "sc") -> Fabric:
    """Rounds of so many stitches, the first in a ring; every round is joined."""
    lines = ["Ring", "Terms: US", "", f"Rnd 1: {counts[0]} {stitch} in magic ring; join. ({counts[0]} {stitch})"]
    for number, (before, now) in enumerate(itertools.pairwise(counts), start=2):
        how = f"{stitch} in each st around" if now == before else f"{stitch} around, {'increasing' if now > before else 'decreasing'} evenly to {now} sts"
        lines.append(f"Rnd {number}: {how}; join. ({now} {stitch})")
    (fabric,) = work(read(Source.of("\n".join(lines)))).fabrics
    assert fabric is not None
    return fabric


def rounds_of(fabric: Fabric) -> list[list[int]]:
    """The stitches of each round that have a top of their own."""
    return [[s for s in range(row.start, row.end) if fabric.part_of(s) in ("edge", "counts")] for row in fabric.rows]


def body_of(fabric: Fabric, heights_mm: Sequence[float], radii_mm: Sequence[float]) -> Body:
    """Rounds as circles: node 0 is the middle of the ring, then one node per stitch, in the order of making."""
    rounds = rounds_of(fabric)
    node_of = np.full(len(fabric), -1)
    points = [(0.0, 0.0, heights_mm[0])]
    pairs, faces, owners = [], [], []
    for number, (stitches, z, r) in enumerate(zip(rounds, heights_mm[1:], radii_mm, strict=True)):
        for k, stitch in enumerate(stitches):
            angle = 2 * math.pi * k / len(stitches)
            node_of[stitch] = len(points)
            points.append((r * math.cos(angle), r * math.sin(angle), z))
        for k, stitch in enumerate(stitches):
            following = stitches[(k + 1) % len(stitches)]
            mine, other = int(node_of[stitch]), int(node_of[following])
            below, beyond = (0, 0) if number == 0 else (_below(fabric, node_of, stitch)[-1], _below(fabric, node_of, following)[0])
            pairs += [(mine, other), *((b, mine) for b in ([0] if number == 0 else _below(fabric, node_of, stitch)))]
            faces.append((below, mine, other, -1) if below == beyond else (below, mine, other, beyond))
            owners.append(stitch)
            under = [] if number == 0 else _below(fabric, node_of, stitch)
            faces += [(b, a, mine, -1) for a, b in itertools.pairwise(under)]
            owners += [stitch] * (len(under) - 1 if under else 0)
    place, links = np.asarray(points), np.asarray(pairs)
    rest = np.where(np.diff(links, axis=1)[:, 0] == 1, WIDE_MM, TALL_MM)
    return Body(place, node_of, links, rest, strains(place, links, rest), np.asarray(faces), np.asarray(owners), np.zeros(len(place), dtype=np.int64))


def _below(fabric: Fabric, node_of: np.ndarray, stitch: int) -> list[int]:
    return [int(node_of[p]) for p in fabric.parents(stitch)]


def disc(rounds: int = 6, stitch: str = "sc") -> tuple[Fabric, Body]:
    """A flat circle in z = 0, right side up."""
    fabric = fabric_of([6 * (i + 1) for i in range(rounds)], stitch)
    return fabric, body_of(fabric, [0.0] * (rounds + 1), [TALL_MM * (i + 1) for i in range(rounds)])


def tube(around: int = 24, rounds: int = 10) -> tuple[Fabric, Body]:
    """A tube standing upright, closed at the top by the ring, worked downward."""
    fabric = fabric_of([around] * rounds)
    radius = around * WIDE_MM / (2 * math.pi)
    return fabric, body_of(fabric, [0.0, *(-TALL_MM * i for i in range(rounds))], [radius] * rounds)


def sphere(around: int = 36) -> tuple[Fabric, Body]:
    """A ball of rounds N sin(pi k / (n + 1)), from the top down."""
    n = around // 2 - 1
    counts = [max(round(around * math.sin(math.pi * k / (n + 1))), 3) for k in range(1, n + 1)]
    radius = around * WIDE_MM / (2 * math.pi)
    fabric = fabric_of(counts)
    angles = [math.pi * k / (n + 1) for k in range(1, n + 1)]
    return fabric, body_of(fabric, [radius, *(radius * math.cos(a) for a in angles)], [radius * math.sin(a) for a in angles])


def hat(around: int = 106, deep_rounds: int = 20) -> tuple[Fabric, Body]:
    """A hat of sc: a flat crown, then a wall; crown upward, in stitches of WIDE_MM by TALL_MM. Relaxed: as long as its stitches are."""
    crown = round(around / 6)
    counts = [min(6 * (i + 1), around) for i in range(crown)] + [around] * deep_rounds
    radii = [n * WIDE_MM / (2 * math.pi) for n in counts]
    heights = [0.0]
    for before, now in zip([0.0, *radii], radii, strict=False):
        heights.append(heights[-1] - math.sqrt(max(TALL_MM**2 - (now - before) ** 2, 0.0)))
    fabric = fabric_of(counts)
    return fabric, body_of(fabric, heights, radii)
