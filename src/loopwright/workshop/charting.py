"""What charts and schematics are told of a pattern, whoever shows them: so that command, pages and studio draw the same."""

from __future__ import annotations

import re

from loopwright.drawing.chart import ChartOptions, UnreadRow
from loopwright.drawing.copies import copies_told
from loopwright.drawing.schematic import SchematicOptions
from loopwright.drawing.tones import tone
from loopwright.model.report import Report
from loopwright.model.tree import Document, HeadLine, Mark, Row, Section

_YARNS = ("yarn", "yarns", "colours", "colors", "materials")
_LETTERED = re.compile(r"\b([A-H])\s*\(([^()\d]{2,30})\)|\b([A-H])\s*[:=]\s*([A-Za-z][A-Za-z -]{1,24})")
_SAID = re.compile(r"\b([A-Za-z][A-Za-z ]*?)\s*(?:\([^)]*\)\s*)?=\s*([^;.=]+)")
_MAKING_UP = re.compile(r"(?:making|make) up|assembl|finishing|to finish|sewing up|putting (?:it )?together", re.IGNORECASE)


def of_charts(document: Document, report: Report | None, size: int) -> ChartOptions:
    """What is made more than once, rows that could not be read, what the pattern says of its own stitches, where yarn is joined."""
    rows = report.rows if report is not None else ()
    unread = tuple(UnreadRow(r.section, r.label, document.text[r.span.start : r.span.end], r.item) for r in rows if not r.read)
    special = {n: s.text for s in document.specials for n in (s.name, s.abbreviation) if n}
    special = _said_of_known(document) | special
    copies, yarns = copies_told(document, size), yarn_names(document)
    return ChartOptions(copies=copies, unread=unread, special=special, joins=_joins(document), yarns=yarns)


def _said_of_known(document: Document) -> dict[str, str]:
    """What the heading says of stitches that are known by their names all the same: "bobble = dc5tog in one st"."""
    lines = (i for i in document.items if isinstance(i, HeadLine) and i.name.startswith("special"))
    return {m[1].lower(): m[2].strip() for line in lines for m in _SAID.finditer(line.value)}


def yarn_names(document: Document) -> dict[str, str]:
    """What the heading calls the yarns that it gives letters: "in A (peat), B (cream)"; the first of each letter."""
    found: dict[str, str] = {}
    for line in document.items:
        if isinstance(line, HeadLine) and line.name in _YARNS:
            for m in _LETTERED.finditer(line.value):
                found.setdefault(m[1] or m[3], " ".join((m[2] or m[4]).split()))
    return found


def palette_of(document: Document) -> dict[str, tuple[int, int, int]]:
    """The tones of those yarns whose names say a colour, by letter."""
    named = {letter: tone(name) for letter, name in yarn_names(document).items()}
    return {y: (int(c[1:3], 16), int(c[3:5], 16), int(c[5:7], 16)) for y, c in named.items() if c is not None}


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
