"""The picture for the front: alone in its module, so that a process which draws nothing else loads little."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

    from loopwright.drawing.rounds import FabricPicture
    from loopwright.grading.gauge import StitchSizes
    from loopwright.model.fabric import Fabric

WIDTH_PX = 760
BUDGET_S = 20.0
TRIANGLES = 80_000


def bring() -> None:
    """Loads what draws it."""
    from loopwright.drawing.rounds import fabric  # noqa: F401, PLC0415 - brings the solver


def draw_cover(fabric: Fabric, sizes: StitchSizes, title: str, palette: Mapping[str, tuple[int, int, int]]) -> FabricPicture:
    """The fabric as it looks, small and quickly made; the same bytes for the same fabric, as long as its shape comes to rest in time."""
    from loopwright.drawing.rounds import fabric_picture  # noqa: PLC0415 - brings the solver

    return fabric_picture(fabric, sizes, palette=palette, width_px=WIDTH_PX, title=title, budget_s=BUDGET_S, triangles=TRIANGLES)
