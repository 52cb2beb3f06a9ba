"""Charts of the parts of a fabric that are drawn as squares."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions
from loopwright.drawing.chart.grid import Grid, Window, shown, windows
from loopwright.drawing.chart.grid_page import grid_page
from loopwright.drawing.chart.grid_words import describe, name_of, square
from loopwright.drawing.chart.grids import grid_of
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.copies import told_of
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric

MOST = 60  # squares across or up that a picture shows without being asked for the whole
MOST_PARTS = 12
MOST_WHOLE = 60_000  # squares


def grid_charts(
    fabric: Fabric, section: Section, sizes: StitchSizes, options: ChartOptions, told: Sequence[str] = (),
) -> tuple[ChartDrawing, ...]:
    """The pictures of a part with all its rows, one after the other; none where it is no grid. `told`: more notes for the last of them."""
    grid = grid_of(fabric, section, sizes)
    if grid is None:
        return ()
    whole = options.whole and sum(len(r.cells) for r in grid.rows) <= MOST_WHOLE
    found = [Window(0, 0, grid.wide, grid.high)] if whole else [w for w in windows(grid, MOST) if shown(grid, w)]
    last = min(len(found), MOST_PARTS) - 1
    return tuple(_drawing(fabric, section, grid, options, (found, n), told if n == last else ()) for n in range(last + 1))


def _drawing(
    fabric: Fabric, section: Section, grid: Grid, options: ChartOptions, part: tuple[list[Window], int], more: Sequence[str],
) -> ChartDrawing:
    window = part[0][part[1]]
    notes = [*_notes(fabric, grid, window, part, options), *more]
    told = describe(fabric, section, grid, window, options, notes)
    picture = grid_page(fabric, section, grid, window, options, (notes, told))
    rows = shown(grid, window)
    return ChartDrawing(picture, told, grid.kind, section.name, (rows[0].index, rows[-1].index), tuple(notes))


def _notes(fabric: Fabric, grid: Grid, window: Window, part: tuple[list[Window], int], options: ChartOptions) -> list[str]:
    notes = [f"Drawn as a {name_of(grid).lower()}. {square(grid, options.terms)}"]
    told = told_of(options.copies, fabric.rows[grid.rows[0].index].section)
    if told:
        notes.append(f"{told[0].upper()}{told[1:]}.")
    if grid.kind == "filet":
        notes.append("The first stitch of a row, or the chain that counts as one, is the line at its edge: it has no square.")
    if grid.closed and grid.kind != "corner":
        notes.append("Worked in the round; drawn unrolled.")
    windows_, at = part
    if len(windows_) > 1:
        rows = shown(grid, window)
        first, last = (fabric.rows[rows[k].index].label or "Row" for k in (0, -1))
        side = "left" if options.left_handed else "right"
        squares = f"squares {window.x0 + 1} to {window.x1} of {grid.wide}, counted from the {side}"
        notes.append(f"Shown: {squares}; {first} to {last}. Part {at + 1} of {len(windows_)}.")
        if grid.kind != "corner":
            notes.append("Counts beside a row are those of the squares shown.")
        if len(windows_) > MOST_PARTS and at == MOST_PARTS - 1:
            notes.append(f"{len(windows_) - MOST_PARTS} more parts are left out: ask for the whole.")
    return notes
