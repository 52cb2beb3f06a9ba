"""Lines as they were meant: a long line that was broken goes on in the next ones; quoted lines are no instructions."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise

from loopwright.notation.sizes_told import parts_of
from loopwright.source import Source

LONG = 50
"""A line shorter than this was not broken for its length."""
_BEGINS = re.compile(r"\s*(?:(?:next\s+)?(?:rows?|rnds?|rounds?)\b[^:]{0,60}:|[-–—•]\s|\d{1,3}\.\s|\{|[A-Z][A-Za-z ]{1,30}:\s)", re.IGNORECASE)
_INDENTED = re.compile(r"\n[^\S\n]{2}")


WIDEST = 140
"""Lines that were broken all at one width are no longer than this."""
LEAST_BROKEN = 2
"""So many lines that end amid a sentence, as wide as any, show that the text was broken at that width."""
RAGGED = 12
"""By so many characters a line may fall short of the width where it ends amid a sentence: breaks made by hand, words kept together."""
_AMID = re.compile(r"[^\s.:!?)\]]\s*$|,\s*$")
_LABEL_BROKEN = re.compile(r"\b(?:next|last|following|foll|first|dec|inc|and|or|to|until|rep|repeat|\d{1,3}(?:st|nd|rd|th))\s*$", re.IGNORECASE)


_ROW = re.compile(r"\s*(?:(?:rows?|rnds?|rounds?)\s*\d|\d{1,3}(?:st|nd|rd|th)\s+(?:row|rnd|round)\b|next\s+(?:row|rnd|round)\b)", re.IGNORECASE)
_OPEN = re.compile(r"(?:,|[a-z*]|\b[1-9])\s*$")  # a row's line that ends so is not at its end
_ONWARD = re.compile(r"\s*(?:\*{1,2}\s*[,;(\[a-zA-Z]|[(\[]\s*[a-z\d])(?!.{0,40}=)")
_MAY_GO_ON = re.compile(r"\n[ \t]*[*(\[]")


def unfolded(text: str) -> str:
    """A text of the same length, with spaces for the ends of lines that go on in the next.

    A line goes on when it is long, and the next one is indented by two or more further than the one that began, with no empty line
    between, and does not begin anything itself. In a text that was broken at one width, as copied pages are, a line goes on that had no
    room for the first word of the next. A row that stops amid its words goes on in a line that begins with a star or a bracket.
    """
    lines = text.split("\n")
    width = _width(lines)
    starred = _MAY_GO_ON.search(text) is not None
    if width is None and not starred and _INDENTED.search(text) is None:  # as in most texts
        return text
    parts: list[str] = []
    margin = last = 0
    before = ""
    in_row = False
    for line in lines:
        bare, indent = line.strip(), len(line) - len(line.lstrip())
        goes_on = bool(bare) and last >= LONG and indent >= margin + 2 and not _BEGINS.match(line) and not quoted(line)
        goes_on = goes_on or width is not None and _broken(before, line, width)
        goes_on = goes_on or starred and in_row and _OPEN.search(before) is not None and _ONWARD.match(line) is not None  # "…, \n*(3 dc, ch 2, 3 dc) in next sp"
        in_row = goes_on and in_row or _ROW.match(line) is not None
        if parts:
            parts.append(" " if goes_on else "\n")
        if not goes_on:
            margin = indent
        parts.append(line)
        last, before = 0 if quoted(line) else len(line.rstrip()), line
    return "".join(parts)


def _width(lines: list[str]) -> int | None:
    """At what width the lines of a text were broken; None where they were not."""
    width = max((len(line.rstrip()) for line in lines), default=0)
    if not LONG <= width <= WIDEST:
        return None
    seen = 0
    for line, after in pairwise(lines):
        seen += after[:1].islower() and _full(line, after, width - RAGGED) and bool(_AMID.search(line))
        if seen >= LEAST_BROKEN:
            return width
    return None


def _full(line: str, after: str, width: int) -> bool:
    """Whether a line had no room for the first word of the next one."""
    return len(line.rstrip()) + 1 + len(after.split(maxsplit=1)[0]) > width


def _broken(line: str, after: str, width: int) -> bool:
    """Whether a line of a text that was broken at a width goes on in the next one."""
    amid = _AMID.search(line) is not None and not after[:1].isupper()
    if not line.strip() or not after.strip() or quoted(after) or quoted(line) or not _full(line, after, width - RAGGED * amid):
        return False
    return _LABEL_BROKEN.search(line) is not None if _BEGINS.match(after) else True


def quoted(line: str) -> bool:
    """Whether a line is told, not worked: it begins with ">", as quotations in plain text do."""
    return line.lstrip()[:1] == ">"


_THEN_DEFINED = re.compile(r"\s*(?:ch(?:ain)?\s+\d{1,4}|make\s+\d{1,4}\s*ch(?:ain)?s?)\b[^=.;]{0,40}\.\s+(?=[a-z][\w’'-]*(?: [\w’'-]+){0,2}(?:\s*\([\w -]{1,12}\))?\s*=)", re.IGNORECASE)  # "Ch 67. V-st = …"


def told_lines(source: Source, text: str, sizes: tuple[str, ...]) -> Iterator[tuple[int, int, str]]:
    """Where the lines begin and end, and how they are written; a line that tells of one size after another comes in parts."""
    several, begin = len(sizes) > 1, 0
    for written in source.text.split("\n"):
        end = begin + len(written)
        cut = _THEN_DEFINED.match(written) if "=" in written else None
        for a, b in parts_of(text, begin, end, sizes) if several else ((begin, end),) if cut is None else ((begin, begin + cut.end()), (begin + cut.end(), end)):
            yield a, b, written[a - begin : b - begin]
        begin += len(written) + 1
