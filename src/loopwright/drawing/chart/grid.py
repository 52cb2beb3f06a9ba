"""A piece as squares: what stands in which square, in the order of making."""

from __future__ import annotations

from typing import Literal

from loopwright.record import record

OPEN, BLOCK = "space", "block"
FEWEST = 12  # squares of a side that are shown
GridKind = Literal["filet", "colour", "corner"]


@record
class Cell:
    """A square of a grid.

    `x`: squares to its right, seen from the right side; `y`: squares below it. `what`: OPEN or BLOCK in filet, else a colour of the
    fabric ("" where none was said). `stitch`: the first made of the `many` stitches in it, one after the other in the order of making.
    """

    x: int
    y: int
    what: str
    stitch: int
    many: int


@record
class GridRow:
    """A row of the fabric: its cells in the order of making. `index`: of the fabric's row."""

    index: int
    cells: tuple[Cell, ...]


@record
class Grid:
    """A piece that is drawn in squares.

    `kind`: filet meshes, stitches in colours, or blocks worked from corner to corner. `rows`: in the order of making. `wide`, `high`:
    in squares. `cell_mm`: width and height of a square by the gauge. `stitch`: the kind of stitch that squares are made of. `each`: how
    many stitches wide a square is. `closed`: worked in the round. `whats`: what stands in squares, in the order of first use.
    """

    kind: GridKind
    rows: tuple[GridRow, ...]
    wide: int
    high: int
    cell_mm: tuple[float, float]
    stitch: str
    each: int
    closed: bool
    whats: tuple[str, ...]


@record
class Window:
    """The part of a grid that one picture shows: squares from `x0` up to `x1` (left out), from `y0` up to `y1`.

    `counts`: whether counts stand beside the rows.
    """

    x0: int
    y0: int
    x1: int
    y1: int
    counts: bool = True

    def holds(self, cell: Cell) -> bool:
        """Whether a square is shown."""
        return self.x0 <= cell.x < self.x1 and self.y0 <= cell.y < self.y1


def windows(grid: Grid, across: int, up: int, *, counts: bool = True) -> list[Window]:
    """Parts of a grid no more than so many squares wide and high, cut at tens, from the start of the work on."""
    return [Window(x0, y0, x1, y1, counts) for y0, y1 in _cuts(grid.high, up) for x0, x1 in _cuts(grid.wide, across)]


def repeat(grid: Grid) -> tuple[int, int]:
    """After how many squares and after how many rows a grid is the same again, from edge to edge; 0 where it never is.

    The first rows may stand before the repeat, no more of them than it has.
    """
    if grid.kind == "corner" or any(len(r.cells) != grid.wide for r in grid.rows):
        return 0, 0
    lines = [[c.what for c in sorted(r.cells, key=lambda c: c.x)] for r in grid.rows]
    across = next((p for p in range(1, grid.wide // 2 + 1) if all(line[p:] == line[:-p] for line in lines)), 0)
    up = next((p for p in range(1, len(lines) // 2 + 1) if lines[2 * p :] == lines[p:-p] and len(lines) > 2 * p), 0)
    return across, up


def repeated(long: int, period: int, most: int, before: int = 0, *, once: bool = False) -> int:
    """How many squares of a side show the repeat at least twice, with both edges; all where it has none or is no longer than `most`.

    `once`: no more often than has room.
    """
    if not period or long <= most:
        return long
    times = max(2, -(-FEWEST // period))
    if once and period * times > most:
        times = max(1, most // period)
    least = before + period * times
    return min(long, least + (long - least) % period)


def _cuts(long: int, most: int) -> list[tuple[int, int]]:
    if long <= most:
        return [(0, long)]
    many = -(-long // most)
    step = min(most, -(-long // many // 10) * 10)
    return [(a, min(a + step, long)) for a in range(0, long, step)]


def shown(grid: Grid, window: Window) -> list[GridRow]:
    """Rows with only the squares that a window holds; none without any."""
    found = [GridRow(r.index, tuple(c for c in r.cells if window.holds(c))) for r in grid.rows]
    return [r for r in found if r.cells]


def runs(row: GridRow) -> list[list[Cell]]:
    """The squares of a row by runs of equal ones, in the order of making."""
    found: list[list[Cell]] = []
    for c in row.cells:
        if found and found[-1][-1].what == c.what:
            found[-1].append(c)
        else:
            found.append([c])
    return found
