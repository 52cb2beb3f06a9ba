"""Captions as cues: WebVTT, SRT, lines with a time in front, or plain lines without times.

The grammar of cues is that of WebVTT (W3C, https://www.w3.org/TR/webvtt1/, section 4); SRT has no standard and is common practice.
"""

from __future__ import annotations

import html
import re
from itertools import pairwise

from loopwright.record import record

_STAMP = r"(?:(\d{1,3}):)?(\d{1,2}):(\d{2})(?:[.,](\d{1,3}))?"
_ARROW = re.compile(rf"^\s*{_STAMP}\s*-->\s*{_STAMP}")
_IN_FRONT = re.compile(rf"^\s*[\[(]?{_STAMP}[\])]?(?:\s*(?:-+>?|[–—:|])\s*{_STAMP})?\s*[-–—:|]?\s*(.*)$")
_INSIDE = re.compile(r"<(\d+:\d\d(?::\d\d)?[.,]\d{1,3})>")
_TAG = re.compile(r"<[^<>]{0,200}>")
_ASIDE = re.compile(r"\[[^\]\[]{0,80}\]|\([^()]{0,80}\)|[♪♫#*]+|^\s*(?:>>|-)\s*")
_SKIPPED = ("WEBVTT", "NOTE", "STYLE", "REGION", "Kind:", "Language:")
LONGEST_S = 360_000.0
A_WORD_S = 0.6  # the longest that a word is taken to last where a cue stands longer than its words


@record
class Heard:
    """A word as it was heard. `at_s`, `end_s`: seconds, None without times; `stop`: it ends a sentence; `line`: of the captions, from 1."""

    word: str
    at_s: float | None
    end_s: float | None
    stop: bool
    line: int


@record
class _Cue:
    at_s: float | None
    end_s: float | None
    lines: tuple[str, ...]
    line: int


def heard(text: str) -> tuple[Heard, ...]:
    """The words of captions in the order of their times. Never raises; text in no known form is taken as words without times."""
    cues = _cues(text)
    timed = [c for c in cues if c.at_s is not None]
    cues = sorted(timed, key=lambda c: c.at_s or 0.0) if timed else cues
    out: list[Heard] = []
    rolling = _rolls(cues)
    for i, cue in enumerate(cues):
        then = cues[i + 1].at_s if i + 1 < len(cues) else None
        tokens = [(w, at if k == 0 else None) for line in cue.lines for t, at in _timed(line) for k, w in enumerate(t.split())]
        out.extend(_words(cue, tokens[_said_before(out, tokens) :] if rolling else tokens, then))
    return tuple(out)


def _cues(text: str) -> list[_Cue]:
    lines = text.split("\n")
    if any(_ARROW.match(line) for line in lines[:400]):
        return _blocks(lines)
    fronted = [m for line in lines[:400] if line.strip() and (m := _IN_FRONT.match(line))]
    if len(fronted) * 3 >= sum(1 for line in lines[:400] if line.strip()) and fronted:
        return _fronted(lines)
    return [_Cue(None, None, (line,), i + 1) for i, line in enumerate(lines) if line.strip() and not line.startswith(_SKIPPED)]


def _blocks(lines: list[str]) -> list[_Cue]:
    """Cues of WebVTT and SRT: a line with an arrow, then words up to an empty line or the next cue."""
    out: list[_Cue] = []
    times: tuple[float, float] | None = None
    words: list[str] = []
    first = 0
    for i, line in enumerate([*lines, ""]):
        arrow = _ARROW.match(line)
        if times and (arrow or not line.strip()) and (words or arrow):
            if arrow and words and words[-1].strip().isdigit():
                words.pop()
            out.append(_Cue(*times, tuple(words), first))
            times, words = None, []
        if arrow:
            g = arrow.groups()
            times = _seconds(*g[:4]), _seconds(*g[4:])
            first = i + 1
        elif times and line.strip():
            words.append(line)
    return [c for c in out if c.lines]


def _fronted(lines: list[str]) -> list[_Cue]:
    out: list[_Cue] = []
    for i, line in enumerate(lines):
        m = _IN_FRONT.match(line)
        if m:
            ends = _seconds(*m.groups()[4:8]) if m[6] is not None else None
            out.append(_Cue(_seconds(*m.groups()[:4]), ends, (m[9],), i + 1))
        elif out and line.strip():
            last = out[-1]
            out[-1] = _Cue(last.at_s, last.end_s, (*last.lines, line), last.line)
    return out


def _seconds(hours: str | None, minutes: str, seconds: str, parts: str | None) -> float:
    whole = int(hours or 0) * 3600 + int(minutes) * 60 + int(seconds)
    return min(LONGEST_S, whole + (int(parts.ljust(3, "0")) / 1000 if parts else 0.0))


def _rolls(cues: list[_Cue]) -> bool:
    """Whether the captions roll: cues begin with the line that the one before ended with."""
    shared = sum(1 for a, b in pairwise(cues) if a.lines and b.lines and _bare(a.lines[-1]) == _bare(b.lines[0]) != "")
    return shared * 5 > len(cues)


def _bare(line: str) -> str:
    return _TAG.sub("", line).strip()


def _said_before(out: list[Heard], tokens: list[tuple[str, float | None]]) -> int:
    """How many words at the front of a rolling cue stand already at the end of what was heard."""
    tail = [w.word for w in out[-60:]]
    front = [w for w, _ in tokens]
    for n in range(min(len(tail), len(front)), 1, -1):
        if tail[-n:] == front[:n]:
            return n
    return 1 if len(front) == 1 and tail[-1:] == front else 0


def _words(cue: _Cue, tokens: list[tuple[str, float | None]], then: float | None) -> list[Heard]:
    if not tokens:
        return []
    if cue.at_s is None:
        return [Heard(w, None, None, w[-1] in ".?!;", cue.line) for w, _ in tokens]
    end = cue.end_s if cue.end_s is not None and cue.end_s > cue.at_s else then
    end = end if end is not None and end > cue.at_s else cue.at_s + 0.4 * len(tokens)
    end = then if then is not None and cue.at_s < then < end else end
    end = min(end, cue.at_s + A_WORD_S * len(tokens))
    starts = _spread(tokens, cue.at_s, end)
    return [
        Heard(w, at, max(at, min(starts[i + 1] if i + 1 < len(starts) else end, at + 1.5)), w[-1] in ".?!;", cue.line)
        for i, ((w, _), at) in enumerate(zip(tokens, starts, strict=True))
    ]


def _spread(tokens: list[tuple[str, float | None]], at_s: float, end_s: float) -> list[float]:
    """When each word begins: as marked inside the cue, else by its share of the letters."""
    letters = sum(len(w) + 1 for w, _ in tokens)
    out: list[float] = []
    done = 0
    for w, marked in tokens:
        share = at_s + (end_s - at_s) * done / letters
        out.append(max(out[-1] if out else at_s, marked if marked is not None else share))
        done += len(w) + 1
    return out


def _timed(line: str) -> list[tuple[str, float | None]]:
    """Pieces of a line with the time marked in front of each, tags and asides taken out."""
    parts = _INSIDE.split(line)
    out: list[tuple[str, float | None]] = [(_clean(parts[0]), None)]
    for stamp, words in zip(parts[1::2], parts[2::2], strict=False):
        fields = re.split(r"[:.,]", stamp)
        hours = fields[:-3]
        out.append((_clean(words), _seconds(hours[0] if hours else None, fields[-3], fields[-2], fields[-1])))
    return out


def _clean(text: str) -> str:
    plain = html.unescape(_TAG.sub("", text)).replace("\u00a0", " ").replace("\u2019", "'")
    return _ASIDE.sub(" ", plain)
