"""A lesson as it was heard: its words with their times, and the words of the trade in them."""

from __future__ import annotations

from loopwright.listening.captions import Heard
from loopwright.listening.words import Line
from loopwright.record import record

_QUOTED = 24  # words of a doubt that are quoted


@record
class Hearing:
    """`said`: every word; `line`: the words of the trade, settled; `terms`: us or uk."""

    said: tuple[Heard, ...]
    line: Line
    terms: str

    def at_s(self, token: int) -> float | None:
        """The second at which a word of the trade is said."""
        if not self.line.tokens:
            return None
        at = self.said[self.line.tokens[max(0, min(token, len(self.line.tokens) - 1))].first].at_s
        return None if at is None else round(at, 2)

    def words(self, start: int, end: int) -> str:
        """What was said between two words of the trade."""
        tokens = self.line.tokens
        if not tokens or start >= len(tokens):
            return ""
        return self.between(tokens[start].first, tokens[max(start, min(end, len(tokens)) - 1)].last)

    def between(self, first: int, last: int) -> str:
        """The words heard from one to another, shortened where they are many."""
        words = [h.word for h in self.said[first : last + 1]]
        return " ".join(words if len(words) <= _QUOTED else [*words[:_QUOTED], "…"])
