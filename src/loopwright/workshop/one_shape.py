"""One size's shape, and one small picture, of a text."""

from __future__ import annotations

from loopwright.drawing.rounds import fabric_picture
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import RelaxOptions, Shape, relax
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document
from loopwright.workshop.live import Live
from loopwright.workshop.shapes import drawn_together, lies_flat, opens_above, stuffed


def one_shape(text: str, size: int, budget_s: float) -> tuple[Fabric, Shape] | None:
    """The fabric of a size and its shape; None where there is no gauge or no fabric."""
    found = _fabric(text, size)
    if found is None:
        return None
    document, fabric, stitches = found
    options = RelaxOptions(
        lies_flat(fabric, stitches), stuffed(document, fabric), budget_s, drawn=drawn_together(document, fabric),
    )
    return fabric, relax(fabric, stitches, options)


def small_picture(text: str, width_px: int, budget_s: float) -> bytes | None:
    """The size that was worked, as it looks; None where there is nothing to see."""
    found = _fabric(text, None)
    if found is None:
        return None
    document, fabric, stitches = found
    if not len(fabric):
        return None
    return fabric_picture(fabric, stitches, width_px=width_px, opening_up=opens_above(document) or None, budget_s=budget_s).png


def _fabric(text: str, size: int | None) -> tuple[Document, Fabric, StitchSizes] | None:
    seen = Live("shape").see(text)
    stitches = seen.stitches
    at = seen.sample if size is None else size
    fabrics = seen.report.fabrics
    fabric = fabrics[at] if 0 <= at < len(fabrics) else None
    return None if fabric is None or stitches is None else (seen.filled, fabric, stitches)
