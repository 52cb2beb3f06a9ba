"""A grid in words, row by row; letters for its colours; what a square is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from loopwright.drawing.chart.drawn import ChartOptions
from loopwright.drawing.chart.grid import BLOCK, OPEN, Grid, GridRow, Window, runs, shown
from loopwright.drawing.chart.numbering import row_label, row_number
from loopwright.drawing.chart.sections import Section
from loopwright.drawing.chart.words import named
from loopwright.drawing.chart.yarns import called
from loopwright.drawing.lettering import plain
from loopwright.drawing.speech import Speech
from loopwright.model.fabric import Fabric

LONGEST_SIGN = 2
ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def signs(grid: Grid) -> dict[str, str]:
    """A letter or two for everything that stands in squares: a colour's own where its name is so short, else the next free letter."""
    if grid.kind == "filet":
        return {OPEN: "", BLOCK: ""}
    own = {w: w for w in grid.whats if 0 < len(w) <= LONGEST_SIGN and w.isalnum()}
    free = [c for c in ALPHABET if c not in own.values()]
    return {w: own.get(w) or (free.pop(0) if free else str(n)) for n, w in enumerate(grid.whats, 1)}


def told(what: str, many: int, sign: dict[str, str], speech: Speech) -> str:
    """So many squares: "5 A", "1 block", "7 spaces"."""
    if what in (OPEN, BLOCK) and not sign.get(what):
        return speech.say(what, n=many)
    return f"{many} {sign[what]}"


def way(fabric: Fabric, grid: Grid, row: GridRow, *, left_handed: bool) -> str:
    """Which way a row runs as the right side is seen: a key of what drawings say."""
    right = fabric.rows[row.index].right_side
    if grid.kind == "corner":
        near, far = ("left", "right") if left_handed else ("right", "left")
        return f"upper-{near}-to-lower-{far}" if right else f"lower-{far}-to-upper-{near}"
    return "right-to-left" if right != left_handed else "left-to-right"


def count(grid: Grid, row: GridRow, sign: dict[str, str], speech: Speech) -> str:
    """Squares of a row by what stands in them: "12 A, 5 B"."""
    many = Counter(c.what for c in row.cells)
    return ", ".join(told(w, many[w], sign, speech) for w in grid.whats if many[w])


def square(grid: Grid, speech: Speech) -> str:
    """What one square is."""
    return speech.say(f"square-{grid.kind}", n=grid.each, stitch=speech.stitch(grid.stitch))


def meaning(grid: Grid, what: str, sign: dict[str, str], options: ChartOptions) -> str:
    """An entry of the key."""
    speech = options.words
    if grid.kind == "filet":
        name = speech.stitch(grid.stitch)
        if what == OPEN:
            return speech.say(f"space-means-{options.terms}", n=grid.each - 1, stitch=name)
        return speech.say("block-means", stitch=name, n=grid.each)
    if not what:
        return speech.say("yarn-unnamed", sign=sign[what])
    name = called(what, options)
    return speech.say("yarn-named", name=name) if sign[what] == name else speech.say("yarn-sign", sign=sign[what], name=name)


def name_of(grid: Grid, speech: Speech) -> str:
    """What kind of grid it is: "Filet grid"."""
    return speech.say(f"grid-{grid.kind}")


def describe(fabric: Fabric, section: Section, grid: Grid, window: Window, options: ChartOptions, notes: Sequence[str]) -> str:
    """The grid in words."""
    sign, speech = signs(grid), options.words
    found = [f"{speech.say('begins', name=named(section, speech), shape=name_of(grid, speech))} {square(grid, speech)}"]
    if section.base >= 0:
        base = fabric.rows[section.base]
        found.append(speech.say("begins-on", n=base.end - base.start))
    for row in shown(grid, window):
        of = fabric.rows[row.index]
        side = "" if grid.closed and of.right_side else f" ({speech.say('rs' if of.right_side else 'ws')})"
        cells = ", ".join(told(run[0].what, len(run), sign, speech) for run in runs(row))
        total = count(grid, row, sign, speech) if len({c.what for c in row.cells}) < len(runs(row)) else ""
        read = speech.say(way(fabric, grid, row, left_handed=options.left_handed))
        label_ = f"{speech.row(known) if (known := row_label(fabric, row.index)) else speech.say('row')}{side}"
        found.append(speech.say("grid-row-all" if total else "grid-row", row=label_, way=read, cells=cells, count=total))
    return "\n".join(plain(line) for line in (*found, *notes))


def label(fabric: Fabric, row: GridRow) -> str:
    """The number on a row's tab."""
    return row_number(fabric, row.index)
