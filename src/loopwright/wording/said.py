"""Instructions in words, part by part: what pages and lists lay out, and what a plain text joins."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class RowWords:
    """A row: its label ("Rnd 3: "), what is worked, and the count at its end (" (24 sc)"). "" for what it does not have.

    `item`: index of the tree's item. `lead`: what stands before the label ("For size adult only: ", "First tie: ").
    """

    label: str
    words: str
    count: str
    item: int = -1
    lead: str = ""

    @property
    def text(self) -> str:
        """The whole row on one line."""
        return f"{self.lead}{self.label}{self.words}{self.count}"


@dataclass(frozen=True, slots=True)
class SectionWords:
    """A heading of a section, with how often it is made ("Sleeve (make 2)")."""

    title: str
    item: int = -1

    @property
    def text(self) -> str:
        """As it stands in a plain text, after an empty line."""
        return f"\n{self.title}"


@dataclass(frozen=True, slots=True)
class ProseWords:
    """Words between the rows that are no row."""

    text: str
    item: int = -1


Said = RowWords | SectionWords | ProseWords
