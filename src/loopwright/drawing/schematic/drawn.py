"""What a schematic is, and what may be asked of it."""

from __future__ import annotations

from typing import Literal

from loopwright.drawing.copies import Copies
from loopwright.drawing.speech import Speech, in_english
from loopwright.record import record

Units = Literal["cm", "in", "both"]

NARROWEST_MM, WIDEST_MM = 60.0, 1000.0
COLUMN_MM = 170.0
"""Width of the text of an A4 page with margins of 20 mm; 85 is a column of two, near enough."""


@record
class SchematicOptions:
    """What is asked for.

    `title`: of the pattern. `only`: number of the one size that is wanted; None for all sizes in brackets. `drawn`: number of the size that
    the outline is drawn in where all are wanted; None for the middle one of those that could be worked. `units` of the table. `width_mm`:
    of the drawing on paper, 60 to 1000. `ident`: begins every id in the file, so that several drawings can stand in one page; letters,
    digits, - and _. `copies`: what is said of sections that are made more than once. `left_handed`: outlines mirrored, words not.
    `making_up`: the pattern's words of how its pieces are put together. `speech`: puts everything into words, None for English.
    """

    title: str = ""
    only: int | None = None
    drawn: int | None = None
    units: Units = "both"
    width_mm: float = COLUMN_MM
    ident: str = "schematic"
    copies: Copies = ()
    left_handed: bool = False
    making_up: str = ""
    speech: Speech | None = None

    @property
    def said(self) -> Speech:
        """What puts the schematic into words."""
        return self.speech or in_english("us")


@record
class SchematicDrawing:
    """One sheet: an SVG file, its title, what it shows in words, the sections that it shows, and the size its outline is drawn in."""

    svg: str
    title: str
    description: str
    sections: tuple[str, ...]
    size: str
