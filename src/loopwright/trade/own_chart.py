"""A designer's own size chart: a plain table in the pattern, or a CSV file beside it.

    size        head circumference   hat height
    small       50 cm                19.5 cm
    large       56 cm                22 cm

Columns stand apart by tabs, bars, semicolons, commas or two spaces. Sizes may run down or across. Units stand with a figure
("50 cm", '7 1/2 in'), in a column's name ("head (in)"), or on a line of their own ("all in cm"). A dash or nothing = not known.
"""

from __future__ import annotations

import difflib
import re
from collections.abc import Sequence

from loopwright.record import record
from loopwright.source.expressions import Expression
from loopwright.trade.body import Chart, Length, Size, UnknownNameError, key_of, measure_name, measures

SOURCE = "the designer's own chart"
LONGEST_MM = 3000.0
_UNITS = {"cm": 10.0, "mm": 1.0, "m": 1000.0, "in": 25.4, "ins": 25.4, "inch": 25.4, "inches": 25.4, '"': 25.4, "”": 25.4, "″": 25.4}
_UNIT = r"cm|mm|m|inches|inch|ins|in|[\"”″]"
_FRACTIONS = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8", "⅓": " 1/3", "⅔": " 2/3"}
_VALUE = Expression(rf"^(?P<whole>\d+(?:[.,]\d+)?)?\s*(?P<part>\d{{1,4}}\s*/\s*\d{{1,4}})?\s*(?P<unit>{_UNIT})?\.?$")
_ALL_IN = Expression(rf"^(?:all |measurements? |figures |sizes )*(?:are )?(?:given )?in ({_UNIT}|centimet(?:re|er)s)\.?$")
_NONE = {"", "-", "–", "—", "n/a", "?"}


class ChartError(ValueError):
    """What is wrong with a chart, and where: line and column from 1."""

    def __init__(self, line: int, column: int, problem: str) -> None:
        super().__init__(f"line {line}, column {column}: {problem}")
        self.line, self.column, self.problem = line, column, problem


@record
class _Cell:
    text: str
    line: int
    column: int

    def error(self, problem: str) -> ChartError:
        return ChartError(self.line, self.column, problem)


def read_chart(text: str, title: str = "your chart", first_line: int = 1) -> Chart:
    """The chart written in `text`; `first_line` is the line its first stands on, for errors.

    Raises ChartError with line and column for whatever cannot be read, never another exception.
    """
    rows, unit = _rows(text, first_line)
    if len(rows) < 2:
        raise ChartError(first_line, 1, "a chart needs a line of names and at least one line of figures")
    if _is_measure(rows[1][0]) and not any(_is_measure(cell) for cell in rows[0][1:]):
        rows = _turned(rows)
    heads = _heads(rows[0][1:], unit)
    sizes: list[Size] = []
    for row in rows[1:]:
        if any(key_of(size.name) == key_of(row[0].text) for size in sizes):
            raise row[0].error(f"size '{row[0].text}' stands twice")
        sizes.append(_size(row, heads, title))
    return Chart("own", title, SOURCE, tuple(sizes))


def rows_of(text: str, first_line: int = 1) -> tuple[list[list[_Cell]], str]:
    """The cells of each line with their places, and the unit where a line gives one for all ("" where none does). Raises ChartError."""
    return _rows(text, first_line)


def _rows(text: str, first_line: int) -> tuple[list[list[_Cell]], str]:
    """The cells of each line, and the unit where a line gives one for all."""
    rows: list[list[_Cell]] = []
    unit = ""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").removeprefix("\ufeff").split("\n")
    mark = mark_of(lines)
    for number, line in enumerate(lines, first_line):
        plain = line.strip().lower()
        everywhere = _ALL_IN.match(plain.strip("()"))
        if everywhere:
            unit = "cm" if everywhere[1].startswith("centi") else everywhere[1]
        elif plain and set(plain) - set("-=|+: "):
            rows.append(_cells(line, number, mark))
    if rows and len(rows[0]) == 1 and len(rows) > 2:
        rows = rows[1:]  # a title above the table
    _even(rows)
    return rows, unit


def mark_of(lines: Sequence[str]) -> str:
    """What parts the columns: the first of these that more than one line has; a comma only where it is no decimal one."""
    for mark in (r"\t+", r"\|", ";"):
        if sum(bool(re.search(mark, line)) for line in lines) > 1:
            return mark
    spaced = sum(bool(re.search(r"\S {2,}\S", line)) for line in lines)
    commas = sum(line.count(",") > 0 for line in lines)
    return "," if commas > spaced else r" {2,}"


def _cells(line: str, number: int, mark: str) -> list[_Cell]:
    cells: list[_Cell] = []
    start = len(line) - len(line.lstrip()) if mark == r" {2,}" else 0
    if mark == r"\|" and line.strip().startswith("|"):
        line = line.rstrip().removesuffix("|")
        start = line.index("|") + 1
    for part in re.split(mark, line[start:].rstrip()):
        start = line.index(part, start) if part else start
        text = part.strip()
        cells.append(_Cell(text.strip('"') if text.count('"') > 1 else text, number, start + 1 + len(part) - len(part.lstrip())))
        start += len(part)
    return cells


def _even(rows: Sequence[list[_Cell]]) -> None:
    """Raises ChartError where a line has more cells than names; fills up one that has fewer with unknown ones."""
    for row in rows[1:]:
        if len(row) > len(rows[0]):
            raise row[len(rows[0])].error(f"{len(row)} columns here, but {len(rows[0])} names above")
        row.extend([_Cell("", row[-1].line, row[-1].column)] * (len(rows[0]) - len(row)))


def _turned(rows: Sequence[Sequence[_Cell]]) -> list[list[_Cell]]:
    return [list(column) for column in zip(*rows, strict=True)]


def _is_measure(cell: _Cell) -> bool:
    try:
        measure_name(bare(cell.text))
    except UnknownNameError:
        return False
    return True


def bare(name: str) -> str:
    """A column's name without its unit."""
    return re.sub(rf"\s*[(\[,]?\s*\b(?:in )?({_UNIT})\s*[)\]]?$", "", name.strip(), flags=re.IGNORECASE) if _unit_of(name) else name.strip()


def _unit_of(name: str) -> str:
    found = re.search(rf"[(\[,]\s*(?:in )?({_UNIT})\s*[)\]]?$|\s(cm|mm|inches|ins|in)$", name.strip().lower())
    return (found[1] or found[2]) if found else ""


def _heads(cells: Sequence[_Cell], unit: str) -> list[tuple[str, str]]:
    """Measurement and unit of each column."""
    heads: list[tuple[str, str]] = []
    for cell in cells:
        name = _measure(cell, bare(cell.text))
        if name in (known for known, _ in heads):
            raise cell.error(f"'{cell.text}' stands twice")
        heads.append((name, _unit_of(cell.text) or unit))
    return heads


def _measure(cell: _Cell, name: str) -> str:
    """The trade's name, or her own where nothing of the trade's is like it."""
    if not name:
        raise cell.error("a column without a name")
    try:
        return measure_name(name)
    except UnknownNameError as error:
        known = [said for measure in measures() for said in (measure.name, *measure.also)]
        if difflib.get_close_matches(name.lower(), known, n=1, cutoff=0.8):
            raise cell.error(str(error)) from error
    return " ".join(name.lower().split())


def _size(row: Sequence[_Cell], heads: Sequence[tuple[str, str]], title: str) -> Size:
    if not row[0].text:
        raise row[0].error("a size without a name")
    lengths: dict[str, Length] = {}
    for cell, (measure, unit) in zip(row[1:], heads, strict=True):
        if cell.text.lower() not in _NONE:
            low, high = _values(cell, unit)
            lengths[measure] = Length(round((low + high) / 2, 2), SOURCE, False, low, high)
    return Size(row[0].text, title, lengths)


def _values(cell: _Cell, unit: str) -> tuple[float, float]:
    """The length of a cell in mm; a range has two ends."""
    parts = re.split(r"\s*(?:[–—]|\bto\b|(?<=\d)\s*-\s*(?=\d))\s*", cell.text.lower())
    if len(parts) == 2:
        own = _VALUE.match(_plain(parts[1]))
        low, high = (_value(cell, part, (own and own["unit"]) or unit) for part in parts)
        if low > high:
            raise cell.error(f"'{cell.text}' runs downwards")
        return low, high
    value = _value(cell, cell.text.lower(), unit)
    return value, value


def _plain(text: str) -> str:
    for sign, plain in _FRACTIONS.items():
        text = text.replace(sign, plain)
    return re.sub(r"(?<=\d)-(?=\d+/)", " ", text.strip())


def _value(cell: _Cell, text: str, unit: str) -> float:
    found = _VALUE.match(_plain(text))
    if not found or not (found["whole"] or found["part"]):
        raise cell.error(f"'{cell.text}' is no length")
    factor = _UNITS.get(found["unit"] or unit)
    if factor is None:
        raise cell.error(f"'{cell.text}' has no unit; write cm or in with it, in the column's name, or on a line 'all in cm'")
    value = float((found["whole"] or "0").replace(",", "."))
    if found["part"]:
        above, _, below = found["part"].partition("/")
        if int(below) == 0:
            raise cell.error(f"'{cell.text}' is no length")
        value += int(above) / int(below)
    if not 0 < value * factor <= LONGEST_MM:
        raise cell.error(f"'{cell.text}' is no length of a body (more than 0, at most 3 m)")
    return value * factor
