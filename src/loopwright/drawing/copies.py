"""Sections that are made more than once: worked once here, said in every drawing."""

from __future__ import annotations

import re

from loopwright.drawing.speech import Speech
from loopwright.measuring.yarn import copies_of
from loopwright.model.tree import Document, Section

Copies = tuple[tuple[str | None, str], ...]
"""For sections made more than once, by name, what is said of it: "make 2, alike"."""

_MIRRORED = re.compile(
    r"\b(?:revers(?:e|ed|es|ing)(?! sc| dc| single| double)|mirror(?:ed|ing)?|opposite (?:way|direction|shaping))\b", re.IGNORECASE,
)
_TOLD = re.compile(r"make (\d+), (alike|mirrored)")


def copies_told(document: Document, size: int = 0) -> Copies:
    """What to say of the sections that are made more than once, for a size by index.

    Mirrored where the section's own words say so ("reversing the shaping"); else they are alike.
    """
    sections = [item for item in document.items if isinstance(item, Section)]
    many = copies_of(document, size)
    found: list[tuple[str | None, str]] = []
    for n, section in enumerate(sections):
        if many.get(section.title, 1) > 1:
            end = sections[n + 1].span.start if n + 1 < len(sections) else len(document.text)
            mirrored = _MIRRORED.search(document.text, section.span.start, end) is not None
            found.append((section.title, f"make {many[section.title]}, {'mirrored' if mirrored else 'alike'}"))
    return tuple(found)


def in_words(told: str, speech: Speech) -> str:
    """What is said of a section, as `copies_told` has it, in the words of a speech."""
    m = _TOLD.fullmatch(told)
    return speech.say(f"made-{m[2]}", n=int(m[1])) if m else told


def sentence(told: str) -> str:
    """As a sentence of its own."""
    return f"{told[:1].upper()}{told[1:]}."


def told_of(copies: Copies, section: str | None) -> str:
    """What is said of a section; "" for one that is made once."""
    return dict(copies).get(section, "")
