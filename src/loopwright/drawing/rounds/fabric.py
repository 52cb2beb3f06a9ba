"""A picture of the fabric as it looks: for a preview, a listing, a page."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

import numpy as np

from loopwright.drawing.rounds.composed import Composed, composed
from loopwright.drawing.rounds.laid import LaidOut, laid_out
from loopwright.drawing.rounds.motifs import first_motif, tiled
from loopwright.drawing.rounds.twins import twinned
from loopwright.drawing.scene.body import Floats
from loopwright.drawing.scene.buffers import Buffers, buffers
from loopwright.drawing.scene.colours import Colour
from loopwright.drawing.scene.picture import as_png, picture
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.parts import tie_rows
from loopwright.measuring.relax import RelaxOptions, Shape, relax
from loopwright.model.fabric import Fabric
from loopwright.record import record

CLEAR = (255, 255, 255, 0)
TRIANGLES = 400_000
_DOWN = (0.0, 90.0)


@record
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
    height_px: int | None = None, background: tuple[int, int, int, int] = CLEAR, left_handed: bool = False, title: str = "",
    opening_up: bool | None = None, budget_s: float = 20.0, triangles: int = TRIANGLES,
) -> FabricPicture:
    """The fabric stitch by stitch, with light, and without a word: for a preview, a listing, a page.

    Flat pieces from above with the first row below, garments from the front, others from the front and a little above; several pieces
    beside and below one another; of motifs that are joined the first, as often as they are laid out. `shape`: where it is relaxed
    already; `palette`: colours by their names in the pattern. `height_px`: of a picture that must be so high (1600 x 1200, a square);
    None: as high as the fabric asks for. `background`: red, green, blue and cover, 0 to 255. `left_handed`: mirrored. `triangles`: at
    most so many.
    Raises ValueError for a size that `scene.picture` does not make.
    """
    joined = fabric.layout
    if joined is not None:
        fabric, triangles = first_motif(fabric), triangles // (joined[0] * joined[1])
        shape = relax(fabric, sizes, RelaxOptions(flat=True, budget_s=budget_s))
    laid = laid_out(fabric, sizes, shape, title=title, opening_up=opening_up, budget_s=budget_s)
    seen = composed(laid)
    ties = tie_rows(laid.parts)
    drawn = twinned(_without(buffers(fabric, laid.body.at(seen.points), palette, budget=triangles), ties), seen.twin)
    drawn = tiled(drawn, *joined) if joined is not None else drawn
    height = height_px or _height_px(drawn.positions.astype(np.float64), width_px)
    pixels = picture(drawn, view=_DOWN, width_px=width_px, height_px=height, background=background)
    if left_handed:
        pixels = np.ascontiguousarray(pixels[:, ::-1])
    told = _told(laid, seen, title, joined, left_handed=left_handed)
    return FabricPicture(as_png(pixels), width_px, height, told, laid.flat, drawn.notes)


def _told(laid: LaidOut, seen: Composed, title: str, joined: tuple[int, int] | None, *, left_handed: bool) -> str:
    """What the picture shows, in words."""
    kinds = {k: n for row in laid.fabric.rows for k, n in laid.fabric.counted(row).items() if n}
    way = "lying flat, seen from above" if laid.flat else "seen from the front and a little above"
    what = f"{title or 'The fabric'}, {way}: {len(laid.fabric.rows)} rows of {', '.join(list(kinds)[:4]) or 'chains'}."
    if joined is not None:
        what += f" Drawn {joined[0]} times across and {joined[1]} down, as the motifs are laid out; without the border."
    what += " Ties are left out." if tie_rows(laid.parts) else ""
    what += " Pinned out to a triangle." if laid.pinned else ""
    what += " A thumb is laid along the hand." if seen.bent else ""
    what += " The second sleeve is drawn as the first one mirrored." if seen.twin is not None else ""
    return what + (" Mirrored for the left hand." if left_handed else "")


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


def _height_px(points: Floats, width_px: int) -> int:
    """As high as what is seen asks for at this width, from a third of it to one and a half times."""
    if not len(points):
        return max(1, width_px // 2)
    wide, high = float(np.ptp(points[:, 0])), float(np.ptp(points[:, 1]))
    return max(1, round(width_px * min(1.5, max(1 / 3, high / max(wide, 1e-9)))))
