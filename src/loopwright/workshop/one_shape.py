"""One size's shape, and one small picture, of a text."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import field, replace
from typing import Literal, get_args

from loopwright.drawing.rounds import fabric_picture
from loopwright.drawing.scene.body import Body, sound
from loopwright.drawing.scene.forms import Form
from loopwright.drawing.scene.stood import stood
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.relax import RelaxOptions, relax
from loopwright.model.fabric import Fabric
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.workshop.charting import palette_of
from loopwright.workshop.live import Live
from loopwright.workshop.measure import item_of
from loopwright.workshop.shapes import drawn_together, lies_flat, opens_above, stuffed
from loopwright.workshop.wear import OnForm, forms_of, put_on

_LAYERS = "Laid flat it lies in layers, as what is worked in the round does."
_NOT_QUITE = "Laid flat, as far as it got ({why})."
_NO_FORM = "There is no form for it: what is worn on a head or a hand can be put on, where the size tells its measure."


Way = Literal["made", "worn", "flat"]
WAYS: tuple[Way, ...] = get_args(Way)


@record
class OneShape:
    """A size as it is looked at. `body`: what is drawn; `form`: what it is put on, if anything; `notes`: what to know of it.

    `ways`: how else it can be looked at; `terms`: whose terms the pattern is in; `palette`: tones of its yarns by their letters.
    """

    fabric: Fabric
    body: Body
    settled: bool
    form: Form | None = None
    notes: tuple[str, ...] = ()
    ways: tuple[Way, ...] = WAYS
    terms: str = "us"
    palette: Mapping[str, tuple[int, int, int]] = field(default_factory=dict)


def one_shape(text: str, size: int, budget_s: float, way: Way = "made") -> OneShape | None:
    """A size's shape; None where there is no gauge or no fabric.

    `way`: "made" stands as it comes to rest, "worn" is put on a form of its size, "flat" is laid out on a table. Where a way cannot be
    had, the shape is given as made, with a note that says why.
    """
    found = _fabric(text, size)
    if found is None:
        return None
    document, fabric, stitches = found
    lies = lies_flat(fabric, stitches)
    options = RelaxOptions(
        lies or way == "flat", stuffed(document, fabric), budget_s, drawn=drawn_together(document, fabric),
    )
    shape = relax(fabric, stitches, options)
    names = document.sizes or ("one size",)
    form = forms_of(document, item_of(document), names)[size] if size < len(names) else None
    ways = tuple(w for w in WAYS if w == "made" or w == "worn" and form is not None or w == "flat" and not lies)
    body = stood(shape, opening_up=opens_above(document))
    made = OneShape(fabric, body, shape.settled, None, (), ways, document.terms, palette_of(document))
    if way == "worn":
        on = put_on(document, fabric, stitches, shape, form)
        if not isinstance(on, OnForm):
            return replace(made, notes=(on or _NO_FORM,))
        return replace(made, body=on.fabric.body, form=on.form, notes=(f"On {on.told.form}.", *on.told.notes))
    if way == "flat":
        note = _LAYERS if shape.why == "lies in layers" else _NOT_QUITE.format(why=shape.why)
        return replace(made, body=sound(shape)[0], settled=shape.settled or note == _LAYERS, notes=() if shape.settled else (note,))
    return made


def small_picture(text: str, width_px: int, budget_s: float) -> bytes | None:
    """The size that was worked, as it looks; None where there is nothing to see."""
    found = _fabric(text, None)
    if found is None:
        return None
    document, fabric, stitches = found
    if not len(fabric):
        return None
    up = opens_above(document) or None
    return fabric_picture(fabric, stitches, palette=palette_of(document), width_px=width_px, opening_up=up, budget_s=budget_s).png


def _fabric(text: str, size: int | None) -> tuple[Document, Fabric, StitchSizes] | None:
    seen = Live("shape").see(text)
    stitches = seen.stitches
    at = seen.sample if size is None else size
    fabrics = seen.report.fabrics
    fabric = fabrics[at] if 0 <= at < len(fabrics) else None
    return None if fabric is None or stitches is None else (seen.filled, fabric, stitches)
