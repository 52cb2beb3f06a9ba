"""Body sizes: charts of measurements by size, the trade's and the measured ones, and the designer's own."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import cache

from loopwright.trade import tables
from loopwright.trade.body import Chart, Length, Measure, Size, UnknownNameError, measure_name, measures, names, nearest, size_name
from loopwright.trade.own_chart import ChartError, read_chart
from loopwright.trade.tables import Entry

__all__ = [
    "CHARTS",
    "Chart",
    "ChartError",
    "Length",
    "Measure",
    "Size",
    "UnknownNameError",
    "chart",
    "measure_name",
    "measures",
    "read_chart",
    "size_name",
]

CHARTS = ("trade", "measured")
UNITS = {"inches": tables.MM_PER_INCH, "cm": 10.0, "mm": 1.0}


def chart(which: str) -> Chart:
    """The chart "trade" or "measured". Raises UnknownNameError for another."""
    if which not in CHARTS:
        raise UnknownNameError(f"no size chart '{which}'; {nearest(which, CHARTS)}")
    return _load(which)


@cache
def _load(which: str) -> Chart:
    return read_table(which, tables.load(f"sizes_{which}"))


def read_table(which: str, top: Entry) -> Chart:
    """A chart from its table. Raises TableError where the table is not in order."""
    title, about, sources = top.text("title"), top.text("about"), tables.sources(top)
    found: dict[str, dict[str, Length]] = {}
    for row in top.entries("row"):
        for size, length in _row(row, sources):
            lengths = found.setdefault(size, {})
            measure, value = length
            if measure in lengths:
                raise row.error(f"{measure} of {size} is given twice")
            lengths[measure] = value
    top.done()
    order = {name: at for at, name in enumerate(names().sizes)}
    return Chart(which, title, about, tuple(Size(n, title, found[n]) for n in sorted(found, key=lambda n: order[n])))


def _row(row: Entry, sources: Mapping[str, str]) -> Iterable[tuple[str, tuple[str, Length]]]:
    measure, source = row.text("measure"), row.source("source", sources)
    if measure not in names().measures:
        raise row.error(f"'{measure}' is no measurement of sizes_names.toml")
    weak, note = row.flag("weak"), row.text("note", "")
    units = [unit for unit in UNITS if unit in row]
    if len(units) != 1:
        raise row.error(f"the figures must stand in one of {', '.join(UNITS)}")
    values, factor = row.entry(units[0]), UNITS[units[0]]
    for size in values.left():
        if size not in names().sizes:
            raise row.error(f"'{size}' is no size of sizes_names.toml")
        low, high = values.span(size)
        middle = round((low + high) / 2 * factor, 2)
        yield size, (measure, Length(middle, source, weak, low * factor, high * factor, note))
    row.done()
