"""Charts of the parts of a fabric that are drawn as squares."""

from __future__ import annotations

from collections.abc import Sequence

from loopwright.drawing.chart.drawn import ChartDrawing, ChartOptions
from loopwright.drawing.chart.grid import Grid, Window, repeat, repeated, shown, windows
from loopwright.drawing.chart.grid_page import fitting, grid_page
from loopwright.drawing.chart.grid_words import describe, square
from loopwright.drawing.chart.grids import grid_of
from loopwright.drawing.chart.numbering import row_label
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.copies import in_words, sentence, told_of
from loopwright.grading.gauge import StitchSizes
from loopwright.model.fabric import Fabric

MOST = 60  # rows that a picture shows without being asked for the whole
LEAST_ACROSS, LEAST_NARROW = 20, 10  # squares across that are never cut; where a width is asked for
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
    found = [Window(0, 0, grid.wide, grid.high)] if whole else _windows(fabric, grid, options)
    last = min(len(found), MOST_PARTS) - 1
    return tuple(_drawing(fabric, section, grid, options, (found, n), told if n == last else ()) for n in range(last + 1))


def _windows(fabric: Fabric, grid: Grid, options: ChartOptions) -> list[Window]:
    """The repeat with its edges, where a grid that is too wide to be read in a column has one; else its parts."""
    counts = not options.width or grid.wide <= fitting(fabric, grid, options)  # the description has them too
    most = max(LEAST_NARROW if options.width else LEAST_ACROSS, fitting(fabric, grid, options, counts=counts))
    across, up = repeat(grid)
    wide, high = repeated(grid.wide, across, most, once=True), repeated(grid.high, up, MOST if grid.wide <= most else most, up)
    if (wide, high) != (grid.wide, grid.high) and wide <= MOST and high <= MOST:
        return [Window(0, 0, wide, high, counts)]
    return [w for w in windows(grid, most, MOST, counts=counts) if shown(grid, w)]


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
    speech = options.words
    notes = [f"{speech.say(f'drawn-as-{grid.kind}')} {square(grid, speech)}"]
    told = told_of(options.copies, fabric.rows[grid.rows[0].index].section)
    if options.left_handed:
        notes.append(speech.say("mirrored"))
    if told:
        notes.append(sentence(in_words(told, speech)))
    if grid.kind == "filet":
        notes.append(speech.say("filet-edge"))
    if grid.closed and grid.kind != "corner":
        notes.append(speech.say("unrolled-short"))
    windows_, at = part
    if len(windows_) > 1 or (window.x1, window.y1) != (grid.wide, grid.high):
        rows = shown(grid, window)
        first, last = (speech.row(label) if (label := row_label(fabric, rows[k].index)) else speech.say("row") for k in (0, -1))
        span, hand = speech.say("rows-shown", first=first, last=last), "left" if options.left_handed else "right"
        if len(windows_) > 1:
            squares = {"first": window.x0 + 1, "last": window.x1, "part": at + 1, "parts": len(windows_)}
            notes.append(speech.say(f"squares-shown-{hand}", **squares, n=grid.wide, rows=span))
        else:
            notes.append(speech.say(f"repeat-shown-{hand}", last=window.x1, n=grid.wide, rows=span, of=grid.high))
            notes += [speech.say(key, n=n) for key, n in zip(("repeats-across", "repeats-up"), repeat(grid), strict=True) if n]
        if grid.kind != "corner" and window.counts:
            notes.append(speech.say("counts-of-shown"))
        if len(windows_) > MOST_PARTS and at == MOST_PARTS - 1:
            notes.append(speech.say("parts-left-out", n=len(windows_) - MOST_PARTS))
    return notes
