"""A designer's own size chart as text: one figure changed, a size or a measurement added, a new chart laid out."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from loopwright.trade import own_chart
from loopwright.trade.body import UnknownNameError, key_of, measure_name

_NOT_KNOWN = "-"


def laid_out(sizes: Sequence[str], figures: Mapping[str, Sequence[float | None]]) -> str:
    """A chart in centimetres, sizes downwards. `figures`: per measurement one length for each size, in mm, None where not known."""
    rows = [["size", *figures]]
    for i, size in enumerate(sizes):
        rows.append([size, *(_cm(lengths[i]) for lengths in figures.values())])
    return "\n".join(_line(row, _wide(rows), "  ") for row in rows) + "\n"


def with_figure(text: str, size: str, measure: str, said: str) -> str:
    """The chart with one figure as it is said; a size or a measurement that it does not have is added.

    Raises own_chart.ChartError where the chart, or the figure in it, cannot be read.
    """
    grid, sizes_down = _grid(text)
    across, down = (measure, size) if sizes_down else (size, measure)
    column = _found(grid[0][1:], across, measures=sizes_down)
    row = _found([cells[0] for cells in grid[1:]], down, measures=not sizes_down)
    if column is None:
        grid[0].append(across)
        for cells in grid[1:]:
            cells.append(_NOT_KNOWN)
        column = len(grid[0]) - 2
    if row is None:
        grid.append([down, *[_NOT_KNOWN] * (len(grid[0]) - 1)])
        row = len(grid) - 2
    grid[row + 1][column + 1] = " ".join(said.split()) or _NOT_KNOWN
    made = _written(text, grid)
    own_chart.read_chart(made)
    return made


def _grid(text: str) -> tuple[list[list[str]], bool]:
    """The cells as they are written, all rows of one length, and whether the sizes run down."""
    rows, _ = own_chart.rows_of(text)
    if len(rows) < 2:
        raise own_chart.ChartError(1, 1, "a chart needs a line of names and at least one line of figures")
    across = any(_is_measure(cell.text) for cell in rows[0][1:])
    sizes_down = across or not _is_measure(rows[1][0].text)
    return [[cell.text for cell in row] for row in rows], sizes_down


def _written(text: str, grid: Sequence[Sequence[str]]) -> str:
    """The grid in the manner of the text: the same mark between its columns, other lines as they are."""
    lines = text.replace("\r\n", "\n").split("\n")
    mark = own_chart.mark_of(lines)
    between = {r"\t+": "\t", r"\|": " | ", ";": "; ", ",": ", "}.get(mark, "  ")
    barred = mark == r"\|" and any(line.strip().startswith("|") for line in lines)
    wide = _wide(grid) if between in ("  ", " | ") else [0] * len(grid[0])
    at = {cells[0].line: n for n, cells in enumerate(own_chart.rows_of(text)[0])}
    made, last = [], 0
    for number, line in enumerate(lines, 1):
        if number in at:
            said = _line(grid[at[number]], wide, between)
            made.append(f"| {said} |" if barred else said)
            last = len(made)
        else:
            made.append(line)
    more = [_line(cells, wide, between) for cells in grid[len(at) :]]
    made[last:last] = [f"| {said} |" if barred else said for said in more]
    return "\n".join(made)


def _found(names: Sequence[str], wanted: str, *, measures: bool) -> int | None:
    for n, name in enumerate(names):
        plain = own_chart.bare(name) if measures else name
        if key_of(plain) == key_of(wanted) or measures and _measure(plain) == _measure(wanted):
            return n
    return None


def _measure(name: str) -> str:
    try:
        return measure_name(name)
    except UnknownNameError:
        return " ".join(name.lower().split())


def _is_measure(name: str) -> bool:
    try:
        measure_name(own_chart.bare(name))
    except UnknownNameError:
        return False
    return True


def _line(cells: Sequence[str], wide: Sequence[int], between: str) -> str:
    return between.join(f"{cell:<{w}}" for cell, w in zip(cells, wide, strict=True)).rstrip()


def _wide(rows: Sequence[Sequence[str]]) -> list[int]:
    return [max(len(row[n]) for row in rows) + 1 for n in range(len(rows[0]))]


def _cm(mm: float | None) -> str:
    return _NOT_KNOWN if mm is None else f"{round(mm / 10, 1):g} cm"


def one_line(name: str) -> str:
    """A size's name as a chart can hold it: no marks that part columns."""
    return re.sub(r"[\t|;,]| {2,}", " ", name).strip()
