"""What the search finds: blanks, the edits that put them in the text, and the reasons for each, best first."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from loopwright.findings import Edit
from loopwright.grading.counting import Legal
from loopwright.record import record
from loopwright.source import Span

Role = Literal["across", "around", "width", "depth", "part", "length", "cord", "share", "side", "neck", "link"]
ANY = Legal(least=0)


@record
class Reason:
    """One Fit sentence that brings her number back. `because` is the evidence; `score` is lower for better."""

    sentence: str
    because: str
    score: float = 0.0
    target_mm: float | None = None
    achieved_mm: float | None = None


@record
class Blank:
    """A number of hers that depends on the size. `before`: rows of the piece worked before those it counts.

    `subject` is what an "until … measures" sentence names. `facts` are findings of the search that stand as evidence. `gain`: what each
    round of a disc gains. `given`: reasons that do not come from a measure (links to other blanks); `also`: such reasons that stand
    beside measured ones. `rows_mm`: what one more row brings, and what is there besides so many of them (None: rows as the gauge's).
    """

    name: str
    unit: Literal["rnds", "rows", "sts", "ch", "times"]
    value: int
    role: Role
    subject: str = ""
    before: int = 0
    legal: Legal = ANY
    facts: tuple[str, ...] = ()
    given: tuple[Reason, ...] = ()
    line: int = 0
    gain: int = 0
    also: tuple[Reason, ...] = ()
    rows_mm: tuple[float, float] | None = None


@record
class Proposed:
    """A blank with its reasons, best first."""

    blank: Blank
    reasons: tuple[Reason, ...]


@dataclass(slots=True)
class Found:
    """What has been found so far. `fixed`: blanks that must keep her number after all, with the reason."""

    blanks: list[Blank] = field(default_factory=list)
    edits: list[Edit] = field(default_factory=list)
    kept: list[str] = field(default_factory=list)
    fixed: dict[str, str] = field(default_factory=dict)

    def name(self, wanted: str) -> str:
        """The wanted name, or the same with a number after it where it is taken."""
        base = " ".join(wanted.lower().split())
        taken = {b.name for b in self.blanks}
        name, n = base, 2
        while name in taken:
            first, _, last = base.rpartition(" ")
            name = f"{first} {n} {last}".strip()
            n += 1
        return name

    def add(self, blank: Blank) -> str:
        """Takes a blank in; gives what stands for it in the text."""
        self.blanks.append(blank)
        return f"{{{blank.name}}}"

    def replace(self, span: Span, text: str) -> None:
        """Notes an edit, unless a part of it is edited already."""
        if not any(e.span.start < span.end and span.start < e.span.end for e in self.edits):
            self.edits.append(Edit(span, text))

    def chain(self, line_text: str, at: int, span: Span, slot: str, more: int) -> None:
        """A foundation chain's number: "{sts} + 3", or "{sts} ch + 3" where the word comes after the number, as in UK patterns.

        `line_text` is the text from offset `at` on, in which the number stands under `span`.
        """
        if not more:
            self.replace(span, slot)
            return
        sum_ = f"{'+' if more > 0 else '-'} {abs(more)}"
        word = re.match(r"\s*ch(?:ains?)?\b", line_text[span.end - at :])
        end = span.end + (word.end() if word else 0)
        self.replace(Span(span.start, end), f"{slot}{word.group() if word else ''} {sum_}")

    def touched(self, span: Span) -> bool:
        """Whether a blank has been put in somewhere under a span."""
        return any(span.start <= e.span.start < span.end and "{" in e.text for e in self.edits)

    def counts(self, value: int, *units: str) -> Blank | None:
        """The latest blank with that value in one of these units."""
        return next((b for b in reversed(self.blanks) if b.value == value and b.unit in units), None)
