"""A picture of the fabric as it looks: for a preview, a listing, a page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from loopwright.drawing.rounds.laid import ABOVE, LaidOut, facing, laid_out
from loopwright.drawing.scene.body import Floats
from loopwright.drawing.scene.buffers import Buffers, buffers
from loopwright.drawing.scene.colours import Colour
from loopwright.drawing.scene.picture import as_png, picture
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import Shape
from loopwright.model.fabric import Fabric

AZIMUTH = 20.0
TRIANGLES = 400_000
_GAP_SHARE = 0.08


@dataclass(frozen=True, slots=True)
class FabricPicture:
    """A PNG with a clear ground, its size, and what it shows in words. `flat`: seen from above as it lies."""

    png: bytes
    width_px: int
    height_px: int
    description: str
    flat: bool
    notes: tuple[str, ...] = ()


def fabric_picture(
    fabric: Fabric, sizes: StitchSizes, *, shape: Shape | None = None, palette: Mapping[str, Colour] | None = None, width_px: int = 1000,
    title: str = "", opening_up: bool | None = None, budget_s: float = 20.0,
) -> FabricPicture:
    """The fabric stitch by stitch, with light: flat pieces from above with the first row below, others from the front and a little above.

    `shape`: where it is relaxed already; `palette`: colours by their names in the pattern. Raises ValueError for a width that
    `scene.picture` does not make.
    """
    laid = laid_out(fabric, sizes, shape, opening_up=opening_up, budget_s=budget_s)
    body = laid.body.at(_turned(laid)) if laid.flat and len(laid.body.points) else laid.body
    ties = frozenset(i for p in laid.parts if p.kind == "tie" for i in range(p.rows[0], p.rows[1] + 1))
    drawn = _without(buffers(fabric, body, palette, budget=TRIANGLES), ties)
    view = (0.0, 90.0) if laid.flat else (AZIMUTH, ABOVE)
    height = _height_px(drawn.positions.astype(np.float64), view, width_px)
    pixels = picture(drawn, view=view, width_px=width_px, height_px=height, background=(255, 255, 255, 0))
    kinds = {k: n for row in fabric.rows for k, n in fabric.counted(row).items() if n}
    seen = "lying flat, seen from above" if laid.flat else "seen from the front and a little above"
    what = f"{title or 'The fabric'}, {seen}: {len(fabric.rows)} rows of {', '.join(list(kinds)[:4]) or 'chains'}."
    what += " Ties are left out." if ties else ""
    return FabricPicture(as_png(pixels), width_px, height, what, laid.flat, drawn.notes)


def _without(drawn: Buffers, rows: frozenset[int]) -> Buffers:
    """Without some rows: ties are so long that nothing else would be seen."""
    keep = ~np.isin(drawn.triangle_row, list(rows))
    if not rows or keep.all() or not keep.any():
        return drawn
    positions = drawn.positions.copy()
    used = np.zeros(len(positions), dtype=bool)
    used[drawn.indices[keep].reshape(-1)] = True
    positions[~used] = positions[used][0]
    return replace(drawn, positions=positions, indices=drawn.indices[keep], sheet=drawn.sheet[keep])


def _turned(laid: LaidOut) -> Floats:
    """Every piece lying as it is read, one beside the other."""
    points = laid.body.points.copy()
    edge = 0.0
    gap = _GAP_SHARE * float(np.ptp(points, axis=0).max())
    for piece in np.unique(laid.body.piece).tolist():
        mine = laid.body.piece == piece
        part = next((p for p in laid.parts if p.piece == piece and p.kind in ("flat", "disc", "oval")), None)
        own = points[mine] @ facing(laid, part).T if part is not None else points[mine]
        own += np.asarray([edge - own[:, 0].min(), -(own[:, 1].min() + own[:, 1].max()) / 2, -own[:, 2].min()])
        edge = float(own[:, 0].max()) + gap
        points[mine] = own
    return points


def _height_px(points: Floats, view: tuple[float, float], width_px: int) -> int:
    """As high as the body asks for at this width, from a third of it to one and a half times."""
    if not len(points):
        return max(1, width_px // 2)
    azimuth, elevation = np.radians(view)
    across = np.asarray([np.cos(azimuth), np.sin(azimuth), 0.0])
    up = np.asarray([-np.sin(azimuth) * np.sin(elevation), np.cos(azimuth) * np.sin(elevation), np.cos(elevation)])
    wide, high = float(np.ptp(points @ across)), float(np.ptp(points @ up))
    return max(1, round(width_px * min(1.5, max(1 / 3, high / max(wide, 1e-9)))))
