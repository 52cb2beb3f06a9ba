"""Numbers told for every size: in printed counts and in the measurements of the heading. Not a rule."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.gauges import MM, NUMBER
from loopwright.checks.pattern import Pattern
from loopwright.model.tree import Row
from loopwright.record import record
from loopwright.source import Span

FINISHED = ("finished size", "sizes")
_MEASURES = re.compile(
    rf"(?P<all>(?P<first>{NUMBER})\s?[(\[](?P<rest>{NUMBER}(?:\s*[,;]\s*{NUMBER})*)[)\]])\s*(?P<unit>cm|mm|inch(?:es)?|ins?\b|\"|″)"
    r"[ \t]*(?P<noun>[A-Za-z -]{0,40})",
    re.IGNORECASE,
)


@record
class PerSize:
    """Numbers for all sizes, in their order, with their place; `noun` says of what."""

    values: tuple[float, ...]
    span: Span
    noun: str


def counts(pattern: Pattern) -> Iterator[tuple[Row, PerSize]]:
    """Printed counts of rows that give a number for every size, none left out."""
    sizes = len(pattern.document.sizes)
    for _, row in pattern.rows():
        for count in row.printed:
            values = tuple(float(v) for v in count.n.values if v is not None)
            if count.scope == "row" and len(values) == sizes == len(count.n.values) and sizes > 1:
                span = count.n.span if count.n.span.end else count.span if count.span.end else row.span
                yield row, PerSize(values, span, count.noun or "")


def measurements(pattern: Pattern) -> Iterator[PerSize]:
    """Measurements of the heading that are told for every size, in mm."""
    sizes = len(pattern.document.sizes)
    for told in pattern.lines(*FINISHED):
        for m in _MEASURES.finditer(told.value):
            numbers = [m["first"], *re.split(r"[,;]", m["rest"])]
            if len(numbers) == sizes:
                mm = MM[m["unit"].lower()]
                at = told.value_span.start
                before = re.split(r"[,;\n]", told.value[: m.start()])[-1]
                noun = f"{told.said} {before} {m['noun']}".strip()
                yield PerSize(tuple(float(n) * mm for n in numbers), Span(at + m.start("all"), at + m.end("all")), noun)


def said(numbers: Sequence[int | None]) -> str:
    """Numbers of the sizes as patterns tell them: 60 (64, 72); one number where all are the same."""
    words = ["-" if n is None else str(n) for n in numbers]
    return words[0] if len(set(words)) == 1 else f"{words[0]} ({', '.join(words[1:])})" if words else "?"
