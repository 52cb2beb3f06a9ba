"""Where measurements come from: the size chart in the pattern first, then the trade's chart or the measured one, as the pattern says.

"Size chart: measured" in the heading names a chart; under the words "Size chart" alone a table of her own may stand.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache, partial

from loopwright.findings import Finding
from loopwright.model.tree import Document
from loopwright.record import record
from loopwright.source import Span
from loopwright.trade import own_chart
from loopwright.trade import sizes as trade_sizes

Measure = Callable[[str, str], "Body"]
_NAMED = re.compile(r"^size chart:[ \t]*(?P<which>\S.*)$", re.IGNORECASE | re.MULTILINE)
_TABLE = re.compile(r"^(?:own )?size chart:?[ \t]*\n(?P<table>(?:[^\n]*\S[^\n]*(?:\n|\Z))+)", re.IGNORECASE | re.MULTILINE)


@record
class Body:
    """A body measurement in mm with where it comes from; `weak` where the trade has no good source for it."""

    mm: float
    source: str = ""
    weak: bool = False


class NoMeasurementError(LookupError):
    """A size or a measurement that no chart knows; the message names the nearest ones."""


def trade_measure(which: str = "trade") -> Measure:
    """Looks measurements up in one of the trade's charts: by size and measurement. The lookup raises NoMeasurementError."""
    return partial(_trade_mm, which)


@cache  # a name is compared with every size of the chart, and every sentence asks for it again
def _trade_mm(which: str, size: str, what: str) -> Body:
    try:
        return _body(trade_sizes.chart(which).find(size).measure(what))
    except trade_sizes.UnknownNameError as e:
        raise NoMeasurementError(str(e)) from None


def _body(length: trade_sizes.Length) -> Body:
    return Body(float(length.mm), length.source, length.weak)


def table_span(document: Document) -> Span | None:
    """Where the pattern's own size chart stands, its heading included; None when there is none."""
    m = _TABLE.search(document.text)
    return Span(*m.span()) if m else None


def measure_of(document: Document, findings: list[Finding]) -> Measure:
    """The look-up that the pattern asks for: its own chart, and what that does not know from the chart it names."""
    fallback = trade_measure(_named(document, findings))
    m = _TABLE.search(document.text)
    if m is None:
        return fallback
    first = document.text.count("\n", 0, m.start("table")) + 1
    try:
        own = own_chart.read_chart(m["table"], "the pattern's own chart", first)
    except own_chart.ChartError as e:
        findings.append(Finding("G023", _at(document.text, e.line, e.column), {"problem": e.problem}))
        return fallback

    @cache
    def measure(size: str, what: str) -> Body:
        try:
            return _body(own.find(size).measure(what))
        except trade_sizes.UnknownNameError:
            return fallback(size, what)

    return measure


def charts_told(document: Document) -> tuple[str, ...]:
    """The words that a pattern's look-up goes by: its own chart, the chart it names."""
    return tuple(m.group() if m is not None else "" for m in (_TABLE.search(document.text), _NAMED.search(document.text)))


def _named(document: Document, findings: list[Finding]) -> str:
    m = _NAMED.search(document.text)
    if m is None:
        return "trade"
    which = m["which"].strip().lower().rstrip(".")
    if which in trade_sizes.CHARTS:
        return which
    findings.append(Finding("G024", Span(*m.span("which")), {"name": m["which"].strip(), "known": ", ".join(trade_sizes.CHARTS)}))
    return "trade"


def _at(text: str, line: int, column: int) -> Span:
    """The rest of a line from a column on."""
    start = 0
    for _ in range(line - 1):
        start = text.find("\n", start) + 1
    end = text.find("\n", start)
    return Span(min(start + column - 1, len(text)), len(text) if end < 0 else end)


def known_to_trade(size: str) -> bool:
    """Whether the trade's chart has a size of that name."""
    try:
        trade_sizes.chart("trade").find(size)
    except trade_sizes.UnknownNameError:
        return False
    return True
