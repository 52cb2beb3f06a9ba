"""Whether the words say that a piece is to lie as it does. Not a rule."""

from __future__ import annotations

import re
from functools import cache

from loopwright.checks.pattern import Pattern
from loopwright.model.lies import LieFault
from loopwright.model.report import RowReport
from loopwright.model.tree import Row, Section
from loopwright.shipped import shipped_table
from loopwright.source import Span


def words(pattern: Pattern, fault: LieFault, *, title: bool = True) -> str:
    """The title, the section's name and the words of the row where a fault shows."""
    item = _item(pattern, fault)
    row = pattern.document.text[item.span.start : item.span.end] if item is not None else ""
    return "\n".join(((pattern.document.title or "") if title else "", _section(pattern, fault), row))


def _section(pattern: Pattern, fault: LieFault) -> str:
    """The name of the section that holds the row, as written."""
    for item in reversed(pattern.document.items[: max(0, fault.item)]):
        if isinstance(item, Section):
            return item.title
    return fault.section or ""


@cache
def _known(name: str) -> re.Pattern[str]:
    table = shipped_table("loopwright.checks", "meant.toml")
    return re.compile(rf"\b(?:{'|'.join(table[name])})\b", re.IGNORECASE)


def says(name: str, text: str) -> bool:
    """Whether one of the words of a list of `meant.toml` stands in a text."""
    return _known(name).search(text) is not None


def toy(pattern: Pattern) -> bool:
    """A toy or another stuffed piece: it is to be round."""
    return says("toy", pattern.document.text)


def place(pattern: Pattern, fault: LieFault) -> Span | None:
    """The row's own text; None where the document has no such row."""
    item = _item(pattern, fault)
    return item.span if item is not None else None


def label(pattern: Pattern, fault: LieFault) -> str:
    """How the row is called."""
    if fault.label:
        return fault.label
    item = _item(pattern, fault)
    if item is not None and item.label is not None:
        return item.label.text
    return fault.section or "this row"


def reports(pattern: Pattern, fault: LieFault) -> tuple[RowReport, ...]:
    """What is reported of the row."""
    return pattern.by_item.get(fault.item, ())


def _item(pattern: Pattern, fault: LieFault) -> Row | None:
    items = pattern.document.items
    item = items[fault.item] if 0 <= fault.item < len(items) else None
    return item if isinstance(item, Row) else None
