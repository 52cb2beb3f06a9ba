"""Stitches that a pattern names and never tells: "waistcoat st in each st". Each is taken as one stitch worked into one, and reported."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from loopwright.findings import Finding
from loopwright.notation.scanner import scan, words
from loopwright.source import Span
from loopwright.terms import Dialect
from loopwright.terms.dialect import extended

MOST = 12  # of one pattern
_PLACED = re.compile(r"st(?:itch)?(?:e?s)?\s+in(?:to)?\s+(?:each|every|(?:the\s+)?next|\d)")  # of lower case; found fast, as it begins with letters
_GLUED = re.compile(r" in(?<=[a-z][sd]c in|[a-z]tr in|[a-z]st in)(?<![^a-z]hdc in)(?:to)? (?:each|every|(?:the )?(?:next|first|\d)|same)")  # "hhdc in each st"; found fast too
_SWEPT = re.compile(r" a(?:cross|round)(?<=[a-z][sd]c a.{5}|[a-z]tr a.{5}|[a-z]st a.{5})(?<![^a-z]hdc a.{5})\b")  # "hhdc around"
_HEAD = re.compile(r"(?:^|[^\w’'-])(?P<name>(?P<head>[a-z]{1,5})(?:[sd]c|tr|st))$")
LONGEST_GLUED = 8
_VOWEL, _WORDS = re.compile("[aeiouy]"), frozenset(("disc",))  # "last", "post" and their like are words
_NAMED = re.compile(r"(?:^|[:.,;*(\[\d\n]|\b(?:work|then|and|with))\s{0,3}(?P<name>(?:[a-z][a-z’'-]{2,24}\s){1,2})$", re.IGNORECASE)  # before it
LONGEST_NAME = 60


@cache
def _no_names() -> frozenset[str]:
    return frozenset(words()["untold"]["no_names"])


def with_untold(which: Dialect, text: str) -> tuple[Dialect, list[Finding]]:
    """The dialect that knows such stitches too, and a finding for the first place of each."""
    low = text.lower()
    low = low if len(low) == len(text) else text
    found: dict[str, Finding] = {}
    for name, start, end in (*_spaced(which, low), *_glued(which, low)):
        if name not in found and len(found) < MOST:
            found[name] = Finding("N006", Span(start, end), {"name": name})
    if not found:
        return which, []
    ways = {said: name for name in found for said in (name, f"{name}s", *((f"{name}itch", f"{name}itches") if name.endswith(" st") else ()))}
    return extended(which, ways), [finding for name, finding in found.items() if not _in_prose(name, text)]


def _spaced(which: Dialect, text: str) -> Iterator[tuple[str, int, int]]:
    """The names that end in "st", and where they stand."""
    for placed in _PLACED.finditer(text):
        m = _NAMED.search(text[max(0, placed.start() - LONGEST_NAME) : placed.start()])
        if m is None:
            continue
        called = m["name"].split()
        name = " ".join([*called, "st"])
        if which.kind_of(name) is None and which.kind_of(" ".join(called)) is None and _no_names().isdisjoint(called):
            yield name, placed.start() - len(m["name"]), placed.start() + len("st")


def _glued(which: Dialect, text: str) -> Iterator[tuple[str, int, int]]:
    """Short names built on a plain stitch's, which nobody knows: "hhdc", "wst"; and where they stand."""
    seen: set[str] = set()
    for placed in (*_GLUED.finditer(text), *_SWEPT.finditer(text)):
        m = _HEAD.search(text, max(0, placed.start() - LONGEST_GLUED), placed.start())
        if m is None or m["name"] in seen:
            continue
        seen.add(name := m["name"])
        if name not in _WORDS and not (name.endswith("st") and _VOWEL.search(m["head"])) and [t.kind for t in scan(name, 0, len(name), which)] == ["word"]:
            yield name, m.start("name"), m.end()


def _in_prose(name: str, text: str) -> bool:
    """Whether a sentence tells how it is made: "The waistcoat stitch is worked like a single crochet, but …"."""
    return re.search(rf"\b{re.escape(name)}(?:itch)?(?:e?s)?\s*(?:\([^()\n]{{1,20}}\)\s*)?(?:=|:|—|–|(?:is|are)\s+(?:made|worked|a|an|the|done|like)\b)", text, re.IGNORECASE) is not None
