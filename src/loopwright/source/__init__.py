"""Text and positions: the only place that knows lines, columns and UTF-16 offsets."""

from loopwright.source.text import Position, Source, Span

__all__ = ["Position", "Source", "Span"]
