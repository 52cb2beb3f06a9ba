"""A text as it is looked into while a fabric is woven."""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(slots=True)
class Looked:
    """A text, and which pieces of it were looked at: (row at hand, place counted from the start of that row, what stood there)."""

    text: str
    pieces: list[tuple[int, int, str]] = field(default_factory=list)
    row: int = 0
    start: int = 0

    def at_row(self, row: int, start: int) -> None:
        """Another row is at hand, which begins at `start`."""
        self.row, self.start = row, start

    def cut(self, start: int, end: int) -> str:
        """The text between two places."""
        piece = self.text[start:end]
        self.pieces.append((self.row, start - self.start, piece))
        return piece
