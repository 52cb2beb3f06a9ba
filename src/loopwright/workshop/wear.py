"""What is worn is put on a form of its size: hats and bonnets on a head, mitts on a hand."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

import numpy as np

from loopwright.drawing.scene.forms import Form, hand_form, head_form
from loopwright.drawing.scene.worn import Worn, worn
from loopwright.grading.gauge import StitchSizes
from loopwright.measuring.courses import courses
from loopwright.measuring.parts import parts, tie_rows
from loopwright.measuring.relax import Shape
from loopwright.model.fabric import Fabric
from loopwright.model.measures import WornShape
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.trade.ease import Ease
from loopwright.workshop.measure import bodies_of

_BONNET = re.compile(r"\bbonnet\b", re.IGNORECASE)


@record
class OnForm:
    """One size on its form: the measures, and form and fabric for drawing."""

    told: WornShape
    form: Form
    fabric: Worn


def forms_of(document: Document, item: Ease | None, names: Sequence[str]) -> list[tuple[str, Form] | None]:
    """The form for each size with its name in words; None where the item is not worn on head or hand, or the size tells no measure."""
    if item is None or item.measure not in ("head circumference", "hand circumference"):
        return [None] * len(names)
    around = bodies_of(document, item.measure, names)
    long = bodies_of(document, "hand length", names)
    found: list[tuple[str, Form] | None] = []
    for round_mm, long_mm in zip(around, long, strict=True):
        try:
            if round_mm is None or item.measure == "hand circumference" and long_mm is None:
                found.append(None)
            elif item.measure == "head circumference":
                found.append((f"a head of {round_mm / 10:.1f} cm", head_form(round_mm)))
            else:
                found.append((f"a hand of {round_mm / 10:.1f} cm", hand_form(round_mm, long_mm or round_mm, mitten=True)))
        except ValueError:
            found.append(None)
    return found


def _untied(fabric: Fabric, stitches: StitchSizes, shape: Shape) -> Shape:
    """The shape without its ties."""
    rows = tie_rows(parts(fabric, courses(fabric, stitches)))
    if not rows:
        return shape
    drop = np.zeros(len(shape.points), bool)
    for i in rows:
        nodes = shape.node_of[fabric.rows[i].start : fabric.rows[i].end]
        drop[nodes[nodes >= 0]] = True
    keep = ~drop
    new = np.where(keep, np.cumsum(keep) - 1, -1)
    pairs = keep[shape.pairs].all(axis=1)
    corners = np.where(shape.faces >= 0, keep[shape.faces], True).all(axis=1)
    ends = keep[shape.ends].all(axis=1) if len(shape.ends) else np.zeros(0, bool)
    return replace(
        shape, points=shape.points[keep], node_of=np.where(shape.node_of >= 0, new[shape.node_of], -1), pairs=new[shape.pairs[pairs]],
        rest_mm=shape.rest_mm[pairs], strain=shape.strain[pairs], faces=np.where(shape.faces[corners] >= 0, new[shape.faces[corners]], -1),
        face_stitch=shape.face_stitch[corners], piece=shape.piece[keep], ends=new[shape.ends[ends]], end_mm=shape.end_mm[ends],
    )


def put_on(
    document: Document, fabric: Fabric, stitches: StitchSizes, shape: Shape, form: tuple[str, Form] | None,
) -> OnForm | str | None:
    """The shape on its form, its ties left out; None where there is no form; a word where it cannot be put on."""
    if form is None:
        return None
    shape = _untied(fabric, stitches, shape)
    name, body = form
    where: Literal["hat", "bonnet", "mitt"] = "mitt" if "hand" in name else "bonnet" if _BONNET.search(document.title or "") else "hat"
    try:
        found = worn(shape, body, where)
    except ValueError as e:
        return str(e)
    told = WornShape(
        name, found.front_mm, found.back_mm, found.sides_mm, found.behind_brow_mm, found.stretch, found.notes,
    )
    return OnForm(told, body, found)
