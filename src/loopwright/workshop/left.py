"""Findings that the designer leaves as they are, with her reason, as a line of the pattern's heading.

    Left as it is: C012 in Rnd 5, because the last stitch is skipped on purpose

What stops a row cannot be left. Where the row is called otherwise later on, the finding is told again, and the line that leaves nothing
any more is told of too (C045).
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from loopwright.findings import Edit, Finding, Fix, in_order
from loopwright.findings.registry import severity
from loopwright.model.tree import Document, FitLine, HeadLine, Item, Prose, Row, Section, SpecialStitch
from loopwright.source import Span

NAME = "left as it is"
TITLE = "Left as it is"
_SAID = re.compile(r"\s*(?P<code>[A-Z]\d{3}) in (?P<place>.+?)(?:,\s*because\s+(?P<why>.*?))?\s*$", re.IGNORECASE)
STILL_COUNTED = frozenset({"W001"})
"""Errors after which the rows are still counted: a number printed that is another than the row makes."""
_WORDS = 6  # of a line that has no name of its own


class Left(NamedTuple):
    """One finding that is left: its code, the place as the line says it, the reason ("" for none)."""

    code: str
    place: str
    why: str


def left_in(document: Document) -> tuple[Left, ...]:
    """What the heading leaves as it is."""
    return tuple(x for _, x in _lines(document) if x is not None)


def _lines(document: Document) -> Iterator[tuple[HeadLine, Left | None]]:
    """The lines that leave findings as they are, with what each says; None where that is not understood."""
    for item in document.items:
        if isinstance(item, HeadLine) and item.name == NAME:
            said = _SAID.match(item.value)
            yield item, None if said is None else Left(said["code"].upper(), _key(said["place"]), (said["why"] or "").strip())


def open_and_left(document: Document, findings: Iterable[Finding]) -> tuple[tuple[Finding, ...], tuple[tuple[Finding, str], ...]]:
    """The findings that are still open, and those that are left, each with its reason."""
    lines = tuple(_lines(document))
    if not lines:
        return tuple(findings), ()
    told = {(x.code, x.place): x.why for _, x in lines if x is not None}
    still, left, met = [], [], set()
    for found in findings:
        key = (found.code, _key(place_of(document, found.span.start)))
        met.add(key)
        if key in told and not stops(found):
            left.append((found, told[key]))
        else:
            still.append(found)
    idle = [_idle(document, item, x) for item, x in lines if x is None or (x.code, x.place) not in met]
    return (in_order((*still, *idle)) if idle else tuple(still)), tuple(left)


def _idle(document: Document, item: HeadLine, line: Left | None) -> Finding:
    """A line that leaves no finding of this text; its mend takes the line out."""
    text = document.text
    start, end = text.rfind("\n", 0, item.span.start) + 1, text.find("\n", item.span.start)
    out = Edit(Span(start, len(text) if end < 0 else end + 1), "")
    said = _SAID.match(item.value)
    args = {"said": item.value} if line is None or said is None else {"said": item.value, "code": line.code, "place": said["place"]}
    return Finding("C045", item.span, args, fix=Fix("take the line out", (out,), safe=False))


def stops(found: Finding) -> bool:
    """Whether the rows below cannot be counted for it: such a finding cannot be left."""
    return severity(found) == "error" and found.code not in STILL_COUNTED


def place_of(document: Document, offset: int) -> str:
    """What the place of a finding is called: "Rnd 5", "Band, Rnd 1" where several sections have one, "Gauge" of the heading."""
    section = ""
    for item in document.items:
        if isinstance(item, Section):
            section = item.title
        if item.span.start <= offset < max(item.span.end, item.span.start + 1):
            name = _name(document, item)
            twice = isinstance(item, Row) and sum(_name(document, r) == name for r in document.items if isinstance(r, Row)) > 1
            return f"{section}, {name}" if twice and section else name
    return "the heading"


def line_for(code: str, place: str, why: str) -> str:
    """The heading's line that leaves a finding as it is; the reason on one line."""
    reason = " ".join(why.split())
    return f"{TITLE}: {code} in {place}" + (f", because {reason}" if reason else "")


def with_line(document: Document, code: str, place: str, why: str) -> str:
    """The document's text with the line that leaves a finding as it is."""
    at, line = room_for_line(document), line_for(code, place, why)
    return f"{document.text[:at]}\n{line}{document.text[at:]}" if at else f"{line}\n{document.text}"


def room_for_line(document: Document) -> int:
    """Where such a line goes: below the last line of the heading, else below the title, else at the top. An offset."""
    heads = [i for i in document.items if isinstance(i, HeadLine)]
    first_row = next((i.span.start for i in document.items if isinstance(i, Row)), len(document.text))
    before = [i for i in heads if i.span.start < first_row]
    if before:
        return before[-1].span.end
    first = next(iter(document.items), None)
    return first.span.end if isinstance(first, Prose) and document.title else 0


def _name(document: Document, item: Item) -> str:
    if isinstance(item, Row) and item.label is not None and item.label.span.end:
        return document.text[item.label.span.start : item.label.span.end].strip().rstrip(":").strip()
    if isinstance(item, HeadLine):
        return item.name[:1].upper() + item.name[1:]
    if isinstance(item, FitLine):
        return f"{{{item.blank}}}"
    if isinstance(item, Section):
        return item.title
    if isinstance(item, SpecialStitch):
        return item.name
    return " ".join(_first(document.text[item.span.start : item.span.end]))


def _first(text: str) -> Iterator[str]:
    for word in text.split()[:_WORDS]:
        yield word.strip(",;:")


def _key(place: str) -> str:
    return " ".join(place.lower().split())
