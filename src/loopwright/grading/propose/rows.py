"""Rows worked even: how many there are becomes a blank; and the multiples that rows need, out of their repeats."""

from __future__ import annotations

import math
import re

from loopwright.grading.counting import Legal
from loopwright.grading.propose.blanks import ANY, Blank, Found, Role
from loopwright.grading.propose.facts import Line
from loopwright.grading.propose.takes import multiple_of_row
from loopwright.grading.propose.tall import rows_mm
from loopwright.model.tree import Evenly
from loopwright.source import Span

_WORD = r"(?:rows?|rnds?|rounds?|r)"
_LABEL = re.compile(
    rf"(?P<word>{_WORD})\.?\s*(?P<first>\d+)\s*(?:(?:-|–|—|to|through|thru|and|&)\s*{_WORD}?\s*(?P<last>\d+))?", re.IGNORECASE,
)
_NAMED = re.compile(
    r"\b(?:rep(?:eat)?\.?|as|same as|work)\s+(?:the\s+|for\s+)?(?P<rows>(?P<word>rows?|rnds?|rounds?)\s+(?P<first>\d+)"
    r"(?:\s*(?:-|–|and|&|to|through)\s*(?P<last>\d+))?)", re.IGNORECASE,
)
NEXT_ROWS = re.compile(r"next\s+(?P<n>\d+)\s+(?P<word>rows|rnds|rounds)", re.IGNORECASE)
_TIMES = re.compile(r"(?P<n>\d+)\s*(?:times|more times|(?:more\s+)?(?:rows|rnds|rounds))", re.IGNORECASE)


def needed(lines: tuple[Line, ...], begin: int, count: int) -> tuple[Legal, tuple[str, ...]]:
    """The multiple that rows over `count` stitches need together, and which rows ask for what."""
    multiple, why = 1, []
    for i, line in enumerate(lines[begin:], begin):
        if line.start != "none":
            break
        m = multiple_of_row(line.body)
        if m is not None and m > 1 and math.lcm(multiple, m) <= count:
            multiple = math.lcm(multiple, m)
            why.append(f"the repeat of {said(line)} takes {m} sts")
        lost = _lost(line, lines[i + 1] if i + 1 < len(lines) else None)
        if lost > 1 and math.lcm(multiple, lost) <= count:
            multiple = math.lcm(multiple, lost)
            why.append(f"{said(line)} takes {lost} sts away each time it is worked")
        if line.count not in (None, count) and (i + 1 >= len(lines) or lines[i + 1].count != count):
            break
    return Legal(multiple, count % multiple, least=1), tuple(why)


def _lost(line: Line, after: Line | None) -> int:
    """Stitches that a row takes away evenly, when it is repeated until so many are left."""
    again = " ".join(x.text for x in (line, after) if x is not None)
    if not re.search(r"\buntil\b|\bremain", again, re.IGNORECASE):
        return 0
    return max((n.n.at(0) or 0 for n in line.body if isinstance(n, Evenly) and n.op == "dec" and n.n is not None), default=0)


def said(line: Line) -> str:
    """What to call a line: its label, else its first words."""
    return line.row.label.text if line.row.label else " ".join(line.text.split()[:4])


class Numbering:
    """Row numbers of one section while blanks come in: what a label must say now."""

    def __init__(self) -> None:
        self.shift = 0
        self.section: object = None
        self.known = True
        self.parts = 1

    def enter(self, line: Line, *, lost: bool) -> None:
        """A section begins: its numbers start at 1 again where those before it are no longer known."""
        if line.section is not self.section:
            self.section = line.section
            self.known = True
            self.shift = (line.first - 1) if lost and line.first else 0


def stretch_blank(found: Found, lines: tuple[Line, ...], i: int, before: int, numbering: Numbering, role: Role, item: str) -> int:
    """Makes a blank of the rows of a line that stands for many; gives the blank's number of rows (label's last, or times)."""
    line = lines[i]
    unit = "rnds" if line.in_rounds else "rows"
    word = (line.section.title if line.section else "even").lower()
    subject = item if role == "depth" else word
    name = found.name(f"{word} {'rounds' if unit == 'rnds' else 'rows'}")
    m = _LABEL.match(line.text)
    if m and line.first is not None and line.last is not None and line.last > line.first:
        first, last = line.first - numbering.shift, line.last - numbering.shift
        legal = _turning(line, lines, first, last)
        facts, less = (f"{said(line)}: all worked alike",), before - (first - 1)
        tall = rows_mm(lines, i, last, less if role == "depth" else 0, last - first + 1)
        slot = found.add(Blank(name, unit, last, role, subject, less, legal, facts, line=i, rows_mm=tall))  # type: ignore[arg-type]
        at = line.span.start
        found.replace(Span(at + m.start(), at + m.end()), f"{_many(m['word'], line)} {first}-{slot}")
        if line.tail is not None:
            found.replace(line.tail, "")
        return last
    n = NEXT_ROWS.match(line.text)
    if n is not None:
        many, facts = int(n["n"]), (f"{said(line)}: all worked alike",)
        legal, tall = _turning(line, lines, 1, many), rows_mm(lines, i, many, before if role == "depth" else 0, many)
        slot = found.add(Blank(name, unit, many, role, subject, before, legal, facts, line=i, rows_mm=tall))  # type: ignore[arg-type]
        found.replace(Span(line.span.start, line.span.start + n.end()), f"{n['word'].capitalize()} 1-{slot}")
        return many
    t = _TIMES.search(line.text)
    if t is None:
        found.kept.append(f"{said(line)}: its number of rows is not said in figures, so it stays")
        return 0
    times = int(t["n"])
    facts, tall = (f"{said(line)}: {times} times",), rows_mm(lines, i, times, before if role == "depth" else 0, times)
    slot = found.add(Blank(name, unit, times, role, subject, before, ANY, facts, line=i, rows_mm=tall))  # type: ignore[arg-type]
    at = line.span.start
    found.replace(Span(at + t.start("n"), at + t.end("n")), slot)
    return times


def _many(word: str, line: Line) -> str:
    """The word of a label for more rows than one: "Rows" for "Row"; what it is for a bare "R"."""
    if len(word) == 1:
        return "Rnds" if line.in_rounds else "Rows"
    return word if word.lower().endswith("s") else f"{word}s"


def _turning(line: Line, lines: tuple[Line, ...], first: int, rows: int) -> Legal:
    """Turned rows keep an even or an odd number in all sizes, so that each size goes on from the same side.

    Rows repeated in sets end with the same row of the set.
    """
    turned = not line.in_rounds and any(re.search(r"\bturn\b", x.text) for x in lines if x.section is line.section)
    order = line.row.order
    sets = len(order.rows) if order is not None and order.what == "repeat" else 1
    multiple = math.lcm(2 if turned else 1, sets or 1)
    return Legal(multiple, rows % multiple, least=max(1, first - 1))


def refer(found: Found, line: Line, before: Line | None, numbering: Numbering) -> None:
    """Rows named in the words of a row ("rep Row 8"): their numbers shifted with the labels, or the last row where none is known."""
    for m in _NAMED.finditer(line.text):
        first, last = int(m["first"]), int(m["last"] or m["first"])
        span = Span(line.span.start + m.start("rows"), line.span.start + m.end("rows"))
        word = "rnd" if m["word"].lower().startswith(("rnd", "rou")) else "row"
        if not numbering.known and before is not None and first == last == before.last:
            found.replace(span, f"last {word}")
        elif numbering.shift and first > numbering.shift:
            joined = m.group()[m.end("first") - m.start() : m.start("last") - m.start()] if m["last"] else ""
            said_last = f"{joined}{last - numbering.shift}" if m["last"] else ""
            found.replace(span, f"{m['word']} {first - numbering.shift}{said_last}")


def relabel(found: Found, line: Line, numbering: Numbering) -> None:
    """The label of a single row once the numbers before it have changed: shifted, or "Next row"."""
    m = _LABEL.match(line.text)
    if m is None or m["last"]:
        return
    at = line.span.start
    if not numbering.known:
        found.replace(Span(at, at + m.end()), f"Next {'rnd' if line.in_rounds else 'row'}")
    elif numbering.shift:
        found.replace(Span(at, at + m.end()), f"{m['word']} {int(m['first']) - numbering.shift}")
