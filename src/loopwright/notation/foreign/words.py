"""A line in another language as a row of words, each with the reader's English: longest match in the table of the language."""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

from loopwright.terms.reading import Entry, Table, folded, plain

PLACED = frozenset("st sp kind chain ring thing line course tch lp edge".split())
_LEADING = frozenset("next last each same and line course".split())  # what follows such an abbreviation belongs to it
_SINGLE = {"[": "open", "(": "open", "]": "close", ")": "close", "+": "plus", "&": "and", "/": "slash", "=": "eq"}
_ONES = {1: "st", 2: "nd", 3: "rd"}


class Word(NamedTuple):
    """`sort`: what it is (kind, chain, st, num, ord, times …); `made`: the English; `gap`: a space stands before it in the original."""

    sort: str
    made: str
    start: int
    end: int
    gap: bool = True


@cache
def _expression(table: Table) -> re.Pattern[str]:
    return re.compile(
        rf"""
      (?P<english>\[en:\s*[^\[\]]*\])
    | (?P<quoted>[„“«‹]\s*[^„“”«»‹›\n]{{2,60}}\s*[“”»›])
    | (?P<blank>\{{[^{{}}\n]{{1,60}}\}})
    | (?P<times>\d{{1,9}}\s*(?:[x×](?![^\W\d_])|-?\s*(?:mal|fois|veces|vez)(?![^\W\d_]))|(?<![^\W\d_])[x×]\s*\d{{1,9}}(?![\w]))
    | (?P<ord>\d{{1,4}}{table.ordinals})
    | (?P<length>\d{{1,9}}(?:[.,]\d{{1,3}})?\s*(?:cm|mm)(?![^\W\d_]))
    | (?P<num>\d{{1,9}}(?:[.,]\d{{1,3}}(?=\s*(?:cm|mm|m|g|"|″)\b))?)
    | (?P<word>[^\W\d_]+['’]?)
    | (?P<star>\*+|†|‡)
    | (?P<sep>[,;.:!])
    | (?P<dash>[-–—])
    | (?P<punct>\S)
    """,
        re.VERBOSE | re.IGNORECASE,
    )


def ordinal(n: int) -> str:
    """ "1st", "2nd", "13th"."""
    return f"{n}{'th' if n % 100 in (11, 12, 13) else _ONES.get(n % 10, 'th')}"


def words_of(text: str, start: int, end: int, table: Table) -> list[Word]:
    """The words of text[start:end]. What the table does not know keeps its letters and is of the sort "word"."""
    found = list(_expression(table).finditer(text, start, end))
    lows = [plain(m.group()) if m.lastgroup == "word" else m.group() for m in found]
    made: list[Word] = []
    at = 0
    shouted = text[start:end].isupper()
    while at < len(found):
        m = found[at]
        gap = m.start() == start or text[m.start() - 1].isspace()
        if m.lastgroup == "word" and m.group() in "ABCDE" and not shouted:
            made.append(Word("word", m.group(), m.start(), m.end(), gap))  # a colour
            at += 1
            continue
        if m.lastgroup == "word":
            entry, stop = _longest(found, lows, at, table)
            if entry is None:
                made.append(Word("word", folded(m.group()), m.start(), m.end(), gap))
                at += 1
            else:
                made.append(Word(entry.sort, entry.made, m.start(), found[stop - 1].end(), gap))
                at = stop
            continue
        made.extend(_figure(m, gap, table))
        at += 1
    return _listed(_settled(made), text)


def _longest(found: list[re.Match[str]], lows: list[str], at: int, table: Table) -> tuple[Entry | None, int]:
    """The longest entry that begins at a token, and the index behind it; a stop of an abbreviation belongs to it."""
    for entry in table.entries.get(lows[at], ()):
        stop = at + 1
        for word in entry.words[1:]:
            while stop < len(found) and found[stop].lastgroup in ("dash", "sep") and found[stop].start() == found[stop - 1].end() and lows[stop] in "-–.":
                stop += 1
            if stop >= len(found) or lows[stop] != word:
                break
            stop += 1
        else:
            return entry, _past_stop(found, lows, stop, entry)
    return None, at + 1


def _past_stop(found: list[re.Match[str]], lows: list[str], stop: int, entry: Entry) -> int:
    """Behind the full stop of an abbreviation: always where the table writes one, else only before a small letter or a sign."""
    if stop >= len(found) or lows[stop] != "." or found[stop].start() != found[stop - 1].end():
        return stop
    behind = found[stop + 1] if stop + 1 < len(found) else None
    if behind is None:
        return stop
    first = behind.group()[0]
    if entry.stop and (not first.isupper() or entry.sort in _LEADING):
        return stop + 1
    short = len(entry.words[-1]) <= 4
    return stop + 1 if short and (first.islower() and behind.lastgroup == "word" or first in ",;:*") else stop


def _figure(m: re.Match[str], gap: bool, table: Table) -> list[Word]:
    """A token that is no word."""
    kind, text, at = m.lastgroup or "punct", m.group(), (m.start(), m.end())
    if kind == "english":
        return [Word("english", text[4:-1].strip(), *at, gap)]
    if kind == "quoted":
        inside = text[1:-1].strip()
        return [Word("quoted", table.parts.get(plain(inside)) or folded(inside), *at, gap)]
    if kind == "blank":
        return [Word("num", text, *at, gap)]
    if kind == "times":
        return [Word("times", f"{''.join(c for c in text if c.isdecimal())} times", *at, gap)]
    if kind == "ord":
        return [Word("ord", ordinal(int(re.sub(r"\D", "", text))), *at, gap)]
    if kind == "length":
        return [Word("length", text.replace(",", "."), *at, gap)]
    if kind == "num":
        return [Word("num", text.replace(",", "."), *at, gap)]
    return [Word(_SINGLE.get(text, kind), "and" if text == "&" else text, *at, gap)]


def _settled(words: list[Word]) -> list[Word]:
    """ "2." before a thing is "2nd", at a sentence's end "2" and a stop; also in "1.-3. Rd" and "2. und 3. M"."""
    made: list[Word] = []
    ordinal_next = False
    for i in range(len(words) - 1, -1, -1):
        w = words[i]
        if w.sort == "ord":
            behind = words[i + 1].sort if i + 1 < len(words) else "end"
            joined = behind in ("dash", "and", "to", "plus") and i + 2 < len(words) and words[i + 2].sort == "ord" and ordinal_next
            if behind in PLACED or behind in ("from", "last", "next", "drop", "each", "side") or joined or w.end - w.start > len(w.made) - 1:
                ordinal_next = True
                made.append(w)
                continue
            ordinal_next = False
            made += [Word("sep", ".", w.end - 1, w.end, False), Word("num", w.made[:-2], w.start, w.end - 1, w.gap)]
            continue
        made.append(w)
    return made[::-1]


def _listed(words: list[Word], text: str) -> list[Word]:
    """Numbers with the other sizes in brackets behind them as one number: "20 (24, 28)"; of two sizes only before a thing."""
    made: list[Word] = []
    at = 0
    while at < len(words):
        stop = _list_end(words, at)
        if stop:
            first, last = words[at], words[stop - 1]
            made.append(Word("num", text[first.start : last.end].replace("/", ","), first.start, last.end, first.gap))
            at = stop
            continue
        made.append(words[at])
        at += 1
    return made


def _list_end(words: list[Word], at: int) -> int:
    if words[at].sort != "num" or at + 2 >= len(words) or words[at + 1].sort != "open":
        return 0
    i, many = at + 2, 0
    while i < len(words) and words[i].sort in ("num", "sep", "slash", "dash"):
        many += words[i].sort == "num"
        i += 1
    if i >= len(words) or words[i].sort != "close" or not many:
        return 0
    behind = words[i + 1].sort if i + 1 < len(words) else "end"
    return i + 1 if many > 1 or behind in PLACED or behind in ("tog", "times", "timesword", "group", "dash") else 0
