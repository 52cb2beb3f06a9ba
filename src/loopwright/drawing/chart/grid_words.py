"""A grid in words, row by row; letters for its colours; what a square is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from loopwright.drawing.chart.drawn import ChartOptions
from loopwright.drawing.chart.grid import BLOCK, OPEN, Grid, GridRow, Window, runs, shown
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.words import row_number
from loopwright.drawing.lettering import plain
from loopwright.model.fabric import Fabric
from loopwright.terms import dialect

LONGEST_SIGN = 2
ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def signs(grid: Grid) -> dict[str, str]:
    """A letter or two for everything that stands in squares: a colour's own where its name is so short, else the next free letter."""
    if grid.kind == "filet":
        return {OPEN: "", BLOCK: ""}
    own = {w: w for w in grid.whats if 0 < len(w) <= LONGEST_SIGN and w.isalnum()}
    free = [c for c in ALPHABET if c not in own.values()]
    return {w: own.get(w) or (free.pop(0) if free else str(n)) for n, w in enumerate(grid.whats, 1)}


def told(what: str, many: int, sign: dict[str, str]) -> str:
    """So many squares: "5 A", "1 block", "7 spaces"."""
    if what in (OPEN, BLOCK) and not sign.get(what):
        return f"{many} {what}{'s' * (many != 1)}"
    return f"{many} {sign[what]}"


def way(fabric: Fabric, grid: Grid, row: GridRow, *, left_handed: bool) -> str:
    """Which way a row runs as the right side is seen."""
    right = fabric.rows[row.index].right_side
    if grid.kind == "corner":
        near, far = ("left", "right") if left_handed else ("right", "left")
        return f"upper {near} to lower {far}" if right else f"lower {far} to upper {near}"
    return "right to left" if right != left_handed else "left to right"


def count(grid: Grid, row: GridRow, sign: dict[str, str]) -> str:
    """Squares of a row by what stands in them: "12 A, 5 B"."""
    many = Counter(c.what for c in row.cells)
    return ", ".join(told(w, many[w], sign) for w in grid.whats if many[w])


def square(grid: Grid, terms: str) -> str:
    """What one square is."""
    name = dialect(terms).term(grid.stitch).short
    if grid.kind == "filet":
        return f"One square is one mesh, {grid.each} stitches wide."
    return f"One square is one block of {name}." if grid.kind == "corner" else f"One square is one {name}."


def meaning(grid: Grid, what: str, sign: dict[str, str], terms: str) -> str:
    """An entry of the key."""
    if grid.kind == "filet":
        name, gap = dialect(terms).term(grid.stitch).short, grid.each - 1
        skip = "miss" if terms == "uk" else "sk"
        chains = f"{gap} ch" if terms == "uk" else f"ch {gap}"
        return f"space: {chains}, {skip} {gap}, {name} in next st" if what == OPEN else f"block: {name} in each of {grid.each} sts"
    if not what:
        return f"{sign[what]}: the yarn that has no name"
    return f"yarn {what}" if sign[what] == what else f"{sign[what]}: {what}"


def name_of(grid: Grid) -> str:
    """What kind of grid it is: "Filet grid"."""
    return {"filet": "Filet grid", "colour": "Colour grid", "corner": "Grid from corner to corner"}[grid.kind]


def describe(fabric: Fabric, section: Section, grid: Grid, window: Window, options: ChartOptions, notes: Sequence[str]) -> str:
    """The grid in words."""
    sign = signs(grid)
    found = [f"{section.name or 'Chart'}. {name_of(grid)}, seen from the right side. {square(grid, options.terms)}"]
    if section.base >= 0:
        base = fabric.rows[section.base]
        found.append(f"Begins on {base.end - base.start} ch.")
    for row in shown(grid, window):
        of = fabric.rows[row.index]
        side = "" if grid.closed and of.right_side else " (RS)" if of.right_side else " (WS)"
        cells = ", ".join(told(run[0].what, len(run), sign) for run in runs(row))
        total = count(grid, row, sign) if len({c.what for c in row.cells}) < len(runs(row)) else ""
        read = way(fabric, grid, row, left_handed=options.left_handed)
        found.append(f"{of.label or 'Row'}{side}, read {read}: {cells}{f' (in all {total})' if total else ''}.")
    return "\n".join(plain(line) for line in (*found, *notes))


def label(fabric: Fabric, row: GridRow) -> str:
    """The number on a row's tab."""
    return row_number(fabric.rows[row.index])
