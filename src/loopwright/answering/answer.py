"""An answer: what is true, the likely causes in order, the mend, and a text to send."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Mark = Literal["join", "last", "first", "increase", "decrease", "row before", "other size", "other row", "chain", "unknown", ""]


@dataclass(frozen=True, slots=True)
class Cause:
    """A likely cause. `title`: what happened; `see`: how to see that it did; `mend`: the way out; `mark`: where it sits, for a drawing."""

    title: str
    see: str
    mend: str
    mark: Mark = ""


@dataclass(frozen=True, slots=True)
class Answer:
    """`heading`: in few words; `facts`: what the pattern itself says; `causes`: the likeliest first; `text`: to send to the maker."""

    heading: str
    facts: tuple[str, ...]
    causes: tuple[Cause, ...]
    text: str
