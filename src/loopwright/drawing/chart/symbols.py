"""The symbols: their paths, and how a stitch's symbol is put together from them."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Sequence
from functools import cache

from loopwright.drawing.chart.drawn import Mark, Point
from loopwright.record import record
from loopwright.shipped import shipped_text
from loopwright.trade import stitches

AIR = 6.5  # between a foot and the bar below it
_TOG = re.compile(r"^(?:fp|bp)?(?P<kind>[a-z]+?)(?P<n>\d+)tog$")
_POST = re.compile(r"^(?:fp|bp)(?P<kind>[a-z]+)$")
_OTHER_SIDE = {"back": "front", "front": "back", "front-post": "back-post", "back-post": "front-post"}
_STEP = re.compile(r"([MLCZ])([^MLCZ]*)")

Steps = tuple[tuple[str, tuple[Point, ...]], ...]


@record
class Symbol:
    """A symbol's path in its box (foot (0, 0), top (0, 1), x in shares of `width`), size in units of the drawing, and its source."""

    key: str
    height: float
    width: float
    steps: Steps
    slashes: int
    filled: bool
    source: str
    weak: bool


@cache
def _table() -> tuple[dict[str, Symbol], dict[str, Symbol]]:
    text = shipped_text("loopwright.drawing.chart", "symbols.toml")
    top = tomllib.loads(text)
    return tuple(  # type: ignore[return-value]
        {
            e["key"]: Symbol(
                e["key"], float(e.get("height", 1)), float(e.get("width", 1)), _steps(e["path"]), int(e.get("slashes", -1)),
                bool(e.get("filled", False)), top["sources"][e["source"]], bool(e.get("weak", False)),
            )
            for e in top[name]
        }
        for name in ("symbol", "mark")
    )  # fmt: skip


def _steps(path: str) -> Steps:
    found = []
    for m in _STEP.finditer(path):
        values = [float(v) for v in m[2].split()]
        found.append((m[1], tuple(zip(values[::2], values[1::2], strict=True))))
    return tuple(found)


def symbols() -> dict[str, Symbol]:
    """All symbols by key."""
    return _table()[0]


def marks() -> dict[str, Symbol]:
    """Marks at a foot by place: loops and posts."""
    return _table()[1]


@cache
def symbol_of(kind: str) -> Symbol | None:
    """The symbol that a kind of stitch is drawn with, its legs' where it has several; None for a stitch of the pattern's own."""
    known = symbols()
    if kind in known:
        return known[kind]
    for form in (_TOG, _POST):
        m = form.match(kind)
        if m and m["kind"] in known:
            return known[m["kind"]]
    plain = kind.lstrip("f")
    if kind.startswith("f") and plain in known:
        return known[plain]
    alike = stitches.like(kind)
    return known.get(alike) if alike and kind in ("shell", "fan") else None


def height(kind: str) -> float:
    """How tall its symbol is, units of the drawing."""
    return (symbol_of(kind) or symbols()["own"]).height


def width(kind: str) -> float:
    """How wide its symbol is, units of the drawing."""
    found = symbol_of(kind) or symbols()["own"]
    return found.height if kind == "ch" else found.width


def place_seen(place: str, *, right_side: bool) -> str:
    """The mark at the foot as the fabric looks from its right side: on a wrong-side row front and back change places.

    Source of the rule: http://www.hookincrochet.com/hccatalog/aboutcharts.html (loops); derived from the same rule (posts).
    """
    return place if right_side else _OTHER_SIDE.get(place, place)


def changes_places(mark: Mark) -> bool:
    """Whether its symbol shows front where back was worked, or back where front was: in a wrong-side row."""
    return mark.place.startswith("ws:") and mark.place.removeprefix("ws:") in _OTHER_SIDE and mark.kind not in ("ch", "sl st")


def strokes(mark: Mark, place: str) -> list[tuple[str, tuple[Point, ...]]]:
    """The steps of its path where it lies, y upwards: legs, bar, slashes and the mark at its foot."""
    symbol = symbol_of(mark.kind) or symbols()["own"]
    seam = mark.kind == "sl st" and len(set(mark.feet)) == 1  # through two edges that lie on each other
    if len(mark.feet) > 1 and not seam or (_TOG.match(mark.kind) and symbol.key in ("sc", "hdc", "dc", "tr", "dtr", "trtr", "qtr")):
        found = _legs(symbol, mark.feet, mark.top)
    else:
        found = _laid(symbol.steps, mark.feet[0], mark.top, symbol.width)
    if mark.way:
        hook = _at(marks()[place].steps, mark.way[0], mark.way[1]) if place in marks() and not place.endswith("post") else []
        line = [("M", (mark.way[0],)), *[("L", (p,)) for p in (*mark.way[1:], mark.feet[0])]]
        return [*line, *found, *hook]
    at_foot = marks().get(place)
    if at_foot is not None:
        for foot in mark.feet:
            found += _at(at_foot.steps, foot, mark.top)
    return found


def _unit(foot: Point, top: Point) -> tuple[float, float, float]:
    dx, dy = top[0] - foot[0], top[1] - foot[1]
    length = (dx * dx + dy * dy) ** 0.5 or 1.0
    return dx / length, dy / length, length


def _laid(steps: Steps, foot: Point, top: Point, wide: float) -> list[tuple[str, tuple[Point, ...]]]:
    ux, uy, length = _unit(foot, top)
    ax, ay = ux * length, uy * length
    bx, by = uy * wide, -ux * wide
    x0, y0 = foot
    return [(s, tuple((x0 + x * bx + y * ax, y0 + x * by + y * ay) for x, y in points)) for s, points in steps]


def _at(steps: Steps, foot: Point, top: Point) -> list[tuple[str, tuple[Point, ...]]]:
    ux, uy, _ = _unit(foot, top)
    x0, y0 = foot
    return [(s, tuple((x0 + x * uy + y * ux, y0 - x * ux + y * uy) for x, y in points)) for s, points in steps]


def _legs(symbol: Symbol, feet: Sequence[Point], top: Point) -> list[tuple[str, tuple[Point, ...]]]:
    found: list[tuple[str, tuple[Point, ...]]] = []
    for foot in feet:
        found += [("M", (foot,)), ("L", (top,))]
        found += _laid(_slashes(symbol), foot, top, symbol.width)
    middle = (sum(f[0] for f in feet) / len(feet), sum(f[1] for f in feet) / len(feet))
    ux, uy, _ = _unit(middle, top)
    half = 6.5
    found += [("M", ((top[0] - uy * half, top[1] + ux * half),)), ("L", ((top[0] + uy * half, top[1] - ux * half),))]
    return found


@cache
def _slashes(symbol: Symbol) -> Steps:
    """Slashes of a leg, lower down than on a stitch alone: the legs come together above."""
    found: list[tuple[str, tuple[Point, ...]]] = []
    for n in range(max(0, symbol.slashes)):
        at = 0.3 + 0.14 * n
        found += [("M", ((-0.26, at),)), ("L", ((0.26, at + 0.1),))]
    return tuple(found)
