"""What every rule looks at: the document and its report, sorted into heading lines, parts and rows. Not a rule."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache, lru_cache

from loopwright.model.report import Report, RowReport
from loopwright.model.tree import Document, FitLine, Row, Section
from loopwright.record import record
from loopwright.shipped import shipped_table
from loopwright.source import Span

_ASIDE = r"(?:[ \t]*\([^()\n]{1,30}\))?"  # "Abbreviations (UK terms):"
_LINE = re.compile(rf"^(?P<lead>[ \t]*)(?P<name>[A-Za-z][A-Za-z &/’']{{1,30}}?){_ASIDE}[ \t]*:[ \t]*(?P<value>\S.*)?$", re.MULTILINE)
_BLOCK = re.compile(r"(?:\n[ \t]*\S[^\n]*)+")
_TITLES = 2  # section titles that may stand between the heading and the first row


@cache
def _names() -> tuple[dict[str, str], frozenset[str]]:
    """Every way to name a heading line with its one name; the names that a finished pattern has."""
    table = shipped_table("loopwright.checks", "headings.toml")
    ways = {way: name for part in ("claims", "others") for name, all_ways in table[part].items() for way in all_ways}
    return ways, frozenset(table["claims"])


@cache
def _alone() -> re.Pattern[str]:
    """A name that stands alone on its line, its text in the lines below it."""
    ways = "|".join(re.escape(w) for w in sorted(_names()[0], key=len, reverse=True))
    return re.compile(rf"^[ \t]*(?P<name>{ways}){_ASIDE}[ \t]*:?[ \t]*$", re.IGNORECASE | re.MULTILINE)


@record
class Told:
    """A heading line, or a block under a bare name.

    `name`: its one name (headings.toml), or as it stands in lower case; `said` as it stands; value as written.
    """

    name: str
    said: str
    value: str
    span: Span
    value_span: Span


@record
class Part:
    """The rows under one section title (None before the first), with their places among the document's items."""

    title: str | None
    rows: tuple[tuple[int, Row], ...]


@record
class Pattern:
    """A document and its report, seen by the rules. `whole`: a heading claims that this is a finished pattern."""

    document: Document
    report: Report
    told: tuple[Told, ...]
    whole: bool
    parts: tuple[Part, ...]
    by_item: dict[int, tuple[RowReport, ...]]

    def lines(self, *names: str) -> tuple[Told, ...]:
        """All heading lines of these names, in the order of the text."""
        return tuple(t for t in self.told if t.name in names)

    def value(self, *names: str) -> Told | None:
        """The first heading line of one of these names."""
        return next((t for t in self.told if t.name in names), None)

    def rows(self) -> Iterator[tuple[int, Row]]:
        """All rows as written, with their item index."""
        for part in self.parts:
            yield from part.rows

    def words(self, row: Row) -> str:
        """A row's own text."""
        return self.document.text[row.span.start : row.span.end]

    def body(self) -> Iterator[tuple[Span, str]]:
        """Every line behind the heading, rows and prose alike, with its text."""
        at = self.body_start()
        for line in self.document.text[at:].split("\n"):
            yield Span(at, at + len(line)), line
            at += len(line) + 1

    def body_start(self) -> int:
        """Where the heading ends."""
        return _heading_end(self.document)


@lru_cache(maxsize=32_768)
def standing(expression: re.Pattern[str], words: str) -> tuple[tuple[int, int], ...]:
    """Where an expression stands in a row's words. Kept: a pattern is looked at again with each key, and most of its rows are the same."""
    return tuple(m.span() for m in expression.finditer(words))


def beginning(expression: re.Pattern[str], text: str, *words: str, start: int = 0) -> Iterator[re.Match[str]]:
    """What `expression` finds in a text from `start` on, where all that it finds begins with one of `words` (lower case).

    In the order of the text; quicker than to look for it at every character. Unlike finditer's its finds may overlap.
    """
    low = text.lower()
    if len(low) != len(text):  # a few letters are longer in lower case
        yield from expression.finditer(text, start)
        return
    places = []
    for word in words:
        at = low.find(word, start)
        while at >= 0:
            places.append(at)
            at = low.find(word, at + 1)
    yield from (m for at in sorted(places) if (m := expression.match(text, at)) is not None)


def look(document: Document, report: Report) -> Pattern:
    """The view of a document and its report."""
    told = tuple(_told(document))
    by_item: dict[int, list[RowReport]] = {}
    for row in report.rows:
        by_item.setdefault(row.item, []).append(row)
    names = {t.name for t in told}
    return Pattern(
        document,
        report,
        told,
        len(names & _names()[1]) >= 2,
        tuple(_parts(document)),
        {k: tuple(v) for k, v in by_item.items()},
    )


def _heading_end(document: Document) -> int:
    first = next((i for i, item in enumerate(document.items) if isinstance(item, Row)), None)
    if first is None:
        return len(document.text)
    for _ in range(_TITLES):
        if first > 0 and isinstance(document.items[first - 1], Section):
            first -= 1
    return document.text.rfind("\n", 0, document.items[first].span.start) + 1


def _told(document: Document) -> list[Told]:
    end = _heading_end(document)
    fits = [i.span for i in document.items if isinstance(i, FitLine)]
    head = document.text[:end]
    return [t for t in _heading(head) if not any(f.start <= t.span.start < f.end for f in fits)]


@lru_cache(maxsize=16)
def _heading(head: str) -> tuple[Told, ...]:
    """The lines of a heading; kept, as rows are written more often than headings."""
    found = []
    for m in _LINE.finditer(head):
        name = " ".join(m["name"].lower().replace("’", "'").split())
        if m["value"]:
            found.append(Told(_named(name), m["name"], m["value"], Span(m.start("name"), m.end()), Span(*m.span("value"))))
    for m in _alone().finditer(head):
        block = _BLOCK.match(head, m.end())
        if block:
            name, stop = " ".join(m["name"].lower().split()), block.end()
            found.append(Told(_named(name), m["name"], block.group()[1:], Span(m.start("name"), stop), Span(m.end() + 1, stop)))
    return tuple(found)


def _named(name: str) -> str:
    """The one name of a heading line; a name that is not in the table keeps its own."""
    known = _names()[0].get(name)
    if known is not None:
        return known
    return "finished size" if name.startswith(("finished ", "actual ")) else "to fit" if name.startswith(("to fit ", "fits ")) else name


def _parts(document: Document) -> Iterator[Part]:
    title: str | None = None
    rows: list[tuple[int, Row]] = []
    for i, item in enumerate(document.items):
        if isinstance(item, Section):
            if rows:
                yield Part(title, tuple(rows))
            title, rows = item.title, []
        elif isinstance(item, Row):
            rows.append((i, item))
    if rows:
        yield Part(title, tuple(rows))


def places(found: Sequence[re.Match[str]], at: int) -> Iterator[Span]:
    """Matches inside an item's text as spans of the document."""
    for m in found:
        yield Span(at + m.start(), at + m.end())
