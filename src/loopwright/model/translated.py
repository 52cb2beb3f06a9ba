"""A pattern written in another language: its own text, the text in the reader's words, and the way back from one to the other."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import field
from typing import NamedTuple

from loopwright.record import record
from loopwright.source import Span


class Piece(NamedTuple):
    """`made[start:end]` says what `original[was_start:was_end]` says."""

    start: int
    end: int
    was_start: int
    was_end: int


@record
class Translated:
    """The original and its translation. `language`: code ("de"). `original`: as written. `made`: the same in the reader's own words.

    `made` has the lines of the original, but that a line broken for its length is whole. `pieces` are in the order of `made`, without overlap; their originals may stand in another order. What stands between pieces is space.
    `said`: whether the language was told, not found out.
    """

    language: str
    original: str
    made: str
    pieces: tuple[Piece, ...]
    said: bool = False
    starts: tuple[int, ...] = field(default=(), compare=False)

    def back(self, span: Span) -> Span:
        """The smallest range of the original that holds what a range of `made` says; both in code points."""
        first = max(0, bisect_right(self.starts, span.start) - 1)
        last = max(first + 1, bisect_left(self.starts, span.end))
        inside = [p for p in self.pieces[first:last] if p.end > span.start and p.start < max(span.end, span.start + 1)]
        if not inside:
            at = self.pieces[first].was_end if self.pieces and self.pieces[first].start <= span.start else 0
            return Span(at, at)
        ends = [_within(p, span) for p in inside]
        return Span(min(a for a, _ in ends), max(b for _, b in ends))

    def words(self, span: Span) -> str:
        """What the original says where `made` has a range."""
        back = self.back(span)
        return self.original[back.start : back.end]

    def kept(self, span: Span) -> bool:
        """Whether a range of `made` stands in the original, letter by letter."""
        return self.made[span.start : span.end] == self.words(span)


def _within(piece: Piece, span: Span) -> tuple[int, int]:
    """The part of a piece's original that a range covers: letter by letter where both are as long, else all of it."""
    if piece.end - piece.start != piece.was_end - piece.was_start:
        return piece.was_start, piece.was_end
    start, end = max(piece.start, span.start), min(piece.end, max(span.end, span.start))
    return piece.was_start + start - piece.start, piece.was_start + max(start, end) - piece.start
