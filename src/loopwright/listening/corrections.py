"""Slips of the tongue taken back ("thirty no wait one more so thirty one") and counting aloud left out, before rows are looked for."""

from __future__ import annotations

import re
from dataclasses import replace

from loopwright.listening.words import GAP, Line, Token
from loopwright.record import record

KINDS = frozenset({"sc", "hdc", "dc", "tr", "htr", "dtr"})
_BACK, _ON = 7, 14  # how far from "no" the wrong and the right word are looked for, in words of the trade
_RUN = 3  # numbers in a row from which they are counting aloud
_ROWS = ("row", "rnd")
_BOUNDS = frozenset({"row", "rnd", "turn", "join", "fasten", "magic"})
_LINKS = frozenset({GAP, "and", "then", "so", "gives"})


@record
class TakenBack:
    """A correction: the words that were wrong and what stands instead, by index of the words heard."""

    first: int
    last: int
    wrong: str
    right: str


def settled(line: Line) -> tuple[Line, tuple[TakenBack, ...]]:
    """The line with what was taken back left out, and what that was."""
    tokens = _uncounted(list(line.tokens))
    back: list[TakenBack] = []
    i = 0
    while i < len(tokens):
        if tokens[i].text == "no":
            i = _correct(tokens, i, back)
        i += 1
    return Line.of([t for t in tokens if t.text not in ("no", "")]), tuple(back)


def _correct(tokens: list[Token], at: int, back: list[TakenBack]) -> int:
    """Mends the tokens around a "no"; the index to go on from."""
    for wrong, right in (_range_end(tokens, at), _not_that(tokens, at), _kinds(tokens, at), _numbers(tokens, at)):
        if wrong < 0:
            continue
        said = tokens[right]
        if tokens[wrong].text == said.text and tokens[wrong].text.isdecimal():
            continue
        back.append(TakenBack(tokens[wrong].first, said.last, tokens[wrong].text, said.text))
        tokens[wrong] = replace(said, text=said.text)
        del tokens[wrong + 1 : right + 1]
        return wrong
    return at


def _range_end(tokens: list[Token], at: int) -> tuple[int, int]:
    """"Rows six to nine, no, only to row eight": the last number of a list of rows."""
    for i in range(at - 1, max(-1, at - _BACK - 6), -1):
        if tokens[i].text in _ROWS and i + 2 < at and tokens[i + 1].text.isdecimal():
            ends = [k for k in range(i + 2, min(at, i + 8)) if tokens[k].text.isdecimal()]
            between = range(i + 2, ends[-1]) if ends else range(0)
            if not ends or any(tokens[k].text not in ("to", "and", "through", "until", GAP) and k not in ends for k in between):
                return -1, -1
            new = next((k for k in range(at, min(len(tokens), at + _ON)) if tokens[k].text.isdecimal()), -1)
            if new < 0 or tokens[new - 1].text not in (*_ROWS, "to", "until"):
                return -1, -1
            low, high = int(tokens[i + 1].text), int(tokens[ends[-1]].text)
            if not low <= int(tokens[new].text) != high:
                return -1, -1
            tokens[i + 2] = replace(tokens[i + 2], text="to")
            tokens[i + 3 : ends[-1]] = [replace(t, text="") for t in tokens[i + 3 : ends[-1]]]
            return ends[-1], new
    return -1, -1


def _not_that(tokens: list[Token], at: int) -> tuple[int, int]:
    """"Not double crochet, half double crochet": what is not meant is no stitch of the row."""
    for i in range(at + 1, min(len(tokens) - 1, at + 4)):
        if tokens[i].text == "not" and tokens[i + 1].text in KINDS:
            del tokens[i : i + 2]
            break
    return -1, -1


def _kinds(tokens: list[Token], at: int) -> tuple[int, int]:
    wrong = next((i for i in range(at - 1, max(-1, at - _BACK), -1) if tokens[i].text in KINDS), -1)
    right = next((i for i in range(at + 1, min(len(tokens), at + 5)) if tokens[i].text in KINDS or tokens[i].text in _BOUNDS), -1)
    if wrong < 0 or right < 0 or tokens[right].text in _BOUNDS or tokens[wrong].text == tokens[right].text:
        return -1, -1
    between = {t.text for t in tokens[wrong + 1 : at]}
    return (wrong, right) if not between & _BOUNDS else (-1, -1)


def _numbers(tokens: list[Token], at: int) -> tuple[int, int]:
    wrong = next((i for i in range(at - 1, max(-1, at - _BACK), -1) if tokens[i].text.isdecimal() or tokens[i].text in _BOUNDS), -1)
    if wrong < 0 or not tokens[wrong].text.isdecimal():
        return -1, -1
    first = next((i for i in range(at + 1, min(len(tokens), at + 6)) if tokens[i].text.isdecimal() or tokens[i].text in _BOUNDS), -1)
    if first < 0 or not tokens[first].text.isdecimal():
        return -1, -1
    if tokens[first].text == "1" and tokens[first + 1].text in ("more", "~") if first + 1 < len(tokens) else False:
        more = next((i for i in range(first + 2, min(len(tokens), first + _ON)) if tokens[i].text == str(int(tokens[wrong].text) + 1)), -1)
        if more >= 0:
            return wrong, more
        tokens[first] = replace(tokens[first], text=str(int(tokens[wrong].text) + 1))
        return wrong, first
    before, after = _about(tokens, wrong), _about(tokens, first)
    return (wrong, first) if not before or not after or before == after else (-1, -1)


def _about(tokens: list[Token], i: int) -> str:
    """What a number counts: chains, stitches, rows … as far as its neighbours say."""
    left = tokens[i - 1].text if i else ""
    right = tokens[i + 1].text if i + 1 < len(tokens) else ""
    if left == "ch" or right == "ch":
        return "ch"
    if right in ("st", *KINDS):
        return "st"
    if left in _ROWS or right in _ROWS:
        return "row"
    return right if right in ("cm", "inch", "mm", "times") else ""


def _uncounted(tokens: list[Token]) -> list[Token]:
    """Runs of numbers that go up by one are counting aloud; the last one stays as a count perhaps said."""
    out: list[Token] = []
    i = 0
    while i < len(tokens):
        run = _run(tokens, i)
        if len(run) > 1 and out and out[-1].text in _ROWS:
            out.extend(tokens[i : run[-1] + 1])
            i = run[-1] + 1
            continue
        if len(run) >= _RUN and (not out or out[-1].text not in ("row", "rnd", "ch", "sk", "next", "chref")):
            last = run[-1]
            after = tokens[last + 1].text if last + 1 < len(tokens) else ""
            if not (after in KINDS or re.fullmatch("in|st|times|row|rnd|ch|cm|inch|more", after)) or len(run) > _RUN + 1:
                out.append(replace(tokens[i], text="loose"))
                out.append(tokens[last])
                i = last + 1
                continue
        out.append(tokens[i])
        i += 1
    return out


def _run(tokens: list[Token], at: int) -> list[int]:
    """Indexes of numbers from `at` on, each one more than the one before, with nothing but links between them."""
    if not tokens[at].text.isdecimal():
        return []
    out = [at]
    i = at + 1
    while i < len(tokens):
        text = tokens[i].text
        if text.isdecimal() and int(text) == int(tokens[out[-1]].text) + 1:
            out.append(i)
        elif text not in _LINKS or i - out[-1] > 2:
            break
        i += 1
    return out
