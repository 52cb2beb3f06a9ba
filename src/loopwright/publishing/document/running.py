"""Running words with numbers that differ by size: said in brackets, in a column of each size, or for one size alone."""

from __future__ import annotations

import re
from functools import lru_cache

from loopwright.record import record

_VALUE = r"(?:\d+(?:[.,]\d+)?|[-–—])"


@record
class Varies:
    """A number per size, as text; a dash for a size that has none. `said`: all of them as they stand in the words, "9 (9, 10)"."""

    values: tuple[str, ...]
    said: str


Text = tuple[str | Varies, ...]
"""Words and numbers that differ by size, in order. Words never are empty."""


def running(words: str, sizes: int) -> Text:
    """Words taken apart at the lists of as many numbers as there are sizes: "Rnds 5-9 (9, 10): …" for three of them.

    Other lists and brackets are words: a list is told by its number of entries, as the writer of the words puts none else so.
    """
    if sizes < 2 or "(" not in words:
        return (words,) if words else ()
    found: list[str | Varies] = []
    at = 0
    for m in _lists(sizes).finditer(words):
        if m.start() > at:
            found.append(words[at : m.start()])
        found.append(Varies((m["first"], *re.split(r"[,;]\s", m["rest"])), m[0]))
        at = m.end()
    if at < len(words):
        found.append(words[at:])
    return tuple(found)


@lru_cache(maxsize=64)
def _lists(sizes: int) -> re.Pattern[str]:
    rest = rf"{_VALUE}(?:[,;]\s{_VALUE}){{{sizes - 2}}}"
    return re.compile(rf"(?<![\d.,(])(?P<first>{_VALUE}) \((?P<rest>{rest})\)")


def in_brackets(text: Text) -> str:
    """The words with all sizes in them, "9 (9, 10)"."""
    return "".join(part if isinstance(part, str) else part.said for part in text)


def of_size(text: Text, size: int) -> str:
    """The words with the numbers of one size, by its index."""
    return "".join(part if isinstance(part, str) else part.values[size] for part in text)


def varies(text: Text) -> bool:
    """Whether the words differ by size."""
    return any(isinstance(part, Varies) for part in text)
