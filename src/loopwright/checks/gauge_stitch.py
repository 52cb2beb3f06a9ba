"""A gauge that does not tell in which stitch it was measured."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.gauges import gauge
from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding

_PLAIN = re.compile(r"^(?:sts?|stitch(?:es)?)$", re.IGNORECASE)
_TOLD = re.compile(
    r"\bin\s+(?!\d)(?:the\s+)?[A-Za-z-]+|\bpatt|\bpatterns?\b|"
    r"\brepeats?\b|\bmotif|\bsquare|\b(?:ripple|chevron|shell|wave|fan|star|block|cable)s?\b|"
    r"\brounds?\s+\d|\bof\s+[A-Za-z]", re.IGNORECASE
)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Speaks where the noun is only "sts" and no pattern is named."""
    told = gauge(pattern)
    if told is not None and told.stitches and _PLAIN.match(told.noun) and not _TOLD.search(told.text.replace(" in.", " ")):
        yield Finding("C028", told.span)
