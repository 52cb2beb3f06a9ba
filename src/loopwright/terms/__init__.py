"""How stitches are said: dialects as data, and the one table from words to stitches."""

from loopwright.terms.dialect import Dialect, Term, dialect

__all__ = ["Dialect", "Term", "dialect"]
