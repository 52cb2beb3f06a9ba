"""The multiple told for the chain against the chain that the pattern makes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern, beginning
from loopwright.findings import Finding
from loopwright.model.tree import Chain, Row
from loopwright.record import record
from loopwright.source import Span

_MULTIPLE = re.compile(
    r"\bmultiples?\s+of\s+(?P<m>\d{1,4})(?P<sts>\s*(?:sts?|stitches|ch(?:ain)?s?)\b)?"
    r"(?:\s*(?:\+|plus|and)\s*(?P<plus>\d{1,3})(?!\s*(?:rows?|rnds?|rounds?|cm|mm|in)\b)(?P<sts2>\s*(?:sts?|stitches|ch(?:ain)?s?)\b)?)?"
    r"(?:\W{0,3}(?:(?:\+|plus|and|add)\s*(?P<chain>\d{1,2})\s*(?:ch\w*\s*)?(?:more\s+)?(?:for|to)\s+(?:the\s+|your\s+)?(?:turn\w*|base|beg\w*|start\w*|found\w*|first)"
    r"|(?:\+|plus|add)\s*(?P<more>\d{1,2})(?=\s*(?:$|[.;,)]|ch))))?",
    re.IGNORECASE | re.MULTILINE,
)
_CHAIN_TOLD = re.compile(r"\bch(?:ain)?\s+(?:a\s+|any\s+|in\s+)?(?:a\s+)?multiples?\b", re.IGNORECASE)
_SAMPLE = re.compile(
    r"\b(?:sample|swatch|example)\b[^.\n]{0,40}?\b(?:ch(?:ain)?\s+(?P<after>\d{1,4})|(?P<before>\d{1,4})\s+ch)\b", re.IGNORECASE
)


@record
class _Told:
    m: int
    rests: frozenset[int]
    span: Span
    words: str


def rule(pattern: Pattern) -> Iterator[Finding]:
    """A multiple of stitches allows for 0 to 4 chains more, for the turn; one told of the chain itself, or with its turn, is exact."""
    text = pattern.document.text
    told = _told(text)
    if told is None:
        return
    for length, span in _chains(pattern, told, text):
        if length % told.m not in told.rests:
            over = min((length - r) % told.m for r in told.rests)
            facts = {"chain": length, "multiple": told.words, "fewer": length - over, "more": length - over + told.m}
            yield Finding("C006", span, facts)
            return


def _told(text: str) -> _Told | None:
    """The strictest statement; None when there is none, or none that says more than the allowance for the turn."""
    found: list[_Told] = []
    for m in beginning(_MULTIPLE, text, "multiple"):
        every = int(m["m"])
        if every < 2 or text[max(0, m.start() - 200) : m.start()].rpartition("\n")[2].lstrip().startswith("{"):
            continue  # sentences of the Fit are worked out, not sampled
        plus = int(m["plus"] or 0)
        chained = (
            bool(_CHAIN_TOLD.search(text[max(0, m.start() - 20) : m.start() + 10]))
            or "ch" in ((m["sts"] or "") + (m["sts2"] or "")).lower()
        )
        if m["chain"] or m["more"]:
            rests = {plus + int(m["chain"] or m["more"])}
        elif chained:
            rests = {plus}
        else:
            rests = {plus + n for n in range(5)}
        legal = frozenset(r % every for r in rests)
        if len(legal) < every:
            found.append(_Told(every, legal, Span(m.start(), m.end()), " ".join(m.group().split())))
    return min(found, key=lambda t: len(t.rests), default=None)


def _chains(pattern: Pattern, told: _Told, text: str) -> Iterator[tuple[int, Span]]:
    """The chain of the sample told with the multiple, else the first foundation chain of the rows after it, per size."""
    line_end = text.find("\n", told.span.end)
    sample = _SAMPLE.search(text, told.span.end, line_end if line_end >= 0 else len(text))
    if sample:
        yield int(sample["after"] or sample["before"]), Span(sample.start(), sample.end())
        return
    for _, row in pattern.rows():
        chain = _foundation(row) if row.span.end >= told.span.start else None
        if chain is not None:
            for value in chain.n.values:
                if value is not None:
                    yield value + chain.plus, chain.span if chain.span.end else row.span
            return


def _foundation(row: Row) -> Chain | None:
    for node in row.body:
        if isinstance(node, Chain):
            ring = any(type(n).__name__ in ("Join", "Ring") for n in row.body)
            return node if (node.n.values and max(v or 0 for v in node.n.values) >= 8) and not ring else None
    return None
