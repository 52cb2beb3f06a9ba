"""Lines that were read before: one that says the same is not read again, wherever it stands now."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from loopwright.kept import Kept, kept
from loopwright.model.moved import moved
from loopwright.model.still import same_rows
from loopwright.model.tree import Item, Node, Row
from loopwright.notation.nodes import nodes_of
from loopwright.terms import Dialect

MOST_LINES = 4_000  # kept between calls

class Known:
    """Rows of one text by their words, and what is made in them by theirs: rows often share both, or all but the count."""

    __slots__ = ("_bodies", "alone", "rows")

    def __init__(self, memo: dict[Any, Any] | None = None) -> None:
        self.rows: dict[tuple[bool, str], tuple[int, Row, list[Item]]] = {}
        self.alone: set[str] = set()
        """Words behind a plain label that are one row: no other label is in them."""
        self._bodies: Kept[tuple[str, int, int], tuple[int, tuple[Node, ...], int, Dialect]] = kept(memo, "bodies", MOST_LINES)

    def nodes(self, text: str, start: int, end: int, which: Dialect, sizes: int) -> tuple[tuple[Node, ...], int]:
        """The nodes of a row's words, and how many words in it are unknown."""
        key = text[start - 1 : end] if start else text[:end], id(which), sizes
        held = self._bodies.get(key)
        if held is None:
            held = self._bodies[key] = start, *nodes_of(text, start, end, which, sizes), which  # which keeps its id
        return moved(held[1], start - held[0]), held[2]


ReadLine = Callable[[str, int, int, Dialect, int, bool, Known], list[Item]]


class Remembered:
    """The lines and definitions of earlier texts; out of the memo, where there is one."""

    def __init__(self, memo: dict[Any, Any] | None) -> None:
        self._memo = memo
        self._lines: Kept[Any, tuple[int, list[Item], Dialect]] = kept(memo, "lines", MOST_LINES)

    def line(
        self, read: ReadLine, text: str, start: int, end: int, which: Dialect, sizes: int, seen_row: bool, known: Known,
    ) -> list[Item]:
        """The items of a line: as `read` gives them, or as they were given for such a line before."""
        if self._memo is None:
            return read(text, start, end, which, sizes, seen_row, known)
        key = (text[start - 1 : end] if start else text[:end], start > 0, id(which), sizes, seen_row)
        held = self._lines.get(key)
        if held is None:
            items = read(text, start, end, which, sizes, seen_row, known)
        elif held[0] != start:
            items = [moved(i, start - held[0]) for i in held[1]]
            same_rows(self._memo, held[1], items)
        else:
            return list(held[1])
        self._lines[key] = (start, items, which)  # which keeps its id
        return list(items)

    def definition(self, text: str, start: int, end: int, which: Dialect) -> tuple[Node, ...]:
        """The words of a special stitch."""
        if self._memo is None:
            return nodes_of(text, start, end, which, 1)[0]
        definitions, key = kept(self._memo, "definitions", MOST_LINES), (text[start:end], id(which))
        held: tuple[int, tuple[Node, ...], Dialect] | None = definitions.get(key)
        if held is None:
            held = definitions[key] = start, nodes_of(text, start, end, which, 1)[0], which  # which keeps its id
        return moved(held[1], start - held[0])
