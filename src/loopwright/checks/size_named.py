"""Rows told to be of a size that the pattern does not have: "Row 2 (XL only)" where the sizes are S, M and L."""

from __future__ import annotations

import re
from collections.abc import Iterator

from loopwright.checks.pattern import Pattern
from loopwright.findings import Finding
from loopwright.source import Span

_ONLY = re.compile(
    r"\(\s*(?:for\s+)?(?:sizes?\s+)?(?P<names>[\w ,&/-]{1,40}?)\s+(?:sizes?\s+)?only\s*\)"
    r"|\b(?:for\s+)?sizes?\s+(?P<named>[\w ,&/-]{1,40}?)\s+only\b", re.IGNORECASE,
)
_A_SIZE = re.compile(r"(?:\d?x{0,4}[sl]|m|(?:x-?|extra )?(?:small|large)|medium|newborn|preemie|toddler|child|teen|adult)", re.IGNORECASE)
_APART = re.compile(r",|&|/|\band\b|\bor\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Only names that are sizes beyond doubt, in patterns whose heading names the sizes."""
    if pattern.value("sizes") is None:
        return
    known = {_plain(size) for size in pattern.document.sizes}
    known |= {size[:1] for size in known} | {_initials(size) for size in pattern.document.sizes}
    for span, words in pattern.body():
        for m in _ONLY.finditer(words) if "only" in words.lower() else ():
            for name in _APART.split(m["names"] or m["named"]):
                told = _plain(name)
                if _A_SIZE.fullmatch(name.strip()) and told not in known and not any(size.startswith(told) for size in known):
                    facts = {"size": name.strip(), "sizes": ", ".join(pattern.document.sizes)}
                    yield Finding("C049", Span(span.start + m.start(), span.start + m.end()), facts)


def _plain(size: str) -> str:
    return re.sub(r"[\s-]", "", size.lower())


def _initials(size: str) -> str:
    return "".join(word[0] for word in re.split(r"[\s-]+", size.lower()) if word)
