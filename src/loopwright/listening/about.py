"""What a lesson says beside its rows: terms, what is made, the size, yarn, hook, gauge, the names of its parts, its language."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache

from loopwright.listening.captions import Heard
from loopwright.listening.forms import form
from loopwright.listening.numbers import number
from loopwright.listening.words import Line, plain, speech
from loopwright.record import record

_FEW = 40  # words from which the language can be told

@record
class About:
    """Heading of the draft.

    `terms`: us or uk; `told`: they were said; `language`: of the words, "English" or another's name; `craft`: "crochet", "knitting" or ""
    where the words speak of neither.
    """

    title: str | None
    terms: str
    told: bool
    craft: str
    size: str | None
    yarn: str | None
    hook: str | None
    gauge: str | None
    language: str


def about(heard: Sequence[Heard], line: Line) -> About:
    """What is said beside the rows."""
    words, _ = plain(heard)
    text = " ".join(words)
    terms, told = _terms(f" {text} ")
    beside = _size(text), _yarn(f" {text} "), _hook(line.text), _gauge(line.text), language(words)
    return About(_title(heard), terms, told, _craft(words), *beside)


def _craft(words: Sequence[str]) -> str:
    """The craft that the words speak of."""
    counts = {name: sum(1 for w in words if w in marks) for name, marks in speech()["crafts"].items()}
    if counts["knitting"] > counts["crochet"]:
        return "knitting"
    return "crochet" if counts["crochet"] >= _CRAFT else ""


_CRAFT = 3  # words of the craft that a lesson has at least


def language(words: Sequence[str]) -> str:
    """The language that most words of a list speak for."""
    if len(words) < _FEW:
        return "English"
    counts = {name: sum(1 for w in words if w in marks) for name, marks in _marks().items()}
    best = max(counts, key=lambda n: counts[n])
    return best if counts[best] > 1.3 * counts["English"] else "English"


@cache
def _marks() -> dict[str, frozenset[str]]:
    return {name: frozenset(words) for name, words in speech()["languages"].items()}


def _terms(text: str) -> tuple[str, bool]:
    points = {}
    sure = 8.0
    for which in ("us", "uk"):
        points[which] = sum(weight * text.count(f" {phrase} ") for phrase, weight in speech()["terms"][which].items())
    named = {w: [f" {p} " for p, weight in speech()["terms"][w].items() if weight > sure and f" {p} " in text] for w in points}
    first = {w: min((text.find(p) for p in named[w]), default=-1) for w in points}
    if first["us"] >= 0 or first["uk"] >= 0:
        if min(first.values()) >= 0:
            return ("us" if first["us"] < first["uk"] else "uk"), True
        return ("us" if first["us"] >= 0 else "uk"), True
    return ("uk" if points["uk"] > points["us"] else "us"), False


def _title(heard: Sequence[Heard]) -> str | None:
    """"The Bulrush hat": up to two words before the noun of a thing made, after "making the", "called the" and the like."""
    words = [h.word.strip('.,;:!?"“”').lower() for h in heard[:900]]
    nouns = set(speech()["things"]["nouns"])
    leads = [tuple(p.split()) for p in speech()["things"]["lead"]]
    for i, w in enumerate(words):
        if w not in nouns:
            continue
        for back in (2, 1, 3):
            start = i - back
            if start > 0 and any(tuple(words[max(0, start - len(lead)) : start]) == lead for lead in leads if lead != ("the",) or back > 1):
                name = words[start : i + 1]
                if all(n.isalpha() and n not in _DULL for n in name):
                    return " ".join(name).title()
    return None


_DULL = frozenset("of and to in for with is it that this your my first one same whole back on at a so we you are do the".split())


def _size(text: str) -> str | None:
    for pattern in (form("about", "sized"), form("about", "size")):
        for m in pattern.finditer(text):
            said = m[1].removesuffix(" old")
            got = number(said.split(), 0)
            if got and re.search("year|month", said):
                n = int(got[0])
                unit = "month" if "month" in said else "year"
                return f"{n} {unit}{'s' if n > 1 else ''}"
            if not re.search("year|month", said) and (pattern is form("about", "sized") or m[2]):
                return said
    return None


def _yarn(text: str) -> str | None:
    said = speech()["yarn"]
    weight = next((w for w in sorted(said["weights"], key=len, reverse=True) if f" {w} " in text), None)
    fibre = min((f for f in said["fibres"] if f" {f} " in text), key=lambda f: (text.find(f" {f} "), -len(f)), default=None)
    name = {"double knitting": "DK", "double knit": "DK", "dk": "DK", "light dk": "light DK", "four ply": "4 ply"}.get(weight or "", weight)
    return ", ".join(p for p in (name, fibre) if p and p != "baby") or None


def _hook(text: str) -> str | None:
    for m in form("about", "hook").finditer(text):
        size = float(m[1] or m[2])
        if 0.5 <= size <= 25.0:
            return f"{size:g} mm"
    return None


def _gauge(text: str) -> str | None:
    m = next((m for m in form("about", "gauge").finditer(text) if float(m["to"]) in (4.0, 10.0, 5.0, 2.0)), None)
    if m is None:
        return None
    kind = m["k"] or "sts"
    rows = f" and {m[3]} {'rnds' if 'rnd' in m[0] else 'rows'}" if m[3] else ""
    return f"{m[1]} {kind}{rows} = {m['to']} {'cm' if m['unit'] == 'cm' else 'in'}"


def part_named(heard: Sequence[Heard], first: int, last: int) -> str | None:
    """The part of a thing that is named last between two words heard: "now the beak"."""
    words, _ = plain(heard[max(0, first) : last])
    names = set(speech()["parts"]["names"])
    leads = [tuple(p.split()) for p in speech()["parts"]["lead"]]
    found = None
    for i, w in enumerate(words):
        if w in names and any(tuple(words[max(0, i - len(lead)) : i]) == lead for lead in leads):
            found = w
    return found
