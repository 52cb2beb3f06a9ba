"""What a card is, and the sheet it is drawn on."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Literal

from loopwright.drawing import svg
from loopwright.drawing.palette import WORKED, WRITTEN, colours
from loopwright.record import record

Shape = Literal["16x9", "9x16"]
SHAPES: tuple[Shape, ...] = ("16x9", "9x16")
SIDES: dict[Shape, tuple[float, float]] = {"16x9": (1280.0, 720.0), "9x16": (720.0, 1280.0)}
CAPTIONS = 0.17
"""The share of the height, at the bottom, that stays free for captions."""
EDGE_PX, TOP_PX = 64.0, 56.0
_SCOPE = "lw-card"


@record
class Card:
    """A card: a name for its file, what it shows in words, its drawing, its own box (left, top, right, bottom) within the picture.

    `section`, `row`: numbers in the plan, -1 for none; `kind`: "row", "measure", "sizes", "title", "materials", "gauge", "caution" or
    "round". `whole`: all of its words have room. `label`: in its corner.
    """

    name: str
    kind: str
    section: int
    row: int
    shape: Shape
    description: str
    svg: str
    box: tuple[float, float, float, float]
    whole: bool = True
    label: str = ""


def bottom_px(shape: Shape) -> float:
    """Where captions begin."""
    return SIDES[shape][1] * (1 - CAPTIONS)


def sheet(shape: Shape, ident: str, told: tuple[str, str], inside: Iterable[str]) -> str:
    """A whole file with a clear ground."""
    return svg.document(ident, _SCOPE, SIDES[shape], told, [f"<style>{_style()}</style>", *inside])


def line(name: str, at: tuple[float, float], words: str, size_px: float, *, end: bool = False) -> str:
    """A line of text of a class, in a size of its own."""
    said = svg.text(name, at, words, anchor="end" if end else "start")
    return said.replace("<text ", f'<text font-size="{svg.number(size_px)}" ', 1)


def boxes(places: Sequence[tuple[float, float, float, float]]) -> tuple[float, float, float, float]:
    """The box around boxes."""
    lefts, tops, rights, bottoms = zip(*places, strict=True)
    return min(lefts), min(tops), max(rights), max(bottoms)


def _style() -> str:
    of = colours("light")
    rules = [
        f"tape{{fill:{of['tape']}}}", f"sheet{{fill:{of['sheet']}}}", f"ink{{fill:{of['ink']}}}", f"left{{fill:{of['tapeedge']}}}",
        "now{fill:#BA2D0D}",  # the marker
        f"words{{font-family:{WRITTEN};font-weight:400;fill:{of['ink']}}}",
        f"label{{font-family:{WRITTEN};font-weight:600;fill:{of['tapeink']}}}",
        f"count{{font-family:{WORKED};font-weight:700;fill:{of['tapeink']}}}",
        f"figure{{font-family:{WORKED};font-weight:500;fill:{of['ink']}}}",
    ]
    return "".join(f".{_SCOPE} .{r}" for r in rules)
