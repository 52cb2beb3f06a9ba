"""A length left to the maker, and later a fixed number of stitches along the edge that it makes."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern, beginning
from loopwright.findings import Finding
from loopwright.source import Span

_FREE = re.compile(
    r"\b(?:until|till)\b[^.;\n{]{0,50}\b(?:measures?|is)\b[^.;\n{]{0,25}\d|"
    r"\b(?:to|until)\s+(?:the\s+)?desired\s+(?:length|depth|width|height)|"
    r"\bas long as (?:you (?:like|want)|desired|wished)",
    re.IGNORECASE,
)
_PICKUP = re.compile(
    r"\b(?P<n>\d{1,4})\s+(?:sc|dc|hdc|htr|tr|sts?|stitches)\b[^.;,\n]{0,25}\b(?:along|across|down|up|over|around|round)\b[^.;,\n]{0,20}"
    r"\b(?:edges?|row[- ]ends?|ends? of (?:the )?rows?|sides?|armhole)\b",
    re.IGNORECASE,
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """The first fixed number after a free length; advice, since the edge may be another one."""
    text = pattern.document.text
    free = next(beginning(_FREE, text, "until", "till", "to", "as long", start=pattern.body_start()), None)
    if free is None:
        return
    fixed = _PICKUP.search(text, free.end())
    if fixed is not None:
        yield Finding("C023", Span(fixed.start(), fixed.end()), {"number": fixed["n"], "length": " ".join(free.group().split())})
