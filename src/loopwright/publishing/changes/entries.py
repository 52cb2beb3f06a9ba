"""A pattern's instructions as sections of entries: rows and words between them, each with what alignment looks at."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field, fields, is_dataclass, replace
from typing import Any

from loopwright.model.tree import Document, Num, Prose, Row, Section
from loopwright.publishing.changes.content import RowContent
from loopwright.source import Span
from loopwright.wording.heading import heading_end

_SIGNS = str.maketrans({"“": '"', "”": '"', "„": '"', "’": "'", "‘": "'", "–": "-", "—": "-", "\u00a0": " ", "×": "x"})
_WORD = re.compile(r"[^\W\d_]+|\d+|[*()\[\]]")

Rows = tuple[tuple[RowContent, ...], ...]


@dataclass(slots=True)
class Entry:
    """A row or words between rows. `rows`: what it makes, per pair of sizes. `words`: as written, signs and spaces made alike.

    `more`: further items, where several entries are taken as one.
    """

    index: int
    item: Row | Prose
    section: str | None
    words: str
    label: str
    bare: str
    rows: Rows
    tokens: frozenset[str] = field(default_factory=frozenset)
    counts: tuple[tuple[int, ...], ...] = ()
    more: tuple[int, ...] = ()

    @property
    def indexes(self) -> tuple[int, ...]:
        """The items it stands for: one, or several that were taken together."""
        return (self.index, *self.more)

    @property
    def is_row(self) -> bool:
        """Whether it is an instruction that was read as one."""
        return isinstance(self.item, Row)


@dataclass(slots=True)
class Part:
    """A section: its title as written, "" for what stands before the first one, and its entries."""

    title: str
    key: str
    item: int | None
    entries: list[Entry] = field(default_factory=list)


def together(entries: Sequence[Entry]) -> Entry:
    """Several entries as one, that makes all they make."""
    first = next((e for e in entries if e.is_row), entries[0])
    rest = [e for e in entries if e is not first]
    rows = tuple(tuple(r for e in entries for r in e.rows[p]) for p in range(len(first.rows)))
    counts = tuple(tuple(r.count for r in made) for made in rows)
    words, bare = (" ".join(getattr(e, name) for e in entries) for name in ("words", "bare"))
    tokens = frozenset(t for e in entries for t in e.tokens)
    more = tuple(i for e in rest for i in e.indexes)
    return Entry(first.index, first.item, first.section, words, "", bare, rows, tokens, counts, more)


def plain(text: str) -> str:
    """A text with its signs and spaces made alike, so that a new line or another dash is no change."""
    return " ".join(text.translate(_SIGNS).split())


def parts_of(document: Document, rows: list[dict[int, list[RowContent]]]) -> list[Part]:
    """The sections of a pattern from the first instruction on. `rows`: what every item makes, for each pair of sizes."""
    found = [Part("", "", None)]
    for index in range(heading_end(document), len(document.items)):
        item = document.items[index]
        if isinstance(item, Section):
            title = plain(item.title)
            found.append(Part(title, title.casefold(), index))
        elif isinstance(item, (Row, Prose)):
            found[-1].entries.append(_entry(document, index, item, found[-1].title, rows))
    return [p for p in found if p.entries or p.item is not None]


def _entry(document: Document, index: int, item: Row | Prose, section: str, rows: list[dict[int, list[RowContent]]]) -> Entry:
    text = document.text[item.span.start : item.span.end] if item.span.end else getattr(item, "text", "")
    words = plain(text)
    label = plain(item.label.text).rstrip(": ") if isinstance(item, Row) and item.label is not None else ""
    at = item.label.span.end if isinstance(item, Row) and item.label is not None and item.label.span.end else item.span.start
    bare = plain(document.text[at : item.span.end]).lstrip(":.- ") if isinstance(item, Row) else words
    made = tuple(tuple(r.get(index, ())) for r in rows)
    tokens = frozenset("#" if t.isdigit() else t for t in _WORD.findall(bare.casefold()))
    return Entry(index, item, section or None, words, label, bare, made, tokens, tuple(tuple(r.count for r in m) for m in made))


def instruction(item: Row | Prose, size: int) -> Any:
    """What a row tells one size to do: its nodes and orders with the numbers of that size, without places in the text and printed counts.

    Two rows with the same instruction make the same stitches on the same fabric, row by row; how many rows is told by `extent`.
    """
    if isinstance(item, Prose):
        return plain(item.text)
    worked = item.sizes is None or size in item.sizes
    order = replace(item.order, times=None, total_rows=None, until_text="") if item.order is not None else None
    return worked, _bare(item.body, size), _bare(order, size), item.side


def extent(item: Row | Prose, size: int) -> Any:
    """How many rows one size is told to work, by label and orders; which numbers they bear does not matter."""
    if isinstance(item, Prose):
        return None
    label, many = item.label, None
    if label is not None and label.first is not None and label.last is not None:
        first, last = label.first.at(size), label.last.at(size)
        many = None if first is None or last is None else last - first
    elif label is not None:
        many = label.how_many.at(size)
    return many, _bare(item.order, size)


def _bare(node: Any, size: int) -> Any:
    if isinstance(node, Num):
        return node.at(size) if node.values else f"{{{node.blank}}}"
    if isinstance(node, tuple):
        return tuple(_bare(n, size) for n in node)
    if is_dataclass(node) and not isinstance(node, type):
        told = (getattr(node, f.name) for f in fields(node))
        return (type(node).__name__, *(_bare(v, size) for v in told if not isinstance(v, Span)))
    return node
