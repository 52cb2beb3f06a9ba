"""Ovals worked on both sides of a chain: the straight side is one number, told many times over; counts follow from it."""

from __future__ import annotations

import re

from loopwright.grading.propose.blanks import Blank, Found, Reason
from loopwright.grading.propose.facts import Line, walk
from loopwright.model.tree import Chain
from loopwright.source import Span

_OTHER = re.compile(r"other side|opposite side|both sides|underside|free loops? of", re.IGNORECASE)
_PLAIN = re.compile(r"(?P<n>\d+)(?=\s+(?:ch|chs|chains?|sts|stitches)\b)", re.IGNORECASE)
LEAST_SIDE = 4


def oval(found: Found, lines: tuple[Line, ...], at: int) -> int | None:
    """Puts an oval's blanks in; gives the index of the line after it. None where line `at` does not begin one."""
    chain = next((n for n in walk(lines[at].body) if isinstance(n, Chain)), None)
    first = next((i for i in (at, at + 1) if i < len(lines) and _OTHER.search(lines[i].text)), None)
    if first is None or chain is None or not chain.n.span.end:
        return None
    side = _side(lines[first])
    chains = chain.n.at(0) or 0
    if side is None or not 0 <= chains - side <= 6:
        return None
    section = lines[first].section
    word = section.title.lower() if section is not None else "oval"
    facts = (f"both sides of the chain have {side} plain sts; {chains - side} chains more turn the ends",)
    blank = Blank(found.name(f"{word} side sts"), "sts", side, "side", word, facts=facts, line=at)
    slot = found.add(blank)
    found.chain(lines[at].text, lines[at].span.start, chain.n.span, slot, chains - side)
    end = first
    while end < len(lines) and (end == first or _side(lines[end]) == side) and lines[end].count is not None:
        _row(found, lines[end], blank)
        end += 1
    return end


def _side(line: Line) -> int | None:
    """The plain run that stands twice or more in a round."""
    numbers = [int(m["n"]) for m in _PLAIN.finditer(line.text.rpartition("(")[0] or line.text)]
    twice = [n for n in numbers if n >= LEAST_SIDE and numbers.count(n) >= 2]
    return max(twice, default=None)


def _row(found: Found, line: Line, side: Blank) -> None:
    """One round: its plain runs and its printed count."""
    at = line.span.start
    stop = line.row.printed[0].n.span.start - at if line.row.printed and line.row.printed[0].n.span.end else len(line.text)
    for m in _PLAIN.finditer(line.text, 0, stop):
        if int(m["n"]) == side.value:
            found.replace(Span(at + m.start("n"), at + m.end("n")), f"{{{side.name}}}")
    if line.count is None:
        return
    rest = line.count - 2 * side.value
    ends = f" {'plus' if rest > 0 else 'less'} {abs(rest)}" if rest else ""
    link = Reason(f"twice {{{side.name}}}{ends}", f"2 x {side.value} + {rest} = {line.count}")
    label = line.row.label.text.lower() if line.row.label else "edge"
    count = Blank(found.name(f"{label} sts"), "sts", line.count, "link", given=(link,), line=line.item)
    if line.row.printed and line.row.printed[0].n.span.end:
        found.replace(line.row.printed[0].n.span, found.add(count))
