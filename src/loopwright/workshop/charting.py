"""What charts and schematics are told of a pattern, whoever shows them: so that command, pages and studio draw the same."""

from __future__ import annotations

import re

from loopwright.drawing.chart import ChartOptions, UnreadRow
from loopwright.drawing.copies import copies_told
from loopwright.drawing.schematic import SchematicOptions
from loopwright.model.report import Report
from loopwright.model.tree import Document, Mark, Row, Section

_MAKING_UP = re.compile(r"(?:making|make) up|assembl|finishing|to finish|sewing up|putting (?:it )?together", re.IGNORECASE)


def of_charts(document: Document, report: Report | None, size: int) -> ChartOptions:
    """What is made more than once, rows that could not be read, what the pattern says of its own stitches, where yarn is joined."""
    rows = report.rows if report is not None else ()
    unread = tuple(UnreadRow(r.section, r.label, document.text[r.span.start : r.span.end], r.item) for r in rows if not r.read)
    special = {n: s.text for s in document.specials for n in (s.name, s.abbreviation) if n}
    return ChartOptions(copies=copies_told(document, size), unread=unread, special=special, joins=_joins(document))


def _joins(document: Document) -> tuple[tuple[int, int], ...]:
    """Where the words of a row join yarn, and where that row ends."""
    rows = (i for i in document.items if isinstance(i, Row))
    return tuple((n.span.start, row.span.end) for row in rows for n in row.body if isinstance(n, Mark) and n.what == "attach")


def of_schematics(document: Document, size: int = 0) -> SchematicOptions:
    """What is made more than once, and how pieces are put together."""
    return SchematicOptions(copies=copies_told(document, size), making_up=making_up_of(document))


def making_up_of(document: Document) -> str:
    """What a pattern says of making up: the text of its section of that name; "" where it has none."""
    sections = [i for i in document.items if isinstance(i, Section)]
    for i, section in enumerate(sections):
        if _MAKING_UP.match(section.title):
            end = sections[i + 1].span.start if i + 1 < len(sections) else len(document.text)
            return " ".join(document.text[section.span.end : end].split())
    return ""
