"""Tables of facts: TOML files beside this module, read once and checked, with clear errors."""

from __future__ import annotations

import math
import tomllib
from collections.abc import Iterator, Mapping
from functools import cache

from loopwright.shipped import shipped_text

MM_PER_INCH = 25.4
SCHEMA = 1

Span = tuple[float, float]


class TableError(ValueError):
    """A table that does not keep to its shape: which file, where in it, what is wrong."""

    def __init__(self, table: str, where: str, problem: str) -> None:
        super().__init__(f"{table}.toml, {where or 'the file'}: {problem}")
        self.table, self.where, self.problem = table, where, problem


class Entry:
    """One table of a file: values are taken by key and type; what is left over at the end is an error."""

    def __init__(self, table: str, where: str, values: object) -> None:
        if not isinstance(values, dict):
            raise TableError(table, where, "a table is expected here")
        self.table, self.where = table, where
        self._values: dict[str, object] = dict(values)

    def __contains__(self, key: str) -> bool:
        return key in self._values

    def error(self, problem: str) -> TableError:
        """The error to raise for this entry."""
        return TableError(self.table, self.where, problem)

    def _take(self, key: str, default: object) -> object:
        if key in self._values:
            return self._values.pop(key)
        if default is None:
            raise self.error(f"'{key}' is missing")
        return default

    def text(self, key: str, default: str | None = None) -> str:
        """A string. Raises TableError where it is missing (without default), empty or of another type."""
        value = self._take(key, default)
        if not isinstance(value, str) or (not value and default is None):
            raise self.error(f"'{key}' must be a text that is not empty")
        return value

    def number(self, key: str, default: float | None = None) -> float:
        """A finite number, never below nought."""
        return self._number(key, self._take(key, default))

    def _number(self, key: str, value: object) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise self.error(f"'{key}' must be a number")
        if not value >= 0 or value == float("inf"):
            raise self.error(f"'{key}' must be a number of 0 or more, not {value}")
        return float(value)

    def signed(self, key: str) -> float:
        """A finite number, above or below nought."""
        value = self._take(key, None)
        if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            raise self.error(f"'{key}' must be a number")
        return float(value)

    def whole(self, key: str, default: int | None = None) -> int:
        """A whole number of 0 or more."""
        return self._whole(key, self._take(key, default))

    def _whole(self, key: str, value: object) -> int:
        if isinstance(value, bool) or not isinstance(value, int) or value < 0:
            raise self.error(f"'{key}' must be a whole number of 0 or more")
        return value

    def whole_numbers(self, key: str, default: tuple[int, ...] | None = None) -> tuple[int, ...]:
        """A list of whole numbers."""
        value = self._take(key, default)
        if not isinstance(value, list | tuple):
            raise self.error(f"'{key}' must be a list of whole numbers")
        return tuple(self._whole(key, x) for x in value)

    def pair(self, key: str) -> tuple[int, int]:
        """Two whole numbers, below nought too."""
        return self._pair(key, self._take(key, None))

    def pairs(self, key: str) -> tuple[tuple[int, int], ...]:
        """A list of pairs of whole numbers."""
        value = self._take(key, None)
        if not isinstance(value, list):
            raise self.error(f"'{key}' must be a list of pairs")
        return tuple(self._pair(key, pair) for pair in value)

    def _pair(self, key: str, value: object) -> tuple[int, int]:
        if not isinstance(value, list) or len(value) != 2 or any(isinstance(x, bool) or not isinstance(x, int) for x in value):
            raise self.error(f"'{key}' must be a pair of whole numbers")
        return value[0], value[1]

    def source(self, key: str, known: Mapping[str, str]) -> str:
        """The source that a short name stands for. Raises TableError where the file has none of that name."""
        name = self.text(key)
        if name not in known:
            raise self.error(f"'{name}' is no source of this file")
        return known[name]

    def span(self, key: str) -> Span:
        """A range: a number alone or a pair from low to high."""
        value = self._take(key, None)
        if not isinstance(value, list):
            only = self._number(key, value)
            return only, only
        if len(value) != 2:
            raise self.error(f"'{key}' must be a number or a pair from low to high")
        low, high = (self._number(key, x) for x in value)
        if low > high:
            raise self.error(f"'{key}' runs from {low:g} down to {high:g}")
        return low, high

    def flag(self, key: str, default: bool = False) -> bool:
        """True or false; false where it is not given."""
        value = self._values.pop(key, default)
        if not isinstance(value, bool):
            raise self.error(f"'{key}' must be true or false")
        return value

    def texts(self, key: str, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """A list of strings."""
        value = self._take(key, default)
        if not isinstance(value, list | tuple) or not all(isinstance(x, str) for x in value):
            raise self.error(f"'{key}' must be a list of texts")
        return tuple(value)

    def text_groups(self, key: str) -> tuple[tuple[str, ...], ...]:
        """A list of lists of strings, none of them empty."""
        value = self._take(key, None)
        found: list[tuple[str, ...]] = []
        for group in value if isinstance(value, list) else [None]:
            if not isinstance(group, list) or not group or not all(isinstance(x, str) for x in group):
                raise self.error(f"'{key}' must be a list of lists of texts")
            found.append(tuple(group))
        return tuple(found)

    def entry(self, key: str) -> Entry:
        """A table below this one."""
        return Entry(self.table, f"{self.where} {key}".strip(), self._take(key, None))

    def entries(self, key: str) -> Iterator[Entry]:
        """The tables of a list ([[key]]), numbered from 1."""
        value = self._take(key, None)
        if not isinstance(value, list):
            raise self.error(f"'{key}' must be a list of tables")
        for number, item in enumerate(value, 1):
            yield Entry(self.table, f"{self.where} {key} {number}".strip(), item)

    def left(self) -> tuple[str, ...]:
        """The keys not yet taken, as written."""
        return tuple(self._values)

    def done(self) -> None:
        """Raises TableError where something was given that nobody asked for."""
        if self._values:
            raise self.error(f"unknown: {', '.join(sorted(self._values))}")


def parse(name: str, text: str) -> Entry:
    """The whole of a table from its text. Raises TableError where it is not TOML or of another schema."""
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise TableError(name, "the file", f"not readable as TOML: {error}") from error
    top = Entry(name, "", values)
    if top.number("schema") != SCHEMA:
        raise top.error(f"only schema {SCHEMA} is known")
    return top


@cache
def _text(name: str) -> str:
    return shipped_text("loopwright.trade", f"data/{name}.toml")


def load(name: str) -> Entry:
    """The table of that name in data/. Raises TableError, or FileNotFoundError where there is none."""
    return parse(name, _text(name))


def sources(top: Entry) -> dict[str, str]:
    """The sources of a table by their short names."""
    entry = top.entry("sources")
    return {key: entry.text(key) for key in entry.left()}
