"""How long the ties, cords and loops of a pattern are: chains worked under such a name at her gauge, and lengths told in words."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache
from typing import NamedTuple

from loopwright.model.tree import Chain, Document, Group, HeadLine, Node, Prose, Repeat, Row, Section
from loopwright.record import record
from loopwright.source import Span
from loopwright.source.expressions import Expression
from loopwright.trade.cautions.gaps import StitchMm
from loopwright.trade.cautions.scopes import HIDDEN, TOLD

CORD = r"(?:ties?|tie cords?|cords?|strings?|ribbons?|tie straps?|chin straps?)"
_CORD = Expression(rf"\b{CORD}\b", re.IGNORECASE)
_LOOP = Expression(r"\b(?:hanging|button|chain|ch|tie)[ -]loops?\b|\bloop for (?:the |a )?(?:button|hanging)\b|^loops?\b", re.IGNORECASE)
_NO_CORD = Expression(r"\btied? (?:off|in|the|a|ends?|on|together|yarn)\b|\b(?:string|cord)s? of (?:ch|beads)", re.IGNORECASE)
# a cord that runs through the fabric: only its ends hang free, and how long those are nobody tells
_THROUGH = Expression(r"\b(?:drawstrings?|thread(?:ed)?|weave|woven|lace[ds]?|through)\b", re.IGNORECASE)
_TOLD = Expression(
    rf"(?:(?P<n>\d{{1,3}}(?:\.\d)?)\s*(?P<unit>cm|mm|inch(?:es)?|in\b|[\"”])[ -]*"
    rf"(?:long\s+|lengths?\s+of\s+|of\s+)?(?:[a-z]+\s+){{0,3}}?{CORD}\b)"
    rf"|(?:\b{CORD}\b[^.;\n\d]{{0,40}}?(?P<n2>\d{{1,3}}(?:\.\d)?)\s*(?P<unit2>cm|mm|inch(?:es)?|in\b|[\"”])\s*(?:long|in length|each)\b)",
    re.IGNORECASE,
)
_WAIST = Expression(r"\b(?:waist|belt|hem|drawstrings?)\b", re.IGNORECASE)
LEAST_CHAINS = 8  # fewer are a turning chain, a picot or a buttonhole
LONGEST_LOOP = 30  # chains; longer is no loop but a strap
_MM = {"c": 10.0, "m": 1.0, "i": 25.4, '"': 25.4, "”": 25.4}


@record
class Cord:
    """One tie or loop of one size, `mm` long.

    `waist`: it closes a waist or hem, or runs through it. `free`: it hangs free, so that a limit for free ends holds for it.
    """

    what: str
    waist: bool
    mm: float
    free: bool
    span: Span
    how: str


class _Named(NamedTuple):
    """What a row's words and its section's title say: "tie", "loop" or ""; at a waist; drawn through the fabric."""

    what: str
    waist: bool
    through: bool


class Tied(NamedTuple):
    """A row that makes a cord or loop, or words that tell how long one is, whatever the size."""

    item: Row | Prose | HeadLine
    said: _Named | None


def tied(document: Document) -> tuple[Tied, ...]:
    """What there is in a pattern to take the lengths of ties and loops from, in the order of the text."""
    found: list[Tied] = []
    title = ""
    for at, item in enumerate(document.items):
        if isinstance(item, Section):
            title = item.title
        elif isinstance(item, Row):
            said = _named(title, document.text[item.span.start : item.span.end])
            if said.what:
                found.append(Tied(item, said))
        elif isinstance(item, (Prose, HeadLine)) and at and not _is_advice(item) and _told(_words(item)):
            found.append(Tied(item, None))
    return tuple(found)


def cords(all_tied: Iterable[Tied], size: int, stitch: StitchMm | None) -> Iterator[Cord]:
    """The ties and loops of a size whose length is known. Without the size of a stitch only those whose length is told."""
    for item, said in all_tied:
        if isinstance(item, Row):
            made = _made(item, said, size) if said is not None and (item.sizes is None or size in item.sizes) else None
            if said is not None and stitch is not None and made is not None:
                chain, many = made
                free = said.what == "loop" or not said.through
                yield Cord(said.what, said.waist, many * stitch.width("ch"), free, chain.span, f"{many} ch")
        else:
            for waist, mm, free, how in _told(_words(item)):
                yield Cord("tie", waist, mm, free, item.span, how)


def _words(item: Prose | HeadLine) -> str:
    return item.text if isinstance(item, Prose) else item.value


def _made(row: Row, said: _Named, size: int) -> tuple[Chain, int] | None:
    """The chain of a row that is the cord or loop, and how many chains it has in this size."""
    chains = [(c, (c.n.at(size) or 0) + c.plus) for c in _chains(row.body)]
    long = [(c, n) for c, n in chains if n >= LEAST_CHAINS and (said.what == "tie" or n <= LONGEST_LOOP)]
    return max(long, key=lambda found: found[1]) if long else None


@lru_cache(maxsize=4_096)
def _named(title: str, words: str) -> _Named:
    cord = _CORD.search(title) or _CORD.search(_NO_CORD.sub(" ", words))
    loop = not cord and (_LOOP.search(title) or _LOOP.search(words))
    both = f"{title} {words}"
    return _Named("tie" if cord else "loop" if loop else "", _WAIST.search(both) is not None, _THROUGH.search(both) is not None)


def _chains(nodes: tuple[Node, ...]) -> Iterator[Chain]:
    for node in nodes:
        if isinstance(node, Chain):
            yield node
        elif isinstance(node, (Group, Repeat)):
            yield from _chains(node.nodes)


def _is_advice(item: Prose | HeadLine) -> bool:
    return isinstance(item, HeadLine) and item.name in ("gauge", "tension", *TOLD, *HIDDEN)


@lru_cache(maxsize=1_024)
def _told(text: str) -> tuple[tuple[bool, float, bool, str], ...]:
    """Lengths in words, "two ribbons 45 cm long", "30 cm of ribbon": whether at a waist, mm, whether hanging free, the words."""
    found = []
    waist = _WAIST.search(text) is not None
    for m in _TOLD.finditer(text):
        n, unit = m["n"] or m["n2"], m["unit"] or m["unit2"]
        mm = float(n) * _MM[unit[0].lower()]
        if mm > 0:
            free = _THROUGH.search(text[max(0, m.start() - 40) : m.end() + 40]) is None
            found.append((waist, mm, free, m.group().strip()))
    return tuple(found)
