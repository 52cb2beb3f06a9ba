"""Rows that use US names of stitches next to UK ones, or the other than the pattern says it uses."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from loopwright.checks.pattern import Pattern, standing
from loopwright.findings import Edit, Finding, Fix
from loopwright.source import Span
from loopwright.terms import dialect

# Names that only one of the two dialects has; dc, tr and dtr are in both and prove nothing. Source: the lists named in terms/dialects.
_US = re.compile(r"\b(?:sc(?:\d?tog)?|hdc(?:\d?tog)?|single crochets?|half double crochets?)\b", re.IGNORECASE)
_UK = re.compile(r"\b(?:htr(?:\d?tog)?|half trebles?)\b", re.IGNORECASE)


def rule(pattern: Pattern) -> Iterator[Finding]:
    """Rows only: a heading may translate. Books in the old terms mix freely and are left alone."""
    which = pattern.document.terms
    if which == "old":
        return
    us = list(_in_rows(pattern, _US))
    uk = list(_in_rows(pattern, _UK))
    strange, own = (uk, us) if which == "us" else (us, uk)
    told = pattern.value("terms")
    if strange and (own or told is not None):
        span, word = strange[0]
        facts = {
            "word": word,
            "terms": which.upper(),
            "other": "UK" if which == "us" else "US",
            "own": own[0][1] if own else f"Terms: {which.upper()}",
        }
        yield Finding("C007", span, facts, fix=_fix(strange, which))


def _fix(strange: Sequence[tuple[Span, str]], which: str) -> Fix | None:
    """The strange names put into the pattern's own terms. Not safe: the names that both dialects have may be meant in the other."""
    own, other = dialect(which), dialect("uk" if which == "us" else "us")
    edits = []
    for span, word in strange:
        kind = other.kind_of(word)
        if kind is None:
            return None
        said = own.term(kind)
        better = said.plural if " " in word and word.lower().endswith("s") else said.long if " " in word else said.short
        edits.append(Edit(span, better.capitalize() if word[0].isupper() else better))
    return Fix(f"put them into {which.upper()} terms", tuple(edits), safe=False)


def _in_rows(pattern: Pattern, names: re.Pattern[str]) -> Iterator[tuple[Span, str]]:
    for _, row in pattern.rows():
        words, at = pattern.words(row), row.span.start
        for start, end in standing(names, words):
            yield Span(at + start, at + end), words[start:end]
