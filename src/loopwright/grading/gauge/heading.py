"""Lines of the heading by their names, wherever they stand, and what they say of hook and yarn class."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from functools import cache, lru_cache
from operator import attrgetter
from typing import Any

from loopwright.kept import of_short
from loopwright.model.moved import words_of
from loopwright.model.tree import Document, HeadLine, Make, Row
from loopwright.record import record
from loopwright.source import Span
from loopwright.trade.hooks import of_label, of_old_uk
from loopwright.trade.stitches import stitch
from loopwright.trade.yarn import Weight, by_metres, weight, weights

_NAMED = re.compile(r"^[ \t]*(?P<name>[A-Za-z][A-Za-z ]{1,40}?)[ \t]*[:=][ \t]*(?P<value>\S.*)$", re.MULTILINE)
_MM = re.compile(r"(?<![\d.])(?P<mm>\d{1,2}(?:[.,]\d{1,3})?)\s*-?mm\b", re.IGNORECASE)
_LABEL = re.compile(
    r"(?P<label>(?:steel\s+(?:(?:hook|size|no\.?|#)\s*)*\d{1,2}|\b[A-Q](?:\s?[/-]?\s?\d{1,2}(?:\.\d|\s?1/2)?)?\b))(?!\s*mm)"
)
_THREAD = re.compile(r"\b(?:crochet (?:cotton|thread)|bedspread cotton|thread|cotton size \d+|size \d{2,3} cotton)\b", re.IGNORECASE)
# A mass and a length of yarn as they are written, to be put into longer expressions.
MASS = r"(?P<g>\d{1,4}(?:\.\d{1,2})?)\s*(?P<mass>g|gr|grams?|grammes?|oz|ounces?)\b"
LENGTH = r"(?P<n>\d{1,2},\d{3}|\d{1,5}(?:[.,]\d{1,2})?)\s*(?P<unit>m|metres?|meters?|yds?|yards?)\b"
_BETWEEN = r"\s*(?:balls?|skeins?|hanks?|cones?)?\s*(?:[=/:(,–-]|per|of|is|at|each|about|approx\w*\.?|ca\.?)*\s*(?:\d?\s*balls?\s*)?"
_BALL = re.compile(f"{MASS}{_BETWEEN}{LENGTH}", re.IGNORECASE)
_BALL_TURNED = re.compile(f"{LENGTH}{_BETWEEN}{MASS}", re.IGNORECASE)
_THINNEST, _THICKEST = 20_000, 3  # metres in 100 g: beyond these it is no yarn (common practice, no source)
# class names that are everyday words too: they count as a part of the line alone, or before "weight" or "yarn"
_EVERYDAY = frozenset("fine medium light baby craft rug sock lace thread 0 1 2 3 4 5 6 7".split())
GRAMS = {"g": 1.0, "o": 28.35}
METRES = {"m": 1.0, "y": 0.9144}  # a yard is 0.9144 m exactly


@record
class Line:
    """ "Name: value" of the text. `name` is lower case; the span is that of the value."""

    name: str
    value: str
    span: Span


def lines(document: Document, *names: str) -> list[Line]:
    """Lines whose name is one of these or begins with one ("gauge in dc"), in the order of the text, before the first row or after it."""
    found = [Line(i.name, i.value, i.value_span) for i in document.items if isinstance(i, HeadLine) and _named(i.name, names)]
    seen = {line.span.start for line in found}
    found += [line for line in _named_lines(document.text) if _named(line.name, names) and line.span.start not in seen]
    return sorted(found, key=lambda line: line.span.start)


@lru_cache(maxsize=4)
def _named_lines(text: str) -> tuple[Line, ...]:
    """All lines of a text that begin with a name and a colon."""
    return tuple(
        Line(" ".join(m["name"].lower().split()), m["value"].strip(), Span(m.start("value"), m.end("value"))) for m in _NAMED.finditer(text)
    )


@lru_cache(maxsize=4_096)
def _named(name: str, names: tuple[str, ...]) -> bool:
    return any(name == n or name.startswith(f"{n} ") for n in names) and name != "yarn over"  # an abbreviation, no yarn


def hook_mm(document: Document) -> float | None:
    """The hook in mm: in its own line, or in the gauge's; None where none is told or the label means no hook."""
    for line in (*lines(document, "hook", "hooks", "hook size"), *lines(document, "gauge", "tension", "materials", "you will need")):
        found = hook_of(line.value, own_line=line.name.startswith("hook"))
        if found is not None:
            return found
    return None


def hook_of(words: str, *, own_line: bool = True) -> float | None:
    """A hook's thickness in words: "4 mm (G-6)", "size I", "steel 7"; a letter counts only in a line of its own."""
    m = _MM.search(words)
    if m:
        mm = float(m["mm"].replace(",", "."))
        return mm if 0.3 <= mm <= 40 else None
    if not own_line:
        return None
    for label in _LABEL.finditer(words):
        known = of_label(label["label"])
        if known:
            return known[0].mm
    old = re.search(r"\b(?:no\.?|uk)\s*(\d{1,2})\b", words, re.IGNORECASE)
    known = of_old_uk(old[1]) if old else ()
    return known[0].mm if known else None


@of_short(64)
def yarn_class(words: str) -> Weight | None:
    """The class that the words of a yarn line name, or that its metres tell; None where neither does."""
    if _THREAD.search(words):
        return weights()[0]
    for part in re.split(r"[,;(]|\bin\b", words):
        tokens = re.findall(r"[A-Za-z0-9]+", part)
        for many in range(min(3, len(tokens)), 0, -1):
            for at in range(len(tokens) - many + 1):
                said = " ".join(tokens[at : at + many])
                alone = at + many == len(tokens) == many or (tokens[at + many : at + many + 1] or [""])[0].lower() in ("weight", "yarn")
                known = weight(said) if alone or said.lower() not in _EVERYDAY else None
                if known is not None:
                    return known
    ball = ball_of(words)
    near = by_metres(100 * ball[1] / ball[0]) if ball else ()
    return near[0] if len(near) == 1 else None


def ball_of(words: str) -> tuple[float, float] | None:
    """Grams and metres of a ball, by "50 g = 120 m", "220 yds per 100 g" and the like; None where they are not told or cannot be."""
    m = _BALL.search(words) or _BALL_TURNED.search(words)
    if m is None:
        return None
    grams, metres = grams_of(m), metres_of(m)
    return (grams, metres) if grams > 0 and _THICKEST <= metres * 100 / grams <= _THINNEST else None


def grams_of(m: re.Match[str]) -> float:
    """The mass that MASS found."""
    return float(m["g"]) * GRAMS[m["mass"][0].lower()]


def metres_of(m: re.Match[str]) -> float:
    """The length that LENGTH found; a comma before three digits parts thousands."""
    said = m["n"].replace(",", "" if re.fullmatch(r"\d{1,2},\d{3}", m["n"]) else ".")
    return float(said) * METRES[m["unit"][0].lower()]


def main_stitch(document: Document) -> str | None:
    """The stitch that most instructions of the pattern name (US key), None where none has a height of its own."""
    bodies: dict[int, tuple[Row, int]] = {}  # rows that say the same are looked at once
    for item in document.items:
        if isinstance(item, Row):
            same = words_of(item)
            row = item if same is None else same[0]
            bodies[id(row)] = row, bodies[id(row)][1] + 1 if id(row) in bodies else 1
    seen: Counter[str] = Counter()
    for row, times in bodies.values():
        for kind in _kinds(row.body):
            seen[kind] += times
    told = [(kind, n) for kind, n in seen.items() if stitch(kind) is not None and kind not in ("ch", "sl st")]
    return max(told, key=lambda one: one[1])[0] if told else None


def _kinds(node: object) -> Iterator[str]:
    """Kinds of the stitches made anywhere below a node."""
    waiting = [node]
    while waiting:
        one = waiting.pop()
        if isinstance(one, Make):
            yield one.kind
        elif isinstance(one, tuple):
            waiting.extend(one)
        else:
            kind: Any = type(one)
            waiting.extend(_parts_of(kind)(one))


@cache
def _parts_of(kind: type) -> Callable[[object], tuple[object, ...]]:
    """What gives the parts of a node that may hold stitches."""
    names = [f.name for f in fields(kind) if "Node" in str(f.type)] if is_dataclass(kind) else []
    return attrgetter(*names) if len(names) > 1 else lambda one: tuple([getattr(one, name) for name in names])
