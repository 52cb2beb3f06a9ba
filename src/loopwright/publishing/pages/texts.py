"""Running words as the template takes them: a list of plain strings, blanks with a letter, and addresses."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from loopwright.publishing.document import Text, Varies, in_brackets
from loopwright.publishing.pages.signs import plain

_ADDRESS = re.compile(r"https?://[^\s<>\"'()]+[^\s<>\"'().,;:!?]")
Pieces = list[str | dict[str, str]]


def pieces(text: Text | str) -> Pieces:
    """Words with all sizes in brackets; addresses become links."""
    return list(_linked(plain(text if isinstance(text, str) else in_brackets(text))))


def _linked(text: str) -> Iterator[str | dict[str, str]]:
    at = 0
    for m in _ADDRESS.finditer(text):
        if m.start() > at:
            yield text[at : m.start()]
        yield {"link": m[0]}
        at = m.end()
    if at < len(text):
        yield text[at:]


class Blanks:
    """Letters for the numbers of a row that differ by size: one for each list of numbers, however often it stands in the row."""

    def __init__(self) -> None:
        self.lists: list[tuple[str, ...]] = []

    def pieces(self, text: Text) -> Pieces:
        """Words with a lettered blank where a number differs by size."""
        found: Pieces = []
        for part in text:
            found += [{"blank": self.letter(part.values)}] if isinstance(part, Varies) else _linked(plain(part))
        return found

    def letter(self, values: tuple[str, ...]) -> str:
        """The letter of a list of numbers: a, b, c … z, aa."""
        if values not in self.lists:
            self.lists.append(values)
        return self._name(self.lists.index(values))

    def lines(self) -> list[dict[str, Any]]:
        """A line of numbers per letter."""
        return [{"letter": self._name(i), "values": [plain(v) for v in values]} for i, values in enumerate(self.lists)]

    @staticmethod
    def _name(index: int) -> str:
        letter = chr(ord("a") + index % 26)
        return letter * (1 + index // 26)
