"""Instructions in words, part by part: what pages and lists lay out, and what a plain text joins."""

from __future__ import annotations

import re

from loopwright.record import record

_FOREIGN = re.compile(r"\[[a-z]{2}: ")


@record
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


@record
class SectionWords:
    """A heading of a section, with how often it is made ("Sleeve (make 2)")."""

    title: str
    item: int = -1

    @property
    def text(self) -> str:
        """As it stands in a plain text, after an empty line."""
        return f"\n{self.title}"


@record
class ProseWords:
    """Words between the rows that are no row."""

    text: str
    item: int = -1


Said = RowWords | SectionWords | ProseWords


@record
class HeadWords:
    """A line of the heading.

    `key`: what it is whatever the language ("hook", "terms", "sizes", "gauge", "turning chain", "measurements", "abbreviations",
    "special", "notes", "safety", else the designer's own name in small letters); "" for words under no name.
    """

    key: str
    name: str
    value: str

    @property
    def text(self) -> str:
        """The line."""
        return f"{self.name}: {self.value}" if self.name else self.value


@record
class Heading:
    """What stands before the first section. `top`: title and what follows it; `fit`: sentences of blanks that are not filled.

    `abbreviations`: short and long form of those that are used. `cautions`: among them the sentence that refers to local rules, last.
    """

    top: tuple[str, ...]
    lines: tuple[HeadWords, ...]
    abbreviations: tuple[tuple[str, str], ...]
    fit: tuple[str, ...]
    cautions: tuple[HeadWords, ...]

    @property
    def text(self) -> str:
        """The heading as plain text."""
        parts = ("\n".join(self.top), "\n".join(x.text for x in self.lines), "\n".join(self.fit), "\n".join(x.text for x in self.cautions))
        return "\n\n".join(p for p in parts if p) + "\n"


def capital(text: str) -> str:
    """The first letter of a sentence large; a number or a star may stand before it. Words kept in another language stay."""
    if _FOREIGN.match(text):
        return text
    at = next((i for i, c in enumerate(text) if c.isalnum()), 0)
    return text[:at] + text[at : at + 1].upper() + text[at + 1 :]
