"""A small drawing of one place of a row: the join of a round, the ends of a row, an increase; with the stitch that is too many or missing.

As the maker sees it while she works, from right to left; mirrored for the left hand, text never.
"""

from __future__ import annotations

from functools import cache
from typing import Any, Literal

from loopwright.drawing.chart.drawn import Mark
from loopwright.drawing.chart.symbols import AIR, height, strokes, symbol_of
from loopwright.drawing.palette import WRITTEN, colours
from loopwright.drawing.svg import document, number, text
from loopwright.model.fabric import Fabric
from loopwright.record import record

Where = Literal["join", "first", "last", "increase", "decrease"]
STEP = 36.0  # from stitch to stitch, units of the drawing
_LOOKED_AT = 8  # stitches at the beginning of a row
_SHOWN = 3  # stitches on either side of the place
_AIR_PX = 14.0
_RING = 1.18  # the ring's height by the stitch's
_RING_PX = 25.0  # half its width at most

Point = tuple[float, float]


@record
class PlaceDrawing:
    """The picture as SVG, and the same in words."""

    svg: str
    description: str


@record
class _Case:
    """What is drawn: kinds of the row and of the row below it, how many stitches that has, whether one is too many or missing."""

    kind: str
    below: str
    count_below: int
    more: bool
    chains: int
    note: tuple[str, ...]
    left_handed: bool


class _Strip:
    """Two rows over each other, drawn stitch by stitch; x in steps, from the left."""

    def __init__(self, case: _Case, wide: int) -> None:
        self.case = case
        self.wide = wide
        self.low, self.high = height(case.below), height(case.kind)
        self.parts: list[str] = []
        self.ring_px = max(30.0, self.high * _RING)

    def x(self, step: float) -> float:
        """Units from the left edge; mirrored for the left hand."""
        at = STEP * (step + 0.5) + _AIR_PX
        return self.wide * STEP + 2 * _AIR_PX - at if self.case.left_handed else at

    def stitch(self, step: float, level: int, name: str = "", *, foot: float | None = None, feet: tuple[float, ...] = ()) -> None:
        """A stitch of the row below (level 0) or of the row itself (1); `foot`: the step it is worked into, where that is another."""
        kind = self.case.kind if level else self.case.below
        base = self.low + AIR if level else 0.0
        grounds = tuple((self.x(f), base) for f in (feet or (step if foot is None else foot,)))
        mark = Mark(0, kind, grounds, (self.x(step), base + (self.high if level else self.low)), "top", level)
        self._draw(mark, name)

    def chain(self, step: float, level: int, name: str = "") -> None:
        """The chain that a row begins with, chain by chain."""
        base = self.low + AIR if level else 0.0
        many = max(1, self.case.chains)
        tall = min(20.0, (self.high if level else self.low) / many)
        for i in range(many):
            foot = (self.x(step), base + i * tall)
            self._draw(Mark(0, "ch", (foot,), (foot[0], foot[1] + tall), "top", level), name)

    def join(self, step: float, level: int, name: str = "") -> None:
        """The slip stitch that closes a round, at the height of its top."""
        y = self.low if level == 0 else self.low + AIR + self.high
        self.parts.append(f'<circle class="slip {name}" cx="{number(self.x(step))}" cy="{number(self._y(y))}" r="5"/>')

    def ring(self, step: float) -> None:
        """The marker's ring around a stitch of the upper row."""
        y = self.low + AIR + self.high / 2
        at = f'cx="{number(self.x(step))}" cy="{number(self._y(y))}"'
        self.parts.append(f'<ellipse class="ring" {at} rx="{number(min(_RING_PX, self.ring_px / 2))}" ry="{number(self.ring_px / 2)}"/>')

    def figure(self, step: float, said: str) -> None:
        """A number under a stitch of the row below."""
        self.parts.append(text("mid", (self.x(step), self._y(-19.0)), said, anchor="middle"))

    def told(self, step: float, lines: tuple[str, ...]) -> None:
        """Words above the place."""
        top = self.low + AIR + self.high + (self.ring_px - self.high) / 2 + 10 + 17 * (len(lines) - 1)
        self.parts.extend(text("mid", (self.x(step), self._y(top - 17 * i)), line, anchor="middle") for i, line in enumerate(lines))

    def _y(self, up: float) -> float:
        return self.tall_px - 26.0 - up

    @property
    def tall_px(self) -> float:
        """Height of the whole picture."""
        return self.low + AIR + self.high + (self.ring_px - self.high) / 2 + 17.0 * len(self.case.note) + 40.0

    def _draw(self, mark: Mark, name: str) -> None:
        steps = [f"{s}{' '.join(f'{number(x)},{number(self._y(y))}' for x, y in points)}" for s, points in strokes(mark, "top")]
        solid = " f" if (symbol := symbol_of(mark.kind)) is not None and symbol.filled else ""
        self.parts.append(f'<path class="{name}{solid}" d="{"".join(steps)}"/>')

    def svg(self, ident: str, told: tuple[str, str]) -> str:
        """The whole picture."""
        size_px = (self.wide * STEP + 2 * _AIR_PX, self.tall_px)
        return document(ident, "lw-place", size_px, told, (f"<style>{_style()}</style>", *self.parts))


def place_drawing(
    fabric: Fabric, row: int, where: Where, *, more: bool, note: tuple[str, ...] = (), ident: str = "place", left_handed: bool = False,
) -> PlaceDrawing | None:
    """The place of a row where a count goes wrong; None for the first row of a piece, which stands on nothing.

    `row`: index among the fabric's rows. `where`: the join of a round, the beginning or the end of a row, an increase or a decrease.
    `more`: a stitch is too many there, else one is missing. `note`: a few words beside it, one line each. Raises IndexError for a row that
    there is none of.
    """
    here = fabric.rows[row]
    below = next((r for r in reversed(fabric.rows[:row]) if r.piece == here.piece), None)
    if below is None:
        return None
    count_below = sum(fabric.counted(below).values())
    case = _Case(_kind(fabric, row), _kind(fabric, fabric.rows.index(below)), count_below, more, _chains(fabric, row), note, left_handed)
    strip, said = _DRAWN[where](case, here.label or "this row", below.label or "the row below")
    hand = "left to right, as the left hand works it" if left_handed else "right to left, as it is worked"
    return PlaceDrawing(strip.svg(ident, (said, f"{said} {hand.capitalize()}.")), said)


def _chains(fabric: Fabric, row: int) -> int:
    """How many chains the row begins with; where it was worked "as established", those of the last row of its section that tells any."""
    section = fabric.rows[row].section
    for r in reversed(fabric.rows[: row + 1]):
        found = [i for i in range(r.start, min(r.start + _LOOKED_AT, r.end)) if fabric.name(i) == "ch" and fabric.part_of(i) != "edge"]
        if found or r.section != section:
            return len(found)
    return 0


def _kind(fabric: Fabric, row: int) -> str:
    """The stitch that a row has most of."""
    counted = {k: n for k, n in fabric.counted(fabric.rows[row]).items() if symbol_of(k) is not None}
    return max(counted, key=lambda k: counted[k], default="sc")


def _at_join(case: _Case, label: str, below: str) -> tuple[_Strip, str]:
    """Left to right: the third, second, first stitch, the chain, the join, the last three."""
    strip = _Strip(case, 2 * _SHOWN + 2)
    for i in range(_SHOWN):
        strip.stitch(i, 0)
        strip.stitch(i, 1)
        strip.figure(i, str(_SHOWN - i))
        at = _SHOWN + 2 + i
        strip.stitch(at, 0)
        strip.stitch(at, 1)
        strip.figure(at, str(max(1, case.count_below - i)))
    for level in (0, 1):
        if case.chains:
            strip.chain(_SHOWN, level)
    strip.join(_SHOWN + 1, 0)
    strip.stitch(_SHOWN + 1, 1, "wrong")
    strip.ring(_SHOWN + 1)
    strip.told(_SHOWN + 1, case.note)
    return strip, f"The join: a stitch of {label} stands in the slip stitch of {below}, beside the chain, where none belongs."


def _at_first(case: _Case, label: str, below: str) -> tuple[_Strip, str]:
    """The beginning of a row, at the right; the chain stands at its edge."""
    wide = _SHOWN + 3
    strip = _Strip(case, wide)
    first = wide - 2
    for i in range(first + 1):
        strip.stitch(i, 0)
        if i < first or not case.more:
            strip.stitch(i, 1, "gone" if i == first and not case.more else "")
        strip.figure(i, str(first - i + 1))
    strip.chain(first + 1 if not case.more else first, 1)
    if case.more:
        strip.stitch(first + 0.6, 1, "wrong", foot=first)
    strip.ring(first + 0.6 if case.more else first)
    strip.told(first if case.more else first - 0.4, case.note)
    if case.more:
        return strip, f"The beginning of {label}: a stitch stands in the first stitch of {below}, where the chain already stands for one."
    return strip, f"The beginning of {label}: the first stitch, at the foot of the chain, was passed over."


def _at_last(case: _Case, label: str, below: str) -> tuple[_Strip, str]:
    """The end of a row, at the left: the top of the chain that the row below began with."""
    strip = _Strip(case, _SHOWN + 3)
    strip.chain(0.6, 0)
    for i in range(1, _SHOWN + 2):
        strip.stitch(i + 0.6, 0)
        strip.stitch(i + 0.6, 1)
    strip.stitch(0.6, 1, "gone")
    strip.ring(0.6)
    strip.told(1.2, case.note)
    return strip, f"The end of {label}: its last stitch, into the top of the chain of {below}, was missed."


def _at_increase(case: _Case, label: str, below: str) -> tuple[_Strip, str]:
    strip = _Strip(case, 2 * _SHOWN + 1)
    for i in range(2 * _SHOWN + 1):
        strip.stitch(i, 0)
        if i != _SHOWN:
            strip.stitch(i + (-0.16 if i < _SHOWN else 0.16), 1, foot=i)
    name = "wrong" if case.more else "gone"
    strip.stitch(_SHOWN - 0.3, 1, "", foot=_SHOWN)
    strip.stitch(_SHOWN + 0.3, 1, name, foot=_SHOWN)
    strip.ring(_SHOWN)
    strip.told(_SHOWN, case.note)
    what = "two stitches of {0} in one of {1}: an increase" if case.more else "an increase of {0}, two stitches in one of {1}, is missing"
    return strip, f"Within the row: {what.format(label, below)}."


def _at_decrease(case: _Case, label: str, below: str) -> tuple[_Strip, str]:
    strip = _Strip(case, 2 * _SHOWN)
    for i in range(2 * _SHOWN):
        strip.stitch(i, 0)
        if i not in (_SHOWN - 1, _SHOWN):
            strip.stitch(i, 1)
    strip.stitch(_SHOWN - 0.5, 1, "wrong" if not case.more else "gone", feet=(_SHOWN - 1.0, float(_SHOWN)))
    strip.ring(_SHOWN - 0.5)
    strip.told(_SHOWN - 0.5, case.note)
    missing = " that is missing" if case.more else ""
    return strip, f"Within the row: two stitches of {below} worked together in {label}, a decrease{missing}."


_DRAWN = {"join": _at_join, "first": _at_first, "last": _at_last, "increase": _at_increase, "decrease": _at_decrease}


@cache
def _style() -> str:
    light, dark = colours("light"), colours("dark")
    fixed = (
        ".lw-place path{fill:none;stroke-width:1.8;stroke-linecap:round;stroke-linejoin:round}.lw-place .wrong{stroke-width:3.2}"
        ".lw-place .gone{stroke-width:2.4;stroke-dasharray:3 4}.lw-place .ring{fill:none;stroke-width:2.2}"
        f".lw-place text{{font:13px {WRITTEN}}}"
    )
    return (
        f"{fixed}{_inks(light, _MARKER['light'])}@media screen and (prefers-color-scheme:dark){{{_inks(dark, _MARKER['dark'])}}}"
        "@media print{.lw-place path,.lw-place .ring{stroke:#000}.lw-place text,.lw-place .slip{fill:#000}}"
    )


_MARKER = {"light": "#BA2D0D", "dark": "#FF8F6B"}  # the one red of the studio, which says "here"


def _inks(of: dict[str, Any], marker: str) -> str:
    return (
        f".lw-place path{{stroke:{of['ink']}}}.lw-place .f,.lw-place .slip{{fill:{of['ink']};stroke:none}}"
        f".lw-place text{{fill:{of['ink2']}}}"
        f".lw-place .wrong,.lw-place .gone,.lw-place .ring{{stroke:{marker}}}"
    )
