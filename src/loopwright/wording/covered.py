"""Which words of a row its tree holds: what it does not hold must be kept as written, so that nothing is lost."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import fields
from functools import cache
from itertools import pairwise
from typing import Any

from loopwright.model.tree import (
    Chain,
    Divided,
    EdgeRun,
    Filet,
    InTurn,
    Mark,
    Node,
    Num,
    PatternRun,
    Place,
    Repeat,
    Skip,
    Spread,
    Thing,
    Unknown,
)
from loopwright.source import Span
from loopwright.terms.phrases import phrases

_BEST_AS_WRITTEN = (Unknown, InTurn, Spread, Divided, EdgeRun, Filet, PatternRun)
_SPACES = ("sp", "loop", "mesh", "arch", "corner", "centre", "shell", "cluster", "popcorn", "group")
_WORD = re.compile(r"[A-Za-z{][\w’'{}]*|\d+")
_BLANK = re.compile(r"\{[^{}\n]*\}")
_LETTERS = re.compile(r"[a-z]+")
_NOTE = re.compile(r"\([^()]*\bcounts?\b[^()]*\)", re.IGNORECASE)
_SENTENCE = re.compile(r"(?<=[.;])\s+(?=[A-Z])")


@cache
def quiet_words() -> frozenset[str]:
    """Words that say nothing beyond what the frames say anyway."""
    return frozenset(phrases("us").heading["quiet"].split())


def says_less(before: str, after: str) -> bool:
    """Whether a word that tells where exactly stands in the words as written and not in those put in their place."""
    had, has = set(_LETTERS.findall(_BLANK.sub(" ", before).lower())), set(_LETTERS.findall(after.lower()))
    return any(group & had and not group & has for group in _telling())


@cache
def _telling() -> tuple[frozenset[str], ...]:
    return tuple(frozenset(group.split()) for group in phrases("us").heading["telling"])


def spans(node: Any) -> Iterator[Span]:
    """Every span in a node."""
    if isinstance(node, tuple):
        for n in node:
            yield from spans(n)
    elif hasattr(node, "__dataclass_fields__") and not isinstance(node, Span):
        for f in fields(node):
            value = getattr(node, f.name)
            if isinstance(value, Span):
                if value.end > value.start:
                    yield value
            elif isinstance(value, tuple) or hasattr(value, "__dataclass_fields__"):
                yield from spans(value)


def numbers(node: Any) -> dict[tuple[int, int], Num]:
    """Every number in a node that has values, by where it stands."""
    found: dict[tuple[int, int], Num] = {}
    _numbers(node, found)
    return found


def _numbers(node: Any, found: dict[tuple[int, int], Num]) -> None:
    if isinstance(node, Num):
        if node.values and node.span.end > node.span.start:
            found[node.span.start, node.span.end] = node
    elif isinstance(node, tuple):
        for n in node:
            _numbers(n, found)
    elif hasattr(node, "__dataclass_fields__") and not isinstance(node, Span):
        for f in fields(node):
            _numbers(getattr(node, f.name), found)


def has_words_unread(nodes: Any) -> bool:
    """Whether words that could not be read, or that the worker does not follow, stand among nodes."""
    if isinstance(nodes, (Unknown, Divided)) or isinstance(nodes, Mark) and nodes.what == "skipped-counts":
        return True
    if isinstance(nodes, tuple):
        return any(has_words_unread(n) for n in nodes)
    if hasattr(nodes, "__dataclass_fields__") and not isinstance(nodes, (Num, Span)):
        return any(has_words_unread(getattr(nodes, f.name)) for f in fields(nodes))
    return False


def has_unknown(nodes: Any) -> bool:
    """Whether words that could not be read, or whose own words say more than a frame would, stand among nodes."""
    upto = isinstance(nodes, Repeat) and nodes.upto is not None
    upto = upto or isinstance(nodes, Place) and nodes.upto is not None and (nodes.left is not None or nodes.upto.kind not in _SPACES)
    lower = isinstance(nodes, Place) and nodes.of_row > 0
    more = isinstance(nodes, Chain) and nodes.every > 0 or isinstance(nodes, Skip) and nodes.to
    told = upto or lower or more
    told = told or isinstance(nodes, Mark) and nodes.what == "skipped-counts" or isinstance(nodes, Thing) and nodes.kind == "any"
    if told or isinstance(nodes, _BEST_AS_WRITTEN):
        return True
    if isinstance(nodes, tuple):
        return any(has_unknown(n) for n in nodes)
    if hasattr(nodes, "__dataclass_fields__") and not isinstance(nodes, (Num, Span)):
        return any(has_unknown(getattr(nodes, f.name)) for f in fields(nodes))
    return False


def sentences(text: str, start: int, end: int) -> list[Span]:
    """The sentences of text[start:end]."""
    edges = [start, *(start + m.end() for m in _SENTENCE.finditer(text[start:end])), end]
    return [Span(a, b) for a, b in pairwise(edges) if b > a]


def left_over(text: str, part: Span, nodes: tuple[Node, ...]) -> list[str]:
    """Words of a sentence that no node holds and that say something."""
    held = bytearray(part.end - part.start)
    for span in spans(nodes):
        for i in range(max(span.start, part.start), min(span.end, part.end)):
            held[i - part.start] = 1
    said = text[part.start : part.end]
    chains = {n.span.end for n in _chains(nodes)}
    for m in _NOTE.finditer(said):
        if any(part.start + m.start() - 2 <= end <= part.start + m.end() for end in chains):
            held[m.start() : m.end()] = b"\x01" * (m.end() - m.start())
    quiet = quiet_words()
    return [m.group() for m in _WORD.finditer(said) if not all(held[m.start() : m.end()]) and not _is_quiet(m.group(), quiet)]


def _is_quiet(word: str, quiet: frozenset[str]) -> bool:
    """A single capital is a colour, whatever it means as a word."""
    return word.lower() in quiet and not (len(word) == 1 and word.isupper())


def _chains(node: Any) -> Iterator[Chain]:
    """Chains that hold what is said of them as a stitch."""
    if isinstance(node, Chain) and node.counts != "unsaid":
        yield node
    elif isinstance(node, tuple):
        for n in node:
            yield from _chains(n)
    elif hasattr(node, "__dataclass_fields__") and not isinstance(node, (Num, Span)):
        for f in fields(node):
            yield from _chains(getattr(node, f.name))
