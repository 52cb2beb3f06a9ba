"""A text with normalised newlines, spans into it, and the positions that people and editors count in.

Not a reader: decoding bytes and opening files happens in the workshop.
"""

from __future__ import annotations

from bisect import bisect_right
from dataclasses import field

from loopwright.record import record


@record
class Span:
    """A half-open range of code points in a source's normalised text."""

    start: int
    end: int

    def cover(self, other: Span) -> Span:
        """The smallest span that holds both."""
        return Span(min(self.start, other.start), max(self.end, other.end))


@record
class Position:
    """A place as a person counts it: line and column, both from 1."""

    line: int
    column: int


@record
class Source:
    """A written text. `text` has line feeds for newlines and no byte order mark; `name` is what messages call it."""

    text: str
    name: str = "pattern"
    line_starts: tuple[int, ...] = field(default=(), compare=False)

    @classmethod
    def of(cls, raw: str, name: str = "pattern") -> Source:
        """A source out of any text: drops a byte order mark, turns CRLF and CR into LF."""
        text = raw.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")
        starts = [0]
        at = text.find("\n")
        while at >= 0:
            starts.append(at + 1)
            at = text.find("\n", at + 1)
        return cls(text, name, tuple(starts))

    def line_of(self, offset: int) -> int:
        """Line number, from 1, of a code point offset; offsets past the end belong to the last line."""
        return bisect_right(self.line_starts, max(0, offset)) or 1

    def position(self, offset: int) -> Position:
        """Line and column, from 1, of a code point offset."""
        line = self.line_of(offset)
        return Position(line, offset - self.line_starts[line - 1] + 1)

    def line_text(self, line: int) -> str:
        """The text of a line (from 1), without its newline."""
        start = self.line_starts[line - 1]
        end = self.line_starts[line] - 1 if line < len(self.line_starts) else len(self.text)
        return self.text[start:end]

    def utf16(self, offset: int) -> int:
        """The offset in UTF-16 code units, as browsers count."""
        head = self.text[:offset]
        return offset + sum(1 for c in head if ord(c) > 0xFFFF)

    def cut(self, span: Span) -> str:
        """The text under a span."""
        return self.text[span.start : span.end]
