"""The pattern's list of abbreviations and the abbreviations that its rows use. Not a rule."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache, lru_cache
from typing import Any

from loopwright.checks.pattern import Pattern, Told
from loopwright.kept import of_short
from loopwright.record import record
from loopwright.shipped import shipped_table
from loopwright.source import Span
from loopwright.terms import dialect

_ENTRY = re.compile(r"(?P<short>[A-Za-z][A-Za-z0-9 ()/.-]{0,20}?)\s*(?:=|:|–|—|\s-\s)\s*(?P<long>[^,;\n=]+)(?P<end>[,;\n]|$)")
_TITLES = frozenset("notes note gauge tension materials hook yarn size pattern instructions special stitches".split())
_TOKEN = re.compile(r"(?<![\w{'’-])(?:sl sts?|V sts?|v sts?|[A-Za-z][A-Za-z]*(?:\d?tog)?)(?![\w}'’])")
_TOG = re.compile(r"^(?P<stitch>[a-z]+?)\d*tog$")
_POST = re.compile(r"^(?:fp|bp)(?P<stitch>[a-z]+)$")


@record
class Entry:
    """One entry: the forms it defines (lower case; "st(s)" gives two), the long form, its span with the separator after it."""

    forms: tuple[str, ...]
    long: str
    span: Span


class Uses:
    """The abbreviations in a pattern's rows. `times`: how often each is written so, in the order of their first use."""

    __slots__ = ("_rows", "times")

    def __init__(self, pattern: Pattern) -> None:
        self._rows: list[tuple[int, tuple[tuple[str, int], ...]]] = []
        self.times: Counter[str] = Counter()
        for _, row in pattern.rows():
            at, terms = row.span.start, pattern.document.terms
            label = 0 if row.label is None else row.label.span.end - at
            found, times = _abbreviations(pattern.words(row), terms, label)
            self._rows.append((at, found))
            self.times.update(times)

    def spans(self, text: str) -> Iterator[Span]:
        """Where an abbreviation is written so, in the order of the text."""
        for at, found in self._rows:
            for one, start in found:
                if one == text:
                    yield Span(at + start, at + start + len(one))


def listed(pattern: Pattern) -> tuple[Told, tuple[Entry, ...]] | None:
    """The list of the heading with its entries; None when there is none or it has fewer than three."""
    for told in pattern.lines("abbreviations"):
        entries = _entries(told.value, told.value_span.start)
        if len(entries) >= 3:
            return told, entries
    return None


@of_short(16)
def _entries(told: str, at: int) -> tuple[Entry, ...]:
    """The entries of a list that begins at `at`; kept, as rows are written more often than lists."""
    found = (m for m in _ENTRY.finditer(told) if not told[m.start() - 1 : m.start()].isalnum() and m["short"].lower() not in _TITLES)
    return tuple(Entry(tuple(_forms(m["short"])), m["long"].strip(), Span(at + m.start(), at + m.end())) for m in found)


def _forms(short: str) -> Iterator[str]:
    for part in (p.rstrip(".") for p in re.split(r"\s*/\s*|\s+or\s+", short.strip().lower())):  # "sl st. - slip stitch"
        yield part.replace("(", "").replace(")", "")
        if "(" in part:
            yield re.sub(r"\([^)]*\)", "", part)


@lru_cache(maxsize=4_096)
def _abbreviations(words: str, terms: str, label: int) -> tuple[tuple[tuple[str, int], ...], Mapping[str, int]]:
    """The abbreviations in a row's words, each with its place there, and how often each stands there.

    "Rnd" is none in the row's label, which ends at `label`.
    """
    known = _known(terms)
    found = tuple(
        (m.group(), m.start()) for m in _TOKEN.finditer(words)
        if _is_abbreviation(m.group(), known) and not (m.start() < label and key(m.group()) in ("rnd", "rd", "row"))
    )
    return found, Counter(text for text, _ in found)


@lru_cache(maxsize=4_096)
def key(text: str) -> str:
    """Lower case, without the s of the plural."""
    low = text.lower()
    return low[:-1] if low.endswith("s") and len(low) > 2 and low not in ("rs", "ws", "sl s") and not low.endswith("ss") else low


def long_form(text: str, terms: str) -> str | None:
    """What an abbreviation is short for in these terms; None when not known."""
    table = _table()["long"]
    found: str | None = table.get(text) or table.get(text.lower()) or table.get(text.upper())
    if found is not None:
        return found
    which = dialect(terms)
    kind = which.kind_of(text)
    return which.term(kind).long if kind else None


def parts(text: str) -> tuple[str, ...]:
    """Shorter abbreviations that explain a composed one: dc3tog is told by dc and tog, fpdc by fp and dc."""
    low = text.lower()
    tog = _TOG.match(low)
    post = _POST.match(low)
    if tog:
        return (tog["stitch"], "tog")
    return (low[:2], post["stitch"]) if post else ()


@cache
def _table() -> dict[str, Any]:
    return shipped_table("loopwright.checks", "abbreviations.toml")


@cache
def _known(terms: str) -> frozenset[str]:
    which = dialect(terms)
    plain = set(_table()["words"]["plain"])
    stitches = {s for s in which.spellings if len(s) <= 5 and " " not in s and s not in plain}
    return frozenset(stitches | {k.lower() for k in _table()["long"]} | {"sl st", "v st"}) - plain


def _is_abbreviation(token: str, known: frozenset[str]) -> bool:
    low = token.lower()
    if token in ("A", "I") or len(low) < 2:
        return False
    if low in ("rs", "ws", "mc", "cc") and token != token.upper():
        return False
    return (
        low in known
        or key(low) in known
        or any(p in known for p in parts(low)[:1] if _TOG.match(low))
        or bool(_POST.match(low) and parts(low)[1] in known)
    )


@cache
def usual() -> frozenset[str]:
    """Abbreviations that a list of the unusual ones leaves out."""
    return frozenset(_table()["usual"])
