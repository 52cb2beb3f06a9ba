"""What is worn is put on a form of its size: hats and bonnets on a head, mitts on a hand."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from loopwright.drawing.scene.forms import Form, hand_form, head_form
from loopwright.drawing.scene.worn import Worn, worn
from loopwright.measuring.relax import Shape
from loopwright.model.measures import WornShape
from loopwright.model.tree import Document
from loopwright.trade.ease import Ease
from loopwright.workshop.measure import bodies_of

_BONNET = re.compile(r"\bbonnet\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
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


def put_on(document: Document, shape: Shape, form: tuple[str, Form] | None) -> OnForm | str | None:
    """The shape on its form; None where there is no form; a word where it cannot be put on."""
    if form is None:
        return None
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
