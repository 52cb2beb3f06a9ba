"""What is asked of a chart, and what comes out of it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class ChartOptions:
    """How a chart is drawn.

    `terms`: whose names the key uses. `left_handed`: mirrored, text upright. `whole`: every row and stitch; else large pieces are cut down
    to the repeat with its edges. `colours`: yarn colours by letter instead of the two row colours. `width`: of the picture in CSS pixels,
    0 for as large as it is drawn. `line`: the line of the pattern, from 1, that made a stitch; None where nobody asks. `ident`: begins
    every id in the file, so that several drawings can stand in one page; letters, digits, - and _.
    """

    terms: Literal["us", "uk"] = "us"
    left_handed: bool = False
    whole: bool = False
    colours: bool = False
    width: float = 0.0
    line: Callable[[int], int] | None = None
    ident: str = "chart"


@dataclass(frozen=True, slots=True)
class ChartDrawing:
    """One chart.

    `svg`: the picture. `description`: the same in words, row by row. `part`: what lies in it ("disc", "flat" …), `section`: the
    pattern's name for it. `rows`: first and last row of the fabric that it shows. `notes`: what the reader should know of it.
    """

    svg: str
    description: str
    part: str
    section: str | None
    rows: tuple[int, int]
    notes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Mark:
    """A symbol where it lies, in units of the drawing, y upwards.

    `feet`: on what it was worked into. `place`: where in it, "ws:" before it in a wrong-side row. `row`: of the fabric. `way`: from
    the stitch it was worked into to its foot, where rows lie between.
    """

    stitch: int
    kind: str
    feet: tuple[Point, ...]
    top: Point
    place: str
    row: int
    way: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True)
class RowLine:
    """A row as it lies. `tab`: where its number stands; `end`: where its count stands; `along`: unit vector of the work at the start."""

    row: int
    tab: Point
    end: Point
    along: Point


@dataclass(frozen=True, slots=True)
class Frame:
    """The two sides of a repeat: lines from foot to top. `times`: how often it is worked in all; `row`: where it first stands."""

    row: int
    times: int
    sides: tuple[tuple[Point, Point], tuple[Point, Point]]
