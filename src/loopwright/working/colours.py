"""Which yarn a stitch is made with, told by the words around it: "with A", "change to B", "Row 3 (C)", "join white in any sp".

Colours move no stitch, so they are found in the text and not among the instructions; a stitch has the colour told last before
the words that made it.
"""

from __future__ import annotations

import re
from array import array
from bisect import bisect_left, bisect_right
from dataclasses import dataclass, field
from functools import lru_cache

from loopwright.model.tree import Document, HeadLine, Row
from loopwright.shipped import shipped_table

_NAME = r"(?:(?:[A-H]|MC|CC\d?|C\d)(?![\w’'/-])|(?i:(?:colou?r|shade) [A-Za-z0-9]+)|(?i:main colou?r|contrast(?:ing)? colou?r){words})"
_BEFORE = r"(?i:with|using|in|join|attach|pick(?:ing)? up|joining)(?: (?:the|in|with))?(?: yarn)?"
_CHANGE = r"(?i:chang(?:e|ing)|switch(?:ing)?)(?: (?:yarn|colou?r))?(?: to)?"
_BREAKS = re.compile(r"[,;:.(\[*]|\band\b")


@lru_cache(maxsize=32)
def _patterns(listed: tuple[str, ...]) -> tuple[re.Pattern[str], re.Pattern[str]]:
    known = (*listed, *shipped_table("loopwright.working", "colours.toml")["words"])
    words = "|(?i:" + "|".join(re.escape(w) for w in sorted(known, key=len, reverse=True)) + r")(?!\w)"
    name = _NAME.format(words=words)
    told = re.compile(rf"\b(?:(?P<how>{_BEFORE})|(?P<change>{_CHANGE})) (?P<name>{name})")
    head = re.compile(rf"^[^:.]{{0,40}}?\((?:(?:RS|WS)[,;] ?)?(?P<name>{name})\)")
    return told, head


@dataclass(slots=True)
class Colours:
    """Where in the text which colour begins. `starts` and `ends`: the rows of the text, in order."""

    offsets: list[int] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    starts: list[int] = field(default_factory=list)
    ends: list[int] = field(default_factory=list)

    @classmethod
    def of(cls, document: Document) -> Colours:
        """The colours told in a document's rows."""
        told, head = _patterns(_listed(document))
        found: dict[int, str] = {}
        result = cls()
        for item in document.items:
            if isinstance(item, Row):
                line = document.text.rfind("\n", 0, item.span.start) + 1
                start = max(line, result.ends[-1] if result.ends else 0)  # "With A," may stand before the row's own words
                start = min(start, item.span.start)
                result.starts.append(start)
                result.ends.append(item.span.end)
                _in_row(document.text[start : item.span.end], start, told, head, found)
        result.offsets = sorted(found)
        result.names = [found[o] for o in result.offsets]
        return result

    def between(self, start: int, end: int) -> range:
        """The changes told between two offsets."""
        return range(bisect_left(self.offsets, start), bisect_left(self.offsets, end))

    def of_row(self, offset: int) -> range:
        """The changes told in the row that an offset lies in; where the row begins decides, not where it is worked again."""
        i = bisect_right(self.starts, offset) - 1
        return self.between(self.starts[i], self.ends[i]) if i >= 0 and offset < self.ends[i] else range(0)

    def cuts(self, origins: array[int], within: range) -> list[tuple[int, str]]:
        """From which stitch on which colour: (index, name). `within`: the changes of the row that the stitches come from."""
        cuts: list[tuple[int, str]] = []
        offsets = self.offsets[within.start : within.stop]
        now = -1
        for i, origin in enumerate(origins):
            at = bisect_right(offsets, origin) - 1
            if at >= 0 and at != now:
                cuts.append((i, self.names[within.start + at]))
                now = at
        if now != len(offsets) - 1:
            cuts.append((len(origins), self.names[within.stop - 1]))
        return cuts


def _listed(document: Document) -> tuple[str, ...]:
    """Names of colours that the heading lists beside their letters: "in A (stone), B (mauve)"."""
    names: set[str] = set()
    for item in document.items:
        if isinstance(item, HeadLine) and item.name in ("yarn", "yarns", "colours", "colors", "materials"):
            names.update(n.strip().lower() for n in re.findall(r"\b[A-H]\s*[(=:]\s*([a-z][a-z -]{1,20})", item.value))
    return tuple(sorted(n for n in names if n))


def _in_row(text: str, start: int, told: re.Pattern[str], head: re.Pattern[str], found: dict[int, str]) -> None:
    first = head.match(text)
    if first:
        found[start] = _tidy(first["name"])
    for m in told.finditer(text):
        at = m.start()
        if m["change"]:
            at = m.end()
        elif m["how"].split()[0].lower() in ("with", "using", "in"):
            at = _clause(text, at)
        found[start + at] = _tidy(m["name"])


def _clause(text: str, at: int) -> int:
    """Where the words begin that "with A" at an offset belongs to: "3 sc with A" has it after them, "with A, 3 sc" before."""
    begin = max((m.end() for m in _BREAKS.finditer(text, max(0, at - 80), at)), default=0)
    words = text[begin:at].strip().lower()
    return begin if words not in ("", "now", "then", "working", "work") else at


def _tidy(name: str) -> str:
    return " ".join(name.split())
