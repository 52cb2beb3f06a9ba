"""All swatches that a gauge line tells: several stitches, repeats, a measured disc, a motif, before and after blocking.

`written.parse_gauge` takes one gauge out of a line; this takes every one, with its stitch as a US key.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace
from typing import Literal

from loopwright.grading.gauge.written import LARGEST_MM, SMALLEST_MM
from loopwright.grading.lengths import NUMBER, UNIT, number, unit_mm
from loopwright.grading.words import COUNTS, SWATCH
from loopwright.kept import of_short
from loopwright.record import record
from loopwright.terms import Dialect

Blocked = Literal["before", "after", ""]
What = Literal["stitch", "row", "repeat", "motif"]

_NUMBER = r"(?:one|two|three|four|five|six|eight|ten|twelve)\b|" + NUMBER
_SMALL = {"one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "eight": "8", "ten": "10", "twelve": "12"}
_ITEM = re.compile(
    rf"(?<![\w.])(?P<n>{_NUMBER})\s*(?:st\s+|-st\s+)?(?P<noun>[A-Za-z][A-Za-z.-]*"
    r"(?:[ -](?!(?:and|x|by|to|in|is|over|per|across|measures?|equals?|after)\b)[A-Za-z][A-Za-z.-]*){0,4})", re.IGNORECASE,
)
_LENGTH = re.compile(
    r"(?:=|\bto\b|\bper\b|\bover\b|\bmeasures?\b|\bis\b|\bin\b|\bequals?\b|/)\s*(?:about\s+)?(?:the\s+|an?\s+|one\s+)?(?P<sign>[-−]\s?)?"
    rf"(?P<a>{NUMBER})?\s*(?:(?:x|×|by)\s*(?P<b>{NUMBER})\s*)?(?P<u>{UNIT})(?:\s*(?:x|×|by)\s*(?P<c>{NUMBER})\s*{UNIT})?"
    r"(?P<across>\s*(?:across|in diameter|diameter|wide across|square))?", re.IGNORECASE,
)
_CHAINS = re.compile(r"\bch(?:ain)?[ -](?P<n>\d{1,2})\b", re.IGNORECASE)
_BLOCKED = re.compile(
    r"\b(?:(?P<before>before\s+blocking|unblocked|before\s+washing)|(?P<after>after\s+blocking|blocked|after\s+washing))\b", re.IGNORECASE
)
_ROUNDS = re.compile(r"\b(?:rnds?|rounds?)\s*(?:1\s*(?:-|–|to)\s*)?(?P<n>\d{1,2})\b", re.IGNORECASE)
_IN_STITCH = re.compile(r"(?:\b(?:in|of|over)\s+|\()(?:the\s+)?(?P<words>[A-Za-z][A-Za-z .-]{0,40})", re.IGNORECASE)
_RIDGES = re.compile(r"\bridges?\b", re.IGNORECASE)


@dataclass(slots=True)
class Swatch:
    """One measured piece. Widths and heights in mm, None where it tells none; counts are how many were measured.

    `kind`: US key, None where none is named. `repeat_mm` and `repeat_of`: width of one pattern repeat and what it is called.
    `disc_rounds`: it was a disc of so many rounds, so `row_mm` comes from half its diameter. `motif_mm` and `motif_rounds`: width of a
    motif that names no stitch. `pattern`: worked in a pattern, not in plain rows.
    """

    kind: str | None = None
    stitch_mm: float | None = None
    row_mm: float | None = None
    stitches: float = 0.0
    rows: float = 0.0
    repeat_mm: float | None = None
    repeat_of: str = ""
    disc_rounds: float = 0.0
    motif_mm: float | None = None
    motif_rounds: int = 0
    blocked: Blocked = ""
    pattern: str = ""
    text: str = ""
    faults: list[str] = field(default_factory=list)


@record
class _Item:
    n: float
    what: What
    kind: str | None
    noun: str


def read_swatches(text: str, terms: Dialect) -> list[Swatch]:
    """Every swatch of a line, in its order; none where no number stands to a length. Never raises."""
    return [replace(swatch, faults=[*swatch.faults]) for swatch in _read(text, terms)]


@of_short(64)
def _read(text: str, terms: Dialect) -> tuple[Swatch, ...]:
    """The swatches as they are told; kept, as rows are written more often than gauges. Whoever is given them may fill in what they lack."""
    found: list[Swatch] = []
    sizes = list(_LENGTH.finditer(text))
    starts = [0, *(m.end() for m in sizes)]
    for i, size in enumerate(sizes):
        until = sizes[i + 1].start() if i + 1 < len(sizes) else len(text)
        first = _ITEM.search(text, size.end(), until) if i + 1 < len(sizes) else None
        tail = text[size.end() : first.start() if first else until]
        before = text[starts[i] : size.start()]
        _segment(before, size, tail, terms, found)
    for swatch in found:
        swatch.text = text.strip()
    return tuple(found)


def _segment(before: str, size: re.Match[str], tail: str, terms: Dialect, found: list[Swatch]) -> None:
    """What stands before one length, laid to the swatch it belongs to."""
    lengths = _lengths(size)
    items = [item for m in _ITEM.finditer(before) if (item := _item(m, terms)) is not None]
    if lengths is None or not items:
        if lengths is not None and size["across"]:
            _motif(before + tail, lengths[0], found)
        return
    width, height = lengths
    named = next((i.kind for i in items if i.kind), None) or _stitch_in(tail, terms)
    blocked = _blocked(tail) or _blocked(_ITEM.split(before, maxsplit=1)[0])
    swatch = _place(found, items, named, blocked)
    if not named and (m := _IN_STITCH.search(tail)):
        swatch.pattern = m["words"].strip(" .")
    stitches = [i for i in items if i.what == "stitch"]
    if stitches:  # "1 sc, ch 1, 1 sc" is counted as one run
        many = sum(i.n for i in stitches) + sum(int(m["n"]) for m in _CHAINS.finditer(before))
        _set(swatch, "stitch_mm", width, many)
        swatch.stitches = many
    for item in items:
        if item.what == "row":
            _rows(swatch, item, height, across=bool(size["across"]))
        elif item.what == "repeat":
            _set(swatch, "repeat_mm", width, item.n)
            swatch.repeat_of = item.noun
        elif item.what == "motif":
            _set(swatch, "motif_mm", width, item.n)
            rounds = _ROUNDS.search(tail)
            swatch.motif_rounds = int(rounds["n"]) if rounds else 0


def _rows(swatch: Swatch, item: _Item, height: float, *, across: bool) -> None:
    many = item.n * (2 if _RIDGES.search(item.noun) else 1)  # a ridge is two rows
    _set(swatch, "row_mm", height / 2 if across else height, many)
    swatch.rows = many
    if across:
        swatch.disc_rounds = many


def _set(swatch: Swatch, name: str, length: float, many: float) -> None:
    """One measure, if it is one that yarn allows."""
    mm = length / many if many > 0 else 0.0
    if SMALLEST_MM <= mm <= LARGEST_MM or name == "motif_mm":
        setattr(swatch, name, mm)
    else:
        swatch.faults.append(f"{many:g} to {length:g} mm would make one {name.removesuffix('_mm')} {mm:.3g} mm")


def _place(found: list[Swatch], items: list[_Item], kind: str | None, blocked: Blocked) -> Swatch:
    """The swatch that these counts complete, or a new one: a row gauge said after the stitch gauge belongs to it."""
    whats = {i.what for i in items}
    last = found[-1] if found else None
    if last is not None and (kind is None or last.kind is None or kind == last.kind) and blocked == last.blocked:
        told = (("stitch", last.stitch_mm), ("row", last.row_mm), ("repeat", last.repeat_mm), ("motif", last.motif_mm))
        if not whats & {what for what, mm in told if mm}:
            last.kind = last.kind or kind
            return last
    found.append(Swatch(kind=kind, blocked=blocked))
    return found[-1]


def _motif(words: str, mm: float, found: list[Swatch]) -> None:
    """ "Motif 4 in square", "Rnds 1-4 = 10 cm across": the width of a piece whose stitches are not counted."""
    rounds = _ROUNDS.search(words)
    if rounds or re.search(r"\b(?:motif|square|block|granny|circle|disc|medallion|centre|center)\b", words, re.IGNORECASE):
        found.append(Swatch(motif_mm=mm, motif_rounds=int(rounds["n"]) if rounds else 0))


def _item(m: re.Match[str], terms: Dialect) -> _Item | None:
    noun = " ".join(m["noun"].lower().split()).rstrip(".")
    if re.fullmatch(UNIT, m["noun"], re.IGNORECASE) or noun.split()[0] in ("mm", "cm", "in", "inch", "inches", "hook"):
        return None
    try:
        n = float(number(_SMALL.get(m["n"].lower(), m["n"])))
    except ValueError:
        return None
    words = noun.split()
    kinds = [k for w in words if (k := SWATCH.get(w))]
    if "row" in kinds or _RIDGES.search(noun):
        rest = " ".join(w for w in words if SWATCH.get(w) != "row" and w not in ("of", "ridge", "ridges"))
        return _Item(n, "row", _kind(rest, terms), noun)
    kind = _kind(noun, terms)
    if kind is not None and kind not in ("shell", "fan", "v-st", "cluster", "pattern", "block"):
        return _Item(n, "stitch", kind, noun)
    if words[0] in COUNTS and COUNTS[words[0]] == "st":
        return _Item(n, "stitch", None, noun)
    if "none" in kinds or words[0].startswith("motif"):
        return _Item(n, "motif", None, noun)
    return _Item(n, "repeat", None, noun)


def _kind(words: str, terms: Dialect) -> str | None:
    """The stitch that words name, without "sts" behind it."""
    words = re.sub(r"\s*\b(?:sts?|stitch(?:es)?)$", "", words.replace(".", " ").strip())
    return terms.kind_of(words) if words else None


def _stitch_in(tail: str, terms: Dialect) -> str | None:
    """The stitch of "... in hdc", "(hdc)", "over rows of sc"; the longest run of words that is one."""
    for m in _IN_STITCH.finditer(tail):
        words = m["words"].lower().replace("rows of", "").replace("rounds of", "").split()
        for many in range(min(4, len(words)), 0, -1):
            kind = _kind(" ".join(words[:many]).rstrip(" ."), terms)
            if kind is not None:
                return kind
    return None


def _blocked(words: str) -> Blocked:
    m = _BLOCKED.search(words)
    return "" if m is None else "before" if m["before"] else "after"


def _lengths(m: re.Match[str]) -> tuple[float, float] | None:
    """Width and height that the counts stand for, mm; None for nothing or below nothing."""
    try:
        first = number(m["a"]) if m["a"] else number("1")
        second = number(m["b"] or m["c"]) if m["b"] or m["c"] else first
    except ValueError:
        return None
    if m["sign"] or first <= 0 or second <= 0:
        return None
    unit = unit_mm(m["u"])
    return float(first * unit), float(second * unit)
