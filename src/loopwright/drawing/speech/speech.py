"""What a drawing asks of whoever puts it into words."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Protocol

from loopwright.drawing.speech.things import Thing


class Speech(Protocol):
    """Words for drawings. Those of `say` are named in english.toml."""

    def say(self, key: str, **slots: int | str) -> str:
        """A sentence or a word with its slots filled; `n` decides the plural. Raises KeyError for a key that there is not."""

    def stitch(self, kind: str, n: int = 1) -> str:
        """A stitch by its US key, as counts have it: short where it has a short form."""

    def named(self, kind: str) -> str:
        """A stitch as the key of a chart has it: short form and name."""

    def name(self, said: str) -> str:
        """The name of a part, a size or a measure, as the pattern has it in English."""

    def measure(self, said: str) -> str:
        """The name of a measure: "around", "depth"."""

    def row(self, label: str) -> str:
        """The label of a row: "Rnd 3"."""

    def own(self, said: str) -> str:
        """The designer's own words."""

    def decimal(self, number: str) -> str:
        """A number with a decimal point, with the sign of the language."""

    def listed(self, words: Sequence[str]) -> str:
        """Words with "and" before the last of them."""

    def worked(self, things: Sequence[Thing]) -> str:
        """What is worked in a row."""
