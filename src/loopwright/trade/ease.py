"""Ease: how much larger or smaller than the body a finished item is, by the habits of the trade."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from loopwright.record import record
from loopwright.trade import tables
from loopwright.trade.tables import Entry


@record
class Ease:
    """Finished circumference less the body's: in mm, or as a share of the body's (0.05 = a twentieth) where `by_share`.

    `measure` is the body measurement an item goes by, empty for a fit of garments, which is the chest's.
    """

    name: str
    also: tuple[str, ...]
    measure: str
    low: float
    high: float
    by_share: bool
    source: str
    weak: bool
    note: str

    def range_mm(self, body_mm: float) -> tuple[float, float]:
        """The least and most ease in mm for a body of that measure in mm."""
        factor = body_mm if self.by_share else 1.0
        return self.low * factor, self.high * factor


def items() -> tuple[Ease, ...]:
    """The habits by item."""
    return _load()[0]


def fits() -> tuple[Ease, ...]:
    """The habits by fit of a garment, from very close to oversized."""
    return _load()[1]


def of_item(name: str) -> Ease | None:
    """The habit for an item ("beanie", "baby hat"), or None."""
    return _find(items(), name)


def of_fit(name: str) -> Ease | None:
    """The habit for a fit ("classic", "loose"), or None."""
    return _find(fits(), name)


def _find(among: tuple[Ease, ...], name: str) -> Ease | None:
    key = name.strip().lower().replace("’", "'")
    return next((ease for ease in among if key == ease.name or key in ease.also), None)


@cache
def _load() -> tuple[tuple[Ease, ...], tuple[Ease, ...]]:
    top = tables.load("ease")
    sources = tables.sources(top)
    found = tuple(_ease(e, sources) for e in top.entries("item")), tuple(_ease(e, sources) for e in top.entries("fit"))
    top.done()
    return found


def _ease(entry: Entry, sources: Mapping[str, str]) -> Ease:
    by_share = "low_share" in entry
    low, high = (entry.signed(f"{end}_{'share' if by_share else 'cm'}") * (1.0 if by_share else 10.0) for end in ("low", "high"))
    if low > high:
        raise entry.error("the least ease is more than the most")
    found = Ease(
        entry.text("name"),
        entry.texts("also", ()),
        entry.text("measure", ""),
        low,
        high,
        by_share,
        entry.source("source", sources),
        entry.flag("weak"),
        entry.text("note", ""),
    )
    entry.done()
    return found
