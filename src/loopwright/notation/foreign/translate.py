"""A pattern in another language, line for line in the reader's own English, every word with the place it came from."""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise
from typing import NamedTuple

from loopwright.model.translated import Piece, Translated
from loopwright.notation.folded import quoted
from loopwright.notation.foreign.left import LEFT, in_us, says_uk
from loopwright.notation.foreign.order import coded, coded_words, ordered
from loopwright.notation.foreign.words import Word, words_of
from loopwright.terms.reading import Table, folded, plain, table

MAX_LINE = 10_000  # longer ones stay as they are
TELLING = frozenset("english kind chain st sp ring thing tch line course skip rep turn join tog each next last same times star lp double alt off".split())
_HEADING = re.compile(r"\s*(?P<name>[^\W\d_]+(?:[ /’'-][^\W\d_]+){0,6})\s*:\s*(?P<value>\S.*)$")
_LABEL = re.compile(coded("(?:line|course) (?:sep)?(?:num|ord)|num (?:line|course) next sep|(?:line|course) next sep|(?:next|last) (?:num)?(?:line|course)|ord (?:(?:dash|and|to|sep|plus) ord)*(?:line|course)"))
_REFERENCE = re.compile(coded("(?:line|course) num (?:(?:dash|and|to|plus) num)* (?:(?!sep|open).)* rep"))  # "R 2 wdh" is no label
_WORDS = re.compile(r"[^\W\d_]+")
_NO_LETTER = re.compile(r"[^A-Za-z]+")
_DECIMAL = re.compile(r"(\d),(?=\d+\s*(?:mm|cm|g|m)\b)")
_VERBATIM = frozenset("sizes size worked in yarn notes safety".split())
_NO_SPACE_BEFORE = frozenset(",;.:)]!")


class Manner(NamedTuple):
    """What a line is read by. `either`: what a course is called whose name may mean row and round: "row", "rnd", or "R" for unknown.

    `uk`: words left in English are in UK terms.
    """

    either: str
    uk: bool


def translated(text: str, language: str, said: bool) -> Translated:
    """`text` as the reader's English. The number of lines is the same, and so is every line that gives no instruction."""
    which = table(language)
    made: list[str] = []
    pieces: list[Piece] = []
    at_made = at_was = 0
    left = LEFT.findall(text) if "[en:" in text else []
    manner = Manner(_either(plain(text), which), bool(left) and says_uk(left, _told(text, which)))
    for line in text.split("\n"):
        english, found = (_line_kept if len(line) < 2_000 else _line)(line, which, manner)
        made.append(english)
        pieces.extend(Piece(p.start + at_made, p.end + at_made, p.was_start + at_was, p.was_end + at_was) for p in found)
        at_made += len(english) + 1
        at_was += len(line) + 1
    return Translated(language, text, "\n".join(made), tuple(pieces), said, tuple(p.start for p in pieces))


def _either(text: str, which: Table) -> str:
    """What a course is whose name may mean row and round: the one that has no name of its own here, else by what is done with it."""
    words = set(_WORDS.findall(text))
    if words & which.rows:
        return "rnd"
    if words & which.rounds or any(said in text for said in which.turns):
        return "row"
    return "rnd" if words & which.rings else "R"


def _told(text: str, which: Table) -> set[str]:
    """The stitches (US keys) that the words of the language name."""
    lines = [line[:MAX_LINE] for line in LEFT.sub(" ", text).split("\n") if not _section(line[:MAX_LINE], which)]
    return {w.made for line in lines for w in words_of(line, 0, len(line), which) if w.sort == "kind"}


def _as_it_is(line: str) -> tuple[str, tuple[Piece, ...]]:
    return folded(line), (Piece(0, len(line), 0, len(line)),) if line else ()


def _line(line: str, which: Table, manner: Manner) -> tuple[str, tuple[Piece, ...]]:
    if not line.strip() or len(line) > MAX_LINE or quoted(line):
        return _as_it_is(line)
    head = _HEADING.match(line)
    name = which.headings.get(plain(head["name"])) if head else None
    if head and name:
        words = [Word("word", name, head.start("name"), head.end("name")), Word("sep", ":", head.end("name"), head.start("value"), gap=False)]
        return _laid([*words, *_heading_value(line, head.start("value"), name, which)], line, manner)
    if head and _LABEL.match(coded_words(words_of(line, 0, head.start("value"), which))) is None:
        rest = words_of(line, head.start("value"), len(line), which)
        if _instructs(rest):
            named = Word("word", _NO_LETTER.sub(" ", folded(head["name"])), head.start("name"), head.end("name"))
            return _laid([named, Word("sep", ":", head.end("name"), head.start("value"), gap=False), *ordered(rest, which)], line, manner)
    section = _section(line, which)
    if section:
        return _laid(section, line, manner)
    words = words_of(line, 0, len(line), which)
    labelled = _labelled(words)
    if not labelled and not _instructs(words):
        return _as_it_is(line)
    return _laid(ordered(_neutral(words, manner.either, labelled=labelled), which), line, manner)


_line_kept = lru_cache(maxsize=4096)(_line)


def _section(line: str, which: Table) -> list[Word]:
    """A part's title where it is a usual one or says how many are made: "Ärmel (2 Stück)" as "Sleeve (make 2)"; else nothing."""
    copies = which.copies.match(line)
    title = copies["title"] if copies else line.strip().rstrip(" :")
    at = line.find(title)
    known = which.parts.get(plain(title.strip()))
    if not copies and not known:
        return []
    named = Word("word", known.capitalize() if known else folded(title), at, at + len(title))
    if copies is None:
        return [named]
    number = next(n for key, n in copies.groupdict().items() if key != "title" and n)
    return [named, Word("word", f"(make {number})", copies.end("title"), len(line))]


def _heading_value(line: str, at: int, name: str, which: Table) -> list[Word]:
    """A heading's value: in English where the reader looks into it, else as it stands."""
    if name.lower().split()[0] in _VERBATIM:
        said = _DECIMAL.sub(r"\1.", LEFT.sub(r"\1", line[at:].rstrip()))
        return [Word("word", said, at, len(line.rstrip()))]
    words = words_of(line, at, len(line), which)
    return [w for w in words if w.sort != "drop"] if name == "Abbreviations" else ordered(words, which)


def _labelled(words: list[Word]) -> bool:
    """Whether a line begins with the label of a row."""
    return _LABEL.match(coded_words(words[:8])) is not None


def _neutral(words: list[Word], either: str, *, labelled: bool) -> list[Word]:
    """A course that may be a row or a round ("Vuelta 2", "2ª vuelta", "R2"): what it is in this pattern, else "R 2" where it is a label."""
    kept = [w for w in words if w.sort != "drop"]
    if either == "rnd":
        short = labelled and kept[0].sort == "line" and kept[0].end - kept[0].start == 1  # "R1" may mean a round, "Reihe 1" may not
        kept[0] = kept[0]._replace(made="rnd") if short and kept[0].made == "row" else kept[0]
        return [w._replace(made="rnds" if w.made.endswith("s") else "rnd") if w.sort == "course" else w for w in kept]
    if either == "row" or not labelled or _REFERENCE.match(coded_words(kept)):
        return words
    if kept[0].sort == "course" or kept[0].sort == "line" and kept[0].end - kept[0].start == 1:
        return [kept[0]._replace(made="R"), *kept[1:]]
    if kept[0].sort == "ord" and kept[1].sort == "course":
        number = kept[0]._replace(sort="num", made=kept[0].made[:-2])
        return [kept[1]._replace(sort="line", made="R", start=kept[0].start), number, *kept[2:]]
    return words


def _instructs(words: list[Word]) -> bool:
    """Whether a line without a label gives an instruction: more of its words tell stitches and places than are unknown."""
    known = sum(w.sort in TELLING for w in words)
    unknown = sum(w.sort == "word" and len(w.made) > 1 for w in words)  # a single letter is a colour
    made = any(a.sort == "num" and b.sort in ("kind", "chain") for a, b in pairwise(words))
    return known > unknown or made and known * 2 >= unknown


def _laid(words: list[Word], line: str, manner: Manner) -> tuple[str, tuple[Piece, ...]]:
    """Words put together, with the way back."""
    made: list[str] = []
    pieces: list[Piece] = []
    at = 0
    before = ""
    for w in words:
        if not w.made:
            continue
        if before and _spaced(before, w):
            made.append(" ")
            at += 1
        said = in_us(w.made) if manner.uk and w.sort == "english" else w.made
        if before in ("", ".") and line[w.start].isupper():
            said = said[0].upper() + said[1:]
        pieces.append(Piece(at, at + len(said), w.start, w.end))
        made.append(said)
        at += len(said)
        before = said
    return "".join(made), tuple(pieces)


def _spaced(before: str, word: Word) -> bool:
    if before[-1] in "([" or word.made[0] in _NO_SPACE_BEFORE:
        return False
    return word.gap or before[-1].isalnum() and word.made[0].isalnum()
