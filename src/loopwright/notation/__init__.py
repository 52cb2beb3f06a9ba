"""Text to tree: labels, counts, rows, headings. What cannot be read stays as it stands."""

from loopwright.notation.reading import read, write

__all__ = ["read", "write"]
