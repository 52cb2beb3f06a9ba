"""Editions: for whom a document is made, and how it is laid out."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from loopwright.record import record

Paper = Literal["a4", "letter", "phone"]
Design = Literal["columns", "ledger", "far"]
"""Page designs: columns of all sizes beside the words; one size with counts as a ruler in the margin; large print."""


@record
class Edition:
    """What is chosen for one document.

    `size`: index of the one size it is for, None for all. `terms`: us, uk or old, of English. `language`: a code ("de"). `design`: None
    takes columns for several sizes, ledger for one, far for large print. `words_only`: no pictures. `ink_saving`: no shading, photographs
    or cover. `spelled_out` and `full_words` are on in large print. `accent`: a colour of the designer's, "#RRGGBB", "" for none.
    `typeface`: a family of her own that is given along with the fonts, "" for ours.
    """

    size: int | None = None
    terms: str = "us"
    language: str = "en"
    paper: Paper = "a4"
    design: Design | None = None
    large_print: bool = False
    left_handed: bool = False
    ink_saving: bool = False
    words_only: bool = False
    section_per_page: bool = False
    spelled_out: bool = False
    full_words: bool = False
    accent: str = ""
    typeface: str = ""

    @property
    def held(self) -> Edition:
        """The edition as far as what it holds: between papers that differs on a phone alone, where grids are drawn for its width."""
        return self if self.paper == "phone" else replace(self, paper="a4")

    def laid(self, sizes: int) -> Design:
        """The page design for a pattern of so many sizes."""
        if self.design is not None:
            return self.design
        if self.large_print:
            return "far"
        return "columns" if self.size is None and sizes > 1 else "ledger"
