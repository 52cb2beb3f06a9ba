"""What was heard becomes words of the trade: fillers and movements of the hook out, mishearings mended, numbers as figures.

The words of the trade stand in one string, a space between them, so that the reader of rows can look for phrases in it; each knows its
place in what was heard.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from functools import cache
from typing import Any

from loopwright.listening.captions import Heard
from loopwright.listening.numbers import number
from loopwright.record import record
from loopwright.shipped import shipped_table

GAP = "~"  # a word that says nothing of the trade
PAUSE_S = 1.0
_PUNCTUATION = '.,;:!?"“”()…*'
_ROUND_BEFORE = frozenset("this that next last first another every each final more increase plain of a which".split())


@record
class Token:
    """A word of the trade.

    `first`, `last`: the words heard that it was made of; `stop`: a sentence or a silence ends after it; `pause`: that, or a comma.
    """

    text: str
    first: int
    last: int
    stop: bool
    pause: bool = False


@record
class Line:
    """Words of the trade in a row, and the same as one text with a space before, between and after."""

    tokens: tuple[Token, ...]
    text: str
    starts: tuple[int, ...]

    @classmethod
    def of(cls, tokens: Sequence[Token]) -> Line:
        """A line of these words."""
        starts, at = [], 1
        for t in tokens:
            starts.append(at)
            at += len(t.text) + 1
        return cls(tuple(tokens), " " + " ".join(t.text for t in tokens) + " ", tuple(starts))

    def index(self, offset: int) -> int:
        """The word that stands at an offset of the text."""
        return max(0, min(len(self.tokens) - 1, bisect_right(self.starts, offset) - 1))


def plain(heard: Sequence[Heard]) -> tuple[list[str], list[int]]:
    """The bare words, in small letters, and for each the index of the word heard that it comes from."""
    words: list[str] = []
    places: list[int] = []
    for i, h in enumerate(heard):
        for part in _bare(h.word):
            words.append(part)
            places.append(i)
    return words, places


def _bare(word: str) -> list[str]:
    low = word.lower().strip(_PUNCTUATION).replace("’", "'")
    return [p for piece in low.replace("'", "-").split("-") if (p := piece.strip(_PUNCTUATION))]


def trade_words(heard: Sequence[Heard]) -> Line:
    """The words of the trade in what was heard."""
    words, places = plain(heard)
    stops = _stops(heard)
    commas = [s or h.word[-1:] in ",;:" for s, h in zip(stops, heard, strict=True)]
    breaks = [commas[p] and (i + 1 == len(places) or places[i + 1] != p) for i, p in enumerate(places)]
    tokens: list[Token] = []
    i = 0
    while i < len(words):
        texts, taken = _one(words, i, breaks)
        first, last = places[i], places[i + taken - 1]
        for text in texts:
            if text != GAP or not tokens or tokens[-1].text != GAP or tokens[-1].stop:
                tokens.append(Token(text, first, last, stop=False))
        if tokens and breaks[i + taken - 1]:
            t = tokens[-1]
            tokens[-1] = Token(t.text, t.first, t.last, t.stop or stops[last], pause=True)
        i += taken
    return Line.of(tokens)


def _stops(heard: Sequence[Heard]) -> list[bool]:
    out = []
    for i, h in enumerate(heard):
        after = heard[i + 1].at_s if i + 1 < len(heard) else None
        quiet = after is not None and h.end_s is not None and after - h.end_s > PAUSE_S
        out.append(h.stop or quiet)
    return out


def _one(words: list[str], i: int, breaks: list[bool]) -> tuple[tuple[str, ...], int]:
    """The words of the trade that begin at `i`, and how many words heard they take."""
    named = _named_chain(words, i) if not breaks[i] else None
    if named:
        return named
    found = _phrase(words, i, breaks)
    got = number(words, i)
    if got and (found is None or found[1] <= got[1]):
        value, taken, rank = got
        whole = int(value)
        if rank:
            return (("first",) if whole == 1 else (f"{whole}th",)), taken
        return ((str(whole) if value == whole else f"{value:g}"),), taken
    if words[i] == "through" and i and number(words, i - 1):
        return ("through",), 1
    if words[i] in ("round", "around") and (found is None or found[1] == 1):
        return ((_round(words, i)),), 1
    if found:
        return found
    return ((words[i],), 1) if words[i] in _KEPT else ((GAP,), 1)


_POINTING = ("the", "that", "those", "this", "your", "first", "counting", "with", "of")
_CHAINS = ("chain", "chains")


def _named_chain(words: list[str], i: int) -> tuple[tuple[str, ...], int] | None:
    """A chain that is spoken of, not made: "the chain three", "that three chain", "the first chain three"."""
    if words[i] not in _POINTING:
        return None
    at = i + 1
    while at < len(words) and words[at] in _POINTING:
        at += 1
    if at < len(words) and words[at] in _CHAINS and at + 1 < len(words):
        got, taken = number(words, at + 1), 1
        end = at + 1 + (got[1] if got else 0)
    else:
        got, taken = (number(words, at), 0) if at < len(words) else (None, 0)
        end = at + got[1] if got else 0
        if not got or end >= len(words) or words[end] not in _CHAINS:
            return None
        end += 1
    if not got or got[2] or (end < len(words) and words[end] in ("space", "spaces", "loop", "loops", "from")):
        return None
    return ((*(("first",) if words[i] == "first" and taken == 0 else ()), "chref", str(int(got[0]))), end - i)


_KEPT = ("to", "through", "the", "that", "as", "for", "from", "with", "if", "where", "other", "this", "color", "needle")


def _round(words: list[str], i: int) -> str:
    """Whether "round" is a round or a way around."""
    if words[i] == "around":
        return "around"
    after = number(words, i + 1) if i + 1 < len(words) else None
    before = words[i - 1] if i else ""
    counted = i and number(words, i - 1) is not None
    return "rnd" if after or counted or before in _ROUND_BEFORE else "around"


@cache
def speech() -> dict[str, Any]:
    """The table of spoken phrases."""
    return shipped_table("loopwright.listening", "speech.toml")


@cache
def _table() -> dict[str, list[tuple[tuple[str, ...], tuple[str, ...]]]]:
    """Phrases by their first word, the longest first."""
    said = speech()
    pairs: list[tuple[str, str]] = [(w, "") for w in (*said["quiet"]["words"], *said["quiet"]["phrases"])]
    for sort in ("words", "kinds"):
        pairs += [(phrase, token) for token, phrases in said[sort].items() for phrase in phrases]
    by: dict[str, list[tuple[tuple[str, ...], tuple[str, ...]]]] = {}
    for phrase, token in pairs:
        words = tuple(phrase.replace("'", " ").replace("-", " ").split())
        by.setdefault(words[0], []).append((words, tuple(token.split())))
    for rows in by.values():
        rows.sort(key=lambda r: -len(r[0]))
    return by


def _phrase(words: list[str], i: int, breaks: list[bool]) -> tuple[tuple[str, ...], int] | None:
    numbered = [*_table().get(words[i], ()), *(_table().get("N", ()) if number(words, i) else ())]
    for said, tokens in sorted(numbered, key=lambda r: -len(r[0])) if len(numbered) > 1 else numbered:
        if _fits(words, i, said) and not any(breaks[i : i + len(said) - 1]) and not _two_places(words, i, said):
            return tokens, len(said)
    return None


def _two_places(words: list[str], i: int, said: tuple[str, ...]) -> bool:
    """"The next one" of "two in the next one in the next": the one begins what follows."""
    return said[-1] == "one" and words[i + len(said) : i + len(said) + 1] == ["in"]


def _fits(words: list[str], i: int, said: tuple[str, ...]) -> bool:
    if i + len(said) > len(words):
        return False
    return all(w == words[i + k] or (w == "N" and number(words, i + k) is not None) for k, w in enumerate(said))
