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

from loopwright.model.tree import Document, HeadLine, Prose, Row
from loopwright.shipped import shipped_table

_NAME = r"(?:(?:[A-H]|MC|CC\d?|C\d)(?![\w’'/-])|(?i:(?:colou?r|shade) [A-Za-z0-9]+)|(?i:main colou?r|contrast(?:ing)? colou?r){words})"
_BEFORE = r"(?i:with|using|in|join|attach|pick(?:ing)? up|joining)(?: (?:the|in|with))?(?: yarn)?"
_CHANGE = r"(?i:chang(?:e|ing)|switch(?:ing)?)(?: (?:yarn|colou?r))?(?: to)?"
_N = r"(?P<n>\d{1,2}|one|two|three|four|five|six|each|every other)"
_COUNTS = {"one": 1, "each": 1, "two": 2, "every other": 1, "three": 3, "four": 4, "five": 5, "six": 6}
_BREAKS = re.compile(r"[,;:.(\[*]|\band\b")


@dataclass(slots=True, frozen=True)
class Patterns:
    """How colours are told: `told` in the words, `head` behind a label, `alone` on a line, `turns` so many rows each in turn."""

    told: re.Pattern[str]
    head: re.Pattern[str]
    alone: re.Pattern[str]
    turns: re.Pattern[str]
    name: re.Pattern[str]


@lru_cache(maxsize=32)
def _patterns(listed: tuple[str, ...]) -> Patterns:
    known = (*listed, *shipped_table("loopwright.working", "colours.toml")["words"])
    words = "|(?i:" + "|".join(re.escape(w) for w in sorted(known, key=len, reverse=True)) + r")(?!\w)"
    name = _NAME.format(words=words)
    behind = rf"\b\d{{1,3}} (?:(?!with|in\b)[a-z]{{2,4}} )?(?P<by>(?:[A-H]|MC|CC{words})(?=\s*(?:[,;.)\]*]|$)))"  # "3 sc A, 3 sc B", "3 black, 2 gold"
    ahead = r"[(\[]?\b(?P<of>[A-H]|MC|CC)[)\]]?\s*[x×]\s*\d{1,3}\b|(?<=[,;:*] )(?P<led>[A-H]|MC|CC)\s\d{1,3}(?=\s*(?:[,;.)\]]|$))|(?<=[,;:*.] )(?P<told_for>[A-H]|MC|CC):(?= )|[(\[](?P<beside>[A-H]|MC|CC)[)\]]"  # "(A) x 3", "A 4", "B: sc 3", "sc 3 (B)"
    told = re.compile(rf"\b(?:(?P<how>{_BEFORE})|(?P<change>{_CHANGE})) (?P<name>{name})|{behind}|{ahead}")
    head = re.compile(rf"^[^:.]{{0,40}}?\((?:(?:RS|WS)[,;] ?)?(?P<name>{name})\)")
    alone = re.compile(rf"\s*(?i:now |then )?(?:{_BEFORE}|{_CHANGE}) (?P<name>{name})\s*[.:]?\s*")
    several = rf"(?P<list>{name}(?:,? and {name}|, {name})+)"
    turns = re.compile(rf"\b(?i:{_N}) rows? (?:each )?(?:of|in|with) {several}|(?i:alternat(?:e|ing)) (?:between )?{several.replace('list', 'list2')} every (?i:{_N.replace('<n>', '<n2>')}) rows?")
    return Patterns(told, head, alone, turns, re.compile(name))


@dataclass(slots=True, frozen=True)
class Turns:
    """Rows told in colours that take turns: `rows` of each of `names`, for the rows whose words stand at `start` … `end`."""

    start: int
    end: int
    rows: int
    names: tuple[str, ...]

    def of(self, row: int) -> str:
        """The colour of the row-th of them, from 0."""
        return self.names[row // self.rows % len(self.names)]


@dataclass(slots=True)
class Colours:
    """Where in the text which colour begins. `starts` and `ends`: the rows of the text, in order. `turns`: colours that take turns."""

    offsets: list[int] = field(default_factory=list)
    names: list[str] = field(default_factory=list)
    starts: list[int] = field(default_factory=list)
    ends: list[int] = field(default_factory=list)
    turns: list[Turns] = field(default_factory=list)

    @classmethod
    def of(cls, document: Document) -> Colours:
        """The colours told in a document's rows."""
        listed = _listed(document)
        ways = _patterns(listed)
        found: dict[int, str] = {}
        result = cls()
        before = ""
        for item in document.items:
            if isinstance(item, Prose):
                before = item.text
            if isinstance(item, Row):
                line = document.text.rfind("\n", 0, item.span.start) + 1
                start = max(line, result.ends[-1] if result.ends else 0)  # "With A," may stand before the row's own words
                start = min(start, item.span.start)
                result.starts.append(start)
                result.ends.append(item.span.end)
                if (alone := ways.alone.fullmatch(before)) is not None:
                    found[item.span.start] = _tidy(alone["name"])
                words = document.text[start : item.span.end]
                told, taking_turns = (_kept if len(words) < KEPT else _in_row)(words, listed)
                found.update({start + at: name for at, name in told})
                turns = ways.turns.search(before) if before else None
                if turns is None and taking_turns:
                    turns = ways.turns.search(words)
                if turns is not None:
                    result.turns.append(_turns(turns, item.span.start, item.span.end, ways.name))
                before = ""
        result.offsets = sorted(found)
        result.names = [found[o] for o in result.offsets]
        return result

    def places(self) -> tuple[object, ...]:
        """All that it tells, and where: to compare it by; nothing where no colour is told."""
        if not self.offsets and not self.turns:
            return ()
        return tuple(self.offsets), tuple(self.names), tuple(self.starts), tuple(self.ends), tuple(self.turns)

    def between(self, start: int, end: int) -> range:
        """The changes told between two offsets."""
        return range(bisect_left(self.offsets, start), bisect_left(self.offsets, end))

    def of_row(self, offset: int) -> range:
        """The changes told in the row that an offset lies in; where the row begins decides, not where it is worked again."""
        i = bisect_right(self.starts, offset) - 1
        return self.between(self.starts[i], self.ends[i]) if i >= 0 and offset < self.ends[i] else range(0)

    def turns_of(self, start: int) -> Turns | None:
        """The colours that take turns in rows whose words begin there."""
        return next((t for t in self.turns if t.start <= start < t.end), None)

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


def _turns(told: re.Match[str], start: int, end: int, name: re.Pattern[str]) -> Turns:
    """ "2 rows each of B, C, D and A"."""
    many = (told["n"] or told["n2"]).lower()
    names = tuple(_tidy(n.group()) for n in name.finditer(told["list"] or told["list2"]))
    return Turns(start, end, _COUNTS.get(many) or max(1, int(many)), names)


def _in_row(text: str, listed: tuple[str, ...]) -> tuple[tuple[tuple[int, str], ...], bool]:
    """Where in a row's words which colour begins, and whether they tell of colours that take turns."""
    ways = _patterns(listed)
    found: dict[int, str] = {}
    first = ways.head.match(text)
    if first:
        found[0] = _tidy(first["name"])
    for m in ways.told.finditer(text):
        at = m.start()
        if by := m["by"] or m["of"] or m["led"] or m["told_for"]:
            found[at] = _tidy(by)
            continue
        if m["beside"]:
            found[_clause(text, at)] = m["beside"]
            continue
        if m["change"]:
            at = m.end()
        elif m["how"].split()[0].lower() in ("with", "using", "in"):
            at = _clause(text, at)
        found[at] = _tidy(m["name"])
    return tuple(found.items()), ways.turns.search(text) is not None


KEPT = 2_000  # longer rows are not kept: none of a pattern is, and they would fill the memory
_kept = lru_cache(maxsize=4_096)(_in_row)


def _clause(text: str, at: int) -> int:
    """Where the words begin that "with A" at an offset belongs to: "3 sc with A" has it after them, "with A, 3 sc" before."""
    begin = max((m.end() for m in _BREAKS.finditer(text, max(0, at - 80), at)), default=0)
    words = text[begin:at].strip().lower()
    return begin if words not in ("", "now", "then", "working", "work") else at


def _tidy(name: str) -> str:
    return re.sub(r"^(?:colou?r|shade) (?=[A-H]$)", "", " ".join(name.split()), flags=re.IGNORECASE)
