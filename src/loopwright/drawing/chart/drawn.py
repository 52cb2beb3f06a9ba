"""What is asked of a chart, and what comes out of it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from loopwright.drawing.copies import Copies
from loopwright.drawing.speech import Speech, in_english
from loopwright.record import record

Point = tuple[float, float]


@record
class UnreadRow:
    """A row of the pattern that could not be read: its part, its label, its words as written, its place among the pattern's items."""

    section: str | None
    label: str
    words: str
    item: int


@record
class ChartOptions:
    """How a chart is drawn.

    `terms`: whose names the key uses. `left_handed`: mirrored, text upright. `whole`: every row and stitch; else large pieces are cut down
    to the repeat with its edges. `grids`: filet, rows in several colours and pieces from corner to corner as squares, else as symbols.
    `colours`: yarn colours by letter instead of the two row colours. `width`: of the picture in CSS pixels,
    0 for as large as it is drawn. `line`: the line of the pattern, from 1, that made a stitch; None where nobody asks. `ident`: begins
    every id in the file, so that several drawings can stand in one page; letters, digits, - and _. `copies`: what is said of sections that
    are made more than once. `unread`: rows that could not be read; a chart ends before them with a mark and a word. `special`: what the
    pattern says of its own stitches, by their name. `joins`: where the text joins yarn, and the end of that row. `yarns`: what the
    pattern calls the yarns that it gives letters, {"A": "peat"}. `speech`: puts everything into words, None for English in `terms`.
    """

    terms: Literal["us", "uk"] = "us"
    left_handed: bool = False
    whole: bool = False
    grids: bool = True
    colours: bool = False
    width: float = 0.0
    line: Callable[[int], int] | None = None
    ident: str = "chart"
    copies: Copies = ()
    unread: tuple[UnreadRow, ...] = ()
    special: Mapping[str, str] = field(default_factory=dict)
    joins: tuple[tuple[int, int], ...] = ()
    yarns: Mapping[str, str] = field(default_factory=dict)
    speech: Speech | None = None

    @property
    def words(self) -> Speech:
        """What puts the chart into words."""
        return self.speech or in_english(self.terms)


@record
class LeftOut:
    """What a chart shows of wide rows: a key of what drawings say, with how many are left out. `many`: of each band."""

    key: str
    n: int = 0
    many: tuple[int, ...] = ()

    def told(self, speech: Speech) -> str:
        """In words."""
        return speech.say(self.key, n=len(self.many) or self.n, many=speech.listed([str(n) for n in self.many]))


@record
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


@record
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


@record
class RowLine:
    """A row as it lies. `tab`: where its number stands; `end`: where its count stands; `along`: unit vector of the work at the start."""

    row: int
    tab: Point
    end: Point
    along: Point


@record
class Torn:
    """The jagged edge of a chart that ends before a row that could not be read, and the word at it."""

    edge: tuple[Point, ...]
    word: str


@record
class Frame:
    """The two sides of a repeat: lines from foot to top. `times`: how often it is worked in all; `row`: where it first stands."""

    row: int
    times: int
    sides: tuple[tuple[Point, Point], tuple[Point, Point]]


@dataclass(slots=True)
class Laid:
    """What there is to draw, y upwards.

    `below`: short bars for stitches of another chart that this one stands on; `ring`: radius of a ring in the middle, 0 for none.
    `torn`: where it ends for want of a row that can be read. `gaps`: lines where stitches are left out. `piece`: stitches of another chart
    that these rows go around, as they lie at its edge. `arrows`: shafts that show which way rows around an edge go.
    """

    marks: list[Mark]
    lines: list[RowLine]
    frames: list[Frame]
    below: list[tuple[Point, Point]] = field(default_factory=list)
    ring: float = 0.0
    torn: Torn | None = None
    gaps: list[list[Point]] = field(default_factory=list)
    piece: list[Mark] = field(default_factory=list)
    arrows: list[list[Point]] = field(default_factory=list)
