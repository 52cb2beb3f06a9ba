"""The cards of a film, those of the finished work drawn from its round pictures."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.filming.cards.card import SHAPES, Card, Shape
from loopwright.filming.cards.kit import cards
from loopwright.filming.shots import Plan
from loopwright.workshop.film.gather import Filmed

_PICTURE_S = 0.4


def drawn(filmed: Filmed, made: Plan, shapes: Sequence[Shape] = SHAPES) -> tuple[Card, ...]:
    """All cards in the order of the film, shape by shape."""
    return cards(filmed.facts, made, _pictures(filmed), shapes)


def _pictures(filmed: Filmed) -> dict[int, str]:
    """The work after each row, by row of the fabric; nothing where there is no gauge."""
    sizes, fabric = filmed.measured.gauge.sizes, filmed.facts.fabric
    if sizes is None or fabric is None:
        return {}
    from loopwright.drawing.rounds import RoundOptions, round_drawings  # noqa: PLC0415 - brings the solver

    title = filmed.facts.document.title or ""
    options = RoundOptions(title=title, plain=True, left_handed=filmed.facts.left_handed, budget_s=_PICTURE_S, ident="work")
    return {d.row: d.svg for d in round_drawings(fabric, sizes, options)}
