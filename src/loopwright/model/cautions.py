"""Cautions that a pattern brings up: what is to be said, for which sizes, and the figures that stand beside a limit. Lengths are mm."""

from __future__ import annotations

from loopwright.record import record
from loopwright.source import Span


@record
class CautionFigure:
    """One length found in one size, beside the lengths that are dangerous.

    `what`: "tie", "opening". `from_mm` … `to_mm`: the dangerous range, both ends outside it; `to_mm` None: everything above `from_mm`;
    `from_mm` None: no limit is known. `span`: the words it was taken from. `how`: the sum in words.
    """

    what: str
    size: str
    found_mm: float
    from_mm: float | None
    to_mm: float | None
    span: Span
    how: str

    @property
    def over(self) -> bool:
        """Whether the length is dangerous."""
        return self.from_mm is not None and self.found_mm > self.from_mm and (self.to_mm is None or self.found_mm < self.to_mm)

    @property
    def by_mm(self) -> float:
        """How far it lies within the dangerous range from the end where the range begins; 0 outside it."""
        return self.found_mm - self.from_mm if self.over and self.from_mm is not None else 0.0


@record
class CautionDue:
    """One caution that is due.

    `text`: what to say, always together with `defer`, which refers to the rules of the place and to qualified advice. `standard`: the
    rule it follows, "" for none. `weak`: its source is memory or custom. `limit`: what the figures stand beside, in words. `sizes`: names of the sizes it is for, () for all. `why`: the
    words that brought it up. `told`: the pattern says it in its own words. `hidden`: the heading asks to leave it out. `sharp`: the
    words themselves show the fault (acrylic in a pot holder).
    """

    key: str
    topic: str
    text: str
    defer: str
    standard: str
    source: str
    weak: bool
    limit: str = ""
    sizes: tuple[str, ...] = ()
    figures: tuple[CautionFigure, ...] = ()
    why: str = ""
    told: bool = False
    hidden: bool = False
    sharp: bool = False

    @property
    def name(self) -> str:
        """Its key as it is said: "sleep hat"."""
        return self.key.replace("-", " ")
