"""Stitches that a pattern names and never tells: "waistcoat st in each st". Each is taken as one stitch worked into one, and reported."""

from __future__ import annotations

import re
from functools import cache

from loopwright.findings import Finding
from loopwright.notation.scanner import words
from loopwright.source import Span
from loopwright.terms import Dialect
from loopwright.terms.dialect import extended

MOST = 12  # of one pattern
_PLACED = re.compile(r"st(?:itch)?(?:e?s)?\s+in(?:to)?\s+(?:each|every|(?:the\s+)?next|\d)")  # of lower case; found fast, as it begins with letters
_NAMED = re.compile(r"(?:^|[:.,;*(\[\d\n]|\b(?:work|then|and|with))\s{0,3}(?P<name>(?:[a-z][a-z’'-]{2,24}\s){1,2})$", re.IGNORECASE)  # before it
LONGEST_NAME = 60


@cache
def _no_names() -> frozenset[str]:
    return frozenset(words()["untold"]["no_names"])


def with_untold(which: Dialect, text: str) -> tuple[Dialect, list[Finding]]:
    """The dialect that knows such stitches too, and a finding for the first place of each."""
    found: dict[str, Finding] = {}
    low = text.lower()
    for placed in _PLACED.finditer(low if len(low) == len(text) else text):
        m = _NAMED.search(text[max(0, placed.start() - LONGEST_NAME) : placed.start()])
        if m is None:
            continue
        called = m["name"].lower().split()
        name = " ".join([*called, "st"])
        if name not in found and len(found) < MOST and which.kind_of(name) is None and which.kind_of(" ".join(called)) is None and _no_names().isdisjoint(called):
            found[name] = Finding("N006", Span(placed.start() - len(m["name"]), placed.start() + len("st")), {"name": name})
    if not found:
        return which, []
    ways = {said: name for name in found for said in (name, f"{name}s", f"{name}itch", f"{name}itches")}
    return extended(which, ways), [finding for name, finding in found.items() if not _in_prose(name, text)]


def _in_prose(name: str, text: str) -> bool:
    """Whether a sentence tells how it is made: "The waistcoat stitch is worked like a single crochet, but …"."""
    return re.search(rf"\b{re.escape(name)}(?:itch)?(?:e?s)?\s*(?:\([^()\n]{{1,20}}\)\s*)?(?:=|:|—|–|(?:is|are)\s+(?:made|worked|a|an|the|done|like)\b)", text, re.IGNORECASE) is not None
