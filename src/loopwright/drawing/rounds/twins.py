"""The second sleeve of a garment whose sleeve is worked twice and was laid down once: its mirror image, on a body alike on both sides.

Only one armhole holds a sleeve, and the body hangs to that side; so the half with the sleeve is shown twice.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

import numpy as np

from loopwright.drawing.rounds.laid import LaidOut
from loopwright.drawing.scene.body import Floats, Ints
from loopwright.drawing.scene.buffers import Buffers
from loopwright.drawing.scene.cells import rows_stood_in
from loopwright.drawing.scene.surface import unit
from loopwright.measuring.parts import Part
from loopwright.record import record


@record
class Twin:
    """Rows of a sleeve, and the plane about which the other one is its image: `across` (3,) of length one, `middle_mm` along it."""

    rows: frozenset[int]
    across: Floats
    middle_mm: float

    def places(self, points: Floats) -> Floats:
        """Places on the other side of the plane."""
        return np.asarray(points - 2 * np.outer(points @ self.across - self.middle_mm, self.across))


def with_twin(laid: LaidOut, sleeve: Part, points: Floats) -> tuple[Floats, Twin]:
    """The places of the nodes with the half of the body that has no sleeve as the image of the other, and the sleeve's own image."""
    rows = frozenset(range(sleeve.rows[0], sleeve.rows[1] + 1))
    found = points.copy()
    pairs = list(_rows(laid, sleeve.piece, rows))
    ways = [points[row[len(row) // 2 :]].mean(axis=0) - points[row[: len(row) // 2]].mean(axis=0) for row in pairs]
    way = np.asarray([1.0, 0.0, 0.0])
    across = unit(sum((w if w @ way >= 0 else -w for w in ways), np.zeros(3)), (1.0, 0.0, 0.0))
    ahead = unit(np.asarray([0.0, 0.0, 1.0]) - across[2] * across)
    mine = laid.body.piece == sleeve.piece
    found[mine] = points[mine] @ np.stack((across, np.cross(ahead, across), ahead), axis=1)  # straight to the eye
    across, points = way, found.copy()
    ways = [points[row[len(row) // 2 :]].mean(axis=0) - points[row[: len(row) // 2]].mean(axis=0) for row in pairs]
    # through the middles of the rows, so that both halves meet there
    middle = float(np.mean([(points[[row[(len(row) - 1) // 2], row[len(row) // 2]]] @ across).mean() for row in pairs]))
    twin = Twin(rows, across, middle)
    nodes = np.concatenate([laid.nodes_of(i) for i in sorted(rows)])
    side = np.sign(float((points[nodes] @ across).mean()) - middle)
    for row, to_end in zip(pairs, ways, strict=True):
        kept = row if side * float(to_end @ across) < 0 else row[::-1]  # the half with the sleeve first
        half = len(kept) // 2
        found[kept[::-1][:half]] = twin.places(points[kept[:half]])
        if len(kept) % 2:
            found[kept[half]] -= (points[kept[half]] @ across - middle) * across
    return found, twin


def _rows(laid: LaidOut, piece: int, left: frozenset[int]) -> Iterator[Ints]:
    """The nodes of the body's rows, each from end to end; of skipped chains that count as a stitch, in the row that counts them."""
    stands_in = rows_stood_in(laid.fabric)[:-1]
    for c in laid.rows:
        nodes = laid.body.node_of[stands_in == c.index]
        nodes = nodes[nodes >= 0]
        if c.row.piece == piece and c.index not in left and c.way != "round" and len(nodes) > 1:
            yield nodes


def twinned(drawn: Buffers, twin: Twin | None) -> Buffers:
    """With the other sleeve."""
    if twin is None:
        return drawn
    chosen = np.isin(drawn.triangle_row, list(twin.rows))
    first = len(drawn.positions)
    corners = drawn.indices[chosen][:, ::-1]
    used = np.zeros(first, dtype=bool)
    used[corners.reshape(-1)] = True
    image = drawn.positions.copy()
    image[used] = twin.places(drawn.positions[used].astype(np.float64)).astype(np.float32)
    turned = drawn.normals - 2 * np.outer(drawn.normals @ twin.across, twin.across)
    return replace(
        drawn, positions=np.concatenate((drawn.positions, image)), indices=np.concatenate((drawn.indices, corners + np.uint32(first))),
        normals=np.concatenate((drawn.normals, turned.astype(np.float32))),
        colours=np.concatenate((drawn.colours, drawn.colours)), sheet=np.concatenate((drawn.sheet, drawn.sheet[chosen])),
    )
